"""One thing on the work screen: what it says, as lines of words."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence

from tracker.lean import NamedTuple
from tracker.screens.flow import Line
from tracker.screens.inks import Inks
from tracker.screens.view import View


class Room(NamedTuple):
    """Columns and rows that a slot has."""

    width: int
    height: int


class Slot(ABC):
    """Says what is to be seen in its spot; the canvas paints it."""

    def __init__(self, inks: Inks) -> None:
        self.inks = inks

    @abstractmethod
    def lines(self, view: View, room: Room) -> Sequence[Line]:
        """The lines to show in the room there is; a line is never wider than that."""
