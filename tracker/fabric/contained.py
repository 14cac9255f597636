"""Whether a round says itself how much it makes."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.trees import every
from tracker.notation.tree import At, Chain, Evenly, Group, Make, Node, Repeat

#: More stitches than this in one place are a group.
_LEAST_OF_GROUP = 2


def self_contained(nodes: tuple[Node, ...]) -> bool:
    """Whether the count needs nothing to be known of the round below."""
    told = [n for i, n in enumerate(nodes) if isinstance(n, Repeat) and sure(n, nodes[:i])]
    for node in every(nodes):
        open_ = isinstance(node, Repeat) and node.times is None and node not in told
        if open_ or (isinstance(node, Repeat) and node.implied and node.starred):
            return False
        if isinstance(node, Make | Group) and node.target is not None:
            target = node.target
            each_skipped = target.at is At.SKIPPED and (not target.count or "+" in target.kind)
            if target.at is At.EACH or each_skipped:
                return False
        if isinstance(node, Evenly):
            return False
    return True


def by_passes(node: Repeat) -> bool:
    """Whether a pass is one of the things, as nothing in it can be counted for them."""
    upto = node.upto
    if upto is None or upto.kind != "bunch" or upto.size:
        return False
    return not any(_in_one_place(part) for part in every(node.body))


def _in_one_place(node: Node) -> bool:
    if isinstance(node, Group):
        return True
    if not isinstance(node, Make):
        return False
    target = node.target
    single = target is not None and target.count is None and target.at not in (At.EACH, At.SAME)
    return node.stitch.makes > _LEAST_OF_GROUP or (node.count[0] > _LEAST_OF_GROUP and single)


def sure(node: Repeat, before: Sequence[Node]) -> bool:
    """Whether its number tells how often a repeat is worked, ``before`` which others stand.

    Not where each pass is one thing, and another of them may have been made before, nor where
    the chain before it may be one of the loops.
    """
    if node.upto is None or node.stop >= 0 or node.omit:
        return False
    loops = {n.count for n in node.body if isinstance(n, Chain)}
    if node.upto.kind != "bunch" and any(isinstance(n, Chain) and n.count in loops for n in before):
        return False
    made = any(isinstance(n, Make | Group | Repeat) for n in before)
    return not by_passes(node) or not (made or any(isinstance(n, Chain) for n in before))
