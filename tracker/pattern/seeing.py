"""Coming to each round, and going over a part once more with what its later rounds told."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Iterable

from tracker.fabric.begins import fresh
from tracker.fabric.edge import plain_edge
from tracker.fabric.verdicts import Verdict
from tracker.notation.tree import Node
from tracker.pattern.beginnings import Beginnings
from tracker.pattern.causes import Cause
from tracker.pattern.checked import CheckedRound
from tracker.pattern.findings import first_line, words_of
from tracker.pattern.hindsight import Seen, spoiled, told_later
from tracker.pattern.tasks import ReadLine, Task
from tracker.pattern.telling import Telling


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
        self.pending, self.printed = None, None
        self.begun, self.doubt, self.guessed, self.supposed = True, False, False, False
