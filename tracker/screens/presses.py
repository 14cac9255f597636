"""Keys on their way to the screens: what a held key repeats is left out, two may mean one."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING

from tracker.screens.held import QUICK, Held, Press, Twice

if TYPE_CHECKING:
    from textual import events
    from textual.app import App

    from tracker.screens.actions import Keys


class Presses:
    """Takes every key first and passes on what counts.

    In a list or a line of text a key may be held to go on, unless it is one for next.
    """

    def __init__(
        self,
        pass_on: Callable[[events.Event], Awaitable[None]],
        *,
        held: bool,
        one_switch: bool,
    ) -> None:
        self._pass_on = pass_on
        self._held = Held() if held else None
        self._twice = Twice() if one_switch else None
        self._waiting: events.Key | None = None

    async def take(self, app: App[None], event: events.Key, keys: Keys) -> None:
        """Pass a key on, now or in a moment, or leave it out."""
        worth = self._held.press(event.key, event.time) if self._held else Press.COUNTS
        if app.focused is not None and event.key not in keys["next"]:
            worth = Press.COUNTS
        if worth is Press.HELD:
            self._waiting = None
            return
        await self._release(app, keys)
        if worth is Press.WAITS:
            self._waiting = event
            app.set_timer(QUICK, lambda: self._release(app, keys, event))
        else:
            await self._do(app, event, keys)

    async def _release(self, app: App[None], keys: Keys, only: events.Key | None = None) -> None:
        """Pass on what waits; with ``only``, if it is still that one."""
        waiting = self._waiting
        if waiting is not None and only in (None, waiting):
            self._waiting = None
            await self._do(app, waiting, keys)

    async def _do(self, app: App[None], event: events.Key, keys: Keys) -> None:
        if self._twice and event.key in keys["next"] and self._twice.second(event.time):
            from tracker.screens.work import WorkScreen

            if isinstance(app.screen, WorkScreen):
                app.screen.back_instead()
                return
        await self._pass_on(event)
