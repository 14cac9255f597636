"""What stands side by side in a round, where it begins, where its corners are."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tracker.writing.chart.frames import Polygon
from tracker.writing.chart.knots import Knot, KnotRound
from tracker.writing.chart.laid import Work
from tracker.writing.chart.measures import NUMBER, width
from tracker.writing.chart.spread import Thing, evenly

_NEAR = 0.8
"""So many stitches a seam may be pulled aside, and is still drawn straight."""


def corners_of(rounds: Sequence[KnotRound]) -> tuple[Polygon | None, int]:
    """The polygon that the last rounds are, and the first of them.

    A corner is a chain space between two stitches worked into one place; two rounds at
    least must have as many of them.
    """
    counts = [len(corner_knots(one)) for one in rounds]
    known = [count for count in counts if 3 <= count <= 8 and counts.count(count) > 1]
    if not known:
        return None, len(rounds)
    return Polygon(known[-1]), counts.index(known[-1])


def corner_knots(one: KnotRound) -> list[tuple[Knot, int | None]]:
    """The chain spaces of a round that are corners, each with the place it stands over.

    The place is None for a round in a ring.
    """
    knots = [k for k in one.knots if k.heads and (k.made or k.sign == "space")]
    found: list[tuple[Knot, int | None]] = []
    for at, knot in enumerate(knots):
        before, behind = knots[at - 1], knots[(at + 1) % len(knots)]
        held = bool(before.feet) or not one.under
        if knot.sign == "space" and held and before.feet == behind.feet:
            found.append((knot, before.feet[0] if before.feet else None))
    return found


def line_up(work: Work) -> None:
    """The things of a round in order: its beginning chain, its places, its number."""
    turns, last = 0.0, -1
    count = len(work.below.along)
    for knot in work.round.knots:
        if knot.sign == "rise" and not knot.heads:
            _add(work, knot, None)
            continue
        if knot.feet and work.closed:
            if last >= 0 and knot.feet[0] < last - count / 2:
                turns += math.tau
            last = knot.feet[0]
        feet = [work.below.along[f] + turns for f in knot.feet if f < count]
        target = sum(feet) / len(feet) if feet else None
        for _ in knot.heads:
            _add(work, knot, target)
    if work.closed:
        work.owners.append(Knot("number"))
        work.things.append(Thing(NUMBER))


def _add(work: Work, knot: Knot, target: float | None) -> None:
    work.owners.append(knot)
    work.things.append(Thing(width(knot), target))


def rises(work: Work) -> bool:
    """Whether the round begins with a chain that does not count."""
    return work.owners[0].sign == "rise" and not work.owners[0].made


def seam_of(work: Work, things: Sequence[Thing], middles: Sequence[float]) -> float:
    """Where a ring begins: over the seam below, unless the round begins elsewhere.

    Then all of it is turned so that its stitches stand over their feet as a whole.
    ``middles`` is where the things stand, evenly, in a ring that begins at 0.
    """
    pairs = zip(things, middles, strict=True)
    ways = [thing.target - at for thing, at in pairs if thing.target is not None]
    if not ways:
        return work.below.start
    low = sum(ways) / len(ways)
    near = abs(low - work.below.start) < _NEAR * math.tau / len(things)
    return work.below.start if near else low


def between_corners(work: Work, things: Sequence[Thing], polygon: Polygon) -> list[float]:
    """Each corner at its corner, and all others evenly between."""
    corners = corner_knots(work.round)
    marks = [work.owners.index(knot) for knot, _ in corners]
    foot = corners[0][1]
    start = work.below.start
    even = evenly(things, start, start + math.tau)
    vertex = polygon.vertex(even[marks[0]] if foot is None else work.below.along[foot])
    count = len(things)
    found = [0.0] * count
    for nth, mark in enumerate(marks):
        begin = vertex + nth * math.tau / polygon.corners
        stop = marks[(nth + 1) % len(marks)] + (count if nth + 1 == len(marks) else 0)
        inside = [things[n % count] for n in range(mark + 1, stop)]
        half, other = things[mark].width / 2, things[stop % count].width / 2
        side = [Thing(half), *inside, Thing(other)]
        middles = evenly(side, begin, begin + math.tau / polygon.corners)
        found[mark] = begin
        for n, at in zip(range(mark + 1, stop), middles[1:-1], strict=True):
            found[n % count] = at if n < count else at - math.tau
    return found
