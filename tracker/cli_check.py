"""``hookside check``: the count of every round, as a table or as JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from tracker.cli import BAD_INPUT, Complaint, say
from tracker.cli_pattern import choose_size, pattern_path
from tracker.cli_report import as_data, message_data, report
from tracker.notation.problems import Message, visible
from tracker.pattern.check import Check, check_pattern
from tracker.pattern.load import PatternError, load_pattern
from tracker.pattern.model import Pattern

#: Endings of files that hold instructions for people rather than a pattern file.
PROSE = (".txt", ".text", ".md", ".markdown", ".pdf")


def check(files: Sequence[str], size: str | None, *, as_json: bool) -> int:
    """Check every file; the worst exit status of them."""
    worst, found = 0, []
    for file in files:
        try:
            path = pattern_path(file)
            pattern, checked = _checked(path)
            at = pattern.sizes.index(choose_size(pattern, size)) if size else None
        except (PatternError, Complaint) as error:
            say(str(error), sys.stderr)
            found.append({"file": file, "well": False, "faults": _faults(error)})
            worst = BAD_INPUT
            continue
        worst = max(worst, 0 if checked.well else 1)
        if as_json:
            found.append(as_data(file, pattern, checked))
        else:
            _write(report(path.name, pattern, checked, at))
    if as_json:
        print(json.dumps({"well": worst == 0, "files": found}, indent=2))
    return worst


def _checked(path: Path) -> tuple[Pattern, Check]:
    """A pattern file, or a text read as one, with its check. Raises `PatternError`."""
    if path.suffix.lower() not in PROSE:
        pattern = load_pattern(path)
        return pattern, check_pattern(pattern)
    from tracker.cli_read import read_file  # only for files that are no pattern files

    reading = read_file(str(path))
    for warning in reading.draft.warnings:
        say(f"{path.name}: note: {warning}", sys.stderr)
    return reading.pattern, reading.checked


def _write(lines: Iterator[str]) -> None:
    for line in lines:
        print(visible(line))


def _faults(error: PatternError | Complaint) -> list[dict[str, Any]]:
    if isinstance(error, PatternError):
        return [message_data(fault) for fault in error.faults]
    return [message_data(Message(0, 0, 0, str(error)))]
