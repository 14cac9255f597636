"""What a round of which only the printed count is known may be worked into."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.edge import Edge, plain_edge
from tracker.fabric.outcome import Start
from tracker.fabric.reading import Reading, every
from tracker.fabric.stated import totals
from tracker.fabric.trees import into_chain
from tracker.fabric.walker import walk
from tracker.notation.tree import Node

#: The most stitches that the round below is guessed to have.
MOST_GUESSED = 700


def fitting(nodes: tuple[Node, ...], goal: int, start: Start, reading: Reading) -> Edge | None:
    """The edge of a single kind of place into which one size's ``goal`` stitches fit.

    The one with the count nearest to ``goal``; None where none fits.
    """
    name = "ch" if any(into_chain(n) for n in every(nodes)) else "st"
    for count in sorted(range(1, min(2 * goal + 4, MOST_GUESSED)), key=lambda n: abs(n - goal)):
        edge = plain_edge(count, name)
        outcome = walk(nodes, replace(start, edge=edge), reading)
        if outcome.short is None and not outcome.left and goal in totals(outcome).values():
            return edge
    return None
