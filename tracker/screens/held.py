"""A key held down counts once, however long: told from taps by time alone.

A terminal tells neither that a key is let go nor that it repeats. A keyboard repeats a held
key after a first wait (a quarter of a second to a second, by the system's setting; often
half a second) and then every 30 to 90 ms (common practice, no source). No finger taps that
fast, so: an equal key that comes after such a wait is itself let wait a moment, and where
another follows within that moment, both were a held key's. Presses that are quick from the
very first are no held key's and all count.

Two things make that harder. A slow line brings keys in bursts, which are then judged by how
many came in all that time: more than a finger can tap are a held key's, and so is a press
that counted shortly before them and that no key can have been held from. And a key let go
just after its first repeat leaves one press alone, told from a tap only by the wait before
it, which a keyboard keeps to a few milliseconds and a finger does not.
"""

from __future__ import annotations

from enum import Enum, auto

from tracker.lean import NamedTuple

QUICK = 0.11
"""Seconds: equal keys closer than this are repeats, or came in one burst."""

FIRST, LAST = 0.2, 1.1
"""Seconds: the waits before the first repeat that keyboards are set to."""

USUAL, EXACT = 0.5, 0.015
"""Seconds: the commonest of those waits, and how well a keyboard keeps to its own."""

IN_TIME = 0.3
"""How far from that wait, as a share of it, taps are still in time with it."""

BURST = 0.012
"""Seconds: keys closer than this came in one read; the fastest repeats are 20 ms apart."""

TAP = 0.13
"""Seconds: no finger taps faster for long."""

SLOW = 0.45
"""Seconds to wait after a burst for another one."""

FASTEST = 0.01
"""Seconds: more keys than this makes in a burst come from no keyboard, and all count."""


class Fate(Enum):
    """What becomes of a press."""

    COUNTS = auto()
    WAITS = auto()
    HELD = auto()


class Verdict(NamedTuple):
    """What becomes of the presses that waited, if any did, and of the one that came."""

    waiting: Fate
    this: Fate


class Mood(Enum):
    """What the last presses of a key were taken for."""

    TAPS = auto()
    DOUBT = auto()
    ONE_REPEAT = auto()
    HELD = auto()


class Held:
    """Judges keys in the order and by the times at which they came."""

    def __init__(self) -> None:
        self._mood = Mood.TAPS
        self._key = ""
        self._time = 0.0
        self._wait = USUAL  # the first wait of this keyboard, as far as is known
        self._steady = False  # taps have come at about that wait
        self._many = 0  # presses in doubt, and the seconds from the last certain one to them
        self._span = 0.0
        self._tapped = False  # they came after steady taps
        self._was_held = False  # they came after a key that was held
        self._pause = 0.0  # between the bursts in which that came
        self._lately = 0  # presses that counted although they were in doubt
        self._wrongly = 0

    def wrongly(self) -> int:
        """How many of the last presses counted that, as is clear by now, were a held key's."""
        many, self._wrongly = self._wrongly, 0
        return many

    @property
    def patience(self) -> float | None:
        """Seconds without a key after which `settle` is to be called; None where none waits."""
        if self._mood is not Mood.DOUBT:
            return None
        return QUICK if self._many == 1 or self._too_many() else SLOW

    def press(self, key: str, time: float) -> Verdict:
        """What becomes of a key that came at ``time`` (seconds), and of those that wait."""
        gap = time - self._time if key == self._key else LAST
        steady, self._steady = self._steady, abs(gap - self._wait) < IN_TIME * self._wait
        self._key, self._time = key, time
        if self.patience and gap < self.patience:
            return self._in_doubt(gap)
        waiting = self.settle()
        if waiting is Fate.WAITS:
            # A finger that taps in time with the keyboard's wait does so again.
            waiting, self._mood = Fate.COUNTS if self._steady else Fate.HELD, Mood.TAPS
        return Verdict(waiting, self._after(gap, steady=steady))

    def let_go(self) -> None:
        """Another key came that was not judged: the last one is held no longer."""
        self._key, self._mood, self._lately = "", Mood.TAPS, 0

    def settle(self) -> Fate:
        """What becomes of the presses that wait, where nothing more came in time."""
        if self._mood is Mood.ONE_REPEAT:
            return Fate.WAITS
        if self._mood is not Mood.DOUBT:
            return Fate.COUNTS
        if self._many > 1 and (self._was_held or (self._too_many() and self._may_repeat())):
            return self._hold()
        exact = self._many == 1 and abs(self._span - self._wait) < EXACT
        if exact and not self._was_held and not self._tapped:
            self._mood = Mood.ONE_REPEAT
            return Fate.WAITS
        self._mood, self._lately = Mood.TAPS, self._many
        return Fate.COUNTS

    def _after(self, gap: float, *, steady: bool) -> Fate:
        """A press after one whose worth is known."""
        if self._mood is Mood.HELD and gap < max(QUICK, 1.5 * self._pause):
            return Fate.HELD
        was_held, self._mood = self._mood is Mood.HELD, Mood.TAPS
        if gap >= LAST or not (was_held or self._lately or gap >= FIRST):
            self._lately = 0
            return Fate.COUNTS
        self._mood, self._was_held, self._tapped = Mood.DOUBT, was_held, steady
        self._many, self._span = 1, gap
        return Fate.WAITS

    def _in_doubt(self, gap: float) -> Verdict:
        """One more press while others wait."""
        if BURST <= gap < QUICK:
            if self._many == 1 and not self._was_held and self._span >= FIRST:
                self._wait = self._span
            return Verdict(self._hold(), Fate.HELD)
        self._many, self._span = self._many + 1, self._span + gap
        if self._many * FASTEST > self._span:
            self._mood, self._lately = Mood.TAPS, 0
            return Verdict(Fate.COUNTS, Fate.COUNTS)
        return Verdict(Fate.WAITS, Fate.WAITS)

    def _too_many(self) -> bool:
        """Whether more presses came than a finger taps in the time."""
        return self._many > 1 and self._span < TAP * self._many

    def _too_soon(self) -> bool:
        """Whether no key can be repeated yet that was first pressed where the span begins."""
        return self._span < 0.9 * self._wait

    def _may_repeat(self) -> bool:
        """Whether a key may have been held so long that it repeats."""
        return self._lately > 0 or not self._too_soon()

    def _hold(self) -> Fate:
        self._mood, self._pause = Mood.HELD, self._span if self._was_held else 0.0
        if self._too_soon():
            self._wrongly = self._lately
        self._lately = 0
        return Fate.HELD


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
