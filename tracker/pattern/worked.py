"""The rounds of a part worked so far: which are asked for again, and how they go on."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import replace

from tracker.fabric.grown import grown
from tracker.fabric.trees import every, slips
from tracker.notation.lines import Line
from tracker.notation.round_text import Again, RoundText
from tracker.notation.tree import Act, At, Chain, Evenly, Figure, Make, Node, Note, Repeat
from tracker.pattern.onward import following, kinds
from tracker.pattern.tasks import ReadLine

#: The most rounds the lines of a part may stand for, all together.
MOST_ROUNDS = 20_000
#: The most rounds back that "rep last 4 rounds" asks for.
_MOST_BACK = 50


class WorkedSoFar:
    """Keeps the words of the rounds worked last, and what each left.

    ``made``: tells what the round worked last leaves, () where that is not known;
    ``read``: reads a row whose figures went on; ``sizes``: how many.
    """

    def __init__(
        self, made: Callable[[], Figure], read: Callable[[Line], ReadLine], sizes: int
    ) -> None:
        self._made = made
        self._read = read
        self._sizes = sizes
        self._worked: deque[ReadLine] = deque(maxlen=_MOST_BACK)
        self._counts: deque[int | None] = deque(maxlen=_MOST_BACK)
        self._figures: deque[Figure] = deque(maxlen=_MOST_BACK)
        self._numbered: dict[int, ReadLine] = {}
        self._rows = 0

    @property
    def begun(self) -> bool:
        """Whether a round was worked yet."""
        return bool(self._worked)

    @property
    def rows(self) -> int:
        """How many rounds made stitches."""
        return self._rows

    def begin(self, body: ReadLine) -> None:
        """A round is worked by these words; `keep_count` ends it."""
        if not self._worked:
            self.keep_count()
        self._worked.append(body)
        self._rows += any(not isinstance(n, Chain | Act | Note) for n in body.read.nodes)

    def keep_count(self) -> None:
        """Remember what the round worked last leaves."""
        self._counts.append(self.first())
        self._figures.append(self._made())

    def made(self) -> Figure:
        """What the round worked last leaves in each size; () where it is not known."""
        return self._made()

    def first(self) -> int | None:
        """What the round worked last leaves in the first size; None where it is not known."""
        made = self._made()
        return made[0] if made else None

    def note(self, line: Line, bodies: list[ReadLine]) -> None:
        """Remember whose words each numbered round is worked by."""
        for number in range(line.first, line.last + 1) if line.first else ():
            if number - line.first < len(bodies):
                self._numbered[number] = bodies[number - line.first]

    def asked_again(self, again: Again) -> tuple[list[ReadLine], str]:
        """The rounds that a line asks for again, and what keeps them from being worked; or ""."""
        known = list(self._worked)[-again.back :]
        wanted = again.back
        if again.first:
            wanted = again.last - again.first + 1
            numbers = range(again.first, again.first + min(wanted, MOST_ROUNDS))
            known = [self._numbered[n] for n in numbers if n in self._numbered]
        if len(known) < wanted or not known:
            return known, "asks for a round that is not in this text"
        if any(body.only for body in known):
            return known, "asks for a round that is not told for all sizes"
        elsewhere = again.slips and not _begins_slipping(known[0].read.nodes)
        return known, "begins elsewhere than the round it repeats" if elsewhere else ""

    def taking_turns(self, *, lenient: bool) -> int:
        """How many of the last rows take turns; 0 where they show no order to go on in."""
        rows = [worked.line.body for worked in self._worked]
        return kinds(rows, list(self._counts), lenient=lenient)

    def in_turn(self, item: ReadLine, count: int) -> list[ReadLine]:
        """The last ``count`` rows, to be worked again in turn; one that shapes goes on shaping."""
        shaped = self.shaped(item) if _scales(self._worked[-1].read.nodes) else None
        return [shaped] if shaped else list(self._worked)[-count:]

    def times_to(self, goals: Figure) -> Figure | None:
        """How many rounds that shape as the last bring each size to its count.

        Empty where whole rounds never do; None where it is not known how the last shaped.
        """
        growth, made = self._growth(1), self._made()
        if not growth or not all(growth) or not made:
            return None
        ways = [divmod(goal - n, by) for goal, n, by in zip(goals, made, growth, strict=True)]
        often = tuple(times for times, _ in ways)
        return often if not any(rest for _, rest in ways) and min(often) >= 0 else ()

    def grown(self, item: ReadLine, count: int, total: int) -> list[ReadLine]:
        """``total`` rows, each as the one ``count`` rows before it with its figures gone on.

        Fewer, where a figure would become less than 0.
        """
        rows = list(self._worked)
        if count == 1 and not self._alike(rows):
            shaped = self.shaped(item)
            if not _scales(rows[-1].read.nodes) or grown(rows[-1].read.nodes):
                return [rows[-1]] * total
            if shaped is None and self._growth(1) not in ((), (0,) * self._sizes):
                return []  # the last round alone shapes: how it goes on is not shown
            return [shaped or rows[-1]] * total
        first = len(rows)
        while len(rows) < first + total:
            last = rows[-count].line
            words = following(rows[-2 * count].line.body, last.body)
            if words is None:
                break
            rows.append(
                rows[-count] if words == last.body else self._read(replace(last, body=words))
            )
        return rows[first:]

    def shaped(self, item: ReadLine) -> ReadLine | None:
        """A round that grows or shrinks as the last two did; None where those do not agree."""
        growth = self._growth(1)
        if not growth or not all(growth) or growth != self._growth(2):
            return None
        if len({change > 0 for change in growth}) > 1:
            return None
        way, end = 1 if growth[0] > 0 else -1, len(item.line.body)
        change = Evenly(tuple(map(abs, growth)), way, 0, end)
        return replace(item, read=RoundText(item.read.text, (change,)))

    def _growth(self, back: int) -> Figure:
        """By how many stitches each size grew in the round ``back`` rounds ago; () if unknown."""
        if len(self._figures) <= back:
            return ()
        before, after = self._figures[-back - 1], self._figures[-back]
        return tuple(a - b for a, b in zip(after, before, strict=True)) if before and after else ()

    def _alike(self, rows: Sequence[ReadLine]) -> bool:
        """Whether the last row goes on from the one before it."""
        return len(rows) > 1 and following(rows[-2].line.body, rows[-1].line.body) is not None


def _begins_slipping(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins with slip stitches, to where the others go."""
    first = next((n for n in nodes if not isinstance(n, Act | Note)), None)
    return first is not None and slips(first)


def _scales(nodes: tuple[Node, ...]) -> bool:
    """Whether a round gains or loses the more stitches, the more it is worked into."""
    for node in every(nodes):
        if isinstance(node, Repeat) and node.times is None:
            return True
        if isinstance(node, Make) and node.target is not None and node.target.at is At.EACH:
            stitch = node.stitch
            if node.count[0] * stitch.makes != stitch.takes:
                return True
    return False
