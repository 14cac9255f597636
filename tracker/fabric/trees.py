"""Questions about a round's tree: what it works, where that goes, what it closes to."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tracker.notation.tree import (
    Act,
    Along,
    At,
    Chain,
    Deed,
    Evenly,
    Figure,
    Group,
    Loops,
    Make,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
    Unread,
)


def every(nodes: tuple[Node, ...]) -> Iterator[Node]:
    """All nodes of a tree, each before what it holds."""
    for node in nodes:
        yield node
        if isinstance(node, Group | Repeat | Along):
            yield from every(node.body)


def works(nodes: tuple[Node, ...]) -> bool:
    """Whether the words ask for anything that is worked."""
    return any(isinstance(n, Make | Chain | Group | Skip | Evenly) for n in every(nodes))


def unread_in(nodes: tuple[Node, ...]) -> list[Unread]:
    """The words of a tree that were not understood."""
    return [n for n in every(nodes) if isinstance(n, Unread)]


def ends_in_loop(nodes: tuple[Node, ...]) -> bool:
    """Whether the last loop of a round is closed by a stitch: "…, ch 2, dc in first sc"."""
    worked = [n for n in nodes if not isinstance(n, Act | Note)]
    last = worked[-1] if len(worked) > 2 else None
    if not isinstance(last, Make) or last.target is None or not isinstance(worked[-2], Chain):
        return False
    return last.target.at is At.FIRST and last.target.count is None


def moves_start(nodes: tuple[Node, ...]) -> bool:
    """Whether the stitches only move the start of the rounds."""
    return any(isinstance(n, Act) and n.deed is Deed.START for n in nodes)


def slips(node: Node) -> bool:
    """Whether a node makes slip stitches."""
    return isinstance(node, Make) and node.stitch.us == "sl st"


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


def goes_along_chain(node: Make) -> bool:
    """Whether stitches go along a chain: "3 sc along the chain", "sc in next 3 ch"."""
    target = node.target
    if target is None:
        return False
    if target.kind == "along":
        return target.group == "ch"
    several = node.count[0] > 1 or target.count is not None
    return target.kind == "ch" and target.at is At.NEXT and several


def joined_to(nodes: tuple[Node, ...]) -> str:
    """What the round is closed to: "chain", "stitch", or "" where it is not said."""
    for node in reversed(nodes):
        if isinstance(node, Act) and node.deed is Deed.JOIN and node.onto in ("chain", "stitch"):
            return node.onto
    return ""


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


def is_short(nodes: tuple[Node, ...]) -> bool:
    """Whether a row goes into its first so many stitches and turns, and asks for no more.

    So begin short rows and straps, which leave the others unworked on purpose. A shoulder may
    begin with a decrease.
    """
    work = [n for n in nodes if not isinstance(n, Note | Loops | Chain | Act)]
    first = work[0] if len(work) > 1 else None
    if isinstance(first, Make) and first.stitch.takes > first.stitch.makes:
        work = work[1:]
    deeds = [n.deed for n in nodes if isinstance(n, Act)]
    only = work[0] if len(work) == 1 else None
    if not isinstance(only, Make) or deeds != [Deed.TURN]:
        return False
    if only.target is None:
        return only.numbered
    return only.target.at in (At.FIRST, At.NEXT) and only.target.count is not None


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


def opening(nodes: tuple[Node, ...], chain: Chain) -> bool:
    """Whether a chain goes over stitches that are skipped next: "ch 6, skip 6 sts"."""
    rest = [n for n in nodes if n.start >= chain.end]
    skip = rest[0] if rest else None
    return isinstance(skip, Skip) and skip.count == chain.count and chain.count[0] > 3


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


def names_stitch(target: Target | None) -> bool:
    """Whether a place is named by the stitch that stands there."""
    if target is None:
        return False
    plain = target.kind in ("st", "ch", "tch", "corner", "st+ch", "st+sp", "lone", "middle")
    plain = plain or target.kind.endswith("sp")
    return not plain and target.at is not At.SAME


def names_corner(node: Node) -> bool:
    """Whether a node goes into a corner, without saying what that is."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.kind == "corner"


def names_group(node: Node) -> bool:
    """Whether a node goes into a shell or the like, or into the middle stitch of one."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.kind in ("group", "shell", "fan", "middle")


def names_middle(node: Node) -> bool:
    """Whether a node goes into the middle stitch of a row, or up to it."""
    if isinstance(node, Repeat):
        return node.until == "middle"
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and "middle" in (target.kind, target.until)


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
