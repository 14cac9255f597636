"""The charts of a pattern's parts, as far as they can be drawn."""

from __future__ import annotations

from collections.abc import Iterator

from tracker.pattern.check import Check
from tracker.pattern.model import Pattern
from tracker.writing.chart.draw import Chart, chart
from tracker.writing.chart.knots import Knots
from tracker.writing.chart.worked import knots_of
from tracker.writing.sheet import Drawing, Words

MOST_ON_A_PAGE = 16_000
"""Stitches drawn on one page; a browser takes long over more."""


def charts(
    pattern: Pattern, checked: Check, size: str = "", *, left: bool = False
) -> Iterator[tuple[str, Chart | str]]:
    """Each part that has rounds, with its chart, or with why it has none.

    Args:
        pattern: as it was checked.
        checked: its check.
        size: one of its sizes; "" stands for the first.
        left: for a left-handed maker.
    """
    for name, knots in _knots(pattern, checked, size):
        if knots.rounds:
            yield name, chart(knots, pattern, _title(pattern, name, size), left=left)
        else:
            yield name, knots.rest or "It has no rounds."


def drawings(
    pattern: Pattern, checked: Check, size: str = "", *, left: bool = False
) -> list[Drawing | Words]:
    """The charts as drawings of a sheet, and in words what is not drawn; see `charts`."""
    told = f" Size {size or pattern.sizes[0]}." if len(pattern.sizes) > 1 else ""
    found: list[Drawing | Words] = []
    missing: list[str] = []
    room = MOST_ON_A_PAGE
    for name, knots in _knots(pattern, checked, size):
        count = sum(one.made for one in knots.rounds)
        if not knots.rounds:
            missing.append(f"{name}. {knots.rest}")
        elif count > room:
            missing.append(f"{name}: too much for one page; it can be drawn by itself.")
        else:
            room -= count
            drawn = chart(knots, pattern, _title(pattern, name, size), left=left)
            found.append(Drawing(drawn.svg, name, f"{drawn.words}{told}"))
    return [*found, *(Words(f"Without a chart: {words}", quiet=True) for words in missing)]


def _knots(pattern: Pattern, checked: Check, size: str) -> Iterator[tuple[str, Knots]]:
    """Each part that has rounds, with its knots."""
    index = pattern.sizes.index(size) if size else 0
    for part, found in zip(pattern.parts, checked.parts, strict=True):
        if not part.steps:
            yield part.name, knots_of(part, found, index, pattern.stitches, pattern.terms)


def _title(pattern: Pattern, name: str, size: str) -> str:
    told = f", {size or pattern.sizes[0]}" if len(pattern.sizes) > 1 else ""
    return f"{pattern.title}: {name}{told}"
