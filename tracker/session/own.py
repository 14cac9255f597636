"""The plan that a piece is worked by: its pattern's, with what the maker changed."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import State


def in_own_version(plan: Plan, state: State) -> Plan:
    """The plan of the pattern as printed, with all that is changed in this state."""
    if not state.changes:
        return plan
    # Imported here, since most pieces are worked as printed.
    from tracker.pattern.own import own_plan

    return own_plan(plan, state.changes)


class OwnPlan:
    """The plan as it is worked now; worked out anew only where the changes are others."""

    def __init__(self, printed: Plan) -> None:
        self.printed = printed
        self._plan = printed
        self._changes: object = {}

    def at(self, state: State) -> Plan:
        """The plan in a state."""
        if state.changes != self._changes:
            self._plan, self._changes = in_own_version(self.printed, state), state.changes
        return self._plan
