"""The app that holds the screens, and the two ways in."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from textual import events
from textual.app import App

from tracker.screens.actions import DEFAULT_KEYS, Keys
from tracker.screens.flow import paragraph
from tracker.screens.inks import PLAIN_INKS, Palette, inks_of, plain_theme, theme_of
from tracker.screens.pedals import name_pedals
from tracker.screens.presses import Presses
from tracker.screens.settings import Settings, SettingsError, read_settings, settings_path
from tracker.screens.sounds import Sounds
from tracker.screens.terminal import watch_terminal
from tracker.screens.theme import Colourless, palette_for
from tracker.screens.work import WorkScreen
from tracker.session.session import Session
from tracker.session.shelf import pieces_folder

if TYPE_CHECKING:
    from textual.filter import LineFilter
    from textual.screen import Screen
    from textual.theme import Theme

    from tracker.screens.caption import Caption
    from tracker.screens.speech import Speaker

BAD_INPUT = 2


class HooksideApp(App[None], inherit_bindings=False, inherit_css=False):
    """Works on a piece; without one, lets the maker choose from ``folder``.

    ``palette`` None leaves all colours out. ``held``: a key held down counts once.
    """

    TITLE = "Hookside"
    DEFAULT_CSS = """
    HooksideApp {
        background: $background;
        color: $foreground;
        &:ansi { background: ansi_default; color: ansi_default; }
    }
    """
    ENABLE_COMMAND_PALETTE = False
    ALLOW_SELECT = False

    def __init__(
        self,
        session: Session | None,
        folder: Path,
        settings: Settings,
        palette: Palette | None,
        *,
        held: bool = False,
        caption: Path | None = None,
    ) -> None:
        super().__init__()
        self.animation_level = "none"
        self._begin_with(theme_of(palette) if palette else plain_theme())
        self._colourless = None if palette else Colourless()
        self._inks = inks_of(palette) if palette else PLAIN_INKS
        self._settings = settings
        self._folder = folder
        self._speaker = self._make_speaker()
        self._caption = self._make_caption(caption)
        self.session = session
        self._presses = Presses(
            super().on_event, self._left_out, held=held, one_switch=settings.one_switch
        )
        self._take_keys(settings.keys)

    def _begin_with(self, theme: Theme) -> None:
        """Take a theme before there is a screen.

        Set in the plain way, Textual would read all its styles and paint all a second time.
        """
        self.register_theme(theme)
        if theme.ansi:
            self.theme = theme.name
            return
        self.set_reactive(App.theme, theme.name)
        self.set_class(theme.dark, "-dark-mode", update=False)
        self.set_class(not theme.dark, "-light-mode", update=False)
        self.stylesheet.set_variables(self.get_css_variables())

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Where no colour is wanted, the one filter that takes them all out."""
        return [self._colourless] if self._colourless else super().get_line_filters()

    def _take_keys(self, keys: Keys) -> None:
        self._settings = self._settings._replace(keys=keys)
        # Textual works the table out anew at every press: it gets only what differs.
        learnt = keys.items() - DEFAULT_KEYS.items()
        self.set_keymap({name: ",".join(of) for name, of in learnt})

    def learn(self, keys: Keys) -> None:
        """Go on with other keys."""
        self._take_keys(keys)
        for screen in self.screen_stack:
            if isinstance(screen, WorkScreen):
                screen.learn(keys)

    async def on_event(self, event: events.Event) -> None:
        """Leave out the repeats of a key that is held down."""
        if isinstance(event, events.Key) and not event.is_forwarded:
            await self._presses.take(self, event, self._settings.keys)
        else:
            await super().on_event(event)

    def _left_out(self, wrongly: int) -> None:
        if isinstance(self.screen, WorkScreen):
            self.screen.held_down(wrongly)

    def on_mount(self) -> None:
        """Show the work, or what there is to choose."""
        watch_terminal(self)
        # Back from the shell the terminal shows an empty screen; Textual 8.2.8 leaves it so.
        self.app_resume_signal.subscribe(self, lambda _: self.refresh(layout=True), immediate=True)
        if self.session is None:
            self.ask()

    def get_default_screen(self) -> Screen[None]:
        """The work, where a piece is open: no empty screen need be made and laid out first."""
        if self.session is None:
            return super().get_default_screen()
        return self._work_screen(self.session)

    def ask(self) -> None:
        """Let the maker choose a piece, or a pattern to begin."""
        from tracker.screens.choose import Chooser

        Chooser(self, self._folder, self._inks, self.work_on).ask()

    def work_on(self, session: Session) -> None:
        """Show the work screen of a piece."""
        self.session = session
        self.push_screen(self._work_screen(session))

    def _work_screen(self, session: Session) -> WorkScreen:
        sounds = Sounds(self._settings.bell, self.bell, self._speaker, self._caption)
        mine = self._settings
        return WorkScreen(
            session, self._inks, mine.keys, sounds, rest=mine.rest, markers=mine.markers
        )

    def on_unmount(self) -> None:
        """Fall silent; leave the caption as the place is."""
        for told in (self._speaker, self._caption):
            if told is not None:
                told.close()

    def _make_speaker(self) -> Speaker | None:
        if self._settings.speech is None:
            return None
        from tracker.screens.speech import Speaker

        return Speaker(self._settings.speech, self._untold)

    def _make_caption(self, path: Path | None) -> Caption | None:
        if path is None:
            return None
        from tracker.screens.caption import Caption

        return Caption(path, self._untold)

    def _untold(self, why: str) -> None:
        """Say what could not be told, in passing, so that no press is taken for an answer.

        Called by the thread that tells.
        """

        def say() -> None:
            for screen in self.screen_stack:
                if isinstance(screen, WorkScreen):
                    screen.untold(why)

        with suppress(RuntimeError):  # the app is being left
            self.call_from_thread(say)


def run(session: Session, caption: Path | None = None) -> int:
    """Work on an open piece until the maker leaves; returns the exit code.

    ``caption``: a file to hold the place at all times.
    """
    folder = session.path.parent
    return _run(lambda settings: _app(session, folder, settings, caption=caption), session)


def choose(folder: Path) -> int:
    """Choose a piece or a pattern, then work on it; returns the exit code."""
    return _run(lambda settings: _app(None, folder, settings), None)


def shelf(folder: Path) -> int:
    """Show the shelf, then work on what is opened; returns the exit code."""
    from tracker.screens.shelf_app import ShelfApp

    return _run(lambda settings: _app(None, folder, settings, ShelfApp), None)


def _app(
    session: Session | None,
    folder: Path,
    settings: Settings,
    kind: type[HooksideApp] = HooksideApp,
    caption: Path | None = None,
) -> HooksideApp:
    palette, held = palette_for(settings.theme, os.environ), settings.held == "once"
    return kind(session, folder, settings, palette, held=held, caption=caption)


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
            _part(app.session)
    return app.return_code or 0


def _part(session: Session) -> None:
    """Note where the piece lies, and tell its place where the terminal is still there."""
    from tracker.session.places import remember

    remember(session.path, pieces_folder())
    with suppress(OSError):
        width = os.get_terminal_size(1).columns or 80
        rows = (row for said in session.parting() for row in paragraph(said, width))
        os.write(1, "".join(f"{row}\n" for row in rows).encode())
