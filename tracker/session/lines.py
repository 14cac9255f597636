"""The lines of a piece's file: one entry a line, numbered and sealed.

An entry is one line of TOML that begins with its number and ends in a seal:

    12 = { when = 2026-03-02T10:15:04+00:00, round = [1, 1, 7, 1], steps = "13", seal = "…" }

The seal is a CRC-32 over the line before it, begun from the seal of the entry before, so
that a line that is torn, changed, lost, doubled or out of order does not fit. An entry
without a seal was written by hand.
"""

from __future__ import annotations

import re
from datetime import datetime
from zlib import crc32

from tracker.lean import NamedTuple
from tracker.session.entries import Entry, common_entry, entry_of, entry_text
from tracker.session.fields import EntryError
from tracker.session.items import Walked


class Line(NamedTuple):
    """One line as read: its number, its entry, when it was made, what it took, its seal.

    ``took`` is None where the line does not say it; ``seal`` where it was written by hand.
    """

    number: int
    entry: Entry
    when: str
    took: int | None
    seal: int | None


# Patterns are made when a line is first read by them: where few are left to read, most are
# not needed.
_LINE = rb'(\d{1,10}) = \{ (.*?)(?:, seal = "([0-9a-f]{8})")? \}\r?'

_BEFORE_SEAL = len(', seal = "')

_COMMON = (
    rb"(\d{1,9}) = \{ when = ([0-9T:.+-]+)"
    rb", round = \[(\d{1,9}), (\d{1,9}), (\d{1,9}), (\d{1,9})\]"
    rb', steps = "(\d{1,9})(?:-(\d{1,9}))?"'
    rb"(?:, count = \[((?:\d{1,9}, ){4}\d{1,9})\])?(?:, more = (true))?"
    rb"(?:, took = (\d{1,9}))?"
    rb', seal = "([0-9a-f]{8})" \}\n'
)


def stamp_of(when: datetime) -> str:
    """A time as the lines have it."""
    return when.isoformat(timespec="seconds")


def write_line(
    number: int, entry: Entry, stamp: str, before: int, took: int | None = None
) -> tuple[bytes, int]:
    """The line of an entry made at ``stamp`` (see `stamp_of`), and its seal.

    ``before`` is the seal of the entry before it. ``took``: the seconds it took, where the
    times of the lines do not tell that.
    """
    body = f"{number} = {{ when = {stamp}, {entry_text(entry, took)}".encode()
    seal = crc32(body, before)
    return b'%s, seal = "%08x" }\n' % (body, seal), seal


class Run(NamedTuple):
    """Lines of the commonest kind, read in one go: their entries and those of the last one.

    ``times`` are when each was made and what it took, if it says so; ``end`` is where in
    the data the next line begins.
    """

    entries: list[Walked]
    times: list[tuple[bytes, bytes | None]]
    when: bytes
    seal: int
    end: int


def read_run(data: bytes, at: int, number: int, before: int, until: int) -> Run:
    """The lines of ``data`` from ``at`` on, as long as they are of the commonest kind.

    Those only move within a round, with or without a count. ``number`` and ``before`` are
    the number and the seal of the line before; no line is read that begins at ``until`` or
    after it. A line that does not fit ends the run: `read_line` says why.
    """
    entries: list[Walked] = []
    times: list[tuple[bytes, bytes | None]] = []
    when = b""
    common = re.compile(_COMMON)
    while at < until and (match := common.match(data, at)) is not None:
        printed, stamp, *numbers, to, count, more, took, seal = match.groups()
        fits = crc32(data[at : match.start(12) - _BEFORE_SEAL], before)
        entry = common_entry([*map(int, numbers)], to, count, more)
        if entry is None or fits != int(seal, 16) or int(printed) != number + 1:
            break
        entries.append(entry)
        times.append((stamp, took))
        number, before, when, at = number + 1, fits, stamp, match.end()
    return Run(entries, times, when, before, at)


def read_line(raw: bytes, before: int) -> Line:
    """The entry of a line (without its line end).

    ``before`` is the seal of the entry before. Raises `EntryError` where the line is not an
    entry, or its seal does not fit.
    """
    match = re.fullmatch(_LINE, raw)
    if match is None:
        raise EntryError("not an entry")
    number, fields, seal = match.groups()
    if seal is None:
        return _read(number, fields, None)
    fits = crc32(raw[: match.end(2)], before)
    if fits != int(seal, 16):
        raise EntryError("its seal does not fit")
    return _read(number, fields, fits)


def printed_seal(raw: bytes) -> int | None:
    """The seal that a line prints, whether it fits or not; None where it prints none."""
    match = re.fullmatch(_LINE, raw)
    return int(match[3], 16) if match and match[3] else None


def seal_after(raw: bytes, before: int) -> int:
    """The seal to go on from after a line written by hand."""
    return crc32(raw, before)


def _read(number: bytes, text: bytes, seal: int | None) -> Line:
    said = entry_of(text.decode("utf-8", "replace"))
    return Line(int(number), said.entry, said.when, said.took, seal)
