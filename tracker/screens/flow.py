"""Plain words into lines: cut, wrapped and set left and right, never read as markup."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from rich.cells import cell_len
from textual.content import Content, Span
from textual.style import Style

from tracker.notation.problems import visible

Piece = tuple[str, Style]
Line = Sequence[Piece]

CUT = "…"


def content(lines: Iterable[Line]) -> Content:
    """Lines of words with their inks, control characters made visible."""
    texts: list[str] = []
    spans: list[Span] = []
    at = 0
    for number, line in enumerate(lines):
        if number:
            texts.append("\n")
            at += 1
        for words, style in line:
            shown = visible(words)
            texts.append(shown)
            spans.append(Span(at, at + len(shown), style))
            at += len(shown)
    return Content("".join(texts), spans)


def length(line: Line) -> int:
    """Columns that a line takes."""
    return sum(columns(words) for words, _ in line)


@lru_cache(maxsize=1024)
def columns(words: str) -> int:
    """Columns that words take."""
    return cell_len(visible(words))


@lru_cache(maxsize=512)
def cut(words: str, width: int) -> str:
    """The words, or as much of them as fits with a sign that there are more."""
    words = visible(words)
    if cell_len(words) <= width:
        return words
    words = words[: max(0, width - 1)]
    while cell_len(words) > width - 1 and words:
        words = words[:-1]
    return words.rstrip() + CUT if width > 0 else ""


def cut_line(line: Line, width: int) -> list[Piece]:
    """The pieces of a line, the last ones cut to fit."""
    fitted: list[Piece] = []
    for words, style in line:
        room = width - length(fitted)
        if room <= 0:
            break
        fitted.append((cut(words, room), style))
    return fitted


def spread(left: Line, right: Line, width: int) -> list[Piece]:
    """Words at the left and words at the right; the left ones are kept where both won't fit."""
    left = cut_line(left, width)
    room = width - length(left) - 2
    if length(right) > room:
        return left
    return [*left, (" " * (room + 2 - length(right)), Style()), *right]


@lru_cache(maxsize=256)
def wrapped(words: str, width: int) -> tuple[tuple[int, int], ...]:
    """Where each line of the wrapped words starts and ends, as offsets into them."""
    lines: list[tuple[int, int]] = []
    start = end = at = 0
    for word in words.split(" "):
        stop = at + len(word)
        while cell_len(words[start:stop]) > max(1, width):
            broken = end if end > start else _hard_end(words, start, width)
            lines.append((start, broken))
            start = max(broken, at) if broken == end else broken
            end = start
        end, at = stop, stop + 1
    return (*lines, (start, end))


def _hard_end(words: str, start: int, width: int) -> int:
    """How far a word goes that is wider than a line."""
    end = start + 1
    while cell_len(words[start : end + 1]) <= width and end < len(words):
        end += 1
    return end


def paragraph(words: str, width: int) -> list[str]:
    """The words as lines."""
    words = visible(words)
    return [words[start:end] for start, end in wrapped(words, width)]
