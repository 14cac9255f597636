"""Corners of one round that are not alike: one of them has a stitch more or less than others."""

from __future__ import annotations

from dataclasses import dataclass

from tracker.fabric.begins import beginning
from tracker.fabric.trees import every, slips
from tracker.notation.tree import At, Chain, Group, Make, Node

#: Corners that differ by more stitches are meant to.
MOST_OFF = 2


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner as it is told: stitches before and behind its chains, which are so many."""

    node: Group
    stitch: str
    before: int
    chains: int
    behind: int

    @property
    def words(self) -> str:
        """The corner in a few words, without the name of its stitch: "3, ch 2, 3"."""
        return f"{self.before}, ch {self.chains}, {self.behind}"

    def is_like(self, other: Corner) -> bool:
        """Whether both are made alike."""
        return (self.stitch, self.words) == (other.stitch, other.words)


def odd_corner(nodes: tuple[Node, ...], chain_counts: bool) -> tuple[Corner, Corner] | None:
    """The first corner of a round and one that is not like it, as a slip of the pen would be.

    None where all are alike, or more than a stitch or two is different, so that it is meant.
    ``chain_counts``: whether the beginning chain counts as a stitch of the first corner.
    """
    chain = beginning(nodes)
    found = [c for n in every(nodes) if isinstance(n, Group) and (c := _corner(n)) is not None]
    if len(found) < 2:
        return None
    first, *others = found
    led = [n for n in every(nodes) if isinstance(n, Make) and n.start < first.node.start]
    led = [n for n in led if not slips(n)]
    chained = chain is not None and chain.count[0] > 1 and chain.end <= first.node.end
    begun = chained and not led
    begun = begun or [n.stitch.us for n in led if _stands(n)] == [first.stitch]
    whole = _one_more(first) if begun else first
    for other in others:
        if not first.is_like(other) and not whole.is_like(other):
            told = whole if begun and (chain_counts or not chained) else first
            return (told, other) if _is_slip(told, other) else None
    return None


def _stands(node: Make) -> bool:
    """Whether a stitch is a standing one, with which a round begins in a space."""
    return node.target is not None and node.target.at in (At.ANY, At.SAME) and node.count == (1,)


def _one_more(corner: Corner) -> Corner:
    one = corner.before + 1
    return Corner(corner.node, corner.stitch, one, corner.chains, corner.behind)


def _corner(node: Group) -> Corner | None:
    """A group of one stitch with chains in its middle, in one place; a chain may begin it."""
    body = [n for n in node.body if isinstance(n, Make | Chain)]
    led = isinstance(body[0], Chain) if body else False
    one, chain, other = body[led:] if len(body) == 3 + led else (None, None, None)
    if not isinstance(one, Make) or not isinstance(chain, Chain) or not isinstance(other, Make):
        return None
    placed = node.target.kind == "corner" or node.target.at is At.SAME
    if one.stitch != other.stitch or one.stitch.makes != 1 or not placed:
        return None
    return Corner(node, one.stitch.us, one.count[0], chain.count[0], other.count[0])


def _is_slip(first: Corner, other: Corner) -> bool:
    """Whether two corners differ by as little as a slip of the pen would make them."""
    same = (first.stitch, first.chains) == (other.stitch, other.chains)
    off = abs(first.before - other.before) + abs(first.behind - other.behind)
    return same and 0 < off <= MOST_OFF
