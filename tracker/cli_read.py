"""``hookside read``: a text for people -> a pattern file, and a table of its rounds."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from tracker.cli import Complaint, say
from tracker.cli_files import refuse, write_file
from tracker.cli_report import as_data, report
from tracker.notation.problems import visible
from tracker.pattern.prose_source import LARGEST_PDF, read_words, words_of
from tracker.pattern.reading import Reading, read_pattern
from tracker.pattern.source import PatternError

STDIN = "-"


def read(file: str, output: str | None, terms: str | None, *, force: bool, as_json: bool) -> int:
    """Draft a pattern file; exit status 1 where a round differs or was not understood.

    Raises `Complaint`: the file cannot be read, or ``output`` is there and not to be
    written over.
    """
    if output is not None:
        refuse(Path(output), force=force)
    try:
        reading = read_file(file, terms or "")
    except PatternError as error:
        raise Complaint(str(error)) from None
    if output is not None:
        write_file(Path(output), reading.toml, force=force)
    elif not as_json:
        sys.stdout.write(reading.toml)
        sys.stdout.flush()
    if as_json:
        print(json.dumps(_as_data(file, reading), indent=2))
    else:
        _table(file, reading)
    return 0 if reading.checked.well else 1


def read_file(file: str, terms: str = "") -> Reading:
    """Read a text, Markdown or PDF file, or what is piped in. Raises `PatternError`."""
    if file == STDIN:
        name, title = "standard input", "Untitled"
        words = words_of(name, sys.stdin.buffer.read(LARGEST_PDF + 1))
    else:
        name, title = file, _title(file)
        words = read_words(file)
    return read_pattern(words, name, title, terms)


def _title(file: str) -> str:
    """A title from a file's name: "Hedge mat" from "hedge-mat.txt"."""
    words = visible(Path(file).stem).replace("-", " ").replace("_", " ").split()
    name = " ".join(words)
    return name[:1].upper() + name[1:] or "Untitled"


def _table(file: str, reading: Reading) -> None:
    name = "standard input" if file == STDIN else Path(file).name
    for line in report(name, reading.pattern, reading.checked, printed=True):
        print(visible(line), file=sys.stderr)
    for warning in reading.draft.warnings:
        say(f"note: {warning}", sys.stderr)


def _as_data(file: str, reading: Reading) -> dict[str, object]:
    return {
        **as_data(file, reading.pattern, reading.checked),
        "terms": reading.pattern.terms,
        "notes": list(reading.draft.warnings),
        "toml": reading.toml,
    }
