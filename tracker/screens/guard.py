"""The guard: keeps sleeves and cats from the keys, all but next and back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tracker.screens.keys import shown

if TYPE_CHECKING:
    from tracker.screens.actions import Keys


class Guard:
    """On from one press of its key until two in a row."""

    def __init__(self) -> None:
        self.on = False
        self._ending = False

    def lets(self, name: str) -> bool:
        """Whether an action may be done; takes note of those that begin or end the guard."""
        if name != "guard":
            self._ending = False
            return not self.on or name in ("next", "back")
        self.on, self._ending = not (self.on and self._ending), self.on and not self._ending
        return True

    def words(self, keys: Keys) -> str:
        """What ends it, while it is on."""
        key = shown(keys["guard"][0])
        if not self.on:
            return ""
        return f"{key} once more ends it" if self._ending else f"{key} {key} ends it"
