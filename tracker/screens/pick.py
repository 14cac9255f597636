"""A list of which the maker picks one line."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import OptionList, Static

from tracker.screens.actions import Action, Keys, bindings
from tracker.screens.flow import Line, content, cut_line
from tracker.screens.inks import PLAIN_INKS, Inks
from tracker.screens.keys import shown

if TYPE_CHECKING:
    from textual.app import ComposeResult


LIST = PLAIN_INKS
"""The inks of the lines: without colours, since the line that is lit has its own."""


class Pick(Screen[int | None]):
    """Answers with the number of the line that was picked (from 0), or None."""

    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(("next", "back", "quit", "parts")),
        Binding("escape", "act('quit')", "Close", show=False),
    ]
    DEFAULT_CSS = """
    Pick { padding: 0 2; }
    Pick Static { height: auto; margin-bottom: 1; }
    Pick OptionList { height: 1fr; padding: 0; background: $background; }
    Pick OptionList {
        scrollbar-size-vertical: 1;
        & > .option-list--separator { color: $border; }
    }
    Pick OptionList, Pick OptionList:focus { border: none; background-tint: $background 0%; }
    """

    def __init__(self, heading: Sequence[Line], options: Sequence[Line], at: int = 0) -> None:
        super().__init__()
        self._heading = heading
        self._options = options
        self._at = at

    def compose(self) -> ComposeResult:
        """The heading and the list."""
        yield Static(content(self._heading))
        yield OptionList(*(content([line]) for line in self._options), markup=False)

    def on_mount(self) -> None:
        """Begin at the line given."""
        self.query_one(OptionList).highlighted = self._at

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Answer."""
        self.dismiss(event.option_index)

    def action_act(self, name: str) -> None:
        """Next picks the line; back and quit close."""
        if name == "next":
            self.query_one(OptionList).action_select()
        else:
            self.dismiss(None)


def heading(title: str, told: str, inks: Inks) -> list[Line]:
    """A heading, and under it a few words of what to do or what went wrong."""
    return [[(title, inks.place)], [(told, inks.quiet)]]


def action_line(action: Action, keys: Keys, width: int) -> Line:
    """An action and its keys, as a line of a list of so many columns."""
    of = "  ".join(map(shown, keys[action.name]))
    return cut_line([(action.title.ljust(26), LIST.strong), (of, LIST.quiet)], width)
