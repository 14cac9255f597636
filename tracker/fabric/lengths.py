"""Which lengths of chain spaces the words of a round may leave, and which they ask for.

So much is known of a round without a count: a ch-3 space cannot be worked into where only
loops of 4 chains were made.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations_with_replacement

from tracker.fabric.begins import beginning
from tracker.fabric.trees import every
from tracker.notation.tree import At, Chain, Group, Make, Node, Skip

#: A beginning chain stands for a stitch of up to so many chains, and makes a space besides.
_HIGHEST = 5
#: Places that surely lie on the round below.
_BELOW = (At.NEXT, At.EACH, At.FIRST, At.LAST)


def lengths_left(nodes: tuple[Node, ...]) -> set[int]:
    """All lengths of spaces that a round may leave; empty where its words make none.

    With those it passes over, which stay open beside it.
    """
    chains = chains_of(nodes)
    made = chains | {
        n for node in every(nodes) if isinstance(node, Make) for n in node.stitch.spaces
    }
    if not made:
        return set()
    first = beginning(nodes)
    begun = {n - h for n in first.count for h in range(1, _HIGHEST)} if first is not None else set()
    together = {a + b for a, b in combinations_with_replacement(chains, 2)}
    passed = {length for node, length in _named(nodes) if isinstance(node, Skip)}
    return {n for n in made | begun | together | passed if n > 0}


def chains_of(nodes: tuple[Node, ...]) -> set[int]:
    """The lengths of all chains that the words of a round make."""
    return {n for node in every(nodes) if isinstance(node, Chain) for n in node.count}


def lengths_asked(nodes: tuple[Node, ...]) -> Iterator[tuple[Node, int]]:
    """The spaces of the round below that a round works into by their length, each where it does."""
    for node, length in _named(nodes):
        target = node.target if isinstance(node, Make | Group) else None
        if target is not None and target.at in _BELOW and not target.group:
            yield node, length


def _named(nodes: tuple[Node, ...]) -> Iterator[tuple[Node, int]]:
    """All spaces named by their length, worked into or passed over."""
    for node in every(nodes):
        target = node.target if isinstance(node, Make | Group) else None
        kind = node.kind if isinstance(node, Skip) else "" if target is None else target.kind
        digits = "".join(c for c in kind if c.isdigit())
        if kind.endswith(" sp") and digits:
            yield node, int(digits)
