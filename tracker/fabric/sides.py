"""The sides of a square or another shape with corners: how many stitches each of them has."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tracker.fabric.called import Called
from tracker.fabric.edge import UNCOUNTED, Edge, Spot, cornered
from tracker.notation.dictionary import base_of

#: Shapes with fewer or more corners are not counted side by side.
#: The name of a border between two stitches.
_BETWEEN = "border"
FEWEST, MOST = 3, 8


def has_each_side(edge: Edge, name: str, count: int) -> bool | None:
    """Whether each side has ``count`` of the stitches called ``name`` ("" for any).

    None where it has no corners that are known, or ``name`` is no stitch. The stitches of a
    corner belong to both its sides; where the words may mean those between the corners alone,
    or count the middle of a corner to one side or both, that is so, too.
    """
    ways = sides(edge, name)
    if not ways:
        return None
    return any(set(way) == {count} for way in ways)


def sides(edge: Edge, name: str = "") -> list[tuple[int, ...]]:
    """The stitches of each side, from corner to corner, in all the ways they may be counted.

    The likeliest first; empty where no corners are known.
    """
    if name in ("group", "bunch", "corner", "ch", "loop") or name.endswith("sp"):
        return []
    spaced = _cut(edge, lambda called, spot: bool(spot.chains) and called.matches("corner", spot))
    if spaced is not None:
        between = tuple(_counted(_free(side), name) for side in spaced)
        whole = tuple(_counted(side, name) for side in spaced)
        return [whole, between] if any(between) else [whole]
    middles = _cut(cornered(edge), lambda _, spot: spot.group == "corner")
    if middles is None:
        halves = _cut(_halved(edge), lambda _, spot: spot.name == _BETWEEN)
        return [] if halves is None else [tuple(_counted(side, name) for side in halves)]
    between = tuple(_counted(side, name) for side in middles)
    free = tuple(_counted(_free(side), name) for side in middles)
    one, both = tuple(n + 1 for n in between), tuple(n + 2 for n in between)
    return [one, both, between, *([free] if any(free) else [])]


def _cut(edge: Edge, at: Callable[[Called, Spot], bool]) -> list[Edge] | None:
    """What lies between the corners, the last and the first stretch as one; None for none."""
    called = Called(edge, loose=False, singly=False)
    stretches: list[list[Spot]] = [[]]
    for spot in edge:
        if at(called, spot):
            stretches += [[] for _ in range(spot.count)]
        else:
            stretches[-1].append(spot)
    first, *rest = stretches
    if not FEWEST <= len(rest) <= MOST:
        return None
    rest[-1] += first
    return [tuple(stretch) for stretch in rest]


def _halved(edge: Edge) -> Edge:
    """The edge with a border in the middle of each group of an even number of stitches."""
    found: list[Spot] = []
    for spot in edge:
        if spot.group != "group" or spot.count % 2:
            found.append(spot)
            continue
        half = replace(spot, count=spot.count // 2)
        found += [half, Spot(_BETWEEN), replace(half, opens=False)]
    return tuple(found)


def _free(side: Edge) -> Edge:
    """A side without the stitches that are part of its corners, at both ends."""
    begin, end = 0, len(side)
    while begin < end and side[begin].group:
        begin += 1
    while end > begin and side[end - 1].group:
        end -= 1
    return side[begin:end]


def _counted(side: Edge, name: str) -> int:
    """How many stitches a side has of that name."""
    return sum(
        spot.count
        for spot in side
        if not spot.chains
        and spot.name not in UNCOUNTED
        and (not name or base_of(spot.name) == base_of(name))
    )
