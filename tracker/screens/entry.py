"""A number being typed at the foot of the work screen."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

from tracker.lean import NamedTuple

if TYPE_CHECKING:
    from tracker.session.session import Session

LONGEST = 7
"""Digits; no count of a round has more."""


class Asked(StrEnum):
    """What the number is for."""

    COUNT = "Counted"
    ROUND = "Go to round"
    STITCH = "Go to stitch"
    PART = "Go to part"
    CHOICE = "Choose"
    RIP = "Rip back rounds"
    GRAMS = "Left of the yarn in hand, in grams"
    LENGTH = "Measured, in millimetres"


class Entry(NamedTuple):
    """What is asked and the digits typed so far."""

    asked: Asked
    digits: str = ""

    @property
    def number(self) -> int | None:
        """The number typed; None where nothing is."""
        return int(self.digits) if self.digits else None

    def typed(self, digit: str) -> Entry:
        """With one more digit, as long as there is room."""
        return self._replace(digits=(self.digits + digit)[:LONGEST])

    def corrected(self) -> Entry | None:
        """Without the last digit; None where there was none: the entry is dropped."""
        return self._replace(digits=self.digits[:-1]) if self.digits else None


def typed_on(entry: Entry, name: str, session: Session) -> Entry | None:
    """What is left of an entry after next or back: back corrects it, next takes it."""
    if name == "back":
        return entry.corrected()
    take(entry, session)
    return None


def take(entry: Entry, session: Session) -> None:
    """Hand the number to the session; nothing where none was typed."""
    if entry.number is not None:
        {
            Asked.COUNT: session.enter_count,
            Asked.ROUND: session.go_to_round,
            Asked.STITCH: session.go_to_stitch,
            Asked.RIP: session.rip_back,
            Asked.GRAMS: session.weigh_grams,
            Asked.LENGTH: session.measured_mm,
        }[entry.asked](entry.number)
