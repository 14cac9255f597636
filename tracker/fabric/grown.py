"""Rounds with corners worked again on a larger square: along each side there is more to make."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.called import spacey
from tracker.notation.tree import At, Chain, Group, Make, Node, Repeat, Skip, Target


def grown(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with what stands between two corners worked up to the next corner.

    "(3 dc, ch 2, 3 dc) in corner, ch 1, 3 dc in next sp, ch 1" has as many groups on a side as
    there are spaces, when it is worked again further out; "dc in next 7 dc" as many stitches
    as the side has. () where nothing is told so.
    """
    found = _grown(nodes)
    return found if found != nodes else ()


def _grown(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    found: list[Node] = []
    at = 0
    while at < len(nodes):
        node = nodes[at]
        if isinstance(node, Make) and _plain_side(nodes, at):
            found.append(_each_to_corner(node))
            at += 1
        elif _on_side(node) and _is_corner_near(nodes):
            found.append(_to_corner(nodes, at))
            at = _behind_side(nodes, at)
        else:
            found.append(_inside(node))
            at += 1
    return tuple(found)


def _inside(node: Node) -> Node:
    if isinstance(node, Repeat):
        return replace(node, body=_grown(node.body))
    return node


def _on_side(node: Node) -> bool:
    """Whether a node puts stitches into the next chain space, or repeats that a few times."""
    if isinstance(node, Repeat):
        if node.times is None and not node.implied:
            return False
        works = [n for n in node.body if not isinstance(n, Chain)]
        return bool(works) and all(_on_side(n) and not isinstance(n, Repeat) for n in works)
    target = node.target if isinstance(node, Make | Group) else None
    if target is None or is_corner(node):
        return False
    spaced = target.kind == "sp" or target.kind.endswith(" sp")
    return spaced and target.at in (At.NEXT, At.FIRST, At.LAST)


def is_corner(node: Node) -> bool:
    """Whether a node makes a corner: a group with chains in it, in one place."""
    return isinstance(node, Group) and any(isinstance(n, Chain) for n in node.body[1:-1])


def _plain_side(nodes: tuple[Node, ...], at: int) -> bool:
    """Whether a number of stitches that stands there is all of a side, in their own places."""
    node = nodes[at]
    target = node.target if isinstance(node, Make) else None
    single = target is not None and target.at is At.LAST  # "ending with dc in last st"
    placed = target is not None and target.at in (At.NEXT, At.LAST, At.FIRST)
    counted = placed and target is not None and (target.count or single)
    if target is None or not counted or spacey(target.kind):
        return False
    beside = (*nodes[max(0, at - 1) : at], *nodes[at + 1 : at + 2])
    works = [n for n in beside if isinstance(n, Make | Skip | Group) and not _in_same(n)]
    return _is_corner_near(nodes) and all(map(is_corner, works))


def _in_same(node: Node) -> bool:
    """Whether a node goes into the place that a round begins in: half of its first corner."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.at is At.SAME


def _each_to_corner(node: Make) -> Make:
    kind = "st" if node.target is None else node.target.kind
    return replace(node, count=(1,), target=Target(At.EACH, kind, until="corner"))


def _is_corner_near(nodes: tuple[Node, ...]) -> bool:
    """Whether a corner is made beside what makes a side, in the same words."""
    near = (inner for n in nodes for inner in (n, *(n.body if isinstance(n, Repeat) else ())))
    return any(map(is_corner, near))


def _behind_side(nodes: tuple[Node, ...], at: int) -> int:
    """Index of what follows the groups of a side, with the chain behind each of them."""
    end = at
    while end < len(nodes) and (_on_side(nodes[end]) or _between(nodes, end)):
        end += 1
    return end


def _between(nodes: tuple[Node, ...], at: int) -> bool:
    """Whether a chain stands there between two groups of a side, or behind the last."""
    return isinstance(nodes[at], Chain) and at > 0 and not is_corner(nodes[at - 1])


def _to_corner(nodes: tuple[Node, ...], at: int) -> Repeat:
    """The first of the groups with the chain behind it, as often as there are spaces."""
    first = nodes[at]
    body = _behind_one(first.body) if isinstance(first, Repeat) else (_next(first),)
    chain = nodes[at + 1] if at + 1 < len(nodes) else None
    if isinstance(chain, Chain) and not isinstance(first, Repeat):
        body = (*body, chain)
    end = nodes[_behind_side(nodes, at) - 1].end
    return Repeat(body, first.start, end, until="corner", starred=True)


def _behind_one(body: tuple[Node, ...]) -> tuple[Node, ...]:
    return tuple(_next(node) for node in body)


def _next(node: Node) -> Node:
    if isinstance(node, Make | Group) and node.target is not None:
        target = node.target
        return replace(node, target=Target(At.NEXT, target.kind))
    return node
