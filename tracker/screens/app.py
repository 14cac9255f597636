"""The app that holds the screens, and the two ways in."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual.app import App

from tracker.screens.actions import DEFAULT_KEYS
from tracker.screens.inks import PLAIN_INKS, Palette, inks_of, plain_theme, theme_of
from tracker.screens.pedals import name_pedals
from tracker.screens.settings import Settings, SettingsError, read_settings, settings_path
from tracker.screens.terminal import watch_terminal
from tracker.screens.theme import Colourless, palette_for
from tracker.screens.work import WorkScreen
from tracker.session.session import Session

if TYPE_CHECKING:
    from textual.command import Provider
    from textual.filter import LineFilter

BAD_INPUT = 2


def _actions() -> type[Provider]:
    """The palette's actions, imported when the palette is first opened."""
    from tracker.screens.palette import Actions

    return Actions


class HooksideApp(App[None], inherit_bindings=False):
    """Works on a piece; without one, lets the maker choose from ``folder``.

    ``palette`` None leaves all colours out.
    """

    TITLE = "Hookside"
    COMMANDS: ClassVar[set[type[Provider] | Callable[[], type[Provider]]]] = {_actions}
    COMMAND_PALETTE_BINDING = ""
    ALLOW_SELECT = False

    def __init__(
        self, session: Session | None, folder: Path, settings: Settings, palette: Palette | None
    ) -> None:
        super().__init__()
        self.animation_level = "none"
        theme = theme_of(palette) if palette else plain_theme()
        self.register_theme(theme)
        self.theme = theme.name
        self._colourless = None if palette else Colourless()
        self._inks = inks_of(palette) if palette else PLAIN_INKS
        self._settings = settings
        self._folder = folder
        self.session = session
        # Textual works the table out anew at every press: it gets only what differs.
        learnt = settings.keys.items() - DEFAULT_KEYS.items()
        self.set_keymap({name: ",".join(keys) for name, keys in learnt})

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Where no colour is wanted, the one filter that takes them all out."""
        return [self._colourless] if self._colourless else super().get_line_filters()

    def on_mount(self) -> None:
        """Show the work, or what there is to choose."""
        watch_terminal(self)
        if self.session is not None:
            self.work_on(self.session)
        else:
            from tracker.screens.choose import Chooser

            Chooser(self, self._folder, self._inks, self.work_on).ask()

    def work_on(self, session: Session) -> None:
        """Show the work screen of a piece."""
        self.session = session
        self.push_screen(WorkScreen(session, self._inks, self._settings.keys))


def run(session: Session) -> int:
    """Work on an open piece until the maker leaves; returns the exit code."""
    return _run(lambda settings: _app(session, session.path.parent, settings), session)


def choose(folder: Path) -> int:
    """Choose a piece or a pattern, then work on it; returns the exit code."""
    return _run(lambda settings: _app(None, folder, settings), None)


def _app(session: Session | None, folder: Path, settings: Settings) -> HooksideApp:
    return HooksideApp(session, folder, settings, palette_for(settings.theme, os.environ))


def _run(make: Callable[[Settings], HooksideApp], session: Session | None) -> int:
    try:
        app = make(read_settings(settings_path()))
    except SettingsError as error:
        if session is not None:
            session.close()
        print(f"hookside: {error}", file=sys.stderr)
        return BAD_INPUT
    name_pedals()
    try:
        app.run()
    finally:
        if app.session is not None:
            app.session.close()
    return app.return_code or 0
