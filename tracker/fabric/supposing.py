"""What a round may be worked into of which only the number of stitches is known.

Corners and other spaces stand at equal distances in most motifs (common practice, no
source). Where the words and the printed count fit that for one number of spaces only, it
is taken for the round below.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from tracker.fabric.edge import Edge, Spot, plain_edge, space
from tracker.fabric.outcome import Start
from tracker.fabric.reading import Reading
from tracker.fabric.stated import counting
from tracker.fabric.trees import every, slips
from tracker.fabric.walker import walk
from tracker.notation.round_text import Stated
from tracker.notation.tree import Along, At, Group, Make, Node, Repeat, Skip, Target

#: How many spaces a round may have, and the most stitches between two of them.
NUMBERS = (4, 6, 3, 8)
MOST_BETWEEN = 40
#: The usual length of a corner that is not told.
_CORNER = 2


def supposed(
    nodes: tuple[Node, ...], stated: Stated | None, start: Start, reading: Reading, count: int
) -> Edge | None:
    """The one edge of ``count`` stitches, parted by spaces, that the round uses up exactly.

    It must make what is printed, where that is. None where none does, or where edges do on
    which the round makes different counts.
    """
    length = _length(nodes)
    if not length:
        return None
    found: Edge | None = None
    makes = -1
    for edge in _edges(count, length, _told(nodes) or NUMBERS):
        outcome = walk(nodes, replace(start, edge=edge), reading)
        if outcome.short is not None or outcome.left or outcome.passed:
            continue
        if stated is not None and counting(stated, [outcome]) is None:
            continue
        if found is not None and outcome.makes != makes:
            return None
        if found is None:
            found, makes = edge, outcome.makes
    return found


def _told(nodes: tuple[Node, ...]) -> tuple[int, ...]:
    """How many corners there are, where the words say it: "in each of the 4 corners"."""
    said = (n.target for n in every(nodes) if isinstance(n, Make | Group))
    return tuple({t.count[0] for t in said if t and t.at is At.EACH and t.count})


def _edges(count: int, length: int, numbers: Sequence[int]) -> Iterator[Edge]:
    """The same number of stitches between every two spaces, begun at each of its places."""
    for number in numbers:
        between, over = divmod(count, number)
        if over or not 0 < between <= MOST_BETWEEN:
            continue
        side = (Spot("st", between), space(length))
        for before in range(between, 0, -1):
            first = (Spot("st", before), space(length))
            yield (*first, *side * (number - 1), *plain_edge(between - before))


def _length(nodes: tuple[Node, ...]) -> int:
    """The length of the spaces worked into; 0 where they are of several lengths.

    So it is, too, where all goes into spaces, so that the stitches tell nothing of them.
    """
    targets = list(_targets(nodes))
    kinds = {t.kind for t in targets if t is not None and t.at is not At.SAME and _spacey(t)}
    kinds |= {n.kind for n in every(nodes) if isinstance(n, Skip) and n.kind.endswith("sp")}
    told = {int("".join(c for c in kind if c.isdigit())) for kind in kinds - {"sp", "corner"}}
    stitches = any(t is None or not _spacey(t) for t in targets)
    if not kinds or len(told) > 1 or not stitches:
        return 0
    return told.pop() if told else _CORNER


def _targets(nodes: tuple[Node, ...]) -> Iterator[Target | None]:
    """The places that stitches go into, one after another or several together."""
    for node in nodes:
        if isinstance(node, Repeat | Along):
            yield from _targets(node.body)
        elif isinstance(node, Make | Group) and not slips(node):
            yield node.target


def _spacey(target: Target) -> bool:
    return target.kind in ("sp", "corner") or target.kind.endswith(" sp")
