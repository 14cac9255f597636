"""How many stitches of each kind a piece has: of each yarn, in a round, up to a place.

A step counts as the stitch it is made of: "ch 3" as three chains, a join as a slip stitch, a
round that was not understood as so many stitches "as written". Making up counts nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tracker.fabric.steps import Kind
from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.measure import pace, yarn
from tracker.measure.estimate import Ratio, Table
from tracker.notation.dictionary import base_of
from tracker.session import worksheet
from tracker.session.lookup import stitch_of
from tracker.session.state import Copy, Progress, Spot

if TYPE_CHECKING:
    from tracker.fabric.steps import Run, Walk
    from tracker.notation.stitches import Stitch
    from tracker.pattern.plan import Plan, PlannedPart, PlannedRound

MOST = 9
"""Kinds that are told apart; the rarer ones go together, as single crochets."""

OTHER, ENDS, WRITTEN = "other stitches", "joins, turns", "as written"

POOLED = Ratio(1.0, 0.4)
"""Rarer kinds together, already told in single crochets. Our own choice, no source."""

LIKE = {
    **dict.fromkeys(("esc", "rev sc", "fsc", "inc", "dec", "invdec"), "sc"),
    **dict.fromkeys(("edc", "shell", "v-st", "crossed dc"), "dc"),
    "ehdc": "hdc",
    "etr": "tr",
}
"""The plain stitch that others are made of; for ``fsc`` and the extended, nearly."""

Amounts = Mapping[tuple[str, str], float]
"""How many, by yarn letter and kind."""


class Made(NamedTuple):
    """What one step comes to: ``many`` of a kind, and how that compares in yarn and time."""

    kind: str
    many: float
    yarn: Ratio | None
    time: Ratio


class Quantities:
    """The kinds of one plan. ``yarn`` and ``time`` are their ratios, pooled to a few."""

    def __init__(self, plan: Plan) -> None:
        self._plan = plan
        self._made: dict[tuple[str, str, str, int, str], Made | None] = {}
        self._wholes: dict[int, tuple[PlannedRound, Amounts]] = {}
        self._ups: dict[int, tuple[PlannedPart, list[Amounts]]] = {}
        self._first = plan.pattern.yarns[0].letter if plan.pattern.yarns else ""
        every: dict[str, float] = {}
        ratios: dict[str, Made] = {}
        for part in (version for each in plan.parts for version in each.versions):
            for planned in part.rounds:
                for run in planned.walk.runs:
                    if (made := self._of(run)) is not None:
                        many = made.many * run.count * made.time.times
                        every[made.kind] = every.get(made.kind, 0.0) + many
                        ratios.setdefault(made.kind, made)
        kept = sorted(every, key=lambda kind: -every[kind])[:MOST]
        self._rare = {kind: made for kind, made in ratios.items() if kind not in kept}
        self.yarn = _ratios(ratios, kept, self._rare, lambda made: made.yarn)
        self.time = _ratios(ratios, kept, self._rare, lambda made: made.time)

    def letter(self, run: Run) -> str:
        """The yarn a run is worked with; the pattern's first where it names none."""
        return run.colour or self._first

    def between(self, at: Spot, stop: int | None = None) -> Amounts:
        """What the steps of a round are, from the spot's up to ``stop`` (or its end)."""
        planned = worksheet.round_at(self._plan, at)
        if at.step == 0 and stop in (None, len(planned.walk)):
            return self._whole(planned)
        return self._steps(planned.walk, at.step, len(planned.walk) if stop is None else stop)

    def _whole(self, planned: PlannedRound) -> Amounts:
        """All of a round, counted once."""
        known = self._wholes.get(id(planned))
        if known is None:
            known = planned, self._steps(planned.walk, 0, len(planned.walk))
            self._wholes[id(planned)] = known
        return known[1]

    def _steps(self, walk: Walk, step: int, stop: int) -> Amounts:
        found: dict[tuple[str, str], float] = {}
        first = walk.run_of(step) if step < len(walk) else len(walk.runs)
        for which in range(first, len(walk.runs)):
            start = walk.run_start(which)
            if start >= stop:
                break
            run = walk.runs[which]
            many = min(stop, start + run.count) - max(step, start)
            if (made := self._of(run)) is not None:
                key = self.letter(run), made.kind
                found[key] = found.get(key, 0.0) + many * made.many
        return found

    def worked(self, progress: Progress) -> Amounts:
        """All that a piece has so far."""
        return total(
            one
            for of in {*progress.left, *progress.finished}
            for one in self._of_copy(of, progress)
        )

    def of_yarn(self, amounts: Amounts, letter: str) -> dict[str, float]:
        """The part of it that is worked with a yarn, rare kinds pooled."""
        found: dict[str, float] = {}
        for (of, kind), many in amounts.items():
            if of == letter and kind != ENDS:
                name, times = self._pooled(kind, lambda made: made.yarn)
                found[name] = found.get(name, 0.0) + many * times
        return found

    def of_time(self, amounts: Amounts) -> dict[str, float]:
        """All of it as time sees it, rare kinds pooled."""
        found: dict[str, float] = {}
        for (_, kind), many in amounts.items():
            name, times = self._pooled(kind, lambda made: made.time)
            found[name] = found.get(name, 0.0) + many * times
        return found

    def _pooled(self, kind: str, ratio_of: Callable[[Made], Ratio | None]) -> tuple[str, float]:
        rare = self._rare.get(kind)
        if rare is None:
            return kind, 1.0
        ratio = ratio_of(rare)
        return OTHER, ratio.times if ratio else 0.0

    def _of_copy(self, of: Copy, progress: Progress) -> Iterable[Amounts]:
        if of[0] >= len(self._plan.parts):
            return  # a file may say so
        part = self._plan.parts[of[0]].of(of[1])
        spot = progress.left.get(of, Spot(*of))
        before = len(part.rounds) if of in progress.finished else part.place(spot.round)
        yield self._up_to(part)[before]
        for (*other, line), extra in progress.again.items():
            if (*other,) == of and part.place(line) < before:
                more = self._whole(part.rounds[part.place(line)])
                yield {key: many * extra for key, many in more.items()}
        if before < len(part.rounds) and part.number(before) == spot.round:
            whole = self.between(Spot(*spot[:3]))
            yield {key: many * spot.nth for key, many in whole.items()}
            yield self.between(Spot(*spot[:3]), spot.step)

    def _up_to(self, part: PlannedPart) -> list[Amounts]:
        """All rounds of a part before each of them, and at last all; each taken once."""
        known = self._ups.get(id(part))
        if known is None:
            sums: list[Amounts] = [{}]
            for planned in part.rounds:
                sums.append(total((sums[-1], self._whole(planned))))
            known = self._ups[id(part)] = part, sums
        return known[1]

    def _of(self, run: Run) -> Made | None:
        key = (run.kind.value, run.stitch, run.text, run.makes, run.variant)
        if key not in self._made:
            self._made[key] = _made(self._plan, run)
        return self._made[key]


def total(amounts: Iterable[Amounts]) -> Amounts:
    """Several amounts together."""
    found: dict[tuple[str, str], float] = {}
    for one in amounts:
        for key, many in one.items():
            found[key] = found.get(key, 0.0) + many
    return found


def _ratios(
    every: Mapping[str, Made],
    kept: Iterable[str],
    rare: Mapping[str, Made],
    ratio_of: Callable[[Made], Ratio | None],
) -> dict[str, Ratio]:
    found = {kind: ratio for kind in kept if (ratio := ratio_of(every[kind])) is not None}
    return found | ({OTHER: POOLED} if rare else {})


def _made(plan: Plan, run: Run) -> Made | None:
    if run.kind is Kind.STITCH:
        stitch = stitch_of(plan, run)
        kind = run.stitch or WRITTEN
        return Made(kind, 1.0, _ratio(stitch, yarn.TABLE), _ratio(stitch, pace.TABLE))
    if run.kind is Kind.CHAIN:
        digits = run.text.rpartition(" ")[2]
        many = int(digits) if digits.isdecimal() else 1
        return Made("ch", many, yarn.RATIOS["ch"], pace.RATIOS["ch"])
    if run.kind is Kind.SENTENCE:
        return Made(WRITTEN, run.makes, POOLED, POOLED) if run.makes else None
    # The yarn of a join is that of a slip stitch, and too little to be weighed.
    return Made(ENDS, 1.0, None, pace.ENDS)


def _ratio(stitch: Stitch | None, of: Table) -> Ratio:
    """How a stitch compares with a single crochet."""
    us = (stitch.us or stitch.abbr) if stitch else ""
    base = LIKE.get(us) or base_of(us)
    plain = of.ratios.get(base)
    if stitch is None or plain is None:
        return of.special if stitch is None else _special(stitch, of)
    together = max(stitch.takes, stitch.makes, 1)
    if us in LIKE or together > 1:
        return of.legs(plain, together)
    return plain


def _special(stitch: Stitch, of: Table) -> Ratio:
    """A stitch of its own: two loops are about a single crochet. Our own assumption."""
    if not stitch.loops:
        return of.special
    return Ratio(max(1.0, len(stitch.loops) / 2), of.special.spread)
