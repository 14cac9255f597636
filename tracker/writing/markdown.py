"""A sheet as Markdown: reads well as it stands, and as any program shows it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tracker.writing.sheet import (
    Block,
    Drawing,
    Items,
    Loops,
    Meanings,
    RoundLine,
    Rounds,
    Sheet,
    Steps,
    Words,
)

#: What would be taken as a mark. A full stop behind a number only counts at a line's start.
_MARKS = re.compile(r"([\\`*_\[\]<>#|~])")
_AT_START = re.compile(r"^(\d+)([.)])(?=\s|$)|^([-+])(?=\s)")


def markdown(sheet: Sheet) -> str:
    """The whole text, with a line end at its end."""
    return "\n".join(_lines(sheet)) + "\n"


def _lines(sheet: Sheet) -> Iterator[str]:
    yield f"# {escaped(sheet.title)}"
    for block in sheet.front:
        yield from ("", *_block(block))
    for section in sheet.sections:
        yield from ("", f"## {escaped(section.heading)}")
        for block in section.blocks:
            yield from ("", *_block(block))


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words():
            yield escaped(block.text)
        case Items():
            yield from (f"{escaped(block.lead)}:", "") if block.lead else ()
            yield from (f"- {escaped(item)}" for item in block.items)
        case Steps():
            yield from (f"{at}. {escaped(item)}" for at, item in enumerate(block.items, start=1))
        case Meanings():
            yield from (f"- **{escaped(one)}**: {escaped(other)}" for one, other in block.entries)
        case Loops():
            yield from (escaped(block.lead), "")
            yield from (f"- ({at}) {escaped(loop)}" for at, loop in enumerate(block.loops, start=1))
        case Rounds():
            yield from (f"- {_round(line)}" for line in block.lines)
        case Drawing():
            yield escaped(f"{block.name}: {block.caption}")


def _round(line: RoundLine) -> str:
    words = escaped(line.words)
    return f"**{escaped(line.label)}:** {words}" if line.label else words


def escaped(text: str) -> str:
    """A text that no Markdown program takes for marks."""
    text = _MARKS.sub(r"\\\1", text)
    return _AT_START.sub(lambda m: f"{m[1]}\\{m[2]}" if m[1] else f"\\{m[3]}", text)
