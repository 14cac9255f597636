"""Heads: the WHO growth standards to 5 years, makers' ranges from then on."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass
from fractions import Fraction

from tracker.measure.reference import reference
from tracker.measure.units import CM

MONTH = Fraction(304_375, 10_000)
"""Days in a month, as the WHO tables count them: a twelfth of 365.25."""

NOT_A_CHECK = (
    "Figures of many heads, for sizing yarn work and no health check of any child: measure the "
    "wearer where you can; questions on a child's growth belong to a licensed health professional."
)
"""Shown with heads of an age."""

_DAYS = {"day": Fraction(1), "week": Fraction(7), "month": MONTH, "year": 12 * MONTH}
_AGE = re.compile(r"(\d{1,4})(?:\.(\d))?\s*(day|week|month|year)s?(?:\s*old)?")


@dataclass(frozen=True, slots=True)
class Head:
    """Heads of one age, in cm.

    Attributes:
        who: whose they are.
        low, high: most heads lie between: WHO median less and plus two standard deviations,
            or a maker's range.
        middle: the median, or the middle of the range.
        source: where it is read.
        other: what another source says; "" where none does.
        infant: whether it is from the standards of growth to 5 years.
    """

    who: str
    low: Fraction
    middle: Fraction
    high: Fraction
    source: str
    other: str = ""
    infant: bool = False


def heads_of(word: str) -> tuple[Head, ...]:
    """Heads of an age ("newborn", "6 months", "2 years") or a range ("woman", "teens").

    Up to 5 years one for boys and one for girls; for "adult" woman and man.

    Raises:
        ValueError: no table has it; the message says what they have.
    """
    low = " ".join(word.lower().split())
    days = _days(low)
    if days is not None and days <= reference("heads")["who"]["rows"][-1][0]:
        return child(days, "boys"), child(days, "girls")
    if days is not None and days <= 10 * 12 * MONTH:
        low = "3 to 10 years"
    wanted = {"adult": ("woman", "man"), "adults": ("woman", "man")}.get(
        low, (low.removeprefix("adult "),)
    )
    found = tuple(one for one in makers() if one.who in wanted)
    if not found:
        names = ", ".join(one.who for one in makers())
        raise ValueError(f'no head is known of "{word}": say an age ("6 months") or {names}')
    return found


def child(days: Fraction, sex: str) -> Head:
    """Heads at an age in days, "boys" or "girls": between two rows of the table in proportion.

    Raises:
        ValueError: the table does not reach that age.
    """
    who = reference("heads")["who"]
    rows = who["rows"]
    if not 0 <= days <= rows[-1][0]:
        raise ValueError("the growth standards go from birth to 5 years")
    at = min(bisect_right([row[0] for row in rows], days), len(rows) - 1)
    before, after = rows[at - 1], rows[at]
    share = Fraction(days - before[0], after[0] - before[0])
    column = 1 if sex == "boys" else 3
    median, spread = (before[n] + (after[n] - before[n]) * share for n in (column, column + 1))
    step = 2 * median * spread
    source = f"{who['title']}, {who['address']}"
    return Head(sex, median - step, median, median + step, source, infant=True)


def makers() -> tuple[Head, ...]:
    """Makers' ranges, past the ages of the growth standards."""
    return tuple(
        Head(
            row["name"],
            row["from_in"] * CM["in"],
            (row["from_in"] + row["to_in"]) / 2 * CM["in"],
            row["to_in"] * CM["in"],
            row["source"],
            row["other"],
        )
        for row in reference("heads")["maker"]
    )


def ease_habits() -> tuple[tuple[str, str], ...]:
    """How much smaller than the head makers work a hat: words and source of each."""
    return tuple((row["words"], row["source"]) for row in reference("heads")["ease"])


def hat_depth(head: Fraction) -> Fraction:
    """How deep makers make a hat for a head so long around, in the same unit: 4/10 of it.

    From the crown to the bottom of the ear; source in ``heads.toml``.
    """
    share: Fraction = reference("heads")["depth"]["share"]
    return head * share


def depth_source() -> str:
    """Where the rule of `hat_depth` was read."""
    source: str = reference("heads")["depth"]["source"]
    return source


def _days(word: str) -> Fraction | None:
    if word in ("newborn", "birth", "baby at birth"):
        return Fraction(0)
    found = _AGE.fullmatch(word)
    if found is None:
        return None
    return Fraction(f"{found[1]}.{found[2] or 0}") * _DAYS[found[3]]
