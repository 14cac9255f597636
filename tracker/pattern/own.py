"""A maker's own version of a part: the pattern's rounds with some changed, added or left out.

The rounds are worked out anew from the first that is changed, in the one size that is
worked. Those before it keep the steps that they had, so that no place in them moves.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from tracker.fabric.trees import unread_in, works
from tracker.notation.lexicon import Lexicon
from tracker.notation.lines import Line, split_lines
from tracker.notation.one_size import figure_in, in_one_size, stated_in
from tracker.notation.reader import read_round
from tracker.notation.round_text import RoundText, Stated
from tracker.pattern.changes import Change, in_order, words_by_round
from tracker.pattern.check import lexicon_of, part_checker
from tracker.pattern.checked import CheckedRound
from tracker.pattern.house import House
from tracker.pattern.model import Part, Pattern, Worked
from tracker.pattern.part_checker import PartChecker
from tracker.pattern.plan import Plan, PlannedPart, PlannedRound, for_size, planned_round
from tracker.pattern.tasks import ReadLine, Task

_OWN_LABEL = re.compile(r"\s*(?:rounds?|rnds?|rows?|r)\s*\d+[a-z]{1,2}\s*[:.)-]\s*", re.IGNORECASE)
_AT_END = re.compile(r"[(\[{<]\s*(\d{1,6})\s*(?:sts?|stitches)?\s*[)\]}>][\s.]*$")

ONE_AT_A_TIME = "stands for more than one round; type one at a time"

Items = Sequence[Task | ReadLine]


@dataclass(frozen=True, slots=True)
class OwnVersion:
    """A part in the maker's version.

    Attributes:
        part: ready to be worked.
        checked: what the check says of each of its rounds, by number (see `Change.round`).
    """

    part: PlannedPart
    checked: Mapping[int, CheckedRound]


def own_plan(plan: Plan, changes: Mapping[tuple[int, int], Sequence[Change]]) -> Plan:
    """The plan with the maker's own versions of its parts.

    ``changes`` are those of each version, by part and the copy from which on it is worked
    (from 0). Where nothing is left of a part, or it is making up, it stays as it is.
    """
    parts = []
    for index, planned in enumerate(plan.parts):
        copies = sorted(copy for part, copy in changes if part == index)
        own = (
            ()
            if planned.making_up
            else tuple(
                (copy, own_version(plan, index, changes[index, copy]).part) for copy in copies
            )
        )
        parts.append(planned._replace(own=own))
    return plan._replace(parts=tuple(parts))


def own_version(
    plan: Plan, part: int, changes: Sequence[Change], bench: Bench | None = None
) -> OwnVersion:
    """A part (by its number in the plan) with all these changes.

    ``bench``: one of this part, where several versions of it are tried.
    """
    planned = plan.parts[part]
    words = words_by_round(changes)
    order = in_order(len(planned.rounds), changes)
    worked = [number for number in order if words.get(number) != ""]
    if not worked:
        order = worked = list(range(len(planned.rounds)))
        words = {}
    bench = bench or Bench(plan, planned.part)
    checked = bench.work(planned.rounds, order, words)
    first = next((at for at, number in enumerate(order) if number in words), len(order))
    settled = set(order[:first])
    rounds = [
        planned.rounds[number] if number in settled else bench.planned(checked[number], number)
        for number in worked
    ]
    return OwnVersion(
        PlannedPart(planned.part, tuple(rounds), tuple(worked), _gone(order, worked)), checked
    )


def _gone(order: Sequence[int], worked: Sequence[int]) -> tuple[tuple[int, int], ...]:
    """Each number that is left out, and how many are worked before it."""
    kept = set(worked)
    before, found = 0, []
    for number in order:
        if number in kept:
            before += 1
        else:
            found.append((number, before))
    return tuple(found)


class Bench:
    """Works the rounds of one part in one size, in any version of the maker's.

    ``sizes``: for how many sizes they are printed, 0 for a piece in one.
    """

    def __init__(self, plan: Plan, part: Part) -> None:
        self._pattern: Pattern = plan.pattern
        self._part = part
        self.sizes = len(plan.pattern.sizes)
        self._index = plan.pattern.sizes.index(plan.size) if plan.size else 0
        self._lexicon: Lexicon = lexicon_of(plan.pattern)
        self._groups: dict[int, Items] = {}
        self._rest: Items = ()
        self._own: dict[int, str] = {}

    def work(
        self, printed: Sequence[PlannedRound], order: Sequence[int], words: Mapping[int, str]
    ) -> dict[int, CheckedRound]:
        """What the check says of each round that is worked, by number."""
        self._own = {}
        worked = [number for number in order if words.get(number) != ""]
        items = [*self._items(printed, order, words)]
        checker = PartChecker(
            self._lexicon,
            1,
            figure_in(self._part.below, self._index),
            rows=self._part.worked is Worked.ROWS,
            offset=self._part.rounds_line - 1,
            house=House(numbered=False),
        )
        return dict(zip(worked, checker.work(self._part.rounds, items), strict=True))

    def planned(self, checked: CheckedRound, number: int) -> PlannedRound:
        """The round ready to be worked."""
        until = for_size(checked.until, self._index, self.sizes)
        found = planned_round(checked, 0, 1)
        return found._replace(until=until, own=self._own.get(number, ""))

    def _items(
        self, printed: Sequence[PlannedRound], order: Sequence[int], words: Mapping[int, str]
    ) -> Iterator[Task | ReadLine]:
        """The rounds as they are worked; lines that only change colour stay where they are."""
        self._read_printed()
        label, added = "", 0
        for number in order:
            before = self._groups.get(number)
            if before is None:
                added += 1
                self._own[number] = "added"
                named = _added(label or self._start(printed), added)
            else:
                *deeds, task = before
                yield from deeds
                named, added = printed[number].label, 0
                label = named
            if number in words:
                self._own.setdefault(number, "changed")
                if words[number]:
                    yield self._typed(words[number], named)
            elif before is not None:
                yield task
        yield from self._rest

    def _start(self, printed: Sequence[PlannedRound]) -> str:
        rows = self._part.worked is Worked.ROWS or printed[0].label.startswith("Row")
        return "Row 0" if rows else "Rnd 0"

    def _read_printed(self) -> None:
        """The printed rounds by number, each with the lines before it; and what follows all."""
        if self._groups:
            return
        checker = part_checker(self._pattern, self._part)
        checker.check(self._part.rounds)
        open_: list[Task | ReadLine] = []
        for item in checker.items:
            if isinstance(item, Task) and item.only and self._index not in item.only:
                continue
            open_.append(self._narrow_task(item) if isinstance(item, Task) else item)
            if isinstance(item, Task):
                self._groups[len(self._groups)] = tuple(open_)
                open_ = []
        self._rest = open_

    def _narrow_task(self, task: Task) -> Task:
        return replace(
            task,
            item=self._narrow(task.item),
            body=self._narrow(task.body),
            stated=stated_in(task.stated, self._index),
            only=(),
        )

    def _narrow(self, item: ReadLine) -> ReadLine:
        return replace(item, read=in_one_size(item.read, self._index))

    def _typed(self, words: str, label: str) -> Task:
        line = typed_line(words)
        read = read_round(line.body, self._lexicon, sizes=max(1, self.sizes))
        item = self._narrow(ReadLine(line, read, words))
        fault = _fault(line, read)
        stated = item.read.stated or (_count(line.body) if fault else None)
        return Task(item, item, label, stated, True, fault, 0, len(line.body))

    def read(self, words: str) -> RoundText:
        """A line as typed."""
        return read_round(typed_line(words).body, self._lexicon, sizes=max(1, self.sizes))

    def deeds(self, number: int) -> tuple[str, ...]:
        """The lines before a printed round that are no rounds: "Change to B."."""
        self._read_printed()
        before = self._groups.get(number, ())[:-1]
        return tuple(item.line.body for item in before if isinstance(item, ReadLine))

    def for_size(self, words: str) -> str:
        """Printed words with the figures of the size that is worked."""
        return for_size(words, self._index, self.sizes)


def typed_line(words: str) -> Line:
    """The words of one round as typed, with or without a label ("Rnd 9:", "Rnd 9a:")."""
    own = _OWN_LABEL.match(words)
    if own is not None:
        words = " " * own.end() + words[own.end() :]
    lines = list(split_lines(words))
    if len(lines) == 1:
        return lines[0]
    return Line("", "", 0, 0, 1, words, ((0, 1, 1),))


def _fault(line: Line, read: RoundText) -> str:
    """Why a line cannot be worked stitch by stitch; "" where nothing is known against it."""
    if line.count > 1 or read.even > 1 or read.goal > 0 or read.again is not None:
        return ONE_AT_A_TIME
    return "" if works(read.nodes) or unread_in(read.nodes) else "asks for no stitch that is known"


def _count(body: str) -> Stated | None:
    """The count at the end of words that were not understood."""
    match = _AT_END.search(body)
    if match is None:
        return None
    total = (int(match[1]),)
    return Stated(total, (("", total),), match.start(), match.end())


def _added(label: str, nth: int) -> str:
    """The label of the ``nth`` round added behind one: "Rnd 8a", "Foundation a"."""
    letters = ""
    while nth:
        nth, last = divmod(nth - 1, 26)
        letters = chr(ord("a") + last) + letters
    return f"{label}{letters}" if label[-1:].isdigit() else f"{label} {letters}"
