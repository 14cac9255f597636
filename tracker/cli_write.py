"""``hookside write``: a pattern or a piece as instructions that others can follow."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tracker.cli import Complaint
from tracker.cli_files import refuse, write_file
from tracker.cli_pattern import load, pattern_path
from tracker.cli_where import opened, piece_called
from tracker.notation.problems import visible
from tracker.pattern.check import check_pattern
from tracker.pattern.translate import translate
from tracker.writing.compose import compose
from tracker.writing.markdown import markdown
from tracker.writing.plain import plain_text

if TYPE_CHECKING:
    from tracker.pattern.model import Pattern
    from tracker.writing.sheet import Section

#: The forms by name, each with the endings of file names that ask for it.
FORMS = {
    "text": (".txt", ".text"),
    "markdown": (".md", ".markdown"),
}


@dataclass(frozen=True, slots=True)
class Source:
    """What is written: a pattern, and what a piece of it adds."""

    pattern: Pattern
    more: Sequence[Section] = ()


def write(
    name: str, form: str | None, output: str | None, terms: str | None, *, force: bool
) -> int:
    """Write a pattern or a piece to a file, or to the standard output.

    Raises `Complaint`: there is no such thing, or ``output`` is there and not to be
    written over.
    """
    form = form or _form_of(output)
    if output is not None:
        refuse(Path(output), force=force)
    source = _source(name)
    pattern = translate(source.pattern, terms or source.pattern.terms)
    sheet = compose(pattern, check_pattern(pattern), more=source.more)
    text = markdown(sheet) if form == "markdown" else plain_text(sheet)
    text = "\n".join(map(visible, text.split("\n")))
    if output is None:
        sys.stdout.write(text)
    else:
        write_file(Path(output), text, force=force)
    return 0


def _form_of(output: str | None) -> str:
    """The form that a file's name asks for; without one, text. Raises `Complaint`."""
    if output is None:
        return "text"
    ending = Path(output).suffix.lower()
    for form, endings in FORMS.items():
        if ending in endings:
            return form
    known = ", ".join(endings[0] for endings in FORMS.values())
    raise Complaint(f"{output} does not say its form: end it in {known}, or say --as")


def _source(name: str) -> Source:
    """What a word means: a piece, else a pattern. Raises `Complaint`."""
    piece = piece_called(name)
    if piece is None:
        return Source(load(pattern_path(name)))
    return _piece(piece)


def _piece(path: Path) -> Source:
    from tracker.session.looking import look, plan_found

    found = opened(lambda: look(path))
    return Source(opened(lambda: plan_found(path, found.head)).pattern)
