"""Stitches that go back along a chain made in the same round: spikes, tentacles, leaves."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.tree import At, Chain, Group, Make, Node, Note, Repeat, Skip, Target

#: Fewer chains than these may be left under a point that stands on the round.
_LEAST = 2


def back_along(nodes: list[Node], *, inside: bool = False) -> list[Node]:
    """The nodes with the places named that lie in the chain just made.

    "Ch 8, sc in 2nd ch from hook, hdc in next 2, dc in next 4, sl st in next st": what stands
    behind the first stitch goes into the chain too, where it just uses up all of it.

    ``inside``: a repeat, so that a chain at its beginning is not what the whole is worked on.
    """
    found = [_inside(node) for node in nodes]
    works = [i for i, n in enumerate(found) if not isinstance(n, Note)]
    for k, at in reversed(list(enumerate(works[:-1]))):
        chain = found[at]
        begun = inside or any(isinstance(n, Make | Group | Repeat | Skip) for n in found[:at])
        first = found[works[k + 1]]
        if isinstance(chain, Chain) and begun and _all_back(chain, first):
            turn = Skip((1,), "ch", first.start, first.start, At.FIRST)
            found.insert(works[k + 1], turn)
        elif isinstance(chain, Chain) and begun:
            _name_chains(found, works[k + 2 :], _left(chain, first))
    return found


def _inside(node: Node) -> Node:
    if not isinstance(node, Repeat | Group):
        return node
    return replace(node, body=tuple(back_along(list(node.body), inside=True)))


def _all_back(chain: Chain, first: Node) -> bool:
    """Whether low stitches go into each chain just made: the first one turns the work.

    "Ch 10, sc in each ch back" is 9 sc (common practice, no source).
    """
    target = first.target if isinstance(first, Make) else None
    if not isinstance(first, Make) or first.stitch.us not in ("sc", "sl st"):
        return False
    return target == Target(At.EACH, "ch") and chain.count[0] > _LEAST


def _left(chain: Chain, first: Node) -> int:
    """How many chains are left behind the first one worked into; -1 where none is."""
    if isinstance(first, Skip) and first.kind == "ch" and len(first.count) == 1:
        return chain.count[0] - first.count[0]
    target = first.target if isinstance(first, Make) else None
    if target is None or target.at is not At.HOOK or target.count is not None:
        return -1
    return chain.count[0] - target.nth


def _name_chains(nodes: list[Node], works: list[int], left: int) -> None:
    """Give the stitches behind the first, that just use up the chains left, chains for places."""
    if left < _LEAST:
        return
    inside: list[int] = []
    for i in works:
        takes = _takes(nodes[i])
        if takes is None or takes > left:
            return
        inside.append(i)
        left -= takes
        if not left:
            break
    for i in inside if not left else ():
        node = nodes[i]
        if isinstance(node, Make) and (node.target is None or node.target.kind == "st"):
            places = node.count if node.target is None else node.target.count
            target = Target(At.NEXT, "ch", places)
            count = (1,) if node.target is None else node.count
            nodes[i] = replace(node, target=target, count=count)


def _takes(node: Node) -> int | None:
    """How many chains a stitch goes into; None where it names another place."""
    if not isinstance(node, Make) or node.stitch.takes != 1:
        return None
    target = node.target
    if target is None:
        return node.count[0]
    if target.at is not At.NEXT or target.kind not in ("st", "ch"):
        return None
    return 1 if target.count is None else target.count[0]
