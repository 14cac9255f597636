"""Joining neighbours of a tree that are one thing said in two clauses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import pairwise

from tracker.notation.dictionary import STITCHES
from tracker.notation.own_chain import back_along
from tracker.notation.tree import (
    Act,
    Along,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Make,
    Node,
    Note,
    OtherSide,
    Repeat,
    Target,
)


def merged(nodes: list[Node]) -> list[Node]:
    """The nodes of a round, with what belongs together made one."""
    told = _said_after(back_along(_restated(_further_down(nodes))))
    return _along(_alike(_spread(_side_first(_into_own_chain(told)))))


def _further_down(nodes: list[Node]) -> list[Node]:
    """``stitch "around" kind "of round" 3 …, stitch "around next" kind``: of that round too"""
    down: dict[tuple[str, str], int] = {}
    for node in _makes(nodes):
        target = node.target
        if target is not None and target.at is At.BELOW and target.nth > 0:
            down.setdefault((node.stitch.us, target.kind), target.nth)
    return [_lowered(node, down) for node in nodes] if down else nodes


def _makes(nodes: Iterable[Node]) -> Iterator[Make]:
    """All stitches of a tree."""
    for node in nodes:
        if isinstance(node, Make):
            yield node
        elif isinstance(node, Group | Repeat):
            yield from _makes(node.body)


def _lowered(node: Node, down: Mapping[tuple[str, str], int]) -> Node:
    """A node whose stitches go as far down as others of their name do into places so called."""
    if isinstance(node, Group | Repeat):
        return replace(node, body=tuple(_lowered(inner, down) for inner in node.body))
    target = node.target if isinstance(node, Make) else None
    if not isinstance(node, Make) or target is None or target.at not in (At.NEXT, At.EACH):
        return node
    number = down.get((node.stitch.us, target.kind))
    if number is None or target.kind == "st" or target.leave is not None:
        return node
    below = Target(At.BELOW, target.kind, target.count, nth=number, of=target.at)
    return replace(node, target=below)


def _alike(nodes: list[Node]) -> list[Node]:
    """``stitch "around" stitch "and" other "around" other`` as a whole round: each in its kind."""
    works = [n for n in nodes if not isinstance(n, Note | Act | Chain)]
    alike = all(
        isinstance(n, Make)
        and n.target is not None
        and (n.target.at, n.target.kind, n.target.count) == (At.NEXT, n.stitch.us, None)
        for n in works
    )
    if len(works) < 2 or not alike:
        return nodes
    each = {id(n): n for n in works if isinstance(n, Make)}
    return [
        replace(n, target=Target(At.EACH, n.stitch.us))
        if isinstance(n, Make) and id(n) in each
        else n
        for n in nodes
    ]


def _restated(nodes: list[Node]) -> list[Node]:
    """Without the chain that only tells again how a repeat ends: "…, ch 1; rep …, ending ch 1"."""
    found: list[Node] = []
    for node in nodes:
        last = found[-1] if found else None
        body = last.body if isinstance(last, Repeat) and last.partial else ()
        same = isinstance(node, Chain) and bool(body) and isinstance(body[-1], Chain)
        if same and isinstance(last, Repeat) and _length(body[-1]) == _length(node):
            found[-1] = replace(last, partial=False)
            found.append(Note(node.start, node.end))
        else:
            found.append(node)
    return found


def _length(node: Node) -> tuple[int, ...]:
    return node.count if isinstance(node, Chain) else ()


def _into_own_chain(nodes: list[Node]) -> list[Node]:
    """``"ch" n "," make "in" "first" "ch"`` is the nth chain from the hook: "ch 4, 11 dc in it"."""
    works = [i for i, n in enumerate(nodes) if not isinstance(n, Note | Act)]
    if len(works) < 2:
        return nodes
    chain, node = nodes[works[0]], nodes[works[1]]
    if not isinstance(chain, Chain) or not isinstance(node, Make | Group):
        return nodes
    if node.target is None or (node.target.at, node.target.kind) != (At.FIRST, "ch"):
        return nodes
    several = isinstance(node, Group) or node.count[0] > 1
    if not several or len(set(chain.count)) > 1 or not 1 < chain.count[0] < 7:
        return nodes
    into = replace(node, target=Target(At.HOOK, "ch", nth=chain.count[0]))
    return [*nodes[: works[1]], into, *nodes[works[1] + 1 :]]


def _said_after(nodes: list[Node]) -> list[Node]:
    """Put what a chain counts as with that chain: "ch 3, turn (ch 3 counts as a dc)"."""
    found: list[Node] = []
    for node in nodes:
        alone = isinstance(node, Repeat) and node.implied and len(node.body) == 1
        said = node.body[0] if isinstance(node, Repeat) and alone else node
        at = _chain_before(found)
        chain = found[at] if at >= 0 else None
        if isinstance(said, Chain) and isinstance(chain, Chain) and _tells_of(said, chain):
            found[at] = replace(said, start=chain.start, end=chain.end)
        else:
            found.append(node)
    return found


def _tells_of(said: Chain, chain: Chain) -> bool:
    """Whether ``said`` only tells what ``chain`` counts as."""
    return said.counts is not None and chain.counts is None and chain.count == said.count


def _chain_before(nodes: list[Node]) -> int:
    """Where a chain stands, if since then the work was turned at most; else -1."""
    for at in range(len(nodes) - 1, -1, -1):
        if isinstance(nodes[at], Chain):
            return at
        node = nodes[at]
        turns = isinstance(node, Act) and node.deed is Deed.TURN
        if not turns and not isinstance(node, Note):
            return -1
    return -1


def _side_first(nodes: list[Node]) -> list[Node]:
    """Put the side before its stitches: "sc in next 13 ch along other side"."""
    found: list[Node] = []
    for node in nodes:
        last = found[-1] if found else None
        same_clause = isinstance(last, Make) and node.start <= last.end + 1
        found.insert(len(found) - (isinstance(node, OtherSide) and same_clause), node)
    return found


def _along(nodes: list[Node]) -> list[Node]:
    """Neighbours that go into each place of several kinds are worked in one pass."""
    found: list[Node] = []
    for node in _with_their_chains(nodes):
        last = found[-1] if found else None
        if isinstance(node, Make | Group) and _open_each(node):
            if isinstance(last, Along):
                found[-1] = Along((*last.body, node), last.start, node.end)
                continue
            if isinstance(last, Make | Group) and _open_each(last) and _apart(last, node):
                found[-1] = Along((last, node), last.start, node.end)
                continue
        found.append(node)
    return _with_space(found)


def _with_space(nodes: list[Node]) -> list[Node]:
    """``each st "around" … space``: the space that is told last is met on the way."""
    works = [i for i, n in enumerate(nodes) if not isinstance(n, Note | Act | Chain)]
    each, node = (nodes[i] for i in works[-2:]) if len(works) > 1 else (None, None)
    if not isinstance(each, Make) or not isinstance(node, Make | Group) or node.target is None:
        return nodes
    last = node.target
    spaced = last.at is At.NEXT and last.kind.startswith("ch-") and last.count is None
    if not spaced or not _open_each(each) or len(works) > 2:
        return nodes
    met = replace(node, target=replace(last, at=At.EACH))
    return [*nodes[: works[0]], Along((each, met), each.start, node.end), *nodes[works[1] + 1 :]]


def _with_their_chains(nodes: list[Node]) -> list[Node]:
    """Chains between such neighbours belong to what stands before them.

    "(3 dc, ch 2, 3 dc) in each corner, ch 1, 3 dc in each side sp, ch 1" has one behind each.
    """
    each = [n for n in nodes if isinstance(n, Make | Group) and _open_each(n)]
    if len(each) < 2 or not all(_apart(one, other) for one, other in pairwise(each)):
        return nodes
    found: list[Node] = []
    for node in nodes:
        last = found[-1] if found else None
        if isinstance(node, Chain) and isinstance(last, Make | Group) and last in each:
            inner = last.body if isinstance(last, Group) else (replace(last, target=None),)
            assert last.target is not None
            found[-1] = Group((*inner, node), last.target, last.start, node.end)
        else:
            found.append(node)
    return found


def _open_each(node: Make | Group) -> bool:
    """Whether a node goes into each place of a kind, without a bound."""
    target = node.target
    bounded = target is None or target.leave is not None or bool(target.until) or target.group
    return target is not None and not bounded and target.at is At.EACH


def _apart(one: Make | Group, other: Make | Group) -> bool:
    """Whether two nodes go into different kinds of place, such as spaces and stitches."""
    kinds = {n.target.kind for n in (one, other) if n.target is not None}
    spaced = any(k in ("sp", "corner") or k.endswith(" sp") for k in kinds)
    return len(kinds) == 2 and (spaced or kinds.isdisjoint(("st", "ch", "tch", "st+ch", "st+sp")))


def _spread(nodes: list[Node]) -> list[Node]:
    """One thing said in two clauses: "hdc around, increasing 9 sts evenly"."""
    found: list[Node] = []
    for node in nodes:
        last = found[-1] if found else None
        if isinstance(last, Evenly) and last.ends in ("first", "one") and goes_round([node]):
            found[-1] = _at_once(last)
        spread = isinstance(node, Evenly) and node.change
        plain = goes_round(found) or (isinstance(last, Evenly) and not last.change)
        if spread and plain and isinstance(node, Evenly) and isinstance(last, Make | Evenly):
            found[-1] = replace(node, stitch=last.stitch, start=last.start)
        else:
            found.append(node)
    return found


def _at_once(node: Evenly) -> Make:
    """Changes at the beginning of a row whose other stitches are told behind them."""
    stitch = STITCHES["inc" if node.change > 0 else "dec"]
    return Make(stitch, node.count, None, node.start, node.end)


def goes_round(nodes: list[Node]) -> bool:
    """Whether what was read last is worked to the end of the round."""
    last = nodes[-1] if nodes else None
    return isinstance(last, Make | Group) and last.target is not None and last.target.at is At.EACH
