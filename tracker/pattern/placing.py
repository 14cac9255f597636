"""What a round is worked into: the round below, an earlier one, the ends of rows."""

from __future__ import annotations

import re

from tracker.fabric.begins import resumes, turns_first
from tracker.fabric.edge import Edge, plain_edge, stitches, turned
from tracker.fabric.retold import behind, from_loop, raised, saying, with_stitches
from tracker.fabric.tiles import into_tiles, of_tiles
from tracker.fabric.trees import into_row_ends, rounds_below
from tracker.notation.round_text import RoundText
from tracker.notation.tokens import plain
from tracker.notation.tree import Figure, Group, Loops, Make, Node, Repeat
from tracker.pattern.judging import Judging
from tracker.pattern.tasks import Task
from tracker.pattern.underside import along_it, begins_under

#: "Working behind the petals", "in back of flower", "fold petals forward".
_BEHIND = re.compile(
    r"\b(?:behind|back of) (?:the |each )?(?:[a-z]+ ){0,2}?(?:petals?|flower|rose|work)\b"
    r"|\bpetals? (?:forward|towards?|down|to(?:wards?)? the front|out of the way)\b"
)
#: Words on stitches that an earlier row did not work.
_LEFT = re.compile(
    r"\b(?:unworked|unused|rem(?:aining)?|left|free|skipped|cent(?:er|re)|middle"
    r"|(?:of|on) (?:row|rnd|round) ?\d+|(?:other|second|2nd|opposite) (?:side|shoulder|strap))\b"
)


class Placing(Judging):
    """Finds the edge of each round of a part.

    Attributes:
        rows: whether the part is worked in turned rows.
        number: of the round worked last; 0 where it has none.
        kept: what each numbered round left.
        rows_made: in each size the rows worked one after another up to here, whose ends a
            round may go into; None where that is not known.
        in_loop: whether the round below ends in the middle of its last loop.
        under: the free chains under the foundation row; None where they are not known.
    """

    rows: bool
    number: int
    kept: dict[int, list[Edge | None]]
    rows_made: list[int | None]
    in_loop: bool
    under: list[Edge | None]

    def _placed(self, task: Task) -> tuple[Node, ...]:
        """The tree of a round, and ``edges`` as what it is worked into."""
        self.in_rows = self._rowed(task)
        self.resuming = bool(self.rest) and _takes_up(task.body.read)
        nodes = saying(task.body.read.nodes, self.beginnings.said)
        if self.tiled and of_tiles(nodes):
            nodes = into_tiles(nodes)
        nodes = self._at_round(raised(self._behind(task, nodes), self.number))
        if self.begun and not self._on_foundation():
            nodes = with_stitches(nodes)
        if self.in_loop:
            nodes = from_loop(nodes)
        if turns_first(nodes) and not self._rowed(task):
            self.edges = [None if e is None else turned(e) for e in self.edges]
        if self.begun and begins_under(nodes):
            self.edges, nodes = list(self.under), along_it(nodes)
            self.doubt, self.printed = False, None
        if into_row_ends(nodes) and self.begun:
            self.edges = [plain_edge(n) if n else None for n in self.rows_made]
        return nodes

    def _on_foundation(self) -> bool:
        """Whether only chains are below."""
        edge = self.edges[0] or ()
        return bool(edge) and all(spot.name == "ch" for spot in edge)

    def _behind(self, task: Task, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
        """Go into what petals stand on or between, where the words ask for it."""
        if not _BEHIND.search(plain(task.body.read.text)):
            return nodes
        spots = [spot for edge in self.edges for spot in edge or ()]
        lone = any(not s.group and not s.chains and s.name not in ("st", "tch") for s in spots)
        digits = task.label.rpartition(" ")[2]
        number = int(digits) if digits.isdigit() else self.number + 1
        return behind(nodes, 0 if lone else max(1, number - 2))

    def _at_round(self, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
        """Go down to an earlier round where all the words work into that: layered petals."""
        below = {n.of for n in nodes if isinstance(n, Loops) and n.of} or rounds_below(nodes)
        number = below.pop() if len(below) == 1 else 0
        if number not in self.kept:
            return nodes
        self.edges = list(self.kept[number])
        self.doubt = False
        return raised(nodes, number)

    def _count_row(self, task: Task) -> None:
        """Go on counting the rows, whose ends a later round may be worked into."""
        read = task.item.read
        if not (self._rowed(task) or task.body.line.kind == "row"):
            self.rows_made = [0] * self.sizes
        elif read.until or read.uneven:
            self.rows_made = [None] * self.sizes
        else:
            self.rows_made = [None if n is None else n + 1 for n in self.rows_made]

    def _rowed(self, task: Task) -> bool:
        """Whether a line is a row, turned at its end though nothing may say so."""
        return self.rows or task.item.line.kind == "row"

    def _below(self) -> Figure | None:
        """Stitches the round below leaves; None where nothing is below or known."""
        if not all(self.edges):
            return None
        return tuple(stitches(e or ()) for e in self.edges)


def _takes_up(read: RoundText) -> bool:
    """Whether the words before the first stitch speak of stitches left unworked."""
    made = next((n for n in read.nodes if isinstance(n, Make | Group | Repeat)), None)
    front = plain(read.text[: made.start]) if made is not None else ""
    return bool(_LEFT.search(front)) and resumes(read.nodes)
