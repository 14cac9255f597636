"""Learning a key: the maker presses it, sees what arrived, and says what it shall do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.screen import Screen
from textual.widgets import Static

from tracker.screens.actions import ACTIONS, Keys
from tracker.screens.flow import Line, content, paragraph
from tracker.screens.inks import Inks
from tracker.screens.keys import arrived, doing, key_named, shown, with_key
from tracker.screens.pick import Pick, action_line, heading
from tracker.screens.settings import SettingsError, keep_keys, settings_path

if TYPE_CHECKING:
    from textual import events
    from textual.app import ComposeResult

ASK = "Press the key, the pedal or the button that is to be learned."
LEAVE = "Escape leaves this; escape itself cannot be learned."


class Learn(Screen[None], inherit_bindings=False):
    """Waits for keys, one after the other, until the maker leaves."""

    DEFAULT_CSS = """
    Learn { padding: 0 2; }
    """

    def __init__(self, keys: Keys, inks: Inks) -> None:
        super().__init__()
        self._keys = keys
        self._inks = inks
        self._said = ASK

    def compose(self) -> ComposeResult:
        """The words."""
        yield Static()

    def on_resize(self, _event: events.Resize) -> None:
        """Lay the words out anew."""
        self._show(self._said)

    def on_key(self, event: events.Key) -> None:
        """Show what arrived and ask what it shall do."""
        event.stop()
        event.prevent_default()
        if event.key == "escape":
            self.dismiss()
        elif key_named(event.key) is None:
            self._show(f"{event.key} came, which has no name to keep it by. {ASK}")
        else:
            self._ask(event.key)

    def _ask(self, key: str) -> None:
        told = f"{doing(key, self._keys)} Next takes a line, escape leaves all as it is."
        head = [*heading(f"{arrived(key)} came. What shall it do?", "", self._inks)[:1]]
        width = max(1, self.app.size.width - 4)
        head += [[(row, self._inks.quiet)] for row in paragraph(told, width)]
        lines = [action_line(action, self._keys, width - 1) for action in ACTIONS]
        now = next((n for n, one in enumerate(ACTIONS) if key in self._keys[one.name]), 0)
        self.app.push_screen(Pick(head, lines, now), lambda number: self._chosen(key, number))

    def _chosen(self, key: str, number: int | None) -> None:
        if number is None:
            self._show(f"{shown(key)} is left as it was. {ASK}")
            return
        action = ACTIONS[number]
        keys, said = with_key(self._keys, action.name, key)
        if keys != self._keys:
            said = self._keep(keys, said)
        self._show(f"{said} {ASK}")

    def _keep(self, keys: Keys, said: str) -> str:
        """Keep the keys and go on with them; says what happened."""
        changed = {name: of for name, of in keys.items() if of != self._keys[name]}
        try:
            keep_keys(settings_path(), changed)
        except SettingsError as error:
            return f"Not kept: {error}."
        from tracker.screens.app import HooksideApp

        self._keys = keys
        if isinstance(self.app, HooksideApp):
            self.app.learn(keys)
        return said

    def _show(self, said: str) -> None:
        self._said = said
        width = max(1, self.app.size.width - 4)
        inks = self._inks
        lines: list[Line] = [[("Learn a key", inks.place)], []]
        lines += [[(row, inks.text)] for row in paragraph(said, width)]
        lines += [[], *([(row, inks.quiet)] for row in paragraph(LEAVE, width))]
        self.query_one(Static).update(content(lines))
