"""What is told of each round of a part: its verdict, its counts and its messages."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.edge import stitches
from tracker.fabric.judge import Judged
from tracker.fabric.odd_corners import odd_corner
from tracker.fabric.reading import told
from tracker.fabric.verdicts import Verdict
from tracker.notation.problems import Message
from tracker.notation.round_text import Stated
from tracker.notation.tree import Node, Repeat
from tracker.pattern.causes import Cause, corners_said, explain, figures
from tracker.pattern.checked import CheckedRound
from tracker.pattern.findings import (
    Source,
    first_line,
    made_of,
    printed_of,
    verdict_of,
    words_of,
    worked_first,
)
from tracker.pattern.hindsight import Told
from tracker.pattern.house import House
from tracker.pattern.placing import Placing
from tracker.pattern.some_sizes import left_behind
from tracker.pattern.tasks import ReadLine, Task


class Telling(Placing):
    """Tells what was found of each round, in the order in which they are worked.

    Attributes:
        house: rules that a pattern file keeps beyond its counts; None for plain text.
        source: the lines that messages point into.
        told: what later rounds tell of a round that is not in the text, by the number (from 0)
            of the round that is worked into it.
        found: what was told so far.
        causes: why a round does not come out, for each judgement (by its id) asked about.
        misnumbered: what is wrong with the number of the round that is worked now.
    """

    house: House | None
    source: Source
    told: dict[int, Told]
    found: list[CheckedRound]
    causes: dict[int, Cause]
    misnumbered: list[Cause]

    def _tell(
        self, task: Task, nodes: tuple[Node, ...], judged: Judged, stated: Stated | None
    ) -> Verdict:
        """Add a round that was worked out, with what is to be said of it."""
        messages = self._messages(task, nodes, judged, stated)
        verdict = verdict_of(judged, task)
        here = self.source.line_of(task), task.label
        shown = any(told.proving == here for told in self.told.values())
        if (self.guessed or shown) and verdict is Verdict.AGREES:
            verdict = Verdict.UNSTATED
        if any(m.serious for m in messages):
            verdict = Verdict.DIFFERS
        outcomes = judged.outcomes
        self.found.append(
            CheckedRound(
                line=self.source.line_of(task),
                label=task.label,
                text=words_of(task.body),
                verdict=verdict,
                below=self._below(),
                takes=tuple(o.takes for o in outcomes),
                makes=tuple(o.makes for o in outcomes),
                made=made_of(outcomes),
                stated=printed_of(task, verdict),
                messages=tuple(messages),
                until=task.item.read.until,
                judged=judged,
            )
        )
        return verdict

    def _tell_unread(self, task: Task, cause: Cause) -> None:
        """Add a round that is not understood, with why."""
        total = None if task.stated is None else task.stated.total
        self.found.append(
            CheckedRound(
                line=self.source.line_of(task),
                label=task.label,
                text=words_of(task.item if task.fault else task.body),
                verdict=Verdict.UNREAD,
                below=self._below(),
                takes=None,
                makes=None,
                made={},
                stated=total,
                messages=(self._message(task.body, cause), *self._numbering(task)),
                until=task.item.read.until,
            )
        )

    def _told(self, found: CheckedRound, task: Task) -> CheckedRound:
        """A round for some sizes, with what is wrong in those that are done before."""
        size = left_behind(task, self.edges)
        if size < 0 or found.judged is None or task.stated is None:
            return found
        count, printed = stitches(self.edges[size] or ()), (task.stated.total or ())[size]
        text = f"leaves {count} in size {size + 1}, but {printed} is printed"
        message = self._message(task.item, Cause(text, task.stated.start, task.stated.end))
        return replace(found, verdict=Verdict.DIFFERS, messages=(*found.messages, message))

    def _messages(
        self, task: Task, nodes: tuple[Node, ...], judged: Judged, stated: Stated | None
    ) -> list[Message]:
        base = self.beginnings.habit(nodes, self.pending)
        if not judged.fits or judged.agrees is False:
            cause = self.causes.get(id(judged))
            if cause is None:
                starts = self._starts(self.edges)
                sizes = () if self.house is None else self.house.sizes
                cause = explain(nodes, judged, stated, starts, base, self._below(), sizes)
                if task.body is not task.item:
                    line = self.source.line_of(task, words=True)
                    hint = worked_first(self.found, line, self._below())
                    cause = replace(cause, hint=hint or cause.hint)
                self.causes[id(judged)] = cause
            where = task.item if cause.printed else task.body
            return [self._message(where, cause), *self._numbering(task)]
        end = first_line(task.body.line)
        found = [
            self._message(task.body, Cause(f"taken so that it fits: {sentence}", 0, end), False)
            for sentence in told(base, judged.reading)
        ]
        taken = self._taken(task, nodes)
        if taken:
            found.append(self._message(task.body, Cause(taken, 0, end), False))
        found += [] if task.item.typed else self._numbering(task)
        found += [
            self._message(task.body, Cause(f"{words}, so that it comes out", start, end), False)
            for words, start, end in task.body.read.mended
        ]
        odd = None if judged.agrees else odd_corner(nodes, judged.reading.chain_counts)
        if odd is not None:
            found.append(self._message(task.body, corners_said(*odd, self.lexicon.terms)))
        if self.house is not None and not task.item.typed:
            found += [self._message(task.item, cause) for cause in self.house.faults(nodes, judged)]
        return found

    def _taken(self, task: Task, nodes: tuple[Node, ...]) -> str:
        """What was taken for a round below that is not known; "" where it is known."""
        if len(self.found) in self.told:
            return self.told[len(self.found)].why
        below = self._below()
        if not self.guessed:
            numbered = any(e is None for e in self.edges) and any(map(_has_number, nodes))
            return "what is below is not known; worked as far as its number says" * numbered
        if below is None:
            return "worked as often as its count asks for; what is below is not known"
        count = f"taken to be worked into {figures(below)} stitches"
        if task.item.read.until:
            return f"the last of these rounds is {count}, to leave what it says"
        return f"{count}, from its count"

    def _numbering(self, task: Task) -> list[Message]:
        return [self._message(task.item, cause) for cause in self.misnumbered]

    def _message(self, item: ReadLine, cause: Cause, serious: bool = True) -> Message:
        """A message about words of a line of the text, or of one typed in its place."""
        source = Source(item.typed) if item.typed else self.source
        return source.message(item.line, cause, serious)

    def _unsure(self, task: Task, nodes: tuple[Node, ...], judged: Judged | None) -> str:
        """Why nothing can be said of a round that is understood; or ""."""
        if judged is None:
            return "nothing says how many stitches this is worked into"
        comes_right = judged.fits and judged.agrees is not False
        again = task.item.read.again
        if self._is_vague(nodes, judged):
            return "goes into places of the round below that are not known"
        if self.doubt and not (judged.fits and judged.agrees):
            return "follows a round that does not work out, so nothing can be said of it"
        if again is not None and again.alike and not comes_right:
            return "goes on as the rounds before, which does not come out"
        if task.item.read.uneven and self._changes(judged):
            return "is worked another number of times in each size, and changes the count"
        return ""

    def _changes(self, judged: Judged) -> bool:
        """Whether a round leaves another number of stitches than the one below."""
        return self._below() != tuple(o.makes for o in judged.outcomes)


def _has_number(node: Node) -> bool:
    """Whether a repeat goes as far as a number of things says."""
    return isinstance(node, Repeat) and node.upto is not None
