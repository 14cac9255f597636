"""The order of work: which words are worked for which round, line by line."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from tracker.fabric.reading import every
from tracker.fabric.trees import fresh, slips, unread_in, works
from tracker.notation.lines import Line
from tracker.notation.tree import (
    Act,
    Again,
    At,
    Chain,
    Evenly,
    Figure,
    Make,
    Node,
    Note,
    Repeat,
    RoundText,
    Stated,
)
from tracker.pattern.likeness import Sections
from tracker.pattern.onward import following, kinds

#: The most rounds the lines of a part may stand for, all together.
MOST_ROUNDS = 20_000
#: The most rounds back that "rep last 4 rounds" asks for.
_MOST_BACK = 50
#: The most rounds that "until you have 20 sc" stands for.
MOST_UNTIL = 300


@dataclass(frozen=True, slots=True)
class ReadLine:
    """One line of the text with its tree.

    ``typed``: where it is not of the text but was typed by the maker, the whole of it.
    ``only``: the sizes (from 0) that it is for; empty where it is for all.
    """

    line: Line
    read: RoundText
    typed: str = ""
    only: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Task:
    """One round to be worked.

    Attributes:
        item: the line of the text that asks for it.
        body: the line whose words are worked (another one for "Rep Rnd 3").
        label: as a maker says it ("Rnd 7").
        stated: the printed count of the line; ``last`` tells whether this is its last
            round, the one the count surely belongs to.
        fault: what keeps it from being worked out, with the offsets of the words; or "".
        only: the sizes (from 0) that work it; empty where all do.
    """

    item: ReadLine
    body: ReadLine
    label: str
    stated: Stated | None
    last: bool
    fault: str = ""
    start: int = 0
    end: int = 0
    only: tuple[int, ...] = ()


def _begins_slipping(nodes: tuple[Node, ...]) -> bool:
    """Whether a round begins with slip stitches, to where the others go."""
    first = next((n for n in nodes if not isinstance(n, Act | Note)), None)
    return first is not None and slips(first)


class Order:
    """Goes through the lines of a part and says what is worked, round by round.

    ``sizes``: how many; a line may be worked another number of times in each.
    """

    def __init__(
        self, made: Callable[[], Figure], read: Callable[[Line], ReadLine], sizes: int = 1
    ) -> None:
        self._made = made
        self._read = read
        self._sizes = sizes
        self._worked: deque[ReadLine] = deque(maxlen=_MOST_BACK)
        self._counts: deque[int | None] = deque(maxlen=_MOST_BACK)
        self._figures: deque[Figure] = deque(maxlen=_MOST_BACK)
        self._rows = 0
        self._numbered: dict[int, ReadLine] = {}
        self._sections: Sections[ReadLine] = Sections()
        self._number = 0
        self._word = "Rnd"
        self._left = MOST_ROUNDS

    def tasks(self, reads: Sequence[ReadLine]) -> Iterator[Task | ReadLine]:
        """A `Task` for each round; a line that only changes colour or turns comes as it is."""
        for item in _in_turn(reads):
            if item.read.again is not None and item.read.again.part:
                yield from self._like(item, item.read.again)
            elif item.read.again is not None:
                yield from self._again(item, item.read.again)
            elif _only_says(item):
                yield item
            elif not works(item.read.nodes) and not unread_in(item.read.nodes):
                self._sections.heading(item.line)
                yield self._wordless(item) if _counts(item) else item
            else:
                yield from self._plain(item)

    def _plain(self, item: ReadLine) -> Iterator[Task]:
        if item.read.goal:
            yield from self._until(item, [item], item.read.goal)
            return
        often = self._times_by_size(item)
        if len(set(often)) > 1:
            yield from self._in_each_size(item, [item], often)
            return
        count = item.line.count if item.line.count > 1 else item.read.even or 1
        if count > self._left:
            yield self._too_many(item)
            return
        bodies = [item] * count
        if item.read.last is not None:
            if count == 1:
                whole = Again(0, 0, None, 0, len(item.line.body))
                yield self._fault(item, "tells of the last of several rounds", whole)
                return
            bodies[-1] = replace(item, read=item.read.last)
        self._note(item.line, bodies)
        yield from self._line(item, bodies)

    def _note(self, line: Line, bodies: list[ReadLine]) -> None:
        """Remember whose words each numbered round is worked by."""
        for number in range(line.first, line.last + 1) if line.first else ():
            if number - line.first < len(bodies):
                self._numbered[number] = bodies[number - line.first]

    def _again(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Rep Rnds 5 and 6 twice``: those rounds again, in turn."""
        if again.alike:
            yield from self._onward(item, again)
            return
        known, fault = self._asked_again(again)
        if fault:
            yield self._fault(item, fault, again)
            return
        if item.read.goal:
            yield from self._until(item, known, item.read.goal)
            return
        often = self._times_by_size(item)
        if len(set(often)) > 1:
            yield from self._in_each_size(item, known, often)
            return
        times = 1 if again.times is None else again.times[0]
        total = times * len(known)
        labelled = item.line.count if item.line.count > 1 else 0
        if labelled and again.times is not None and labelled != total:
            fault = f"is labelled for {labelled} rounds, but asks for {total}"
            yield self._fault(item, fault, again)
            return
        total = labelled or total
        if item.read.even and again.times is None and not labelled:
            total = item.read.even
        if again.upto and not labelled:
            total = again.upto - self._number
        if total <= 0:
            return
        if total > self._left:
            yield self._too_many(item)
            return
        bodies = [known[i % len(known)] for i in range(total)]
        self._note(item.line, bodies)
        yield from self._line(item, bodies)

    def _like(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Work as for arm``: the rounds of another part, which is in this text."""
        bodies = self._sections.like(again)
        count = item.line.count if item.line.first else 0
        if bodies is not None and count and not again.first:
            first = item.line.first
            bodies = bodies[first - 1 : first - 1 + count]
        if not bodies or (count and len(bodies) != count):
            yield self._fault(item, "asks for rounds of a part that is not in this text", again)
        elif len(bodies) > self._left:
            yield self._too_many(item)
        else:
            if not count:
                self._number = 0
            self._note(item.line, bodies)
            yield from self._line(item, bodies)

    def _asked_again(self, again: Again) -> tuple[list[ReadLine], str]:
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

    def _onward(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Continue in the same manner``: rows that go on as those before them did."""
        rows = [worked.line.body for worked in self._worked]
        count = kinds(rows, list(self._counts), lenient=again.alike == "pattern")
        labelled = item.line.count if item.line.count > 1 or item.line.first else 0
        total = labelled or item.read.even
        if again.upto and not total:
            total = again.upto - (self._number or self._rows)
        if item.read.goals:
            yield from self._to_goals(item, again)
        elif not count:
            yield self._fault(item, "goes on from rows that show no order to go on in", again)
        elif item.read.goal and not labelled:
            shaped = self._shaped(item) if _scales(self._worked[-1].read.nodes) else None
            bodies = [shaped] if shaped else list(self._worked)[-count:]
            yield from self._until(item, bodies, item.read.goal)
        elif total > min(self._left, MOST_UNTIL):
            yield self._too_many(item)
        elif total > 0 or not again.upto:
            bodies = self._grown(item, count, total or count)
            if len(bodies) < (total or count):
                yield self._fault(item, "goes on in an order that is not shown", again)
                return
            self._note(item.line, bodies)
            yield from self._line(item, bodies)

    def _to_goals(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Continue increasing until there are 54 (60, 66) sts``: each size to its own count."""
        shaped, growth, goals = self._shaped(item), self._growth(1), item.read.goals
        made = self._made()
        if shaped is None or not made:
            yield self._fault(item, "goes on from rows that show no order to go on in", again)
            return
        often = tuple((goal - n) // by for goal, n, by in zip(goals, made, growth, strict=True))
        even = all((goal - n) % by == 0 for goal, n, by in zip(goals, made, growth, strict=True))
        if not even or min(often) < 0 or max(often) > MOST_UNTIL:
            yield self._fault(item, "never comes to the counts it names", again)
            return
        yield from self._by_size(item, [shaped], often)

    def _grown(self, item: ReadLine, count: int, total: int) -> list[ReadLine]:
        """``total`` rows, each as the one ``count`` rows before it with its figures gone on.

        Fewer, where a figure would become less than 0.
        """
        rows = list(self._worked)
        if count == 1 and not self._alike(rows):
            shaped = self._shaped(item)
            if not _scales(rows[-1].read.nodes):
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

    def _shaped(self, item: ReadLine) -> ReadLine | None:
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

    def _in_each_size(
        self, item: ReadLine, bodies: Sequence[ReadLine], often: Figure
    ) -> Iterator[Task]:
        """A line whose number of rounds differs by size."""
        if len(often) == self._sizes:
            yield from self._by_size(item, bodies, often)
            return
        # Of how many sizes is not known: it goes on until the round of the size that is worked.
        others = ", ".join(map(str, often[1:]))
        until = item.read.until or f"{often[0]} ({others}) rounds"
        read = replace(item.read, until=until, uneven=True)
        open_ = replace(item, read=read, line=replace(item.line, count=1))
        self._note(open_.line, list(bodies))
        yield from self._line(open_, list(bodies))

    def _times_by_size(self, item: ReadLine) -> Figure:
        """How many rounds of a line each size works, where that differs; else ()."""
        again = item.read.again
        if item.line.often:
            return item.line.often
        if again is not None and len(again.times or ()) > 1:
            back = again.last - again.first + 1 if again.first else again.back
            return tuple(back * times for times in again.times or ())
        return item.read.often

    def _by_size(self, item: ReadLine, bodies: Sequence[ReadLine], often: Figure) -> Iterator[Task]:
        """A line that each size works another number of times: the last rounds are for some."""
        total = max(often)
        if total > self._left:
            yield self._too_many(item)
            return
        worked = [bodies[i % len(bodies)] for i in range(total)]
        self._note(item.line, worked)
        for index, task in enumerate(self._line(item, worked)):
            given = item.only or tuple(range(self._sizes))
            only = tuple(i for i in given if index < often[i])
            if only:
                yield replace(task, only=() if len(only) == self._sizes else only)

    def _until(self, item: ReadLine, bodies: Sequence[ReadLine], goal: int) -> Iterator[Task]:
        """The same rounds again and again, until one makes ``goal`` stitches."""
        stated = Stated((goal,), (("", (goal,)),), 0, len(item.line.body))
        before = self._first()
        for index in range(MOST_UNTIL):
            label = self._label(item.line, index, 2)
            turn = index % len(bodies)
            yield Task(item, bodies[turn], label, stated, last=False)
            whole = turn == len(bodies) - 1
            if self._first() in (goal, None) or (whole and self._first() == before):
                return
            before = self._first() if whole else before
        yield Task(item, item, "", None, True, f"never comes to {goal} stitches", 0, 1)

    def _too_many(self, item: ReadLine) -> Task:
        whole = Again(0, 0, None, 0, len(item.line.body))
        return self._fault(item, f"makes more than {MOST_ROUNDS} rounds of this part", whole)

    def _wordless(self, item: ReadLine) -> Task:
        whole = Again(0, 0, None, 0, len(item.line.body))
        return self._fault(item, "does not say what is worked in this round", whole)

    def _fault(self, item: ReadLine, fault: str, again: Again) -> Task:
        label = self._label(item.line, 0, 1)
        return Task(item, item, label, item.read.stated, True, fault, again.start, again.end)

    def _line(self, item: ReadLine, bodies: list[ReadLine]) -> Iterator[Task]:
        self._left -= len(bodies)
        begins = fresh(bodies[0].read.nodes, first=not self._worked) if bodies else False
        self._sections.begin(item.line, fresh=begins)
        each = _for_each(item.read.stated, len(bodies))
        for index, body in enumerate(bodies):
            if not self._worked:
                self._keep_count()
            label = self._label(item.line, index, len(bodies))
            self._worked.append(body)
            self._rows += any(not isinstance(n, Chain | Act | Note) for n in body.read.nodes)
            own = each[index] if each else item.read.stated
            last = bool(each) or index == len(bodies) - 1 - (item.read.last is not None)
            if body.read is item.read.last:
                own, last = body.read.stated, True
            yield Task(item, body, label, own, last, only=item.only)
            self._sections.add(self._number, body, self._first())
            self._keep_count()

    def _keep_count(self) -> None:
        """Remember what the round worked last leaves."""
        made = self._made()
        self._counts.append(made[0] if made else None)
        self._figures.append(made)

    def _first(self) -> int | None:
        """What the round worked last leaves in the first size; None where it is not known."""
        made = self._made()
        return made[0] if made else None

    def _label(self, line: Line, index: int, of: int) -> str:
        """Its own label; "Rnds 4-6" is "Rnd 4" …; without one the numbers go on."""
        if line.kind and line.label:
            self._word = "Row" if line.kind == "row" else "Rnd"
        if line.first:
            self._number = line.first + index
            bare = line.kind == "" and of == 1
            return line.label if of == 1 and not bare else f"{self._word} {self._number}"
        if line.label:
            self._number += int(bool(line.kind))
            return line.label
        if not self._number:
            return "Start"
        self._number += 1
        return f"{self._word} {self._number}"


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


def _counts(item: ReadLine) -> bool:
    """Whether a numbered line prints a count, and so must have made stitches."""
    return bool(item.line.first and item.read.stated is not None and item.read.stated.total)


def _for_each(stated: Stated | None, rounds: int) -> list[Stated]:
    """The counts of a line that prints one for each of its rounds: "Rows 2 and 3: … (22, 20)"."""
    if stated is None or rounds < 2 or len(stated.parts) != rounds:
        return []
    if len({what for what, _ in stated.parts}) > 1 or any(len(n) > 1 for _, n in stated.parts):
        return []
    return [Stated(n, ((what, n),), stated.start, stated.end) for what, n in stated.parts]


def _in_turn(reads: Sequence[ReadLine]) -> Iterator[ReadLine]:
    """The lines, with "Rnds 5, 7" taken apart so that Rnd 6 comes between."""
    waiting: dict[int, ReadLine] = {}
    for item in reads:
        if not item.line.others:
            yield item
        else:
            yield _numbered(item, item.line.first)
            waiting |= {number: _numbered(item, number) for number in item.line.others}
        number = item.line.last
        while number + 1 in waiting:
            number += 1
            yield waiting.pop(number)
    yield from waiting.values()


def _numbered(item: ReadLine, number: int) -> ReadLine:
    """One round of a line that is for several, which do not follow one another."""
    label = f"{'Row' if item.line.kind == 'row' else 'Rnd'} {number}"
    return replace(item, line=replace(item.line, label=label, first=number, last=number, others=()))


def _only_says(item: ReadLine) -> bool:
    """Whether a line without a label only tells of the beginning chains of all rounds."""
    nodes = item.read.nodes
    told = any(isinstance(node, Chain) and node.lasting for node in nodes)
    return told and not item.line.label and all(isinstance(node, Chain | Note) for node in nodes)
