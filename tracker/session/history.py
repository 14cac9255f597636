"""The history of a piece: every press, taken back and done again without limit.

Presses that only walk on within one round are kept as one item, so that a hundred
thousand presses are a few thousand items. The state is never stored: it is the fold of the
items before the cursor, begun at a waypoint so that taking back costs the same always.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tracker.lean import NamedTuple
from tracker.session.state import Copy, Event, RoundKey, Spot, State, apply

WAYPOINT = 16
"""Items between two remembered states."""

LATEST = 200
"""Items at the end that are at hand without all that lies before being read."""

LONGEST = 64
"""Stretches of one item, so that joining a press to it costs the same always."""


class Stretch(NamedTuple):
    """``presses`` spots in a row, from (step, loop) on; each one step, or one loop, on."""

    step: int
    loop: int
    presses: int = 1
    by_loop: bool = False

    def at(self, index: int) -> tuple[int, int]:
        """Step and loop after press ``index`` (from 0)."""
        if self.by_loop:
            return self.step, self.loop + index
        return self.step + index, self.loop

    def longer(self, step: int, loop: int) -> Stretch | None:
        """With one more press to (step, loop); None where that does not follow on."""
        if (step, loop) == (self.step + self.presses, 0) and self.loop == 0 and not self.by_loop:
            return self._replace(presses=self.presses + 1)
        follows = (step, loop) == (self.step, self.loop + self.presses)
        if follows and loop > 0 and (self.by_loop or self.presses == 1):
            return self._replace(presses=self.presses + 1, by_loop=True)
        return None


class Walked(NamedTuple):
    """Presses that each only moved the place, all to one round.

    The first of them may have brought a count with it, of the round before; with ``more``
    it began one more round of open length. ``when`` is the time of the last of them, in
    seconds since 1970 (0: not known), ``took`` the seconds they took, pauses left out.
    """

    key: RoundKey
    stretches: tuple[Stretch, ...]
    presses: int
    tally: tuple[RoundKey, int] | None = None
    more: bool = False
    when: int = 0
    took: int = 0

    @property
    def of(self) -> Copy:
        """The part and copy they are in."""
        return self.key[:2]

    @property
    def again(self) -> tuple[tuple[int, int, int], int] | None:
        """The round of open length and how often it was worked beyond the first time."""
        return (self.key[:3], self.key.nth) if self.more else None

    def spot(self, presses: int) -> Spot:
        """Where the maker stands after the first ``presses`` of them (1 or more)."""
        index = presses - 1
        for stretch in self.stretches:
            if index < stretch.presses:
                return Spot(*self.key, *stretch.at(index))
            index -= stretch.presses
        raise IndexError(presses)

    def event(self, presses: int) -> Event:
        """What the first ``presses`` of them come to."""
        return Event(spot=self.spot(presses), tally=self.tally, again=self.again)

    def cut(self, presses: int) -> Walked:
        """Only the first ``presses`` of them."""
        kept: list[Stretch] = []
        rest = presses
        for stretch in self.stretches:
            if rest > 0:
                kept.append(_whole(stretch._replace(presses=min(rest, stretch.presses))))
            rest -= stretch.presses
        return self._replace(stretches=tuple(kept), presses=presses)

    def takes(self, other: Walked) -> bool:
        """Whether ``other`` can be joined: the same round, only moves, this not too long."""
        fits = self.key == other.key and other.tally is None and not other.more
        return fits and len(self.stretches) < LONGEST

    def joined(self, other: Walked) -> Walked:
        """These presses, then those of ``other``, in the same round."""
        first, *rest = other.stretches
        last = self.stretches[-1]
        longer = last.longer(first.step, first.loop) if first.presses == 1 else None
        tail = (last, first) if longer is None else (longer,)
        stretches = (*self.stretches[:-1], *tail, *rest)
        return self._replace(
            stretches=stretches,
            presses=self.presses + other.presses,
            when=other.when,
            took=self.took + other.took,
        )


def _whole(stretch: Stretch) -> Stretch:
    """A stretch of a single press goes neither by steps nor by loops."""
    return stretch._replace(by_loop=False) if stretch.presses == 1 else stretch


class Did(NamedTuple):
    """One press that did more than move within a round; or none, for the time worked.

    ``when`` and ``took`` as in `Walked`.
    """

    done: Event
    presses: int = 1
    when: int = 0
    took: int = 0

    def event(self, _presses: int) -> Event:
        """What it comes to; like `Walked.event`, but there is only one press."""
        return self.done


Item = Walked | Did


def item_of(event: Event, when: int = 0, took: int = 0) -> Item:
    """The item that one event makes, with its time and what it took (see `Walked`)."""
    if event.spot is None or not event.only_moves:
        return Did(event, when=when, took=took)
    stretch = Stretch(event.spot.step, event.spot.loop)
    more = event.again is not None
    return Walked(event.spot.key, (stretch,), 1, event.tally, more, when, took)


def timed(item: Item, when: int, took: int) -> Item:
    """The item with its time and what it took."""
    return item._replace(when=when, took=took)


def reached(item: Item) -> Spot | None:
    """Where the maker stands after an item; None where it does not say."""
    return item.event(item.presses).spot


def fold(state: State, items: Sequence[Item]) -> State:
    """The state after these items.

    Moves on within one part and copy are taken together, since only the last of them says
    where the maker stands: so that a long history is read quickly.
    """
    at = 0
    while at < len(items):
        item = items[at]
        end = at + 1
        if isinstance(item, Walked) and item.of == state.spot.of:
            while end < len(items) and _of(items[end]) == item.of:
                end += 1
            state = _walked_on(state, items[at:end])
        else:
            state = apply(state, item.event(item.presses))
        at = end
    return state


def _of(item: Item) -> Copy | None:
    """The part and copy that moves are in; None for what does more than move."""
    return item.of if isinstance(item, Walked) else None


def _walked_on(state: State, run: Sequence[Item]) -> State:
    """The state after moves that all stay in the part and copy stood in."""
    moves = [item for item in run if isinstance(item, Walked)]
    tallies = [move.tally for move in moves if move.tally]
    again = dict(move.again for move in moves if move.again)
    last = moves[-1]
    return state._replace(
        spot=last.spot(last.presses),
        finished=state.finished - {last.of},
        counted=False,
        counts=state.counts.put_all(tallies) if tallies else state.counts,
        again={**state.again, **again} if again else state.again,
    )


def _joined(last: Item | None, item: Item) -> Walked | None:
    """Two items as one; None where they are not."""
    if isinstance(item, Walked) and isinstance(last, Walked) and last.takes(item):
        return last.joined(item)
    return None


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
        one = _joined(first[-1], rest[0]) if first and rest else None
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
        one = _joined(last, item)
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
