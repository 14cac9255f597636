"""A note line by line: it is typed, enter keeps it."""

from __future__ import annotations

from collections.abc import Iterable

from tracker.screens.letters import Letters
from tracker.session.memos import LONGEST
from tracker.session.session import Session

TOLD = "type the note, then enter; nothing drops it, esc leaves it as it was"


class PlainNote:
    """Answers keys until it is ``over``; ``accepted`` tells whether the note was kept."""

    def __init__(self, session: Session) -> None:
        self.over = self.accepted = False
        self._session = session
        self._words = ""

    def greeting(self) -> Iterable[str]:
        """What is noted here so far."""
        now = self._session.note_here()
        yield f"so far: {now}" if now else "no note here so far"
        yield TOLD

    def press(self, key: str, character: str) -> Iterable[str]:
        """The lines that answer a key."""
        if key == "escape":
            self.over = True
            return []
        if key == "enter":
            self._session.note(self._words)
            self.over = self.accepted = True
            return [""]
        if key == "backspace":
            self._words = self._words[:-1]
            return ["", Letters(self._words)]
        self._words = (self._words + character)[:LONGEST]
        return [Letters(character)]
