"""Questions about a round's tree: how it begins."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from tracker.fabric.trees import every, goes_along_chain, opening, slips, works
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Loops,
    Make,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
)

#: Stitches that close several part-made ones to one.
GATHERED = frozenset(("cl", "puff", "popcorn", "bobble"))


def _once(nodes: tuple[Node, ...]) -> Iterator[Node]:
    """All nodes that are worked once, at the start: not those inside a repeat."""
    for node in nodes:
        yield node
        if isinstance(node, Group) or (isinstance(node, Repeat) and node.implied):
            yield from _once(node.body)


def beginning(nodes: tuple[Node, ...]) -> Chain | None:
    """The beginning chain of a round, if its words have one.

    A chain that is closed to a ring, or worked into, is a foundation and not this.
    """
    if hooked(nodes):
        return None
    chain: Chain | None = None
    for node in _once(nodes):
        if isinstance(node, Chain):
            if opening(nodes, node):
                return None
            if not ring_follows(nodes, node):
                return node
        elif isinstance(node, Make) and node.stitch.us == "sl st":
            continue
        elif isinstance(node, Make | Skip | Evenly | Repeat):
            return None
    return chain


def hooked(nodes: tuple[Node, ...]) -> int:
    """The ``n`` of "in nth ch from hook" where the round's first stitch goes there, else 0.

    Not where that is done again and again: then each time a chain is made for it.
    """
    for node in _once(nodes):
        if isinstance(node, Repeat) and not node.implied:
            return 0
        if isinstance(node, Make | Group) and node.target is not None:
            return node.target.nth if node.target.at is At.HOOK and node.target.nth > 1 else 0
        if isinstance(node, Make):
            return 0
    return 0


def worked_into(nodes: tuple[Node, ...]) -> bool:
    """Whether the round's chain is a foundation that is worked into from the hook."""
    return any(
        isinstance(n, Make | Group) and n.target is not None and n.target.at is At.HOOK
        for n in every(nodes)
    )


def ring_follows(nodes: tuple[Node, ...], chain: Chain) -> bool:
    """Whether the first thing after ``chain`` closes it to a ring."""
    rest = [n for n in every(nodes) if n.start >= chain.end]
    rest = [n for n in rest if not isinstance(n, Note)]
    first = rest[0] if rest else None
    return isinstance(first, Act) and first.deed in (Deed.JOIN, Deed.RING)


def bridges(nodes: tuple[Node, ...], chain: Chain) -> bool:
    """Whether a chain goes from one piece to another and is worked along later.

    It stands at the beginning of the round, or before stitches along the other piece.
    """
    if hooked(nodes) or chain.counts is not None or chain.count[0] < 2:
        return False
    first = next((n for n in nodes if not isinstance(n, Note | Act)), None)
    later = [n for n in nodes if isinstance(n, Make) and n.start >= chain.end]
    onward = later[0].target if later else None
    piece = onward is not None and onward.kind == "along" and onward.group != "ch"
    return (first is chain or piece) and any(map(goes_along_chain, later))


def begins_on_chain(nodes: tuple[Node, ...], *, counted: bool = False) -> bool:
    """Whether the first thing of a round is a chain over stitches, as many others of it are.

    "*Ch 5, sk 3 sts, sc in next st" or "Ch 5, sk 3 sts, *sc in next st, ch 5". ``counted``:
    also where it is told how often.
    """
    work = [n for n in nodes if not isinstance(n, Act | Note)]
    first, second = work[:2] if len(work) > 1 else (*work, None, None)[:2]
    if isinstance(first, Repeat):
        open_ = first.times is None or (counted and not first.implied)
        return open_ and isinstance(first.body[0], Chain)
    if not isinstance(first, Chain) or not isinstance(second, Skip) or first.counts is not None:
        return False
    if not begins_low(nodes):
        return False
    return any(isinstance(n, Chain) and n.count == first.count for n in every(tuple(work[1:])))


def closes_in_chain(nodes: tuple[Node, ...]) -> bool:
    """Whether the last stitch of a round goes into the chain that it begins with."""
    last = next((n for n in reversed(nodes) if not isinstance(n, Act | Note)), None)
    target = last.target if isinstance(last, Make) else None
    return target is not None and target.kind == "tch"


def resumes(nodes: tuple[Node, ...]) -> bool:
    """Whether yarn is joined before anything is made, perhaps behind stitches passed over."""
    front = list(takewhile(lambda n: isinstance(n, Act | Note | Loops | Skip), nodes))
    joins = [n for n in front if isinstance(n, Act) and n.deed in (Deed.JOIN, Deed.COLOUR)]
    return bool(joins) and all(n.target is None or n.target.at is not At.LAST for n in joins)


def begins_group(nodes: tuple[Node, ...]) -> bool:
    """Whether the first thing made is a shell or another stitch that makes several."""
    first = next((n for n in every(nodes) if isinstance(n, Make) and n.stitch.us != "sl st"), None)
    return first is not None and first.stitch.makes > 1


def begins_gathered(nodes: tuple[Node, ...]) -> bool:
    """Whether the first thing made is a cluster or the like, in the place of the chain.

    The chain is then one of the parts it gathers (common practice, no source).
    """
    first = next((n for n in every(nodes) if isinstance(n, Make) and not slips(n)), None)
    if first is None or first.stitch.us not in GATHERED or first.target is None:
        return False
    return first.target.at is At.SAME


def begins_low(nodes: tuple[Node, ...]) -> bool:
    """Whether the first thing made is a single crochet, for which no chain stands."""
    first = next((n for n in every(nodes) if isinstance(n, Make)), None)
    return first is not None and first.stitch.us == "sc"


def in_place_of_first(nodes: tuple[Node, ...]) -> bool:
    """Whether the first stitch is passed over, and the last goes into a chain that stood for one.

    The chain of such a row stands for its first stitch as well.
    """
    work = [n for n in nodes if not isinstance(n, Act | Note)]
    skips = [n for n in work[1:2] if isinstance(n, Skip)]
    first = any(n.at is At.FIRST and n.count == (1,) for n in skips)
    ends = any(
        isinstance(n, Make) and n.target is not None and n.target.kind == "tch" for n in nodes
    )
    return first and ends


def overlong(nodes: tuple[Node, ...], length: int) -> bool:
    """Whether a beginning chain is too long to stand for the first stitch, or for that and a space.

    Before single crochets in chain spaces any length is in use.
    """
    first = next((n for n in every(nodes) if isinstance(n, Make) and not slips(n)), None)
    height = 0 if first is None else first.stitch.height
    over = length - height
    spaces = {n.count[0] for n in every(nodes) if isinstance(n, Chain)}
    if not height or over <= 0 or over in spaces:
        return False
    made = (n for n in every(nodes) if isinstance(n, Make | Group) and not slips(n))
    placed = (n.target for n in made if n.target)
    spaced = any(t.kind.endswith("sp") or t.kind == "corner" for t in [next(placed, None)] if t)
    return height > 1 if spaced else over > 1


def slips_over(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins with slip stitches over several stitches, and into no space."""
    first = [n for n in nodes if not isinstance(n, Act | Note | Chain)]
    led = list(takewhile(slips, first))
    targets = [n.target for n in led if isinstance(n, Make)]
    if not led or any(t is not None and t.kind.endswith(("sp", "corner")) for t in targets):
        return False
    several = (n for n in led if isinstance(n, Make))
    return any(n.count[0] > 1 or (n.target is not None and n.target.count) for n in several)


def turns_first(nodes: tuple[Node, ...]) -> bool:
    """Whether the work is turned before the round's first stitch, as in "ch 3, turn, …"."""
    for node in nodes:
        if isinstance(node, Act) and node.deed is Deed.TURN:
            return True
        if not isinstance(node, Chain | Act | Note):
            return False
    return False


def fresh(nodes: tuple[Node, ...], *, first: bool) -> bool:
    """Whether a round begins from nothing: a ring, or a chain of its own.

    ``first``: nothing was worked before it, so that a chain it works into is its own.
    """
    targets = [n.target for n in every(nodes) if isinstance(n, Make | Group) and n.target]
    if any(t.at is At.RING for t in targets) or _ring_made(nodes):
        return True
    worked = (n for n in _once(nodes) if isinstance(n, Chain | Make | Skip | Group | Repeat))
    chain = next((n for n in worked if not (isinstance(n, Repeat) and n.implied)), None)
    if not isinstance(chain, Chain):
        return False
    rest = tuple(n for n in every(nodes) if n is not chain and not isinstance(n, Repeat))
    if not works(rest):
        return True
    if hooked(nodes) or ring_follows(nodes, chain):
        return True
    if any(isinstance(n, Skip) and n.kind == "ch" and n.at is At.FIRST for n in nodes):
        return True
    return first and any(_in_chain(t) for t in targets)


def _ring_made(nodes: tuple[Node, ...]) -> bool:
    return any(isinstance(n, Act) and n.deed is Deed.RING for n in nodes)


def _in_chain(target: Target) -> bool:
    return target.kind == "ch" or target.at is At.HOOK
