"""A piece's whole file as text: its head, then its log; and reading it back.

The head carries the pattern that the piece was started from. Reading stops at the first
line that does not fit; what comes before is sound, what comes after is damage.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass, field
from datetime import datetime
from itertools import pairwise
from typing import NamedTuple
from zlib import crc32

from tracker.notation.problems import visible
from tracker.session.entries import PutDown, Redo, Undo
from tracker.session.fields import EntryError
from tracker.session.history import Did, History, Walked, reached, timed
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
from tracker.session.state import Spot
from tracker.session.worked import Watch, seconds_of

GREETING = """\
# A piece in progress, kept by Hookside. Each press is one line at the end.
# To mend it by hand: close Hookside, delete lines from the end up to where things went
# wrong, and write lines of your own without a seal, with the next number, such as
#     12 = { round = [1, 1, 7, 1], steps = "13" }
# which stands in part 1, copy 1, round 7 of the part as printed, worked the 1st time
# (only rounds of open length are worked again), with 13 steps done. Or such as
#     13 = { change = [1, 1, 9], words = "*sc 4, inc; rep" }
# which works round 9 of part 1 otherwise, from copy 1 on.
"""

MOST_DOTS = 500
"""In one line of a head; reading a dotted name costs by the square of its dots."""


class PaperError(ValueError):
    """The head of a file cannot be read; the text says why, in one sentence."""


class Head(NamedTuple):
    """What a piece was started from, and when. ``pattern`` is the pattern's TOML text.

    ``file`` is where that pattern stood, "" where that is not known; ``over`` the seal of a
    changed text of it that the maker passed over, or "".
    """

    title: str
    size: str
    started: datetime
    pattern: str
    file: str = ""
    over: str = ""


@dataclass(slots=True, eq=False)
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
    """

    head: Head
    head_changed: bool
    history: History
    number: int = 0
    seal: int = 0
    sound: int = 0
    damage: bytes = b""
    later: Spot | None = None
    by_hand: int = 0
    put_down: bool = False
    when: str = ""
    watch: Watch = field(default_factory=Watch)


_LOG = re.compile(rb'\nsealed = "([0-9a-f]{8})"\r?\n\r?\n\[log\]\r?\n')


def write_head(head: Head) -> bytes:
    """The head as text, up to where the log begins."""
    import tomli_w

    fields = {
        "title": head.title,
        "size": head.size,
        "started": head.started,
        **({"file": head.file} if head.file else {}),
        **({"over": head.over} if head.over else {}),
        "pattern": head.pattern.replace("\r\n", "\n"),
    }
    table = tomli_w.dumps({"piece": fields}, multiline_strings=True)
    text = f"{GREETING}\n{table.rstrip()}".encode()
    return text + b'\nsealed = "%08x"\n\n[log]\n' % crc32(text)


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


def read_paper(data: bytes) -> Found:
    """What a file holds. Raises `PaperError` where even its head cannot be read."""
    end, changed = head_end(data)
    found = Found(_head(data[:end]), changed, History())
    _read_log(found, data, end)
    return found


def head_end(data: bytes) -> tuple[int, bool]:
    """Where the log begins, and whether the head was changed.

    A pattern may itself contain such lines: so the place where the seal fits counts.
    """
    matches = list(_LOG.finditer(data))
    for match in matches:
        if crc32(data[: match.start()]) == int(match[1], 16):
            return match.end(), False
    if matches:
        return matches[-1].end(), True
    line = re.search(rb"^1 = \{ .*\}\r?$", data, re.MULTILINE)
    return (line.start() if line else len(data)), True


def _head(raw: bytes) -> Head:
    if any(line.count(b".") > MOST_DOTS for line in raw.split(b"\n")):
        raise PaperError("its head cannot be read (a line has too many dots)")
    try:
        piece = tomllib.loads(raw.decode("utf-8"))["piece"]
        title, size, pattern = piece["title"], piece["size"], piece["pattern"]
        started = piece["started"]
        file, over = str(piece.get("file", "")), str(piece.get("over", ""))
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        raise PaperError(f"its head cannot be read ({visible(str(error))})") from None
    texts = isinstance(title, str) and isinstance(size, str) and isinstance(pattern, str)
    if not texts or not isinstance(started, datetime):
        raise PaperError("its head cannot be read (a value is of the wrong kind)")
    return Head(title, size, started, pattern, file, over)


def _read_log(found: Found, data: bytes, begin: int) -> None:
    found.sound = begin
    while found.sound < len(data):
        run = read_run(data, found.sound, found.number, found.seal)
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
