"""The place: where a maker stands in a piece. Everything else follows from it."""

from __future__ import annotations

from enum import StrEnum

from tracker.lean import NamedTuple


class Place(NamedTuple):
    """Four numbers, all counted from 0.

    ``step`` is the step the maker stands before; at ``len(walk)`` the round is worked
    and the maker stands at its end (to confirm the count, to say whether an open length
    is reached, or because the part is done).
    """

    part: int
    copy: int
    round: int
    step: int


class Pace(StrEnum):
    """How much one press counts."""

    STITCH = "stitch"
    REPEAT = "repeat"
    ROUND = "round"


class Asking(StrEnum):
    """After which rounds the count is asked for."""

    EVERY = "every round"
    INCREASES = "increase rounds"
    NEVER = "never"

    @property
    def after(self) -> Asking:
        """The one that comes next where they are gone through in turn."""
        every = tuple(Asking)
        return every[(every.index(self) + 1) % len(every)]
