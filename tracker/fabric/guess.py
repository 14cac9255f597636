"""What a round of which only the printed count is known may be worked into."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.edge import Edge, plain_edge
from tracker.fabric.outcome import Outcome, Start
from tracker.fabric.reading import Reading
from tracker.fabric.stated import counting, figure_of, totals
from tracker.fabric.trees import every, into_chain, slips
from tracker.fabric.walker import walk
from tracker.notation.round_text import Stated
from tracker.notation.tree import Along, At, Evenly, Group, Make, Node, Repeat

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


def assumed(
    nodes: tuple[Node, ...], stated: Stated, start: Start, reading: Reading
) -> Start | None:
    """A start from an unknown edge with the repeats that bring out the printed count.

    "Around" stands for so many repeats; each adds the same number of stitches, so that the
    printed count tells how many there are. None where it does not, or not clearly.
    """
    if any(isinstance(n, Evenly | Along) for n in every(nodes)):
        return None
    if sum(_is_open(n) for n in every(nodes)) != 1:
        return None
    free = replace(start, edge=None)
    one, two = (totals(walk(nodes, replace(free, assumed=k), reading)) for k in (1, 2))
    spaces = [f for name, f in stated.parts if name == "loop" or name.endswith("sp")]
    if stated.total is None and not spaces:
        return None
    figures = spaces if stated.total is None else [stated.total]
    goal = sum(figure_of(figure, start.index) for figure in figures)
    for way in one if stated.total is not None else ("spaces",):
        if way not in one:
            continue
        per, over = two.get(way, 0) - one[way], goal - one[way]
        if per <= 0 or over < 0 or over % per or over // per >= MOST_GUESSED:
            continue
        found = replace(free, assumed=1 + over // per)
        if _proves(stated, walk(nodes, found, reading)):
            return found
    return None


def _is_open(node: Node) -> bool:
    """Whether how often a thing is worked depends on the round below."""
    if isinstance(node, Repeat):
        return node.times is None and not node.implied
    target = node.target if isinstance(node, Make | Group) and not slips(node) else None
    return target is not None and target.at is At.EACH


def _proves(stated: Stated, outcome: Outcome) -> bool:
    """Whether the printed count, in all its parts, is what the round makes."""
    return bool(counting(stated, [outcome]))
