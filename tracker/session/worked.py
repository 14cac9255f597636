"""The time that a piece was worked on, its pauses left out.

Each line of a piece's file has its time, until the file is folded; so what the lines say is
recorded when the piece is put down.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import datetime, timedelta

from tracker.session.history import Did, Item

PAUSE = timedelta(minutes=15)
"""Two presses further apart have a pause between them. Our own choice, no source."""

WORTH = 10
"""Seconds; less is not worth a line."""

_LINE = re.compile(rb"^\d+ = \{ when = ([0-9T:.+Z-]+), (worked|down)?", re.MULTILINE)


def recorded(items: Iterable[Item]) -> int:
    """Seconds recorded in a history, taken back or not."""
    every = (item.done.worked or 0 for item in items if isinstance(item, Did))
    return max(every, default=0)


def since_recorded(log: bytes) -> int:
    """Seconds between the lines of a piece's file, after the last that recorded them."""
    total, last = timedelta(0), None
    for match in _LINE.finditer(log):
        when = _time(match[1])
        if match[2] == b"worked":
            total = timedelta(0)
        elif when is not None and last is not None:
            total += work_between(last, when)
        # What lies between putting down and taking up is a pause, however short.
        last = None if match[2] == b"down" else when
    return int(total.total_seconds())


def work_between(before: datetime, after: datetime) -> timedelta:
    """The time between two presses; nothing for a pause, or where the clock went back."""
    gap = after - before
    return gap if timedelta(0) <= gap <= PAUSE else timedelta(0)


def _time(stamp: bytes) -> datetime | None:
    try:
        when = datetime.fromisoformat(stamp.decode())
    except ValueError:
        return None
    return when if when.tzinfo else None
