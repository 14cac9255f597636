"""Repeats that go as far as a number of things says: "until you have 6 groups of 4 dc"."""

from __future__ import annotations

from abc import abstractmethod

from tracker.fabric.contained import by_passes
from tracker.fabric.effort import TooMuchError
from tracker.fabric.grouping import Grouping
from tracker.fabric.moments import Mark
from tracker.fabric.outcome import ShortError
from tracker.fabric.reached import MOST_THINGS, number_of
from tracker.fabric.trees import names_space
from tracker.notation.tree import Chain, Make, Node, Note, Repeat, Upto

#: The kind of a shortage where a repeat does not come to its number of things.
NUMBER = "number"


class Numbered(Grouping):
    """Rules for `Repeat.upto`."""

    @abstractmethod
    def work(self, node: Node) -> None:
        """Work one node."""

    @abstractmethod
    def _pass_of(self, body: tuple[Node, ...]) -> None:
        """Work one pass's body."""

    @abstractmethod
    def _back_to_pass(self, border: Mark, numbered: int, k: int) -> None:
        """Undo all since ``border``, which pass ``k`` ended at."""

    def by_number(self, node: Repeat) -> bool:
        """Whether a repeat goes as far as its number of things says, not to the end."""
        if node.upto is None or self.begin.assumed:
            return False
        return self.free or self.ringed or self.reading.numbered

    def _until_number(self, node: Repeat) -> None:
        """``rep from * until you have 6 shells``: the last pass may stop part-way."""
        assert node.upto is not None
        wanted, numbered = self.figure(node.upto.count), self.open_repeat(node)
        if wanted > MOST_THINGS:
            raise TooMuchError
        passes, k, had = by_passes(node), 0, -1
        while (now := k if passes else self._number(node.upto)) < wanted:
            if now == had and k > 1:
                raise ShortError(node, NUMBER, wanted, now)
            had, border = now, self.mark()
            k += 1
            whole = self._one_pass(node, numbered, k)
            if whole and (passes or self._number(node.upto) <= wanted):
                continue
            self._back_to_pass(border, numbered, k - 1)
            if passes:
                raise ShortError(node, NUMBER, wanted, k - 1)
            self._part_to_number(node, node.upto, numbered, k)
            return

    def _number(self, upto: Upto) -> int:
        """How many of the things there are by now."""
        return number_of(upto, self.out, self.reading.chain_counts)

    def _one_pass(self, node: Repeat, numbered: int, k: int) -> bool:
        """Try pass ``k``; whether there are places for all of it."""
        self.trying += 1
        try:
            outer = self.open_pass(numbered, k)
            self._pass_of(node.body)
            self.now.inside = outer
        except ShortError:
            return False
        finally:
            self.trying -= 1
        return True

    def _part_to_number(self, node: Repeat, upto: Upto, numbered: int, k: int) -> None:
        """A last pass that stops as soon as there are so many things."""
        wanted = self.figure(upto.count)
        outer = self.open_pass(numbered, k)
        for index, part in enumerate(node.body):
            self.work(part)
            if self._number(upto) == wanted:
                self._chain_before_end(node, index)
                break
        else:
            raise ShortError(node, NUMBER, wanted, self._number(upto))
        self.now.inside = outer

    def _chain_before_end(self, node: Repeat, index: int) -> None:
        """The chain that comes next in a pass, where what it leads to is made otherwise.

        "*Ch 1, 3 dc in next sp* …, finish with 2 dc in last sp": these stand for the 3 dc.
        """
        after = node.body[index + 1 : index + 3]
        rest = [n for n in self.nodes if n.start >= node.end and not isinstance(n, Note)]
        if len(after) > 1 and isinstance(after[0], Chain) and rest and _alike(after[1], rest[0]):
            self.work(after[0])


def _alike(node: Node, other: Node) -> bool:
    """Whether both make the same stitch, in spaces or both not."""
    if not isinstance(node, Make) or not isinstance(other, Make):
        return False
    return node.stitch.us == other.stitch.us and names_space(node) == names_space(other)
