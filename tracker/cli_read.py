"""``hookside read``: a text for people -> a pattern file, and a table of its rounds."""

from __future__ import annotations

import json
import os
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

from tracker.cli import Complaint, say
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
        _refuse(Path(output), force=force)
    try:
        reading = read_file(file, terms or "")
    except PatternError as error:
        raise Complaint(str(error)) from None
    if output is not None:
        _write(Path(output), reading.toml, force=force)
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


def _refuse(path: Path, *, force: bool) -> None:
    """Raise `Complaint` where ``path`` must not be written."""
    if not os.path.lexists(path):
        return
    if not force:
        raise Complaint(f"{path} is there already: give another name, or --force to replace it")
    if path.is_symlink() or not path.is_file():
        raise Complaint(f"{path} is no plain file, so it is not replaced")


def _write(path: Path, text: str, *, force: bool) -> None:
    """Write a whole file or none of it. Raises `Complaint`."""
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
        try:
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
                file.write(text)
                file.flush()
                os.fsync(handle)
            _put(Path(name), path, force=force)
        finally:
            with suppress(FileNotFoundError):
                Path(name).unlink()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise Complaint(f"{path} cannot be written: {reason}") from None


def _put(ready: Path, path: Path, *, force: bool) -> None:
    """Give a finished file its name; without ``force`` it never takes another's place."""
    ready.chmod(0o666 & ~_umask())
    if force:
        ready.replace(path)
    else:
        os.link(ready, path)


def _umask() -> int:
    """The permissions that the maker's new files do without."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
