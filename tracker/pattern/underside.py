"""The other side of a foundation chain, which a later row or round may be worked into."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.begins import hooked
from tracker.fabric.edge import Edge, Spot
from tracker.fabric.outcome import Outcome
from tracker.fabric.reading import Reading
from tracker.fabric.rewording import slipping
from tracker.fabric.trees import every
from tracker.notation.tree import Act, Chain, Loops, Make, Node, Note, OtherSide, Skip

#: What the hands may do before they go along the other side.
_BEFORE = Act | Chain | Loops | Note


def begins_under(nodes: tuple[Node, ...]) -> bool:
    """Whether a round is worked along the other side of the foundation chain, and only there."""
    first = next((node for node in nodes if not isinstance(node, _BEFORE)), None)
    return isinstance(first, OtherSide)


def along_it(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree without the words that lead to the other side."""
    nodes = slipping(nodes) or nodes
    return tuple(node for node in nodes if not isinstance(node, OtherSide))


def underside(
    nodes: tuple[Node, ...], outcomes: Sequence[Outcome], reading: Reading
) -> list[Edge | None]:
    """The free chains under a first row, in each size; None where they are not known.

    One for each chain that was worked into, and one for the chains passed over at its start
    where they count as a stitch. Under foundation stitches there is one for each.
    """
    if any(isinstance(node, OtherSide) for node in every(nodes)):
        return [None] * len(outcomes)
    if any(isinstance(node, Make) and node.stitch.us == "fsc" for node in every(nodes)):
        return [_chains(outcome.makes) for outcome in outcomes]
    nth = hooked(nodes)
    if not nth or any(isinstance(node, Skip) and node.kind == "ch" for node in nodes[:1]):
        return [None] * len(outcomes)
    passed = nth - 1 - int(reading.chain_counts)
    return [_chains(outcome.under - passed) for outcome in outcomes]


def _chains(count: int) -> Edge | None:
    return (Spot("ch", count),) if count > 0 else None
