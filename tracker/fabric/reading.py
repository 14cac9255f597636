"""The ways in which words that can be read two ways are taken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace


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
        hind: it begins in the space behind the hook, which the round below ended with.
        grown: worked again, it has as many groups along a side as there are spaces.
        apart: of things listed before a place only the last goes into it.
        under: the place named first is the one that the beginning chain stands on.
        rooted: the chain that the round begins with stands on its first stitch, which has no other.
        early: a row that turns leaves what is left of the round below unworked.
        heaped: different stitches listed before a place all go into it.
        spread: so many increases or decreases that are all a round says are spread over it.
        remaining: "dec until 6 sts remain" is one round, which then has so many.
        alone: a stitch that is all a round says is worked into every place.
        slips: a last slip stitch of which no more is said is a stitch and joins nothing.
        numbered: a repeat goes as far as its number of things says, not to the end.
        beside: of a group whose spaces are worked into, the stitches behind the last one
            are still to be met.
        tiles: the row is made of tiles, whose chains are worked into later.
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
    hind: bool = False
    grown: bool = False
    apart: bool = False
    alone: bool = False
    spread: bool = False
    heaped: bool = False
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
    remaining: bool = False
    tiles: bool = False
    numbered: bool = False


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
    "remaining": ("", "the stitches that remain are those the round makes"),
    "alone": ("", "the stitch is worked all round, though nothing says so"),
    "heaped": ("", "the stitches listed before a place all go into it"),
    "spread": ("", "the changes are spread over the round, though nothing says where"),
    "slips": ("", "the last slip stitch is taken for a stitch that joins nothing"),
    "listed": ("", "a number before an increase or decrease is one of stitches before it"),
    "closer": ("", "each decrease takes the stitch before the one that is named"),
    "twin": ("", "the round goes along the last piece and another like it"),
    "strung": ("", "the stitches along the chain use none of the round below"),
    "skips_first": ("", "the chain next to the hook is passed over, though nothing says so"),
    "under": ("", "the place named first is the one under the beginning chain"),
    "rooted": ("", "the first chain stands on the first stitch"),
    "early": ("", "the row turns before its end and leaves the other stitches unworked"),
    "of_so_many": ("", "the number behind an increase or decrease is how many stitches it is of"),
    "many": ("", "a number before an increase or decrease is how many of them"),
    "left_behind": ("", "the stitches under the first slip stitches are left behind"),
    "far_end": ("", "the stitches in the last chain are taken for one side of it or for both"),
    "both_sides": ("", "the round goes along both sides of the foundation chain"),
    "numbered": ("", "the repeat stops where its number says, before the end"),
    "beside": ("", "the stitches of a group behind its space are met one by one"),
    "covers": ("", "the stitches that reach down stand over one of the round below too"),
    "at_join": ("", "the 'same space' is taken for the stitch the round was joined to"),
    "wraps": ("", "the last stitch goes into the place of the first once more"),
    "there": ("", "the round begins at the corner or space it works into first"),
    "grown": ("", "along each side there are as many groups as spaces below"),
    "hind": ("", "the round begins in the space that the round below ended with"),
    "apart": ("", "of the things listed before a place only the last goes into it"),
}


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
