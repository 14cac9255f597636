"""What is known of the stitch of a step: its loops, its how-to."""

from __future__ import annotations

from tracker.fabric.steps import Kind
from tracker.lean import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from tracker.fabric.steps import Run
    from tracker.notation.stitches import Stitch, Variant
    from tracker.pattern.plan import Plan


class HowTo(NamedTuple):
    """How a step's stitch is made, in words that are looked up only when they are shown.

    ``own`` are the pattern's words for its own stitch; without them the dictionary is asked
    for ``abbr`` in these terms. All are empty for what is no stitch.
    """

    own: str = ""
    abbr: str = ""
    terms: str = ""

    @property
    def words(self) -> str:
        """A sentence or two; may be empty."""
        if self.own or not self.abbr:
            return self.own
        stitch = _from_dictionary(self.abbr, self.terms)
        return stitch.how if stitch else ""


def stitch_of(plan: Plan, run: Run) -> Stitch | None:
    """The stitch of a step, from the pattern or else the dictionary; None for an action."""
    if run.kind is not Kind.STITCH:
        return None
    return _own_stitch(plan, run) or _from_dictionary(run.stitch, plan.pattern.terms)


def loops_of(plan: Plan, run: Run) -> tuple[str, ...]:
    """The loops of a step's stitch as it is worked here; only a pattern's own have any."""
    stitch = _own_stitch(plan, run)
    if stitch is None:
        return ()
    variant = _variant(stitch, run.variant)
    return variant.loops if variant and variant.loops else stitch.loops


def how_to(plan: Plan, run: Run) -> HowTo:
    """How a step's stitch is made as it is worked here."""
    if run.kind is Kind.CHAIN:
        return HowTo("", "ch", plan.pattern.terms)
    if run.kind is not Kind.STITCH:
        return HowTo()
    stitch = _own_stitch(plan, run)
    if stitch is None:
        return HowTo("", run.stitch, plan.pattern.terms)
    variant = _variant(stitch, run.variant)
    return HowTo(variant.how if variant and variant.how else stitch.how)


def _own_stitch(plan: Plan, run: Run) -> Stitch | None:
    """The pattern's own stitch that a step is; None for an action, and for any other stitch."""
    if run.kind is not Kind.STITCH:
        return None
    return next((own for own in plan.pattern.stitches if own.abbr == run.stitch), None)


def _from_dictionary(abbr: str, terms: str) -> Stitch | None:
    # Imported here so that a place can be told without reading the dictionary.
    from tracker.notation.dictionary import find

    return find(abbr, terms)


def _variant(stitch: Stitch, which: str) -> Variant | None:
    return {"first": stitch.first, "last": stitch.last}.get(which)
