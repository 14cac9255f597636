"""Coming to each round, and going over a part once more with what its later rounds told."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Iterable

from tracker.fabric.begins import fresh
from tracker.fabric.edge import plain_edge
from tracker.notation.tree import Node
from tracker.pattern.beginnings import Beginnings
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
