"""Keys on their way to the work line by line: a held key counts once, two may mean one."""

from __future__ import annotations

from collections.abc import Iterable

from tracker.screens.held import Fate, Held, Twice
from tracker.screens.plain import PlainWork
from tracker.screens.plain_keys import Typed

HELD = "a key held down: it counts once"


class PlainPresses:
    """As `Presses` does for the screen; times are in seconds."""

    def __init__(self, work: PlainWork, *, held: bool, one_switch: bool) -> None:
        self._work = work
        self._held = Held() if held else None
        self._twice = Twice() if one_switch else None
        self._waiting: list[Typed] = []
        self._last = 0.0
        self._is_out = False

    def take(self, key: Typed) -> Iterable[str]:
        """The lines that answer a key, now or when it is clear what it is worth."""
        if self._held is None or self._work.may_repeat(key.name):
            waiting, self._waiting = self._waiting, []
            if self._held is not None:
                self._held.let_go()
            yield from self._pass([*waiting, key])
            return
        self._last = key.time
        earlier, this = self._held.press(key.name, key.time)
        if earlier is not Fate.WAITS:
            yield from self._settle(self._held, earlier)
        if this is Fate.COUNTS:
            yield from self._pass([key])
        elif this is Fate.WAITS:
            self._waiting.append(key)
        else:
            yield from self._leave_out(self._held)

    def idle(self, time: float) -> Iterable[str]:
        """What is to be said where no key came until ``time``."""
        held = self._held
        if held is None or held.patience is None or time - self._last < held.patience:
            return
        fate = held.settle()
        yield from self._leave_out(held) if fate is Fate.WAITS else self._settle(held, fate)

    def _settle(self, held: Held, fate: Fate) -> Iterable[str]:
        """Pass on the keys that wait, or leave them out."""
        waiting, self._waiting = self._waiting, []
        if waiting and fate is Fate.HELD:
            yield from self._leave_out(held)
        else:
            yield from self._pass(waiting)

    def _leave_out(self, held: Held) -> Iterable[str]:
        wrongly = held.wrongly()
        if wrongly or not self._is_out:
            self._is_out = True
            yield HELD
            yield from self._work.take_back(wrongly)

    def _pass(self, keys: list[Typed]) -> Iterable[str]:
        for key in keys:
            self._is_out = False
            if self._twice and self._work.is_next(key.name) and self._twice.second(key.time):
                yield from self._work.back_instead()
            else:
                yield from self._work.press(key.name, key.character)
