"""Places at the ends of a round: chains from the hook, the turning chain, loops that close."""

from __future__ import annotations

from tracker.fabric.begins import hooked
from tracker.fabric.edge import Spot, space
from tracker.fabric.outcome import ShortError
from tracker.fabric.stitching import Stitching
from tracker.fabric.trees import every, into_chain
from tracker.notation.tree import (
    Act,
    Along,
    At,
    Deed,
    Evenly,
    Group,
    Make,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
)

#: More stitches than these in one place are a shell.
_LEAST_OF_SHELL = 3


def _in_one(node: Make) -> bool:
    target = node.target
    return target is not None and target.at in (At.NEXT, At.LAST) and target.count is None


def _spacey(target: Target) -> bool:
    return target.kind in ("sp", "corner") or target.kind.endswith(" sp")


class Ending(Stitching):
    """Rules for the first and the last places of a round."""

    def _is_picot(self, node: Make, target: Target) -> bool:
        """Whether a slip stitch goes back into what was just made, under chains."""
        back = target.at in (At.LAST, At.SAME) and target.count is None
        chained = bool(self.out) and self.out[-1].chains > 0 and self.now.over_skip
        repeated = self.now.inside >= 0 or target.at is At.SAME
        return node.stitch.us == "sl st" and back and chained and repeated and self.now.begun

    def _closes_picot(self, node: Make, target: Target) -> bool:
        """Whether a slip stitch inside a group goes back into the chains just made."""
        chained = bool(self.out) and self.out[-1].chains >= target.nth > 0
        return node.stitch.us == "sl st" and target.at is At.HOOK and chained and self.now.over_skip

    def _hook(self, node: Make, target: Target, count: int) -> None:
        """``in 2nd ch from hook``: chains passed over may stand for a stitch."""
        if self.now.begun:
            self._picot(node)
            return
        self.into_hook(node, target)
        if count > 1 and not any(into_chain(n) for n in every(self.nodes) if n is not node):
            # All the stitches go into one chain, as into a ring.
            self.used.discard("ch")
        self.stitch(node, count, per_place=max(1, count), takes=target.nth)

    def _into_own_chain(self, node: Make, target: Target, count: int) -> bool:
        """Work what goes into the round's own chains: back along one, a picot, the last loop."""
        if self._goes_back(node, target):
            self._back_along(node, target, count)
        elif self._is_picot(node, target):
            self._picot(node)
        else:
            return False
        return True

    def _goes_back(self, node: Make, target: Target) -> bool:
        """Whether a stitch goes into a chain made in this round, back along it."""
        if target.at is not At.HOOK:
            return target.kind == "ch" and self.now.own > 0
        chained = bool(self.out) and self.out[-1].chains >= target.nth
        under_way = self.now.begun or self.now.inside >= 0 or self.reading.tiles
        closes = node.stitch.us == "sl st" and not self._goes_on_back(node)
        return chained and under_way and not closes

    def _goes_on_back(self, node: Make) -> bool:
        """Whether chains are worked into right after a slip stitch: that is then no picot."""
        later = (n for n in every(self.nodes) if isinstance(n, Make) and n.start > node.start)
        after = next(later, None)
        return after is not None and after.target is not None and after.target.kind == "ch"

    def _back_along(self, node: Make, target: Target, count: int) -> None:
        """``ch 6, sc in 2nd ch from hook, dc in next 4 ch``: a petal that stands off the round"""
        places = 1 if target.count is None else self.figure(target.count)
        if target.at is At.HOOK:
            self.take_own(target.nth - 1)
            if self.reading.tiles:
                self.put(space(target.nth - 1))
        elif target.at is At.EACH and target.count is None:
            places = self.now.own - (0 if target.leave is None else self.figure(target.leave))
        if places > self.now.own:
            raise ShortError(node, "ch", places, self.now.own)
        self.now.own -= places
        self.stitch(node, count * places, per_place=max(1, count), takes=0)

    def take_own(self, passed: int) -> None:
        """Turn back along the chain made last, passing over its ``passed`` last chains."""
        spot = self.out.pop()
        self.now.placed -= spot.count
        self.now.own = spot.chains - passed
        self.now.over_skip = False

    def into_hook(self, node: Make | Group, target: Target) -> None:
        """Take the nth chain from the hook; those passed over may stand for a stitch."""
        passed = target.nth - 1
        if self.below:
            self.take(node, "ch", min(target.nth, max(1, self.below.left("ch"))))
        counts = self.reading.chain_counts if target.counts is None else target.counts
        if not counts and passed > 1:
            self.put(Spot("tch"))
        if counts and passed > 0:
            self.chains(f"{passed} ch stand for the first st", node.start, node.end, makes=1)
            self.leave(self._stand_in().us, 1)
            over = target.plus or self._mesh_over(node, target)
            if target.plus or over in self.chain_lengths:
                self.put(space(over))

    def _mesh_over(self, node: Make | Group, target: Target) -> int:
        """The first space of mesh, where chains for it are passed over, and those under it."""
        over = target.nth - 1 - self._stand_in().height
        mesh = isinstance(node, Make) and target.counts is None and over % 2 == 0
        return over // 2 if mesh else 0

    def _picot(self, node: Make) -> None:
        """A slip stitch back into the chain just made closes it to a picot."""
        if self.out and self.out[-1].chains:
            self.now.placed -= self.out.pop().count
        self.run(self._run_of(node, 1, 1, 0, 0))
        self.done.counted["picot"] = self.done.counted.get("picot", 0) + 1

    def _turning_chain(self, node: Make, count: int) -> None:
        """``in top of turning ch``: the last place, where that chain counts as a stitch"""
        if self.below.left("tch"):
            self.take(node, "tch", 1)
        elif node.target is not None and node.target.group == "sp" and self._ends_on_space():
            self.take(node, "sp", 1)
        else:
            if self.now.begun:  # a spiral may begin in the top of the chain below
                self.below.to_last("st", lacy=self._makes_shells() or self._chains_over())
            self.take(node, "st", 1)
        self.stitch(node, count, per_place=max(1, count), takes=1)

    def _ends_on_space(self) -> bool:
        """Whether the edge below ends on the space of a turning chain, and on its stitch."""
        last = self.below.edge[-2:]
        return bool(last) and last[0].chains > 0 and last[-1].count == 1 and not last[-1].group

    def _chains_over(self) -> bool:
        """Whether the chains made last reach over all stitches but the last of those left."""
        over = self.out[-1].chains if self.out and self.now.over_skip else 0
        return 1 < self.below.left("st") <= over

    def _makes_shells(self) -> bool:
        """Whether several stitches go into one place somewhere in the round."""
        return any(
            isinstance(n, Make) and n.count[0] * n.stitch.makes > _LEAST_OF_SHELL and _in_one(n)
            for n in every(self.nodes)
        )

    def _chain_is_last(self, node: Make | Along) -> int:
        """1 where the turning chain below counts as a stitch and is worked into after this."""
        if not self.ends_on_chain or self.below.left("tch"):
            return 0
        later = (n for n in self.nodes if isinstance(n, Make) and n.start > node.start)
        return int(any(n.target is not None and n.target.kind == "tch" for n in later))

    def _chain_is_left(self, node: Make, leave: int) -> bool:
        """Whether the turning chain is among the ``leave`` stitches that are left.

        "…, to last 3 sts, dc2tog, dc in tch", or "…, to last st, dc in tch".
        """
        later = [n for n in self.nodes if n.start > node.start]
        needs = [self._needs(n) for n in later]
        if None not in needs:
            return sum(n for n in needs if n) == leave
        after = next((n for n in later if isinstance(n, Make | Group)), None)
        return after is not None and after.target is not None and after.target.kind == "tch"

    def _needs(self, node: Node) -> int | None:
        """How many places what follows a row of stitches takes; None where that is not told."""
        if isinstance(node, Skip):
            return self.figure(node.count)
        if not isinstance(node, Make):
            return None if isinstance(node, Group | Repeat | Along | Evenly) else 0
        target, takes = node.target, node.stitch.takes
        if target is None:
            return self.figure(node.count) * takes
        if target.at not in (At.NEXT, At.LAST):
            return None
        return takes if target.count is None else self.figure(target.count)

    def _closes_loop(self, node: Make, target: Target) -> bool:
        """Whether a stitch into the first one of the round closes the last chain loop.

        "…, ending with ch 2, dc in first sc": chains and stitch together are the last loop.
        So is a stitch alone where nothing is left to go into: "…, hdc in top of beg ch-3".
        """
        at_first = (target.at is At.FIRST and not _spacey(target)) or target.kind == "tch"
        last = at_first and target.count is None and self.now.begun and not self.now.in_place
        if not last or self.now.inside >= 0 or not self.out or node.stitch.us == "sl st":
            return False
        if any(not isinstance(n, Act | Note) for n in self.nodes if n.start > node.start):
            return False
        if target.kind == "ch" and hooked(self.nodes):
            return False  # the first chain of all: the row ends there
        chained = bool(self.out[-1].chains) and self.now.over_skip
        if target.at is At.FIRST and chained:
            return True
        left = self.below.left("st") + self.below.left("tch")
        over = left == 0 or (chained and left == self.last_skip)
        if not self.ringed and (self.free or not over):
            return False
        said = self.now.joined or any(n.start > node.start for n in self.nodes)
        counted = not any(isinstance(n, Repeat) and n.times is None for n in self.nodes)
        turned = any(isinstance(n, Act) and n.deed is Deed.TURN for n in self.nodes)
        spaced = chained or any(spot.chains for spot in self.out)
        return (said or (chained and counted)) and spaced and not turned

    def back_at_first(self, target: Target) -> bool:
        """Whether "first sp", when all are filled, is the one that the round began in.

        So is one that is not called the first, where the round began in the space behind the
        hook.
        """
        first = target.at is At.FIRST or (self.reading.hind and target.at is At.NEXT)
        first = first and target.count is None and self.now.begun
        if not (first and _spacey(target)) or self.free or self.now.inside >= 0:
            return False
        return self.below.taken > 0 and not self.below.left(target.kind)

    def _close_loop(self, node: Make) -> None:
        """Turn the chains made last and the stitch into a loop like the others.

        Of several lengths it is the one nearest to the chains and the height of the stitch.
        """
        self.run(self._run_of(node, 1, 1, 0, 0))
        chains = self.out.pop().chains if self.out[-1].chains and self.now.over_skip else 0
        self.now.placed -= bool(chains)
        whole = chains + node.stitch.height
        lengths = {spot.chains for spot in self.out if spot.chains} or {whole}
        self.put(space(min(lengths, key=lambda length: (abs(length - whole), length))))
