"""Lengths in words ("until piece measures 15 cm"), and how many rounds are left to one."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from tracker.measure.units import Amount, first_length, rounded

FAR_APART = 4
"""Rounds between two measures from which on their difference says more than the whole length.

Over fewer the few millimetres that a tape measure is read off by would count too much.
"""


class Since(StrEnum):
    """Where a length is measured from."""

    START = "start"
    HERE = "here"
    ELSEWHERE = "elsewhere"


@dataclass(frozen=True, slots=True)
class Target:
    """A length to be reached, and what it is measured from.

    START is the part's beginning, HERE the beginning of the rounds worked to the length;
    ELSEWHERE a place that only the maker sees.
    """

    length: Amount
    since: Since


_FROM_START = re.compile(
    r"\bfrom (?:the |its |your )?(?:very )?(?:magic )?(?:\w+ (?:of|at) (?:the )?)?"
    r"(?:ring|begin|start|found|cast|first|cent|middle|top|crown|bottom|base|chain|edge)"
)
_FROM_HERE = re.compile(r"\b(?:more|further|another|from (?:here|this))\b|\bfor (?:about )?\d")


def target_in(words: str) -> Target | None:
    """The first length in the words that end a round of open length; None where none is said.

    "until piece measures 15 cm from the ring": from the start; so too where nothing is said.
    """
    length = first_length(words)
    return None if length is None else Target(length, _since(words.lower()))


def _since(low: str) -> Since:
    if _FROM_HERE.search(low):
        return Since.HERE
    if _FROM_START.search(low) or not re.search(r"\bfrom\b", low):
        return Since.START
    return Since.ELSEWHERE


@dataclass(frozen=True, slots=True)
class Measured:
    """One measure of a piece.

    Attributes:
        reckoned: how long it was then by the swatch, in cm; from any fixed place.
        cm: how long it measured, from where the target counts.
    """

    reckoned: Fraction
    cm: Fraction


@dataclass(frozen=True, slots=True)
class Left:
    """What is left to a length.

    Attributes:
        rounds: how many more, to the nearest; 0 where it is long enough.
        now: how long the piece is by this reckoning, in cm.
        corrected: whether measures of the piece itself came in.
    """

    rounds: int
    now: Fraction
    corrected: bool


def rounds_left(
    target: Fraction,
    reckoned: Fraction,
    round_cm: Fraction,
    measures: Sequence[Measured] = (),
    *,
    whole: bool,
    swatch: bool = True,
) -> Left | None:
    """How many more rounds bring a piece to a length.

    Without measures the swatch alone tells. With one, the rest goes on from it, each round
    as much taller or lower than by the swatch as the piece was so far; with several that lie
    `FAR_APART`, as between the first and the last of them.

    Args:
        target: the length to reach, in cm.
        reckoned: how long the piece is now by the swatch, in cm.
        round_cm: what one more round adds by the swatch, in cm; above 0.
        measures: in the order they were taken.
        whole: whether ``reckoned`` counts from where the target does, so that one measure
            tells how much taller the rounds are.
        swatch: whether there was one; without, lengths by it are only in proportion.

    Returns:
        None where neither swatch nor measures tell.
    """
    scale = _scale(measures, round_cm, whole=whole)
    if scale is None and not swatch:
        return None
    if not measures and not whole:
        return None
    by = Fraction(1) if scale is None else scale
    last = measures[-1] if measures else Measured(Fraction(0), Fraction(0))
    now = last.cm + by * (reckoned - last.reckoned)
    rounds = rounded((target - now) / (by * round_cm), Fraction(1))
    return Left(max(0, int(rounds)), now, bool(measures))


def _scale(measures: Sequence[Measured], round_cm: Fraction, *, whole: bool) -> Fraction | None:
    """How much the piece grows for each cm by the swatch; None where measures do not tell."""
    if not measures:
        return None
    start, first, last = Measured(Fraction(0), Fraction(0)), measures[0], measures[-1]
    apart = last.reckoned - first.reckoned
    if whole and apart < FAR_APART * round_cm:
        first = start
    grown, reckoned = last.cm - first.cm, last.reckoned - first.reckoned
    return grown / reckoned if grown > 0 and reckoned > 0 else None
