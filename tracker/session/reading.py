"""From the pattern text that a piece carries to the plan it is worked by."""

from __future__ import annotations

from collections.abc import Callable

from tracker.lean import TYPE_CHECKING
from tracker.session.plans import keep_plan, kept_plan

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

Reading = Callable[[str, str], "Plan"]
"""How a pattern's TOML text becomes its plan in a size.

Raises ValueError where the text is no pattern, or one without this size.
"""


def read_plan(source: str, size: str) -> Plan:
    """The plan of a pattern's TOML text in one size; see `Reading`."""
    kept = kept_plan(source, size)
    if kept is not None:
        return kept
    # Imported here so that a place can be told without the counting being loaded.
    from tracker.pattern.load import load_text
    from tracker.pattern.plan import make_plan
    from tracker.pattern.source import PatternError

    try:
        plan = make_plan(load_text(source), size)
    except PatternError as error:
        raise ValueError(str(error)) from None
    keep_plan(plan, source, size)
    return plan
