"""Lengths and weights with their units, exact from the tape to the screen.

The international inch is 2.54 cm and the yard 0.9144 m, both exactly (international yard
and pound agreement of 1 July 1959, US Federal Register 24 FR 5348); an avoirdupois ounce is
a sixteenth of the pound of 453.59237 g of the same agreement, so 28.349523125 g.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

CM = {
    "mm": Fraction(1, 10),
    "cm": Fraction(1),
    "in": Fraction(254, 100),
    "m": Fraction(100),
    "yd": Fraction(9144, 100),
}
"""Centimetres in each unit of length."""

GRAMS = {"g": Fraction(1), "oz": Fraction(28_349_523_125, 10**9), "kg": Fraction(1000)}
"""Grams in each unit of weight."""

WORDS = {
    **dict.fromkeys(("inch", "inches", "ins", '"', "”", "″"), "in"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters", "cms"), "cm"),
    **dict.fromkeys(("millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("yard", "yards", "yds"), "yd"),
    **dict.fromkeys(("gram", "grams", "gramme", "grammes"), "g"),
    **dict.fromkeys(("ounce", "ounces"), "oz"),
}
"""Units as people write them, by the short one used here."""

MOST = 10**6
"""No number with a unit is above this."""

_VULGAR = "¼½¾⅓⅔⅛⅜⅝⅞"

NUMBER = (
    rf"(?:\d{{1,7}}\s?[{_VULGAR}]|[{_VULGAR}]|\d{{1,7}}\s+\d{{1,4}}/\d{{1,4}}"
    r"|\d{1,7}/\d{1,4}|\d{1,7}(?:[.,]\d{1,6})?)"
)
"""A number as makers write it: "44", "17.5", "17,5", "3/4", "17 1/2", "17½"; for patterns."""

UNIT = r"(?:[A-Za-z]{1,12}\b|[\"”″])"

_LENGTH = re.compile(rf"(?<![\w.,/]){NUMBER}\s*{UNIT}")
_SEVERAL = re.compile(rf"[\d{_VULGAR})\]]\s*(?:[,;/–-]|to|or|and)?\s*$")
_AMOUNT = re.compile(rf"\s*(-|−)?\s*({NUMBER})\s*({UNIT})\.?\s*")


@dataclass(frozen=True, slots=True)
class Amount:
    """A number of a unit, as it was written: 17 1/2 in. ``unit`` is a key of `CM` or `GRAMS`."""

    number: Fraction
    unit: str

    @property
    def cm(self) -> Fraction:
        """In centimetres. Raises `ValueError` for a weight."""
        if self.unit not in CM:
            raise ValueError(f'"{self.unit}" is no unit of length')
        return self.number * CM[self.unit]

    @property
    def grams(self) -> Fraction:
        """In grams. Raises `ValueError` for a length."""
        if self.unit not in GRAMS:
            raise ValueError(f'"{self.unit}" is no unit of weight')
        return self.number * GRAMS[self.unit]

    def __str__(self) -> str:
        return f"{plain(self.number)} {self.unit}"


def read_amount(text: str) -> Amount:
    """The amount that a text such as "44 cm", "17 1/2 in" or "-2cm" states.

    Raises:
        ValueError: it states none; the message says what one looks like.
    """
    found = _AMOUNT.fullmatch(text)
    unit = unit_of(found[3]) if found else None
    number = read_number(found[2]) if found else None
    if found is None or unit is None or number is None:
        raise ValueError(
            f'"{text.strip()}" is not a number with a unit, such as 44 cm or 17 1/2 in'
        )
    return Amount(-number if found[1] else number, unit)


def read_length(text: str) -> Amount:
    """As `read_amount`, for lengths alone. Raises `ValueError`."""
    return _of(CM, read_amount(text), "length, such as 44 cm or 17 1/2 in")


def read_weight(text: str) -> Amount:
    """As `read_amount`, for weights alone. Raises `ValueError`."""
    return _of(GRAMS, read_amount(text), "weight, such as 43 g or 1 3/4 oz")


def first_length(words: str) -> Amount | None:
    """The first length above 0 that is said somewhere in a text; None where none is.

    Nor is any where a unit stands behind several figures ("12-13 cm", "15, 16 cm").
    """
    for found in _LENGTH.finditer(words):
        if _SEVERAL.search(words[: found.start()]):
            return None
        try:
            amount = read_length(found[0])
        except ValueError:
            continue
        if amount.number:
            return amount
    return None


def _of(units: dict[str, Fraction], amount: Amount, wanted: str) -> Amount:
    if amount.unit not in units:
        raise ValueError(f"{amount} is no {wanted}")
    return amount


def read_number(text: str) -> Fraction | None:
    """A number as makers write it (see `NUMBER`), from 0 to `MOST`; None where it is none."""
    text = text.strip()
    if not re.fullmatch(NUMBER, text):
        return None
    text = re.sub(f"[{_VULGAR}]", _spelt, text)
    try:
        number = sum((Fraction(word.replace(",", ".")) for word in text.split()), Fraction(0))
    except ZeroDivisionError:
        return None
    return number if number <= MOST else None


def _spelt(sign: re.Match[str]) -> str:
    """A vulgar fraction in figures: " 1/2"."""
    return " " + unicodedata.normalize("NFKD", sign[0]).replace("\N{FRACTION SLASH}", "/")


def unit_of(word: str) -> str | None:
    """The short form of a unit as people write it, or None where it is no unit."""
    low = word.strip().lower()
    short = WORDS.get(low, low)
    return short if short in CM or short in GRAMS else None


def plain(number: Fraction) -> str:
    """A number without loss: "44", "17.5", "-2", "1/3"."""
    if number.denominator == 1:
        return str(number.numerator)
    ten = next((10**places for places in range(1, 7) if not 10**places % number.denominator), 0)
    if not ten:
        return str(number)
    sign, (whole, rest) = "-" if number < 0 else "", divmod(abs(number * ten), ten)
    return f"{sign}{whole}.{int(rest):0{len(str(ten)) - 1}d}"


def rounded(number: Fraction, step: Fraction) -> Fraction:
    """The multiple of ``step`` nearest to a number; halves go away from 0."""
    steps = (abs(number) / step + Fraction(1, 2)).__floor__() * step
    return -steps if number < 0 else steps


def shown(cm: Fraction, unit: str = "cm") -> str:
    """A length for people: to the millimetre ("44.5 cm"), or to the quarter inch ("17 1/2 in").

    ``unit`` is "cm" or "in".
    """
    if unit == "cm":
        return f"{plain(rounded(cm, Fraction(1, 10)))} cm"
    inches = rounded(cm / CM["in"], Fraction(1, 4))
    whole, rest = divmod(abs(inches), 1)
    figures = " ".join(str(one) for one in (whole, rest) if one) or "0"
    return f"{'-' if inches < 0 else ''}{figures} in"
