"""How large the parts of a pattern come out by a swatch, and which size fits."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tracker.fabric.verdicts import Verdict
from tracker.measure.crown import Crown, crown
from tracker.measure.length import Since, target_in
from tracker.pattern.model import Fit, Worked
from tracker.pattern.plan import Plan, PlannedPart, PlannedRound
from tracker.pattern.ruler import Ruler, has_spaces, main_stitch

TINY = 6
"""Places of a ring of chains that is closed enough to be the centre of a crown."""


@dataclass(frozen=True, slots=True)
class Finished:
    """One part in one size, by a swatch; lengths in cm.

    Attributes:
        name: the part's.
        rows: it is worked in rows, so ``wide`` lies along a row and ``long`` across them.
        stitches: the count that most of its rounds have, the highest of several; None where
            chain spaces in more than half of them keep counts from telling how wide it is.
        wide: round the piece at that count, or along a row; None with ``stitches``.
        rounds: how many it has, as far as they are counted; foundation chains are none.
        long: from its beginning to its end along the fabric; None where a round of open
            length does not say a length from the beginning.
        crown: where it is worked from its centre.
        unsure: stitches whose height by the swatch is not known, and rounds that were not
            understood, by their labels; they count as its own.
    """

    name: str
    rows: bool
    stitches: int | None
    wide: Fraction | None
    rounds: int
    long: Fraction | None
    crown: Crown | None
    unsure: tuple[str, ...]

    @property
    def sides(self) -> tuple[str, str]:
        """What ``wide`` and ``long`` are called."""
        return ("wide", "long") if self.rows else ("round", "deep")

    def around(self, fit: Fit | None) -> Fraction | None:
        """What goes round, as the pattern's fit has it; None where it is not known."""
        return self.long if fit is not None and fit.around == "rows" else self.wide


def finished(plan: Plan, ruler: Ruler) -> tuple[Finished, ...]:
    """Every part that has rounds, in the size of a plan; as its last copy is worked."""
    parts = (part.of(part.part.make - 1) for part in plan.parts)
    return tuple(_part(part, ruler) for part in parts if not part.making_up)


def _part(part: PlannedPart, ruler: Ruler) -> Finished:
    worked = [one for one in part.rounds if main_stitch(one.walk) or _unread(one)]
    stitches = _usual_count(part.rounds)
    used = dict.fromkeys(main_stitch(one.walk) for one in worked if not _unread(one))
    return Finished(
        name=part.name,
        rows=part.part.worked is Worked.ROWS,
        stitches=stitches,
        wide=None if stitches is None else ruler.swatch.width(stitches),
        rounds=len(worked),
        long=_length(worked, ruler) if worked else None,
        crown=_crown(part, worked, ruler),
        unsure=(
            *(stitch for stitch in used if not ruler.knows(stitch)),
            *(one.label for one in worked if _unread(one)),
        ),
    )


def _unread(one: PlannedRound) -> bool:
    return one.verdict is Verdict.UNREAD


def _usual_count(rounds: Sequence[PlannedRound]) -> int | None:
    """The count of most rounds without chain spaces in them or below; the highest of several."""
    counts: Counter[int] = Counter()
    lace, spaces = 0, False
    for one in rounds:
        before, spaces = spaces, has_spaces(one.walk)
        if not (one.ends_on and main_stitch(one.walk)):
            continue
        if before or spaces:
            lace += 1
        else:
            counts[one.ends_on] += 1
    if lace > counts.total():
        return None
    return max(counts, key=lambda count: (counts[count], count), default=None)


def _length(rounds: Sequence[PlannedRound], ruler: Ruler) -> Fraction | None:
    """From the beginning to the end of a part, in cm."""
    long: Fraction = Fraction(0)
    for one in rounds:
        target = target_in(one.until)
        if one.until and (target is None or target.since is Since.ELSEWHERE):
            return None
        if target is None:
            long += ruler.height(one)
        elif target.since is Since.START:
            long = max(long + ruler.height(one), target.length.cm)
        else:
            long += target.length.cm
    return long


def _crown(part: PlannedPart, rounds: Sequence[PlannedRound], ruler: Ruler) -> Crown | None:
    if part.part.worked is Worked.ROWS or not rounds or (rounds[0].below or 0) > TINY:
        return None
    counts = [one.ends_on or 0 for one in rounds]
    heights = [ruler.height(one) for one in rounds]
    found = crown(counts, heights, ruler.swatch.stitch_cm)
    if found is None or any(_unread(r) or has_spaces(r.walk) for r in rounds[: found.rounds]):
        return None
    return found
