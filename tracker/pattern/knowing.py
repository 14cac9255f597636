"""Whether a round goes into places that the round below is known to have."""

from __future__ import annotations

from tracker.fabric.contained import self_contained
from tracker.fabric.edge import GROUPED, Edge, cornered, stitches
from tracker.fabric.judge import Judged
from tracker.fabric.retold import cornerless
from tracker.fabric.stated import BUNCHES
from tracker.fabric.trees import (
    every,
    in_other_space,
    names_corner,
    names_gap,
    names_middle,
    names_post,
    names_space,
    rounds_below,
)
from tracker.notation.lexicon import Lexicon
from tracker.notation.tree import At, Group, Make, More, Node, Repeat


def _may_mean_more(node: Node) -> bool:
    """Whether a number of times may be meant on top of the first, or not."""
    return isinstance(node, Repeat) and node.more is More.UNSAID and node.starred


#: More stitches than these in each place are so many shells.
_LEAST_OF_GROUP = 2


class Knowing:
    """Compares what a round goes into with what is known of the round below.

    Attributes:
        lexicon: the words for stitches.
        edges: what each size leaves for the next round; None where nothing is known of it.
        supposed: whether the places below are only what the words and counts make likely.
    """

    lexicon: Lexicon
    edges: list[Edge | None]
    supposed: bool

    def _uses_all(self, judged: Judged) -> bool:
        """Whether a round fits, and goes into all the places that are known."""
        known = [sum(spot.count for spot in edge or ()) for edge in self.edges]
        return judged.fits and [o.takes for o in judged.outcomes] == known

    def _is_vague(self, nodes: tuple[Node, ...], judged: Judged | None) -> bool:
        """Whether a round goes into places that the round below is not known to have.

        Spaces where only a count is known, or posts between petals where there are none.
        """
        if judged is None or not self.edges[0]:
            return False
        if self.supposed and not (judged.fits and judged.agrees is not False):
            return True
        numbers = rounds_below(nodes)
        proved = judged.fits and bool(judged.agrees)
        if not proved and numbers and min(numbers) > 0 and not self_contained(nodes):
            return True  # all goes into a round further down that is not known
        if any(names_post(node) for node in every(nodes)):
            return not any(spot.group for edge in self.edges for spot in edge or ())
        gaps = not judged.fits and (
            any(names_gap(node) for node in every(nodes)) or self._misses_corners(nodes)
        )
        middle = any(names_middle(node) for node in every(nodes)) and not self._has_middle()
        if gaps or middle:
            return True
        if not proved and self._without_groups() and any(map(self._names_group, every(nodes))):
            return True
        plain = all(spot.name == "st" for edge in self.edges for spot in edge or ())
        if not plain or proved or self._says_all(nodes, judged):
            return False
        return any(in_other_space(node) for node in every(nodes)) or (
            not judged.fits and any(names_space(node) for node in every(nodes))
        )

    def _misses_corners(self, nodes: tuple[Node, ...]) -> bool:
        """Whether a round goes into corners, and the round below is not known to have any."""
        if not any(map(names_corner, every(nodes))):
            return False
        edges = [cornered(edge or ()) for edge in self.edges]
        return not any(s.chains or s.group == "corner" for edge in edges for s in edge)

    def _says_all(self, nodes: tuple[Node, ...], judged: Judged) -> bool:
        """Whether the words fit, and how often all is worked is sure without the edge below.

        They say it, or use up as many places as are known, or tell how many petals there are.
        """
        if not judged.fits:
            return False
        if judged.counting == BUNCHES:
            return True
        whole = self._uses_all(judged)
        if whole and cornerless(nodes):
            return True
        return self_contained(nodes) and (whole or not any(map(_may_mean_more, every(nodes))))

    def _has_middle(self) -> bool:
        """Whether the stitches below, or the shells they are, have one in their middle."""
        if not self._without_groups():
            return True
        return all(edge is not None and stitches(edge) % 2 for edge in self.edges)

    def _without_groups(self) -> bool:
        """Whether no group of stitches, such as a shell, is known on any edge below."""
        spots = [spot for edge in self.edges for spot in edge or ()]
        return not any(spot.group or spot.each > _LEAST_OF_GROUP for spot in spots)

    def _names_group(self, node: Node) -> bool:
        """Whether a node works into a shell or another stitch that is several."""
        target = node.target if isinstance(node, Make | Group) else None
        if target is None or target.at in (At.SAME, At.BELOW):
            return False
        kind = target.group or target.kind
        special = self.lexicon.special().get(kind)
        return kind in GROUPED or (special is not None and special.makes > 1)
