"""Numbers line by line: what one is asked for, its figures, and what is done with it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from tracker.screens.actions import Keys
from tracker.screens.entry import Asked, Entry, take
from tracker.screens.keys import shown
from tracker.screens.side import copies
from tracker.screens.wrong import Remedy
from tracker.session.glance import PartLine
from tracker.session.session import Session


class PlainNumbers:
    """Asks for a number and takes its figures; ``told`` tells the place it led to."""

    def __init__(self, session: Session, keys: Keys, told: Callable[[], str]) -> None:
        self._session = session
        self._keys = keys
        self._told = told
        self._entry: Entry | None = None
        self._parts: list[tuple[int, int]] = []
        self._remedies: tuple[Remedy, ...] = ()

    @property
    def asking(self) -> bool:
        """Whether a number is being typed."""
        return self._entry is not None

    def drop(self) -> None:
        """Ask for no number any more."""
        self._entry = None

    def ask(self, what: Asked) -> Iterable[str]:
        """Ask for a number."""
        self._entry = Entry(what)
        return [f"{what.value}: type the number, then {shown(self._keys['next'][0])}"]

    def choose_part(self, parts: Sequence[PartLine]) -> Iterable[str]:
        """The parts, one of them to go to by its number."""
        self._parts = [(p, c) for p, part in enumerate(parts) for c in range(len(part.copies))]
        named = [f"{name}, {far}" for part in parts for name, far in copies(part)]
        yield from (f"{number}: {words}" for number, words in enumerate(named, start=1))
        yield from self.ask(Asked.PART)

    def choose(self, remedies: tuple[Remedy, ...]) -> Iterable[str]:
        """What can be done, one of them to be picked by its number."""
        self._remedies = remedies
        for number, one in enumerate(remedies, start=1):
            yield f"{number}: {one.title} {one.more}"
        yield from self.ask(Asked.CHOICE)

    def typed(self, key: str, unasked: Asked | None) -> Iterable[str]:
        """A figure of the number, or of one that is ``unasked``; escape drops it."""
        if key == "escape" and self._entry is not None:
            self.drop()
            return ["dropped"]
        if not (key.isdecimal() and key.isascii() and len(key) == 1):
            return []
        if self._entry is None and unasked is not None:
            self._entry = Entry(unasked)
        if self._entry is None:
            return []
        self._entry = self._entry.typed(key)
        return [f"{self._entry.asked.value}: {self._entry.digits}"]

    def type_on(self, name: str) -> Iterable[str]:
        """Next takes the number, back corrects it."""
        entry, self._entry = self._entry, None
        assert entry is not None
        if name == "back":
            self._entry = entry.corrected()
            return [f"{entry.asked.value}: {self._entry.digits}" if self._entry else "dropped"]
        if entry.number is None:
            return ["dropped"]
        if entry.asked is Asked.PART:
            return self._go_to_part(entry.number)
        if entry.asked is Asked.CHOICE:
            return self._pick(entry.number)
        take(entry, self._session)
        return [self._told()]

    def _go_to_part(self, number: int) -> Iterable[str]:
        if not 1 <= number <= len(self._parts):
            return [f"there is no part {number}"]
        self._session.go_to_part(*self._parts[number - 1])
        return [self._told()]

    def _pick(self, number: int) -> Iterable[str]:
        if not 1 <= number <= len(self._remedies):
            return [f"there is no number {number}"]
        self._entry = self._remedies[number - 1].deed()
        return [self._told()] if self._entry is None else self.ask(self._entry.asked)
