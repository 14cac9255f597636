"""A pattern file that has changed: go on with it, or with the pattern as it was begun."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tracker.screens.flow import paragraph
from tracker.screens.inks import Inks
from tracker.screens.pick import heading
from tracker.screens.wrong import Remedies, Remedy
from tracker.session.carrying import ChangedFile
from tracker.session.session import Session

if TYPE_CHECKING:
    from textual.app import App

TITLE = "The pattern file has changed"
TOLD = "Pick how to go on; esc leaves it for now."


def ways_on(session: Session, changed: ChangedFile) -> tuple[Remedy, ...]:
    """What can be done about it."""
    over = Remedy(
        "Go on with the changed pattern.",
        f"You then stand at {changed.place}. The piece as it was is kept.",
        lambda: session.carry_over(changed),
    )
    stay = Remedy(
        "Stay with the pattern as it was begun.",
        "It is asked again when the file changes once more.",
        lambda: session.pass_over(changed),
    )
    return over, stay


def ask_whether(
    app: App[None], session: Session, changed: ChangedFile, inks: Inks, done: Callable[[], None]
) -> None:
    """Ask, do what is picked, then call ``done``."""
    offered = ways_on(session, changed)
    head = heading(TITLE, TOLD, inks)
    head += [[(row, inks.text)] for row in paragraph(changed.words, app.size.width - 4)]

    def picked(number: int | None) -> None:
        if number is not None:
            offered[number].deed()
        done()

    app.push_screen(Remedies(head, offered, 0), picked)
