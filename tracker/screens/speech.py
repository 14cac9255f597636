"""Words spoken by a command of the maker's own: never waited for, never stale."""

from __future__ import annotations

import subprocess
import tempfile
from collections.abc import Callable, Sequence
from typing import IO

from tracker.notation.problems import visible
from tracker.screens.command import Command
from tracker.screens.latest import Latest

MOST = 400
"""Characters of what a failed command said that are passed on."""


class Speaker:
    """Speaks the latest words; cuts off those before them.

    ``failed`` is called in another thread, once, with why a command did not work.
    """

    def __init__(self, command: Command, failed: Callable[[str], None]) -> None:
        self._command = command
        self._latest = Latest(self._speak, failed)
        self._running: subprocess.Popen[bytes] | None = None

    def say(self, words: str) -> None:
        """Speak these words and no earlier ones; returns at once."""
        with self._latest.lock:
            if self._running is not None:
                self._running.terminate()
            self._latest.put(visible(words))

    def close(self) -> None:
        """Fall silent."""
        with self._latest.lock:
            if self._running is not None:
                self._running.kill()
            self._latest.drop()

    def _speak(self, words: str) -> str:
        """Run the command to its end; gives why that did not work."""
        with tempfile.TemporaryFile() as said:
            try:
                process = self._started(words, said)
            except (OSError, ValueError) as error:
                return self._nothing(str(error))
            process.communicate(words.encode() if self._command.by_input else None)
            with self._latest.lock:
                self._running = None
                if not process.returncode or self._latest.overtaken:
                    return ""
            said.seek(0)
            why = said.read(MOST).decode(errors="replace").strip()
        ended = f"it ended with {process.returncode}"
        return self._nothing(ended + (f", saying: {why}" if why else ""))

    def _started(self, words: str, said: IO[bytes]) -> subprocess.Popen[bytes]:
        by_input = self._command.by_input
        arguments: Sequence[str] = (
            self._command.words if by_input else (*self._command.words, words)
        )
        process = subprocess.Popen(  # noqa: S603  the maker's own command, never a shell
            arguments,
            stdin=subprocess.PIPE if by_input else subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=said,
            start_new_session=True,
        )
        with self._latest.lock:
            self._running = process
            if self._latest.overtaken:
                process.kill()
        return process

    def _nothing(self, why: str) -> str:
        return f"Nothing was spoken by {self._command.words[0]}: {why}"
