"""From along and out to a point of the page: rings, polygons, rows.

``along`` is an angle in radians or a length, ``out`` a length; points have y downward.
"""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from dataclasses import dataclass

from tracker.lean import NamedTuple


class Point(NamedTuple):
    """A point of the page, in units of one single crochet's width."""

    x: float
    y: float


class Frame(ABC):
    """How a round lies on the page."""

    @abstractmethod
    def point(self, along: float, out: float) -> Point:
        """The point so far along the round and so far out."""

    @abstractmethod
    def scale(self, out: float) -> float:
        """Length on the page of one unit along, at ``out``."""


@dataclass(frozen=True, slots=True)
class Lines(Frame):
    """Rows, one above the other."""

    def point(self, along: float, out: float) -> Point:
        """Along is x, out goes up."""
        return Point(along, -out)

    def scale(self, out: float) -> float:  # noqa: ARG002  the same everywhere
        """As long as it is."""
        return 1.0


@dataclass(frozen=True, slots=True)
class Ring(Frame):
    """Rounds about a middle, against the clock; the seam is at the foot of the page."""

    def point(self, along: float, out: float) -> Point:
        """Along is an angle from straight down, out a radius."""
        return Point(out * math.sin(along), out * math.cos(along))

    def scale(self, out: float) -> float:
        """An arc is as long as its radius."""
        return out


@dataclass(frozen=True, slots=True)
class Polygon(Frame):
    """Rounds with ``corners`` corners, as long along as a ring of the same ``out``."""

    corners: int

    def point(self, along: float, out: float) -> Point:
        """On the straight line between the two corners next to it."""
        wide = math.tau / self.corners
        first = math.floor((along - wide / 2) / wide)
        one = self._corner(first, out)
        other = self._corner(first + 1, out)
        part = (along - wide / 2) / wide - first
        return Point(one.x + (other.x - one.x) * part, one.y + (other.y - one.y) * part)

    def vertex(self, near: float) -> float:
        """How far along the corner next to ``near`` is."""
        wide = math.tau / self.corners
        return (round((near - wide / 2) / wide) + 0.5) * wide

    @property
    def thin(self) -> float:
        """How far from the middle a side is, for an ``out`` of 1."""
        half = math.pi / self.corners
        return half / math.tan(half)

    def scale(self, out: float) -> float:
        """As in a ring."""
        return out

    def _corner(self, number: int, out: float) -> Point:
        half = math.pi / self.corners
        return Ring().point((2 * number + 1) * half, out * half / math.sin(half))
