"""The time that a piece was worked on, its pauses left out.

Each line of a piece's file has its time; from two of them follows what the press between
took. Where a line says itself what it took, that holds.
"""

from __future__ import annotations

from datetime import datetime

from tracker.session.history import History
from tracker.session.items import Did
from tracker.session.state import Spot

PAUSE = 15 * 60
"""Seconds; two presses further apart have a pause between them. Our own choice, no source."""

BRIEF = 2 * 60
"""Seconds; one stitch that takes longer has a pause in it. Our own choice, no source."""

SLOW = 15
"""Seconds; so long a stitch may take where many are counted by one press.

A quarter more than the slowest published pace, 300 in an hour (`measure.pace.PUBLISHED`).
"""

REST = 5 * 60
"""Seconds without a press after which the hands have rested. Our own choice, no source."""

WORTH = 10
"""Seconds; less is not worth a line."""


class Watch:
    """What each press took, from the times and places of the presses.

    ``when`` is that of the press before, in seconds since 1970, or 0: not known, or put
    down meanwhile, which is a pause however short. ``at`` is where it led.
    """

    def __init__(self, when: int = 0, at: Spot | None = None) -> None:
        self.when = when
        self.at = at

    def pressed(self, when: int, to: Spot | None = None) -> int:
        """The seconds that a press took, made at ``when`` and leading to a spot, if any.

        Nothing for a pause, or where the clock went back.
        """
        gap = when - self.when if when and self.when else 0
        longest = PAUSE if to is None else self._longest(to)
        self.when = when or self.when
        return gap if 0 <= gap <= longest else 0

    def _longest(self, to: Spot) -> int:
        """What may lie between two presses without a pause; takes up the new spot."""
        before, self.at = self.at, to
        steps = abs(to.step - before.step) if before and before[:4] == to[:4] else 0
        return min(PAUSE, BRIEF * steps) if steps else PAUSE

    def put_down(self) -> None:
        """What follows comes after a pause."""
        self.when = 0


def worked(history: History) -> int:
    """Seconds that a history tells of: those recorded, and what was worked since."""
    total = history.worked_before
    for item in history.recent:
        if isinstance(item, Did) and item.done.worked is not None:
            total = max(total, item.done.worked)
        else:
            total += item.took
    return total


def seconds_of(stamp: str) -> int:
    """A time of the file in seconds since 1970; 0 where it is none."""
    try:
        when = datetime.fromisoformat(stamp)
    except ValueError:
        return 0
    return int(when.timestamp()) if when.tzinfo else 0
