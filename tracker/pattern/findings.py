"""What is told of one round that was worked out."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cached_property

from tracker.fabric.edge import Edge, made, stitches
from tracker.fabric.judge import Judged
from tracker.fabric.outcome import Outcome
from tracker.fabric.stated import BUNCHES, counting
from tracker.fabric.verdicts import Verdict
from tracker.notation.lines import Line
from tracker.notation.problems import Message
from tracker.notation.tokens import plain
from tracker.notation.tree import Figure
from tracker.pattern.causes import Cause, figures
from tracker.pattern.checked import CheckedRound
from tracker.pattern.tasks import ReadLine, Task

_WORD = re.compile(r"[a-z]+(?:\d+[a-z]+)?")
#: "increasing 8 dc each round", "inc 1 st at each end every row": the words up to the sentence's
#: end, though what was not understood of them may end before.
_GROWS = re.compile(
    r"(?P<way>in|de)c(?:reas(?:ing|e))? (?:by )?(?P<n>\d+)(?: [a-z]{2,8})?"
    r"(?P<both> (?:at |on )?(?:each|both) (?:ends?|sides?))?(?: of)?"
    r"(?: (?:in )?(?:each|every|per) [a-z]+)?\s*(?:[.,;(\[]|$)"
)


class Source:
    """The lines that messages point into. ``offset`` is added to their numbers."""

    def __init__(self, text: str, offset: int = 0) -> None:
        self._lines = text.split("\n")
        self._offset = offset

    def message(self, line: Line, cause: Cause, serious: bool = True) -> Message:
        """A message about words of a line's body."""
        number, column = line.where(cause.start)
        source = self._lines[number - 1] if number <= len(self._lines) else ""
        length = max(1, min(cause.end - cause.start, len(source) - column + 1))
        return Message(
            number + self._offset, column, length, cause.text, source, cause.hint, serious
        )

    @cached_property
    def words(self) -> frozenset[str]:
        """All words of the text, in small letters."""
        return frozenset(_WORD.findall(plain("\n".join(self._lines))))

    def line_of(self, task: Task, *, words: bool = False) -> int:
        """The line that asks for a round, as messages number it; or that with its ``words``."""
        return (task.body if words else task.item).line.line + self._offset


def verdict_of(judged: Judged, task: Task) -> Verdict:
    """What is to be said of a round: whether it fits, and agrees with its printed count."""
    if not judged.fits or judged.agrees is False:
        return Verdict.DIFFERS
    if task.item.read.until:
        return Verdict.OPEN
    if task.stated is not None and not task.last:
        # The count is printed for the last round of the line; it may hold for this one.
        proves = counting(task.stated, judged.outcomes) not in (None, "", BUNCHES)
        return Verdict.AGREES if proves else Verdict.UNSTATED
    return Verdict.AGREES if judged.agrees else Verdict.UNSTATED


def _tells_change(words: str, judged: Judged, below: Sequence[Edge | None]) -> bool:
    """Whether words only tell by how much the round grows: "increasing 8 dc each round"."""
    told = _GROWS.match(plain(words))
    if told is None:
        return False
    change = int(told["n"]) * (1 if told["way"] == "in" else -1) * (2 if told["both"] else 1)
    grown = zip(judged.outcomes, below, strict=True)
    return all(edge and o.makes - stitches(edge) == change for o, edge in grown)


def altered_in(task: Task, judged: Judged, below: Sequence[Edge | None]) -> Cause | None:
    """Words that change the round a task is worked as, unless a count bears them out.

    ``below``: what each size is worked into.
    """
    again = task.item.read.again
    if again is None or again.altered == (0, 0):
        return None
    proves = task.stated is not None and counting(task.stated, judged.outcomes)
    if judged.fits and (proves or judged.reading.grown):
        return None
    start, end = again.altered
    if judged.fits and _tells_change(task.item.line.body[start:], judged, below):
        return None
    words = short(task.item.line.body[start:end])
    return Cause(f"{words!r} changes the round that this is worked as", start, end)


def printed_of(task: Task, verdict: Verdict) -> Figure | None:
    """The printed count, where it is this round's."""
    if task.stated is None or (not task.last and verdict is not Verdict.AGREES):
        return None
    return task.stated.total


def made_of(outcomes: Sequence[Outcome]) -> dict[str, Figure]:
    """All sizes' counts by name."""
    counts = [made(o.edge) for o in outcomes]
    names = dict.fromkeys(name for count in counts for name in count)
    return {name: tuple(count.get(name, 0) for count in counts) for name in names}


def worked_first(found: Sequence[CheckedRound], line: int, below: Figure | None) -> str:
    """On how many stitches the words of ``line`` fitted that are worked again on others."""
    first = next((r for r in found if r.line == line), None)
    if first is None or first.verdict in (Verdict.DIFFERS, Verdict.UNREAD):
        return ""
    if not first.below or first.below == below:
        return ""
    return f"{first.label}, whose words these are, was worked into {figures(first.below)} stitches"


def words_of(item: ReadLine) -> str:
    """The words of a line, on one line."""
    return item.line.body.replace("\n", " ")


def first_line(line: Line) -> int:
    """Offset of the end of the first line of words."""
    return len(line.body.split("\n", 1)[0])


def short(words: str) -> str:
    """Words cut to a length that fits into a sentence."""
    words = " ".join(words.split())
    return words if len(words) <= 60 else words[:57] + "…"
