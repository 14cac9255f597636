"""``hookside write``: a pattern or a piece as instructions that others can follow."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from tracker.cli import Complaint, say
from tracker.cli_files import refuse, write_file
from tracker.cli_pattern import choose_size, load, pattern_path
from tracker.cli_piece import opened, piece_called
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
    "page": (".html", ".htm"),
    "chart": (".svg",),
}


@dataclass(frozen=True, slots=True)
class Source:
    """What is written: a pattern, the size of a piece of it, and what the piece adds."""

    pattern: Pattern
    size: str | None = None
    more: Sequence[Section] = ()


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a maker asks for: each may be left open (None)."""

    form: str | None = None
    output: str | None = None
    terms: str | None = None
    size: str | None = None
    part: str | None = None
    designed: bool = False
    left: bool = False
    force: bool = False


def write(name: str, wanted: Wanted) -> int:
    """Write a pattern or a piece to a file, or to the standard output.

    Raises `Complaint`: there is no such thing, or ``wanted.output`` is there and not to be
    written over.
    """
    form = wanted.form or _form_of(wanted.output)
    if wanted.output is not None:
        refuse(Path(wanted.output), force=wanted.force)
    source = _source(name, designed=wanted.designed)
    pattern = translate(source.pattern, wanted.terms or source.pattern.terms)
    size = _size(pattern, wanted.size or source.size)
    if form == "chart":
        text = _chart(pattern, size, wanted.part, left=wanted.left)
    else:
        text = _words(source, pattern, form, size, left=wanted.left)
    text = "\n".join(map(visible, text.split("\n")))
    if wanted.output is None:
        sys.stdout.write(text)
    else:
        write_file(Path(wanted.output), text, force=wanted.force)
    return 0


def _size(pattern: Pattern, word: str | None) -> str:
    """The size that is drawn: the one asked for, else the first. Raises `Complaint`."""
    if word:
        return choose_size(pattern, word)
    return pattern.sizes[0] if pattern.sizes else ""


def _words(source: Source, pattern: Pattern, form: str, size: str, *, left: bool) -> str:
    checked = check_pattern(pattern)
    if form != "page":
        sheet = compose(pattern, checked, more=source.more)
        return markdown(sheet) if form == "markdown" else plain_text(sheet)
    from tracker.writing.charts import drawings
    from tracker.writing.page import page

    drawn = drawings(pattern, checked, size, left=left)
    return page(compose(pattern, checked, drawn, source.more))


def _chart(pattern: Pattern, size: str, word: str | None, *, left: bool) -> str:
    """The chart of one part, the first if none is named. Raises `Complaint`."""
    from tracker.writing.charts import charts

    found = dict(charts(pattern, check_pattern(pattern), size, left=left))
    names = ", ".join(found)
    wanted = (word or "").strip().casefold()
    name = next((n for n in found if n.casefold().startswith(wanted)), None)
    if name is None:
        raise Complaint(f'"{pattern.title}" has no part "{word}" to draw: it has {names}')
    drawn = found[name]
    if isinstance(drawn, str):
        raise Complaint(f"{name} cannot be drawn. {drawn}")
    if word is None and len(found) > 1:
        say(f"{name} is drawn; --part names another: {names}", sys.stderr)
    if drawn.rest:
        say(drawn.rest, sys.stderr)
    return drawn.svg


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


def _source(name: str, *, designed: bool) -> Source:
    """What a word means: a piece, else a pattern. Raises `Complaint`."""
    piece = piece_called(name)
    if piece is None:
        return Source(load(pattern_path(name)))
    return _designed(piece) if designed else _worked(piece)


def _designed(path: Path) -> Source:
    """The pattern that a piece carries."""
    from tracker.session.looking import look, plan_found

    found = opened(lambda: look(path))
    return Source(opened(lambda: plan_found(path, found.head)).pattern, found.head.size)


def _worked(path: Path) -> Source:
    """The pattern as a piece was worked, and what the piece tells beside it."""
    from tracker.session.looking import look, plan_at
    from tracker.session.worked import worked
    from tracker.writing.as_worked import as_worked
    from tracker.writing.record import record

    found = opened(lambda: look(path))
    plan = opened(lambda: plan_at(path, found))
    state, started = found.history.state, found.head.started
    told = record(plan, state, started, worked(found.history))
    return Source(as_worked(plan, state), more=(told,))
