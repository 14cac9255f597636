"""Slip stitches that make no place: those that move along to the beginning, or smooth the end."""

from __future__ import annotations

from itertools import takewhile

from tracker.fabric.called import spacey
from tracker.fabric.edge import GROUPED
from tracker.fabric.ending import Ending
from tracker.fabric.trees import every, slips
from tracker.notation.tree import At, Chain, Group, Loops, Make, Node, Note, Repeat, Skip


class Slipping(Ending):
    """Rules for slip stitches before the first stitch of a round and behind its last."""

    def _ends_round(self, node: Make) -> bool:
        """Whether a slip stitch only smooths the end: nothing is left, nothing follows."""
        if self.free or self.ringed or self.now.in_place or self.now.inside >= 0:
            return False
        used = [kind for kind in self.used if kind != "tch"]
        done = bool(used) and not any(self.below.left(kind) for kind in used)
        return done and not any(
            isinstance(n, Make | Group) and n.start > node.start for n in every(self.nodes)
        )

    def _travels(self, node: Make, count: int) -> bool:
        """Slip stitches at the start only move along: the round begins where they end."""
        if not self._works_later(node) or not self._moves_on(node):
            return False
        if self.ringed or self.free:
            self.run(self._run_of(node, count, 1, 0, 0))
            return True
        if node.target is not None and node.target.until:
            self.begin_at(self._kind(node.target.until))
            self.run(self._run_of(node, count, 1, 0, 0))
            return True
        kind = "st" if node.target is None else self._kind(node.target.kind)
        both = kind in ("st+sp", "st+ch") and node.target is not None and node.target.at is At.NEXT
        if both or (kind in GROUPED and self.below.has_space()):
            kind = "sp"  # "sl st to center of shell"
        steps = count if node.target is None or node.target.count is None else 1
        if node.target is not None and node.target.count is not None:
            steps = self.figure(node.target.count)
        if kind == "ch" and self._is_space_of(steps):
            kind, steps = "sp", 1  # "sl st in each of next 3 ch", over the chains of a space
        if self.below.left(kind) < steps:
            return False
        if self.reading.left_behind:
            self.take(node, kind, steps)
            self.slipped += 0 if kind == "sp" else steps
        else:
            self.begin_at(kind, steps)
        self.run(self._run_of(node, count, 1, 0, 0))
        return True

    def slipped_alike(self, left: int) -> bool:
        """Whether as many stitches are left at this end as were slipped over at the other.

        Or fewer, in lace: the row begins on the last of those slipped over.
        """
        lacy = self.below.has_space()
        return left == self.slipped or (lacy and 0 < left < self.slipped)

    def _is_space_of(self, chains: int) -> bool:
        """Whether so many chains come next as the chains of one space."""
        ahead = self.below.ahead()
        return ahead is not None and ahead.chains >= max(chains, 1) > 1

    def _moves_on(self, node: Make) -> bool:
        """Whether a chain comes next, or the slip stitches go on into a space."""
        if _into_space(node) or self._leaves_as_many(node):
            return True
        rest = [n for n in self.nodes if n.start >= node.end and not isinstance(n, Note | Loops)]
        more = list(takewhile(slips, rest))
        first: Node | None = rest[len(more)] if len(more) < len(rest) else None
        if isinstance(first, Repeat) and len(first.body) > 1 and slips(first.body[-1]):
            first = first.body[0]  # "sl st in first st, *ch 6, sc back along it, sl st in next st"
        if isinstance(first, Group):
            first = first.body[0] if any(map(_into_space, more)) else None
        return isinstance(first, Chain)

    def _leaves_as_many(self, node: Make) -> bool:
        """Whether as many stitches are left at the other end as are slipped over at this one."""
        works = [n for n in self.nodes if isinstance(n, Make | Group | Skip | Repeat)]
        last = works[-1]
        target = node.target
        slipped = node.count if target is None or target.count is None else target.count
        if isinstance(last, Skip):
            return last.count == slipped
        leaves = last.leave if isinstance(last, Repeat) else last.target and last.target.leave
        return bool(leaves) and leaves == slipped

    def _works_later(self, node: Make) -> bool:
        """Whether stitches other than slip stitches come later in the round."""
        return any(
            isinstance(n, Make | Group) and n.start >= node.end and not slips(n)
            for n in every(self.nodes)
        )


def _into_space(node: Node) -> bool:
    """Whether a stitch goes into a chain space, a corner or a shell."""
    target = node.target if isinstance(node, Make) else None
    if target is None:
        return False
    return bool(target.until) or target.kind in ("corner", *GROUPED) or spacey(target.kind)
