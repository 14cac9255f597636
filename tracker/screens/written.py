"""A line of words being written: a note, a measure."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding
from textual.screen import Screen
from textual.widgets import Input, Static

from tracker.screens.flow import content
from tracker.screens.inks import Inks
from tracker.screens.pick import heading
from tracker.screens.typed_line import TypedLine

if TYPE_CHECKING:
    from textual.app import ComposeResult
    from textual.binding import BindingType


class Written(Screen[str | None]):
    """Answers with the words, or None where they are left as they were."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "drop", "Drop", show=False)]
    DEFAULT_CSS = """
    Written { padding: 0 2; }
    Written Static { height: auto; margin-bottom: 1; }
    Written Input { border: none; padding: 0; height: 1; }
    Written Input:focus { border: none; background-tint: $background 0%; }
    """

    def __init__(self, title: str, told: str, words: str, most: int, inks: Inks) -> None:
        super().__init__()
        self._title = title
        self._told = told
        self._words = words
        self._most = most
        self._inks = inks

    def compose(self) -> ComposeResult:
        """What is written, what the keys do, and the line to write it on."""
        yield Static(content(heading(self._title, self._told, self._inks)))
        yield TypedLine(self._words, max_length=self._most, select_on_focus=False)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Keep it."""
        self.dismiss(event.value)

    def action_drop(self) -> None:
        """Leave it."""
        self.dismiss(None)


KEYS = "enter keeps it, empty drops it, esc leaves it as it was"
"""What the keys do, in words."""
