"""What a file held up to one of its lines, kept so that a long one is not read from its start.

It stands for those very bytes: it is used only where the file still begins with them, and
may be thrown away at any time. The last lines are always read, so that taking back a few
presses needs nothing from before them.
"""

from __future__ import annotations

import json
import os
from collections.abc import Mapping, Sequence
from datetime import datetime
from itertools import chain
from zlib import crc32

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session.flat import flat, raised
from tracker.session.head import Head
from tracker.session.kept import keep, kept
from tracker.session.state import Counts, Spot, State

READ_ANEW = 4 * 1024
"""Bytes at the end of a file that are read every time: some 40 lines."""

if TYPE_CHECKING:
    from tracker.session.files import StrPath
    from tracker.session.items import Item

Block = Mapping[tuple[int, int], int]


class Midway(NamedTuple):
    """What the first ``size`` bytes of a file hold; ``check`` is their CRC-32.

    Attributes:
        number, seal, stamp: of the last line; the stamp is its time as written.
        put_down: it says that the piece was closed in good order.
        pressed, at: when the last press was made (see `Watch`), and where it led.
        presses, items, worked: how many there are; the seconds that they tell of.
        latest: the last items, as text; see `items_of`.
        head: the head of the file.
        state: the state after them.
    """

    size: int
    check: int
    number: int
    seal: int
    stamp: str
    put_down: bool
    pressed: int
    presses: int
    items: int
    worked: int
    latest: str
    at: Spot | None
    head: Head
    state: State

    def begins(self, data: bytes) -> bool:
        """Whether a file's bytes begin with those that this stands for."""
        return len(data) >= self.size and crc32(memoryview(data)[: self.size]) == self.check


def text_of(items: Sequence[Item]) -> str:
    """Items as text, for `Midway.latest`. Raises TypeError where they cannot be kept."""
    return json.dumps(flat(tuple(items)), separators=(",", ":"))


def items_of(text: str) -> Sequence[Item]:
    """The items that were made a text. Read only where somebody asks for them."""
    items: Sequence[Item] = raised(json.loads(text))  # type: ignore[assignment]
    return items


def kept_midway(path: StrPath) -> Midway | None:
    """What was kept for the file at a path, or None. It may be of a file that was there once."""
    body = kept(_name(path))
    if body is None:
        return None
    try:
        plain, at, (title, size, started, *texts), flat_state, counts = json.loads(body)
        head = Head(title, size, datetime.fromisoformat(started), *texts)
        state, spot = raised(flat_state), raised(at)
        blocks = {tuple(name): _block(bare) for name, bare in counts}
        if not isinstance(state, State) or not isinstance(spot, Spot | None):
            return None
        return Midway._make([*plain, spot, head, state._replace(counts=Counts(blocks))])
    except (ValueError, TypeError, IndexError, RecursionError):
        return None


def keep_midway(path: StrPath, midway: Midway) -> None:
    """Keep it for the next time; not where its state is of a kind that cannot be kept."""
    # A piece may have ten thousand counts: so they are kept as bare numbers.
    counts = [[name, _bare(block)] for name, block in midway.state.counts.blocks.items()]
    try:
        at, state = flat(midway.at), flat(midway.state._replace(counts=Counts()))
    except TypeError:
        return
    plain, head = midway[: Midway._fields.index("at")], [*map(str, midway.head)]
    body = json.dumps([plain, at, head, state, counts], separators=(",", ":"))
    keep(_name(path), body.encode())


def _bare(block: Block) -> list[int]:
    """Line, time and count of each round, one after the other."""
    return [*chain.from_iterable((*where, count) for where, count in block.items())]


def _block(bare: list[int]) -> Block:
    return dict(zip(zip(bare[::3], bare[1::3], strict=True), bare[2::3], strict=True))


def _name(path: StrPath) -> str:
    return f"{crc32(os.fsencode(os.path.abspath(path))):08x}.midway"
