"""How tall and how wide the rounds of a pattern are, by a swatch."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from tracker.fabric.steps import Kind
from tracker.fabric.verdicts import Verdict
from tracker.measure.gauge import HEIGHTS, Swatch, swatch_of
from tracker.measure.units import first_length

if TYPE_CHECKING:
    from tracker.fabric.steps import Walk
    from tracker.pattern.model import Pattern
    from tracker.pattern.plan import PlannedRound

_IN_ONE = re.compile(r"\d+ (.+) in one")
_MADE_OF = re.compile(r"(sc|hdc|dc|tr|dtr)(?:\dinc|\dtog)?|inc|dec|invdec")


@dataclass(frozen=True, slots=True)
class Ruler:
    """A swatch laid to the rounds of a pattern.

    Attributes:
        pattern: for its terms and its own stitches.
        swatch: width of a stitch and height of a round, in cm.
        stitch: US name of the swatch's stitch; "" where it is not known.
    """

    pattern: Pattern
    swatch: Swatch
    stitch: str

    @classmethod
    def of_heights(cls, pattern: Pattern) -> Ruler:
        """A ruler without a swatch, good for proportions: a single crochet is 1 tall."""
        return cls(pattern, swatch_of(Fraction(1), Fraction(1), Fraction(1)), "sc")

    def height(self, planned: PlannedRound) -> Fraction:
        """Height of a round, in cm: that of the stitch most of it is, 0 where it has none.

        A stitch whose height is not known is taken to be as tall as the swatch's, and so is
        a round that was not understood.
        """
        stitch = main_stitch(planned.walk)
        if planned.verdict is Verdict.UNREAD:
            return self.swatch.round_cm
        if not stitch:
            return Fraction(0)
        share = HEIGHTS.get(tall_as(self.pattern, stitch))
        own = HEIGHTS.get(self.stitch)
        return self.swatch.round_cm * (share / own if share and own else 1)

    def knows(self, stitch: str) -> bool:
        """Whether the height of a stitch, as the pattern writes it, is known by the swatch."""
        us = tall_as(self.pattern, stitch)
        return us == self.stitch or (us in HEIGHTS and self.stitch in HEIGHTS)


def ruler_of(pattern: Pattern) -> Ruler | None:
    """The ruler by the pattern's own gauge; None where it states none over a known length."""
    gauge = pattern.gauge
    over = first_length(gauge.over) if gauge else None
    if gauge is None or over is None:
        return None
    swatch = swatch_of(gauge.stitches, gauge.rounds, over.cm)
    return Ruler(pattern, swatch, tall_as(pattern, gauge.stitch))


def us_name(pattern: Pattern, stitch: str) -> str:
    """The US name of a stitch as the pattern writes it; "" where there is none."""
    for own in pattern.stitches:
        if own.abbr.lower() == stitch.lower():
            return own.us
    # Imported here so that a place can be told without reading the dictionary.
    from tracker.notation.dictionary import find

    known = find(stitch, pattern.terms)
    return known.us if known else ""


def tall_as(pattern: Pattern, stitch: str) -> str:
    """The US name of the plain stitch that one is as tall as; "" where that is not known.

    Increases and decreases are as tall as the stitch they are made of.
    """
    several = _IN_ONE.fullmatch(stitch)
    us = us_name(pattern, several[1] if several else stitch)
    made_of = _MADE_OF.fullmatch(us)
    return made_of[1] or "sc" if made_of else ""


def main_stitch(walk: Walk) -> str:
    """The stitch that most of a round is, as the pattern writes it; "" where it has none."""
    made: Counter[str] = Counter()
    for run in walk.runs:
        if run.kind is Kind.STITCH:
            made[run.stitch] += run.count * run.makes
    return made.most_common(1)[0][0] if made else ""


def has_spaces(walk: Walk) -> bool:
    """Whether chains lie between the stitches of a round, so that its count is not its width."""
    kinds = [run.kind for run in walk.runs if run.kind in (Kind.STITCH, Kind.CHAIN)]
    while kinds and kinds[0] is Kind.CHAIN:
        kinds.pop(0)
    return Kind.CHAIN in kinds
