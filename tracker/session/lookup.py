"""What is known of the stitch of a step: its loops, its how-to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tracker.fabric.steps import Kind

if TYPE_CHECKING:
    from tracker.fabric.steps import Run
    from tracker.notation.stitches import Stitch, Variant
    from tracker.pattern.plan import Plan


def stitch_of(plan: Plan, run: Run) -> Stitch | None:
    """The stitch of a step, from the pattern or else the dictionary; None for an action."""
    if run.kind is not Kind.STITCH:
        return None
    for stitch in plan.pattern.stitches:
        if stitch.abbr == run.stitch:
            return stitch
    return _from_dictionary(run.stitch, plan.pattern.terms)


def loops_of(plan: Plan, run: Run) -> tuple[str, ...]:
    """The loops of a step's stitch as it is worked here; empty where it has none."""
    stitch = stitch_of(plan, run)
    if stitch is None:
        return ()
    variant = _variant(stitch, run.variant)
    return variant.loops if variant and variant.loops else stitch.loops


def how_to(plan: Plan, run: Run) -> str:
    """The short how-to of a step's stitch as it is worked here; may be empty."""
    stitch = stitch_of(plan, run)
    if stitch is None:
        return ""
    variant = _variant(stitch, run.variant)
    return variant.how if variant and variant.how else stitch.how


def _variant(stitch: Stitch, which: str) -> Variant | None:
    return {"first": stitch.first, "last": stitch.last}.get(which)


def _from_dictionary(abbr: str, terms: str) -> Stitch | None:
    # Imported here so that a place can be told without reading the dictionary.
    from tracker.notation.dictionary import find

    return find(abbr, terms)
