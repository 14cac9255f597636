"""Trees retold: with places, chains or lists taken in another way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tracker.fabric.begins import beginning
from tracker.fabric.edge import SKIPPED
from tracker.fabric.trees import every
from tracker.notation.tree import (
    Act,
    Along,
    At,
    Chain,
    Group,
    Make,
    Node,
    Repeat,
)

_SECOND = 2


def raised(nodes: tuple[Node, ...], number: int) -> tuple[Node, ...]:
    """The tree with the places of round ``number`` taken as those of the round below."""
    return tuple(_raised(node, number) for node in nodes)


def _raised(node: Node, number: int) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=raised(node.body, number))
    target = node.target if isinstance(node, Make | Group) else None
    if target is None or target.at is not At.BELOW or target.nth != number:
        return node
    assert isinstance(node, Make | Group)
    return replace(node, target=replace(target, at=target.of, nth=0))


def in_opening(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with the stitches that an earlier round passed over as places of their own.

    "In each of the 6 skipped sts and each ch" is in every place round the opening.
    """
    return tuple(_in_opening(node) for node in nodes)


def _in_opening(node: Node) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=in_opening(node.body))
    target = node.target if isinstance(node, Make | Group) else None
    if target is None or target.at is not At.SKIPPED:
        return node
    assert isinstance(node, Make | Group)
    if target.kind in ("st+ch", "st+sp"):
        return replace(node, target=replace(target, at=At.EACH, count=None))
    at = At.EACH if target.count is None else At.NEXT
    return replace(node, target=replace(target, at=at, kind=SKIPPED))


def behind(nodes: tuple[Node, ...], number: int) -> tuple[Node, ...]:
    """The tree of a round worked behind petals, with single stitches as places further down.

    They are those of round ``number``, which the petals stand on; with 0, those that stand
    between the petals.
    """
    return tuple(_behind(node, number) for node in nodes)


def _behind(node: Node, number: int) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=behind(node.body, number))
    target = node.target if isinstance(node, Make | Group) else None
    if target is None or target.at is not At.NEXT or target.count is not None:
        return node
    if target.kind not in ("sc", "sl st", "st", "dc"):
        return node
    assert isinstance(node, Make | Group)
    if number == 0:
        return replace(node, target=replace(target, kind="post"))
    return replace(node, target=replace(target, at=At.BELOW, nth=number, of=target.at))


def from_loop(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree of a round that begins in the middle of a loop.

    "In same sc" is in the stitch that closed it, which lies in that loop.
    """
    first = next((n for n in nodes if isinstance(n, Make | Group | Repeat)), None)
    target = first.target if isinstance(first, Make | Group) else None
    if first is None or target is None or target.at is not At.SAME or target.kind.endswith("sp"):
        return nodes
    assert isinstance(first, Make | Group)
    return with_node(nodes, first, replace(first, target=replace(target, kind="sp")))


def cornerless(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with corners taken for stitches like the others; () where it counts on them.

    So it does where the words go to each corner, or up to one.
    """
    told = [n for n in every(nodes) if isinstance(n, Make | Group | Act) and n.target]
    targets = [n.target for n in told if n.target is not None]
    corners = [t for t in targets if t.kind == "corner"]
    spaced = any(t.kind.endswith("sp") or t.until for t in targets)
    lacy = any(isinstance(n, Group) and any(isinstance(c, Chain) for c in n.body) for n in told)
    if not corners or spaced or any(t.at is At.EACH and t.count is None for t in corners) or lacy:
        return ()
    apart = (n.body if isinstance(n, Along) else (n,) for n in nodes)
    return tuple(_cornerless(node) for part in apart for node in part)


def spaceless(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with loops as places taken for stitches, as translations call them; or ().

    Not where it makes chains itself, or names a space by its length.
    """
    targets = [n.target for n in every(nodes) if isinstance(n, Make | Group) and n.target]
    chained = any(isinstance(n, Chain) for n in every(nodes))
    if chained or not targets or any(t.kind not in ("sp", "st") or t.until for t in targets):
        return ()
    return tuple(_spaceless(node) for node in nodes)


def _spaceless(node: Node) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=tuple(_spaceless(inner) for inner in node.body))
    target = node.target if isinstance(node, Make | Group) else None
    if target is None or target.kind != "sp":
        return node
    assert isinstance(node, Make | Group)
    return replace(node, target=replace(target, kind="st"))


def _cornerless(node: Node) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=tuple(_cornerless(inner) for inner in node.body))
    target = node.target if isinstance(node, Make | Group | Act) else None
    if target is None or target.kind != "corner":
        return node
    assert isinstance(node, Make | Group | Act)
    at = At.NEXT if target.at is At.EACH else target.at
    return replace(node, target=replace(target, at=at, kind="st"))


def with_stitches(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with "in the 2nd", which may be a chain, taken for the second stitch.

    The beginning chain stands on the first one.
    """
    return tuple(_with_stitch(node) for node in nodes)


def _with_stitch(node: Node) -> Node:
    if isinstance(node, Group | Repeat):
        return replace(node, body=with_stitches(node.body))
    target = node.target if isinstance(node, Make) else None
    bare = target is not None and target.at is At.HOOK and target.kind == "st"
    if isinstance(node, Make) and target is not None and bare and target.nth == _SECOND:
        return replace(node, target=replace(target, at=At.NEXT, nth=0))
    return node


def saying(nodes: tuple[Node, ...], said: Mapping[int, bool]) -> tuple[Node, ...]:
    """The tree with what was said for all rounds of its beginning chain, by length."""
    chain = beginning(nodes)
    if chain is None or chain.counts is not None or chain.count[0] not in said:
        return nodes
    counts = said[chain.count[0]]
    return with_node(nodes, chain, replace(chain, counts=counts, lasting=True))


def taken_apart(node: Group) -> tuple[Node, ...]:
    """The things of a group one after another, the place behind the last for it alone."""
    last = node.body[-1]
    return (*node.body[:-1], replace(last, target=node.target)) if isinstance(last, Make) else ()


def with_node(nodes: tuple[Node, ...], old: Node, new: Node) -> tuple[Node, ...]:
    """The tree with ``old`` exchanged for ``new``."""
    found: list[Node] = []
    for node in nodes:
        if node is old:
            found.append(new)
        elif isinstance(node, Group | Repeat):
            found.append(replace(node, body=with_node(node.body, old, new)))
        elif isinstance(node, Along):
            parts = [n for n in with_node(node.body, old, new) if isinstance(n, Make | Group)]
            found.append(replace(node, body=tuple(parts)))
        else:
            found.append(node)
    return tuple(found)


def resumed(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """A row that takes up stitches left unworked: yarn is joined to the next of them.

    "Skip next 10 sts, join yarn in next st, ch 1, sc in same st": that is a next one.
    """
    found: list[Node] = []
    made = False
    for node in nodes:
        target = node.target if isinstance(node, Make | Group | Act) else None
        if isinstance(node, Act) and not made:
            found.append(replace(node, target=None))
        elif isinstance(node, Make | Group) and not made and target and target.at is At.SAME:
            found.append(replace(node, target=replace(target, at=At.NEXT)))
        else:
            found.append(node)
        made = made or isinstance(node, Make | Group | Repeat)
    return tuple(found)
