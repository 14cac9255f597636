"""A sheet as one HTML page that needs nothing else: to be shown, and printed as it stands."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from importlib.resources import files

from tracker.writing.sheet import (
    Block,
    Drawing,
    Items,
    Loops,
    Meanings,
    RoundLine,
    Rounds,
    Section,
    Sheet,
    Steps,
    Words,
)

_SAFE = "default-src 'none'; style-src 'unsafe-inline'"
"""What a browser may load for the page: nothing but the style it carries."""

_SHORT = ("Materials", "Gauge", "Tension", "Abbreviations")
"""Sections that stand in columns at the top."""


def page(sheet: Sheet) -> str:
    """The whole page, with a line end at its end."""
    return "\n".join(_lines(sheet)) + "\n"


def _lines(sheet: Sheet) -> Iterator[str]:
    title = escape(sheet.title)
    style = files("tracker.writing").joinpath("page.css").read_text(encoding="utf-8")
    yield "<!doctype html>"
    yield '<html lang="en"><head><meta charset="utf-8">'
    yield f'<meta http-equiv="Content-Security-Policy" content="{_SAFE}">'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<title>{title}</title>"
    yield f"<style>{style}{_page_box(sheet.title)}</style>"
    yield f"</head><body><main><header><h1>{title}</h1>"
    for block in sheet.front:
        yield from _block(block)
    yield "</header>"
    yield from _sections(sheet)
    yield "</main></body></html>"


def _page_box(title: str) -> str:
    """The margins of a printed page: the title and the page's number at its foot."""
    words = "".join(c if c.isalnum() else f"\\{ord(c):06x} " for c in title)
    font = "font: 8pt 'Liberation Sans', Arial, sans-serif; color: #5b5f66"
    return (
        "@page { margin: 15mm 15mm 18mm; "
        f"@bottom-left {{ content: '{words}'; {font} }} "
        f"@bottom-right {{ content: counter(page) ' / ' counter(pages); {font} }} }}"
    )


def _sections(sheet: Sheet) -> Iterator[str]:
    short = [section for section in sheet.sections if section.heading in _SHORT]
    if short:
        yield '<div class="facts">'
        for section in short:
            yield from _section(section, "small")
        yield "</div>"
    for section in sheet.sections:
        if section not in short:
            yield from _section(section, "part" if section.part else "special")


def _section(section: Section, kind: str) -> Iterator[str]:
    yield f'<section class="{kind}"><h2>{escape(section.heading)}</h2>'
    for block in section.blocks:
        yield from _block(block)
    yield "</section>"


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words():
            quiet = ' class="quiet"' if block.quiet else ""
            yield f"<p{quiet}>{escape(block.text)}</p>"
        case Items():
            items = "".join(f"<li>{escape(item)}</li>" for item in block.items)
            lead = f"<p>{escape(block.lead)}</p>" if block.lead else ""
            kind = ' class="care"' if block.care else ""
            yield f"<div{kind}>{lead}<ul>{items}</ul></div>"
        case Steps():
            items = "".join(f"<li>{escape(item)}</li>" for item in block.items)
            yield f'<ol class="steps">{items}</ol>'
        case Meanings():
            pairs = (f"<dt>{escape(a)}</dt><dd>{escape(b)}</dd>" for a, b in block.entries)
            yield f"<dl>{''.join(pairs)}</dl>"
        case Loops():
            loops = "".join(f"<li>{escape(loop)}</li>" for loop in block.loops)
            yield f'<div class="loops"><p>{escape(block.lead)}</p><ol>{loops}</ol></div>'
        case Rounds():
            yield "<table>"
            yield from map(_round, block.lines)
            yield "</table>"
        case Drawing():
            yield f"<figure><h3>{escape(block.name)}</h3>{block.svg}"
            yield f"<figcaption>{escape(block.caption)}</figcaption></figure>"


def _round(line: RoundLine) -> str:
    label = f"<th>{escape(line.label)}</th>" if line.label else '<th class="bare"></th>'
    mark = "<b>✓</b> " if line.proved else ""
    before, _, after = line.proof.partition("→ ")
    told = f"<span>{mark}{escape(before)}</span> <span>→ {escape(after)}</span>"
    proof = f'<td class="proof">{told}</td>' if line.proof else "<td></td>"
    return f"<tr>{label}<td>{escape(line.words)}</td>{proof}</tr>"
