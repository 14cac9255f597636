"""A pattern -> the text of its TOML file, laid out as a maker would write it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from tracker.notation.dictionary import STITCHES, in_terms
from tracker.notation.stitches import Stitch, Variant
from tracker.pattern.model import Fit, Gauge, Part, Pattern, Worked, Yarn


@dataclass(frozen=True, slots=True)
class Draft:
    """A pattern as read from a text for people.

    Attributes:
        pattern: what the loader will find in `to_toml` of this.
        kept: words that no key holds, paragraph by paragraph; they go in as comments.
        warnings: what was taken for granted, one plain sentence each.
        lines: for each part the line of the text that each line of its rounds came from.
    """

    pattern: Pattern
    kept: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    lines: tuple[tuple[int, ...], ...] = ()


def to_toml(pattern: Pattern, kept: Sequence[str] = ()) -> str:
    """The pattern as TOML that loads to the same pattern; ``kept`` become comments.

    Rounds and other texts of several lines stand between ''' and ''' as they are read;
    only where a text itself holds those three, it is written with escapes.
    """
    return "\n".join(_lines(pattern, kept)) + "\n"


def _lines(pattern: Pattern, kept: Sequence[str]) -> Iterator[str]:
    yield f"title = {_text(pattern.title)}"
    yield f"terms = {_text(pattern.terms)}"
    yield from _list("sizes", pattern.sizes)
    if pattern.about:
        yield f"about = {_block(pattern.about)}"
    yield from _list("cautions", pattern.cautions)
    yield from _list("rings", pattern.rings)
    for paragraph in kept:
        yield ""
        yield from (f"# {line}".rstrip() for line in paragraph.split("\n"))
    if pattern.gauge is not None:
        yield from _gauge(pattern.gauge)
    if pattern.fit is not None:
        yield from _fit(pattern.fit)
    for yarn in pattern.yarns:
        yield from _yarn(yarn)
    for stitch in pattern.stitches:
        yield from _stitch(stitch, pattern.terms)
    for part in pattern.parts:
        yield from _part(part)


def _gauge(gauge: Gauge) -> Iterator[str]:
    yield from ("", "[gauge]", f"stitch = {_text(gauge.stitch)}")
    yield f"stitches = {_number(gauge.stitches)}"
    yield f"rounds = {_number(gauge.rounds)}"
    yield f"over = {_text(gauge.over)}"
    yield from _given("hook", gauge.hook)


def _fit(fit: Fit) -> Iterator[str]:
    yield from ("", "[fit]", f"part = {_text(fit.part)}")
    yield from _given("on", fit.on)
    yield from _given("ease", fit.ease)
    if fit.around != "stitches":
        yield f"around = {_text(fit.around)}"


def _yarn(yarn: Yarn) -> Iterator[str]:
    yield from ("", "[[yarn]]", f"letter = {_text(yarn.letter)}")
    yield from _given("name", yarn.name)
    yield from _given("colour", yarn.colour)


def _stitch(stitch: Stitch, terms: str) -> Iterator[str]:
    yield from ("", "[[stitch]]", f"abbr = {_text(stitch.abbr)}")
    if stitch.name != stitch.abbr:
        yield f"name = {_text(stitch.name)}"
    if stitch.us in STITCHES and stitch.us != stitch.abbr.lower():
        yield f"means = {_text(in_terms(stitch.us, terms))}"
        return
    yield f"takes = {stitch.takes}"
    yield f"makes = {stitch.makes}"
    if stitch.spaces:
        yield f"spaces = {list(stitch.spaces)}"
    yield from _worked(stitch)
    for key, variant in (("first", stitch.first), ("last", stitch.last)):
        if variant is not None:
            yield from ("", f"[stitch.{key}]")
            yield from _variant(variant)


def _variant(variant: Variant) -> Iterator[str]:
    for key in ("takes", "makes"):
        figure = getattr(variant, key)
        if figure is not None:
            yield f"{key} = {figure}"
    yield from _worked(variant)


def _worked(thing: Stitch | Variant) -> Iterator[str]:
    """How it is made, whole and loop by loop."""
    yield from _given("how", thing.how)
    if thing.loops:
        yield f"loops = {_block(chr(10).join(thing.loops))}"


def _part(part: Part) -> Iterator[str]:
    yield from ("", "[[part]]", f"name = {_text(part.name)}")
    if part.make > 1:
        yield f"make = {part.make}"
    if part.worked is not Worked.JOINED:
        yield f"worked = {_text(part.worked)}"
    yield from _given("choose", part.choose)
    yield from _given("hook", part.hook)
    if part.below:
        yield f"below = {list(part.below) if len(part.below) > 1 else part.below[0]}"
    yield from _given("note", part.note)
    if part.rounds:
        yield f"rounds = {_block(part.rounds)}"
    if part.steps:
        yield "steps = ["
        yield from (f"  {_text(step)}," for step in part.steps)
        yield "]"


def _list(key: str, texts: Sequence[str]) -> Iterator[str]:
    if texts:
        yield f"{key} = [{', '.join(map(_text, texts))}]"


def _given(key: str, text: str) -> Iterator[str]:
    if text:
        yield f"{key} = {_text(text)}"


def _number(number: Fraction) -> str:
    whole, rest = divmod(number, 1)
    if not rest:
        return str(whole)
    return _text(f"{whole} {rest}" if whole else str(rest))


_UNSAFE = re.compile(r'[\x00-\x1f\x7f"\\]')
_UNSAFE_LITERAL = re.compile(r"'''|[\x00-\x08\x0b-\x1f\x7f]")
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t"}


def _escape(match: re.Match[str]) -> str:
    return _ESCAPES.get(match[0]) or f"\\u{ord(match[0]):04x}"


def _text(text: str) -> str:
    """A text on one line, in quotes."""
    return f'"{_UNSAFE.sub(_escape, text)}"'


def _block(text: str) -> str:
    """A text of several lines, as it is read; it ends with a line end."""
    text = text if text.endswith("\n") else text + "\n"
    if not _UNSAFE_LITERAL.search(text):
        return f"'''\n{text}'''"
    escaped = [_UNSAFE.sub(_escape, line) for line in text.split("\n")]
    return '"""\n' + "\n".join(escaped) + '"""'
