"""The edge a round leaves: the stitches and chain spaces the next one is worked into."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from tracker.fabric.places import ELSEWHERE, Places, numbered
from tracker.notation.dictionary import base_of


@dataclass(frozen=True, slots=True)
class Spot:
    """``count`` equal places side by side.

    Attributes:
        name: US name of the stitch, "ch" for a chain worked into by itself, or one of
            `UNCOUNTED`.
        count: how many.
        chains: 0, or the length of a chain space (then ``count`` spaces of that length).
        group: key of the special stitch it is part of; "" for none.
        opens: whether it is the first of its group.
        live: whether a chain space stands for as many stitches as it has chains, as over
            an opening: then each of its chains is worked into.
        each: how many of them went into each place, one place after another.
    """

    name: str
    count: int = 1
    chains: int = 0
    group: str = ""
    opens: bool = False
    live: bool = False
    each: int = 1

    def more(self, count: int) -> Spot:
        """The same with ``count`` more places; quicker than `replace`, which a round often is."""
        return Spot(
            self.name,
            self.count + count,
            self.chains,
            self.group,
            self.opens,
            self.live,
            self.each,
        )


Edge = tuple[Spot, ...]
Cursor = tuple[int, int, int, int, Places, int]

#: Places that are no stitches: a turning chain that is not counted, a slip stitch that only
#: holds down the petals beside it, a gap between two groups.
UNCOUNTED = frozenset(("tch", "anchor", "gap"))
#: Stitches that an earlier round passed over, at the edge of an opening.
SKIPPED = "skipped st"
#: Stitches round a post, whichever they are: "each FP st".
POSTED = frozenset(("fp", "bp"))
#: Names that a group of stitches in one place may be called by.
GROUPED = frozenset(("shell", "v-st", "fan", "group"))


def space(length: int, group: str = "") -> Spot:
    """A chain space of ``length`` chains."""
    return Spot(f"ch-{length} sp", 1, length, group)


def plain_edge(count: int, name: str = "st") -> Edge:
    """``count`` stitches of which no more is known."""
    return (Spot(name, count),) if count > 0 else ()


def singled(edge: Edge) -> Edge:
    """The same edge with every longer chain space taken apart into single chains."""
    return tuple(Spot("ch", s.chains * s.count) if s.chains > 1 else s for s in edge)


def live(edge: Edge) -> Edge:
    """The same edge with the chains over an opening taken as single places."""
    return tuple(Spot("ch", s.chains * s.count) if s.live else s for s in edge)


def cornered(edge: Edge) -> Edge:
    """An edge without chain spaces, whose corners are groups such as "3 sc in one st".

    The middle stitch of each such group becomes a place of its own, named "corner" by its
    group.
    """
    found: list[Spot] = []
    for spot in edge:
        half = spot.count // 2
        if spot.group != "group" or spot.count % 2 == 0 or spot.count < 3:
            found.append(spot)
            continue
        found.append(replace(spot, count=half))
        found.append(replace(spot, count=1, group="corner", opens=True))
        found.append(replace(spot, count=half, opens=False))
    return tuple(found)


def turned(edge: Edge) -> Edge:
    """The edge as met when the work is turned: a group opens at its other end."""
    found: list[Spot] = []
    for i in range(len(edge) - 1, -1, -1):
        spot = edge[i]
        last = i + 1 == len(edge) or edge[i + 1].opens or edge[i + 1].group != spot.group
        opens = bool(spot.group) and last
        found.append(spot if spot.opens == opens else replace(spot, opens=opens))
    return tuple(found)


def stitches(edge: Edge) -> int:
    """How many stitches (not spaces) the edge has."""
    return sum(s.count for s in edge if not s.chains and s.name not in UNCOUNTED)


def made(edge: Iterable[Spot]) -> dict[str, int]:
    """How many of each stitch and each kind of space, by name."""
    found: dict[str, int] = {}
    for spot in edge:
        if spot.name not in UNCOUNTED:
            found[spot.name] = found.get(spot.name, 0) + spot.count
    return found


class Below:
    """A cursor over the edge of the round below.

    ``taken`` counts the places used, ``passed`` the stitches passed over on the way.

    ``loose``: a stitch named in the instructions means any stitch. ``singly``: chain
    spaces are worked into chain by chain, so that each chain is a place like a stitch;
    ``opened``: those over an opening are. ``gaps``: the gaps between groups are places, too.
    ``held``: the places taken last.
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
        self.edge = singled(edge) if singly else edge
        self._numbers = numbered(given, [spot.count for spot in self.edge])
        if gaps:
            self._open_gaps()
        self.held: Places = ()
        self.singly = singly
        self.index = 0
        self.offset = 0
        self.taken = 0
        self.passed = 0
        self.loose = loose
        edge = self.edge
        self._names = {s.name for s in edge} | {base_of(s.name) for s in edge}
        self._groups = {s.group for s in edge if s.group}
        self._longest = max((s.chains for s in edge), default=0)
        # The first corner may be told without brackets; several such spaces are no corners.
        longest = [bool(s.group) for s in edge if s.chains == self._longest > 0]
        self._in_groups = any(longest) and longest.count(False) > 1
        self._after: dict[str, list[int]] = {}

    def _open_gaps(self) -> None:
        """Put a gap between every two groups; a lone stitch before a group is its edge."""
        self._part_groups()
        edge: list[Spot] = []
        numbers = []
        for i, spot in enumerate(self.edge):
            if i and self._gap_before(i):
                edge.append(Spot("gap"))
                numbers.append(ELSEWHERE)
            edge.append(spot)
            numbers.append(self._numbers[i])
        if edge and edge[-1].group:
            edge.append(Spot("gap"))  # where the round meets its beginning
            numbers.append(ELSEWHERE)
        self.edge, self._numbers = tuple(edge), numbers

    def _part_groups(self) -> None:
        """Take "3 dc in each st" for as many groups; pairs only where there are no others."""
        others = any(spot.group or spot.each > 2 for spot in self.edge)
        edge: list[Spot] = []
        numbers = []
        for spot, number in zip(self.edge, self._numbers, strict=True):
            if spot.group or spot.each < 2 + others:
                edge.append(spot)
                numbers.append(number)
                continue
            for begin in range(0, spot.count, spot.each):
                edge.append(replace(spot, count=spot.each, group="group", opens=True))
                numbers.append(number.after(begin))
        self.edge, self._numbers = tuple(edge), numbers

    def _gap_before(self, at: int) -> bool:
        """Whether a group ends just before spot ``at`` and another begins there."""
        before, spot = self.edge[at - 1], self.edge[at]
        if spot.opens:
            return bool(before.group) or self._loose_run(at - 1, -1) > 1
        return bool(before.group) and not spot.group and self._loose_run(at, 1) > 1

    def _loose_run(self, at: int, step: int) -> int:
        """How many stitches outside any group stand side by side from spot ``at`` on."""
        count = 0
        while 0 <= at < len(self.edge) and not self.edge[at].group and not self.edge[at].chains:
            count += self.edge[at].count
            at += step
        return count

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

    def matches(self, kind: str, spot: Spot) -> bool:
        """Whether ``spot`` is a place of ``kind`` (as `Target.kind` names it)."""
        if spot.chains:
            return self._is_space(kind, spot)
        if spot.name in ("tch", "gap") or kind in ("tch", "gap"):
            return kind == spot.name
        if spot.name == "anchor":
            return kind in ("sl st", "post")
        if kind in ("sp", "corner") or kind.endswith(" sp"):
            return kind == spot.group == "corner"
        if kind in ("post", "lone"):
            return not spot.group
        if (
            kind in ("st", "st+ch", "st+sp")
            or spot.name == "st"
            or self.loose
            or not self.knows(kind)
        ):
            return True
        if kind in POSTED:
            return spot.name.startswith(kind)
        return spot.name == kind or base_of(spot.name) == base_of(kind)

    def _is_space(self, kind: str, spot: Spot) -> bool:
        if kind == "corner":
            return spot.chains == self._longest and (bool(spot.group) or not self._in_groups)
        if self.singly and spot.chains == 1 and kind in ("st", "ch"):
            return True
        return kind in ("sp", "st+ch", "st+sp", spot.name)

    def knows(self, kind: str) -> bool:
        """Whether the edge has stitches of that name."""
        if kind == "sl st" and "anchor" in self._names:
            return True
        if kind in POSTED:
            return any(name.startswith(kind) for name in self._names)
        return kind in self._names or base_of(kind) in self._names

    def has_group(self, kind: str) -> bool:
        """Whether the edge has groups (fans, V stitches) of that key."""
        if kind in self._groups or (kind == "group" and bool(self._groups)):
            return True
        return kind in GROUPED and "group" in self._groups

    def has_space(self) -> bool:
        """Whether the edge has any chain space."""
        return self._longest > 0

    def has_gap(self) -> bool:
        """Whether the edge has gaps between groups."""
        return "gap" in self._names

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

    def _group_end(self, start: int) -> int:
        """Index just past the group that opens at ``start``."""
        name, end = self.edge[start].group, start + 1
        while end < len(self.edge) and self.edge[end].group == name and not self.edge[end].opens:
            end += 1
        return end

    def _is_group(self, key: str, start: int) -> bool:
        """Whether the group that opens at ``start`` may be called ``key``.

        A group written out in brackets has no name of its own: it is called a shell where
        no other is, or where it looks like those that are.
        """
        name = self.edge[start].group
        if key in (name, "group"):
            return True
        if name != "group" or key not in GROUPED:
            return False
        shapes = self._shapes_of(key)
        return not shapes or self._shape(start) in shapes

    def _shape(self, start: int) -> tuple[int, ...]:
        """The chain spaces of the group that opens at ``start``."""
        spots = self.edge[start : self._group_end(start)]
        return tuple(s.chains for s in spots if s.chains)

    def _shapes_of(self, key: str) -> set[tuple[int, ...]]:
        """What the groups called ``key`` look like; else those with a space, if any has."""
        opening = [i for i, s in enumerate(self.edge) if s.opens and s.group]
        named = {self._shape(i) for i in opening if self.edge[i].group == key}
        return named or {shape for i in opening if (shape := self._shape(i))}

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
