"""The charts of a pattern's parts, as far as they can be drawn."""

from __future__ import annotations

from collections.abc import Iterator

from tracker.pattern.check import Check
from tracker.pattern.model import Pattern
from tracker.writing.chart.draw import Chart, chart
from tracker.writing.chart.worked import knots_of
from tracker.writing.sheet import Drawing


def charts(pattern: Pattern, checked: Check, size: str = "") -> Iterator[tuple[str, Chart | str]]:
    """Each part that has rounds, with its chart, or with why it has none.

    Args:
        pattern: as it was checked.
        checked: its check.
        size: one of its sizes; "" stands for the first.
    """
    index = pattern.sizes.index(size) if size else 0
    told = f", {pattern.sizes[index]}" if len(pattern.sizes) > 1 else ""
    for part, found in zip(pattern.parts, checked.parts, strict=True):
        if part.steps:
            continue
        knots = knots_of(part, found, index, pattern.stitches, pattern.terms)
        if not knots.rounds:
            yield part.name, knots.rest or "It has no rounds."
            continue
        yield part.name, chart(knots, pattern, f"{pattern.title}: {part.name}{told}")


def drawings(pattern: Pattern, checked: Check, size: str = "") -> list[Drawing]:
    """The charts as drawings of a sheet."""
    told = f" Size {size or pattern.sizes[0]}." if len(pattern.sizes) > 1 else ""
    return [
        Drawing(found.svg, name, f"{found.words}{told}")
        for name, found in charts(pattern, checked, size)
        if isinstance(found, Chart)
    ]
