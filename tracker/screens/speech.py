"""Words spoken by a command of the maker's own: never waited for, never stale."""

from __future__ import annotations

import subprocess
import tempfile
import threading
from collections.abc import Callable, Sequence
from typing import IO

from tracker.notation.problems import visible
from tracker.screens.command import Command

MOST = 400
"""Characters of what a failed command said that are passed on."""


class Speaker:
    """Speaks the latest words in a thread of its own; cuts off those before them.

    ``failed`` is called in that thread, once, with why a command did not work.
    """

    def __init__(self, command: Command, failed: Callable[[str], None]) -> None:
        self._command = command
        self._failed = failed
        self._told = False
        self._news = threading.Condition()
        self._next: str | None = None
        self._running: subprocess.Popen[bytes] | None = None
        self._closed = False
        self._thread: threading.Thread | None = None

    def say(self, words: str) -> None:
        """Speak these words and no earlier ones; returns at once."""
        with self._news:
            self._next = visible(words)
            if self._running is not None:
                self._running.terminate()
            self._news.notify()
        if self._thread is None:
            self._thread = threading.Thread(target=self._work, daemon=True)
            self._thread.start()

    def close(self) -> None:
        """Fall silent."""
        with self._news:
            self._closed = True
            if self._running is not None:
                self._running.kill()
            self._news.notify()

    def _work(self) -> None:
        while (words := self._wait()) is not None:
            with tempfile.TemporaryFile() as said:
                self._speak(words, said)

    def _wait(self) -> str | None:
        with self._news:
            self._news.wait_for(lambda: self._closed or self._next is not None)
            words, self._next = self._next, None
            return None if self._closed else words

    def _speak(self, words: str, said: IO[bytes]) -> None:
        by_input = self._command.by_input
        arguments: Sequence[str] = (
            self._command.words if by_input else (*self._command.words, words)
        )
        try:
            process = subprocess.Popen(  # noqa: S603  the maker's own command, never a shell
                arguments,
                stdin=subprocess.PIPE if by_input else subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=said,
                start_new_session=True,
            )
        except (OSError, ValueError) as error:
            self._tell(str(error))
            return
        with self._news:
            self._running = process
            if self._next is not None or self._closed:
                process.kill()
        process.communicate(words.encode() if by_input else None)
        with self._news:
            self._running = None
            cut_off = self._next is not None or self._closed
        if process.returncode and not cut_off:
            said.seek(0)
            why = said.read(MOST).decode(errors="replace").strip()
            self._tell(f"it ended with {process.returncode}" + (f", saying: {why}" if why else ""))

    def _tell(self, why: str) -> None:
        if not self._told:
            self._told = True
            name = self._command.words[0]
            self._failed(f"Nothing was spoken by {name}: {why}")
