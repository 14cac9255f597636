"""Which reading of a round fits what is known of the round below it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tracker.fabric.begins import begins_on_chain, closes_in_chain, fresh, resumes, slips_over
from tracker.fabric.contained import self_contained
from tracker.fabric.edge import SKIPPED, Edge, Spot, plain_edge, stitches
from tracker.fabric.effort import Effort
from tracker.fabric.grown import grown
from tracker.fabric.guess import assumed, fitting
from tracker.fabric.judge import Judged, judge
from tracker.fabric.numbered import NUMBER
from tracker.fabric.outcome import Start
from tracker.fabric.reading import Reading
from tracker.fabric.retold import cornerless, in_opening, resumed, spaceless
from tracker.fabric.stated import figure_of
from tracker.fabric.supposing import supposed
from tracker.fabric.tiles import makes_tiles, of_tiles
from tracker.fabric.trees import (
    every,
    moves_start,
    names_space,
    takes_up_opening,
)
from tracker.notation.round_text import Stated
from tracker.notation.tree import At, Chain, Figure, Group, Make, Node
from tracker.pattern.beginnings import Beginnings
from tracker.pattern.knowing import Knowing

#: The edges, the chain made for this round, the yarn in hand, what is guessed or in doubt.
State = tuple[tuple[Edge | None, ...], Chain | None, str, bool, bool, bool]


def _edge_of_opening(nodes: tuple[Node, ...], opening: tuple[Figure, Figure], size: int) -> Edge:
    """The places round an opening, from where the words begin: its stitches, or its chains."""
    passed = Spot(SKIPPED, figure_of(opening[0], size))
    over = Spot("ch", figure_of(opening[1], size))
    placed = (n.target for n in every(nodes) if isinstance(n, Make | Group))
    first = next((t for t in placed if t is not None), None)
    skipped = first is not None and first.at is At.SKIPPED
    return (passed, over) if skipped else (over, passed)


class Judging(Knowing):
    """Judges rounds, one after another; `PartChecker` goes from each to the next.

    Attributes:
        printed: the count printed with a round that differs, which the next may follow.
        pending: a chain made at the end of the round below, for the next one.
        opening: stitches passed over and chains over them, in the opening made last.
        begun: whether any round was worked yet.
        in_rows: whether the round is a row, turned at its end.
        doubt: whether the round below does not work out.
        guessed: whether the round below is only known by the printed count of this one.
        known: rounds judged before, with what they left behind.
        tiled: whether the part has rows of tiles.
        rest: in each size what the row that turned early last left unworked; () for none.
        resuming: whether the words say that these stitches are taken up.
    """

    rest: tuple[Edge, ...] = ()
    resuming = False

    tiled = False

    sizes: int
    effort: Effort
    beginnings: Beginnings
    printed: Figure | None
    colour: str
    pending: Chain | None
    opening: tuple[Figure, Figure] | None
    begun: bool
    in_rows: bool
    doubt: bool
    guessed: bool
    known: dict[object, tuple[Judged | None, State]]

    def _judged(self, nodes: tuple[Node, ...], stated: Stated | None) -> Judged | None:
        """`_judge`, once only for a round that is worked again from the same edge."""
        base = self._habit(nodes)
        facts = (self.begun, self.printed, self.opening, self.rest, self.resuming)
        key = (nodes, stated, base, *self._state(), *facts)
        known = self.known.get(key)
        if known is None:
            self.effort.begin(below=sum(stitches(edge or ()) for edge in self.edges))
            judged = self._judge(nodes, stated)
            self.known[key] = known = (judged, self._state())
        judged, (edges, self.pending, self.colour, *others) = known
        self.edges = list(edges)
        self.guessed, self.doubt, self.supposed = others
        return judged

    def _judged_before(self, nodes: tuple[Node, ...], stated: Stated | None) -> Judged | None:
        """A round of several, whose printed count is that of the last but may hold for each.

        It helps where the round does not fit without: "Rnds 6-9: sc (18)".
        """
        begun = self._state()
        judged = self._judged(nodes, None)
        if stated is None or judged is None or judged.fits:
            return judged
        after = self._state()
        self._back_to(begun)
        other = self._judged(nodes, stated)
        if other is not None and other.fits and other.agrees:
            return other
        self._back_to(after)
        return judged

    def _back_to(self, state: State) -> None:
        """Begin again from a state that was kept."""
        edges, self.pending, self.colour, self.guessed, self.doubt, self.supposed = state
        self.edges = list(edges)

    def _on_larger(
        self, nodes: tuple[Node, ...], judged: Judged | None, stated: Stated | None
    ) -> tuple[tuple[Node, ...], Judged | None]:
        """A round of groups that is worked again, with more of them along each side.

        So it is taken where the words themselves do not come out on the larger round.
        """
        passed = judged is not None and any(o.passed for o in judged.outcomes)
        if judged is None or (judged.fits and judged.agrees is not False and not passed):
            return nodes, judged
        wider, kept = grown(nodes), self._state()
        other = self._judged(wider, stated) if wider else None
        silent = other is not None and any(o.passed for o in other.outcomes)
        if other is not None and other.fits and other.agrees is not False and not silent:
            return wider, replace(other, reading=replace(other.reading, grown=True))
        edges, self.pending, self.colour, *facts = kept
        self.edges = list(edges)
        self.guessed, self.doubt, self.supposed = facts
        return nodes, judged

    def _rooted(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading, found: Judged
    ) -> Judged:
        """The round with its first chain out of the first stitch, where that fits.

        In a row that stitch was the last of the row below, from which the yarn comes.
        """
        if found.fits and found.agrees and (self.in_rows or not closes_in_chain(nodes)):
            return found
        base = replace(base, rooted=True, chain_counts=False)
        other = judge(nodes, stated, self._starts(self.edges), base)
        return other if other.fits and other.agrees is not False else found

    def _habit(self, nodes: tuple[Node, ...]) -> Reading:
        """The habit for a round; what slip stitches at the start of a row go over stays behind."""
        base = self.beginnings.habit(nodes, self.pending)
        if self.tiled and of_tiles(nodes):
            return replace(base, tiles=True)
        return replace(base, left_behind=True) if self.in_rows and slips_over(nodes) else base

    def _state(self) -> State:
        """What a round begins from."""
        facts = self.guessed, self.doubt, self.supposed
        return tuple(self.edges), self.pending, self.colour, *facts

    def _judge(self, nodes: tuple[Node, ...], stated: Stated | None) -> Judged | None:
        """The reading that fits; None where too little is known of the round below."""
        base = self._habit(nodes)
        if takes_up_opening(nodes):
            return self._in_opening(nodes, stated, base)
        apart = fresh(nodes, first=not self.begun and self.edges[0] is None)
        if apart and not (base.tiles and self.begun and makes_tiles(nodes)):
            self.pending, self.supposed = None, False
            self.edges = [() for _ in self.edges]
            return judge(nodes, stated, self._starts(self.edges), base)
        if any(e is None for e in self.edges):
            if moves_start(nodes):
                return None
            if not self_contained(nodes):
                return self._inferred(nodes, stated, base)
            return self._freely(nodes, stated, base)
        return self._on_some_edge(nodes, stated, base)

    def _on_some_edge(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged:
        """The reading that fits the row below, or what an earlier row left unworked."""
        first = self._taken_up(nodes, stated, base) if self.resuming else None
        found = first or self._on_edge(nodes, stated, base)
        if self.resuming or (found.fits and found.agrees is not False):
            return found
        return self._taken_up(nodes, stated, base) or found

    def _on_edge(self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading) -> Judged:
        """The reading that fits an edge of which it is known what it has."""
        found = judge(nodes, stated, self._starts(self.edges), base)
        rounded = not self.in_rows and (not found.fits or closes_in_chain(nodes))
        if (rounded or self.in_rows) and begins_on_chain(nodes, counted=rounded):
            found = self._rooted(nodes, stated, base, found)
        vague = self._is_vague(nodes, found)
        if self.doubt and found.fits and found.agrees:
            return found
        if vague and not self.doubt:
            found = self._cornerless(nodes, stated, base) or found
            vague = self._is_vague(nodes, found)
            if vague and self._suppose(nodes, stated, base):
                return judge(nodes, stated, self._starts(self.edges), base)
        if (self.doubt or vague) and self_contained(nodes):
            if self.doubt:  # it does not go into what a round makes that does not work out
                self.edges, self.doubt = [None] * self.sizes, False
            return self._freely(nodes, stated, base) or found
        if found.fits and found.agrees is not False and not vague:
            return found
        in_stitches = self._spaceless(nodes, stated, base)
        if in_stitches is not None or (found.fits and found.agrees is not False):
            return in_stitches or found
        if vague:
            return self._by_repeats(nodes, stated, base) or found
        return self._by_printed(nodes, stated, base, found.fits) or found

    def _taken_up(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """The row on what an earlier one left unworked, where yarn is joined and it fits."""
        if not self.rest or not resumes(nodes):
            return None
        found = judge(resumed(nodes), stated, self._starts(self.rest), base)
        if not found.fits or found.agrees is False:
            return None
        self.edges, self.doubt = list(self.rest), False
        return found

    def _cornerless(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """The round with a stitch for each corner, where so it uses up all that are known."""
        other = cornerless(nodes)
        found = judge(other, stated, self._starts(self.edges), base) if other else None
        whole = found is not None and self._uses_all(found) and found.agrees is not False
        return found if whole else None

    def _spaceless(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """The round with loops taken for stitches, where no spaces are below and so it agrees."""
        spaced = any(spot.chains for edge in self.edges for spot in edge or ())
        other = () if spaced or stated is None else spaceless(nodes)
        if not other or other == nodes:
            return None
        found = judge(other, stated, self._starts(self.edges), base)
        return found if found.agrees and self._uses_all(found) else None

    def _suppose(self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading) -> bool:
        """Take spaces at equal distances for the round below, if one number of them fits."""
        plain = all(s.name == "st" for s in self.edges[0] or ())
        if self.sizes > 1 or not plain or self.supposed:
            return False
        count = stitches(self.edges[0] or ())
        edge = supposed(nodes, stated, self._starts(self.edges)[0], base, count)
        if edge is None:
            return False
        self.edges, self.supposed, self.guessed = [edge], True, True
        return True

    def _in_opening(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """A round into stitches passed over before, and the chains that went over them.

        None where neither the opening nor the edge that is known has so many places, and
        the words do not say how many there are.
        """
        if self.opening is not None:
            edges = [_edge_of_opening(nodes, self.opening, i) for i in range(self.sizes)]
            found = judge(in_opening(nodes), stated, self._starts(edges), base)
            if found.fits:
                self.edges = list(edges)
                return found
        if all(self.edges) and not self.begun:
            return judge(in_opening(nodes), stated, self._starts(self.edges), base)
        return self._freely(nodes, stated, base) if self_contained(nodes) else None

    def _freely(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """A round that says itself how much it makes, whatever is below.

        None where it says it by a number of things that it never comes to.
        """
        self.supposed = False
        found = judge(nodes, stated, self._starts([None] * self.sizes), base)
        lost = any(o.short is not None and o.short.kind == NUMBER for o in found.outcomes)
        return None if lost else found

    def _by_repeats(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """As many repeats as the printed count asks for, where the spaces below are unknown."""
        if stated is None or self.sizes > 1:
            return None
        start = assumed(nodes, stated, self._starts(self.edges)[0], base)
        if start is None:
            return None
        self.guessed = True
        return judge(nodes, stated, [start], base)

    def _inferred(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """Where the round below is not known: the one count of it that fits the printed one.

        Nothing is proved by it, but the rounds after this one have something to go by.
        """
        if any(names_space(node) for node in every(nodes)):
            return self._by_repeats(nodes, stated, base)
        if stated is None or not stated.total:
            return None
        found: list[Edge | None] = []
        for i, start in enumerate(self._starts(self.edges)):
            edge = fitting(nodes, figure_of(stated.total, i), start, base)
            if edge is None:
                return None
            found.append(edge)
        self.edges = found
        self.guessed = True
        return judge(nodes, stated, self._starts(found), base)

    def _by_printed(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading, fits: bool
    ) -> Judged | None:
        """After a round that differs, the next may follow the count printed there.

        ``fits``: it also fits the count that was made, if not its own printed one.
        """
        if self.printed is None:
            return None
        edges: list[Edge | None] = [
            plain_edge(figure_of(self.printed, i)) for i in range(self.sizes)
        ]
        other = judge(nodes, stated, self._starts(edges), base)
        if not other.fits or (fits and not other.agrees):
            return None
        self.edges = edges
        return other

    def _starts(self, edges: Sequence[Edge | None]) -> list[Start]:
        return [
            Start(edge, self.lexicon.terms, self.colour, self.pending, i, effort=self.effort)
            for i, edge in enumerate(edges)
        ]
