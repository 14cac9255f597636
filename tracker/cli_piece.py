"""What the commands share: finding a piece, and opening it."""

from __future__ import annotations

import os
from pathlib import Path

from tracker.cli import Complaint
from tracker.cli_pattern import is_path, load
from tracker.lean import TYPE_CHECKING
from tracker.session import shelf
from tracker.session.files import ENDING

if TYPE_CHECKING:
    import re
    from collections.abc import Callable, Sequence
    from typing import TypeVar

    from tracker.session.session import Session

    Found = TypeVar("Found")

NO_PIECE = 1

_ELSEWHERE = "hookside where looks at it; hookside work NAME --take-over goes on with it here."
"""What to do about a piece that is open in another window."""


def meant(word: str | None) -> Path:
    """The piece a word means; without one the latest. Raises `Complaint`."""
    path = (piece_called(word) or _of_pattern(word)) if word else latest_piece()
    if path is None:
        text = f'no piece is called "{word}"' if word else "no piece is begun yet"
        raise Complaint(f"{text}: {how_to_begin()}", NO_PIECE)
    return path


def piece_called(word: str) -> Path | None:
    """The piece a word means: its file, or its name on the shelf."""
    if word.endswith(ENDING) and os.path.lexists(word):
        return Path(word)
    if is_path(word):
        return None
    found = shelf.find(shelf.pieces_folder(), word) or _stray(word)
    return found.path if found else None


def _of_pattern(word: str) -> Path | None:
    """The piece of the pattern a word means: of a demo pattern, or of a pattern file."""
    from tracker.pattern import library

    path = Path(word) if is_path(word) else library.find(word)
    if path is None or not path.is_file():
        return None
    found = begun(load(path).title)
    return found.path if found else None


def begun(title: str) -> shelf.OnShelf | None:
    """The piece of a pattern, by the name it was given or, where it has another, its title."""
    folder = shelf.pieces_folder()
    found = shelf.find(folder, title)
    if found is not None:
        return found
    from tracker.session.about import titled

    return titled(folder, title)


def _stray(name: str) -> shelf.OnShelf | None:
    """The piece of that name that does not lie with the others."""
    from tracker.session.places import strays

    every = strays(shelf.pieces_folder())
    return next((one for one in every if one.touched and one.name == name), None)


def latest_piece() -> Path | None:
    """The piece written last, or None."""
    found = shelf.latest(shelf.pieces_folder())
    return found.path if found else None


def how_to_begin() -> str:
    """What a maker without a piece can do."""
    return "hookside patterns lists what you can begin, or name a pattern file (.toml)"


def opened(action: Callable[[], Found]) -> Found:
    """What ``action`` returns; where a piece cannot be opened, a `Complaint`."""
    try:
        return action()
    except Exception as error:
        from tracker.session.access import InUse, StoreError

        if isinstance(error, InUse):
            raise Complaint(f"{error} {_ELSEWHERE}") from None
        if isinstance(error, StoreError):
            raise Complaint(str(error)) from None
        raise


def taken_up(path: Path) -> Session:
    """The piece, open for a press. Raises `StoreError`."""
    from tracker.session.session import Session

    return Session.open(path)


def parted(words: Sequence[str], amount: re.Pattern[str]) -> tuple[str | None, str]:
    """The piece, if the first word names one, and the amount behind it; "" where none is."""
    for at in (0, 1):
        said = " ".join(words[at:])
        if amount.fullmatch(said):
            return (words[0] if at else None), said
    return None, ""
