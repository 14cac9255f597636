"""The app that begins with the shelf."""

from __future__ import annotations

from tracker.screens.app import HooksideApp
from tracker.screens.shelf import ShelfScreen
from tracker.session.surroundings import now


class ShelfApp(HooksideApp):
    """Begins with the shelf."""

    def ask(self) -> None:
        """Show the shelf."""
        self.push_screen(ShelfScreen(self._folder, self._inks, now, self.work_on))
