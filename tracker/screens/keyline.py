"""The foot of the screen: the keys most used, as many as there is room for."""

from __future__ import annotations

from functools import lru_cache

from tracker.screens.actions import ACTIONS
from tracker.screens.flow import Line, Piece, cut_line, length
from tracker.screens.inks import Inks
from tracker.screens.keys import shown
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View

GAP = "  "


class KeyLine(Slot):
    """A key and its word each; the key to the help is always among them."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """One row."""
        if view.guard:
            return [_guarded(view, room.width, self.inks)]
        return [_fitted(tuple(view.keys.items()), room.width, self.inks)]


def _guarded(view: View, width: int, inks: Inks) -> Line:
    """What still works, and how the guard is left; the latter wherever there is no more room."""
    ends: list[Piece] = [("guard on: ", inks.quiet), (view.guard, inks.warn)]
    works: list[Piece] = [
        piece
        for name in ("next", "back")
        for piece in ((shown(view.keys[name][0]), inks.strong), (f" {name}{GAP}", inks.quiet))
    ]
    return cut_line([*works, *ends] if length([*works, *ends]) <= width else ends, width)


@lru_cache(maxsize=8)
def _fitted(keys: tuple[tuple[str, tuple[str, ...]], ...], width: int, inks: Inks) -> Line:
    """As many pairs as fit, those first in the table of actions first."""
    first = {name: shown(of[0]) for name, of in keys}
    pairs: dict[str, list[Piece]] = {
        action.name: [(first[action.name], inks.strong), (f" {action.word}{GAP}", inks.quiet)]
        for action in ACTIONS
        if action.word
    }
    help_pair = pairs.pop("help")
    line: list[Piece] = []
    for pair in pairs.values():
        if length([*line, *pair, *help_pair]) - len(GAP) <= width:
            line += pair
    key, (word, ink) = help_pair
    return [*line, key, (word.rstrip(), ink)]
