"""Keys on their way to the screens: what a held key repeats is left out, two may mean one."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING

from tracker.screens.held import Fate, Held, Twice

if TYPE_CHECKING:
    from textual import events
    from textual.app import App
    from textual.timer import Timer

    from tracker.screens.actions import Keys


class Presses:
    """Takes every key first and passes on what counts.

    In a list or a line of text a key may be held to go on, unless it is one for next; and a
    figure of a number may come twice, unless it was given to an action.
    ``left_out`` is called where a press is first taken for the repeat of a held key, with
    how many presses before it were so too although they were passed on.
    """

    def __init__(
        self,
        pass_on: Callable[[events.Event], Awaitable[None]],
        left_out: Callable[[int], None],
        *,
        held: bool,
        one_switch: bool,
    ) -> None:
        self._pass_on = pass_on
        self._left_out = left_out
        self._held = Held() if held else None
        self._twice = Twice() if one_switch else None
        self._waiting: list[events.Key] = []
        self._timer: Timer | None = None
        self._is_out = False

    async def take(self, app: App[None], event: events.Key, keys: Keys) -> None:
        """Pass a key on, now or in a moment, or leave it out."""
        if self._held is None or _may_repeat(app, event.key, keys):
            await self._pass_waiting(app, keys, Fate.COUNTS)
            if self._held is not None:
                self._held.let_go()
            await self._do(app, event, keys)
            return
        waiting, this = self._held.press(event.key, event.time)
        if waiting is not Fate.WAITS:
            await self._pass_waiting(app, keys, waiting)
        if this is Fate.COUNTS:
            self._is_out = False
            await self._do(app, event, keys)
        elif this is Fate.WAITS:
            self._waiting.append(event)
            self._wait(app, keys, self._held)
        else:
            self._leave_out(self._held)

    def _wait(self, app: App[None], keys: Keys, held: Held) -> None:
        """Look again when nothing more came for as long as it takes."""

        async def settle() -> None:
            fate = held.settle()
            if fate is Fate.WAITS:
                self._leave_out(held)
            else:
                await self._pass_waiting(app, keys, fate)

        self._stop()
        self._timer = app.set_timer(held.patience or 0, settle)

    def _stop(self) -> None:
        if self._timer is not None:
            self._timer.stop()
            self._timer = None

    async def _pass_waiting(self, app: App[None], keys: Keys, fate: Fate) -> None:
        """Pass on the keys that wait, or leave them out."""
        self._stop()
        waiting, self._waiting = self._waiting, []
        if not waiting:
            return
        if fate is Fate.HELD and self._held is not None:
            self._leave_out(self._held)
            return
        self._is_out = False
        for event in waiting:
            await self._do(app, event, keys)

    def _leave_out(self, held: Held) -> None:
        wrongly = held.wrongly()
        if wrongly or not self._is_out:
            self._is_out = True
            self._left_out(wrongly)

    async def _do(self, app: App[None], event: events.Key, keys: Keys) -> None:
        if self._twice and event.key in keys["next"] and self._twice.second(event.time):
            from tracker.screens.work import WorkScreen

            if isinstance(app.screen, WorkScreen):
                app.screen.back_instead()
                return
        await self._pass_on(event)


def _may_repeat(app: App[None], key: str, keys: Keys) -> bool:
    if app.focused is not None:
        return key not in keys["next"]
    return key.isdecimal() and not any(key in of for of in keys.values())
