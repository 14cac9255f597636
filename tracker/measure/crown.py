"""The crown of a piece worked from its centre: how far across it is, and how it lies."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import accumulate

from tracker.measure.gauge import PI

CUPS_BELOW, RUFFLES_ABOVE = Fraction(5, 6), Fraction(6, 5)
"""Where a disc stops lying flat: stitches against those that a flat one of its size needs.

Makers call 6 sc, 8 hdc or 12 dc more a round flat, though at the gauges of published leaflets
these are from 0.88 (8 hdc) to 1.19 (12 dc) of the rule; six dc, 0.59, make a sphere or a hat.
Between the bounds, a sixth either way, washing and the fabric's give settle it.
"""

AT_REST = 3
"""Rounds in a row without a higher count that end a crown."""


class Lies(StrEnum):
    """What the fabric does at a round."""

    FLAT = "lies flat"
    CUPS = "cups"
    RUFFLES = "ruffles"


@dataclass(frozen=True, slots=True)
class Crown:
    """A crown.

    Attributes:
        rounds: how many rounds it has, from the centre to its last increase.
        stitches: the count it ends on.
        across: its diameter along the fabric, in cm: twice the height of its rounds.
        fullness: for each round, its stitches against those of a flat disc so far across;
            1 is flat, less cups, more ruffles.
    """

    rounds: int
    stitches: int
    across: Fraction
    fullness: tuple[Fraction, ...]

    @property
    def increases(self) -> Fraction:
        """Stitches that a round of it adds, on average; the first round's count is its own."""
        return Fraction(self.stitches, self.rounds)

    @property
    def lies(self) -> Lies:
        """What it does as a whole: at its last round."""
        return lies(self.fullness[-1])

    @property
    def since(self) -> int:
        """The round (from 1) from which on it does so to its end."""
        said = [lies(share) is self.lies for share in self.fullness]
        others = [number for number, same in enumerate(said, start=1) if not same]
        return max(others, default=0) + 1


def lies(fullness: Fraction) -> Lies:
    """What fabric of that fullness does."""
    if fullness < CUPS_BELOW:
        return Lies.CUPS
    return Lies.RUFFLES if fullness > RUFFLES_ABOVE else Lies.FLAT


def crown(counts: Sequence[int], heights: Sequence[Fraction], stitch_cm: Fraction) -> Crown | None:
    """The crown that the first rounds of a part make; None where they do not grow.

    Args:
        counts: stitches of each round, from the centre on.
        heights: height of each round, in cm.
        stitch_cm: width of a stitch, in cm.
    """
    rounds = _length(counts)
    radii = list(accumulate(heights))[:rounds]
    if rounds < 2 or not all(radii):
        return None
    full = tuple(
        count * stitch_cm / (2 * PI * radius) for count, radius in zip(counts, radii, strict=False)
    )
    return Crown(rounds, counts[rounds - 1], 2 * radii[-1], full)


def _length(counts: Sequence[int]) -> int:
    """Rounds up to the last higher count before the fabric is at rest."""
    most = last = 0
    for number, count in enumerate(counts, start=1):
        if count > most:
            most, last = count, number
        elif number - last >= AT_REST:
            break
    return last
