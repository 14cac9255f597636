"""The rounds of a chart laid out: points of the page for every knot."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from tracker.writing.chart.frames import Frame, Point
from tracker.writing.chart.knots import Knot, KnotRound
from tracker.writing.chart.spread import Thing


@dataclass(frozen=True, slots=True)
class Placed:
    """A knot with the points it is drawn by.

    Attributes:
        knot: what is drawn; seen from the right side.
        feet: points it goes into, each the head of what it is worked into.
        heads: points where it can be worked into.
        line: for chains, the points they lie along, from the one before to the one after.
    """

    knot: Knot
    feet: tuple[Point, ...]
    heads: tuple[Point, ...]
    line: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class Laid:
    """One round laid out.

    Attributes:
        round: its knots as they are worked.
        placed: the knots with their points.
        edge: the point of each place it leaves.
        number: where its number stands.
        seam: along its beginning chain: from where to where.
        frame, out: how it lies, and how far out its heads are.
        wrong: whether its wrong side faces whoever works it.
    """

    round: KnotRound
    placed: tuple[Placed, ...]
    edge: tuple[Point, ...]
    number: Point
    seam: tuple[Point, Point]
    frame: Frame
    out: float
    wrong: bool


@dataclass(frozen=True, slots=True)
class Base:
    """What the first round is worked into: places that are there already, or a ring.

    ``ring``: the ring's radius, 0 for none.
    """

    edge: tuple[Point, ...] = ()
    ring: float = 0.0


def mirrored(base: Base, rounds: Sequence[Laid]) -> tuple[Base, tuple[Laid, ...]]:
    """The same as a left-handed maker works it: left and right change places."""
    turned = replace(base, edge=_flipped(base.edge))
    return turned, tuple(_mirrored(laid) for laid in rounds)


def _mirrored(laid: Laid) -> Laid:
    placed = tuple(
        Placed(one.knot, _flipped(one.feet), _flipped(one.heads), _flipped(one.line))
        for one in laid.placed
    )
    (number,) = _flipped((laid.number,))
    begin, end = _flipped(laid.seam)
    edge = _flipped(laid.edge)
    return replace(laid, placed=placed, edge=edge, number=number, seam=(begin, end))


def _flipped(points: Iterable[Point]) -> tuple[Point, ...]:
    return tuple(Point(-x, y) for x, y in points)


@dataclass(slots=True)
class Below:
    """The edge below, in the direction of the round to come.

    Attributes:
        along, out, points: of each place.
        level: how far out its heads are.
        thin: how far a side of it is from the middle, for a level of 1.
        start: where it begins, along.
    """

    along: list[float]
    out: list[float]
    points: list[Point]
    level: float
    thin: float = 1.0
    start: float = 0.0

    def turned(self) -> Below:
        """As it is met when the work is turned."""
        return replace(
            self,
            along=[-a for a in reversed(self.along)],
            out=self.out[::-1],
            points=self.points[::-1],
        )


@dataclass(slots=True)
class Work:
    """One round on its way.

    Attributes:
        round: what is worked.
        below: what it is worked into.
        closed: whether it closes to a ring.
        sense: 1 if along and the page run the same way, else -1.
        owners, things: what stands side by side in it, and how much room it needs.
        start: where it begins, along, once that is known.
    """

    round: KnotRound
    below: Below
    closed: bool
    sense: int
    owners: list[Knot] = field(default_factory=list)
    things: list[Thing] = field(default_factory=list)
    start: float | None = None
