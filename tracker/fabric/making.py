"""Making stitches: which places they take."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.called import spacey
from tracker.fabric.outcome import ShortError
from tracker.fabric.slipping import Slipping
from tracker.fabric.steps import Kind
from tracker.fabric.trees import every, goes_along_chain
from tracker.notation.dictionary import STITCHES
from tracker.notation.tree import At, Evenly, Group, Make, Skip, Target


class Making(Slipping):
    """Rules for `Make` and `Evenly`."""

    def make(self, node: Make) -> None:
        """Make stitches, each in its place."""
        count = self.figure(node.count)
        led = not self.now.begun and not self.now.in_place
        if node.stitch.us == "sl st" and led and self._travels(node, count):
            return
        if node.stitch.us == "sl st" and self._ends_round(node):
            self.run(self._run_of(node, count, 1, 0, 0))
            return
        aside, self.now.aside = self.now.aside, False
        if node.target is None and aside and 0 < count <= self.now.free_side:
            self._along_bridge(node, Target(At.NEXT, "along"), count)
        elif node.target is None:
            self._untargeted(node, count)
        else:
            self._targeted(node, node.target, count)
        self.now.begun = True

    def _untargeted(self, node: Make, count: int) -> None:
        takes = node.stitch.takes
        if self.now.at_place and self.below.taken <= 1 and not self.now.in_place:
            # The round began in a space: what has no other place goes there too.
            if not self.below.taken:
                self.take_first(node, self.now.at_place)
            self.stitch(node, count, per_place=1, takes=0)
            return
        if self.now.in_place or self.ringed:
            self.stitch(node, count, per_place=1, takes=0)
            return
        bunched = self.reading.bunched and node.numbered and takes == 1 and node.stitch.makes == 1
        bunched = bunched and not node.behind
        if bunched and count > 1:
            self.take(node, "st", 1)
            self.stitch(node, count, per_place=count, takes=1)
            return
        self._places(node, "st", count, 1)

    def _targeted(self, node: Make, target: Target, count: int) -> None:
        if self._closes_loop(node, target):
            self._close_loop(node)
        else:
            self._into(node, target, count)

    def _into(self, node: Make, target: Target, count: int) -> None:
        """Into the place that is named, in this round's chains or on the edge below."""
        if self.now.bridge and goes_along_chain(node):
            self._along_bridge(node, target, count)
        elif target.kind == "along":
            self._along_thing(node, target, count)
        elif (
            target.at in (At.RING, At.BELOW, At.EDGE, At.SKIPPED)
            or (self.ringed and target.at is not At.HOOK)
            or self.now.in_place
        ):
            self._elsewhere(node, target, count)
        elif self._into_own_chain(node, target, count):
            pass
        elif target.at is At.SAME and target.nth and self.below.has_group(target.kind):
            self._single(node, target.kind, count)
        elif target.at is At.SAME or self._under_chain(target) or self.back_at_first(target):
            self._same(node, target, count)
        elif target.at is At.HOOK:
            self._hook(node, target, count)
        elif target.kind == "tch":
            self._turning_chain(node, count)
        elif target.at is At.EACH:
            self._each(node, target, count)
        else:
            self._next(node, target, count)

    def _elsewhere(self, node: Make, target: Target, count: int) -> None:
        """Stitches that use nothing of the round below: in the ring, further down, passed over."""
        places = 1 if target.count is None else self.figure(target.count)
        if target.at is At.SKIPPED and self._of_earlier_round(places):
            self._next(node, replace(target, at=At.NEXT), count)
            return
        if target.at is At.BELOW and self.reading.covers and not self.now.in_place:
            self.take(node, "st", places)
        if target.at in (At.BELOW, At.SKIPPED) and not self.reading.shared:
            count *= places
        self.stitch(node, count, per_place=max(1, count), takes=0)

    def _of_earlier_round(self, places: int) -> bool:
        """Whether "skipped" stitches are those of an opening that is taken up now."""
        passing = any(isinstance(n, Skip) for n in every(self.nodes))
        return not passing and not self.free and self.below.left("st") >= places

    def _along_thing(self, node: Make, target: Target, count: int) -> None:
        """Stitches along a piece, through two layers, or along a chain made apart."""
        if target.group == "ch" and self.reading.strung:
            self.stitch(node, count, per_place=1, takes=0)
            return
        if target.at is At.EACH:
            count = self.below.left("st") // 2  # through both layers of all that is there
        self._untargeted(node, count)
        self.doubled += count * (target.group == "both")

    def _along_bridge(self, node: Make, target: Target, count: int) -> None:
        """Stitches along the chain between two pieces: first one side, then the other."""
        number = count if target.count is None else self.figure(target.count)
        if not self.now.free_side and self.now.bridge > 0:
            self.now.free_side, self.now.bridge = self.now.bridge, -1
        if number > self.now.free_side:
            raise ShortError(node, "ch", number, self.now.free_side)
        self.now.free_side -= number
        self.stitch(node, number, per_place=1, takes=0)

    def _under_chain(self, target: Target) -> bool:
        """Whether "first st" is the one that the counting chain already stands on."""
        first = target.at is At.FIRST or (self.reading.under and target.at is At.NEXT)
        single = first and target.count is None and bool(self.below)
        fresh = not self.now.begun or all(run.kind is not Kind.STITCH for run in self.done.runs)
        chained = single and fresh and self.below.taken > 0
        return chained and self.below.matches(target.kind, self.below.edge[0])

    def _same(self, node: Make, target: Target, count: int) -> None:
        first = self.below.taken == 0 and not self.now.begun
        round_chain = target.nth == 1 and target.kind == "ch" and self.below.left("ch") == 1
        if round_chain and not self.free:
            # back at the first chain, on its other side
            self.take(node, "ch", 1)
        elif first or self.reading.same_is_next:
            self.take_first(node, self._kind(target.kind))
        self.stitch(node, count, per_place=max(1, count), takes=int(first))

    def _each(self, node: Make, target: Target, count: int) -> None:
        kind, spared = self._kind(target.kind), 0
        places = self.below.left(kind)
        keep = 0 if target.leave is None else self.figure(target.leave)
        if not target.until:
            spared = keep
            places -= spared
        stop = target.until or self._stop_in_pass(node, target)
        if stop:
            keep = keep if target.until else 0
            places = self.below.before(kind, stop, keep) if stop != kind else min(1, places)
            places -= 0 if target.short is None else self.figure(target.short)
        if target.group and self.below.has_group(target.group):
            self._each_group(node, target.group, count)
            return
        if not stop and not spacey(kind) and not (target.leave and self._chain_is_left(node, keep)):
            # The turning chain counts as the last stitch, and is worked into by name.
            places -= self._chain_is_last(node)
        self.used.add(kind)
        if self.below.has_group(kind):
            if stop and not target.until:
                self._single(node, kind, count)  # "*sc in 3rd dc of each shell, ch 5": one a pass
            else:
                self._each_group(node, kind, count)
            return
        if places <= 0 and not self.free and target.leave is None:
            raise ShortError(node, kind, 1, 0)
        places = places if not self.free else self.begin.assumed * node.stitch.takes
        self._places(node, kind, max(0, places) // max(1, node.stitch.takes), count)
        self.spared = spared

    def _stop_in_pass(self, node: Make, target: Target) -> str:
        """Inside a repeat "each" goes only as far as the place worked into next.

        The kind of place to stop before; the target's own kind for a single place.
        """
        body = self.now.body
        if self.now.inside < 0 or target.leave is not None or len(body) < 2:
            return ""
        at = next((i for i, n in enumerate(body) if n is node), -1)
        for other in (*body[at + 1 :], *body[: max(0, at)]):
            place = other.target if isinstance(other, Make | Group) else None
            if place is not None and place.kind != target.kind:
                return place.kind
        return target.kind if at >= 0 else ""

    def _each_group(self, node: Make, kind: str, count: int) -> None:
        nth = 0 if node.target is None or node.target.group else node.target.nth
        while self.below.take_group(kind, nth=nth):
            self.stitch(node, count, per_place=max(1, count), takes=1)

    def _next(self, node: Make, target: Target, count: int) -> None:
        kind = self._kind(target.kind)
        takes = node.stitch.takes
        if target.at is At.ANY and not self.now.begun:
            self.below.start_at(kind)
        if target.at is At.LAST and not self.below.left(kind) and self.below.left("tch"):
            kind = "tch"  # all that is there behind the last shell is the turning chain
        if target.at is At.LAST and target.count is None and not spacey(kind) and kind != "corner":
            self.below.to_last(kind, 1 + self._chain_is_last(node))
        if target.group and self.below.has_group(target.group):
            self._into_group(node, target.group, self.reading.beside)
            places = 1 if target.count is None else self.figure(target.count)
            for _ in range(places):
                self.stitch(node, count, per_place=max(1, count), takes=1)
            return
        if target.count is None:
            self._single(node, kind, count)
            return
        places = self.figure(target.count)
        if takes > 1 and places == takes * count:
            self._places(node, kind, count, 1)
        elif (self.reading.shared and places == count) or (takes > 1 and places % takes == 0):
            self._places(node, kind, places // max(1, takes), 1)
        else:
            self._places(node, kind, places, count)

    def _single(self, node: Make, kind: str, count: int) -> None:
        """``in the next st``: one place without a number."""
        if kind == "ch" and count > 1 and self.below.has_space():
            kind = "sp"  # "10 sc into ch": all of them under the same chains
        if node.stitch.us == "inc" and count > 1:
            # "4 inc in the last ch": several in one place are that many stitches
            self.take(node, kind, 1)
            self.stitch(replace(node, stitch=self.main), count, per_place=count, takes=1)
            return
        if self.below.has_group(kind) and not self.free:
            self._into_group(node, kind)
        elif node.stitch.takes != 1 and not spacey(kind):
            self._places(node, kind, count, 1)
            return
        else:
            self.take(node, kind, 1)
            if count > 2 and self._is_only_make(node):
                self.used.discard("ch")  # all of them into one chain, as into a ring
        self.stitch(node, count, per_place=max(1, count), takes=1)

    def _is_only_make(self, node: Make) -> bool:
        """Whether the round makes nothing but this, into a foundation chain."""
        chains = all(spot.name == "ch" for spot in self.below.edge)
        return chains and not any(
            isinstance(n, Make | Group) and n is not node for n in every(self.nodes)
        )

    def spread(self, node: Evenly) -> None:
        """Increases or decreases spread evenly: the gaps differ by one at most."""
        if self.free:
            return
        places = self.below.left("st")
        changes = self.figure(node.count)
        if node.to:
            changes = (changes - places) * node.change
        if changes < 0:
            raise ShortError(node, "st", self.figure(node.count), places)
        stitch = node.stitch or self.main
        make = Make(stitch, (1,), None, node.start, node.end)
        if changes == 0:
            self._places(make, "st", places, 1)
            return
        if node.ends == "both":
            # at both ends alike, also where only the count tells how many that is
            changes = changes // 2 * 2 if node.to else changes * 2
        per = 1 if node.change > 0 else 2
        plain = places - changes * per
        if plain < 0:
            raise ShortError(node, "st", changes * per, places)
        more = replace(make, stitch=STITCHES["inc" if node.change > 0 else "dec"])
        for i, gap in enumerate(_gaps(plain, changes, node.ends)):
            if i:
                self._places(more, "st", 1, 1)
            self._places(make, "st", gap, 1)


def _gaps(plain: int, changes: int, ends: str) -> list[int]:
    """How many plain stitches stand before each change and behind the last."""
    if ends == "both":
        return [0] * (changes // 2) + [plain] + [0] * (changes // 2)
    if ends:
        return [0] * changes + [plain] if ends == "first" else [plain] + [0] * changes
    return [(i + 1) * plain // changes - i * plain // changes for i in range(changes)] + [0]
