"""The stitches made in this round and the count it must end on."""

from __future__ import annotations

from tracker.screens.flow import Line
from tracker.screens.glyphs import ROWS, block, width_of
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance

FIELD = 3
"""Figures for which there is always room, so that nothing moves as they grow."""

MADE, ENDS = "stitches made", "must end on"


class Count(Slot):
    """Two figures side by side."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """In block figures under their labels, or in one plain row."""
        width, height = room
        seen = view.glance
        ends = "-" if seen.ends_on is None else str(seen.ends_on)
        for scale in (2, 1):
            column = self._column(seen, ends, scale)
            wide = column + (width_of(ends, scale) or 0)
            if height > ROWS * scale and wide <= width:
                return self._blocks(seen, ends, column, scale)
        return self._plain(seen)

    def _column(self, seen: Glance, ends: str, scale: int) -> int:
        """The column where the second figure begins."""
        figures = max(FIELD, len(ends), len(str(seen.made)))
        return (width_of("0" * figures, scale) or 0) + 4 * scale

    def _blocks(self, seen: Glance, ends: str, column: int, scale: int) -> list[Line]:
        inks = self.inks
        label = "not stated" if seen.ends_on is None else ENDS
        head = [(MADE.ljust(column), inks.quiet), (label, inks.quiet)]
        made = block(str(seen.made), scale) or ()
        last = block(ends, scale) or ()
        rows = [
            [(left.ljust(column), inks.place), (right, inks.mark)]
            for left, right in zip(made, last, strict=True)
        ]
        return [head, *rows]

    def _plain(self, seen: Glance) -> list[Line]:
        inks = self.inks
        ends = "count not stated" if seen.ends_on is None else f"{ENDS} {seen.ends_on}"
        return [[(f"{seen.made} made", inks.place), (f" · {ends}", inks.strong)]]
