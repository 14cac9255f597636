"""Rows of tiles: each is a few stitches beside chains, into which the next row is worked.

So is worked what grows from a corner: "Ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in
next ch-3 sp, ch 3, 3 dc in same sp; rep from * across".
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from tracker.fabric.called import spacey
from tracker.fabric.trees import every, slips
from tracker.notation.tree import At, Chain, Group, Make, Node, Note, Repeat, Target

#: Fewer chains make no side of a tile.
LEAST_CHAINS = 2
#: The longest chain that a tile is begun by.
_LONGEST = 9


def makes_tiles(nodes: tuple[Node, ...]) -> bool:
    """Whether a row is made of tiles, and begins with one or goes on from those below."""
    return begins_tile(nodes) and any(_is_next(node) for node in _sequences(nodes))


def of_tiles(nodes: tuple[Node, ...]) -> bool:
    """Whether a row may be of tiles, where others of its part are."""
    return begins_tile(nodes) or any(_is_next(node) for node in _sequences(nodes))


def begins_tile(nodes: tuple[Node, ...]) -> bool:
    """``ch n "," stitch "in" (n - k)th "ch from hook" …``: a tile that stands off the row"""
    work = [n for n in nodes if isinstance(n, Chain | Make | Group | Repeat)]
    if len(work) < LEAST_CHAINS or not isinstance(work[0], Chain):
        return False
    first = work[1].target if isinstance(work[1], Make) else None
    hook = first is not None and first.at is At.HOOK
    return hook and first is not None and LEAST_CHAINS < first.nth < work[0].count[0] <= _LONGEST


def _sequences(nodes: tuple[Node, ...]) -> list[tuple[Node, ...]]:
    """The things made one after another: of the row itself, its repeats, its groups."""
    inner = [n.body for n in every(nodes) if isinstance(n, Repeat | Group)]
    return [nodes, *inner]


def _is_next(nodes: tuple[Node, ...]) -> bool:
    """``sl st … "," ch "," stitches``, all in one space, are among these."""
    work = [n for n in nodes if not isinstance(n, Note)]
    for (slip, chain), more in zip(pairwise(work), work[2:], strict=False):
        led = slips(slip) and isinstance(chain, Chain) and chain.count[0] >= LEAST_CHAINS
        if led and isinstance(more, Make) and more.count[0] >= LEAST_CHAINS:
            place = slip.target if isinstance(slip, Make) else None
            if place is None and more.target is None:
                return True  # in a bracket, with one place
            spaced = place is not None and (spacey(place.kind) or spacey(place.until))
            if spaced and more.target is not None and more.target.at is At.SAME:
                return True
    return False


def into_tiles(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The row with "sl st to next ch-3 sp" as one into that space."""
    return tuple(_into(node) for node in nodes)


def _into(node: Node) -> Node:
    if isinstance(node, Repeat | Group):
        return replace(node, body=into_tiles(node.body))
    target = node.target if isinstance(node, Make) and slips(node) else None
    if not isinstance(node, Make) or target is None or not spacey(target.until):
        return node
    return replace(node, target=Target(At.NEXT, target.until))
