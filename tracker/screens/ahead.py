"""Weighing the yarn, and the page of what lies ahead."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tracker.screens.inks import Inks
from tracker.screens.pages import Pages
from tracker.screens.written import Written
from tracker.session.ahead_words import NOTHING, facts
from tracker.session.session import Session
from tracker.session.weighing import LONGEST, asked

if TYPE_CHECKING:
    from textual.app import App


def weigh(app: App[None], session: Session, inks: Inks, done: Callable[[], None]) -> None:
    """Ask what is left of the yarn in hand, keep it, then call ``done``."""

    def typed(words: str | None) -> None:
        if words is not None and words.strip():
            session.weigh(words)
        done()

    title, told, words = asked(session.plan, session.state)
    app.push_screen(Written(title, told, words, LONGEST, inks), typed)


def ahead_pages(session: Session, inks: Inks) -> Pages:
    """All that is known of what lies ahead."""
    known = tuple(f"{name}\t{words}" for name, words in facts(session.outlook()))
    return Pages("What lies ahead", known or (NOTHING,), inks)
