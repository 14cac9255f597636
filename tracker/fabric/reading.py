"""The ways in which words that can be read two ways are taken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

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
    Target,
)

#: A chain that is worked into along both sides has more chains than these.
_LEAST_FOUNDATION = 2


@dataclass(frozen=True, slots=True)
class Reading:
    """One way of taking what the words leave open. The defaults are the trade's habit.

    Attributes:
        chain_counts: whether a beginning chain counts as a stitch.
        times_in_all: "repeat 4 times" means 4 passes in all, not 4 more.
        bunched: a bare "3 sc" goes into one place.
        same_is_next: "in same st" means: all of them in the next one.
        shared: "3 sc in next 3 sts" puts one in each.
        loose: a stitch named as a place means any stitch.
        cut: the last pass of a repeat may stop part-way.
        implied: starred or bracketed words are repeated round without saying so.
        singly: chain spaces are worked into chain by chain.
        on_first: what is skipped first is the stitch that the beginning chain stands on.
        listed: "2 sc dec" is a list without its comma: two stitches, and then a decrease.
        closer: a decrease "every 4th st" takes the third as well, not the fifth.
        twin: the round goes on along another piece like the one below.
        strung: a chain that stitches go along was made apart from the round below.
        skips_first: the chains next to the hook that turn the work are passed over unsaid.
        of_so_many: "dec 3" is one decrease that takes three, "inc 3" three in one place.
        many: "4 hdc dec" is four of them, not a list without its comma.
        far_end: the other side of the last chain is worked into, or not, against what the
            number of stitches in it makes likely.
        both_sides: the round goes along both sides of the foundation chain.
        last_is_count: the last number of stitches is the printed count, not worked.
        whole: the number of times behind the last stitch holds for all that stands before.
        left_behind: stitches that slip stitches at the start go over are not come back to.
        covers: a stitch that reaches further down stands over one of the round below too.
        wraps: the last stitch goes into the place of the first once more.
        at_join: the "same space" that a round begins in is the stitch it was joined to.
        there: a joined round begins at the chain space it works into first.
        apart: of things listed before a place only the last goes into it.
        under: the place named first is the one that the beginning chain stands on.
        rooted: the chain that a row begins with stands on its first stitch, which has no other.
        early: a row that turns leaves what is left of the round below unworked.
        alone: a stitch that is all a round says is worked into every place.
        slips: a last slip stitch of which no more is said is a stitch and joins nothing.
        beside: of a group whose spaces are worked into, the stitches behind the last one
            are still to be met.
    """

    chain_counts: bool = False
    times_in_all: bool = False
    bunched: bool = False
    same_is_next: bool = False
    shared: bool = False
    loose: bool = False
    cut: bool = False
    implied: bool = False
    singly: bool = False
    both_sides: bool = False
    on_first: bool = False
    left_behind: bool = False
    last_is_count: bool = False
    covers: bool = False
    wraps: bool = False
    at_join: bool = False
    whole: bool = False
    there: bool = False
    apart: bool = False
    alone: bool = False
    slips: bool = False
    beside: bool = False
    far_end: bool = False
    listed: bool = False
    many: bool = False
    of_so_many: bool = False
    skips_first: bool = False
    twin: bool = False
    strung: bool = False
    closer: bool = False
    early: bool = False
    under: bool = False
    rooted: bool = False


#: What to tell the maker about each way that is not the habit.
SENTENCES = {
    "chain_counts": (
        "the beginning chain does not count",
        "the beginning chain counts as a stitch",
    ),
    "times_in_all": ("the times are counted on top of the first", "the times are counted in all"),
    "bunched": ("", "stitches without a place go into one place together"),
    "same_is_next": ("", "'same' is taken for the next place"),
    "shared": ("", "one stitch goes into each of the places"),
    "loose": ("", "the stitch named as a place is taken for any stitch"),
    "cut": ("", "the last repeat stops part-way"),
    "implied": ("", "the words are repeated to the end, though nothing says so"),
    "singly": ("", "chain spaces are worked into chain by chain"),
    "on_first": ("", "the stitch passed over first is the one under the beginning chain"),
    "last_is_count": ("", "the last number of stitches is taken for the printed count"),
    "whole": ("", "the times behind the last stitch are taken for all before it"),
    "alone": ("", "the stitch is worked all round, though nothing says so"),
    "slips": ("", "the last slip stitch is taken for a stitch that joins nothing"),
    "listed": ("", "a number before an increase or decrease is one of stitches before it"),
    "closer": ("", "each decrease takes the stitch before the one that is named"),
    "twin": ("", "the round goes along the last piece and another like it"),
    "strung": ("", "the stitches along the chain use none of the round below"),
    "skips_first": ("", "the chain next to the hook is passed over, though nothing says so"),
    "under": ("", "the place named first is the one under the beginning chain"),
    "rooted": ("", "the first chain of the row stands on its first stitch"),
    "early": ("", "the row turns before its end and leaves the other stitches unworked"),
    "of_so_many": ("", "the number behind an increase or decrease is how many stitches it is of"),
    "many": ("", "a number before an increase or decrease is how many of them"),
    "left_behind": ("", "the stitches under the first slip stitches are left behind"),
    "far_end": ("", "the stitches in the last chain are taken for one side of it or for both"),
    "both_sides": ("", "the round goes along both sides of the foundation chain"),
    "beside": ("", "the stitches of a group behind its space are met one by one"),
    "covers": ("", "the stitches that reach down stand over one of the round below too"),
    "at_join": ("", "the 'same space' is taken for the stitch the round was joined to"),
    "wraps": ("", "the last stitch goes into the place of the first once more"),
    "there": ("", "the round begins at the corner or space it works into first"),
    "apart": ("", "of the things listed before a place only the last goes into it"),
}


def every(nodes: tuple[Node, ...]) -> Iterator[Node]:
    """All nodes of a tree, each before what it holds."""
    for node in nodes:
        yield node
        if isinstance(node, Group | Repeat | Along):
            yield from every(node.body)


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
    if first is None or not isinstance(last, Repeat) or last.times is None or last.stop >= 0:
        return False
    same = [n for n in every(nodes) if isinstance(n, Make | Group) and n.target is not None]
    end = last.body[-1]
    into_next = isinstance(end, Make) and end.target is not None and end.target.at is At.NEXT
    return bool(same) and same[0].target is not None and same[0].target.at is At.SAME and into_next


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


def worked_into(nodes: tuple[Node, ...]) -> bool:
    """Whether the round's chain is a foundation that is worked into from the hook."""
    return any(
        isinstance(n, Make | Group) and n.target is not None and n.target.at is At.HOOK
        for n in every(nodes)
    )


def _repeat_ways(node: Repeat, found: dict[str, None]) -> None:
    if node.implied and len(node.body) > 1:
        found["implied"] = None
    if node.more is More.UNSAID and node.times is not None:
        found["times_in_all"] = None
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


def names_stitch(target: Target | None) -> bool:
    """Whether a place is named by the stitch that stands there."""
    if target is None:
        return False
    plain = target.kind in ("st", "ch", "tch", "corner", "st+ch", "st+sp", "lone")
    plain = plain or target.kind.endswith("sp")
    return not plain and target.at is not At.SAME


def readings(base: Reading, ways: list[str]) -> Iterator[Reading]:
    """``base``, then every one and every two of the open ways the other way round."""
    yield base
    flipped = [replace(base, **{way: not getattr(base, way)}) for way in ways]
    yield from flipped
    for i, one in enumerate(flipped):
        for way in ways[i + 1 :]:
            yield replace(one, **{way: not getattr(one, way)})


def told(base: Reading, taken: Reading) -> list[str]:
    """Sentences on where ``taken`` leaves the habit ``base``."""
    found = []
    for way, (no, yes) in SENTENCES.items():
        value = getattr(taken, way)
        if value != getattr(base, way):
            found.append(yes if value else no)
    return [sentence for sentence in found if sentence]
