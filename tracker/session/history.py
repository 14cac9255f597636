"""The history of a piece: every press, taken back and done again without limit.

The state is never stored: it is the fold of the items before the cursor, begun at a waypoint
so that taking back costs the same always.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tracker.lean import NamedTuple
from tracker.session.events import apply
from tracker.session.items import Item, Walked, fold, joined
from tracker.session.state import State

WAYPOINT = 16
"""Items between two remembered states."""

LATEST = 200
"""Items at the end that are at hand without all that lies before being read."""


class Before(NamedTuple):
    """What lies before the items that were read: the state after it, its presses and items.

    ``worked`` are the seconds it tells of; ``latest`` its last `LATEST` items; ``read`` reads
    it after all.
    """

    state: State
    presses: int
    items: int
    worked: int
    latest: Callable[[], Sequence[Item]]
    read: Callable[[], History]


class History:
    """Every item, the state, and the cursor: how many presses stand, how many are undone.

    What lies ``before`` is read only where somebody goes back so far, or asks for all items.
    """

    def __init__(self, before: Before | None = None) -> None:
        self._before = before
        self._state = before.state if before else State()
        self._late: list[Item] = []
        self._items: list[Item] = []
        self._waypoints: list[State] = [self._state]
        self._item = 0
        self._inside = 0
        self._done = self._all = before.presses if before else 0

    @property
    def state(self) -> State:
        """The state at the cursor."""
        if self._late:
            self._state = fold(self._state, self._late)
            self._late.clear()
        return self._state

    @property
    def items(self) -> Sequence[Item]:
        """All items, those that are undone too."""
        self._read_before()
        return self._items

    @property
    def recent(self) -> Sequence[Item]:
        """The items that were read, those that are undone too."""
        return self._items

    @property
    def latest(self) -> Sequence[Item]:
        """The last `LATEST` items, those that are undone too."""
        if self._before is None or len(self._items) >= LATEST:
            return self._items[-LATEST:]
        first, rest = [*self._before.latest()], self._items
        one = joined(first[-1], rest[0]) if first and rest else None
        if one is not None:
            first, rest = [*first[:-1], one], rest[1:]
        return [*first, *rest][-LATEST:]

    @property
    def many(self) -> int:
        """How many items there are."""
        return len(self._items) + (self._before.items if self._before else 0)

    @property
    def worked_before(self) -> int:
        """The seconds that what lies before the items tells of."""
        return self._before.worked if self._before else 0

    @property
    def done(self) -> int:
        """How many presses can be taken back."""
        return self._done

    @property
    def undone(self) -> int:
        """How many presses can be done again."""
        return self._all - self._done

    def add(self, item: Item) -> None:
        """A new press (or a run of them). What was undone is gone for good."""
        self._forget_undone()
        last = self._items[-1] if self._items else None
        one = joined(last, item)
        if one is not None:
            self._items[-1] = one
            self._inside += item.presses
        else:
            self._append(item)
        self._late.append(item)
        self._all = self._done = self._done + item.presses

    def undo(self, presses: int = 1) -> int:
        """Take back up to so many presses; returns how many it took back."""
        taken = min(presses, self._done)
        if self._before and self._done - taken < self._before.presses:
            self._read_before()
        rest = taken
        while rest > 0:
            self._step_into_item()
            here = min(rest, self._inside)
            self._inside -= here
            rest -= here
        self._done -= taken
        if taken:
            self._refold()
        return taken

    def redo(self, presses: int = 1) -> int:
        """Do up to so many undone presses again; returns how many."""
        taken = min(presses, self.undone)
        rest = taken
        while rest > 0:
            item = self._items[self._item]
            here = min(rest, item.presses - self._inside)
            self._inside += here
            rest -= here
            self._state = apply(self.state, item.event(self._inside))
            self._step_out_of_item()
        self._done += taken
        return taken

    def _read_before(self) -> None:
        """Go on as if all had been read from the first."""
        if self._before is None:
            return
        whole, undone = self._before.read(), self.undone
        for item in self._items:
            whole.add(item)
        whole.undo(undone)
        vars(self).update(vars(whole))

    def _append(self, item: Item) -> None:
        if len(self._items) and len(self._items) % WAYPOINT == 0:
            self._waypoints.append(self.state)
        self._items.append(item)
        self._item = len(self._items) - 1
        self._inside = item.presses

    def _forget_undone(self) -> None:
        """Drop the items after the cursor, and stand inside the last one that is left."""
        at = self._item
        self._step_into_item()
        if self.undone == 0:
            return
        # An item of no presses, such as time worked, is done once the cursor stands behind it.
        done = self._inside > 0 or self._item < at
        keep = self._item + 1 if done else self._item
        del self._items[keep:]
        del self._waypoints[max(1, -(-keep // WAYPOINT)) :]
        if self._inside:
            last = self._items[-1]
            if isinstance(last, Walked) and self._inside < last.presses:
                self._items[-1] = last.cut(self._inside)
        self._all = self._done

    def _step_into_item(self) -> None:
        """At the border of two items, stand at the end of the earlier one."""
        if self._inside == 0 and self._item > 0:
            self._item -= 1
            self._inside = self._items[self._item].presses

    def _step_out_of_item(self) -> None:
        """At the end of an item, stand before the next that has presses, if there is one."""
        while self._inside == self._items[self._item].presses:
            if self._item + 1 == len(self._items):
                return
            self._item += 1
            self._inside = 0

    def _refold(self) -> None:
        """Work the state out anew, from the last waypoint before the cursor."""
        start = self._item // WAYPOINT
        state = fold(self._waypoints[start], self._items[start * WAYPOINT : self._item])
        if self._inside:
            state = apply(state, self._items[self._item].event(self._inside))
        self._state = state
        self._late.clear()
