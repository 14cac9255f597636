"""The state of a walk and the small tools that change it."""

from __future__ import annotations

from tracker.fabric.below import Below
from tracker.fabric.edge import Edge, Spot, cornered, with_middle
from tracker.fabric.effort import TooMuchError
from tracker.fabric.gaps import grouped
from tracker.fabric.moments import Kept, Mark, Now
from tracker.fabric.outcome import MOST_RUNS, MOST_STEPS, Outcome, ShortError, Start
from tracker.fabric.places import Hold, Places
from tracker.fabric.reading import Reading
from tracker.fabric.steps import Kind, Pass, Run
from tracker.fabric.trees import (
    every,
    names_corner,
    names_gap,
    names_group,
    names_middle,
    names_space,
)
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Chain, Figure, Group, Make, Node, Repeat, Skip


class Hand:
    """The hands at work on one round: the edge below, what is made, what is in force."""

    def __init__(self, nodes: tuple[Node, ...], start: Start, reading: Reading) -> None:
        whole = tuple(every(nodes))
        spaced = any(map(names_space, whole))
        edge = _as_met(start.edge or (), nodes, whole, spaced)
        self.nodes = nodes
        self.begin = start
        self.reading = reading
        self.below = Below(
            edge,
            loose=reading.loose,
            singly=reading.singly,
            opened=not spaced,
            gaps=any(map(names_gap, whole)),
        )
        self.out: list[Spot] = []
        self.done = Outcome(under=sum(spot.count for spot in edge))
        self.now = Now(colour=start.colour)
        self.free = start.edge is None
        self.trying = 0
        self.used: set[str] = set()
        self.last_skip = 0
        self.passed_behind = 0
        self.slipped = 0
        self.doubled = 0
        self.spared = 0
        self.rounded = False
        self.ringed = not edge and not self.free
        self.seen: set[str] = set()
        self.chain_lengths = {n.count[0] for n in whole if isinstance(n, Chain)}
        self.ends_on_chain = any(
            isinstance(n, Make) and n.target is not None and n.target.kind == "tch" for n in nodes
        )
        self.main = self._main_stitch()
        self._words: dict[tuple[int, str, bool, bool], tuple[Make, tuple[str, str, str]]] = {}

    def figure(self, figure: Figure) -> int:
        """The figure for this size."""
        return figure[self.begin.index] if self.begin.index < len(figure) else figure[0]

    def _main_stitch(self) -> Stitch:
        """The plain stitch that an unnamed increase or decrease is made of."""
        for node in every(self.nodes):
            if isinstance(node, Make) and node.stitch.us in STITCHES and node.stitch.height:
                return STITCHES[base_of(node.stitch.us)]
        counts: dict[str, int] = {}
        for spot in self.below.edge:
            name = base_of(spot.name)
            if name in STITCHES and STITCHES[name].height:
                counts[name] = counts.get(name, 0) + spot.count
        return STITCHES[max(counts, key=lambda n: counts[n]) if counts else "sc"]

    def take(self, node: Node, kind: str, count: int) -> None:
        """Use up places, or raise `ShortError`."""
        if self.free or count <= 0:
            return
        if kind not in ("gap", "lone"):
            self.used.add(kind)  # at the place a round begins in, a group may be cut in two
        self.spared = 0
        had = self.below.left(kind)
        if had < count:
            raise ShortError(node, kind, count, had)
        if kind == "middle" and not self.now.over_skip and self.below.before("st", kind):
            raise ShortError(node, kind, count, had)  # what stands before it is not worked
        if kind == "ch" or self.below.edge[0].name == "ch":
            self.now.chain_used += count
        self.below.take(kind, count)
        self.now.over_skip = False

    def take_first(self, node: Node, kind: str) -> None:
        """Use up the place where the round begins.

        In a shell it says nothing of the other spaces: they may not be the shells' own.
        """
        if self.reading.at_join and kind == "sp" and not self.now.at_place:
            kind = "st"
        known = set(self.used)
        self.take(node, self.now.at_place or kind, 1)
        if self.now.at_place and self.below.edge and self.below.edge[0].group:
            self.used &= known

    def run(self, run: Run, held: Places | None = None, ahead: int = 0) -> None:
        """Add a run of steps, in the places taken last if not in those given.

        ``ahead``: places that steps before it will have left, but have not yet.
        """
        self.now.steps += run.count
        if self.now.steps > MOST_STEPS or len(self.done.runs) > MOST_RUNS:
            raise TooMuchError
        self.done.runs.append(run)
        feet = self.below.held if held is None else held
        self.done.holds.append(Hold(feet, self.now.placed + ahead))

    def chains(self, text: str, start: int, end: int, count: int = 1, makes: int = 0) -> None:
        """Add ``count`` steps of chains, each called ``text`` and counted as ``makes``."""
        inside, colour = self.now.inside, self.now.colour
        self.run(
            Run(Kind.CHAIN, "ch", "chain", text, "", start, end, count, 1, 0, makes, inside, colour)
        )

    def _into_group(self, node: Node, group: str, beside: bool = False) -> None:
        """Use up the next group of that key, or its nth stitch, or raise `ShortError`."""
        target = node.target if isinstance(node, Make | Group) else None
        nth = 0 if target is None or target.group else target.nth
        same = nth and target is not None and target.at is At.SAME
        if self.free:
            return
        if same and self.below.take_in_same(group, nth):
            return
        if same or not self.below.take_group(group, beside, nth):
            raise ShortError(node, group, 1, 0)

    def leave(self, name: str, count: int, each: int = 1) -> None:
        """Add stitches to the edge this round leaves, ``each`` of them in one place."""
        if count <= 0:
            return
        if self._goes_on(name, each):
            self.out[-1] = self.out[-1].more(count)
            self.now.placed += count
            return
        self.put(Spot(name, count, 0, self.now.group, self.now.opens, each=each))
        self.now.opens = False

    def put(self, spot: Spot) -> None:
        """Add places to the edge this round leaves, as a spot of their own."""
        self.out.append(spot)
        self.now.placed += spot.count

    def _goes_on(self, name: str, each: int) -> bool:
        """Whether such stitches stand last on the edge, outside any group."""
        last = self.out[-1] if self.out and not self.now.group else None
        return last is not None and last.name == name and last.each == each and not last.group

    def mark(self) -> Mark:
        """This moment, for `back_to`."""
        return Mark(
            self.now.copy(),
            self.below.state(),
            len(self.out),
            self.out[-1] if self.out else None,
            len(self.done.runs),
            len(self.done.passes),
            len(self.done.times),
            dict(self.done.counted),
            frozenset(self.seen),
        )

    def keep(self) -> Kept:
        """This moment with all that was made, for `restore`."""
        done = self.done
        return Kept(
            self.mark(),
            list(self.out),
            list(done.runs),
            list(done.holds),
            list(done.passes),
            list(done.times),
            list(done.spans),
        )

    def restore(self, kept: Kept) -> None:
        """Back to ``kept``, also after tries that undid more than it."""
        done = self.done
        self.out = list(kept.out)
        done.runs, done.holds = list(kept.runs), list(kept.holds)
        done.passes = list(kept.passes)
        done.times, done.spans = list(kept.times), list(kept.spans)
        self.back_to(kept.mark)

    def back_to(self, mark: Mark) -> None:
        """Undo all since ``mark``."""
        self.now = mark.now.copy()
        self.below.go(mark.cursor)
        del self.out[mark.out :]
        if mark.last is not None:
            self.out[-1] = mark.last
        del self.done.runs[mark.runs :]
        del self.done.holds[mark.runs :]
        del self.done.passes[mark.passes :]
        del self.done.times[mark.times :]
        del self.done.spans[mark.times :]
        self.done.counted = dict(mark.counted)
        self.seen = set(mark.seen)

    def open_repeat(self, node: Node) -> int:
        """Number a repeat; its passes are counted under that number."""
        self.done.times.append(0)
        self.done.spans.append((node.start, node.end))
        return len(self.done.times) - 1

    def open_pass(self, numbered: int, k: int) -> int:
        """Begin pass ``k``; returns what ``inside`` was."""
        outer = self.now.inside
        if numbered >= 0:
            self.done.passes.append(Pass(numbered, k, outer))
            self.now.inside = len(self.done.passes) - 1
            self.done.times[numbered] = k
        return outer


def _as_met(edge: Edge, nodes: tuple[Node, ...], whole: tuple[Node, ...], spaced: bool) -> Edge:
    """The edge with the spaces and corners that the words name, where it tells of none.

    ``whole``: all nodes, also those within others. ``spaced``: the words name chain spaces.
    """
    if spaced and all(spot.name == "st" for spot in edge):
        edge = _as_spaces(edge, whole)
    if any(map(names_corner, whole)) and not any(s.chains for s in edge):
        edge = cornered(edge)
    if not any(spot.group for spot in edge) and any(map(names_group, whole)):
        edge = grouped(edge)
    if any(map(names_middle, whole)):
        repeated = (one for node in nodes if isinstance(node, Repeat) for one in every(node.body))
        edge = edge if any(map(names_middle, repeated)) else with_middle(edge)
    return edge


def _as_spaces(edge: Edge, whole: tuple[Node, ...]) -> Edge:
    """Places of which only the number is known, where the round works into spaces alone."""
    kinds = {
        n.target.kind
        for n in whole
        if isinstance(n, Make | Group) and n.target is not None and n.target.at is not At.SAME
    }
    if len(kinds) != 1 or any(isinstance(n, Skip) for n in whole):
        return edge
    length = "".join(c for c in kinds.pop() if c.isdigit())
    return tuple(Spot(f"ch-{length or 1} sp", spot.count, int(length or 1)) for spot in edge)
