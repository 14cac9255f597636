"""Repeats: a number of times, to the end, or up to a place."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.effort import TooMuchError
from tracker.fabric.moments import Mark
from tracker.fabric.numbered import Numbered
from tracker.fabric.outcome import MOST_RUNS, ShortError
from tracker.fabric.trees import in_spaces
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Make,
    More,
    Node,
    Repeat,
    Skip,
)

#: So many passes before the end it is looked at least whether what follows fits in.
_BORDERS = 40


class Repeating(Numbered):
    """Rules for `Repeat`."""

    def _repeat(self, node: Repeat) -> None:
        """A repeat with its number of times, or with that assumed for it."""
        if self.by_number(node):
            self._until_number(node)
            return
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
                body = _without_last(body, node.omit)
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
                    if not self.passed_behind:
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

        "Ending with dc in top of ch" stands in for the dc with which a pass would end, and
        "ending last rep with sl st in first sc" for its last stitch.
        """
        if node.stop >= 0:
            return [node.body[: node.stop]]
        if node.omit:
            return [_without_last(node.body, node.omit)]
        if not self.reading.cut and not node.partial:
            return [()]
        cuts = range(1, len(node.body))
        last = len(node.body) - 1 if rest and _joins(rest[0]) else 0
        liked = [i for i in cuts if node.partial and (i == last or _stands_in(rest, node.body[i]))]
        others = [i for i in cuts if i not in liked]
        return [*(node.body[:i] for i in liked), (), *(node.body[:i] for i in others)]

    def _left_after(
        self, body: tuple[Node, ...], rest: tuple[Node, ...], numbered: int, k: int
    ) -> int | None:
        """What a last part-pass and what follows leave; None where they do not fit.

        ``passed_behind`` tells how many stitches what follows passes over in silence.
        """
        self.trying += 1
        try:
            if body:
                outer = self.open_pass(numbered, k + 1)
                self._sequence(body)
                self.now.inside = outer
            passed = self.below.passed
            self._sequence(rest)
            self.passed_behind = self.below.passed - passed
        except ShortError:
            return None
        finally:
            self.trying -= 1
        kinds = [kind for kind in self.used if kind != "tch"]
        left = max((self.below.left(kind) for kind in kinds), default=0)
        if self.slipped_alike(left):
            return 0
        return 0 if self.now.over_skip and left == self.last_skip else left

    def _passes(self, node: Repeat, numbered: int) -> list[tuple[Mark, int]]:
        """Work whole passes while they fit; the borders between the last of them."""
        borders = [(self.mark(), 0)]
        fast, k = True, 0
        while True:
            taken = self.below.taken
            if self._whole_pass(node, numbered, k + 1, 0):
                k += 1
                if not fast or self._near_end(self.below.taken - taken):
                    borders.append((self.mark(), k))
                    if len(borders) > 2 * _BORDERS:
                        del borders[:_BORDERS]
                continue
            border, last = borders[-1]
            self._back_to_pass(border, numbered, last)
            if last == k:
                return borders
            fast, k = False, last  # it ended before it seemed near: each border from there on

    def _near_end(self, takes: int) -> bool:
        """Whether so many passes are still possible as borders are looked at, or fewer."""
        left = min((self.below.left(kind) for kind in self.used if kind != "tch"), default=0)
        return left <= _BORDERS * max(1, takes)

    def _whole_pass(self, node: Repeat, numbered: int, k: int, leave: int) -> bool:
        """Try pass ``k``; whether it fits, takes anything, and leaves ``leave`` places."""
        taken = self.below.taken
        fits = self._one_pass(node, numbered, k)
        return fits and self.below.taken > taken and self.below.left(self._kind(node.kind)) >= leave

    def _back_to_pass(self, border: Mark, numbered: int, k: int) -> None:
        self.back_to(border)
        self.done.times[numbered] = k

    def _until_place(self, node: Repeat, numbered: int) -> None:
        """``rep from * to next ch-2 sp``: whole passes as long as they end before it.

        The last one of a round may be the one it begins at: that is at the end.
        """
        stop = self.below.next_of(node.until) or self.below.end_before(node.until)
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


def _without_last(body: tuple[Node, ...], number: int) -> tuple[Node, ...]:
    """A pass without its last ``number`` stitches: without an instruction of no more than those."""
    last = body[-1]
    target = last.target if isinstance(last, Make) else None
    if isinstance(last, Make) and target is not None and target.count is not None:
        places = target.count[0]
        if len(target.count) == 1 and places > number and last.count[0] in (1, places):
            count = (1,) if last.count == (1,) else (places - number,)
            target = replace(target, count=(places - number,))
            return (*body[:-1], replace(last, target=target, count=count))
    return body[:-1]


def _joins(node: Node) -> bool:
    return isinstance(node, Act) and node.deed is Deed.JOIN


def _stands_in(rest: tuple[Node, ...], node: Node) -> bool:
    """Whether what follows a repeat begins like ``node`` of its body.

    That is with as many of the same stitch, or with that stitch in the same kind of place. Or
    it is for a chain another one, and the stitch that closes a loop with it: "ending with
    ch 2, dc in first sc".
    """
    first = next((n for n in rest if isinstance(n, Make | Group)), None)
    if not isinstance(first, Make):
        return False
    if isinstance(node, Chain):
        closes = first.target is not None and first.target.at is At.FIRST
        return closes and any(isinstance(n, Chain) and n.start < first.start for n in rest)
    if not isinstance(node, Make | Group):
        return False
    made = node if isinstance(node, Make) else next(iter(node.body), None)
    if not isinstance(made, Make) or first.stitch.us != made.stitch.us:
        return False
    if isinstance(node, Make) and first.count == node.count:
        return True
    places = (first.target, node.target)
    return None not in places and len({place.kind for place in places if place}) == 1
