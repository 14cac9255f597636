"""What the shelf shows: a piece in two lines, and the keys."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.screens.flow import Line, Piece, cut_line, length, spread
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST
from tracker.session.about import STANDING, About, spoken_time

KEYS = (
    ("enter", "open"),
    ("n", "new"),
    ("e", "rename"),
    ("s", "aside"),
    ("f", "finish"),
    ("d", "to bin"),
    ("b", "bin"),
    ("q", "leave"),
)
IN_BIN = (("enter", "take out"), ("b", "shelf"), ("q", "leave"))

BAR = 10
"""Squares of the bar that shows the share done."""


def key_lines(keys: Sequence[tuple[str, str]], width: int, inks: Inks) -> list[Line]:
    """Keys and what they do: in one row, or in two where room is short."""
    for gap in ("   ", "  "):
        line = _keys(keys, gap, inks)
        if length(line) <= width:
            return [line]
    half = len(keys) // 2
    return [cut_line(_keys(part, "  ", inks), width) for part in (keys[:half], keys[half:])]


def _keys(keys: Sequence[tuple[str, str]], gap: str, inks: Inks) -> list[Piece]:
    *others, last = [((key, inks.strong), (f" {word}", inks.quiet)) for key, word in keys]
    return [*(piece for pair in others for piece in (*pair, (gap, inks.quiet))), *last]


def piece_lines(one: About, width: int) -> list[Line]:
    """Two lines: its name and how far it is; where it is, and what comes next."""
    name = [(one.piece.name, LIST.strong)]
    if one.trouble:
        return [name, cut_line([(f"  {one.trouble}", LIST.text)], width)]
    tag = STANDING[one.piece.standing] or ("done" if one.done else "")
    far = f"{one.share:3} %"
    if width >= 60:
        filled = one.share * BAR // 100
        far = f"{'■' * filled}{'□' * (BAR - filled)}  {far}"
    first = spread(name, [(f"{tag}  ".lstrip(" "), LIST.quiet), (far, LIST.text)], width)
    return [first, cut_line([(f"  {details(one, width)}", LIST.quiet)], width)]


def details(one: About, width: int) -> str:
    """Where a piece is, what comes next, when it was put down, how long it took."""
    lay = one.touched and f"put down {one.touched}"
    took = f"{spoken_time(one.worked)} worked" if one.worked >= 60 else ""
    step = "" if one.done else f"next {one.step}"
    if width < 60:
        return " · ".join(word for word in (one.where, one.touched) if word)
    if width < 90:
        return " · ".join(word for word in (one.where, one.touched, took, step) if word)
    return " · ".join(word for word in (one.size, one.where, lay, took, step) if word)
