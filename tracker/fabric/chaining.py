"""Chains, skips and deeds: what the hands do besides making stitches."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.begins import bridges, hooked, ring_follows
from tracker.fabric.below import Below
from tracker.fabric.edge import Spot, space
from tracker.fabric.effort import TooMuchError
from tracker.fabric.making import Making
from tracker.fabric.outcome import MOST_STEPS
from tracker.fabric.steps import Kind, Run
from tracker.fabric.tiles import LEAST_CHAINS
from tracker.fabric.trees import every, into_chain, opening
from tracker.fabric.words import target_words
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Group,
    Loops,
    Make,
    Node,
    Note,
    OtherSide,
    Skip,
    Target,
)

_KINDS = {
    Deed.JOIN: Kind.JOIN,
    Deed.TURN: Kind.TURN,
    Deed.COLOUR: Kind.COLOUR,
    Deed.MARKER: Kind.MARKER,
    Deed.RING: Kind.RING,
    Deed.FASTEN: Kind.FASTEN,
    Deed.START: Kind.MARKER,
}

#: More stitches than these in the first chain go round it (common practice, no source).
_ALL_ROUND = 2


class Chaining(Making):
    """Rules for `Chain`, `Skip`, `Act`, `Loops` and `OtherSide`."""

    def other(self, node: Node) -> None:
        """Work a node that makes no stitch."""
        match node:
            case Chain():
                self.chain(node)
            case Skip():
                self.skip(node)
            case Act():
                self.act(node)
            case Loops():
                self.now.loop = node.loop
            case OtherSide():
                self.other_side()
            case _:
                pass

    def chain(self, node: Chain) -> None:
        """A foundation, a beginning chain, a chain for the next round, or a chain space."""
        count = self.figure(node.count)
        if count > MOST_STEPS:
            raise TooMuchError
        if self._is_bridge(node):
            self.chains(f"ch {count}", node.start, node.end)
            self.now.bridge = self.now.free_side = count
            return
        stands = bool(self.out) and not self.out[-1].chains and self.out[-1].name != "tch"
        fresh = not self.now.begun and self.now.inside < 0 and not self.reading.rooted
        fresh = fresh and not stands  # "ch 3, ch 1": the latter is a space
        fresh = fresh and not (self.reading.tiles and count >= LEAST_CHAINS)
        if fresh and not opening(self.nodes, node):
            if self._is_foundation(node):
                self._foundation(node, count)
            else:
                self._beginning_chain(node)
            return
        self.chains(f"ch {count}", node.start, node.end)
        if self._is_trailing(node):
            self.now.pending = node
            return
        self.put(space(count, self.now.group))
        self.now.over_skip = True

    def _is_bridge(self, node: Chain) -> bool:
        """Whether a chain here goes between two pieces, with no chains on the edge below."""
        if self.now.inside >= 0 or self.ringed:
            return False
        plain = not any(s.chains or s.name == "ch" for s in self.below.edge)
        return plain and bridges(self.nodes, node)

    def _is_foundation(self, node: Chain) -> bool:
        """Whether a chain here is one to work into, or to close to a ring."""
        if self.begin.edge or self.done.foundation or self.now.joined:
            return False
        later = [n for n in every(self.nodes) if isinstance(n, Make | Group | Skip)]
        if not later:
            return True
        if any(into_chain(n) for n in later):
            return True
        return ring_follows(self.nodes, node)

    def _foundation(self, node: Chain, count: int) -> None:
        self.done.foundation = True
        later = [n for n in every(self.nodes) if isinstance(n, Make | Group | Skip)]
        if node.counts and later and not hooked(self.nodes):
            # The first chain is the ring, and the rest stands for a stitch.
            self.chains(f"ch {count}", node.start, node.end, makes=1)
            self.leave(node.stands_for or self._stand_in().us, 1)
            return
        counted = not later
        self.chains("ch", node.start, node.end, count, int(counted))
        if counted:
            self.leave("ch", count)
        elif any(into_chain(n) for n in later):
            self.below = Below((Spot("ch", count),), loose=self.reading.loose)
            self.ringed = False
            self._along_foundation()

    def _along_foundation(self) -> None:
        """Both sides of the foundation chain, or one without the chains that turn the work."""
        if self.reading.both_sides:
            total = sum(s.count for s in self.below.edge if s.name == "ch")
            if total > 2:
                if not hooked(self.nodes):
                    self.below.take("ch", 1)
                self.below.extend(Spot("ch", total - 2))
        elif self.reading.skips_first and not hooked(self.nodes):
            self.below.take("ch", self._stand_in().height)

    def _beginning_chain(self, node: Chain, silent: bool = False) -> None:
        count = self.figure(node.count)
        counts = node.counts if node.counts is not None else self.reading.chain_counts
        if counts:
            self._stand_on_first()
        if not silent:
            self.chains(f"ch {count}", node.start, node.end, makes=int(counts))
        elif counts:
            self.chains(f"the ch {count} is the first st", 0, 0, makes=1)
        if not counts:
            if count > 1:
                self.put(Spot("tch"))
            return
        stands_for = node.stands_for or self._stand_in().us
        self.leave(stands_for, 1)
        plus = node.plus or self._plus(count, node)
        if plus:
            self.put(space(plus))
            self.now.over_skip = True
            self.now.begun = True

    def _stand_on_first(self) -> None:
        """Take the place that a beginning chain which counts stands on.

        Behind slip stitches that stay behind, that is the last of them.
        """
        if self.slipped:
            return
        first = self._first_target()
        same = first is not None and first.at is At.SAME and first.kind.endswith("sp")
        kind = self.now.at_place or (first.kind if first is not None and same else "st")
        rooted = not self.now.in_place and not self.ringed and not self.free
        if rooted and not self._stands_in_space(first) and self.below.left(kind):
            self.below.take(kind, 1)

    def _first_target(self) -> Target | None:
        """The place that the round names first."""
        placed = (n.target for n in every(self.nodes) if isinstance(n, Make | Group) and n.target)
        return next(placed, None)

    def _stands_in_space(self, first: Target | None) -> bool:
        """Whether the round begins at a chain space and works into that first."""
        if self.now.at_place or not self.below or not self.below.edge[0].chains:
            return False
        return first is not None and self.below.matches(first.kind, self.below.edge[0])

    def _plus(self, count: int, node: Chain) -> int:
        """The chain space in a beginning chain longer than its stitch is high."""
        height = self._stand_in().height
        over = count - height
        general = node.counts is None or node.lasting
        return over if general and height and over in self.chain_lengths else 0

    def _is_trailing(self, node: Chain) -> bool:
        """Whether a chain ends the round: after the join, or before the turn."""
        if self.now.inside >= 0 or self.now.in_place:
            return False
        rest = [n for n in self.nodes if n.start >= node.end and not isinstance(n, Note | Loops)]
        if any(not isinstance(n, Act) for n in rest):
            return False
        turns = any(isinstance(n, Act) and n.deed is Deed.TURN for n in rest)
        joins = any(isinstance(n, Act) and n.deed is Deed.JOIN for n in rest)
        return not joins and (turns or self.now.joined or self.now.turned)

    def skip(self, node: Skip) -> None:
        """Pass over places; the beginning chain may already stand on the first."""
        count = self.figure(node.count)
        kind = self._kind(node.kind)
        if self._held_down(kind):
            return
        chained = self.now.over_skip and bool(self.out) and self.out[-1].chains > count
        chained = chained and not (self.free and hooked(self.nodes))  # chains below, not its own
        if kind == "ch" and chained and not self.below.knows("ch"):
            self.take_own(count)
            return
        count = min(count, self.below.left(kind)) if count > MOST_STEPS else count
        on_first = node.at is At.FIRST or self.reading.on_first
        if on_first and not any(run.takes for run in self.done.runs) and self.below.taken:
            # The beginning chain stands on the first stitch: it is passed over already.
            count -= self.below.taken
        over = self.now.over_skip
        if over and self.out[-1].chains >= count > 2:
            # Chains over stitches that were skipped: an opening, worked into later.
            self.out[-1] = replace(self.out[-1], live=True)
        if self.below.has_group(kind) and not self.free:
            for _ in range(count):
                self._into_group(node, kind)
        elif node.kind == "ch" and not self.free and self.below.left("ch") < count:
            self.take(node, "sp", 1)
        else:
            self.take(node, kind, count)
        if node.counts and not self.now.begun:
            self.chains(f"the {count} chs count as the first st", node.start, node.end, makes=1)
            self.leave(self._stand_in().us, 1)
            self.now.begun = True
            return
        self.now.skipped += max(0, count)
        self.now.over_skip = over
        self.last_skip = max(self.last_skip, count)

    def _held_down(self, kind: str) -> bool:
        """Whether the slip stitches passed over held the row below down, and are no places."""
        if kind != "sl st" or self.now.begun or self.below.taken or self.free:
            return False
        return not self.below.knows(kind) and all(s.name != "st" for s in self.below.edge)

    def act(self, node: Act) -> None:
        """A deed: a step that makes no stitch; yarn that is in hand already needs none."""
        in_hand = self.now.colour
        if node.deed is Deed.COLOUR and node.colour == in_hand and in_hand and not node.target:
            return
        if node.deed in (Deed.COLOUR, Deed.JOIN) and node.colour:
            self.now.colour = node.colour
        self.now.joined = self.now.joined or node.deed is Deed.JOIN
        self.now.turned = self.now.turned or node.deed is Deed.TURN
        if node.target is not None and not self.now.begun and self.below:
            kind = self._kind(node.target.kind)
            if node.target.at in (At.ANY, At.NEXT, At.FIRST, At.LAST) and self.below.left(kind):
                self.begin_at(kind)
        words, inside, colour = (
            _words_of(node, in_hand, self.begin.terms),
            self.now.inside,
            self.now.colour,
        )
        start, end = node.start, node.end
        self.run(
            Run(_KINDS[node.deed], "", words, words, "", start, end, inside=inside, colour=colour)
        )

    def other_side(self) -> None:
        """The chain's other side comes next.

        Several stitches in the last chain go round it to the other side; a single one leaves
        that side of it to be worked into. Three in the first chain go round that end.
        """
        if self.now.bridge:
            self.now.free_side, self.now.bridge = self.now.bridge, -1
            self.now.aside = True
            return
        if self.free:
            return
        worked = [run for run in self.done.runs if run.makes]
        round_it = bool(worked) and worked[-1].per_place > 1
        self.rounded = bool(worked) and worked[0].per_place > _ALL_ROUND
        last = int(round_it != self.reading.far_end)
        self.below.extend(Spot("ch", max(0, self.now.chain_used - last - self._passed())))

    def _passed(self) -> int:
        """Chains passed over at the start of a foundation."""
        for node in every(self.nodes):
            if isinstance(node, Make) and node.target is not None and node.target.at is At.HOOK:
                return node.target.nth - 1
            if isinstance(node, Skip) and node.kind == "ch" and node.at is At.FIRST:
                return self.figure(node.count)
        return 0


def _words_of(node: Act, in_hand: str, terms: str) -> str:
    """A deed as a maker would say it, with the yarn in hand before it."""
    if node.deed is Deed.COLOUR:
        if node.target is not None:
            yarn = f"yarn {node.colour}" if node.colour else "yarn"
            return f"join {yarn} {target_words(node.target, terms)}"
        if node.onto and not node.colour:
            return "join"
        if node.colour and not in_hand:
            return f"take yarn {node.colour}"
        return f"change to {node.colour}" if node.colour else "change colour"
    return "place a marker" if node.deed is Deed.MARKER else node.deed.value
