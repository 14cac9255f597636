"""Gauge: what a swatch says of the size of everything else."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from tracker.measure.units import NUMBER, UNIT, read_length, read_number

LONGEST = 100
"""Characters of a swatch in words."""

PI = Fraction(245_850_922, 78_256_779)
"""The circle's number, less than 1e-15 off: a convergent of its continued fraction."""

HEIGHTS = {"sc": Fraction(1), "hdc": Fraction(14, 9), "dc": Fraction(14, 8)}
"""Heights of rows in US stitches against single crochet.

Measured at one width, 13 stitches in 4 in: 14 rows of sc (yarn company leaflet CAC0129-028772M)
against 9 of hdc (http://www.niftynnifer.com/2013/07/how-to-measure-crochet-gauge-by.html) and
8 of dc (leaflet CAC0135-001742M; leaflets at
https://cdn.shopify.com/s/files/1/0711/5132/1403/files/). Makers differ: a swatch in the
stitch itself is better.
"""

_STITCHES = rf"(?P<stitches>{NUMBER})\s*(?P<stitch>[A-Za-z][A-Za-z0-9 -]{{0,30}}?)"
_ROUNDS = rf"(?P<rounds>{NUMBER})\s*(?:rounds?|rnds?|rows?)"
_OVER = r"\s*(?:over|to|in|=|,|\s)\s*"
_LENGTH = rf"{NUMBER}\s*{UNIT}\.?"
_SWATCH = re.compile(
    rf"\s*{_STITCHES}(?:{_OVER}(?P<width>{_LENGTH}))?\s*(?:and|x|×|,|;|\s)\s*"
    rf"{_ROUNDS}{_OVER}(?P<over>{_LENGTH})\s*",
    re.IGNORECASE,
)
_SHARE = re.compile(rf"([-−])?\s*({NUMBER})\s*(?:%|per ?cent)")
_ANY_STITCH = ("st", "sts", "stitch", "stitches")


@dataclass(frozen=True, slots=True)
class Swatch:
    """What was measured on a piece of fabric.

    Attributes:
        stitch_cm: width of one stitch, in cm.
        round_cm: height of one round or row, in cm.
    """

    stitch_cm: Fraction
    round_cm: Fraction

    def width(self, stitches: int | Fraction) -> Fraction:
        """How wide so many stitches are, in cm: round the piece, or along a row."""
        return stitches * self.stitch_cm

    def stitches_in(self, cm: Fraction) -> Fraction:
        """How many stitches lie in a width of so many cm."""
        return cm / self.stitch_cm

    @property
    def flat_increases(self) -> Fraction:
        """Increases a round for a flat disc: the growth of a circle by one round's height.

        The circle grows by 2 pi times that height, and each stitch fills its own width: 2 pi
        x stitches / rounds over one length. For 13 sc by 14 rows it is 5.8, and makers work 6.
        """
        return 2 * PI * self.round_cm / self.stitch_cm


def swatch_of(stitches: Fraction, rounds: Fraction, cm: Fraction) -> Swatch:
    """The swatch of so many stitches and rounds over so many cm.

    Raises:
        ValueError: one of them is not above 0.
    """
    if min(stitches, rounds, cm) <= 0:
        raise ValueError("stitches, rounds and the length of a swatch must all be above 0")
    return Swatch(cm / stitches, cm / rounds)


def stitch_off(swatch: Swatch, stitches: int, over: Fraction) -> Swatch:
    """The swatch with so many stitches more over a length in cm (fewer: below 0).

    Raises:
        ValueError: that leaves no stitch.
    """
    count = swatch.stitches_in(over) + stitches
    if count <= 0:
        raise ValueError("a swatch has at least a stitch")
    return Swatch(over / count, swatch.round_cm)


def read_swatch(text: str) -> tuple[Swatch, str]:
    """The swatch that a text states, and its stitch as written ("" for just "sts").

    Such as "16 sts 18 rounds 10 cm", "14 hdc and 11 rows over 4 in" or, with two lengths,
    "20 sts 12.5 cm, 10 rounds 8 cm".

    Raises:
        ValueError: it states none; the message says what one looks like.
    """
    text = " ".join(text.split())
    found = _SWATCH.fullmatch(text) if len(text) <= LONGEST else None
    if found is None:
        short = text if len(text) <= LONGEST else f"{text[:LONGEST]}…"
        raise ValueError(f'"{short}" is no swatch, such as "16 sts 18 rounds 10 cm"')
    over = read_length(found["over"]).cm
    width = read_length(found["width"]).cm if found["width"] else over
    stitches, rounds = read_number(found["stitches"]), read_number(found["rounds"])
    if not (stitches and rounds and over and width):
        raise ValueError("stitches, rounds and the length of a swatch must all be above 0")
    stitch = " ".join(found["stitch"].split())
    return Swatch(width / stitches, over / rounds), "" if stitch.lower() in _ANY_STITCH else stitch


def diameter(around: Fraction) -> Fraction:
    """The diameter of a circle that is so long around, in the same unit."""
    return around / PI


@dataclass(frozen=True, slots=True)
class Ease:
    """What a piece is larger by than what it goes round; below 0 it is smaller.

    Attributes:
        cm: as a length.
        share: as a part of what it goes round: -1/20 for "-5 %". One of the two is 0.
    """

    cm: Fraction = Fraction(0)
    share: Fraction = Fraction(0)

    def on(self, body: Fraction) -> Fraction:
        """How long around the piece shall be for a body so long around, in the unit of both."""
        return body + self.cm + self.share * body


def read_ease(text: str) -> Ease:
    """The ease that a text states: "-2 cm", "1/2 in" or "-5 %".

    Raises:
        ValueError: it states none; the message says what one looks like.
    """
    found = _SHARE.fullmatch(text.strip())
    number = read_number(found[2]) if found else None
    if found is None or number is None:
        try:
            return Ease(cm=read_length(text).cm)
        except ValueError:
            raise ValueError(f'"{text.strip()}" is no ease, such as "-2 cm" or "-5 %"') from None
    return Ease(share=(-number if found[1] else number) / 100)
