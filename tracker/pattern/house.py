"""Rules a pattern file keeps beyond its counts, so that a slip of a figure is found.

They hold for pattern files, whose parts are whole; a text read from elsewhere may begin
anywhere and number as it likes.
"""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.begins import beginning
from tracker.fabric.judge import Judged
from tracker.fabric.trees import every
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.labels import rounds_told
from tracker.notation.tree import Act, Chain, Deed, Make, Node
from tracker.pattern.causes import Cause
from tracker.pattern.tasks import Task


class House:
    """Checks numbering and beginning chains from round to round of one part.

    ``sizes``: their names, for messages; none where there is one size. ``numbered``: whether
    the numbers must follow one another, as they do in a pattern.
    """

    def __init__(self, sizes: Sequence[str] = (), *, numbered: bool = True) -> None:
        self.sizes = sizes
        self._numbered = numbered
        self.begin()

    def begin(self) -> None:
        """Forget all: a part begins."""
        self._next = 1
        self._line: object = None
        self._chains: dict[str, int] = {}

    def faults(self, nodes: tuple[Node, ...], judged: Judged) -> list[Cause]:
        """What is out of order in this round, its number aside."""
        found = [
            self._height(nodes),
            self._chain(nodes),
            self._join(nodes),
            self._passed(nodes, judged),
        ]
        return [cause for cause in found if cause is not None]

    def number(self, task: Task) -> list[Cause]:
        """Rounds are numbered 1, 2, 3 … within a part. Asked once for every round."""
        line = task.item.line
        expected, again = self._next, self._line == (line.label, line.line)
        self._line = line.label, line.line
        if not line.first:
            self._next += int(task.label != "Start" and bool(line.kind or not line.label))
            return []
        self._next = line.last + 1
        if again or line.first == expected or not self._numbered:
            return []
        text = f"is numbered {line.first}, but would be number {expected} of this part"
        return [Cause(text, 0, 1)]

    def _chain(self, nodes: tuple[Node, ...]) -> Cause | None:
        """Rounds that begin with the same stitch begin with a chain of the same length."""
        chain = beginning(nodes)
        first = next((n for n in every(nodes) if isinstance(n, Make)), None)
        if chain is None or first is None:
            return None
        stitch = chain.stands_for or base_of(first.stitch.us)
        key = f"{stitch} {'counted' if chain.counts else ''}{_plus(nodes, chain, stitch) or ''}"
        length = self._chains.setdefault(key, chain.count[0])
        if length == chain.count[0]:
            return None
        text = f"begins with ch {chain.count[0]}; earlier rounds of {stitch} begin with ch {length}"
        return Cause(text, chain.start, chain.end)

    def _height(self, nodes: tuple[Node, ...]) -> Cause | None:
        """A beginning chain is no longer than its stitch is high, and not of no chains.

        Heights: http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html
        """
        chain = beginning(nodes)
        first = next((n for n in every(nodes) if isinstance(n, Make)), None)
        if chain is None or first is None:
            return None
        if chain.count[0] < 1:
            return Cause("is a chain of none", chain.start, chain.end)
        stitch = chain.stands_for or base_of(first.stitch.us)
        height = STITCHES[stitch].height if stitch in STITCHES else 0
        over = chain.count[0] - _plus(nodes, chain, stitch) - height
        if not height or over <= 0 or chain.counts is None:
            return None
        text = f"begins with ch {chain.count[0]}, longer than {stitch} is high (ch {height})"
        return Cause(text, chain.start, chain.end)

    def _passed(self, nodes: tuple[Node, ...], judged: Judged) -> Cause | None:
        """Stitches are passed over with a skip, or not at all, where others are worked."""
        over = judged.outcomes[0].passed
        if not over:
            return None
        text = f"passes over {over} stitches below without saying so"
        return Cause(text, 0, max(n.end for n in nodes))

    def _join(self, nodes: tuple[Node, ...]) -> Cause | None:
        """A round closes to what it began with: its chain, or its first stitch."""
        chain = beginning(nodes)
        first = next((n for n in every(nodes) if isinstance(n, Make)), None)
        for node in nodes:
            if isinstance(node, Act) and node.named and first is not None:
                began = first.stitch.us
                if node.named not in (began, base_of(began)) and (
                    chain is None or not chain.counts
                ):
                    text = f"closes to the first {node.named}, but began with {began}"
                    return Cause(text, node.start, node.end)
            named = isinstance(node, Act) and node.deed is Deed.JOIN and node.length
            if named and chain is not None and chain.count[0] != named:
                text = f"closes to ch {named}, but began with ch {chain.count[0]}"
                return Cause(text, node.start, node.end)
        return None


def _plus(nodes: tuple[Node, ...], chain: Chain, stitch: str) -> int:
    """The chains beyond the stitch that a beginning chain stands for: said, or as in the round."""
    over = chain.count[0] - (STITCHES[stitch].height if stitch in STITCHES else 0)
    spaces = {n.count[0] for n in every(nodes) if isinstance(n, Chain) and n is not chain}
    inferred = chain.counts is not None and chain.lasting and over in spaces
    return chain.plus or (over if inferred else 0)


def rounds_otherwise(task: Task) -> list[Cause]:
    """What is wrong where a line is numbered for other rounds than the bracket beside it says."""
    line = task.item.line
    told = rounds_told(line.label) or rounds_told(line.body)
    if not task.last or line.count < 2 or told in (0, line.count):
        return []
    return [Cause(f"is numbered for {line.count} rounds, but says that they are {told}", 0, 1)]
