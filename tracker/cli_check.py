"""``hookside check``: the count of every round, as a table or as JSON."""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from tracker.cli import BAD_INPUT, Complaint, say
from tracker.cli_pattern import choose_size, pattern_path
from tracker.notation.problems import Message, visible
from tracker.pattern.check import Check, CheckedPart, CheckedRound, check_pattern
from tracker.pattern.load import PatternError, load_pattern
from tracker.pattern.model import Pattern

Figures = tuple[int, ...] | None


def check(files: Sequence[str], size: str | None, *, as_json: bool) -> int:
    """Check every file; the worst exit status of them."""
    worst, found = 0, []
    for file in files:
        path = pattern_path(file)
        try:
            pattern = load_pattern(path)
            at = pattern.sizes.index(choose_size(pattern, size)) if size else None
        except (PatternError, Complaint) as error:
            say(str(error), sys.stderr)
            found.append({"file": file, "well": False, "faults": _faults(error)})
            worst = BAD_INPUT
            continue
        checked = check_pattern(pattern)
        worst = max(worst, 0 if checked.well else 1)
        if as_json:
            found.append(_as_data(file, pattern, checked))
        else:
            _write(_report(path, pattern, checked, at))
    if as_json:
        print(json.dumps({"well": worst == 0, "files": found}, indent=2))
    return worst


def _write(lines: Iterator[str]) -> None:
    for line in lines:
        print(visible(line))


def _report(path: Path, pattern: Pattern, checked: Check, at: int | None) -> Iterator[str]:
    """The readable table, line by line; ``at`` is the only size to show."""
    sizes = pattern.sizes if at is None else (pattern.sizes[at],)
    yield " · ".join([pattern.title, *([", ".join(sizes)] if sizes else [])])
    for part, checked_part in zip(pattern.parts, checked.parts, strict=True):
        yield ""
        yield part.name + (f" (make {part.make})" if part.make > 1 else "")
        if part.steps:
            yield f"  {len(part.steps)} steps to tick off"
        yield from _rows(path, checked_part, at)
    yield ""
    yield _summary(checked)
    yield ""


def _rows(path: Path, part: CheckedPart, at: int | None) -> Iterator[str]:
    labels = max((len(found.label) for found in part.rounds), default=0)
    below = [_figures(found.below, at, "") for found in part.rounds]
    width = max(map(len, below), default=0)
    for found, before in zip(part.rounds, below, strict=True):
        makes = _figures(found.makes, at, "?")
        yield f"  {found.label:{labels}}  {found.verdict:8}  {before:>{width}} → {makes}"
        for message in found.messages:
            yield from _indented(path, message)


def _figures(figures: Figures, at: int | None, unknown: str) -> str:
    """One figure, or one a size as a pattern prints them: "56 (64, 72)"."""
    if not figures:
        return unknown
    if at is not None:
        return str(figures[at] if len(figures) > 1 else figures[0])
    if len(set(figures)) == 1:
        return str(figures[0])
    first, *others = map(str, figures)
    return f"{first} ({', '.join(others)})"


def _indented(path: Path, message: Message) -> Iterator[str]:
    lead = "" if message.serious else "note: "
    first, *others = str(message).split("\n")
    yield f"      {path.name}, {lead}{first}"
    yield from (f"      {line}" for line in others)


def _summary(checked: Check) -> str:
    counts = Counter(str(found.verdict) for part in checked.parts for found in part.rounds)
    said = [f"{count} {_of_many(verdict)}" for verdict, count in sorted(counts.items())]
    lead = "All well" if checked.well else "Not all well"
    return f"{lead}: {', '.join(said) or 'no rounds'}."


def _of_many(verdict: str) -> str:
    """A verdict as it is said of several rounds: "differ", "open"."""
    return verdict.removesuffix("s")


def _as_data(file: str, pattern: Pattern, checked: Check) -> dict[str, Any]:
    return {
        "file": file,
        "title": pattern.title,
        "sizes": pattern.sizes,
        "well": checked.well,
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
        "messages": [_message_data(message) for message in found.messages],
    }


def _message_data(message: Message) -> dict[str, Any]:
    return {
        "line": message.line,
        "column": message.column,
        "length": message.length,
        "text": message.text,
        "hint": message.hint,
        "serious": message.serious,
    }


def _faults(error: PatternError | Complaint) -> list[dict[str, Any]]:
    if isinstance(error, PatternError):
        return [_message_data(fault) for fault in error.faults]
    return [_message_data(Message(0, 0, 0, str(error)))]
