"""Stitches as they come off the hook: their steps, and what they leave on the edge."""

from __future__ import annotations

from tracker.fabric.edge import Spot, space
from tracker.fabric.hand import Hand
from tracker.fabric.places import parted
from tracker.fabric.steps import Kind, Run
from tracker.fabric.trees import every
from tracker.fabric.words import step_name, step_text, where_words
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Group, Make, Node

#: So many stitches in one space and more are a petal.
_LEAST_OF_PETAL = 3


class Stitching(Hand):
    """Stitches once their places are known."""

    def _places(self, node: Make, kind: str, places: int, each: int) -> None:
        """``each`` of the stitch in each of ``places`` places (or groups of its takes)."""
        stitch = node.stitch
        if stitch.first is None and stitch.last is None:
            self.take(node, kind, places * stitch.takes)
            self.stitch(node, places * each, per_place=each, takes=stitch.takes)
            return
        for _ in range(places):
            takes = self._takes_now(stitch, kind)
            self.take(node, kind, takes)
            self.stitch(node, each, per_place=each, takes=takes)

    def _takes_now(self, stitch: Stitch, kind: str) -> int:
        """What the next one takes: the first and the last of a round may differ."""
        if stitch.first is not None and stitch.us not in self.seen:
            return stitch.takes if stitch.first.takes is None else stitch.first.takes
        last = None if stitch.last is None else stitch.last.takes
        if last is not None and not self.free and self.below.left(kind) == last:
            return last
        return stitch.takes

    def stitch(self, node: Make, count: int, *, per_place: int, takes: int) -> None:
        """Add ``count`` of the node's stitch to the steps and to the edge."""
        if count <= 0:
            return
        stitch = node.stitch
        self.now.begun = True
        self.now.reach = self.below.index, self.below.offset
        key = stitch.us
        first = key not in self.seen
        self.seen.add(key)
        makes = stitch.makes
        if first and stitch.first is not None and stitch.first.makes is not None:
            makes = stitch.first.makes
        held = node.target is not None and node.target.at is At.EDGE
        if key == "sl st" and (self.now.in_place or held or self.reading.tiles):
            # Slip stitches at a petal's sides only hold it down: nothing is worked into them.
            makes = 0
        anchor = key == "sl st" and not self.now.in_place and self._between_petals(node)
        makes = 0 if anchor else makes
        self._run_led(
            self._run_of(node, count, per_place, takes, makes), makes + len(stitch.spaces)
        )
        if key not in STITCHES or stitch.spaces:
            self.done.counted[key] = self.done.counted.get(key, 0) + count
        if anchor:
            self.put(Spot("anchor", count))
            return
        bunched = per_place == count and takes > 0
        each = per_place * makes if per_place < count else 1
        self._leave_stitch(stitch, count, makes, bunched=bunched, each=each)

    def _between_petals(self, node: Make) -> bool:
        """Whether a slip stitch stands in a repeat with a petal worked into a chain space.

        It is not counted then (common practice, no source). One in a chain space may be a
        stitch like others, but not where the petal goes into the same space.
        """
        if self.now.inside < 0:
            return False
        if node.target is not None and node.target.kind.endswith("sp"):
            return any(_in_same_space(other) and self._is_petal(other) for other in self.now.body)
        return any(self._is_petal(other) for other in self.now.body)

    def _is_petal(self, node: Node) -> bool:
        """Whether a node makes a petal in a chain space, or begins one back along a chain."""
        if not isinstance(node, Make | Group) or node.target is None:
            return False
        if node.target.kind == "ch" and not self.below.knows("ch"):
            return not isinstance(node, Make) or node.stitch.us != "sl st"
        several = isinstance(node, Group) or self.figure(node.count) >= _LEAST_OF_PETAL
        return several and node.target.kind.endswith("sp")

    def _run_led(self, run: Run, leaves: int) -> None:
        """Add a run; its first place tells what was skipped, or which place a group is in.

        ``leaves``: places that each of its steps leaves on the edge.
        """
        where = self.now.place or run.where
        if self.now.skipped:
            where += f" after skipping {self.now.skipped}"
        self.now.place, self.now.skipped = "", 0
        if where == run.where or run.count <= run.per_place:
            self.run(run if where == run.where else run._replace(where=where))
            return
        held = self.below.held
        first, rest = parted(held, run.takes) if run.takes else (held, held)
        self.run(run._replace(count=run.per_place, where=where), first)
        ahead = run.per_place * leaves
        self.run(run._replace(count=run.count - run.per_place), rest, ahead)

    def _run_of(self, node: Make, count: int, per_place: int, takes: int, makes: int) -> Run:
        name, text, where = self._words_of(node)
        each = max(1, min(per_place, count))
        return Run(
            Kind.STITCH,
            node.stitch.abbr,
            name,
            text,
            where,
            node.start,
            node.end,
            count,
            each,
            takes,
            makes,
            self.now.inside,
            self.now.colour,
        )

    def _words_of(self, node: Make) -> tuple[str, str, str]:
        """What a step is called, what it says, where it goes.

        Kept, as repeats ask for it again and again.
        """
        loop = node.loop or self.now.loop
        key = (id(node), loop, self.now.in_place, self.ringed)
        kept = self._words.get(key)
        if kept is None:
            text = step_text(node.stitch, self.begin.terms)
            where = where_words(node, loop, self.begin.terms, self.ringed, self.now.in_place)
            # The node is kept with its words, so that no other one can get its id.
            name = step_name(node.stitch, self.begin.terms)
            self._words[key] = kept = (node, (name, text, where))
        return kept[1]

    def _leave_stitch(
        self, stitch: Stitch, count: int, makes: int, *, bunched: bool = False, each: int = 1
    ) -> None:
        if stitch.spaces:
            for _ in range(count):
                self._leave_group(stitch)
            return
        if count * makes > 2 and (bunched or makes > 2) and not self.now.group:
            # Several in one place: later rounds may call them a shell or a fan.
            self.now.group, self.now.opens = "group", True
            self._leave_stitch(stitch, count, makes)
            self.now.group = ""
            return
        name = stitch.us
        if name in ("inc", "dec", "invdec"):
            name = self.main.us
        elif name.endswith("inc"):
            name = base_of(name)
        if name == "shell":
            name = "dc"
        self.leave(name, count * makes, max(1, each))

    def _leave_group(self, stitch: Stitch) -> None:
        """A group with chain spaces in it, such as a V stitch: its stitches and spaces."""
        outer, self.now.group, self.now.opens = self.now.group, stitch.us, True
        shares = shared_out(stitch.makes, len(stitch.spaces) + 1)
        for share, length in zip(shares, stitch.spaces, strict=False):
            self.leave("dc", share)
            self.put(space(length, stitch.us))
        self.leave("dc", shares[-1])
        self.now.group = outer

    def _stand_in(self) -> Stitch:
        """The stitch a beginning chain stands for: the first one of the round."""
        for node in every(self.nodes):
            if isinstance(node, Make) and node.stitch.us != "sl st":
                base = base_of(node.stitch.us)
                return STITCHES[base] if base in STITCHES and STITCHES[base].height else self.main
        return self.main

    def _kind(self, kind: str) -> str:
        """The kind of place meant: a loop or space where there is none is any stitch.

        The middle stitch is that of a petal or shell, where the round has none of its own.
        """
        if kind == "middle" and not any(spot.middle for spot in self.below.edge):
            return "group"
        if kind == "gap" and not self.below.has_gap():
            kind = "sp"
        if kind == "sp" and not self.below.has_space():
            return "st"
        return kind

    def begin_at(self, kind: str, steps: int = 1) -> None:
        """Let the round begin at the ``steps``-th next place of ``kind``."""
        self.below.start_at(kind, steps)
        self.now.at_place = kind if kind != "st" else self.now.at_place


def shared_out(count: int, parts: int) -> list[int]:
    """``count`` stitches between the spaces of a group, the same from either end.

    What is over goes to the middle, or to both ends; of two parts, to the first.
    """
    shares, over = [count // parts] * parts, count % parts
    if over % 2:
        shares[(parts - 1) // 2] += 1
    for end in range(over // 2):
        shares[end] += 1
        shares[-1 - end] += 1
    return shares


def _in_same_space(node: Node) -> bool:
    """Whether a node goes into the space that was worked into before it."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.at is At.SAME
