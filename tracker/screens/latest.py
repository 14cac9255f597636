"""Words handed to a thread of its own: the latest only, and never waited for."""

from __future__ import annotations

import threading
from collections.abc import Callable


class Latest:
    """Hands the latest words to ``work`` in a thread; words overtaken before are dropped.

    ``work`` gives why it did not work, "" where it did; ``failed`` is called in that
    thread, once, with the first such reason.
    """

    def __init__(self, work: Callable[[str], str], failed: Callable[[str], None]) -> None:
        self.lock = threading.Condition()
        """Held while words are put and taken; may be taken again by the thread that has it."""
        self._work = work
        self._failed = failed
        self._next: str | None = None
        self._closed = False
        self._thread: threading.Thread | None = None

    def put(self, words: str) -> None:
        """Let these words be the next, in the place of any still waiting; returns at once."""
        with self.lock:
            self._next = words
            self.lock.notify()
        if self._thread is None:
            self._thread = threading.Thread(target=self._go_on, daemon=True)
            self._thread.start()

    @property
    def overtaken(self) -> bool:
        """Whether the words being worked on are no longer wanted."""
        with self.lock:
            return self._next is not None or self._closed

    def drop(self) -> None:
        """End without the words still waiting."""
        with self.lock:
            self._next = None
            self._closed = True
            self.lock.notify()

    def finish(self, seconds: float) -> None:
        """End once the words still waiting are worked on, at most so many seconds later."""
        with self.lock:
            self._closed = True
            self.lock.notify()
        if self._thread is not None:
            self._thread.join(seconds)

    def _go_on(self) -> None:
        told = False
        while (words := self._taken()) is not None:
            why = self._work(words)
            if why and not told:
                told = True
                self._failed(why)

    def _taken(self) -> str | None:
        with self.lock:
            self.lock.wait_for(lambda: self._closed or self._next is not None)
            words, self._next = self._next, None
            return words
