"""The help: every action with its keys, from the table of actions."""

from __future__ import annotations

from tracker.screens.actions import ACTIONS, Keys
from tracker.screens.inks import Inks
from tracker.screens.keys import shown
from tracker.screens.pages import Pages


def help_pages(keys: Keys, inks: Inks) -> Pages:
    """Pages that list what can be done."""
    lines = [
        f"{'  '.join(map(shown, keys[action.name]))}\t{action.title}. {action.help}"
        for action in ACTIONS
    ]
    return Pages("Keys", lines, inks)
