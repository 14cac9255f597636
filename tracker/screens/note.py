"""A note being written at the present place."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding
from textual.screen import Screen
from textual.widgets import Input, Static

from tracker.screens.flow import content
from tracker.screens.inks import Inks
from tracker.screens.pick import heading
from tracker.session.memos import LONGEST

if TYPE_CHECKING:
    from textual.app import ComposeResult
    from textual.binding import BindingType


class NoteScreen(Screen[str | None]):
    """Answers with the words of the note, or None where it is left as it was."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "drop", "Drop", show=False)]
    DEFAULT_CSS = """
    NoteScreen { padding: 0 2; }
    NoteScreen Static { height: auto; margin-bottom: 1; }
    NoteScreen Input { border: none; padding: 0; height: 1; }
    NoteScreen Input:focus { border: none; background-tint: $background 0%; }
    """

    def __init__(self, where: str, words: str, inks: Inks) -> None:
        super().__init__()
        self._where = where
        self._words = words
        self._inks = inks

    def compose(self) -> ComposeResult:
        """Where the note is kept, and the line to write it on."""
        told = "enter keeps it, empty drops it, esc leaves it as it was"
        yield Static(content(heading(f"Note at {self._where}", told, self._inks)))
        yield Input(self._words, max_length=LONGEST, select_on_focus=False)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Keep it."""
        self.dismiss(event.value)

    def action_drop(self) -> None:
        """Leave it."""
        self.dismiss(None)
