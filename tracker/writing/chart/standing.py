"""The points of the page for every knot of a round whose places along are known."""

from __future__ import annotations

import math

from tracker.writing.chart.frames import Frame, Point
from tracker.writing.chart.knots import Knot
from tracker.writing.chart.laid import Below, Laid, Placed, Work
from tracker.writing.chart.lineup import rises
from tracker.writing.chart.measures import CHAIN, RISE, half_of, number_of

_BESIDE = 0.36
"""How far a number keeps from the middle of a beginning chain."""

_APART = 0.7
"""How far outside the last round its end is marked."""


def stand(
    work: Work, frame: Frame, out: float, along: list[float], thin: float
) -> tuple[Laid, Below]:
    """The round with all its points, and the edge it leaves."""
    sense = work.sense
    start, end = _ends(work, along, out, frame)
    start = start if work.start is None else work.start
    places = [at for at, knot in enumerate(work.owners) if knot.heads]
    flat = [along[at] for at in places]
    outs = [out + _sag(work, at, along, (start, end), frame, out) for at in places]
    points = [frame.point(sense * a, o) for a, o in zip(flat, outs, strict=True)]
    placed = tuple(_Placing(work, frame, out, along, places, points, (start, end)).all())
    base = work.below.level * work.below.thin / thin
    middle = (base + out) / 2 if work.closed or work.below.along else out
    rise = next((along[at] for at, k in enumerate(work.owners) if k.sign == "rise"), start)
    seam = (frame.point(sense * rise, base), frame.point(sense * rise, out))
    number = start - 0.9 - (0.0 if rises(work) else RISE)
    if work.closed:
        number = _number(work, rise, middle, frame)
    laid = Laid(
        work.round,
        placed,
        tuple(points),
        frame.point(sense * number, middle),
        seam,
        frame,
        out,
        wrong=sense != (1 if work.closed else -1),
    )
    return laid, Below(flat, outs, points, out, thin, start)


def _number(work: Work, rise: float, middle: float, frame: Frame) -> float:
    """Where the number of a closed round stands: beside its beginning chain."""
    chained = work.owners[0].sign == "rise"
    away = half_of(number_of(work.round.label)) + (_BESIDE if chained else 0.1)
    return rise - away / (frame.scale(middle) or 1.0)


def _ends(work: Work, along: list[float], out: float, frame: Frame) -> tuple[float, float]:
    """Where a round begins and ends, before its first thing and behind its last."""
    scale = frame.scale(out) or 1.0
    first, last = work.things[0].width / 2 / scale, work.things[-1].width / 2 / scale
    return along[0] - first, along[-1] + last


def _neighbours(at: int, along: list[float], ends: tuple[float, float]) -> tuple[float, float]:
    """Where what is before and behind a chain space stands."""
    before = along[at - 1] if at else ends[0]
    behind = ends[1]
    if at + 1 < len(along):
        behind = along[at + 1]
    return before, behind


def _sag(
    work: Work,
    at: int,
    along: list[float],
    ends: tuple[float, float],
    frame: Frame,
    out: float,
) -> float:
    """How far a chain space bulges, so that its chains have room side by side."""
    knot = work.owners[at]
    if knot.sign != "space":
        return 0.0
    before, behind = _neighbours(at, along, ends)
    chord = max(0.2, (behind - before) * frame.scale(out) - 0.3)
    long = knot.chains * CHAIN
    return max(0.12, chord * math.sqrt(max(0.0, 0.375 * (long / chord - 1))))


class _Placing:
    """Gives every knot of a round its points."""

    def __init__(
        self,
        work: Work,
        frame: Frame,
        out: float,
        along: list[float],
        places: list[int],
        points: list[Point],
        ends: tuple[float, float],
    ) -> None:
        self.work = work
        self.frame = frame
        self.out = out
        self.along = along
        self.places = places
        self.points = points
        self.ends = ends

    def all(self) -> list[Placed]:
        """Every knot of the round."""
        return [self._one(knot) for knot in self.work.round.knots]

    def _one(self, knot: Knot) -> Placed:
        heads = tuple(self.points[h] for h in knot.heads)
        feet = tuple(
            self.work.below.points[f] for f in knot.feet if f < len(self.work.below.points)
        )
        if knot.sign in ("rise", "space", "ch"):
            return Placed(knot, feet, heads, self._line(knot, feet, heads))
        if not heads:
            return Placed(knot, feet, (self._on_edge(knot),))
        if not feet:
            feet = tuple(self._down(h) for h in knot.heads[:1])
        return Placed(knot, feet, heads)

    def _down(self, place: int) -> Point:
        """The point of the ring, or of no place, below a place."""
        at = self.along[self.places[place]]
        return self.frame.point(self.work.sense * at, self.work.below.level)

    def _on_edge(self, knot: Knot) -> Point:
        """Where something stands that leaves no place: on the edge behind the last one left."""
        if knot.sign in ("join", "fasten") or not knot.after:
            risen = self.work.owners[0].sign == "rise"
            at = self.along[0] if risen else self.ends[0]
            if not self.work.closed:
                at = self.along[-1]
            away = _APART if knot.sign == "fasten" else 0.0
            return self.frame.point(self.work.sense * at, self.out + away)
        return self.points[knot.after - 1]

    def _line(
        self, knot: Knot, feet: tuple[Point, ...], heads: tuple[Point, ...]
    ) -> tuple[Point, ...]:
        """The points that the chains of a knot lie along."""
        at = self._standing(knot)
        if knot.sign == "space":
            return self._arc(at)
        along = self.work.sense * self.along[at]
        if knot.sign == "ch":
            half = CHAIN / 2 / (self.frame.scale(self.out) or 1.0) * self.work.sense
            return (
                self.frame.point(along - half, self.out),
                self.frame.point(along + half, self.out),
            )
        foot = feet[0] if feet else self.frame.point(along, self.work.below.level)
        head = heads[0] if heads else self.frame.point(along, self.out)
        return (foot, head)

    def _standing(self, knot: Knot) -> int:
        return self.places[knot.heads[0]] if knot.heads else self.work.owners.index(knot)

    def _arc(self, at: int) -> tuple[Point, ...]:
        before, behind = _neighbours(at, self.along, self.ends)
        sag = _sag(self.work, at, self.along, self.ends, self.frame, self.out)
        sense, steps = self.work.sense, 12
        return tuple(
            self.frame.point(
                sense * (before + (behind - before) * n / steps),
                self.out + 4 * sag * (n / steps) * (1 - n / steps),
            )
            for n in range(steps + 1)
        )
