"""What lies ahead of a piece: how long it takes, whether the yarn lasts.

Worked out from what was done so far, and only from that: nothing is said before there is
enough of it. It costs some milliseconds, so it is asked for between presses.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tracker.lean import TYPE_CHECKING
from tracker.measure.estimate import Estimate, Range
from tracker.measure.length import target_in
from tracker.measure.pace import Stretch, fit_pace, takes
from tracker.session import worksheet
from tracker.session.lengths import left
from tracker.session.quantities import Quantities, total
from tracker.session.sittings import Done, done, sittings
from tracker.session.state import Copy, Spot, State
from tracker.session.yarn_ahead import Coming, YarnAhead, yarn_ahead

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.history import History
    from tracker.session.items import Item

MOST_TIMES = 1000
"""A round of open length is taken to be worked no oftener."""

ANEW = 120
"""Seconds of work after which a pace is fitted anew."""

Pace = tuple[Estimate | None, float, set[str]]
"""What a stitch takes, how long a sitting usually is, and the kinds that were worked."""


@dataclass(frozen=True, slots=True)
class Outlook:
    """What lies ahead. Times are in seconds, without pauses.

    Attributes:
        round, part, piece: the time left for each; None before there is a pace.
        lengths: rounds worked to a length lie ahead of which nothing tells how many; they
            count as worked once.
        making_up: a making-up lies ahead, which is not counted.
        pace: by stitch, the seconds that one takes, of those that were worked.
        yarns: those that were weighed.
    """

    round: Range | None = None
    part: Range | None = None
    piece: Range | None = None
    lengths: bool = False
    making_up: bool = False
    pace: tuple[tuple[str, Range], ...] = ()
    yarns: tuple[YarnAhead, ...] = ()


class Looker:
    """Looks ahead in one ``plan``."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self._quantities = Quantities(plan)
        self._paced: tuple[tuple[int, int], Pace] | None = None

    def outlook(self, state: State, history: History) -> Outlook:
        """What lies ahead, by the state and the history."""
        coming = tuple(self._coming(state))
        of = worksheet.here(self.plan, state).of
        parts = self.plan.parts
        lines = {one.spot[:3]: one.spot for one in reversed(coming)}
        estimate, usual, worked = self._pace_now(history)
        clock = _Clock(self._quantities, estimate, usual)
        return Outlook(
            round=clock.takes(coming[:1] if coming and coming[0].spot.of == of else ()),
            part=clock.takes([one for one in coming if one.spot.of == of]),
            piece=clock.takes(coming),
            lengths=any(self._unknown(state, spot) for spot in lines.values()),
            making_up=any(
                parts[part].making_up and (part, copy) not in state.finished
                for part, copy in worksheet.needed(self.plan, state)
            ),
            pace=clock.each(worked),
            yarns=tuple(
                yarn_ahead(self.plan, self._quantities, state, letter, coming)
                for letter in dict.fromkeys(one.yarn for one in state.weighed)
            ),
        )

    def _unknown(self, state: State, spot: Spot) -> bool:
        """Whether nothing tells how often a round of open length is worked."""
        until = worksheet.round_at(self.plan, spot).until
        return bool(until) and self._more(state, spot, until) is None

    def _coming(self, state: State) -> list[Coming]:
        """The rounds still to be worked, in the order they will be."""
        plan = self.plan
        of = worksheet.here(plan, state).of
        undone = [copy for copy in worksheet.needed(plan, state) if copy not in state.finished]
        later = sorted(undone, key=lambda copy: (copy != of, copy < of))
        found: list[Coming] = []
        for copy in later:
            if not plan.parts[copy[0]].making_up:
                found += self._rest(state, copy)
        return found

    def _rest(self, state: State, of: Copy) -> list[Coming]:
        """The rounds of a part and copy from where it was left."""
        spot: Spot | None = worksheet.settle(self.plan, state, state.left_at(*of))
        found: list[Coming] = []
        while spot is not None:
            found += self._times(state, spot)
            spot = worksheet.following_round(self.plan, state, spot)
        return found

    def _times(self, state: State, spot: Spot) -> list[Coming]:
        """A round from the spot on; one of open length as often as it will be worked."""
        found = [Coming(spot, self._quantities.between(spot))]
        until = worksheet.round_at(self.plan, spot).until
        if until and spot.nth + 1 >= state.times(*spot[:3]):
            more = self._more(state, spot, until)
            every = [spot._replace(nth=spot.nth + one, step=0) for one in range(1, (more or 0) + 1)]
            found += [Coming(one, self._quantities.between(one)) for one in every]
        return found

    def _more(self, state: State, spot: Spot, until: str) -> int | None:
        """How many more times a round of open length is worked; None where nothing tells.

        By its length, as far as that is known; a further copy as often as the first.
        """
        usual = state.again.get((spot.part, 0, spot.round)) if spot.copy else None
        if usual is not None:
            return min(MOST_TIMES, max(0, usual - spot.nth))
        ahead = left(self.plan, state, worksheet.start_of(spot), target_in(until))
        return min(MOST_TIMES, max(0, ahead.rounds - 1)) if ahead else None

    def _pace_now(self, history: History) -> Pace:
        """The pace, fitted anew with each round and, within one, every few minutes of work."""
        items = history.latest
        worked = (history.many, items[-1].took // ANEW if items else 0)
        if self._paced is None or self._paced[0] != worked:
            self._paced = worked, self._pace(items)
        return self._paced[1]

    def _pace(self, items: Sequence[Item]) -> Pace:
        worked = sittings(list(done(self.plan, items)))
        stretches = [[self._stretch(one) for one in sitting] for sitting in worked]
        kinds = {kind for sitting in stretches for one in sitting for kind in one.made}
        long = [sum(one.seconds for one in sitting) for sitting in stretches]
        usual = sum(long) / len(long) if long else 0.0
        return fit_pace(stretches, self._quantities.time), usual, kinds

    def _stretch(self, one: Done) -> Stretch:
        made = total(self._quantities.between(spot, stop) for spot, stop in one.spans)
        return Stretch(self._quantities.of_time(made), float(one.took))


@dataclass(frozen=True, slots=True)
class _Clock:
    """Tells how long work takes."""

    quantities: Quantities
    estimate: Estimate | None
    usual: float

    def takes(self, coming: Sequence[Coming]) -> Range | None:
        if self.estimate is None:
            return None
        ahead = self.quantities.of_time(total(one.amounts for one in coming))
        return takes(self.estimate, ahead, self.quantities.time, self.usual)

    def each(self, kinds: set[str]) -> tuple[tuple[str, Range], ...]:
        if self.estimate is None:
            return ()
        known = [kind for kind in self.quantities.time if kind in kinds]
        return tuple((kind, self.estimate.each(kind)) for kind in known)
