"""A real app on a real piece, and what its screen shows as plain lines."""

from contextlib import asynccontextmanager
from pathlib import Path

from tracker.pattern import library
from tracker.pattern.load import load_pattern, load_text
from tracker.screens.app import HooksideApp
from tracker.screens.inks import DARK
from tracker.screens.settings import Settings
from tracker.session.session import Session

DISC = """
title = "Sampler"
terms = "US"
[[yarn]]
letter = "A"
name = "cotton"
[[yarn]]
letter = "B"
name = "cotton"
[[part]]
name = "Disc"
worked = "spiral"
"""
"""The head of a pattern with two yarns; the rounds of its one part come next."""

SIZES = ((40, 12), (80, 24), (100, 30), (200, 60))


def begin(folder: Path, name: str = "tea-cosy", size: str = "4 cups") -> Session:
    """A new piece of a demo pattern."""
    return Session.start(load_pattern(library.demo_patterns()[name]), size, folder)


def begin_text(folder: Path, source: str) -> Session:
    """A new piece of a pattern written in the test."""
    return Session.start(load_text(source), "", folder)


@asynccontextmanager
async def on_stage(session, size=(80, 24), settings=None, palette=DARK):
    """The running app and its pilot, the page before a piece just begun turned over."""
    app = HooksideApp(session, session.path.parent, settings or Settings(), palette)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        if session.begun:
            await pilot.press("q")
        yield app, pilot
    session.close()


def shown(app) -> list[str]:
    """The lines of the screen, blanks at their ends cut off."""
    strips = app.screen._compositor.render_strips(app.size)
    return [strip.text.rstrip() for strip in strips]


def text(app) -> str:
    """The whole screen as one text."""
    return "\n".join(shown(app))


def inked(app, ink) -> str:
    """All words drawn with an ink, in order."""
    strips = app.screen._compositor.render_strips(app.size)
    wanted = ink.rich_style
    return "".join(
        segment.text
        for strip in strips
        for segment in strip
        if segment.style.color == wanted.color
        and (wanted.bgcolor is None or segment.style.bgcolor == wanted.bgcolor)
    )
