"""A sheet as plain text: every round on a line of its own, whatever its length."""

from __future__ import annotations

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


def plain_text(sheet: Sheet) -> str:
    """The whole text, with a line end at its end."""
    return "\n".join(_lines(sheet)) + "\n"


def _lines(sheet: Sheet) -> Iterator[str]:
    yield from _under(sheet.title, "=")
    for block in sheet.front:
        yield from ("", *_block(block))
    for section in sheet.sections:
        yield from ("", "", *_under(section.heading, "-"))
        for block in section.blocks:
            yield from ("", *_block(block)) if isinstance(block, Rounds) else _block(block)


def _under(heading: str, mark: str) -> Iterator[str]:
    yield from (heading, mark * max(3, len(heading)))


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words():
            yield block.text
        case Items():
            yield from (f"{block.lead}:", "") if block.lead else ()
            yield from (f"- {item}" for item in block.items)
        case Steps():
            yield from (f"{number}. {item}" for number, item in enumerate(block.items, start=1))
        case Meanings():
            yield from (f"{short}: {meaning}" for short, meaning in block.entries)
        case Loops():
            yield f"  {block.lead}"
            yield from (f"  ({number}) {loop}" for number, loop in enumerate(block.loops, start=1))
        case Rounds():
            yield from map(written, block.lines)
        case Drawing():
            yield f"{block.name}: {block.caption}"


def written(line: RoundLine) -> str:
    """A round with its label, as patterns write it."""
    return f"{line.label}: {line.words}" if line.label else line.words
