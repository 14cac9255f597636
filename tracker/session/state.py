"""The state of a piece: where the maker stands, what was done, counted, noted, chosen.

The state after any history is the fold of its events.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from tracker.lean import NamedTuple
from tracker.pattern.changes import Change
from tracker.session.place import Asking, Pace

Copy = tuple[int, int]
"""(part, copy), both from 0."""

BLOCK = 64
"""Rounds whose counts are kept together, so that a new count copies little."""


class RoundKey(NamedTuple):
    """One round that was worked: number ``round`` of the part, ``nth`` time of it (from 0).

    The number is that of `Change.round`: a round that the maker added has one above those
    of the pattern, so that adding one moves no other.

    ``nth`` is 0 but for rounds of open length, which are worked again and again.
    """

    part: int
    copy: int
    round: int
    nth: int


class Spot(NamedTuple):
    """Where the maker stands, or stood; everything counted from 0.

    ``round`` and ``nth`` as in `RoundKey`; ``step`` as in `Place`; ``loop`` is how many
    loops of that step's stitch are done.
    """

    part: int = 0
    copy: int = 0
    round: int = 0
    nth: int = 0
    step: int = 0
    loop: int = 0

    @property
    def key(self) -> RoundKey:
        """The round it lies in."""
        return RoundKey(self.part, self.copy, self.round, self.nth)

    @property
    def of(self) -> Copy:
        """The part and copy it lies in."""
        return (self.part, self.copy)


START = Spot()
"""Where every piece begins."""


class Progress(NamedTuple):
    """How far a piece is: where each part and copy was left, and how often lengths were worked.

    ``again`` as in `State`.
    """

    left: Mapping[Copy, Spot]
    finished: frozenset[Copy]
    again: Mapping[tuple[int, int, int], int]


class Weighed(NamedTuple):
    """What was left of a yarn, all balls of it together, and how far the piece was then.

    ``left`` is as the maker wrote it: "43 g", "1.5 oz".
    """

    yarn: str
    left: str
    at: Spot
    progress: Progress


class Counts(NamedTuple):
    """What the maker counted, by round, in blocks of `BLOCK` rounds."""

    blocks: Mapping[tuple[int, int, int], Mapping[tuple[int, int], int]] = MappingProxyType({})

    def get(self, key: RoundKey) -> int | None:
        """The count kept with a round, or None."""
        block = self.blocks.get(_block(key))
        return None if block is None else block.get((key.round, key.nth))

    def put(self, key: RoundKey, count: int) -> Counts:
        """These counts with one more, or one changed."""
        name = _block(key)
        block = {**self.blocks.get(name, {}), (key.round, key.nth): count}
        return Counts({**self.blocks, name: block})

    def put_all(self, counts: Iterable[tuple[RoundKey, int]]) -> Counts:
        """These counts with many more."""
        blocks = dict(self.blocks)
        fresh: dict[tuple[int, int, int], dict[tuple[int, int], int]] = {}
        for key, count in counts:
            name = _block(key)
            if name not in fresh:
                blocks[name] = fresh[name] = dict(blocks.get(name, {}))
            fresh[name][key.round, key.nth] = count
        return Counts(blocks)

    def items(self) -> Iterable[tuple[RoundKey, int]]:
        """Every round with a count, in no promised order."""
        for (part, copy, _), block in self.blocks.items():
            for (line, nth), count in block.items():
                yield RoundKey(part, copy, line, nth), count


def _block(key: RoundKey) -> tuple[int, int, int]:
    return key.part, key.copy, (key.round + key.nth) // BLOCK


class State(NamedTuple):
    """All that is true of a piece besides its pattern.

    Attributes:
        spot: where the maker stands.
        left: where each other part and copy was left; absent if never begun.
        finished: parts and copies that are done.
        counted: the count of the round just finished is in, though the maker still
            stands at its end.
        pace, asking, loops_shown: the maker's choices.
        mark: the marked place, or None.
        chosen: parts chosen among alternatives, the latest choice last.
        counts: what was counted, by round.
        again: how often each round of open length was worked beyond the first time, by
            (part, copy, round).
        spread: by how many stitches the round below is off (-2: two too few), for each
            round that is worked so as to come right all the same.
        notes: the maker's notes, by where the maker stood.
        measured: lengths as the maker wrote them ("14.5 cm"), by where the maker stood.
        weighed: what was left of the yarns, the latest last.
        changes: what is worked otherwise than the pattern has it, for each version of a
            part by the copy from which on it is worked (see `State.version`).
    """

    spot: Spot = START
    left: Mapping[Copy, Spot] = MappingProxyType({})
    finished: frozenset[Copy] = frozenset()
    counted: bool = False
    pace: Pace = Pace.STITCH
    asking: Asking = Asking.EVERY
    loops_shown: bool = False
    mark: Spot | None = None
    chosen: tuple[int, ...] = ()
    counts: Counts = Counts()
    again: Mapping[tuple[int, int, int], int] = MappingProxyType({})
    spread: Mapping[RoundKey, int] = MappingProxyType({})
    notes: Mapping[Spot, str] = MappingProxyType({})
    measured: Mapping[Spot, str] = MappingProxyType({})
    weighed: tuple[Weighed, ...] = ()

    changes: Mapping[Copy, tuple[Change, ...]] = MappingProxyType({})

    @property
    def progress(self) -> Progress:
        """How far the piece is."""
        return Progress({**self.left, self.spot.of: self.spot}, self.finished, self.again)

    def left_at(self, part: int, copy: int) -> Spot:
        """Where that part and copy was left; its beginning if never begun."""
        if (part, copy) == self.spot.of:
            return self.spot
        return self.left.get((part, copy), Spot(part, copy))

    def times(self, part: int, copy: int, line: int) -> int:
        """How many rounds the pattern's round ``line`` has become (1 or more)."""
        return 1 + self.again.get((part, copy, line), 0)

    def version(self, part: int, copy: int) -> tuple[Change, ...]:
        """What is worked otherwise in that part and copy: a copy is like the one before it."""
        copies = [c for p, c in self.changes if p == part and c <= copy]
        return self.changes[part, max(copies)] if copies else ()
