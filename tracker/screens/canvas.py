"""The one widget of the work screen: paints the slots, and only what changes in them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from rich.segment import Segment
from textual.geometry import Region
from textual.strip import Strip
from textual.style import Style
from textual.widget import Widget

from tracker.notation.problems import visible
from tracker.screens.flow import Line
from tracker.screens.layout import Box, Mode, lay_out
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View

if TYPE_CHECKING:
    from rich.style import Style as RichStyle
    from textual import events


PAGE = Style()
"""The page itself, without an ink."""


class Canvas(Widget, inherit_css=False):
    """Rows are compared with those painted before, so that a press costs by what it changes.

    One widget and not one for each slot: Textual spends more on telling a widget that it
    has changed than we spend on drawing it.
    """

    def __init__(self, slots: Mapping[str, Slot]) -> None:
        super().__init__()
        self._slots = slots
        self._view: View | None = None
        self._boxes: Mapping[str, Box] = {}
        self._lines: dict[tuple[str, int], tuple[object, ...]] = {}
        self._strips: dict[tuple[str, int], Strip] = {}
        self._paints: dict[Style, RichStyle] = {}

    def show(self, view: View) -> None:
        """Draw a view; what has not changed is not painted again."""
        self._view = view
        if 0 in tuple(self.size):
            return
        if self._lay_out(view):
            self.refresh()
        changed = self._draw_all(view)
        if changed:
            self.refresh(*changed)

    def _lay_out(self, view: View) -> bool:
        """Find the spots for the room there is; whether they are others than before."""
        boxes = lay_out(*self.size, mode_of(view))
        if boxes is self._boxes:
            return False
        self._boxes = boxes
        self._lines.clear()
        return True

    def _draw_all(self, view: View) -> list[Region]:
        return [part for name, box in self._boxes.items() for part in self._draw(name, box, view)]

    def on_resize(self, _event: events.Resize) -> None:
        """Draw anew for the room there now is."""
        if self._view is not None:
            self.show(self._view)

    def render_line(self, y: int) -> Strip:
        """A row of the screen: the rows of the slots that lie on it, blanks between."""
        if self._view is not None and not self._boxes:
            # The first picture: it need not wait to be told of the size that there is.
            self._lay_out(self._view)
            self._draw_all(self._view)
        parts, at = [], 0
        blank = self._paint(PAGE)
        here = [(box, name) for name, box in self._boxes.items() if 0 <= y - box.y < box.height]
        for box, name in sorted(here):
            parts.append(Strip.blank(box.x - at, blank))
            parts.append(self._strips[name, y - box.y])
            at = box.x + box.width
        return Strip.join([*parts, Strip.blank(max(0, self.size.width - at), blank)])

    def _draw(self, name: str, box: Box, view: View) -> Iterator[Region]:
        """Make the rows of a slot that have changed; says where they are."""
        lines = self._slots[name].lines(view, Room(box.width, box.height))
        for row in range(box.height):
            line = tuple(lines[row]) if row < len(lines) else ()
            if self._lines.get((name, row)) != line:
                self._lines[name, row] = line
                self._strips[name, row] = self._strip(line, box.width)
                yield Region(box.x, box.y + row, box.width, 1)

    def _strip(self, line: Line, width: int) -> Strip:
        segments = [Segment(visible(words), self._paint(ink)) for words, ink in line if words]
        return Strip(segments).adjust_cell_length(width, self._paint(PAGE))

    def _paint(self, ink: Style) -> RichStyle:
        """An ink on what is behind the widget."""
        paint = self._paints.get(ink)
        if paint is None:
            paint = self._paints[ink] = (self.visual_style + ink).rich_style
        return paint


def mode_of(view: View) -> Mode:
    """Which layout a view needs."""
    seen = view.glance
    if seen.making_up:
        return Mode.TICKS
    if view.how:
        return Mode.HOW
    return Mode.LOOPS if seen.loops_shown and seen.loops else Mode.WORK
