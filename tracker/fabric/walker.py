"""Working one round, in one size, into the edge below: takes, makes, steps."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import replace

from tracker.fabric.begins import hooked
from tracker.fabric.called import spacey
from tracker.fabric.edge import UNCOUNTED, Spot
from tracker.fabric.effort import TO_BEGIN
from tracker.fabric.numbered import NUMBER
from tracker.fabric.outcome import Outcome, ShortError, Start
from tracker.fabric.reached import missed
from tracker.fabric.reading import Reading
from tracker.fabric.repeating import Repeating
from tracker.fabric.trees import every, moves_start, names_stitch, slips
from tracker.fabric.variants import mark_variants
from tracker.notation.tree import (
    Act,
    Along,
    At,
    Chain,
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

#: A row that turns early leaves at least one in so many stitches; fewer are rather a slip.
LEAST_EARLY = 4
#: Most places that may be kept free behind "sc around".
MOST_SPARE = 41


#: Stitches at the ends of a closed edge that may stay free (common practice, no source).
MOST_UNSEWN = 2


class Walker(Repeating):
    """Works a whole tree: sequences, groups and repeats. Use `walk`."""

    def walk(self) -> Outcome:
        """Work all nodes; never raises for too few places."""
        self._begin()
        self._sequence(self.nodes)
        if self._only_smooths():
            self.out = list(self.below.edge)
            self.used.clear()
        done = self._finish()
        if moves_start(self.nodes) and done.short is None:
            # What is left of the round below is still met, behind the new start.
            done.edge, done.left = (*self.below.rest(), *self.out), 0
        return done

    def _only_smooths(self) -> bool:
        """Whether a single slip stitch is all there is: it ends the work, and changes nothing."""
        work = [n for n in self.nodes if not isinstance(n, Act | Note | Loops)]
        slip = work[0] if len(work) == 1 else None
        if not isinstance(slip, Make) or not slips(slip) or self.figure(slip.count) > 1:
            return False
        target = slip.target
        single = target is None or (target.count is None and target.at is not At.EACH)
        return single and not self.free and bool(self.below.edge)

    def _begin(self) -> None:
        self.ringed = self.ringed and not self.reading.tiles
        if self.reading.rooted:
            self.below.take("st", 1)
        if self.reading.wraps and self.below:
            first = next((s for s in self.below.edge if s.name not in UNCOUNTED), None)
            if first is not None:
                self.below.extend(replace(first, count=1))
        if self.reading.twin:
            for spot in list(self.below.edge):
                self.below.extend(spot)
        if self.reading.there:
            placed = (n.target for n in every(self.nodes) if isinstance(n, Make | Group))
            self.below.start_at(next(t.kind for t in placed if t is not None))
        if self._begins_in_last_space():
            self.below.turn_back()
        if self.begin.pending is not None and not self._own_chain():
            self._beginning_chain(self.begin.pending, silent=True)
        self._along_foundation()

    def _begins_in_last_space(self) -> bool:
        """Whether the round begins under the stitch that closed the round below.

        Nothing leads to the space that is worked into first: so it is the one behind the hook.
        """
        work = (n for n in self.nodes if not isinstance(n, Note | Loops | Chain) and not _waits(n))
        first, edge = next(work, None), self.below.edge
        target = first.target if isinstance(first, Make | Group) else None
        if target is None or not edge or edge[0].chains or not edge[-1].chains:
            return False
        return spacey(target.kind) and (target.at is At.SAME or self.reading.hind)

    def _own_chain(self) -> bool:
        nodes = (n for n in self.nodes if not isinstance(n, Note | Loops | Act))
        first = next((n for n in nodes if not slips(n)), None)
        return isinstance(first, Chain)

    def _sequence(self, nodes: tuple[Node, ...]) -> None:
        """Work nodes one after another; a repeat to the end looks at what follows it.

        At the outermost level a shortage is noted and the rest goes on without counting
        the round below, so that the round can still be followed step by step.
        """
        for i, node in enumerate(nodes):
            try:
                if self._leaves_room(node, nodes[i + 1 :]):
                    if self._each_then(node, nodes[i + 1 :]):
                        return
                    self.work(node)
                elif isinstance(node, Repeat) and self._to_end(node):
                    if self._around(node, nodes[i + 1 :]):
                        return
                else:
                    self.work(node)
            except ShortError as short:
                if self.trying:
                    raise
                self.done.short = self.done.short or short
                self.free = True
                # What falls short even without counting (chains that are not there) is left.
                with suppress(ShortError):
                    self.work(node)

    def _leaves_room(self, node: Node, rest: tuple[Node, ...]) -> bool:
        """Whether "sc around" is followed by stitches that need places too."""
        if not isinstance(node, Make) or node.target is None or self.free or self.ringed:
            return False
        target = node.target
        bounded = target.leave is not None or bool(target.until) or self.ends_on_chain
        if target.at is not At.EACH or bounded or self.now.in_place or self.now.inside >= 0:
            return False
        later = [n for n in rest if isinstance(n, Make | Group | Skip | Repeat)]
        each = [n for n in later if isinstance(n, Make | Group) and _is_each(n)]
        return bool(later) and not each

    def _each_then(self, node: Node, rest: tuple[Node, ...]) -> bool:
        """Work ``node`` so far that ``rest`` just fits behind it; False where nothing fits."""
        assert isinstance(node, Make)
        assert node.target is not None
        kept = self.keep()
        for spare in range(MOST_SPARE):
            part = replace(node, target=replace(node.target, leave=(spare,)))
            if self._left_after((), (part, *rest), -1, 0) == 0:
                return True
            self.restore(kept)
        return False

    def _check_number(self) -> None:
        """Where a number of things says how far a repeat goes, hold the edge to it."""
        done = self.done
        if self.reading.numbered and done.left == 1 and done.short is None:
            done.left = 0  # the chain that stood for a stitch, at the end of the row
        if self.free or self.ringed or self.reading.numbered or done.short is not None:
            return
        off = missed(self.nodes, done, self.begin.index)
        if off is not None:
            done.short = ShortError(off[0], NUMBER, off[1], off[2])

    def _along(self, node: Along) -> None:
        """One pass along the round below; each place is worked as its kind asks."""
        if self.free:
            self._sequence(node.body)  # nothing below is counted: each is told once
            return
        parts = sorted(node.body, key=lambda part: _breadth(part.target))
        kinds = [(part, self._kind(part.target.kind)) for part in parts if part.target]
        self.used.update(kind for _, kind in kinds)
        missing = {kind: part for part, kind in kinds}
        self._as_many_as_told(kinds)
        keep = self._chain_is_last(node)
        while (spot := self.below.ahead()) is not None:
            if keep and self.below.left("st") <= keep and not spot.chains:
                break  # the turning chain, which is worked into by name
            part, kind = self._part_for(spot, kinds)
            missing.pop(kind, None)
            if part is None and not any(self.below.left(kind) for _, kind in kinds):
                break  # what is left is for the words that follow
            if part is None:
                self.below.pass_over()
            elif isinstance(part, Make):
                places = self.below.run_left()
                if keep and not spot.chains:
                    places = min(places, self.below.left("st") - keep)
                self._places(part, kind, places, self.figure(part.count))
            else:
                self.take(part, kind, 1)
                self._in_place(part)
        # "fpdc in each fpdc, bpdc in each bpdc" says of no stitch below that there must be one
        alike = all(names_stitch(part.target) for part in parts)
        for kind, part in missing.items():
            if not alike:
                raise ShortError(part, kind, 1, 0)

    def _as_many_as_told(self, kinds: list[tuple[Make | Group, str]]) -> None:
        """Raise `ShortError` where there are not four of "each of the four corners"."""
        for node, kind in kinds:
            count = node.target.count if node.target else None
            had = 0 if self.free else self.below.left(kind)
            if count and had and had != self.figure(count):
                raise ShortError(node, kind, self.figure(count), had)

    def _part_for(
        self, spot: Spot, kinds: list[tuple[Make | Group, str]]
    ) -> tuple[Make | Group | None, str]:
        """Which part goes into a place: one that names it exactly goes before the others."""
        fitting = [(part, kind) for part, kind in kinds if self.below.matches(kind, spot)]
        if not fitting:
            return None, ""
        exact = next((found for found in fitting if found[1] == spot.name), fitting[0])
        return exact if names_stitch(fitting[0][0].target) else fitting[0]

    def _to_end(self, node: Repeat) -> bool:
        if self.by_number(node):
            return False
        return (node.times is None or (node.implied and self.reading.implied)) and not self.free

    def work(self, node: Node) -> None:
        """Work one node."""
        if self.begin.effort is not None:
            self.begin.effort.spend()
        match node:
            case Make():
                self.make(node)
            case Group():
                self._group(node)
            case Repeat():
                self._repeat(node)
            case Along():
                self._along(node)
            case Evenly():
                self.spread(node)
            case _:
                self.other(node)

    def _finish(self) -> Outcome:
        done = self.done
        if self.now.bridge > 0:
            self.leave("ch", self.now.bridge)  # the other side of the chain between two pieces
        done.edge = tuple(self.out)
        done.colour, done.pending, done.turned = self.now.colour, self.now.pending, self.now.turned
        done.takes = self.below.taken
        done.rest = () if self.free else self.below.behind(*self.now.reach)
        if any(not kind.endswith("sp") and kind != "corner" for kind in self.used):
            done.passed = self.below.passed
        kinds = [k for k in self.used if k != "tch"]
        if not self.free and kinds:
            done.left = max(self.below.left(kind) for kind in kinds)
            done.left -= min(self.spared, done.left)
            if self.reading.both_sides and done.left == 1 and hooked(self.nodes):
                done.left = 0  # the first chain has its stitches already
            if self.rounded and done.left == 1:
                done.left = 0  # the same, on a side that the words name
            if self.doubled and -1 <= done.left - self.doubled <= MOST_UNSEWN:
                done.left = 0  # through both layers of a flat piece: each takes two places
            early = self.reading.early and not self.reading.bunched
            if early and done.left * LEAST_EARLY >= done.under:
                done.left = 0
            if self.slipped_alike(done.left):
                done.left = 0
            if self.now.over_skip and done.left == self.last_skip:
                done.takes += done.left
                done.left = 0
        mark_variants(done.runs, self.nodes)
        self._check_number()
        return done


def walk(nodes: Iterable[Node], start: Start, reading: Reading | None = None) -> Outcome:
    """Work a round's tree into the edge below, in one size and one reading.

    Raises:
        TooMuchError: the round asks for more than `MOST_STEPS` steps.
    """
    if start.effort is not None:
        start.effort.spend(TO_BEGIN)
    return Walker(tuple(nodes), start, reading or Reading()).walk()


def _waits(node: Node) -> bool:
    """Whether a deed leads nowhere: a change of yarn, where no place is named for it."""
    return isinstance(node, Act) and node.target is None


def _is_each(node: Make | Group) -> bool:
    return node.target is not None and node.target.at is At.EACH


def _breadth(target: Target | None) -> int:
    """How many kinds of place a target takes in: the narrowest is asked first."""
    kind = "" if target is None else target.kind
    return {"corner": 0, "sp": 2, "st": 4, "st+ch": 5, "st+sp": 5}.get(
        kind, 1 if kind.endswith(" sp") else 3
    )
