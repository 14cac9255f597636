"""A cursor over the edge of the round below: which of its places are used, and which passed."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.called import Called
from tracker.fabric.edge import UNCOUNTED, Edge, Spot, live, singled
from tracker.fabric.gaps import with_gaps
from tracker.fabric.places import ELSEWHERE, Places, numbered

Cursor = tuple[int, int, int, int, Places, int]


class Below(Called):
    """A cursor over the edge of the round below.

    ``taken`` counts the places used, ``passed`` the stitches passed over on the way.
    ``held``: the places taken last.

    ``loose`` and ``singly`` are those of `Called`. ``opened``: chain spaces over an opening
    are worked into chain by chain. ``gaps``: the gaps between groups are places, too.
    """

    def __init__(
        self,
        edge: Edge,
        *,
        loose: bool = False,
        singly: bool = False,
        opened: bool = False,
        gaps: bool = False,
    ) -> None:
        given = [spot.count for spot in edge]
        edge = live(edge) if opened else edge
        edge = singled(edge) if singly else edge
        numbers = numbered(given, [spot.count for spot in edge])
        if gaps:
            edge, numbers = with_gaps(edge, numbers)
        super().__init__(edge, loose=loose, singly=singly)
        self._numbers = numbers
        self._after: dict[str, list[int]] = {}
        self.held: Places = ()
        self.index = 0
        self.offset = 0
        self.taken = 0
        self.passed = 0

    def __bool__(self) -> bool:
        return bool(self.edge)

    def state(self) -> Cursor:
        """Where the cursor stands, for `go`."""
        return self.index, self.offset, self.taken, self.passed, self.held, len(self.edge)

    def go(self, state: Cursor) -> None:
        """Back to an earlier `state`."""
        self.index, self.offset, self.taken, self.passed, self.held, length = state
        if length < len(self.edge):
            # The other side of a chain was added since then.
            self.edge = self.edge[:length]
            del self._numbers[length:]
            self._after.clear()

    def behind(self, index: int, offset: int) -> Edge:
        """The edge from there on."""
        spot = self.edge[index] if offset else None
        rest = self.edge[index + (offset > 0) :]
        return rest if spot is None else (replace(spot, count=spot.count - offset), *rest)

    def left(self, kind: str) -> int:
        """How many places of ``kind`` the cursor has still before it."""
        after = self._after.get(kind)
        if after is None:
            after = [0] * (len(self.edge) + 1)
            for i in range(len(self.edge) - 1, -1, -1):
                after[i] = after[i + 1] + self._places_at(kind, i)
            self._after[kind] = after
        count = after[self.index]
        if self.offset and self.has_group(kind):
            count -= self._places_at(kind, self.index)
        elif self.offset and self.matches(kind, self.edge[self.index]):
            count -= self.offset
        return count

    def _places_at(self, kind: str, index: int) -> int:
        """How many places of ``kind`` a spot has; a whole group is one, where it opens."""
        spot = self.edge[index]
        if self.has_group(kind):
            return int(spot.opens and self._is_group(kind, index))
        return spot.count if self.matches(kind, spot) else 0

    def next_of(self, kind: str) -> Cursor | None:
        """Where the next place of ``kind`` begins, to compare with `state`; None if none."""
        for i in range(self.index, len(self.edge)):
            if self.matches(kind, self.edge[i]):
                return (i, 0, 0, 0, (), len(self.edge))
        return None

    def end_before(self, kind: str) -> Cursor | None:
        """The end of the edge, if it begins at a place of ``kind`` and is met there again."""
        if self.index and self.edge and self.matches(kind, self.edge[0]):
            return (len(self.edge), 0, 0, 0, (), len(self.edge))
        return None

    def before(self, kind: str, stop: str, keep: int = 0) -> int:
        """How many places of ``kind`` lie before the next place of kind ``stop``.

        With ``keep``, before the last ``keep`` of those.
        """
        count, offset = 0, self.offset
        passing = self.left(stop) - keep if keep else 0
        for spot in self.edge[self.index :]:
            if self.matches(stop, spot):
                passing -= spot.count - offset
                if passing < 0:
                    return count
            if self.matches(kind, spot):
                count += spot.count - offset
            offset = 0
        return count

    def take(self, kind: str, count: int) -> bool:
        """Use up the next ``count`` places of ``kind``, passing over others; False if short."""
        held: list[tuple[int, int]] = []
        while count > 0 and self.index < len(self.edge):
            spot = self.edge[self.index]
            if self.matches(kind, spot):
                part = min(count, spot.count - self.offset)
                held += self._numbers[self.index].stretch(self.offset, part)
                count -= part
                self.taken += part
                self.offset += part
                if self.offset < spot.count:
                    break
            elif not spot.chains and spot.name not in UNCOUNTED:
                self.passed += spot.count - self.offset
            self.index += 1
            self.offset = 0
        self.held = tuple(held)
        return count == 0

    def ahead(self) -> Spot | None:
        """What comes next; None at the end."""
        return self.edge[self.index] if self.index < len(self.edge) else None

    def rest(self) -> Edge:
        """What is still before the cursor."""
        if self.index >= len(self.edge):
            return ()
        here = self.edge[self.index]
        return (replace(here, count=here.count - self.offset), *self.edge[self.index + 1 :])

    def run_left(self) -> int:
        """How many places like the next one lie side by side here."""
        return self.edge[self.index].count - self.offset

    def pass_over(self) -> None:
        """Leave out what comes next."""
        self.index, self.offset = self.index + 1, 0

    def to_last(self, kind: str, keep: int = 1, *, lacy: bool = False) -> None:
        """After a chain space or a gap, go on to the last ``keep`` places of ``kind``.

        ``lacy``: after any stitch, too, as in shells that go over part of a shell below.

        The stitches beside a space that is worked into, such as those of a V stitch, are
        passed over in silence; stitches behind a stitch are not.
        """
        last = self.edge[self.index - 1] if self.index and not self.offset else None
        if not lacy and (last is None or not (last.chains or last.name == "gap")):
            return
        spare = self.left(kind) - keep
        if spare > 0:
            before = self.taken
            self.take(kind, spare)
            self.passed += self.taken - before
            self.taken = before

    def take_group(self, key: str, beside: bool = False, nth: int = 0) -> bool:
        """Use up the next whole group of that key; False if none is left.

        ``beside``: only as far as its last chain space. ``nth``: only as far as that stitch
        of it; the last one where -1.
        """
        for i in range(self.index + (self.offset > 0), len(self.edge)):
            if self.edge[i].opens and self._is_group(key, i):
                j = self._group_end(i)
                if nth:
                    return self._take_in_group(i, j, nth)
                while beside and j > i + 1 and not self.edge[j - 1].chains:
                    j -= 1
                self.taken += sum(s.count for s in self.edge[i:j])
                middle = (i + j - 1) // 2
                nth = (self.edge[middle].count - 1) // 2
                self.held = ((self._numbers[middle].at(nth), 1),)
                self.index, self.offset = j, 0
                return True
        return False

    def take_in_same(self, key: str, nth: int) -> bool:
        """Go on to the ``nth`` stitch of the group that the cursor is in, or was in last."""
        start = min(self.index, len(self.edge) - 1)
        while start >= 0 and not (self.edge[start].opens and self._is_group(key, start)):
            start -= 1
        kept = self.state()
        if start < 0 or not self._take_in_group(start, self._group_end(start), nth):
            return False
        if self.state()[:2] < kept[:2]:
            self.go(kept)  # behind the cursor already
        return True

    def _take_in_group(self, start: int, end: int, nth: int) -> bool:
        """Put the cursor behind the ``nth`` stitch of the group in those spots."""
        count = sum(s.count for s in self.edge[start:end] if not s.chains)
        nth = count if nth < 0 else nth
        for i in range(start, end if nth <= count else start):
            spot = self.edge[i]
            if spot.chains:
                continue
            if nth <= spot.count:
                self.held = ((self._numbers[i].at(nth - 1), 1),)
                self.taken += 1
                self.index, self.offset = i, nth
                if nth == spot.count:
                    self.index, self.offset = i + 1, 0
                return True
            nth -= spot.count
        return False

    def start_at(self, kind: str, nth: int = 1) -> None:
        """Turn a closed edge so that it begins at the ``nth`` place of ``kind`` from here."""
        for i in range(self.index, len(self.edge)):
            spot = self.edge[i]
            if not self.matches(kind, spot):
                continue
            if nth > spot.count:
                nth -= spot.count
                continue
            head = replace(spot, count=nth - 1)
            rest = replace(spot, count=spot.count - nth + 1)
            before = (*self.edge[:i], head) if head.count else self.edge[:i]
            self.edge = (rest, *self.edge[i + 1 :], *_cut_off(before, spot))
            numbers = self._numbers
            turned_on = numbers[: i + 1] if head.count else numbers[:i]
            self._numbers = [numbers[i].after(nth - 1), *numbers[i + 1 :], *turned_on]
            self.held = ((self._numbers[0].at(0), 1),)
            self.index = self.offset = 0
            self._after.clear()
            return

    def turn_back(self) -> None:
        """Turn a closed edge so that it begins with what is its last spot now."""
        self.edge = (self.edge[-1], *self.edge[:-1])
        self._numbers = [self._numbers[-1], *self._numbers[:-1]]
        self._after.clear()

    def extend(self, spot: Spot) -> None:
        """Add places at the end (the other side of a foundation chain)."""
        self.edge = (*self.edge, spot)
        self._numbers.append(ELSEWHERE)
        self._names.add(spot.name)
        self._after.clear()


def _cut_off(before: Edge, spot: Spot) -> Edge:
    """What stands before ``spot``; the part of a group that it lies in is no group more."""
    end = len(before)
    while spot.group and not spot.opens and end and before[end - 1].group == spot.group:
        end -= 1
        spot = before[end]
    return (*before[:end], *(replace(s, group="", opens=False) for s in before[end:]))
