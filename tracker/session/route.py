"""From the places of one pattern to those of a changed one: by part and round.

A part goes by its name, a round by its label, a step in a round that reads otherwise by the
stitches made before it. What has no counterpart goes to the nearest round there is; what was
done in a part or a copy that is gone is left behind.
"""

from __future__ import annotations

from collections.abc import Iterator

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session import worksheet
from tracker.session.events import Changing, Event
from tracker.session.history import History
from tracker.session.items import Did, Item, Walked, item_of
from tracker.session.state import RoundKey, Spot

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan, PlannedPart


class Rounds(NamedTuple):
    """Where the rounds of a part go: the part's new number, and each round's.

    ``many`` rounds it has there, and ``copies``.
    """

    part: int
    rounds: tuple[int, ...]
    many: int
    copies: int

    def round(self, number: int) -> int:
        """The new number of a round; those that the maker added stay behind the pattern's."""
        if number < len(self.rounds):
            return self.rounds[number]
        return number - len(self.rounds) + self.many


class Route:
    """From the printed plan ``old`` to the printed plan ``new``."""

    def __init__(self, old: Plan, new: Plan) -> None:
        self._old = old
        self._new = new
        names = {part.name: index for index, part in enumerate(new.parts)}
        self._parts = {
            index: _rounds(part, names[part.name], new.parts[names[part.name]])
            for index, part in enumerate(old.parts)
            if part.name in names
        }

    def carried(self, history: History) -> History:
        """The same history in the changed pattern; what was undone can still be redone."""
        found, undone, left = History(), 0, history.done
        for item in history.items:
            done = min(item.presses, left)
            left -= done
            for one in self._item(item):
                found.add(one)
                undone += one.presses
                taken = min(done, one.presses)
                undone, done = undone - taken, done - taken
        found.undo(undone)
        return found

    def spot(self, spot: Spot) -> Spot | None:
        """Where a place goes; None where its part or copy is gone."""
        to = self._to(spot.part, spot.copy)
        if to is None:
            return None
        line = to.round(spot.round)
        moved = Spot(to.part, spot.copy, line, spot.nth, spot.step, spot.loop)
        if self._reads_the_same(spot.part, spot.round):
            return moved
        made = self._old.parts[spot.part].rounds[spot.round].walk.made_before(spot.step)
        walk = self._new.parts[to.part].rounds[line].walk
        step = worksheet.step_with(walk, min(made, walk.makes)) if spot.step else 0
        return moved._replace(step=step, loop=0)

    def _to(self, part: int, copy: int) -> Rounds | None:
        to = self._parts.get(part)
        return to if to is not None and copy < to.copies else None

    def _reads_the_same(self, part: int, number: int) -> bool:
        """Whether a round's steps are the same; an added round has none of the pattern's."""
        old, to = self._old.parts[part].rounds, self._parts[part]
        if number >= len(old):
            return True
        new = self._new.parts[to.part].rounds[to.round(number)]
        return (old[number].text, len(old[number].walk)) == (new.text, len(new.walk))

    def _item(self, item: Item) -> Iterator[Item]:
        if isinstance(item, Did):
            event = self._event(item.done)
            if event is not None:
                yield item._replace(done=event)
        elif self._to(*item.of) is not None:
            yield from self._walked(item)

    def _walked(self, item: Walked) -> Iterator[Item]:
        to = self._parts[item.key.part]
        key = RoundKey(to.part, item.key.copy, to.round(item.key.round), item.key.nth)
        tally = self._tally(item.tally)
        if self._reads_the_same(item.key.part, item.key.round):
            yield item._replace(key=key, tally=tally)
            return
        for press in range(1, item.presses + 1):
            spot = self.spot(item.spot(press))
            first = press == 1
            again = (key[:3], key.nth) if item.more and first else None
            event = Event(spot=spot, tally=tally if first else None, again=again)
            yield item_of(event, item.when, item.took if first else 0)

    def _event(self, event: Event) -> Event | None:
        """The same event there; None where nothing of it is left."""
        spot = self.spot(event.spot) if event.spot is not None else None
        if event.spot is not None and spot is None:
            return None
        choose = None if event.choose is None else self._parts.get(event.choose)
        moved = event._replace(
            spot=spot,
            tally=self._tally(event.tally),
            again=self._again(event.again),
            mark=self.spot(event.mark) if event.mark is not None else None,
            choose=choose.part if choose else None,
            spread=self._tally(event.spread),
            note=self._kept(event.note),
            measured=self._kept(event.measured),
            changing=self._changing(event.changing),
        )
        return moved if moved != Event() or event == Event() else None

    def _tally(self, tally: tuple[RoundKey, int] | None) -> tuple[RoundKey, int] | None:
        """A number that belongs to a round."""
        key, number = tally or (None, 0)
        to = self._to(key.part, key.copy) if key is not None else None
        if key is None or to is None:
            return None
        return RoundKey(to.part, key.copy, to.round(key.round), key.nth), number

    def _again(
        self, again: tuple[tuple[int, int, int], int] | None
    ) -> tuple[tuple[int, int, int], int] | None:
        to = self._to(*again[0][:2]) if again is not None else None
        if again is None or to is None:
            return None
        (_, copy, line), times = again
        return (to.part, copy, to.round(line)), times

    def _kept(self, kept: tuple[Spot, str] | None) -> tuple[Spot, str] | None:
        spot = self.spot(kept[0]) if kept is not None else None
        return None if kept is None or spot is None else (spot, kept[1])

    def _changing(self, changing: Changing | None) -> Changing | None:
        to = self._to(changing.part, changing.copy) if changing is not None else None
        if changing is None or to is None:
            return None
        change = changing.change
        after = change.after
        after = to.round(after) if after is not None and after >= 0 else after
        change = change._replace(round=to.round(change.round), after=after)
        return changing._replace(part=to.part, change=change)


def _rounds(old: PlannedPart, part: int, new: PlannedPart) -> Rounds:
    """Each round goes to the one with its label, else to the one that stands where it stood."""
    labels: dict[str, int] = {}
    for index, planned in enumerate(new.rounds):
        labels.setdefault(planned.label, index)
    last = len(new.rounds) - 1
    to = (labels.get(one.label, min(index, last)) for index, one in enumerate(old.rounds))
    return Rounds(part, tuple(to), len(new.rounds), new.part.make)
