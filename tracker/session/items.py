"""What a history is made of: presses as items, and what they come to.

Presses that only walk on within one round are kept as one item, so that a hundred
thousand presses are a few thousand items.
"""

from __future__ import annotations

from collections.abc import Sequence

from tracker.lean import NamedTuple
from tracker.session.events import Event, apply
from tracker.session.state import Copy, RoundKey, Spot, State

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


def joined(last: Item | None, item: Item) -> Walked | None:
    """Two items as one; None where they are not."""
    if isinstance(item, Walked) and isinstance(last, Walked) and last.takes(item):
        return last.joined(item)
    return None
