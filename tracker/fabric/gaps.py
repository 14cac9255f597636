"""The gaps between groups of stitches, opened as places of an edge."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.edge import Edge, Spot
from tracker.fabric.places import ELSEWHERE, Numbers


def with_gaps(edge: Edge, numbers: list[Numbers]) -> tuple[Edge, list[Numbers]]:
    """An edge with a gap between every two groups, and the numbers of its places.

    A lone stitch before a group is its edge.
    """
    edge, numbers = _in_groups(edge, numbers)
    opened: list[Spot] = []
    found = []
    for i, spot in enumerate(edge):
        if i and _gap_before(edge, i):
            opened.append(Spot("gap"))
            found.append(ELSEWHERE)
        opened.append(spot)
        found.append(numbers[i])
    if opened and opened[-1].group:
        opened.append(Spot("gap"))  # where the round meets its beginning
        found.append(ELSEWHERE)
    return tuple(opened), found


def grouped(edge: Edge) -> Edge:
    """An edge with "9 dc in each loop" as so many groups, the first with the chain it began by."""
    parted, _ = _in_groups(edge, [ELSEWHERE] * len(edge))
    size = next((spot.each for spot in edge if spot.each > 2), 0)
    first = parted[0] if parted else None
    if first is not None and not first.group and not first.chains and first.count == size > 0:
        parted = (replace(first, group="group", opens=True), *parted[1:])
    return parted


def _in_groups(edge: Edge, numbers: list[Numbers]) -> tuple[Edge, list[Numbers]]:
    """Take "3 dc in each st" for as many groups; pairs only where there are no others."""
    others = any(spot.group or spot.each > 2 for spot in edge)
    parted: list[Spot] = []
    found = []
    for spot, number in zip(edge, numbers, strict=True):
        if spot.group or spot.each < 2 + others:
            parted.append(spot)
            found.append(number)
            continue
        for begin in range(0, spot.count, spot.each):
            parted.append(replace(spot, count=spot.each, group="group", opens=True))
            found.append(number.after(begin))
    return tuple(parted), found


def _gap_before(edge: Edge, at: int) -> bool:
    """Whether a group ends just before spot ``at`` and another begins there."""
    before, spot = edge[at - 1], edge[at]
    if spot.opens:
        return bool(before.group) or _loose_run(edge, at - 1, -1) > 1
    return bool(before.group) and not spot.group and _loose_run(edge, at, 1) > 1


def _loose_run(edge: Edge, at: int, step: int) -> int:
    """How many stitches outside any group stand side by side from spot ``at`` on."""
    count = 0
    while 0 <= at < len(edge) and not edge[at].group and not edge[at].chains:
        count += edge[at].count
        at += step
    return count
