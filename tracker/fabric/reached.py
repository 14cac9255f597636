"""How many of the things there are by which it is told how far a repeat goes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from tracker.fabric.bunches import bunches
from tracker.fabric.edge import UNCOUNTED, Spot
from tracker.fabric.outcome import Outcome
from tracker.notation.tree import Node, Repeat, Upto

#: No round has more petals, shells or spaces than this.
MOST_THINGS = 700


def number_of(upto: Upto, edge: Sequence[Spot], begun: bool = False) -> int:
    """How many spaces, or groups of stitches, are on an edge.

    Groups of a size are stretches of so many stitches between spaces, or, where there are
    none, so many in one place; without a size the largest in one place are meant.
    ``begun``: a chain that counts stands before the first of them.
    """
    if upto.kind != "bunch":
        return sum(s.count for s in edge if s.chains and upto.kind in ("sp", s.name))
    groups = _groups(edge)
    if not upto.size:
        return groups.count(max(groups, default=0))
    stretches = _stretches(edge)
    first = begun and stretches[:1] == [upto.size + 1]
    return stretches.count(upto.size) + first or groups.count(upto.size)


def _groups(edge: Sequence[Spot]) -> list[int]:
    """The stitches of each group in one place."""
    found: list[int] = []
    for spot in edge:
        if spot.group and spot.opens:
            found.append(0)
        if spot.group and found and not spot.chains:
            found[-1] += spot.count
    return found


def _stretches(edge: Sequence[Spot]) -> list[int]:
    """The stitches of each stretch between chain spaces; none where there are no spaces."""
    known = [spot for spot in edge if spot.name not in UNCOUNTED]
    if not any(spot.chains for spot in known):
        return []
    parted = groupby(known, key=lambda spot: bool(spot.chains))
    return [sum(s.count for s in stretch) for spaced, stretch in parted if not spaced]


def missed(nodes: Sequence[Node], outcome: Outcome, index: int) -> tuple[Repeat, int, int] | None:
    """The first repeat that goes to the end and does not come to its number, and both numbers."""
    for node in nodes:
        upto = node.upto if isinstance(node, Repeat) else None
        if upto is None or not isinstance(node, Repeat):
            continue
        wanted = upto.count[index] if index < len(upto.count) else upto.count[0]
        had = number_of(upto, outcome.edge)
        ways = {had - 1, had, had + 1} if upto.kind != "bunch" else {had, *bunches(outcome)}
        if wanted not in ways and max(ways) > 0:
            return node, wanted, had or max(ways)
    return None
