"""``hookside``, ``work`` and ``patterns``: pieces, and what to begin one from."""

from __future__ import annotations

import gc
import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from tracker.cli import Complaint
from tracker.cli_pattern import choose_size, is_path, load, pattern_path
from tracker.cli_piece import begun, how_to_begin, latest_piece, opened, piece_called
from tracker.notation.problems import visible
from tracker.session import shelf

if TYPE_CHECKING:
    from collections.abc import Callable

    from tracker.session.session import Session


def resume() -> int:
    """Go on with the latest piece; with none, choose a pattern."""
    _needs_terminal()
    latest = latest_piece()
    if latest is not None:
        return _show(_open(latest))
    from tracker.screens.app import choose

    return choose(shelf.pieces_folder())


def work(
    word: str | None,
    size: str | None = None,
    *,
    new: bool = False,
    plain: bool = False,
    caption: str | None = None,
    take_over: bool = False,
) -> int:
    """Go on with a piece (without a word: the latest), or begin one of a pattern.

    ``caption`` names a file to hold the place at all times; with ``take_over`` a piece that
    is open in another window is taken from there. Raises `Complaint`.
    """
    path = None if caption is None else _caption(Path(caption))
    going_on = partial(_go_on, size=size, plain=plain, take_over=take_over)
    session = _session(word, size, going_on, new=new, plain=plain)
    return _show_plainly(session, path) if plain else _show(session, path)


def _session(
    word: str | None,
    size: str | None,
    going_on: Callable[[Path], Session],
    *,
    new: bool,
    plain: bool,
) -> Session:
    """The piece that is meant, open. Raises `Complaint`."""
    latest = None if word else latest_piece()
    if word is None and latest is None:
        raise Complaint(f"no piece is begun yet: {how_to_begin()}")
    piece = latest if word is None else piece_called(word)
    if piece is not None and (word is None or not new):
        return going_on(piece)
    assert word is not None
    from tracker.pattern import library

    if not is_path(word) and library.find(word) is None:
        raise Complaint(_unknown(word))
    path = pattern_path(word)
    pattern = load(path)
    mine = None if new else begun(pattern.title)
    if mine is not None:
        session = going_on(mine.path)
        session.follow(path)
        return session
    chosen = choose_size(pattern, size)
    if not plain:
        _needs_terminal()
    from tracker.session.session import Session

    return opened(lambda: Session.start(pattern, chosen, shelf.pieces_folder(), file=path))


def patterns() -> int:
    """List the demo patterns."""
    from tracker.pattern import library
    from tracker.pattern.care import Care
    from tracker.pattern.cautions import DEFER

    found = [(name, load(path)) for name, path in library.demo_patterns().items()]
    names = max((len(name) for name, _ in found), default=0)
    titles = max((len(pattern.title) for _, pattern in found), default=0)
    for name, pattern in found:
        sizes = ", ".join(pattern.sizes) or "one size"
        print(visible(f"{name:{names}}  {pattern.title:{titles}}  {sizes}"))
        for known in Care(pattern).cautions:
            print(visible(f"{'':{names}}  caution: {known.topic}"))
    print(f"\nhookside check NAME writes the cautions out.\n{DEFER}")
    return 0


def _caption(path: Path) -> Path:
    """The file for the place. Raises `Complaint` where none may be written there."""
    from tracker.screens.caption import refused

    why = refused(path)
    if why:
        raise Complaint(why)
    return path


def _go_on(path: Path, size: str | None, *, plain: bool, take_over: bool) -> Session:
    if not plain:
        _needs_terminal()
    session = _open(path, take_over=take_over)
    worked = session.plan.size
    if size is not None and choose_size(session.plan.pattern, size) != worked:
        session.close()
        raise Complaint(
            f"you have a piece of it in size {worked or 'one size'}; add --new to begin another"
        )
    return session


def _open(path: Path, *, take_over: bool = False) -> Session:
    # Nothing is garbage yet: looking for some would hold up the first screen.
    gc.disable()
    from tracker.session.moving import taken_up
    from tracker.session.session import Session

    def open_it() -> Session:
        return Session.open(taken_up(path, shelf.pieces_folder()), take_over=take_over)

    return opened(open_it)


def _show(session: Session, caption: Path | None = None) -> int:
    from tracker.screens.app import run

    gc.enable()
    gc.freeze()
    return run(session, caption)


def _show_plainly(session: Session, caption: Path | None) -> int:
    from tracker.screens.plain_run import work_plainly

    return work_plainly(session, caption)


def _needs_terminal() -> None:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise Complaint("the work screen needs a terminal; hookside where does not")


def _unknown(word: str) -> str:
    from difflib import get_close_matches

    from tracker.pattern import library

    names = [piece.name for piece in shelf.pieces(shelf.pieces_folder())]
    names += library.demo_patterns()
    near = get_close_matches(word.lower(), names, n=1)
    hint = f'Did you mean "{near[0]}"?' if near else how_to_begin()
    return f'no piece and no pattern is called "{word}". {hint}'
