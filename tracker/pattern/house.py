"""Rules a pattern file keeps beyond its counts, so that a slip of a figure is found.

They hold for pattern files, whose parts are whole; a text read from elsewhere may begin
anywhere and number as it likes.
"""

from __future__ import annotations

from tracker.fabric.reading import every
from tracker.fabric.trees import beginning
from tracker.notation.dictionary import base_of
from tracker.notation.tree import Act, Deed, Make, Node
from tracker.pattern.causes import Cause
from tracker.pattern.order import Task


class House:
    """Checks numbering and beginning chains from round to round of one part."""

    def __init__(self) -> None:
        self.begin()

    def begin(self) -> None:
        """Forget all: a part begins."""
        self._next = 1
        self._chains: dict[str, int] = {}

    def faults(self, task: Task, nodes: tuple[Node, ...]) -> list[Cause]:
        """What is out of order in this round."""
        found = [self._number(task), self._chain(nodes), self._join(nodes)]
        return [cause for cause in found if cause is not None]

    def _number(self, task: Task) -> Cause | None:
        """Rounds are numbered 1, 2, 3 … within a part."""
        line = task.item.line
        expected = self._next
        first_of_line = not task.item.line.first or task.label.endswith(str(line.first))
        if not line.first:
            self._next += int(task.label != "Start" and not line.label)
            return None
        self._next = line.last + 1
        if line.first == expected or not first_of_line or expected == line.last + 1:
            return None
        return Cause(f"is numbered {line.first}, but would be number {expected} of this part", 0, 1)

    def _chain(self, nodes: tuple[Node, ...]) -> Cause | None:
        """Rounds that begin with the same stitch begin with a chain of the same length."""
        chain = beginning(nodes)
        first = next((n for n in every(nodes) if isinstance(n, Make)), None)
        if chain is None or first is None:
            return None
        stitch = chain.stands_for or base_of(first.stitch.us)
        key = f"{stitch} {'counted' if chain.counts else ''}{chain.plus or ''}"
        length = self._chains.setdefault(key, chain.count[0])
        if length == chain.count[0]:
            return None
        text = f"begins with ch {chain.count[0]}; earlier rounds of {stitch} begin with ch {length}"
        return Cause(text, chain.start, chain.end)

    def _join(self, nodes: tuple[Node, ...]) -> Cause | None:
        """A round that closes to "ch 3" began with a chain of three."""
        chain = beginning(nodes)
        for node in nodes:
            named = isinstance(node, Act) and node.deed is Deed.JOIN and node.length
            if named and chain is not None and chain.count[0] != named:
                text = f"closes to ch {named}, but began with ch {chain.count[0]}"
                return Cause(text, node.start, node.end)
        return None
