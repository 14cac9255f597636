"""The log of a piece: every round that was worked, with what became of it.

Worked out from the state and the history, in the order of the pattern.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tracker.lean import TYPE_CHECKING
from tracker.measure.estimate import Estimate
from tracker.measure.yarn import fit_yarn
from tracker.session import mending, worksheet
from tracker.session.naming import name
from tracker.session.quantities import Quantities
from tracker.session.sittings import Done, done
from tracker.session.state import Copy, RoundKey, Spot, State
from tracker.session.weighing import yarn_named
from tracker.session.yarn_ahead import weighings_of

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan, PlannedPart
    from tracker.session.items import Item


@dataclass(frozen=True, slots=True)
class Logged:
    """One round that was worked, or begun; a sentence of the making up that was ticked.

    Attributes:
        label: "Rnd 7"; for a round of open length with which time it was.
        text: the instruction.
        stitches: what was counted, or else made, of the round; None in a making up.
        wanted: what it should have ended on; None where that is not known.
        whole: it was worked to its end.
        seconds: what it took, pauses left out, ripped back stitches too.
        when: when the last press in it was, in seconds since 1970; 0 if not known.
        again: steps that were worked more than once.
        changes: what was otherwise than written, a few words each.
        notes: the maker's notes and measures in it.
        weighed: what was left of a yarn, as weighed in it.
        yarn: the letters of its yarns, and grams of each that it took where that is known.
    """

    label: str
    text: str
    stitches: int | None
    wanted: int | None
    whole: bool
    seconds: int
    when: int
    again: int
    changes: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    weighed: tuple[str, ...] = ()
    yarn: tuple[tuple[str, float | None], ...] = ()


@dataclass(frozen=True, slots=True)
class LoggedPart:
    """One part and copy that was begun, its rounds, and labels of the pattern's left out."""

    name: str
    making_up: bool
    rounds: tuple[Logged, ...]
    left_out: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Time:
    seconds: float = 0.0
    when: int = 0
    steps: int = 0


def log(plan: Plan, state: State, items: Sequence[Item]) -> tuple[LoggedPart, ...]:
    """The parts that were begun."""
    return _Log(plan, state, list(done(plan, items))).parts()


class _Log:
    def __init__(self, plan: Plan, state: State, worked: Sequence[Done]) -> None:
        self._plan = plan
        self._state = state
        self._quantities = Quantities(plan)
        self._times = _times(worked)
        self._scales = dict(self._estimates())

    def parts(self) -> tuple[LoggedPart, ...]:
        found = []
        for part, planned in enumerate(self._plan.parts):
            for copy in range(planned.part.make):
                rounds = tuple(self._rounds((part, copy)))
                if rounds:
                    called = name(self._plan, Spot(part, copy))
                    gone = tuple(_left_out(planned, copy))
                    found.append(LoggedPart(called, planned.making_up, rounds, gone))
        return tuple(found)

    def _estimates(self) -> Iterator[tuple[str, Estimate]]:
        for letter in dict.fromkeys(one.yarn for one in self._state.weighed):
            kept = weighings_of(self._quantities, self._state, letter)
            estimate = fit_yarn(kept, self._quantities.yarn)
            if estimate is not None:
                yield letter, estimate

    def _rounds(self, of: Copy) -> Iterator[Logged]:
        """The rounds up to where the part was left."""
        plan, state = self._plan, self._state
        begun = of == state.spot.of or of in state.left or of in state.finished
        if not begun:
            return
        end = worksheet.settle(plan, state, state.left_at(*of))
        spot: Spot | None = Spot(*of, plan.parts[of[0]].of(of[1]).number(0))
        while spot is not None and spot.key != end.key:
            yield self._round(spot, whole=True)
            spot = worksheet.following_round(plan, state, spot)
        ended = worksheet.at_end(plan, end)
        if ended or end.step or end.loop or self._times.get(end.key, _Time()).steps:
            yield self._round(end, whole=ended)

    def _round(self, spot: Spot, *, whole: bool) -> Logged:
        plan, state, key = self._plan, self._state, spot.key
        planned = worksheet.round_at(plan, spot)
        making_up = worksheet.part_at(plan, spot).making_up
        made = planned.walk.makes if whole else planned.walk.made_before(spot.step)
        time = self._times.get(key, _Time())
        far = len(planned.walk) if whole else spot.step
        return Logged(
            label=f"{planned.label}, time {spot.nth + 1}" if spot.nth else planned.label,
            text=planned.text,
            stitches=None if making_up else self._counted(key, made),
            wanted=planned.ends_on,
            whole=whole,
            seconds=round(time.seconds),
            when=time.when,
            again=max(0, time.steps - far),
            changes=tuple(self._changes(spot)),
            notes=tuple(self._kept(key)),
            weighed=tuple(
                f"{one.left}{one.yarn and ' of '}{one.yarn} left"
                for one in state.weighed
                if one.at.key == key
            ),
            yarn=tuple(self._yarn(spot, None if whole else spot.step)),
        )

    def _counted(self, key: RoundKey, made: int) -> int:
        counted = self._state.counts.get(key)
        return made if counted is None else counted

    def _changes(self, spot: Spot) -> Iterator[str]:
        planned = worksheet.round_at(self._plan, spot)
        if planned.own:
            yield f"{planned.own}: {planned.text}"
        counted = self._state.counts.get(spot.key)
        if counted is not None and planned.ends_on not in (None, counted):
            yield f"{counted} counted, {planned.ends_on} wanted"
        off = mending.off_below(self._plan, self._state, spot)
        if off:
            yield mending.words(planned.walk, off)

    def _kept(self, key: RoundKey) -> Iterator[str]:
        for kept, said in ((self._state.notes, ""), (self._state.measured, "measured: ")):
            for at, words in sorted(kept.items()):
                if at.key == key:
                    yield f"{said}{words}"

    def _yarn(self, spot: Spot, stop: int | None) -> Iterator[tuple[str, float | None]]:
        amounts = self._quantities.between(worksheet.start_of(spot), stop)
        for letter in dict.fromkeys(letter for letter, _ in amounts):
            scale = self._scales.get(letter)
            used = self._quantities.of_yarn(amounts, letter)
            called = yarn_named(self._plan, letter) if letter else ""
            if called and any(used.values()):
                yield called, scale.ahead(used).likely if scale else None


def _left_out(planned: PlannedPart, copy: int) -> Iterator[str]:
    """The labels of the pattern's rounds that a copy does without."""
    for number, _ in planned.of(copy).gone:
        if number < len(planned.rounds):
            yield planned.rounds[number].label


def _times(worked: Sequence[Done]) -> dict[RoundKey, _Time]:
    """What each round took; what one press worked in several is shared out by its steps."""
    found: dict[RoundKey, _Time] = {}
    for one in worked:
        steps = [(spot.key, stop - spot.step) for spot, stop in one.spans]
        every = sum(many for _, many in steps)
        for key, many in steps or [(one.spot.key, 0)]:
            was = found.get(key, _Time())
            share = many / every if every else 1.0
            found[key] = _Time(
                was.seconds + one.took * share, one.when or was.when, was.steps + many
            )
    return found
