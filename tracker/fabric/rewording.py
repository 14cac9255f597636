"""Readings that take the words of a round apart otherwise than the reader did."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.reading import Reading
from tracker.notation.tree import Act, At, Chain, Loops, Make, Node, Note, Repeat, Stated, Target

#: What stands before or behind the stitches of a round.
_BESIDE = Act | Chain | Note | Loops


def rewordings(nodes: tuple[Node, ...], stated: Stated | None) -> list[str]:
    """Fields of `Reading` that hold for a round whose words may be divided otherwise."""
    found = []
    if stated is None and _printed_last(nodes) is not None:
        found.append("last_is_count")
    if stated is not None and _all_so_often(nodes):
        found.append("whole")
    return found


def reworded(
    nodes: tuple[Node, ...], stated: Stated | None, reading: Reading
) -> tuple[tuple[Node, ...], Stated | None]:
    """The tree and the printed count as ``reading`` divides the words."""
    if reading.last_is_count:
        return nodes[:-1], _printed_last(nodes)
    return (_all_so_often(nodes) if reading.whole else nodes), stated


def _printed_last(nodes: tuple[Node, ...]) -> Stated | None:
    """The count that the last words may be: "(sc, inc) x 6, 18 sc"."""
    last = nodes[-1] if len(nodes) > 1 else None
    if not isinstance(last, Make) or last.target or last.behind or not last.numbered:
        return None
    if last.loop or last.stitch.takes != 1 or last.stitch.makes != 1:
        return None
    return Stated(last.count, (("", last.count),), last.start, last.end)


def _all_so_often(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The repeat that "sc, inc x 6 (18)" stands for where it is written in haste; or ().

    Deeds and a chain before and behind it stay as they are.
    """
    worked = [i for i, node in enumerate(nodes) if not isinstance(node, _BESIDE)]
    begin, end = (worked[0], worked[-1] + 1) if worked else (0, 0)
    repeat = _repeated(nodes[begin:end])
    return () if repeat is None else (*nodes[:begin], repeat, *nodes[end:])


def _repeated(nodes: tuple[Node, ...]) -> Repeat | None:
    last = nodes[-1] if len(nodes) > 1 else None
    if not all(isinstance(n, Make) and n.target is None for n in nodes[:-1]):
        return None
    if isinstance(last, Repeat) and last.times and not (last.starred or last.implied):
        return replace(last, body=(*nodes[:-1], *last.body))
    if not isinstance(last, Make) or last.count[0] < 2 or not last.numbered:
        return None
    if last.target == Target(At.EACH):
        # "dc, 2 dc in next around"
        body = (*nodes[:-1], replace(last, target=Target(At.NEXT)))
        return Repeat(body, nodes[0].start, last.end, starred=True)
    if last.target:
        return None
    body = (*nodes[:-1], replace(last, count=(1,)))
    return Repeat(body, nodes[0].start, last.end, last.count)
