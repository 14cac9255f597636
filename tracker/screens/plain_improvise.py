"""Improvising line by line: a number picks, a line is typed, enter tells, enter accepts."""

from __future__ import annotations

from collections.abc import Iterable

from tracker.screens.letters import Letters
from tracker.session.improvise import LONGEST, Choice, Deed
from tracker.session.session import Session
from tracker.session.trial import Tried

ESCAPE = "esc leaves all as it was"
NONE = "there is no round to improvise here"


class PlainImprovise:
    """Answers keys until it is ``over``; ``accepted`` tells whether something was done."""

    def __init__(self, session: Session) -> None:
        self.over = self.accepted = False
        self._session = session
        self._improvising = session.improvising()
        self._choice: Choice | None = None
        self._words = ""
        self._told = False

    def greeting(self) -> Iterable[str]:
        """What can be done, numbered."""
        choices = self._improvising.choices
        if not choices:
            yield f"{NONE}; any key goes on"
            return
        for number, one in enumerate(choices, start=1):
            yield f"{number}: {one.title}"
        yield f"type the number; {ESCAPE}"

    def press(self, key: str, character: str) -> Iterable[str]:
        """The lines that answer a key."""
        if key == "escape" or not self._improvising.choices:
            self.over = True
            return []
        if self._choice is None:
            return self._pick(key)
        if key == "enter":
            return self._enter(self._choice)
        if not self._choice.typed:
            return []
        self._told = False
        if key == "backspace":
            self._words = self._words[:-1]
            return ["", Letters(self._words)]
        self._words = (self._words + character)[:LONGEST]
        return [Letters(character)]

    def _pick(self, key: str) -> Iterable[str]:
        choices = self._improvising.choices
        if not (key.isascii() and key.isdecimal() and 1 <= int(key) <= len(choices)):
            return [f"type a number from 1 to {len(choices)}; {ESCAPE}"]
        self._choice = choice = choices[int(key) - 1]
        if not choice.typed:
            return [choice.title, *self._tell(choice)]
        if choice.deed is Deed.ADD and choice.words:
            self._words = choice.words
            return [choice.title, *self._tell(choice)]
        now = [f"so far: {choice.words}"] if choice.words else []
        return [choice.title, *now, f"type the round, then enter; {ESCAPE}"]

    def _enter(self, choice: Choice) -> Iterable[str]:
        found = self._improvising.tried(choice, self._words)
        if self._told and not found.refused:
            self._session.improvise(choice, self._words)
            self.over = self.accepted = True
            return []
        return ["", *self._tell(choice)]

    def _tell(self, choice: Choice) -> Iterable[str]:
        """What comes of it; the next enter accepts."""
        found = self._improvising.tried(choice, self._words)
        self._told = not found.refused
        words = [self._words] if choice.typed and self._words else []
        faulty = self._words[slice(*found.fault)]
        at = f"at: {faulty}" if faulty.strip() else ""
        return [*words, *(w for w in (*_said(found), at, _ask(found)) if w)]


def _said(found: Tried) -> tuple[str, ...]:
    return (found.below, found.says, found.hint, found.follows)


def _ask(found: Tried) -> str:
    return found.refused or found.doubt or f"enter once more accepts it; {ESCAPE}"
