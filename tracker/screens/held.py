"""A key held down counts once, however long: told from taps by time alone.

A terminal tells neither that a key is let go nor that it repeats. A keyboard repeats a held
key after a first wait (a quarter of a second to a second, by the system's setting) and then
every 30 to 90 ms (common practice, no source), in bursts where the line is slow. No finger
taps that fast, so: an equal key that comes after such a wait is itself let wait a moment,
and where another follows within that moment, both were a held key's. Presses that are quick
from the very first are no held key's and all count.
"""

from __future__ import annotations

from enum import Enum, auto

QUICK = 0.11
"""Seconds: equal keys closer than this are repeats, or came in one burst."""

FIRST, LAST = 0.2, 1.1
"""Seconds: the waits before the first repeat that keyboards are set to."""


class Press(Enum):
    """What a key is worth."""

    COUNTS = auto()
    WAITS = auto()
    HELD = auto()


class Held:
    """Judges keys in the order and by the times at which they came."""

    def __init__(self) -> None:
        self._key = ""
        self._time = 0.0
        self._doubtful = False
        self._is_held = False

    def press(self, key: str, time: float) -> Press:
        """What a key that came at ``time`` (seconds) is worth.

        `Press.WAITS`: it counts unless, within `QUICK`, the same key follows and is
        `Press.HELD`.
        """
        gap = time - self._time if key == self._key else LAST
        self._key, self._time = key, time
        if gap < QUICK:
            self._is_held = self._is_held or self._doubtful
            return Press.HELD if self._is_held else Press.COUNTS
        self._doubtful = gap < LAST and (self._is_held or gap >= FIRST)
        self._is_held = False
        return Press.WAITS if self._doubtful else Press.COUNTS


TWICE = 0.4
"""Seconds: two presses closer than this are one double press, where one switch does all."""


class Twice:
    """Finds the second of two quick presses."""

    def __init__(self) -> None:
        self._time = -TWICE

    def second(self, time: float) -> bool:
        """Whether a press at ``time`` (seconds) is the second of two."""
        is_second = time - self._time < TWICE
        self._time = -TWICE if is_second else time
        return is_second
