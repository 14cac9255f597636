"""Coming to each round, and going over a part once more with what its later rounds told."""

from __future__ import annotations

import re
from abc import abstractmethod
from collections.abc import Callable, Iterable
from dataclasses import replace

from tracker.fabric.begins import fresh
from tracker.fabric.edge import plain_edge
from tracker.fabric.lengths import chains_of, lengths_asked, lengths_left
from tracker.fabric.stated import figure_of
from tracker.fabric.verdicts import Verdict
from tracker.notation.tokens import plain
from tracker.notation.tree import Node
from tracker.pattern.beginnings import Beginnings
from tracker.pattern.causes import Cause
from tracker.pattern.checked import CheckedRound
from tracker.pattern.findings import first_line, words_of
from tracker.pattern.hindsight import Seen, follows, spoiled, told_later
from tracker.pattern.tasks import ReadLine, Task
from tracker.pattern.telling import Telling

#: Words on another round than the one below.
_ELSEWHERE = re.compile(
    r"(?:rnds?|rounds?|rows?|r) ?#?\d|\b(?:below|behind|back of|rows? down|unworked|front of)\b"
)


class Seeing(Telling):
    """Keeps how each round was come to.

    Attributes:
        seen: each round so far, as ``found`` has them.
    """

    seen: list[Seen]

    @abstractmethod
    def _begin(self, beginnings: Beginnings) -> None:
        """Forget all that was found."""

    @abstractmethod
    def _all(self, items: Iterable[Task | ReadLine]) -> None:
        """Work all rounds."""

    def _look_back(self, items: Callable[[], Iterable[Task | ReadLine]]) -> None:
        """Check once more with what later rounds tell of a round that is not in the text."""
        habit = self.beginnings.habit
        told = told_later(self.found, self.seen, self.sizes, habit, self.effort)
        while told and self.effort.for_another():
            self.told = told
            self._begin(Beginnings())
            self._all(items())
            wrong = spoiled(self.found, told)
            if not wrong:
                return
            told = {first: one for first, one in told.items() if first not in wrong}
        if self.told:
            self.told = {}
            self._begin(Beginnings())
            self._all(items())

    def _come_to(self, task: Task) -> tuple[Node, ...]:
        """The tree of a round, with what it is worked into, if only a later round tells that."""
        told = self.told.get(len(self.found))
        if told is not None:
            self.edges = [plain_edge(n) for n in told.below]
        nodes = self._placed(task)
        begins = fresh(nodes, first=not self.begun and self.edges[0] is None)
        unknown = not begins and any(e is None for e in self.edges)
        self.seen.append(Seen(task, nodes, unknown, self.in_rows))
        return nodes

    def _no_such_space(self, task: Task) -> Cause | None:
        """A space named by a length that the round below, though its count is not known, has not.

        Only for words on the round below, and where that is understood.
        """
        if len(self.seen) < 2 or not self.seen[-1].unknown or not self.seen[-2].nodes:
            return None
        before, now = self.seen[-2:]
        if not follows(before.task, task) or _ELSEWHERE.search(plain(task.body.read.text)):
            return None
        left = lengths_left(before.nodes)
        for node, length in lengths_asked(now.nodes):
            if left and length not in left:
                made = " and ".join(f"ch-{n}" for n in sorted(chains_of(before.nodes)))
                text = f"no ch-{length} space is below; {before.task.label} makes {made} spaces"
                return Cause(text, node.start, node.end)
        return None

    def _off(self, task: Task, cause: Cause) -> None:
        """A round that surely does not fit, though no count of it is known."""
        self._tell_unread(task, cause)
        self.found[-1] = replace(self.found[-1], verdict=Verdict.DIFFERS)

    def _unread(self, task: Task, cause: Cause) -> None:
        """A round that is not understood: the next one goes by its printed count."""
        self._tell_unread(task, cause)
        total = None if task.stated is None else task.stated.total
        self.edges = [
            None if total is None else plain_edge(figure_of(total, i)) for i in range(self.sizes)
        ]
        self.pending, self.in_loop = None, False
        self.begun = True
        self.printed = None

    def _left(self, task: Task) -> None:
        """Rounds that are not told one by one: what they leave, as the words say."""
        self.seen.append(Seen(task, (), unknown=False))
        goal = (task.leaves,) * self.sizes
        why = f"how these rounds are worked is not told; taken to leave {task.leaves} stitches"
        note = self._message(task.item, Cause(why, 0, first_line(task.item.line)), serious=False)
        self.found.append(
            CheckedRound(
                line=self.source.line_of(task),
                label=task.label,
                text=words_of(task.item),
                verdict=Verdict.OPEN,
                below=self._below(),
                takes=None,
                makes=goal,
                made={"st": goal},
                stated=goal,
                messages=(note, *self._numbering(task)),
                until=task.item.read.until,
            )
        )
        self.edges = [plain_edge(task.leaves) for _ in self.edges]
        self.pending, self.printed, self.in_loop = None, None, False
        self.begun, self.doubt, self.guessed, self.supposed = True, False, False, False
