"""What a walk starts from and what it finds."""

from __future__ import annotations

from dataclasses import dataclass, field

from tracker.fabric.edge import Edge, stitches
from tracker.fabric.effort import Effort
from tracker.fabric.places import Hold
from tracker.fabric.steps import Pass, Run
from tracker.notation.tree import Chain, Node

#: More steps or passes in one round than any piece has: the walk stops there.
MOST_STEPS = 1_000_000
MOST_RUNS = 400_000


class ShortError(Exception):
    """An instruction needs more places than the round below has left."""

    def __init__(self, node: Node, kind: str, wanted: int, had: int) -> None:
        super().__init__(kind)
        self.node, self.kind, self.wanted, self.had = node, kind, wanted, had


@dataclass(frozen=True, slots=True)
class Start:
    """What a round starts from.

    Attributes:
        edge: the edge below; None where nothing is known of it, () where there is none.
        terms: "US" or "UK", for the words of steps.
        colour: letter of the yarn in hand.
        pending: a chain made at the end of the round below, for this one.
        index: which size.
        assumed: where nothing is known of the edge below, the repeats or places that "around"
            is taken for.
        effort: what may still be spent; None where nothing bounds it.
    """

    edge: Edge | None
    terms: str = "US"
    colour: str = ""
    pending: Chain | None = None
    index: int = 0
    assumed: int = 0
    effort: Effort | None = field(default=None, compare=False)


@dataclass(slots=True)
class Outcome:
    """What the walk found.

    Attributes:
        edge: what the round leaves.
        takes: places of the round below that were used.
        left: places of the kinds worked into that are still there.
        passed: stitches passed over without a word on the way to a chain space, in a round
            that works into stitches too.
        short: the instruction that ran out of places, if one did.
        runs, passes, times, spans: as in `steps.Walk`.
        holds: for each run, what it holds on to.
        under: places of the edge below, as numbered by `places`.
        pending: a chain at its end that belongs to the next round.
        foundation: it is only a chain to work into.
        rest: what lies behind its last stitch on the edge below.
        counted: US names of special stitches and groups made, with their number.
    """

    edge: Edge = ()
    takes: int = 0
    left: int = 0
    passed: int = 0
    short: ShortError | None = None
    runs: list[Run] = field(default_factory=list)
    holds: list[Hold] = field(default_factory=list)
    under: int = 0
    passes: list[Pass] = field(default_factory=list)
    times: list[int] = field(default_factory=list)
    spans: list[tuple[int, int]] = field(default_factory=list)
    colour: str = ""
    pending: Chain | None = None
    turned: bool = False
    foundation: bool = False
    rest: Edge = ()
    counted: dict[str, int] = field(default_factory=dict)

    @property
    def makes(self) -> int:
        """Stitches the round leaves (or chains, for a foundation)."""
        return stitches(self.edge)
