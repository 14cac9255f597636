"""Whether a yarn lasts, and where it runs out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tracker.lean import TYPE_CHECKING
from tracker.measure.estimate import Estimate, Range
from tracker.measure.yarn import Weighing, fit_yarn, needed, read_scale
from tracker.session.naming import label
from tracker.session.quantities import Amounts, Quantities
from tracker.session.state import Spot, State, Weighed
from tracker.session.weighing import yarn_named

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

Kinds = Mapping[str, float]
"""How many stitches of each kind, of one yarn."""


@dataclass(frozen=True, slots=True)
class Coming:
    """A round still to be worked, or the rest of one."""

    spot: Spot
    amounts: Amounts


@dataclass(frozen=True, slots=True)
class YarnAhead:
    """What is known of one yarn.

    Attributes:
        letter: its letter; "" where the pattern names none.
        name: as a maker says it ("A, moss").
        left: grams left now: what was weighed last, less what was worked since.
        needs: grams that the rest of the piece takes; None before there is an estimate.
        lasts: True or False where that is sure (nine times in ten); None where it is not.
        runs_out: the round in which it runs out, most likely; "" where it lasts.
        first, last: the earliest and the latest such round; "" for: not at all.
        each: by stitch, the grams that one takes, of those that were measured.
    """

    letter: str
    name: str
    left: float
    needs: Range | None
    lasts: bool | None
    runs_out: str
    first: str
    last: str
    each: tuple[tuple[str, Range], ...]


def yarn_ahead(
    plan: Plan, quantities: Quantities, state: State, letter: str, coming: Sequence[Coming]
) -> YarnAhead:
    """What is known of a yarn that was weighed, for the rounds to come."""
    kept = weighings_of(quantities, state, letter)
    last = kept[-1]
    now = quantities.of_yarn(quantities.worked(state.progress), letter)
    scale = _Scale(
        quantities,
        letter,
        fit_yarn(kept, quantities.yarn),
        _less(now, last.made),
        float(last.grams),
    )
    return scale.told(plan, coming, {kind for one in kept for kind in one.made})


def weighings_of(quantities: Quantities, state: State, letter: str) -> list[Weighing]:
    """All weighings of a yarn, in order."""
    return [_weighing(quantities, one) for one in state.weighed if one.yarn == letter]


def _weighing(quantities: Quantities, one: Weighed) -> Weighing:
    grams, step = read_scale(one.left)
    return Weighing(grams, step, quantities.of_yarn(quantities.worked(one.progress), one.yarn))


@dataclass(frozen=True, slots=True)
class _Scale:
    """Tells how long a yarn lasts: ``grams`` were left when ``since`` was not yet worked."""

    quantities: Quantities
    letter: str
    estimate: Estimate | None
    since: Kinds
    grams: float

    def told(self, plan: Plan, coming: Sequence[Coming], kinds: set[str]) -> YarnAhead:
        name = yarn_named(plan, self.letter)
        if self.estimate is None:
            return YarnAhead(self.letter, name, self.grams, None, None, "", "", "", ())
        used = self._needs(self.since).likely
        sums = self._sums(coming)
        every = self._needs(sums[-1])
        low, likely, high = (self._out(sums, side) for side in ("low", "likely", "high"))
        ends = [_called(plan, coming, at) for at in (likely, high, low)]
        return YarnAhead(
            letter=self.letter,
            name=name,
            left=max(0.0, self.grams - used),
            needs=Range(*(max(0.0, one - used) for one in (every.low, every.likely, every.high))),
            lasts=True if not ends[1] else False if ends[2] else None,
            runs_out=ends[0],
            first=ends[1],
            last=ends[2],
            each=tuple((kind, self.estimate.each(kind)) for kind in sorted(kinds)),
        )

    def _needs(self, amounts: Kinds) -> Range:
        assert self.estimate is not None
        return needed(self.estimate, amounts, self.quantities.yarn)

    def _sums(self, coming: Sequence[Coming]) -> list[Kinds]:
        """What is worked from the last weighing up to now, and up to the end of each round."""
        sums = [self.since]
        for one in coming:
            more = self.quantities.of_yarn(one.amounts, self.letter)
            sums.append({**sums[-1], **{k: sums[-1].get(k, 0.0) + n for k, n in more.items()}})
        return sums

    def _out(self, sums: Sequence[Kinds], side: str) -> int | None:
        """The round, from 0, in which more is needed than there was; None where that is not so."""
        if len(sums) < 2 or getattr(self._needs(sums[-1]), side) <= self.grams:
            return None
        low, high = 1, len(sums) - 1
        while low < high:
            middle = (low + high) // 2
            if getattr(self._needs(sums[middle]), side) > self.grams:
                high = middle
            else:
                low = middle + 1
        return low - 1


def _called(plan: Plan, coming: Sequence[Coming], at: int | None) -> str:
    """A round by its label, with its part where that is another: "Rnd 31", "Ear, Rnd 3"."""
    if at is None:
        return ""
    here, spot = coming[0].spot, coming[at].spot
    part = plan.parts[spot.part]
    copy = f" {spot.copy + 1}" if part.part.make > 1 else ""
    name = "" if spot.of == here.of else f"{part.name}{copy}, "
    return f"{name}{label(plan, spot)}"


def _less(some: Kinds, other: Kinds) -> Kinds:
    kinds = some.keys() | other.keys()
    return {kind: some.get(kind, 0.0) - other.get(kind, 0.0) for kind in kinds}
