"""The parts of the piece, its copies, trims and making up; picking one goes there."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from rich.cells import cell_len

from tracker.screens.flow import Line, cut, cut_line
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST, Pick, heading
from tracker.screens.side import copies
from tracker.session.glance import Glance, PartLine

if TYPE_CHECKING:
    from textual.app import App

Go = Callable[[int, int], None]
"""Goes to a part and copy, both from 0."""


def choose_part(app: App[None], seen: Glance, inks: Inks, go: Go) -> None:
    """Show the parts; go to the one that is picked."""
    where = [(p, c) for p, part in enumerate(seen.parts) for c in range(len(part.copies))]
    at = where.index((seen.place.part, seen.place.copy))
    told = "next or enter goes there; going to a trim chooses it"
    head = heading("Parts", told, inks)

    def picked(number: int | None) -> None:
        if number is not None:
            go(*where[number])

    app.push_screen(Pick(head, part_options(seen, app.size.width - 6), at), picked)


def part_options(seen: Glance, width: int) -> list[Line]:
    """A line for every copy of every part: name, how far it is, of what it is one choice."""
    lines = [(part, *copy) for part in seen.parts for copy in copies(part)]
    name = min(max(cell_len(line[1]) for line in lines) + 3, max(8, width - 14))
    return [
        cut_line(_option(part, cut(words, name - 1), far, name), width)
        for part, words, far in lines
    ]


def _option(part: PartLine, words: str, far: str, name: int) -> Line:
    choice = f"   one choice of {part.choose}" if part.choose else ""
    pad = " " * (name - cell_len(words))
    return [(words + pad, LIST.strong), (far, LIST.text), (choice, LIST.quiet)]
