"""Where every knot of a part stands on the page: each above those it is worked into."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tracker.pattern.model import Worked
from tracker.writing.chart.frames import Frame, Lines, Polygon, Ring
from tracker.writing.chart.knots import KnotRound, Knots
from tracker.writing.chart.laid import Base, Below, Laid, Work
from tracker.writing.chart.lineup import (
    between_corners,
    corner_knots,
    corners_of,
    line_up,
    rises,
    seam_of,
)
from tracker.writing.chart.measures import NUMBER, RISE, height, width
from tracker.writing.chart.spread import Thing, evenly, spread
from tracker.writing.chart.standing import stand

_RING = 0.6
_RING_PITCH = 0.68
"""Least radius of a ring; room for each of its stitches at half their height."""

_PLAIN = 0.9
"""Width of a place of which no more is known."""

_STRAIGHT = 0.3
_STRAIGHTER = 0.9
"""How far stitches keep over their feet rather than evenly apart, from 0 to 1: those of a
ring that grows; and of one that does not, or of a polygon without a space at each corner."""


def lay_out(knots: Knots) -> tuple[Base, tuple[Laid, ...]]:
    """All rounds of a part, from the first on."""
    closed = knots.worked is not Worked.ROWS
    return _Layout(knots.rounds, closed=closed).laid()


class _Layout:
    def __init__(self, rounds: Sequence[KnotRound], *, closed: bool) -> None:
        self.rounds = rounds
        self.closed = closed
        self.below = Below([], [], [], 0.0)
        self.sense = 1 if closed else -1
        self.polygon, self.from_round = corners_of(rounds) if closed else (None, len(rounds))
        self.start = 0.0

    def laid(self) -> tuple[Base, tuple[Laid, ...]]:
        """All rounds; those within a polygon are turned so that its corners are over theirs."""
        if self.polygon is not None and self.from_round:
            self._upto(self.from_round)
            self.start = self._twist(self.polygon, self.below)
        base, found = self._upto(len(self.rounds))
        return base, tuple(found)

    def _upto(self, count: int) -> tuple[Base, list[Laid]]:
        self.sense = 1 if self.closed else -1
        self.below, base = self._base()
        found: list[Laid] = []
        for at, one in enumerate(self.rounds[:count]):
            cornered = self.polygon if at >= self.from_round else None
            laid, self.below = self._round(one, self.below, cornered)
            found.append(laid)
            if one.turns:
                self.below = self.below.turned()
                self.sense = -self.sense
        return base, found

    def _twist(self, polygon: Polygon, below: Below) -> float:
        """How far the rounds within must be turned."""
        one = self.rounds[self.from_round]
        feet = [below.along[foot] for _, foot in corner_knots(one) if foot is not None]
        first = polygon.vertex(feet[0])
        wide = math.tau / polygon.corners
        ways = [first + nth * wide - foot for nth, foot in enumerate(feet)]
        return self.sense * sum(ways) / len(ways)

    def _base(self) -> tuple[Below, Base]:
        first = self.rounds[0]
        count = first.under
        if not count:
            ring = self._ring(first) if self.closed and first.knots[0].sign != "ch" else 0.0
            drawn = ring if first.knots[0].sign != "fsc" else 0.0
            return Below([], [], [], ring, start=self.start), Base(ring=drawn)
        if not self.closed:
            along = [n * self._pitch(count) for n in range(count)]
            points = [Lines().point(self.sense * a, 0.0) for a in along]
            return Below(along, [0.0] * count, points, 0.0), Base(tuple(points))
        level = (count * _PLAIN + NUMBER + RISE) / math.tau
        things = [Thing(RISE / level), *[Thing(_PLAIN / level)] * count, Thing(NUMBER / level)]
        along = evenly(things, self.start, self.start + math.tau)[1:-1]
        points = [Ring().point(a, level) for a in along]
        return Below(along, [level] * count, points, level, start=self.start), Base(tuple(points))

    def _ring(self, first: KnotRound) -> float:
        """The radius of the ring that a first round is worked into."""
        high = max(map(height, first.knots))
        return max(_RING, (first.places + 1) * _RING_PITCH / math.tau - high / 2)

    def _pitch(self, count: int) -> float:
        """How far apart the places of a first row stand, so that none is pushed far."""
        widest = max(sum(width(k) * len(k.heads) for k in one.knots) for one in self.rounds)
        return max(_PLAIN, min(1.3, widest / count))

    def _round(self, one: KnotRound, below: Below, cornered: Polygon | None) -> tuple[Laid, Below]:
        work = Work(one, below, self.closed, self.sense)
        line_up(work)
        frame: Frame = cornered or (Ring() if self.closed else Lines())
        out = self._out(work, cornered)
        along = self._along(work, out, cornered)
        return stand(work, frame, out, along, thin=cornered.thin if cornered else 1.0)

    def _out(self, work: Work, cornered: Polygon | None) -> float:
        """How far out the heads of a round are."""
        below = work.below
        high = max((height(k) for k in work.round.knots), default=0.0) or 1.0
        used = [below.out[f] for k in work.round.knots for f in k.feet if f < len(below.out)]
        deepest = max(used, default=below.level)
        if not self.closed:
            return max(below.level + high, deepest + 0.75 * high)
        thin = cornered.thin if cornered else 1.0
        need = max(below.level * below.thin + high, deepest * below.thin + 0.75 * high) / thin
        return max(need, sum(thing.width for thing in work.things) / math.tau)

    def _along(self, work: Work, out: float, cornered: Polygon | None) -> list[float]:
        """Where the things of a round stand."""
        if not self.closed:
            if not work.below.along:
                count = len(work.things)
                return evenly(work.things, 0.0, count * self._pitch(count))
            return spread(work.things, -math.inf, math.inf)
        scaled = [Thing(t.width / out, t.target) for t in work.things]
        straight = _STRAIGHT if work.round.places > len(work.below.along) else _STRAIGHTER
        if cornered is not None:
            if len(corner_knots(work.round)) == cornered.corners:
                return between_corners(work, scaled, cornered)
            straight = _STRAIGHTER
        rise = scaled[0].width if rises(work) else 0.0
        number = scaled[-1].width
        places = scaled[1:-1] if rise else scaled[:-1]
        middles = evenly(places, rise, math.tau - number)
        low = work.start = seam_of(work, places, middles)
        begin, end = low + rise, low + math.tau - number
        middles = [low + at for at in middles]
        if any(thing.target is not None for thing in places):
            near = spread(places, begin, end)
            share = zip(near, middles, strict=True)
            middles = [a * straight + b * (1 - straight) for a, b in share]
        return [*([low + rise / 2] if rise else []), *middles, end + number / 2]
