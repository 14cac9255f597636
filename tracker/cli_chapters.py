"""``hookside chapters``: chapter marks of a recording of a piece."""

from __future__ import annotations

import json
from datetime import date, datetime, time
from pathlib import Path
from typing import TYPE_CHECKING

from tracker.cli import Complaint
from tracker.cli_piece import meant, opened
from tracker.notation.problems import visible

if TYPE_CHECKING:
    from tracker.session.chapters import Chapter


def chapters(word: str | None, began: str, ended: str | None, *, as_json: bool) -> int:
    """Print when each round was begun, counted from the beginning of a recording.

    Raises `Complaint`: a time cannot be read, or nothing was pressed in the recording.
    """
    from tracker.session.chapters import lines

    path = meant(word)
    found = opened(lambda: _found(path, began, ended))
    if not found:
        span = f"between {began} and {ended}" if ended else f"in the hour after {began}"
        raise Complaint(f"nothing was pressed in {path.name} {span}")
    if as_json:
        marks = [{"seconds": one.at, "part": one.part, "round": one.round} for one in found]
        print(json.dumps({"file": str(path), "chapters": marks}, indent=2))
        return 0
    for line in lines(found):
        print(visible(line))
    return 0


def _found(path: Path, began: str, ended: str | None) -> tuple[Chapter, ...]:
    from tracker.session.chapters import chapters
    from tracker.session.contents import read_piece
    from tracker.session.files import RealDisk
    from tracker.session.looking import plan_at
    from tracker.session.moments import moments

    data, found = read_piece(path, RealDisk())
    log = list(moments(data))
    last = max((moment.when for moment in log), default=0)
    day = datetime.fromtimestamp(last).astimezone().date()
    begin = _moment(began, day)
    end = None if ended is None else _moment(ended, day)
    return chapters(plan_at(path, found), log, begin, end)


def _moment(words: str, day: date) -> int:
    """A date and time, or a time of ``day``, in seconds since 1970. Raises `Complaint`."""
    try:
        return int(_read_moment(words, day).astimezone().timestamp())
    except (ValueError, OverflowError):
        form = 'write it as "10:15", "10:15:30" or "2026-03-02 10:15"'
        raise Complaint(f'"{words}" is no time: {form}') from None


def _read_moment(words: str, day: date) -> datetime:
    """Raises `ValueError`."""
    try:
        return datetime.combine(day, time.fromisoformat(words))
    except ValueError:
        return datetime.fromisoformat(words)
