"""Which ways of taking its words a round leaves open."""

from __future__ import annotations

from tracker.fabric.begins import worked_into
from tracker.fabric.trees import every, names_stitch
from tracker.notation.tree import (
    Act,
    Along,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Loops,
    Make,
    More,
    Node,
    Note,
    OtherSide,
    Repeat,
    Skip,
)

#: A chain that is worked into along both sides has more chains than these.
_LEAST_FOUNDATION = 2


def open_ways(nodes: tuple[Node, ...], pending: bool, below: str) -> list[str]:
    """Fields of `Reading` that these words leave open, the likeliest first.

    ``pending``: a chain made at the end of the round below stands before this round.
    ``below``: "chains" where the edge has chains or chain spaces among other things,
    "foundation" where it is a chain and nothing else, or "".
    """
    chains_below, foundation = bool(below), below == "foundation"
    found: dict[str, None] = {}
    begun = False
    for node in every(nodes):
        if not begun:
            _begin_ways(node, nodes, found)
        _node_ways(node, found, begun)
        slipping = isinstance(node, Make) and not begun and _slips_along(node)
        begun = begun or (isinstance(node, Make | Evenly) and not slipping)
    if _wraps(nodes):
        found["wraps"] = None
    _along_ways(nodes, found)
    asked = {
        "chain_counts": pending,
        "early": _turns_back(nodes),
        "there": _first_in_space(nodes, chains_below),
        "hind": chains_below and _first_in_space(nodes, chains_below),
    }
    found.update(dict.fromkeys(way for way, open_ in asked.items() if open_))
    if chains_below:
        if _begins_in_same_space(nodes):
            found["at_join"] = None
        found["singly"] = None
    _chain_ways(nodes, found, chains_below or _own_chain(nodes), foundation)
    return list(found)


def _along_ways(nodes: tuple[Node, ...], found: dict[str, None]) -> None:
    """What stitches along pieces, or a chain between them, leave open."""
    if any(_along_pieces(node) for node in nodes):
        found["twin"] = None
    if any(_along_chain(node) for node in nodes):
        found["strung"] = None


def _chain_ways(
    nodes: tuple[Node, ...], found: dict[str, None], chains: bool, foundation: bool
) -> None:
    """What a foundation chain below, or at the round's own beginning, leaves open."""
    if foundation or _own_chain(nodes):
        found["skips_first"] = None
    sided = any(isinstance(n, OtherSide) for n in nodes) or _is_turned(nodes)
    if chains and not sided:
        found["both_sides"] = None


def _own_chain(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins with chains and is worked into the last of them."""
    first = next((n for n in nodes if not isinstance(n, Note | Act | Loops)), None)
    targets = (n.target for n in nodes if isinstance(n, Make | Group))
    into = any(t is not None and t.kind == "ch" for t in targets)
    return into and isinstance(first, Chain) and first.count[0] > _LEAST_FOUNDATION


def _is_turned(nodes: tuple[Node, ...]) -> bool:
    """Whether the work is turned at the end: a row, which goes along one side of its chain."""
    return bool(nodes) and isinstance(nodes[-1], Act) and nodes[-1].deed is Deed.TURN


def _node_ways(node: Node, found: dict[str, None], begun: bool) -> None:
    """What one node leaves open."""
    if isinstance(node, Repeat):
        _repeat_ways(node, found)
    elif isinstance(node, Make) and (begun or not _slips_along(node)):
        _make_ways(node, found)
    elif isinstance(node, Group) and node.listed:
        found["apart"] = None
    elif isinstance(node, OtherSide):
        found["far_end"] = None
    target = node.target if isinstance(node, Make | Group) else None
    if target is not None and target.group:
        found["beside"] = None
    if target is not None and target.at is At.BELOW and target.nth:
        found["covers"] = None


def _turns_back(nodes: tuple[Node, ...]) -> bool:
    """Whether a row ends on a turn and tells each of its stitches by number."""
    last = next((n for n in reversed(nodes) if not isinstance(n, Note | Chain)), None)
    if not isinstance(last, Act) or last.deed is not Deed.TURN or last is nodes[0]:
        return False
    return not any(
        isinstance(n, Evenly | Along)
        or (isinstance(n, Repeat) and n.times is None)
        or (isinstance(n, Make | Group) and n.target is not None and n.target.at is At.EACH)
        for n in every(nodes)
    )


def _wraps(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins in the same place, and ends with a counted repeat into a next."""
    first = next((n for n in every(nodes) if isinstance(n, Make | Group)), None)
    repeats = [n for n in nodes if isinstance(n, Make | Group | Repeat)]
    last = repeats[-1] if repeats else None
    if first is None or not isinstance(last, Repeat) or last.stop >= 0:
        return False
    if last.times is None and not comes_round(nodes):
        return False
    same = [n for n in every(nodes) if isinstance(n, Make | Group) and n.target is not None]
    end = last.body[-1]
    into_next = isinstance(end, Make) and end.target is not None and end.target.at is At.NEXT
    return bool(same) and same[0].target is not None and same[0].target.at is At.SAME and into_next


def comes_round(nodes: tuple[Node, ...]) -> bool:
    """Whether a round is one open repeat, each pass from the same place on into the next one.

    "*Ch 3, 2 dc in same st, ch 3, sl st in same st, sl st in next st; rep from * around": there
    are as many petals as places, and the last slip stitch is back where the first stands.
    """
    work = [n for n in nodes if isinstance(n, Make | Group | Repeat | Skip | Evenly | Along)]
    only = work[0] if len(work) == 1 else None
    if not isinstance(only, Repeat) or only.times is not None or only.implied or only.until:
        return False
    if any(isinstance(n, Act) and n.deed is Deed.TURN for n in nodes):
        return False  # a row
    placed = [n for n in only.body if isinstance(n, Make | Group)]
    targets = [n.target for n in placed if n.target is not None]
    end = placed[-1] if placed else None
    if len(targets) < 2 or not isinstance(end, Make) or only.leave is not None or only.stop >= 0:
        return False
    single = targets[-1].at is At.NEXT and targets[-1].count is None
    low = end.stitch.us in ("sl st", "sc")
    return targets[0].at is At.SAME and single and low and end.target is targets[-1]


def _begins_in_same_space(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins in the "same space", though nothing led it into a space."""
    first = next((n for n in every(nodes) if isinstance(n, Make | Group | Act)), None)
    target = None if first is None else first.target
    return target is not None and (target.at, target.kind) == (At.SAME, "sp")


def _along_pieces(node: Node) -> bool:
    """Whether stitches go along a piece, or the chain between two, or join one."""
    if isinstance(node, Act):
        return node.onto == "piece"
    return isinstance(node, Make) and node.target is not None and node.target.kind == "along"


def _along_chain(node: Node) -> bool:
    """Whether stitches go along a chain that these words do not make."""
    target = node.target if isinstance(node, Make) else None
    return target is not None and target.kind == "along" and target.group == "ch"


def _first_in_space(nodes: tuple[Node, ...], spaced: bool) -> bool:
    """Whether what is made first goes into a corner or, where there are any, a chain space."""
    for node in every(nodes):
        if isinstance(node, Make | Group) and node.target is not None:
            kind = node.target.kind
            return kind == "corner" or (spaced and kind.endswith("sp"))
        if isinstance(node, Make):
            return False
    return False


def _begin_ways(node: Node, nodes: tuple[Node, ...], found: dict[str, None]) -> None:
    """What a chain or a skip before the first stitch leaves open."""
    if isinstance(node, Chain) and node.counts is None and not worked_into(nodes):
        found["chain_counts"] = None
    elif isinstance(node, Skip) and node.at is At.NEXT:
        found["on_first"] = None
    elif isinstance(node, Make) and _slips_along(node):
        found["left_behind"] = None


def _slips_along(node: Node) -> bool:
    """Whether a node slips over a number of stitches."""
    if not isinstance(node, Make) or node.stitch.us != "sl st":
        return False
    return node.count[0] > 1 or (node.target is not None and node.target.count is not None)


def _repeat_ways(node: Repeat, found: dict[str, None]) -> None:
    if node.implied and len(node.body) > 1:
        found["implied"] = None
    if node.more is More.UNSAID and node.times is not None:
        found["times_in_all"] = None
    if node.upto is not None:
        found["numbered"] = None
    if node.times is None and node.starred:
        found["cut"] = None


def _make_ways(node: Make, found: dict[str, None]) -> None:
    target = node.target
    if target is None:
        if node.numbered and node.count[0] > 1 and node.stitch.takes == 1 and not node.behind:
            found["bunched"] = None
        return
    if target.at is At.SAME and node.count[0] > 1:
        found["same_is_next"] = None
    if target.at is At.HOOK and target.nth > 2 and target.counts is None:
        found["chain_counts"] = None
    alike = target.count is not None and target.count == node.count and node.count[0] > 1
    if alike and not target.said_each:
        found["shared"] = None
    if names_stitch(target):
        found["loose"] = None
