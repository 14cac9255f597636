"""Groups: several things made in one place, or in each of several."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import replace

from tracker.fabric.called import spacey
from tracker.fabric.chaining import Chaining
from tracker.fabric.outcome import MOST_RUNS, ShortError
from tracker.fabric.retold import taken_apart
from tracker.fabric.trees import slips
from tracker.fabric.words import target_words
from tracker.notation.tree import At, Group, Node, Target


class Grouping(Chaining, ABC):
    """Rules for `Group`."""

    @abstractmethod
    def _sequence(self, nodes: tuple[Node, ...]) -> None:
        """Work nodes one after another."""

    def _group(self, node: Group) -> None:
        target = node.target
        if node.listed and self.reading.apart:
            self._sequence(taken_apart(node))
            return
        if (
            target.at in (At.RING, At.BELOW, At.EDGE, At.SKIPPED)
            or self.ringed
            or self.now.in_place
        ):
            self._in_place(node)
            return
        kind = self._kind(target.kind)
        if self._in_corner_reached(target):
            self._group_at_start(node, kind)
            return
        starts = target.at is At.SAME or (not self.now.begun and target.at is At.ANY)
        if starts or self.back_at_first(target):
            self._group_at_start(node, kind)
            return
        if target.at is At.HOOK:
            self.into_hook(node, target)
            self._in_place(node)
            return
        self._group_each(node, target, kind)

    def _in_corner_reached(self, target: Target) -> bool:
        """Whether a corner is the one that slip stitches just led to: none is left with a chain.

        So is the first space, whichever it is.
        """
        fresh = not self.now.begun and bool(self.now.at_place) and self.below.taken <= 1
        first = target.at is At.FIRST and target.count is None and spacey(target.kind)
        return fresh and (first or (target.kind == "corner" and target.at is At.NEXT))

    def _group_at_start(self, node: Group, kind: str) -> None:
        if node.target.at is At.ANY:
            self.begin_at(kind)
        if self.below.taken == 0 and not self.free:
            self.take_first(node, kind)
        self._in_place(node)

    def _group_each(self, node: Group, target: Target, kind: str) -> None:
        grouped = target.group or kind
        times = 1 if target.count is None else self.figure(target.count)
        if target.at is At.EACH:
            times = self.begin.assumed if self.free else self.below.left(kind)
            if target.until and not self.free:
                times = self.below.before(kind, target.until)
            if target.leave is not None:
                times -= self.figure(target.leave)
            if self.below.has_group(grouped):
                times = MOST_RUNS
            self.used.add(kind)
            if times <= 0 and not self.free and target.leave is None:
                raise ShortError(node, kind, 1, 0)
        numbered = self.open_repeat(node) if times != 1 else -1
        for k in range(1, max(0, times) + 1):
            if self.below.has_group(grouped) and not self.free:
                try:
                    self._into_group(node, grouped, bool(target.group) and self.reading.beside)
                except ShortError:
                    if target.at is At.EACH:
                        break
                    raise
            else:
                self.take(node, kind, 1)
            with_pass = self.open_pass(numbered, k)
            self._in_place(node)
            self.now.inside = with_pass

    def _in_place(self, node: Group) -> None:
        outer = self.now.in_place, self.now.group, self.now.opens
        self.now.in_place = True
        self.now.place = target_words(node.target, self.begin.terms)
        if not self.now.group and node.target.at is not At.RING:
            self.now.group, self.now.opens = "group", True
        self._sequence(self._begun_by_slip(node.body))
        self.now.in_place, self.now.group, self.now.opens = outer
        if not self.now.group and self.out and self.out[-1].chains and self.out[-1].group:
            self.out[-1] = replace(self.out[-1], group="")  # "(3 dc, ch 1) in each sp"
        self.now.place = ""

    def _begun_by_slip(self, body: tuple[Node, ...]) -> tuple[Node, ...]:
        """What is left of a round's first group once a slip stitch has led to its place.

        The chain behind it is the beginning chain; in a petal, held down at both sides, not.
        """
        if self.now.begun or len(body) < 2 or not slips(body[0]) or slips(body[-1]):
            return body
        self._sequence(body[:1])
        self.now.begun = False
        return body[1:]
