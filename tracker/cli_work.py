"""``hookside``, ``work``, ``where`` and ``patterns``: pieces, and what to begin one from."""

from __future__ import annotations

import sys
from collections.abc import Callable
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from tracker.cli import Complaint
from tracker.cli_pattern import choose_size, is_path, load, pattern_path
from tracker.notation.problems import visible
from tracker.pattern import library
from tracker.session import shelf

if TYPE_CHECKING:
    from tracker.session.session import Session

NO_PIECE = 1

Found = TypeVar("Found")


def resume() -> int:
    """Go on with the latest piece; with none, choose a pattern."""
    _needs_terminal()
    latest = shelf.latest(shelf.pieces_folder())
    if latest is not None:
        return _show(_open(latest.path))
    from tracker.screens.app import choose

    return choose(shelf.pieces_folder())


def work(word: str, size: str | None, *, new: bool) -> int:
    """Go on with a piece, or begin one of a pattern."""
    piece = _piece(word)
    if piece is not None and not new:
        return _go_on(piece, size)
    path = pattern_path(word)
    if not is_path(word) and library.find(word) is None:
        raise Complaint(_unknown(word))
    pattern = load(path)
    mine = None if new else shelf.find(shelf.pieces_folder(), pattern.title)
    if mine is not None:
        return _go_on(mine.path, size)
    chosen = choose_size(pattern, size)
    _needs_terminal()
    from tracker.session.session import Session

    return _show(_store(lambda: Session.start(pattern, chosen, shelf.pieces_folder())))


def where(word: str | None) -> int:
    """Print the place in a piece as one plain line."""
    from tracker.session.glance import line
    from tracker.session.session import glance_at

    path = _piece(word) if word else _latest()
    if path is None:
        text = f'no piece is called "{word}"' if word else "no piece is begun yet"
        raise Complaint(f"{text}: {_how_to_begin()}", NO_PIECE)
    print(line(_store(lambda: glance_at(path))))
    return 0


def patterns() -> int:
    """List the demo patterns."""
    found = [(name, load(path)) for name, path in library.demo_patterns().items()]
    names = max((len(name) for name, _ in found), default=0)
    titles = max((len(pattern.title) for _, pattern in found), default=0)
    for name, pattern in found:
        sizes = ", ".join(pattern.sizes) or "one size"
        print(visible(f"{name:{names}}  {pattern.title:{titles}}  {sizes}"))
    return 0


def _piece(word: str) -> Path | None:
    """The piece a word means: its file, or its name on the shelf."""
    if word.endswith(shelf.ENDING) and Path(word).exists():
        return Path(word)
    found = None if is_path(word) else shelf.find(shelf.pieces_folder(), word)
    return found.path if found else None


def _latest() -> Path | None:
    found = shelf.latest(shelf.pieces_folder())
    return found.path if found else None


def _go_on(path: Path, size: str | None) -> int:
    _needs_terminal()
    session = _open(path)
    worked = session.plan.size
    if size is not None and choose_size(session.plan.pattern, size) != worked:
        session.close()
        raise Complaint(
            f"you have a piece of it in size {worked or 'one size'}; add --new to begin another"
        )
    return _show(session)


def _open(path: Path) -> Session:
    from tracker.session.session import Session

    return _store(lambda: Session.open(path))


def _store(action: Callable[[], Found]) -> Found:
    """What ``action`` returns; its `StoreError` becomes a `Complaint`."""
    from tracker.session.store import StoreError

    try:
        return action()
    except StoreError as error:
        raise Complaint(str(error)) from None


def _show(session: Session) -> int:
    from tracker.screens.app import run

    return run(session)


def _needs_terminal() -> None:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise Complaint("the work screen needs a terminal; hookside where does not")


def _unknown(word: str) -> str:
    names = [piece.name for piece in shelf.pieces(shelf.pieces_folder())]
    names += library.demo_patterns()
    near = get_close_matches(word.lower(), names, n=1)
    hint = f'Did you mean "{near[0]}"?' if near else _how_to_begin()
    return f'no piece and no pattern is called "{word}". {hint}'


def _how_to_begin() -> str:
    return "hookside patterns lists what you can begin, or name a pattern file (.toml)"
