"""How a place is called in the words that the maker is told."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING
from tracker.session import worksheet

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import Spot, State


def spot_words(plan: Plan, state: State, spot: Spot) -> str:
    """A place in words: "Body, Rnd 7, 13 stitches made"."""
    spot = worksheet.settle(plan, state, spot)
    made = worksheet.round_at(plan, spot).walk.made_before(spot.step)
    words = f"{name(plan, spot)}, {label(plan, spot)}"
    if worksheet.part_at(plan, spot).making_up:
        return words
    return f"{words}, {made} {'stitch' if made == 1 else 'stitches'} made"


def label(plan: Plan, spot: Spot) -> str:
    """A round as the maker says it: "Rnd 7"; "Rnd 7, time 2" where it is worked again."""
    said = worksheet.round_at(plan, spot).label
    return f"{said}, time {spot.nth + 1}" if spot.nth else said


def name(plan: Plan, spot: Spot) -> str:
    """A part as the maker says it, with which copy where there are several."""
    part = worksheet.part_at(plan, spot).part
    return f"{part.name}, copy {spot.copy + 1} of {part.make}" if part.make > 1 else part.name
