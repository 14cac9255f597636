"""Frames of a terminal, one for each moment worth keeping."""

from __future__ import annotations

import subprocess
from dataclasses import dataclass
from pathlib import Path

from tests.screens.terminal import Terminal

COLUMNS, ROWS = 66, 20
TRIES = 50
ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Frame:
    """What was on the screen at a moment; ``minute`` is told, not waited for."""

    minute: int
    caption: str
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """All of it, blanks run together, so that a wrapped sentence is found."""
        return " ".join(" ".join(self.lines).split())

    def __str__(self) -> str:
        head = f"{self.minute // 60}:{self.minute % 60:02}  {self.caption}"
        body = [f"  |{line:{COLUMNS}}|" for line in self.lines]
        return "\n".join([head, *body, ""])


class Reel:
    """Films one command after the other; ``frames`` by their names, in order."""

    def __init__(self) -> None:
        self.frames: dict[str, Frame] = {}
        self.minute = 0

    def begin(self, *command: str) -> Terminal:
        """A command on a terminal of its own."""
        return Terminal(COLUMNS, ROWS, command=command)

    def shot(self, terminal: Terminal, name: str, caption: str, *words: str) -> None:
        """Wait until all the words are on the screen at once and it is at rest; keep it."""
        for _ in range(TRIES):
            for one in words:
                terminal.until(one)
            terminal.read(0.1)
            if all(one in "\n".join(terminal.page.display) for one in words):
                break
        self._keep(name, caption, tuple(line.rstrip() for line in terminal.page.display))

    def printed(self, name: str, caption: str, *command: str) -> None:
        """What a command prints, as a frame."""
        done = subprocess.run(
            command, cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=True
        )
        self._keep(name, caption, tuple(done.stdout.splitlines()))

    def _keep(self, name: str, caption: str, lines: tuple[str, ...]) -> None:
        self.frames[name] = Frame(self.minute, caption, lines)
