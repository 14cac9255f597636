"""A check as lines to read, or as data: shared by the commands that count."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from tracker.notation.problems import Message
from tracker.pattern.care import Care
from tracker.pattern.check import Check, CheckedPart, CheckedRound
from tracker.pattern.foreword import warnings
from tracker.pattern.model import Pattern

Figures = tuple[int, ...] | None


def report(
    name: str, pattern: Pattern, checked: Check, at: int | None = None, *, printed: bool = False
) -> Iterator[str]:
    """The readable table, line by line.

    ``name`` leads every message; ``at`` is the only size to show, None for all;
    ``printed`` adds the printed counts.
    """
    sizes = pattern.sizes if at is None else (pattern.sizes[at],)
    yield " · ".join([pattern.title, *([", ".join(sizes)] if sizes else [])])
    for part, checked_part in zip(pattern.parts, checked.parts, strict=True):
        yield ""
        yield part.name + (f" (make {part.make})" if part.make > 1 else "")
        if part.steps:
            many = "1 step" if len(part.steps) == 1 else f"{len(part.steps)} steps"
            yield f"  {many} to tick off"
        yield from _rows(name, checked_part, at, printed=printed)
    yield from _cautions(pattern)
    yield ""
    yield summary(checked)
    yield ""


def _cautions(pattern: Pattern) -> Iterator[str]:
    """Those that apply, one a line, and what they defer to."""
    found = warnings(pattern)
    if found:
        yield from ("", "Cautions", *(f"  {words}" for words in found))


def _rows(name: str, part: CheckedPart, at: int | None, *, printed: bool) -> Iterator[str]:
    labels = max((len(found.label) for found in part.rounds), default=0)
    below = [figures(found.below, at, "") for found in part.rounds]
    width = max(map(len, below), default=0)
    makes = [figures(found.makes, at, "?") for found in part.rounds]
    wide = max(map(len, makes), default=0) if printed else 0
    told: set[Message] = set()
    for found, before, after in zip(part.rounds, below, makes, strict=True):
        row = f"  {found.label:{labels}}  {found.verdict:8}  {before:>{width}} → {after:{wide}}"
        said = f"  printed {figures(found.stated, at, '')}" if printed and found.stated else ""
        yield f"{row}{said}".rstrip()
        for message in found.messages:
            if message not in told:  # the same words worked again have the same fault
                yield from _indented(name, message)
        told.update(found.messages)


def figures(counted: Figures, at: int | None, unknown: str) -> str:
    """One figure, or one a size as a pattern prints them: "56 (64, 72)"."""
    if not counted:
        return unknown
    if at is not None:
        return str(counted[at] if len(counted) > 1 else counted[0])
    if len(set(counted)) == 1:
        return str(counted[0])
    first, *others = map(str, counted)
    return f"{first} ({', '.join(others)})"


def _indented(name: str, message: Message) -> Iterator[str]:
    lead = "" if message.serious else "note: "
    first, *others = str(message).split("\n")
    yield f"      {name}, {lead}{first}"
    yield from (f"      {line}" for line in others)


def summary(checked: Check) -> str:
    """The last line: how many rounds have which verdict."""
    counts = Counter(str(found.verdict) for part in checked.parts for found in part.rounds)
    said = [f"{count} {_of_many(verdict)}" for verdict, count in sorted(counts.items())]
    lead = "All well" if checked.well else "Not all well"
    return f"{lead}: {', '.join(said) or 'no rounds'}."


def _of_many(verdict: str) -> str:
    """A verdict as it is said of several rounds: "differ", "open"."""
    return verdict.removesuffix("s")


def as_data(file: str, pattern: Pattern, checked: Check) -> dict[str, Any]:
    """All that the table shows, and what it leaves out, as plain data."""
    return {
        "file": file,
        "title": pattern.title,
        "sizes": pattern.sizes,
        "well": checked.well,
        "cautions": [one.id for one in Care(pattern).cautions],
        "parts": [
            {"name": part.name, "rounds": [_round_data(found) for found in part.rounds]}
            for part in checked.parts
        ],
    }


def _round_data(found: CheckedRound) -> dict[str, Any]:
    return {
        "line": found.line,
        "label": found.label,
        "verdict": str(found.verdict),
        "below": found.below,
        "takes": found.takes,
        "makes": found.makes,
        "stated": found.stated,
        "until": found.until,
        "messages": [message_data(message) for message in found.messages],
    }


def message_data(message: Message) -> dict[str, Any]:
    """One message as plain data."""
    return {
        "line": message.line,
        "column": message.column,
        "length": message.length,
        "text": message.text,
        "hint": message.hint,
        "serious": message.serious,
    }
