"""Every size of a pattern by a swatch, and how well each fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from tracker.measure.crown import Lies
from tracker.measure.gauge import Ease, read_ease
from tracker.measure.units import first_length, plain, rounded, shown
from tracker.pattern.finished import Finished, finished
from tracker.pattern.plan import make_plans
from tracker.pattern.ruler import Ruler, ruler_of

if TYPE_CHECKING:
    from tracker.pattern.checked import Check
    from tracker.pattern.model import Part, Pattern
    from tracker.pattern.plan import Plan


LOOSEST = Fraction(1, 10)
"""The share that a size may be off and still be said to fit. Our own choice."""


@dataclass(frozen=True, slots=True)
class Sized:
    """One size by a swatch.

    Attributes:
        size: its name; "" in one size.
        parts: every part that has rounds.
        around: what goes round by the pattern's fit, in cm; None where counts do not tell.
    """

    size: str
    parts: tuple[Finished, ...]
    around: Fraction | None


@dataclass(frozen=True, slots=True)
class Body:
    """What a piece shall go round; lengths in cm.

    Attributes:
        who: whose head it is; "" for a length that was given.
        low, middle, high: most are between; all the same for a length given.
    """

    who: str
    low: Fraction
    middle: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Choice:
    """How one size fits; lengths in cm.

    Attributes:
        size: its name; "" in one size.
        around: how long around it comes out.
        off: what it is larger by than wanted; below 0, smaller.
        ease: what it is larger by than what it goes round.
    """

    size: str
    around: Fraction
    off: Fraction
    ease: Fraction

    @property
    def fits(self) -> bool:
        """Whether it can be worn at all: off by no more than `LOOSEST` of what was wanted."""
        return abs(self.off) <= (self.around - self.off) * LOOSEST


def sized(plans: Sequence[Plan], ruler: Ruler) -> tuple[Sized, ...]:
    """Every one of these plans by a swatch."""
    return tuple(_one(plan, ruler) for plan in plans)


def _one(plan: Plan, ruler: Ruler) -> Sized:
    parts = finished(plan, ruler)
    name = round_part(plan.pattern)
    around = next((one.around(plan.pattern.fit) for one in parts if one.name == name), None)
    return Sized(plan.size, parts, around)


def round_part(pattern: Pattern) -> str:
    """The part that goes round something: the fit's, or else the first."""
    return pattern.fit.part if pattern.fit else pattern.parts[0].name


def comes_out(plan: Plan, part: Part) -> str:
    """How large a part comes out by the pattern's gauge, in a sentence or two; "" if unknown.

    A crown that does not lie flat is told.
    """
    ruler = ruler_of(plan.pattern)
    found = ruler and next((one for one in finished(plan, ruler) if one.name == part.name), None)
    if ruler is None or not found:
        return ""
    unit = unit_of_gauge(plan.pattern)
    sides = zip((found.wide, found.long), found.sides, strict=True)
    lengths = [f"{shown(length, unit)} {side}" for length, side in sides if length]
    said = f"By the gauge {part.name} comes out {' and '.join(lengths)}." if lengths else ""
    return f"{said} {_crown(found, ruler)}".strip()


def finished_sizes(pattern: Pattern, checked: Check) -> tuple[str, ...]:
    """How large each part comes out by the pattern's gauge, with a figure for each size.

    Such as "Body 40 (45.7, 51.4) cm round, 19.2 (20.2, 21.2) cm deep"; empty where the
    pattern states no gauge over a length.
    """
    ruler = ruler_of(pattern)
    if ruler is None:
        return ()
    sizes = sized(make_plans(pattern, checked), ruler)
    parts = zip(*(one.parts for one in sizes), strict=True)
    found = ((part[0].name, _in_sizes(part, unit_of_gauge(pattern))) for part in parts)
    return tuple(f"{name} {words}" for name, words in found if words)


def _in_sizes(part: Sequence[Finished], unit: str) -> str:
    """Both measures of a part, those of all sizes side by side."""
    wide, long = part[0].sides
    measures = ((wide, [one.wide for one in part]), (long, [one.long for one in part]))
    return ", ".join(
        f"{_side_by_side([shown(length, unit) for length in lengths if length], unit)} {side}"
        for side, lengths in measures
        if all(lengths)
    )


def _side_by_side(lengths: Sequence[str], unit: str) -> str:
    first, *others = (length.removesuffix(f" {unit}") for length in lengths)
    more = f" ({', '.join(others)})" if len({first, *others}) > 1 else ""
    return f"{first}{more} {unit}"


def unit_of_gauge(pattern: Pattern) -> str:
    """The unit that lengths are told in: "in" where the gauge is over inches, else "cm"."""
    over = first_length(pattern.gauge.over) if pattern.gauge else None
    return "in" if over and over.unit == "in" else "cm"


def _crown(found: Finished, ruler: Ruler) -> str:
    if found.crown is None or found.crown.lies is Lies.FLAT:
        return ""
    more, flat = (
        plain(rounded(number, Fraction(1, 10)))
        for number in (found.crown.increases, ruler.swatch.flat_increases)
    )
    return f"Its crown {found.crown.lies}: {more} more a round, where {flat} lie flat."


def ease_of(pattern: Pattern) -> Ease | None:
    """The ease that the pattern states; None where it states none."""
    return read_ease(pattern.fit.ease) if pattern.fit and pattern.fit.ease else None


def choices(sizes: Sequence[Sized], body: Body, ease: Ease) -> tuple[Choice, ...]:
    """The sizes by how well they fit, the best first; those that cannot be told are left out."""
    wanted = ease.on(body.middle)
    found = [
        Choice(one.size, one.around, one.around - wanted, one.around - body.middle)
        for one in sizes
        if one.around is not None
    ]
    return tuple(sorted(found, key=lambda one: abs(one.off)))
