"""What a part's rounds show of the chains they begin with."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from tracker.fabric.begins import (
    beginning,
    begins_gathered,
    begins_group,
    begins_low,
    hooked,
    in_place_of_first,
    overlong,
)
from tracker.fabric.judge import Judged
from tracker.fabric.reading import Reading
from tracker.fabric.trees import joined_to
from tracker.notation.tree import Chain, Node

#: Fewer rounds than this that need a ch 1 to count are taken for misprints.
MOST_MISPRINTS = 2
_UNCOUNTED, _COUNTED = Reading(), Reading(chain_counts=True)


class Beginnings:
    """Remembers beginning chains, by their length, from round to round of one part.

    Attributes:
        counts: whether a chain of that length was found to count as a stitch.
        said: whether the words say so, for all rounds to come.
    """

    def __init__(
        self, counts: Mapping[int, bool] | None = None, said: Mapping[int, bool] | None = None
    ) -> None:
        self.counts = dict(counts or {})
        self.said = dict(said or {})
        self._parts: set[int] = set()
        self._taken: Counter[tuple[int, bool]] = Counter()
        self._needed: dict[int, int] = {}
        self._plain: dict[int, int] = {}

    def doubtful(self) -> frozenset[int]:
        """Lengths that too little speaks for counting: a single chain needs two rounds.

        One round that only comes right with ch 1 as a stitch is a misprint rather; so is
        a part where more rounds agree without.
        """
        return frozenset(
            length
            for length, times in self._needed.items()
            if length == 1 and (times < MOST_MISPRINTS or self._plain.get(length, 0) >= times)
        )

    def settled(self) -> dict[int, bool]:
        """What is so of the chains of a length, where rounds that agree do not agree on it.

        A part counts such a chain in all its rounds or in none: the fewer are misprints,
        or the later where they are as many.
        """
        found: dict[int, bool] = {}
        for (length, counts), _ in self._taken.most_common():
            found.setdefault(length, counts)
        return {
            length: counts
            for length, counts in found.items()
            if (length, not counts) in self._taken
        }

    def habit(self, nodes: tuple[Node, ...], pending: Chain | None) -> Reading:
        """The habit for this round: whether its beginning chain counts as a stitch.

        ``pending`` is a chain made at the end of the round below, for this one.

        What the words or earlier rounds say comes first, then what the round is joined
        to, then the trade's habit: a chain of three or more counts
        (http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html), but not one
        that is longer than its stitch is high and makes no space of the round's besides.
        """
        nth = hooked(nodes)
        chain = beginning(nodes) or pending
        if nth:
            return _COUNTED if nth > 3 and not begins_low(nodes) else _UNCOUNTED
        if chain is None:
            return _UNCOUNTED
        length = chain.count[0]
        if chain.counts is not None:
            return _COUNTED if chain.counts else _UNCOUNTED
        if (length in self._parts and begins_group(nodes)) or begins_gathered(nodes):
            return _UNCOUNTED
        if length in self.counts:
            return _COUNTED if self.counts[length] else _UNCOUNTED
        if length > 1 and in_place_of_first(nodes):
            return _COUNTED
        onto = joined_to(nodes)
        if onto and length > 1:
            return _COUNTED if onto == "chain" else _UNCOUNTED
        return _COUNTED if length >= 3 and not overlong(nodes, length) else _UNCOUNTED

    def hear(self, nodes: tuple[Node, ...], chains: Iterable[tuple[int, bool]]) -> None:
        """Remember what words beside a round say of the chains of all rounds."""
        said = [
            (node.count[0], node.counts)
            for node in nodes
            if isinstance(node, Chain) and node.lasting and node.counts is not None
        ]
        for length, counts in (*said, *chains):
            self.said[length] = self.counts[length] = counts

    def learn(self, nodes: tuple[Node, ...], pending: Chain | None, judged: Judged) -> None:
        """Remember what this round shows of beginning chains."""
        chain = beginning(nodes) or pending
        if chain is None:
            return
        length = chain.count[0]
        if chain.part:
            self._parts.add(length)
        elif chain.counts is not None:
            self.counts.setdefault(length, chain.counts)
            self._taken[length, chain.counts] += 1
            if chain.lasting:
                self.said[length] = self.counts[length] = chain.counts
        elif judged.fits and judged.agrees:
            self._taken[length, judged.reading.chain_counts] += 1
            if judged.reading.chain_counts == (length >= 3 and not overlong(nodes, length)):
                self._plain[length] = self._plain.get(length, 0) + 1
            else:
                self._needed[length] = self._needed.get(length, 0) + 1
            if judged.reading.chain_counts != self.habit(nodes, pending).chain_counts:
                self.counts[length] = judged.reading.chain_counts
