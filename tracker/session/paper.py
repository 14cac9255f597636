"""A piece's whole file as text: its head, then its log; and reading it back.

The head carries the pattern that the piece was started from. Reading stops at the first
line that does not fit; what comes before is sound, what comes after is damage.
"""

from __future__ import annotations

from datetime import datetime
from itertools import pairwise
from zlib import crc32

from tracker.session.entries import PutDown, Redo, Undo
from tracker.session.fields import EntryError
from tracker.session.head import Head, head_end, read_head, write_head
from tracker.session.history import Before, History
from tracker.session.items import Did, Walked, reached, timed
from tracker.session.lines import (
    Line,
    Run,
    printed_seal,
    read_line,
    read_run,
    seal_after,
    stamp_of,
    write_line,
)
from tracker.session.midway import READ_ANEW, Midway, items_of, text_of
from tracker.session.state import Spot
from tracker.session.worked import Watch, seconds_of, worked

GROWN = 4 * READ_ANEW
"""Bytes since what was kept, beyond which it is worth keeping anew."""


class Found:
    """What a file holds.

    Attributes:
        head: its head.
        head_changed: the head is not as it was written.
        history: the presses up to the first line that does not fit.
        number, seal: of the last sound line.
        sound: how many bytes of the file are sound.
        damage: the bytes after those.
        later: where the maker stood by the last line of the damage that can still be read.
        by_hand: lines at the end that were written by hand.
        put_down: the last line says that the piece was closed in good order.
        when: when the last line was made, as written; "" if not said.
        watch: what the lines took so far.
        midway: what is worth keeping for the next time; None where nothing is.
    """

    def __init__(self, head: Head, history: History, *, changed: bool = False) -> None:
        self.head = head
        self.history = history
        self.head_changed = changed
        self.number = self.seal = self.sound = self.by_hand = 0
        self.damage = b""
        self.later: Spot | None = None
        self.put_down = False
        self.when = ""
        self.watch = Watch()
        self.midway: Midway | None = None


def write_paper(head: Head, history: History, when: datetime) -> tuple[bytes, int, int]:
    """A whole file: its text, and the number and the seal of its last line."""
    parts, number, seal, stamp = [write_head(head)], 0, 0, stamp_of(when)
    for number, item in enumerate(history.items, start=1):
        made = stamp_of(datetime.fromtimestamp(item.when, when.tzinfo)) if item.when else stamp
        line, seal = write_line(number, item, made, seal, item.took if item.when else 0)
        parts.append(line)
    if history.undone:
        number += 1
        line, seal = write_line(number, Undo(history.undone), stamp, seal)
        parts.append(line)
    return b"".join(parts), number, seal


def read_paper(data: bytes, midway: Midway | None = None) -> Found:
    """What a file holds; read on from ``midway`` where it begins so.

    Raises `PaperError` where even its head cannot be read.
    """
    if midway is not None and midway.begins(data):
        found = _begun(data, midway)
        stop = len(data) - READ_ANEW if len(data) - midway.size > GROWN else 0
    else:
        end, changed = head_end(data)
        found = Found(read_head(data[:end]), History(), changed=changed)
        found.sound = end
        stop = 0 if changed else max(end, len(data) - READ_ANEW)
    if stop:
        _read_log(found, data, stop)
        found.midway = _midway(found, data)
    if not found.damage:
        _read_log(found, data, len(data))
    return found


def _begun(data: bytes, midway: Midway) -> Found:
    """What a file holds up to ``midway``."""
    before = Before(
        midway.state,
        midway.presses,
        midway.items,
        midway.worked,
        lambda: items_of(midway.latest),
        lambda: read_paper(data[: midway.size]).history,
    )
    found = Found(midway.head, History(before))
    found.number, found.seal, found.sound = midway.number, midway.seal, midway.size
    found.put_down, found.when = midway.put_down, midway.stamp
    found.watch = Watch(midway.pressed, midway.at)
    return found


def _midway(found: Found, data: bytes) -> Midway | None:
    """What was found so far, to be kept; None where it does not tell all."""
    history = found.history
    if found.damage or found.by_hand or history.undone:
        return None
    try:
        latest = text_of(history.latest)
    except TypeError:
        return None
    return Midway(
        size=found.sound,
        check=crc32(memoryview(data)[: found.sound]),
        number=found.number,
        seal=found.seal,
        stamp=found.when,
        put_down=found.put_down,
        pressed=found.watch.when,
        presses=history.done,
        items=history.many,
        worked=worked(history),
        latest=latest,
        at=found.watch.at,
        head=found.head,
        state=history.state,
    )


def _read_log(found: Found, data: bytes, until: int) -> None:
    """Read on, up to the first line that begins at ``until`` or after it."""
    while found.sound < until:
        run = read_run(data, found.sound, found.number, found.seal, until)
        if run.entries:
            _take_run(found, run)
            continue
        stop = data.find(b"\n", found.sound)
        stop = len(data) if stop < 0 else stop
        raw = data[found.sound : stop]
        if not is_remark(raw):
            try:
                _take(found, read_line(raw, found.seal), raw)
            except EntryError:
                found.damage = data[found.sound :]
                found.later = _later(found.damage)
                return
        found.sound = min(stop + 1, len(data))


def _later(damage: bytes) -> Spot | None:
    """The last spot among lines that are damaged no further than by what they follow."""
    lines = damage.split(b"\n")
    for before, raw in reversed(list(pairwise(lines))):
        seal = printed_seal(before)
        spot = None if seal is None else _spot_of(raw, seal)
        if spot is not None:
            return spot
    return None


def _spot_of(raw: bytes, before: int) -> Spot | None:
    try:
        line = read_line(raw, before)
    except EntryError:
        return None
    if line.seal is None or not isinstance(line.entry, Walked | Did):
        return None
    return line.entry.event(line.entry.presses).spot


def is_remark(raw: bytes) -> bool:
    """A blank line, or a comment; but not an entry whose first character was hit."""
    return not raw.strip() or (raw.startswith(b"#") and b"seal" not in raw)


def _take(found: Found, line: Line, raw: bytes) -> None:
    if line.number != found.number + 1:
        raise EntryError("out of order")
    _replay(found, line)
    found.number += 1
    found.by_hand = found.by_hand + 1 if line.seal is None else 0
    found.seal = seal_after(raw, found.seal) if line.seal is None else line.seal
    found.put_down = isinstance(line.entry, PutDown)
    found.when = line.when


def _take_run(found: Found, run: Run) -> None:
    for entry, (stamp, took) in zip(run.entries, run.times, strict=True):
        when = seconds_of(stamp.decode())
        gap = found.watch.pressed(when, entry.spot(entry.presses))
        found.history.add(entry._replace(when=when, took=gap if took is None else int(took)))
    found.number += len(run.entries)
    found.by_hand, found.put_down = 0, False
    found.seal, found.when, found.sound = run.seal, run.when.decode(), run.end


def _replay(found: Found, line: Line) -> None:
    entry, history, watch, when = line.entry, found.history, found.watch, seconds_of(line.when)
    if isinstance(entry, PutDown):
        watch.put_down()
    elif isinstance(entry, Undo | Redo):
        watch.pressed(when)
        move = history.undo if isinstance(entry, Undo) else history.redo
        move(entry.presses)
    else:
        gap = watch.pressed(when, reached(entry))
        history.add(timed(entry, when, gap if line.took is None else line.took))
