"""Working one round, in one size, into the edge below: takes, makes, steps."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import replace

from tracker.fabric.edge import Spot
from tracker.fabric.effort import TooMuchError
from tracker.fabric.grouping import Grouping
from tracker.fabric.hand import Mark
from tracker.fabric.outcome import MOST_RUNS, Outcome, ShortError, Start
from tracker.fabric.reading import Reading, every
from tracker.fabric.trees import hooked, in_spaces, slips
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
    More,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
)

#: Most places that may be kept free behind "sc around".
MOST_SPARE = 41


class Walker(Grouping):
    """Works a whole tree: sequences, groups and repeats. Use `walk`."""

    def walk(self) -> Outcome:
        """Work all nodes; never raises for too few places."""
        self._begin()
        self._sequence(self.nodes)
        if self._only_smooths():
            self.out = list(self.below.edge)
            self.used.clear()
        return self._finish()

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
        if self.reading.wraps and self.below:
            self.below.extend(replace(self.below.edge[0], count=1))
        if self.reading.there:
            placed = (n.target for n in every(self.nodes) if isinstance(n, Make | Group))
            self.below.start_at(next(t.kind for t in placed if t is not None))
        if self.begin.pending is not None and not self._own_chain():
            self._beginning_chain(self.begin.pending, silent=True)
        if self.reading.both_sides:
            total = sum(s.count for s in self.below.edge if s.name == "ch")
            if total > 2:
                if not hooked(self.nodes):
                    self.below.take("ch", 1)
                self.below.extend(Spot("ch", total - 2))

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

    def _along(self, node: Along) -> None:
        """One pass along the round below; each place is worked as its kind asks."""
        parts = sorted(node.body, key=lambda part: _breadth(part.target))
        kinds = [(part, self._kind(part.target.kind)) for part in parts if part.target]
        self.used.update(kind for _, kind in kinds)
        missing = {kind: part for part, kind in kinds}
        while (spot := self.below.ahead()) is not None:
            part, kind = next(((p, k) for p, k in kinds if self.below.matches(k, spot)), (None, ""))
            missing.pop(kind, None)
            if part is None:
                self.below.pass_over()
            elif isinstance(part, Make):
                places = self.below.run_left()
                self._places(part, kind, places, self.figure(part.count))
            else:
                self.take(part, kind, 1)
                self._in_place(part)
        for kind, part in missing.items():
            if not self.free:
                raise ShortError(part, kind, 1, 0)

    def _to_end(self, node: Repeat) -> bool:
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
        if any(not kind.endswith("sp") and kind != "corner" for kind in self.used):
            done.passed = self.below.passed
        kinds = [k for k in self.used if k != "tch"]
        if not self.free and kinds:
            done.left = max(self.below.left(kind) for kind in kinds)
            done.left -= min(self.spared, done.left)
            if self.reading.both_sides and done.left == 1 and hooked(self.nodes):
                done.left = 0  # the first chain has its stitches already
            if self.doubled and self.doubled - 1 <= done.left <= self.doubled:
                done.left = 0  # through both layers of a flat piece: each takes two places
            if done.left == self.slipped:
                done.left = 0  # as many are left at this end as were slipped over at the other
            if self.now.over_skip and done.left == self.last_skip:
                done.takes += done.left
                done.left = 0
        mark_variants(done.runs, self.nodes)
        return done

    def _repeat(self, node: Repeat) -> None:
        """A repeat with its number of times, or with that assumed for it."""
        times = self._times_of(node)
        if times < 0:
            self._sequence(node.body)
            return
        if times > MOST_RUNS:
            raise TooMuchError
        numbered = self.open_repeat(node)
        for k in range(1, times + 1):
            outer = self.open_pass(numbered, k)
            body = node.body
            if k == times and node.stop >= 0:
                body = body[: node.stop]
            if k == times and node.omit:
                body = body[: -node.omit]
            self._pass_of(body)
            self.now.inside = outer

    def _times_of(self, node: Repeat) -> int:
        """How often a repeat is worked; -1 where its words are simply worked once."""
        if node.implied or (node.times is None and not (self.free and self.begin.assumed)):
            return -1
        if node.times is None:
            return self.begin.assumed
        return self.figure(node.times) + int(self._adds_first(node))

    def _pass_of(self, body: tuple[Node, ...]) -> None:
        """Work one pass's body."""
        outer, self.now.body = self.now.body, body
        self._sequence(body)
        self.now.body = outer

    def _adds_first(self, node: Repeat) -> bool:
        """Whether the times asked for come on top of the pass written out."""
        if node.more is not More.UNSAID:
            return node.more is More.MORE
        return node.starred != self.reading.times_in_all

    def _around(self, node: Repeat, rest: tuple[Node, ...]) -> bool:
        """Repeat to the end. True when ``rest`` was worked too, to see where it ends."""
        numbered = self.open_repeat(node)
        if node.leave is not None:
            self._until_left(node, numbered, self.figure(node.leave))
            return False
        if node.until:
            self._until_place(node, numbered)
            return False
        borders = self._passes(node, numbered)
        consuming = any(isinstance(n, Make | Group | Skip | Repeat | Evenly) for n in rest)
        partial = node.stop >= 0 or node.omit or self.reading.cut or node.partial
        if not self.done.times[numbered] and not partial:
            raise ShortError(node, self._kind(node.kind), 0, 0)
        if not consuming and not partial:
            return False
        after = self.keep()
        second: tuple[Mark, int, tuple[Node, ...]] | None = None
        for body in self._ends_of(node, rest):
            self.restore(after)
            for border, k in reversed(borders):
                left = self._left_at(border, k, body, rest, numbered)
                if left == 0:
                    if self.below.passed == border.cursor[3]:
                        return True
                    second = second or (border, k, body)
                elif left is not None:
                    break  # after fewer passes even more is left
        self.restore(after)
        # Else only with stitches passed over in silence does it come out.
        return second is not None and self._left_at(*second, rest, numbered) == 0

    def _left_at(
        self, border: Mark, k: int, body: tuple[Node, ...], rest: tuple[Node, ...], numbered: int
    ) -> int | None:
        """What ``k`` passes, a last part-pass and what follows leave of the round below.

        None where they need more than there is.
        """
        self.back_to(border)
        self.done.times[numbered] = k
        return self._left_after(body, rest, numbered, k)

    def _ends_of(self, node: Repeat, rest: tuple[Node, ...]) -> list[tuple[Node, ...]]:
        """The ways the last pass may stop, the likeliest first.

        "Ending with dc in top of ch" stands in for the dc with which a pass would end.
        """
        if node.stop >= 0:
            return [node.body[: node.stop]]
        if node.omit:
            return [node.body[: -node.omit]]
        if not self.reading.cut and not node.partial:
            return [()]
        cuts = range(1, len(node.body))
        liked = [i for i in cuts if node.partial and _stands_in(rest, node.body[i])]
        others = [i for i in cuts if i not in liked]
        return [*(node.body[:i] for i in liked), (), *(node.body[:i] for i in others)]

    def _left_after(
        self, body: tuple[Node, ...], rest: tuple[Node, ...], numbered: int, k: int
    ) -> int | None:
        """What a last part-pass and what follows leave; None where they do not fit."""
        self.trying += 1
        try:
            if body:
                outer = self.open_pass(numbered, k + 1)
                self._sequence(body)
                self.now.inside = outer
            self._sequence(rest)
        except ShortError:
            return None
        finally:
            self.trying -= 1
        kinds = [kind for kind in self.used if kind != "tch"]
        left = max((self.below.left(kind) for kind in kinds), default=0)
        return 0 if self.now.over_skip and left == self.last_skip else left

    def _passes(self, node: Repeat, numbered: int) -> list[tuple[Mark, int]]:
        """Work whole passes while they fit; the borders between the last of them."""
        borders: list[tuple[Mark, int]] = []
        k = 0
        while True:
            border = self.mark()
            borders.append((border, k))
            if len(borders) > 80:
                del borders[:40]
            if not self._whole_pass(node, numbered, k + 1, 0):
                self._back_to_pass(border, numbered, k)
                return borders
            k += 1

    def _whole_pass(self, node: Repeat, numbered: int, k: int, leave: int) -> bool:
        """Try pass ``k``; whether it fits, takes anything, and leaves ``leave`` places."""
        taken = self.below.taken
        self.trying += 1
        try:
            outer = self.open_pass(numbered, k)
            self._pass_of(node.body)
            self.now.inside = outer
        except ShortError:
            return False
        finally:
            self.trying -= 1
        return self.below.taken > taken and self.below.left(self._kind(node.kind)) >= leave

    def _back_to_pass(self, border: Mark, numbered: int, k: int) -> None:
        self.back_to(border)
        self.done.times[numbered] = k

    def _until_place(self, node: Repeat, numbered: int) -> None:
        """``rep from * to next ch-2 sp``: whole passes as long as they end before it."""
        stop = self.below.next_of(node.until)
        if stop is None:
            raise ShortError(node, node.until, 1, 0)
        k = 0
        while True:
            border = self.mark()
            fits = self._whole_pass(node, numbered, k + 1, 0)
            if not fits or self.below.state()[:2] > stop[:2]:
                self._back_to_pass(border, numbered, k)
                return
            k += 1

    def _until_left(self, node: Repeat, numbered: int, leave: int) -> None:
        """``rep from * to last 2 sts``: passes until so many places are left, not one fewer.

        A pass may stop part-way only where that is the reading tried.
        """
        kind = self._kind(node.kind)
        if in_spaces(node.body) and not kind.endswith("sp"):
            # What stands beside the spaces is passed over, up to the stitches left.
            self._whole_passes(node, numbered, leave)
            self.below.to_last(kind, leave)
            return
        self.used.add(kind)
        k = 0
        while self.below.left(kind) > leave:
            border = self.mark()
            if self._whole_pass(node, numbered, k + 1, leave):
                k += 1
                continue
            self._back_to_pass(border, numbered, k)
            if self.reading.cut:
                self._part_pass(node, numbered, k + 1, leave, kind)
            break
        if self.below.left(kind) != leave:
            raise ShortError(node, kind, leave, self.below.left(kind))

    def _whole_passes(self, node: Repeat, numbered: int, leave: int) -> None:
        """As many whole passes as leave at least ``leave`` places."""
        k = 0
        while True:
            border = self.mark()
            if not self._whole_pass(node, numbered, k + 1, leave):
                self._back_to_pass(border, numbered, k)
                return
            k += 1

    def _part_pass(self, node: Repeat, numbered: int, k: int, leave: int, kind: str) -> None:
        """A last pass that stops as soon as ``leave`` places are left."""
        outer = self.open_pass(numbered, k)
        for part in node.body:
            self.work(part)
            if self.below.left(kind) <= leave:
                break
        self.now.inside = outer


def walk(nodes: Iterable[Node], start: Start, reading: Reading | None = None) -> Outcome:
    """Work a round's tree into the edge below, in one size and one reading.

    Raises:
        TooMuchError: the round asks for more than `MOST_STEPS` steps.
    """
    return Walker(tuple(nodes), start, reading or Reading()).walk()


def _stands_in(rest: tuple[Node, ...], node: Node) -> bool:
    """Whether what follows a repeat begins with the stitch that ``node`` of its body makes."""
    first = next((n for n in rest if isinstance(n, Make | Group)), None)
    if not isinstance(first, Make) or not isinstance(node, Make):
        return False
    return first.stitch.us == node.stitch.us


def _is_each(node: Make | Group) -> bool:
    return node.target is not None and node.target.at is At.EACH


def _breadth(target: Target | None) -> int:
    """How many kinds of place a target takes in: the narrowest is asked first."""
    kind = "" if target is None else target.kind
    return {"corner": 0, "sp": 2, "st": 4, "st+ch": 5}.get(kind, 1 if kind.endswith(" sp") else 3)
