"""A line of text to type on, that keeps the order of what is typed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.widgets import Input
from textual.widgets.input import Selection

if TYPE_CHECKING:
    from textual import events


class TypedLine(Input):
    """Deletes when the key comes.

    Textual leaves deleting to a binding, and hands keys to bindings later than letters to the
    line: over a slow terminal, which brings several keys at once, letters typed after a slip
    would be deleted in its place.
    """

    DEFAULT_CSS = """
    TypedLine > .input--selection {
        background: $background; color: $foreground; text-style: reverse;
    }
    """

    def select_from_end(self) -> None:
        """Select all words and show their beginning; what is typed replaces them."""
        self.selection = Selection(len(self.value), 0)

    def on_key(self, event: events.Key) -> None:
        """Delete at once."""
        if event.key == "backspace":
            event.stop()
            event.prevent_default()
            self.action_delete_left()
