"""The work line by line, from the first line to the last: keys in, lines out."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterable
from pathlib import Path

from tracker.notation.problems import visible
from tracker.screens.letters import Letters
from tracker.screens.pedals import name_pedals
from tracker.screens.plain import PlainWork
from tracker.screens.settings import Settings, SettingsError, read_settings, settings_path
from tracker.session.places import remember
from tracker.session.session import Session
from tracker.session.shelf import pieces_folder

TYPE_CHECKING = False
if TYPE_CHECKING:
    from tracker.screens.caption import Caption

BAD_INPUT = 2

AGAIN = 2.0
"""Seconds between tries to save what could not be saved."""


def work_plainly(session: Session, path: Path | None = None) -> int:
    """Work on an open piece until the maker leaves or the input ends; the exit status.

    ``path``: a file to hold the place at all times.
    """
    try:
        settings = read_settings(settings_path())
    except SettingsError as error:
        session.close()
        print(f"hookside: {error}", file=sys.stderr)
        return BAD_INPUT
    name_pedals()
    caption = None if path is None else _caption(path)
    try:
        rest, markers = settings.rest, settings.markers
        work = PlainWork(session, settings.keys, rest=rest, markers=markers, caption=caption)
        _answer(work, settings)
    except KeyboardInterrupt:
        _say(["put down"])
    finally:
        session.close()
        remember(session.path, pieces_folder())
        if caption is not None:
            caption.close()
    return 0


def _caption(path: Path) -> Caption:
    from tracker.screens.caption import Caption

    return Caption(path, lambda why: print(visible(why), file=sys.stderr))


def _answer(work: PlainWork, settings: Settings) -> None:
    from tracker.screens.plain_keys import keys_typed
    from tracker.screens.plain_presses import PlainPresses

    _say(work.greeting())
    # Nothing is held down on a pipe.
    held = settings.held == "once" and sys.stdin.isatty()
    presses = PlainPresses(work, held=held, one_switch=settings.one_switch)
    last = time.monotonic()
    for key in keys_typed():
        now = time.monotonic()
        _say(presses.idle(now) if key is None else presses.take(key))
        if key is None and now - last > AGAIN:
            last = now
            _say(work.retry())
        if work.over:
            return


def _say(lines: Iterable[str]) -> None:
    for words in lines:
        print(visible(words), end="" if isinstance(words, Letters) else "\n", flush=True)
