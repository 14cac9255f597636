"""Checking the rounds of one part, in order, in every size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from tracker.fabric.edge import Edge, made, plain_edge, stitches, turned
from tracker.fabric.judge import Judged, judge
from tracker.fabric.outcome import Outcome, Start, TooMuchError
from tracker.fabric.reading import Reading, every, told
from tracker.fabric.stated import counting, figure_of, totals
from tracker.fabric.trees import (
    beginning,
    fresh,
    hooked,
    into_chain,
    joined_to,
    saying,
    self_contained,
    unread_in,
)
from tracker.fabric.verdicts import Verdict
from tracker.fabric.walker import walk
from tracker.notation.lexicon import Lexicon
from tracker.notation.lines import Line, split_lines
from tracker.notation.problems import Message
from tracker.notation.reader import read_round
from tracker.notation.tree import Act, Chain, Deed, Figure, Node, Stated
from tracker.pattern.causes import Cause, explain
from tracker.pattern.checked import CheckedRound
from tracker.pattern.house import House
from tracker.pattern.order import Order, ReadLine, Task

#: The most stitches that the round below is guessed to have.
MOST_GUESSED = 700


@dataclass(slots=True)
class _Memory:
    """What earlier rounds of a part show of beginning chains, by their length.

    ``counts``: whether it was found to count as a stitch. ``said``: the words say so,
    for all rounds to come.
    """

    counts: dict[int, bool] = field(default_factory=dict)
    said: dict[int, bool] = field(default_factory=dict)


class PartChecker:
    """Checks the rounds of one part, in order, in all sizes.

    Args:
        lexicon: the words for stitches.
        sizes: how many sizes.
        below: places the first round is worked into; empty where it begins from nothing.
        rows: whether the part is worked in turned rows.
        offset: added to line numbers.
        house: rules that a pattern file keeps beyond its counts; None for plain text.
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
    ) -> None:
        self.lexicon = lexicon
        self.sizes = sizes
        self.below = below
        self.rows = rows
        self.offset = offset
        self.house = house
        self.source: list[str] = []
        self._begin(_Memory())

    def _begin(self, memory: _Memory) -> None:
        self.memory = memory
        self.edges: list[Edge | None] = [
            plain_edge(figure_of(self.below, i)) if self.below else None for i in range(self.sizes)
        ]
        self.printed: Figure | None = None
        self.colour = ""
        self.pending: Chain | None = None
        self.found: list[CheckedRound] = []
        self.begun = False
        self.doubt = False
        self.guessed = False
        if self.house is not None:
            self.house.begin()

    def check(self, text: str) -> list[CheckedRound]:
        """All rounds. What a later round shows of a beginning chain holds for earlier ones."""
        self.source = text.split("\n")
        reads = [
            ReadLine(line, read_round(line.body, self.lexicon, sizes=self.sizes))
            for line in split_lines(text)
        ]
        self._all(reads)
        learnt = dict(self.memory.counts)
        if learnt:
            self._begin(_Memory(counts=learnt))
            self._all(reads)
        return self.found

    def _all(self, reads: Sequence[ReadLine]) -> None:
        for task in Order().tasks(reads):
            if isinstance(task, ReadLine):
                self._deeds(task.read.nodes)
            else:
                self._task(task)

    def _deeds(self, nodes: tuple[Node, ...]) -> None:
        """A line such as "Change to B": no round, but what follows is worked in B."""
        for node in nodes:
            if isinstance(node, Act) and node.colour:
                self.colour = node.colour
            if isinstance(node, Act) and node.deed is Deed.TURN:
                self.edges = [None if e is None else turned(e) for e in self.edges]

    def _task(self, task: Task) -> None:
        fault = self._fault(task)
        if fault is not None:
            self._unread(task, fault)
            return
        nodes = saying(task.body.read.nodes, self.memory.said)
        stated = task.stated if task.last else None
        try:
            judged = self._judge(nodes, stated)
        except TooMuchError:
            self._unread(task, Cause("asks for more stitches than any piece has", 0, 1))
            return
        if self.doubt and judged is not None and (not judged.fits or judged.agrees is False):
            why = "follows a round that does not work out, so nothing can be said of it"
            self._unread(task, Cause(why, 0, min(len(task.body.line.body), 40)))
            return
        if judged is None:
            end = min(len(task.body.line.body), 40)
            why = "nothing says how many stitches this is worked into"
            self._unread(task, Cause(why, 0, end))
            return
        self._keep(task, nodes, judged, stated)

    def _fault(self, task: Task) -> Cause | None:
        """What keeps a round from being worked out."""
        if task.fault:
            return Cause(task.fault, task.start, task.end)
        unread = unread_in(task.body.read.nodes)
        if unread:
            first = unread[0]
            return Cause(f"{_short(first.words)!r} is not understood", first.start, first.end)
        return None

    # --- judging -------------------------------------------------------------------

    def _judge(self, nodes: tuple[Node, ...], stated: Stated | None) -> Judged | None:
        """The reading that fits; None where too little is known of the round below."""
        base = self._base(nodes)
        if fresh(nodes, first=not self.begun and self.edges[0] is None):
            self.pending = None
            self.edges = [() for _ in self.edges]
            return judge(nodes, stated, self._starts(self.edges), base)
        if any(e is None for e in self.edges):
            if not self_contained(nodes):
                return self._inferred(nodes, stated, base)
            return judge(nodes, stated, self._starts([None] * self.sizes), base)
        found = judge(nodes, stated, self._starts(self.edges), base)
        return found if found.fits else self._by_printed(nodes, stated, base) or found

    def _inferred(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """Where the round below is not known: the one count of it that fits the printed one.

        Nothing is proved by it, but the rounds after this one have something to go by.
        """
        if stated is None or not stated.total:
            return None
        name = "ch" if any(into_chain(n) for n in every(nodes)) else "st"
        found: list[Edge | None] = []
        for i in range(self.sizes):
            edge = self._fitting(nodes, stated, base, i, name)
            if edge is None:
                return None
            found.append(edge)
        self.edges = found
        self.guessed = True
        return judge(nodes, stated, self._starts(found), base)

    def _fitting(
        self, nodes: tuple[Node, ...], stated: Stated, base: Reading, index: int, name: str
    ) -> Edge | None:
        """The edge of a single kind of place with which one size fits."""
        goal = figure_of(stated.total or (0,), index)
        start = self._starts([()] * self.sizes)[index]
        for count in sorted(range(1, min(2 * goal + 4, MOST_GUESSED)), key=lambda n: abs(n - goal)):
            edge = plain_edge(count, name)
            outcome = walk(nodes, replace(start, edge=edge), base)
            if outcome.short is None and not outcome.left and goal in totals(outcome).values():
                return edge
        return None

    def _by_printed(
        self, nodes: tuple[Node, ...], stated: Stated | None, base: Reading
    ) -> Judged | None:
        """After a round that differs, the next may follow the count printed there."""
        if self.printed is None:
            return None
        edges: list[Edge | None] = [
            plain_edge(figure_of(self.printed, i)) for i in range(self.sizes)
        ]
        other = judge(nodes, stated, self._starts(edges), base)
        if not other.fits:
            return None
        self.edges = edges
        return other

    def _starts(self, edges: Sequence[Edge | None]) -> list[Start]:
        return [
            Start(edge, self.lexicon.terms, self.colour, self.pending, i)
            for i, edge in enumerate(edges)
        ]

    def _base(self, nodes: tuple[Node, ...]) -> Reading:
        """The habit for this round: whether its beginning chain counts as a stitch.

        What the words or earlier rounds say comes first, then what the round is joined
        to, then the trade's habit: a chain of three or more counts
        (http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html).
        """
        nth = hooked(nodes)
        chain = beginning(nodes) or self.pending
        if nth:
            return Reading(chain_counts=nth > 3)
        if chain is None:
            return Reading()
        length = chain.count[0]
        if chain.counts is not None:
            return Reading(chain_counts=chain.counts)
        if length in self.memory.counts:
            return Reading(chain_counts=self.memory.counts[length])
        onto = joined_to(nodes)
        if onto and length > 1:
            return Reading(chain_counts=onto == "chain")
        return Reading(chain_counts=length >= 3)

    def _learn(self, nodes: tuple[Node, ...], judged: Judged) -> None:
        """Remember what this round shows of beginning chains."""
        chain = beginning(nodes) or self.pending
        if chain is None:
            return
        length = chain.count[0]
        if chain.counts is not None:
            self.memory.counts.setdefault(length, chain.counts)
            if chain.lasting:
                self.memory.said[length] = self.memory.counts[length] = chain.counts
        elif (
            judged.fits
            and judged.agrees
            and judged.reading.chain_counts != self._base(nodes).chain_counts
        ):
            self.memory.counts[length] = judged.reading.chain_counts

    # --- results -------------------------------------------------------------------

    def _keep(
        self, task: Task, nodes: tuple[Node, ...], judged: Judged, stated: Stated | None
    ) -> None:
        """Add the round, and go on from the edge it leaves."""
        messages = self._messages(task, nodes, judged, stated)
        self._learn(nodes, judged)
        verdict = _verdict(judged, task)
        if self.guessed and verdict is Verdict.AGREES:
            verdict = Verdict.UNSTATED
        if any(m.serious for m in messages):
            verdict = Verdict.DIFFERS
        outcomes = judged.outcomes
        self.found.append(
            CheckedRound(
                line=task.item.line.line + self.offset,
                label=task.label,
                text=_words(task.body),
                verdict=verdict,
                below=self._below(),
                takes=tuple(o.takes for o in outcomes),
                makes=tuple(o.makes for o in outcomes),
                made=_made(outcomes),
                stated=_printed(task, verdict),
                messages=tuple(messages),
                until=task.item.read.until,
                judged=judged,
            )
        )
        self._go_on(task, outcomes, verdict)

    def _below(self) -> Figure | None:
        if any(e is None for e in self.edges):
            return None
        return tuple(stitches(e or ()) for e in self.edges)

    def _go_on(self, task: Task, outcomes: Sequence[Outcome], verdict: Verdict) -> None:
        """What the next round starts from."""
        first = outcomes[0]
        row = self.rows or task.item.line.kind == "row"
        turn = first.turned or (row and not first.foundation)
        self.edges = [turned(o.edge) if turn else o.edge for o in outcomes]
        self.colour = first.colour
        self.pending = first.pending
        self.begun = True
        self.guessed = False
        self.doubt = verdict is Verdict.DIFFERS and (task.stated is None or not task.stated.total)
        self.printed = task.stated.total if verdict is Verdict.DIFFERS and task.stated else None

    def _messages(
        self, task: Task, nodes: tuple[Node, ...], judged: Judged, stated: Stated | None
    ) -> list[Message]:
        line = task.body.line
        base = self._base(nodes)
        if not judged.fits or judged.agrees is False:
            starts = self._starts(self.edges)
            cause = explain(nodes, judged, stated, starts, base, self._below())
            where = task.item.line if cause.printed else line
            return [self._message(where, cause)]
        found = [
            self._message(
                line, Cause(f"taken so that it fits: {sentence}", 0, _first_line(line)), False
            )
            for sentence in told(base, judged.reading)
        ]
        if self.house is not None:
            found += [
                self._message(task.item.line, cause)
                for cause in self.house.faults(task, nodes, judged)
            ]
        return found

    def _message(self, line: Line, cause: Cause, serious: bool = True) -> Message:
        """A message about words of a line's body."""
        number, column = line.where(cause.start)
        source = self.source[number - 1] if number <= len(self.source) else ""
        length = max(1, min(cause.end - cause.start, len(source) - column + 1))
        return Message(
            number + self.offset, column, length, cause.text, source, cause.hint, serious
        )

    def _unread(self, task: Task, cause: Cause) -> None:
        """A round that is not understood: the next one goes by its printed count."""
        total = None if task.stated is None else task.stated.total
        self.found.append(
            CheckedRound(
                line=task.item.line.line + self.offset,
                label=task.label,
                text=_words(task.item),
                verdict=Verdict.UNREAD,
                below=self._below(),
                takes=None,
                makes=None,
                made={},
                stated=total,
                messages=(self._message(task.body.line, cause),),
                until=task.item.read.until,
            )
        )
        self.edges = [
            None if total is None else plain_edge(figure_of(total, i)) for i in range(self.sizes)
        ]
        self.pending = None
        self.begun = True
        self.printed = None


def _verdict(judged: Judged, task: Task) -> Verdict:
    if not judged.fits or judged.agrees is False:
        return Verdict.DIFFERS
    if task.item.read.until:
        return Verdict.OPEN
    if task.stated is not None and not task.last:
        # The count is printed for the last round of the line; it may hold for this one.
        return Verdict.AGREES if counting(task.stated, judged.outcomes) else Verdict.UNSTATED
    return Verdict.AGREES if judged.agrees else Verdict.UNSTATED


def _printed(task: Task, verdict: Verdict) -> Figure | None:
    """The printed count, where it is this round's."""
    if task.stated is None or (not task.last and verdict is not Verdict.AGREES):
        return None
    return task.stated.total


def _made(outcomes: Sequence[Outcome]) -> dict[str, Figure]:
    """All sizes' counts by name."""
    counts = [made(o.edge) for o in outcomes]
    names = dict.fromkeys(name for count in counts for name in count)
    return {name: tuple(count.get(name, 0) for count in counts) for name in names}


def _words(item: ReadLine) -> str:
    return item.line.body.replace("\n", " ")


def _first_line(line: Line) -> int:
    return len(line.body.split("\n", 1)[0])


def _short(words: str) -> str:
    words = " ".join(words.split())
    return words if len(words) <= 60 else words[:57] + "…"
