"""What the presses of one sitting take: for the file, the pace and the rest."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session.worked import PAUSE, REST, SLOW, Watch

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import Spot


class Took(NamedTuple):
    """When a press was made, what it took, and whether the file's lines do not tell that.

    Both in seconds, ``when`` since 1970.
    """

    when: int
    seconds: int
    untold: bool


class Timing:
    """The times of a piece that is open; ``worked`` are the seconds since it was opened."""

    def __init__(self, clock: Callable[[], datetime], at: Spot) -> None:
        self.worked = 0
        self._clock = clock
        self._watch = Watch(self._now(), at)
        self._spell = self._watch.when
        # No line tells when a piece is taken up.
        self._untold = True

    @property
    def last(self) -> int:
        """When the last press was, in seconds since 1970."""
        return self._watch.when

    def pressed(self, plan: Plan, to: Spot | None = None) -> Took:
        """A press is made now, and leads to a spot, if any."""
        before, at, when = self._watch.when, self._watch.at, self._now()
        by_rule = self._watch.pressed(when, to)
        seconds = by_rule or _long_work(plan, at, to, when - before)
        untold = self._untold or seconds != by_rule
        self._untold = False
        if not seconds and when - before > REST:
            self._spell = when
        self.worked += seconds
        return Took(when, seconds, untold)

    def at_a_stretch(self, *, by_stitch: bool) -> int:
        """Seconds since the hands last rested; 0 while they do.

        Who does not count by the stitch presses seldom: then a rest shows later.
        """
        now = self._now()
        return now - self._spell if now - self._watch.when <= (REST if by_stitch else PAUSE) else 0

    def _now(self) -> int:
        return int(self._clock().timestamp())


def _long_work(plan: Plan, at: Spot | None, to: Spot | None, gap: int) -> int:
    """A long time between two presses, if so many stitches were made that it was all work."""
    if gap <= PAUSE or at is None or to is None:
        return 0
    from tracker.session.sittings import steps_between  # seldom needed

    return gap if gap <= SLOW * steps_between(plan, at, to) else 0
