"""The trade's signs for stitches, each a path of our own between where it goes and its head.

Shapes (oval, dot, cross, T with a bar for every yarn over): as charts print them,
https://beautybady.com/crochet/master-crochet-chart-symbols-for-beginners-1710 and
https://redagapeblog.com/how-to-cr for chain, slip stitch, single crochet and crossed
stitches; the others: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tracker.notation.dictionary import base_of
from tracker.writing.chart.frames import Point
from tracker.writing.chart.knots import Knot
from tracker.writing.chart.measures import CHAIN

_BARS = {"sc": 0, "hdc": 0, "dc": 1, "tr": 2, "dtr": 3, "trtr": 4}
_GAP = 0.13
"""How far a line keeps from the points it joins, so that signs do not run together."""

_LOZENGES = ("diamond", "square", "triangle", "round", "drop")


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line of a sign; ``filled`` for an area in the sign's ink."""

    path: str
    filled: bool = False


@dataclass(frozen=True, slots=True)
class _Leg:
    """A straight way from ``foot`` to ``head``, its unit vector and the one to its right."""

    foot: Point
    head: Point

    @property
    def length(self) -> float:
        return math.dist(self.foot, self.head) or 1e-6

    def at(self, part: float, aside: float = 0.0) -> Point:
        """The point so far along, from 0 to 1, and so far to the right."""
        dx, dy = self._unit()
        x = self.foot.x + (self.head.x - self.foot.x) * part - dy * aside
        y = self.foot.y + (self.head.y - self.foot.y) * part + dx * aside
        return Point(x, y)

    def inset(self, begin: float = _GAP, end: float = _GAP) -> _Leg:
        """The same way, shorter at both ends by lengths."""
        long = self.length
        keep = min(1.0, 0.6 * long / (begin + end)) if begin + end else 1.0
        return _Leg(self.at(begin * keep / long), self.at(1 - end * keep / long))

    def _unit(self) -> tuple[float, float]:
        long = self.length
        return (self.head.x - self.foot.x) / long, (self.head.y - self.foot.y) / long


def strokes(
    knot: Knot, feet: Sequence[Point], heads: Sequence[Point], line: Sequence[Point], own: int = 0
) -> Iterator[Stroke]:
    """The strokes of a knot. ``own``: which of the pattern's special stitches it is."""
    match knot.sign:
        case "space" | "rise" | "ch":
            yield from _chains(knot.chains, line)
        case "slip" | "join":
            yield _dot(heads[0], 0.19)
        case "sl st":
            yield _dot(_Leg(feet[0], heads[0]).at(0.5), 0.21)
        case "picot":
            yield from _picot(feet, heads, knot.chains)
        case "fasten":
            yield _fasten(heads[0])
        case "own":
            yield from _own(feet, heads, own)
        case _:
            yield from _stitch(knot, feet, heads[0])
    if knot.loop and feet and heads:
        yield _loop(_Leg(feet[0], heads[0]), knot.loop)


def _stitch(knot: Knot, feet: Sequence[Point], head: Point) -> Iterator[Stroke]:
    base = base_of(knot.sign)
    if knot.sign.endswith("tog") and len(feet) > 1:
        yield from _together(base, feet, head)
    elif knot.sign in ("bobble", "cl", "puff", "popcorn"):
        yield from _bunch(knot.sign, _Leg(feet[0], head))
    elif knot.sign[:2] in ("fp", "bp"):
        yield from _post(knot.sign[:2], base, _Leg(feet[0], head))
    elif base in _BARS:
        yield from _upright(base, _Leg(feet[0], head).inset())
    else:
        yield from _other(knot.sign, _Leg(feet[0], head).inset())


def _upright(base: str, leg: _Leg) -> Iterator[Stroke]:
    """A cross, or a T with a bar for each yarn over beyond the first."""
    yield _line(leg.foot, leg.head)
    if base == "sc":
        yield _bar(leg, 0.58, 0.28)
        return
    yield _bar(leg, 1.0, 0.29)
    yield from _yarn_overs(base, leg)


def _yarn_overs(base: str, leg: _Leg) -> Iterator[Stroke]:
    count = _BARS[base]
    for nth in range(count):
        part = 0.5 + (nth - (count - 1) / 2) * 0.3 / leg.length
        slant = 0.12 / leg.length
        yield _line(leg.at(part - slant, -0.2), leg.at(part + slant, 0.2))


def _together(base: str, feet: Sequence[Point], head: Point) -> Iterator[Stroke]:
    """Legs that meet in one head."""
    top = _Leg(_middle(feet), head)
    point = top.inset().head
    for foot in feet:
        leg = _Leg(_Leg(foot, head).inset().foot, point)
        yield _line(leg.foot, leg.head)
        if base == "sc":
            yield _bar(leg, 0.45, 0.22)
        else:
            yield from _yarn_overs(base, leg)
    if base != "sc":
        yield _bar(_Leg(top.foot, point), 1.0, 0.34)


def _bunch(sign: str, leg: _Leg) -> Iterator[Stroke]:
    """Legs from one point, closed to one: apart for loops, with bars for stitches."""
    leg = leg.inset()
    if sign == "popcorn":
        for aside in (-0.42, -0.21, 0.0, 0.21, 0.42):
            yield _line(leg.foot, leg.at(0.82, aside))
        yield _oval(leg.at(0.92), _angle(leg), 0.13, 0.5)
        return
    sides = (-0.95, -0.48, 0.0, 0.48, 0.95) if sign == "bobble" else (-0.7, 0.0, 0.7)
    for nth, aside in enumerate(sides):
        yield _bow(leg, aside)
        if sign != "puff" and (nth % 2 == 0 or sign == "cl"):
            mid = aside / 2
            yield _line(leg.at(0.45, mid - 0.12), leg.at(0.56, mid + 0.12))
    yield _bar(leg, 1.0, 0.3)


def _post(side: str, base: str, leg: _Leg) -> Iterator[Stroke]:
    """A T whose foot curls round the post: to the right in front, to the left behind."""
    turn = 1 if side == "fp" else -1
    leg = _Leg(leg.at(0.16), leg.inset().head)
    yield from _upright(base, leg)
    start, low, end = leg.foot, leg.at(-0.2, 0.34 * turn), leg.at(0.14, 0.36 * turn)
    side_low = leg.at(-0.24, 0.02 * turn)
    yield Stroke(f"M{_xy(start)}C{_xy(side_low)} {_xy(low)} {_xy(end)}")


def _other(sign: str, leg: _Leg) -> Iterator[Stroke]:
    """Extended stitches carry a chain at the foot, reverse ones a wave over the cross."""
    if sign in ("esc", "ehdc", "edc", "etr", "fsc"):
        yield _oval(leg.at(0.14), _angle(leg), 0.16, 0.1)
        yield from _upright(sign.removeprefix("e").removeprefix("f"), _Leg(leg.at(0.28), leg.head))
        return
    yield from _upright("sc", leg)
    a, b = leg.at(1.0, -0.32), leg.at(1.0, 0.32)
    yield Stroke(f"M{_xy(a)}Q{_xy(leg.at(1.25, -0.16))} {_xy(leg.head)}T{_xy(b)}")


def _own(feet: Sequence[Point], heads: Sequence[Point], own: int) -> Iterator[Stroke]:
    """A special stitch: its legs, and a mark of its own where they meet."""
    middle = _Leg(_middle(feet), _middle(heads))
    heart = middle.at(0.56)
    for foot in feet:
        yield _line(_Leg(foot, heart).inset().foot, _Leg(foot, heart).inset(0, 0.3).head)
    for head in heads:
        yield _line(_Leg(heart, head).inset(0.3, 0).foot, _Leg(heart, head).inset(0, _GAP).head)
    yield Stroke(_mark(_LOZENGES[own % len(_LOZENGES)], _Leg(heart, _middle(heads))))


def _mark(shape: str, leg: _Leg) -> str:
    long = leg.length
    up, side = 0.36 / long, 0.3
    if shape == "round":
        return _circle(leg.foot, 0.3)
    corners = {
        "diamond": ((up, 0.0), (0.0, side), (-up, 0.0), (0.0, -side)),
        "square": ((up * 0.8, -0.27), (up * 0.8, 0.27), (-up * 0.8, 0.27), (-up * 0.8, -0.27)),
        "triangle": ((up, 0.0), (-up * 0.7, 0.32), (-up * 0.7, -0.32)),
        "drop": ((-up, 0.0), (up * 0.7, 0.32), (up * 0.7, -0.32)),
    }[shape]
    return "M" + "L".join(_xy(leg.at(part, aside)) for part, aside in corners) + "Z"


def _loop(leg: _Leg, loop: str) -> Stroke:
    """A short curve under the stitch: open upward for the back loop, downward for the front."""
    low, high = (-0.02, 0.16) if loop == "back" else (0.16, -0.02)
    long = leg.length
    a, b = leg.at(high / long, -0.3), leg.at(high / long, 0.3)
    return Stroke(f"M{_xy(a)}Q{_xy(leg.at((2 * low - high) / long))} {_xy(b)}")


def _chains(count: int, line: Sequence[Point]) -> Iterator[Stroke]:
    """Ovals one behind the other along a line, as long as there is room for."""
    ways = list(_measured(line))
    whole = ways[-1][0]
    long = min(CHAIN, whole / count)
    first = (whole - long * count) / 2
    for nth in range(count):
        begin, end = first + nth * long, first + (nth + 1) * long
        one, other = _along(ways, begin), _along(ways, end)
        leg = _Leg(one, other)
        yield _oval(leg.at(0.5), _angle(leg), long * 0.44, min(0.17, long * 0.3))


def _measured(line: Sequence[Point]) -> Iterator[tuple[float, Point]]:
    gone = 0.0
    before = line[0]
    for point in line:
        gone += math.dist(before, point)
        yield gone, point
        before = point


def _along(ways: Sequence[tuple[float, Point]], at: float) -> Point:
    for (a, one), (b, other) in pairwise(ways):
        if at <= b:
            return _Leg(one, other).at((at - a) / (b - a) if b > a else 0.0)
    return ways[-1][1]


def _picot(feet: Sequence[Point], heads: Sequence[Point], chains: int) -> Iterator[Stroke]:
    """Ovals in a ring on top of the stitch before."""
    del feet
    count = max(3, min(chains, 6))
    away = _Leg(Point(0, 0), heads[0])
    angle = _angle(away) if away.length > 0.01 else -math.pi / 2
    middle = Point(heads[0].x + 0.42 * math.cos(angle), heads[0].y + 0.42 * math.sin(angle))
    for nth in range(count):
        turn = angle + math.pi + (nth + 0.5) * math.tau / count
        at = Point(middle.x + 0.24 * math.cos(turn), middle.y + 0.24 * math.sin(turn))
        yield _oval(at, turn + math.pi / 2, 0.2, 0.09)


def _fasten(at: Point) -> Stroke:
    """A filled triangle."""
    corners = ((0.0, -0.24), (0.26, 0.2), (-0.26, 0.2))
    path = "L".join(_xy(Point(at.x + dx, at.y + dy)) for dx, dy in corners)
    return Stroke(f"M{path}Z", filled=True)


def _line(one: Point, other: Point) -> Stroke:
    return Stroke(f"M{_xy(one)}L{_xy(other)}")


def _bar(leg: _Leg, part: float, half: float) -> Stroke:
    return _line(leg.at(part, -half), leg.at(part, half))


def _bow(leg: _Leg, aside: float) -> Stroke:
    """A line that bulges to a side."""
    return Stroke(f"M{_xy(leg.foot)}Q{_xy(leg.at(0.5, aside))} {_xy(leg.head)}")


def _dot(at: Point, radius: float) -> Stroke:
    return Stroke(_circle(at, radius), filled=True)


def _circle(at: Point, radius: float) -> str:
    return _arcs(at, radius, radius, 0.0)


def _oval(at: Point, angle: float, long: float, wide: float) -> Stroke:
    return Stroke(_arcs(at, long, wide, angle))


def _arcs(at: Point, long: float, wide: float, angle: float) -> str:
    dx, dy = long * math.cos(angle), long * math.sin(angle)
    one, other = Point(at.x - dx, at.y - dy), Point(at.x + dx, at.y + dy)
    arc = f"A{long:.2f} {wide:.2f} {math.degrees(angle):.0f} 0 1"
    return f"M{_xy(one)}{arc} {_xy(other)}{arc} {_xy(one)}"


def _angle(leg: _Leg) -> float:
    return math.atan2(leg.head.y - leg.foot.y, leg.head.x - leg.foot.x)


def _middle(points: Sequence[Point]) -> Point:
    return Point(sum(p.x for p in points) / len(points), sum(p.y for p in points) / len(points))


def _xy(point: Point) -> str:
    return f"{point.x:.2f} {point.y:.2f}"
