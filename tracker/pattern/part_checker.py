"""Checking the rounds of one part, in order, in every size."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from copy import copy
from dataclasses import replace

from tracker.fabric.begins import turns_first
from tracker.fabric.edge import Edge, plain_edge, stitches, turned
from tracker.fabric.effort import MOST_TRIES_IN_PART, Effort, TooMuchError
from tracker.fabric.judge import Judged
from tracker.fabric.outcome import Outcome
from tracker.fabric.stated import figure_of
from tracker.fabric.tiles import makes_tiles
from tracker.fabric.trees import ends_in_loop, opened, unread_in
from tracker.fabric.verdicts import Verdict
from tracker.notation.lexicon import Lexicon
from tracker.notation.lines import Line, split_lines
from tracker.notation.reader import read_round
from tracker.notation.round_text import Stated
from tracker.notation.size_names import names_in
from tracker.notation.tree import Act, Chain, Deed, Figure, Loops, Node
from tracker.pattern.beginnings import Beginnings
from tracker.pattern.causes import Cause
from tracker.pattern.checked import CheckedRound
from tracker.pattern.findings import Source, altered_in, short
from tracker.pattern.hindsight import Seen, Told
from tracker.pattern.house import House, rounds_otherwise
from tracker.pattern.judging import State
from tracker.pattern.mending import Mending
from tracker.pattern.order import Order
from tracker.pattern.size_lines import SizeLines
from tracker.pattern.some_sizes import chosen, for_all, for_some, put_back
from tracker.pattern.tasks import ReadLine, Task
from tracker.pattern.underside import underside

#: The number a label ends on: "Rnd 4", "R4".
_DIGITS = re.compile(r"\d{1,6}$")


class PartChecker(Mending):
    """Checks the rounds of one part, in order, in all sizes.

    Args:
        lexicon: the words for stitches.
        sizes: how many sizes.
        below: places the first round is worked into; empty where it begins from nothing.
        rows: whether the part is worked in turned rows.
        offset: added to line numbers.
        effort: what may be spent on it.
        house: rules that a pattern file keeps beyond its counts; None for plain text.

    ``items`` are the rounds in the order in which they were worked, one for each that was
    found, with the lines between them that only change colour or turn.
    """

    def __init__(
        self,
        lexicon: Lexicon,
        sizes: int,
        below: Figure = (),
        *,
        rows: bool = False,
        offset: int = 0,
        house: House | None = None,
        effort: Effort | None = None,
    ) -> None:
        self.lexicon = lexicon
        self.sizes = sizes
        self.below = below
        self.rows = rows
        self.offset = offset
        self.house = house
        self.effort = effort or Effort()
        self.source = Source("", offset)
        self.told: dict[int, Told] = {}
        self.offers = {}
        self._begin(Beginnings())

    def _begin(self, beginnings: Beginnings) -> None:
        self.beginnings = beginnings
        self.edges: list[Edge | None] = [
            plain_edge(figure_of(self.below, i)) if self.below else None for i in range(self.sizes)
        ]
        self.printed: Figure | None = None
        self.number = 0
        self.kept: dict[int, list[Edge | None]] = {}
        self.colour = ""
        self.pending: Chain | None = None
        self.found: list[CheckedRound] = []
        self.seen: list[Seen] = []
        self.items: list[Task | ReadLine] = []
        self.rest = ()
        self.opening: tuple[Figure, Figure] | None = None
        self.rows_made: list[int | None] = [0] * self.sizes
        self.under: list[Edge | None] = [None] * self.sizes
        self.begun = self.in_loop = False
        self.in_rows = self.rows
        self.doubt = False
        self.guessed = self.supposed = False
        self.known: dict[object, tuple[Judged | None, State]] = {}
        self.causes: dict[int, Cause] = {}
        self.effort.tries = MOST_TRIES_IN_PART
        self.failed: tuple[ReadLine, ReadLine, tuple[Edge | None, ...]] | None = None
        self.misnumbered: list[Cause] = []
        if self.house is not None:
            self.house.begin()

    def check(self, text: str) -> list[CheckedRound]:
        """All rounds. What a later round shows of a beginning chain holds for earlier ones."""
        self.source = Source(text, self.offset)
        names = names_in(text, self.sizes, self.house.sizes if self.house else ())
        lines = SizeLines(self._read, names, self.sizes)
        reads = [read for line in split_lines(text, self.sizes) for read in lines.of(line)]
        self.tiled = any(makes_tiles(read.read.nodes) for read in reads)
        return self._checked(lambda: Order(self._made, self._read, self.sizes).tasks(reads))

    def _read(self, line: Line, sizes: int = 0) -> ReadLine:
        return ReadLine(line, read_round(line.body, self.lexicon, sizes=sizes or self.sizes))

    def work(self, text: str, items: Sequence[Task | ReadLine]) -> list[CheckedRound]:
        """The same for rounds whose order is settled; ``text`` is where they stand."""
        self.source = Source(text, self.offset)
        reads = [item.body if isinstance(item, Task) else item for item in items]
        self.tiled = any(makes_tiles(read.read.nodes) for read in reads)
        return self._checked(lambda: items)

    def _checked(self, items: Callable[[], Iterable[Task | ReadLine]]) -> list[CheckedRound]:
        self._all(items())
        self._look_back(items)
        said = dict.fromkeys(self.beginnings.doubtful(), False)
        if said and self.effort.for_another():
            self._begin(Beginnings(said=said))
            self._all(items())
        learnt = self.beginnings.counts
        if learnt and self.effort.for_another():
            self._begin(Beginnings(learnt, said))
            self._all(items())
        settled = self.beginnings.settled()
        if settled and self.effort.for_another():
            self._begin(Beginnings(learnt, said | settled))
            self._all(items())
        return self.found

    def _all(self, items: Iterable[Task | ReadLine]) -> None:
        for task in items:
            self.items.append(task)
            if isinstance(task, ReadLine):
                self.beginnings.hear(task.read.nodes, task.read.chains)
                self._deeds(task.read.nodes)
            elif task.only:
                self._for_some(task)
            else:
                self.work_round(task)

    def _for_some(self, task: Task) -> None:
        """A round that only some sizes work; in the others the edge stays as it is."""
        part, which = copy(self), task.only
        part.sizes, part.found, part.known = len(which), [], {}
        part.edges, part.rows_made = chosen(self.edges, which), chosen(self.rows_made, which)
        part.kept = {number: chosen(edges, which) for number, edges in self.kept.items()}
        part.printed = part.opening = part.failed = None
        part.told = {}
        part.work_round(for_some(task))
        self.found.append(self._told(for_all(part.found[0], task, self.edges), task))
        self.edges = put_back(self.edges, which, part.edges)
        self.rows_made = put_back(self.rows_made, which, part.rows_made)
        if part.number:
            self.kept[part.number] = list(self.edges)
        self.number, self.colour, self.pending = part.number, part.colour, part.pending
        self.begun, self.doubt, self.guessed = part.begun, part.doubt, part.guessed
        self.printed = self.failed = None

    def _made(self) -> Figure:
        """Stitches the round worked last leaves in each size; () where that is not known."""
        return tuple(stitches(e or ()) for e in self.edges) if all(self.edges) else ()

    def _deeds(self, nodes: tuple[Node, ...]) -> None:
        """A line such as "Change to B": no round, but what follows is worked in B."""
        for node in nodes:
            if isinstance(node, Act) and node.colour:
                self.colour = node.colour
            if isinstance(node, Act) and node.deed is Deed.TURN:
                self.edges = [None if e is None else turned(e) for e in self.edges]

    def work_round(self, task: Task) -> None:
        """Judge one round, add it to ``found``, and go on from what it leaves."""
        self.misnumbered = [] if self.house is None else self.house.number(task)
        self.misnumbered += rounds_otherwise(task)
        self.beginnings.hear((), task.body.read.chains)
        if task.leaves:
            self._left(task)
            return
        understood = self._understood(task)
        if understood is None:
            return
        task = understood
        nodes = self._come_to(task)
        stated = task.stated if task.last else None
        if self.failed is not None and self.failed[:2] == (task.item, task.body):
            # "Rnds 5-8: sc 19" does not come right because its first round made 19 of 18
            self.edges, self.doubt, self.printed = list(self.failed[2]), False, None
        before = tuple(self.edges)
        slip = self._no_such_space(task)
        if slip is not None:
            self._off(task, slip)
            return
        try:
            judge = self._judged if task.last else self._judged_before
            judged = judge(nodes, task.stated)
            if any(t.body is task.body for t in self.items[:-1] if isinstance(t, Task)):
                nodes, judged = self._on_larger(nodes, judged, stated)
        except TooMuchError:
            self._unread(task, Cause(self.effort.why(), 0, 1))
            return
        unsure = self._unsure(task, nodes, judged)
        if judged is None or unsure:
            self._unread(task, Cause(unsure, 0, min(len(task.body.line.body), 40)))
            return
        altered = altered_in(task, judged, self.edges)
        if altered is not None:
            self._unread(replace(task, body=task.item), altered)
            return
        self._keep(task, nodes, judged, stated)
        again = not judged.fits and not task.last
        self.failed = (task.item, task.body, before) if again else None

    def _understood(self, task: Task) -> Task | None:
        """A round, in other words if need be; None where it is not understood, and told so."""
        fault = self._fault(task)
        if fault is None:
            return task
        mended = self._mended(task)
        if mended is not None and self._fault(mended) is None:
            return mended
        self.seen.append(Seen(task, (), unknown=False))
        self._unread(task, fault)
        return None

    def _fault(self, task: Task) -> Cause | None:
        """What keeps a round from being worked out."""
        if task.fault:
            return Cause(task.fault, task.start, task.end)
        if task.body.read.apart:
            return Cause(task.body.read.apart, 0, 1)
        nodes = task.body.read.nodes
        loops = [n for n in nodes if isinstance(n, Loops) and n.of and n.of not in self.kept]
        if loops and self.begun:
            why = "are loops of a round that is not in this text"
            words = task.body.line.body[loops[0].start : loops[0].end]
            return Cause(f"{short(words)!r} {why}", loops[0].start, loops[0].end)
        unread = unread_in(nodes)
        if unread:
            first = unread[0]
            return Cause(f"{short(first.words)!r} {first.why}", first.start, first.end)
        return None

    def _keep(
        self, task: Task, nodes: tuple[Node, ...], judged: Judged, stated: Stated | None
    ) -> None:
        """Add the round, and go on from the edge it leaves."""
        verdict = self._tell(task, nodes, judged, stated)
        self.beginnings.learn(nodes, self.pending, judged)
        outcomes = judged.outcomes
        if any(outcomes[0].edge) and not any(self.under) and verdict is not Verdict.DIFFERS:
            self.under = underside(nodes, outcomes, judged.reading)
        self._go_on(task, outcomes, verdict)

    def _go_on(self, task: Task, outcomes: Sequence[Outcome], verdict: Verdict) -> None:
        """What the next round starts from."""
        first = outcomes[0]
        nodes = task.body.read.nodes
        turns = first.turned and not turns_first(nodes)
        round_ = any(isinstance(n, Act) and n.deed is Deed.JOIN for n in nodes)
        turn = turns or (self._rowed(task) and not (first.foundation or round_))
        self.edges = [turned(o.edge) if turn else o.edge for o in outcomes]
        digits = _DIGITS.search(task.label)
        self.number = int(digits.group()) if digits else 0
        if self.number:
            self.kept[self.number] = [o.edge for o in outcomes]
        self.colour = first.colour
        self.pending = first.pending
        self.in_loop = ends_in_loop(nodes)
        self.begun = True
        self._count_row(task)
        if all(stitches(o.rest) for o in outcomes) and self._rowed(task):
            self.rest = tuple(o.rest for o in outcomes)
        self.opening = opened(task.body.read.nodes) or self.opening
        self.guessed = False
        counted = task.stated is not None and bool(task.stated.total)
        spaced = any(spot.chains for edge in self.edges for spot in edge or ())
        self.doubt = verdict is Verdict.DIFFERS and (spaced or not counted)
        self.printed = task.stated.total if verdict is Verdict.DIFFERS and task.stated else None
