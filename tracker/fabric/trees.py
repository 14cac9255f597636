"""Questions about a round's tree: what it begins from, what it closes to."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise, takewhile

from tracker.fabric.reading import every
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Evenly,
    Figure,
    Group,
    Make,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
    Unread,
)

#: Stitches that close several part-made ones to one.
GATHERED = frozenset(("cl", "puff", "popcorn", "bobble"))


def works(nodes: tuple[Node, ...]) -> bool:
    """Whether the words ask for anything that is worked."""
    return any(isinstance(n, Make | Chain | Group | Skip | Evenly) for n in every(nodes))


def unread_in(nodes: tuple[Node, ...]) -> list[Unread]:
    """The words of a tree that were not understood."""
    return [n for n in every(nodes) if isinstance(n, Unread)]


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


def slips(node: Node) -> bool:
    """Whether a node makes slip stitches."""
    return isinstance(node, Make) and node.stitch.us == "sl st"


def begins_on_chain(nodes: tuple[Node, ...]) -> bool:
    """Whether the first thing of a round is a chain over stitches, as many others of it are.

    "*Ch 5, sk 3 sts, sc in next st" or "Ch 5, sk 3 sts, *sc in next st, ch 5".
    """
    work = [n for n in nodes if not isinstance(n, Act | Note)]
    first, second = work[:2] if len(work) > 1 else (*work, None, None)[:2]
    if isinstance(first, Repeat):
        return first.times is None and isinstance(first.body[0], Chain)
    if not isinstance(first, Chain) or not isinstance(second, Skip) or first.counts is not None:
        return False
    if not begins_low(nodes):
        return False
    return any(isinstance(n, Chain) and n.count == first.count for n in every(tuple(work[1:])))


def slips_over(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins with slip stitches over several stitches, and into no space."""
    first = [n for n in nodes if not isinstance(n, Act | Note | Chain)]
    led = list(takewhile(slips, first))
    targets = [n.target for n in led if isinstance(n, Make)]
    if not led or any(t is not None and t.kind.endswith(("sp", "corner")) for t in targets):
        return False
    several = (n for n in led if isinstance(n, Make))
    return any(n.count[0] > 1 or (n.target is not None and n.target.count) for n in several)


def rounds_below(nodes: tuple[Node, ...]) -> set[int]:
    """The numbers of the rounds that all the places of these words lie in; 0 for the last.

    Places that are the same as before, or round the hook, lie in none.
    """
    found = set()
    for node in every(nodes):
        target = node.target if isinstance(node, Make | Group) else None
        if target is not None and target.at not in (At.SAME, At.SKIPPED, At.HOOK, At.RING):
            found.add(target.nth if target.at is At.BELOW else 0)
        elif isinstance(node, Skip):
            found.add(0)
    return found


def turns_first(nodes: tuple[Node, ...]) -> bool:
    """Whether the work is turned before the round's first stitch, as in "ch 3, turn, …"."""
    for node in nodes:
        if isinstance(node, Act) and node.deed is Deed.TURN:
            return True
        if not isinstance(node, Chain | Act | Note):
            return False
    return False


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


def begins_low(nodes: tuple[Node, ...]) -> bool:
    """Whether the first thing made is a single crochet, for which no chain stands."""
    first = next((n for n in every(nodes) if isinstance(n, Make)), None)
    return first is not None and first.stitch.us == "sc"


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
    placed = (n.target for n in every(nodes) if isinstance(n, Make | Group) and n.target)
    spaced = any(t.kind.endswith("sp") or t.kind == "corner" for t in [next(placed, None)] if t)
    return height > 1 if spaced else over > 1


def opening(nodes: tuple[Node, ...], chain: Chain) -> bool:
    """Whether a chain goes over stitches that are skipped next: "ch 6, skip 6 sts"."""
    rest = [n for n in nodes if n.start >= chain.end]
    skip = rest[0] if rest else None
    return isinstance(skip, Skip) and skip.count == chain.count and chain.count[0] > 3


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


def goes_along_chain(node: Make) -> bool:
    """Whether stitches go along a chain: "3 sc along the chain", "sc in next 3 ch"."""
    target = node.target
    if target is None:
        return False
    if target.kind == "along":
        return target.group == "ch"
    several = node.count[0] > 1 or target.count is not None
    return target.kind == "ch" and target.at is At.NEXT and several


def ring_follows(nodes: tuple[Node, ...], chain: Chain) -> bool:
    """Whether the first thing after ``chain`` closes it to a ring."""
    rest = [n for n in every(nodes) if n.start >= chain.end]
    rest = [n for n in rest if not isinstance(n, Note)]
    first = rest[0] if rest else None
    return isinstance(first, Act) and first.deed in (Deed.JOIN, Deed.RING)


def joined_to(nodes: tuple[Node, ...]) -> str:
    """What the round is closed to: "chain", "stitch", or "" where it is not said."""
    for node in reversed(nodes):
        if isinstance(node, Act) and node.deed is Deed.JOIN and node.onto in ("chain", "stitch"):
            return node.onto
    return ""


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


def into_chain(node: Node) -> bool:
    """Whether a node works into a foundation chain."""
    if isinstance(node, Skip):
        return node.kind == "ch"
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and (target.at is At.HOOK or target.kind == "ch")


def stands_over(nodes: tuple[Node, ...]) -> bool:
    """Whether stitches drawn up from rows further down stand in place of those above them.

    They do where they are placed by rows ("2 rows below") and the words pass over none
    (common practice, no source).
    """
    targets = (n.target for n in every(nodes) if isinstance(n, Make))
    down = any(t is not None and t.at is At.BELOW and t.nth < 0 for t in targets)
    return down and not any(isinstance(n, Skip) for n in every(nodes))


def chain_by_chain(nodes: tuple[Node, ...]) -> bool:
    """Whether single chains are places: "skip next ch, dc in next ch", "sc in each dc and ch"."""
    targets = [n.target for n in every(nodes) if isinstance(n, Make | Group)]
    if any(t is not None and (t.at, t.kind) == (At.EACH, "st+ch") for t in targets):
        return True
    skips = any(isinstance(n, Skip) and n.kind == "ch" for n in every(nodes))
    return skips and any(
        n.target is not None and n.target.at is At.NEXT and n.target.kind == "ch"
        for n in every(nodes)
        if isinstance(n, Make | Group)
    )


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


def self_contained(nodes: tuple[Node, ...]) -> bool:
    """Whether the count needs nothing to be known of the round below."""
    for node in every(nodes):
        if isinstance(node, Repeat) and (node.times is None or (node.implied and node.starred)):
            return False
        if isinstance(node, Make | Group) and node.target is not None:
            target = node.target
            each_skipped = target.at is At.SKIPPED and (not target.count or "+" in target.kind)
            if target.at is At.EACH or each_skipped:
                return False
        if isinstance(node, Evenly):
            return False
    return True


def into_row_ends(nodes: tuple[Node, ...]) -> bool:
    """Whether all that is made goes into the ends of rows."""
    made = [n.target for n in every(nodes) if isinstance(n, Make | Group) and not slips(n)]
    placed = [t for t in made if t is not None and t.at is not At.SAME]
    return bool(placed) and all(t.rows for t in placed)


def takes_up_opening(nodes: tuple[Node, ...]) -> bool:
    """Whether a round goes into stitches that an earlier one passed over: a thumb, an ear hole."""
    placed = [n.target for n in every(nodes) if isinstance(n, Make | Group)]
    skipped = any(t is not None and t.at is At.SKIPPED for t in placed)
    return skipped and not any(isinstance(n, Skip) for n in every(nodes))


def opened(nodes: tuple[Node, ...]) -> tuple[Figure, Figure] | None:
    """How many stitches an opening in a round passes over, and the chains that go over it.

    None where there is none, or where there are several that are not alike.
    """
    found = set()
    for one, other in pairwise(n for n in every(nodes) if not isinstance(n, Note)):
        chain, skip = (one, other) if isinstance(one, Chain) else (other, one)
        if isinstance(chain, Chain) and isinstance(skip, Skip) and skip.count[0] > 1:
            found.add((skip.count, chain.count))
    return found.pop() if len(found) == 1 else None


def names_corner(node: Node) -> bool:
    """Whether a node goes into a corner, without saying what that is."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.kind == "corner"


def in_spaces(body: tuple[Node, ...]) -> bool:
    """Whether all that is worked goes into chain spaces."""
    targets = [n.target for n in body if isinstance(n, Make | Group)]
    return bool(targets) and all(t is not None and t.kind.endswith("sp") for t in targets)


def names_gap(node: Node) -> bool:
    """Whether a node goes into a gap between groups."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.kind == "gap"


def names_post(node: Node) -> bool:
    """Whether a node goes round a post, and the words do not say whose."""
    return isinstance(node, Make) and node.target is not None and node.target.kind == "post"


def in_other_space(node: Node) -> bool:
    """Whether a node works into chain spaces that are not the one the round begins in."""
    target = node.target if isinstance(node, Make | Group) else None
    return names_space(node) and target is not None and target.at is not At.SAME


def names_space(node: Node) -> bool:
    """Whether a node works into chain spaces by name."""
    target = node.target if isinstance(node, Make | Group) else None
    kind = "" if target is None else target.kind
    if kind == "ch" and isinstance(node, Make) and target is not None and target.count is None:
        return target.at is At.NEXT and node.count[0] > 1
    return kind in ("sp", "corner") or kind.endswith(" sp")
