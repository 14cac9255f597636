"""A line of the text with its tree, and a round that is to be worked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tracker.notation.even import count_alone
from tracker.notation.extent import words_of_goal
from tracker.notation.lines import Line
from tracker.notation.round_text import RoundText, Stated
from tracker.notation.tree import Evenly, Figure


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
        leaves: what is left by rounds that are not told, where the words say that; else 0.
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
    leaves: int = 0


def in_turn(reads: Sequence[ReadLine]) -> Iterator[ReadLine]:
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


def for_each(stated: Stated | None, rounds: int) -> list[Stated]:
    """The counts of a line that prints one for each of its rounds: "Rows 2 and 3: … (22, 20)"."""
    if stated is None or rounds < 2 or len(stated.parts) != rounds:
        return []
    if len({what for what, _ in stated.parts}) > 1 or any(len(n) > 1 for _, n in stated.parts):
        return []
    return [Stated(n, ((what, n),), stated.start, stated.end) for what, n in stated.parts]


def count_of(goal: int, item: ReadLine) -> Stated:
    """The count that a line says its last round comes to, as a printed one."""
    return Stated((goal,), (("", (goal,)),), 0, len(item.line.body))


def coming_to(goal: int, item: ReadLine, label: str, body: ReadLine | None = None) -> Task:
    """The last of rounds of unknown number, which leaves ``goal`` stitches.

    Its words are those of ``body``; without one, they are not in the text.
    """
    until = words_of_goal(item.line.body) or f"{goal} sts"
    open_ = replace(item, read=replace(item.read, until=until))
    leaves = goal if body is None else 0
    return Task(open_, body or open_, label, count_of(goal, item), last=True, leaves=leaves)


def worked_even(item: ReadLine, made: Figure) -> ReadLine | None:
    """A numbered line that is only a count, where the round below has ``made`` just that.

    It is worked even; None where the line says more, or the count is another.
    """
    told = count_alone(item.line.body)
    if not item.line.first or not told or told not in (made, tuple(dict.fromkeys(made))):
        return None
    end = len(item.line.body)
    stated = Stated(told, (("", told),), 0, end)
    note = ("taken to be worked even", 0, end)
    read = RoundText(item.read.text, (Evenly((0,), 0, 0, end),), stated, mended=(note,))
    return replace(item, read=read)
