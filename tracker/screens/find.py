"""Finding an action: a few letters of what it is called, and the list gets shorter."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import Input, OptionList, Static

from tracker.screens.actions import ACTIONS, Action, Keys, bindings
from tracker.screens.flow import content
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST, action_line, heading

if TYPE_CHECKING:
    from textual.app import ComposeResult

TOLD = "type a part of its name, then enter"
NOTHING = "Nothing is called so. Fewer letters find more."


def found(words: str) -> Sequence[Action]:
    """The actions with all these words in their title or, further down, only in their help."""
    wanted = words.lower().split()
    every = [action for action in ACTIONS if action.name != "find"]
    named = [one for one in every if all(word in one.title.lower() for word in wanted)]
    told = [
        one for one in every if all(word in f"{one.title} {one.help}".lower() for word in wanted)
    ]
    return [*named, *(one for one in told if one not in named)]


class Find(Screen[str | None]):
    """Answers with the name of the action, or None where none is wanted."""

    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(("next",)),
        Binding("down", "move(1)", show=False),
        Binding("up", "move(-1)", show=False),
        Binding("escape", "leave", show=False),
    ]
    DEFAULT_CSS = """
    Find { padding: 0 2; }
    Find Static { height: auto; margin-bottom: 1; }
    Find Input { border: none; padding: 0; height: 1; margin-bottom: 1; }
    Find Input:focus { border: none; background-tint: $background 0%; }
    Find OptionList { height: 1fr; padding: 0; border: none; background: $background; }
    Find OptionList {
        scrollbar-size-vertical: 1;
        & > .option-list--option-highlighted {
            color: $block-cursor-foreground;
            background: $block-cursor-background;
            text-style: $block-cursor-text-style;
        }
    }
    """

    def __init__(self, keys: Keys, inks: Inks) -> None:
        super().__init__()
        self._keys = keys
        self._inks = inks
        self._found = found("")

    def compose(self) -> ComposeResult:
        """The heading, a line to type on, the actions."""
        yield Static(content(heading("Find an action", TOLD, self._inks)))
        yield Input()
        actions = OptionList(markup=False)
        actions.can_focus = False
        yield actions

    def on_mount(self) -> None:
        """Begin with all of them."""
        self._list("")

    def on_input_changed(self, event: Input.Changed) -> None:
        """Show what is called so."""
        self._list(event.value)

    def on_input_submitted(self, _event: Input.Submitted) -> None:
        """Do the one that is lit."""
        self.action_act("next")

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Do the one that was clicked."""
        self.dismiss(self._found[event.option_index].name)

    def action_act(self, _name: str) -> None:
        """Do the one that is lit."""
        lit = self.query_one(OptionList).highlighted
        if lit is not None and self._found:
            self.dismiss(self._found[lit].name)

    def action_move(self, by: int) -> None:
        """Light another one."""
        actions = self.query_one(OptionList)
        if self._found:
            actions.highlighted = ((actions.highlighted or 0) + by) % len(self._found)

    def action_leave(self) -> None:
        """Do nothing."""
        self.dismiss(None)

    def _list(self, words: str) -> None:
        self._found = found(words)
        width = self.app.size.width - 5
        lines = [action_line(action, self._keys, width) for action in self._found]
        actions = self.query_one(OptionList)
        actions.clear_options()
        actions.add_options(content([line]) for line in lines or [[(NOTHING, LIST.quiet)]])
        actions.highlighted = 0 if self._found else None
