"""Two versions of a piece, where something else changed its file: which to go on with."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from tracker.screens.flow import paragraph
from tracker.screens.inks import Inks
from tracker.screens.pick import heading
from tracker.screens.wrong import Remedies, Remedy
from tracker.session.session import Session
from tracker.session.versions import Version

if TYPE_CHECKING:
    from textual.app import App

TITLE = "There are two versions of your piece"
TOLD = "Pick one; the other is kept. esc leaves both and asks again next time."

ROOMY = 16
"""Rows of a screen from which on there is room for more than the two versions."""


def ways_on(session: Session) -> tuple[Remedy, ...]:
    """To go on with either of two versions; nothing where there is only one.

    Yours comes first: a press that was meant for the work goes on with it.
    """
    return tuple(_way(session, version) for version in session.versions())


def _way(session: Session, version: Version) -> Remedy:
    named = {"ours": "Go on with the one that is open.", "theirs": "Go on with the other one."}
    when = f", last worked {version.when[:16].replace('T', ' ')}" if version.when else ""
    words = f"{version.words.rstrip('.')}{when}."
    return Remedy(named[version.which], words, lambda: session.keep(version.which))


def ask_which(
    app: App[None],
    offered: tuple[Remedy, ...],
    news: Sequence[str],
    inks: Inks,
    done: Callable[[], None],
) -> None:
    """Tell the news where there is room, and ask; do what is picked, then call ``done``."""
    head = heading(TITLE, TOLD, inks)
    if app.size.height >= ROOMY:
        head += [[(row, inks.text)] for said in news for row in paragraph(said, app.size.width - 4)]

    def picked(number: int | None) -> None:
        if number is not None:
            offered[number].deed()
        done()

    app.push_screen(Remedies(head, offered, 0), picked)
