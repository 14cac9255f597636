"""The order of work: which words are worked for which round, line by line."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from tracker.fabric.begins import fresh
from tracker.fabric.trees import unread_in, works
from tracker.notation.lines import Line
from tracker.notation.round_text import Again
from tracker.notation.tree import Chain, Figure, Note
from tracker.pattern.likeness import Sections
from tracker.pattern.tasks import (
    ReadLine,
    Task,
    coming_to,
    count_of,
    for_each,
    in_turn,
    worked_even,
)
from tracker.pattern.worked import MOST_ROUNDS, WorkedSoFar

#: The most rounds that "until you have 20 sc" stands for.
MOST_UNTIL = 300


class Order:
    """Goes through the lines of a part and says what is worked, round by round.

    ``sizes``: how many; a line may be worked another number of times in each.
    """

    def __init__(
        self, made: Callable[[], Figure], read: Callable[[Line], ReadLine], sizes: int = 1
    ) -> None:
        self._sizes = sizes
        self._so_far = WorkedSoFar(made, read, sizes)
        self._sections: Sections[ReadLine] = Sections()
        self._number = 0
        self._word = "Rnd"
        self._left = MOST_ROUNDS

    def tasks(self, reads: Sequence[ReadLine]) -> Iterator[Task | ReadLine]:
        """A `Task` for each round; a line that only changes colour or turns comes as it is."""
        for item in in_turn(reads):
            if item.read.again is not None and item.read.again.part:
                yield from self._like(item, item.read.again)
            elif item.read.again is not None:
                yield from self._again(item, item.read.again)
            elif (even := worked_even(item, self._so_far.made())) is not None:
                yield from self._plain(even)
            elif item.read.way:
                yield self._shaped_to(item, item.read.goal, item.read.way)
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
        if item.read.last is not None and item.read.until and count == 1:
            # to a length, and one round behind that
            yield from self._line(replace(item, read=replace(item.read, last=None)), [item])
            item = replace(item, read=item.read.last)
            bodies = [item]
        elif item.read.last is not None:
            if count == 1:
                whole = Again(0, 0, None, 0, len(item.line.body))
                yield self._fault(item, "tells of the last of several rounds", whole)
                return
            bodies[-1] = replace(item, read=item.read.last)
        self._so_far.note(item.line, bodies)
        yield from self._line(item, bodies)

    def _again(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Rep Rnds 5 and 6 twice``: those rounds again, in turn."""
        if again.alike:
            yield from self._onward(item, again)
            return
        known, fault = self._so_far.asked_again(again)
        if fault:
            goal = item.read.goal if not known else 0
            label = self._label(item.line, 0, 1)
            yield coming_to(goal, item, label) if goal else self._fault(item, fault, again)
            return
        if item.read.goal:
            yield from self._until(item, known, item.read.goal)
            return
        often = self._times_by_size(item)
        if len(set(often)) > 1:
            yield from self._in_each_size(item, known, often)
            return
        labelled = item.line.count if item.line.count > 1 else 0
        total = self._asked_in_all(item, again, len(known))
        if labelled and again.times is not None and labelled != total:
            fault = f"is labelled for {labelled} rounds, but asks for {total}"
            yield self._fault(item, fault, again)
            return
        total = labelled or total
        if total > self._left:
            yield self._too_many(item)
        elif total > 0:
            bodies = [known[i % len(known)] for i in range(total)]
            self._so_far.note(item.line, bodies)
            yield from self._line(item, bodies)

    def _asked_in_all(self, item: ReadLine, again: Again, known: int) -> int:
        """How many rounds "Rep Rnds 2 and 3 twice" asks for, whatever its label."""
        labelled = item.line.count > 1
        if again.upto and not labelled:
            return again.upto - self._number
        if item.read.even and again.times is None and not labelled:
            return item.read.even
        return known * (1 if again.times is None else again.times[0])

    def _like(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Work as for arm``: the rounds of another part, which is in this text."""
        bodies = self._sections.like(again)
        count = item.line.count if item.line.first else 0
        if bodies is not None and count and not again.first:
            first = item.line.first
            bodies = bodies[first - 1 : first - 1 + count]
        if bodies is None and again.goal and self._sizes == 1:
            yield coming_to(again.goal, item, self._label(item.line, 0, 1))
        elif not bodies or (count and len(bodies) != count):
            yield self._fault(item, "asks for rounds of a part that is not in this text", again)
        elif len(bodies) > self._left:
            yield self._too_many(item)
        else:
            if not count:
                self._number = 0
            self._so_far.note(item.line, bodies)
            yield from self._line(item, bodies)

    def _onward(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Continue in the same manner``: rows that go on as those before them did."""
        count = self._so_far.taking_turns(lenient=again.alike == "pattern")
        labelled = item.line.count if item.line.count > 1 or item.line.first else 0
        total = labelled or item.read.even
        if again.upto and not total:
            total = again.upto - (self._number or self._so_far.rows)
        if item.read.goals:
            yield from self._to_goals(item, again)
        elif not count and item.read.goal and self._so_far.first() is None:
            yield coming_to(item.read.goal, item, self._label(item.line, 0, 1))
        elif not count:
            yield self._fault(item, "goes on from rows that show no order to go on in", again)
        elif item.read.goal and not labelled:
            yield from self._until(item, self._so_far.in_turn(item, count), item.read.goal)
        elif total > min(self._left, MOST_UNTIL):
            yield self._too_many(item)
        elif total > 0 or not again.upto:
            bodies = self._so_far.grown(item, count, total or count)
            if len(bodies) < (total or count):
                yield self._fault(item, "goes on in an order that is not shown", again)
                return
            self._so_far.note(item.line, bodies)
            yield from self._line(item, bodies)

    def _to_goals(self, item: ReadLine, again: Again) -> Iterator[Task]:
        """``Continue increasing until there are 54 (60, 66) sts``: each size to its own count."""
        shaped = self._so_far.shaped(item)
        often = self._so_far.times_to(item.read.goals) if shaped else None
        if shaped is None or often is None:
            yield self._fault(item, "goes on from rows that show no order to go on in", again)
        elif not often or max(often) > MOST_UNTIL:
            yield self._fault(item, "never comes to the counts it names", again)
        else:
            yield from self._by_size(item, [shaped], often)

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
        self._so_far.note(open_.line, list(bodies))
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
        self._so_far.note(item.line, worked)
        for index, task in enumerate(self._line(item, worked)):
            given = item.only or tuple(range(self._sizes))
            only = tuple(i for i in given if index < often[i])
            if only:
                yield replace(task, only=() if len(only) == self._sizes else only)

    def _until(self, item: ReadLine, bodies: Sequence[ReadLine], goal: int) -> Iterator[Task]:
        """The same rounds again and again, until one makes ``goal`` stitches."""
        stated = count_of(goal, item)
        before = self._so_far.first()
        if before is None and not fresh(bodies[0].read.nodes, first=not self._so_far.begun):
            yield coming_to(goal, item, self._label(item.line, 0, 1), bodies[-1])
            return
        for index in range(MOST_UNTIL):
            label = self._label(item.line, index, 2)
            turn = index % len(bodies)
            yield Task(item, bodies[turn], label, stated, last=False)
            whole = turn == len(bodies) - 1
            if self._so_far.first() in (goal, None) or (whole and self._so_far.first() == before):
                return
            before = self._so_far.first() if whole else before
        yield Task(item, item, "", None, True, f"never comes to {goal} stitches", 0, 1)

    def _shaped_to(self, item: ReadLine, goal: int, way: int) -> Task:
        """``Dec evenly until 12 sts remain``: how is left to the maker, what it leaves is not."""
        below = self._so_far.first()
        if self._sizes > 1 or (below is not None and (goal - below) * way <= 0):
            whole = Again(0, 0, None, 0, len(item.line.body))
            return self._fault(item, f"never comes to {goal} stitches", whole)
        return coming_to(goal, item, self._label(item.line, 0, 1))

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
        begins = fresh(bodies[0].read.nodes, first=not self._so_far.begun) if bodies else False
        self._sections.begin(item.line, fresh=begins)
        each = for_each(item.read.stated, len(bodies))
        for index, body in enumerate(bodies):
            self._so_far.begin(body)
            label = self._label(item.line, index, len(bodies))
            own = each[index] if each else item.read.stated
            last = bool(each) or index == len(bodies) - 1 - (item.read.last is not None)
            if body.read is item.read.last:
                own, last = body.read.stated, True
            yield Task(item, body, label, own, last, only=item.only)
            self._sections.add(self._number, body, self._so_far.first())
            self._so_far.keep_count()

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


def _counts(item: ReadLine) -> bool:
    """Whether a numbered line prints a count, and so must have made stitches."""
    return bool(item.line.first and item.read.stated is not None and item.read.stated.total)


def _only_says(item: ReadLine) -> bool:
    """Whether a line without a label only tells of the beginning chains of all rounds."""
    nodes = item.read.nodes
    told = any(isinstance(node, Chain) and node.lasting for node in nodes)
    return told and not item.line.label and all(isinstance(node, Chain | Note) for node in nodes)
