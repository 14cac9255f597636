"""The instruction as it is written: the current words lit, the done ones dimmed."""

from __future__ import annotations

from tracker.notation.problems import visible
from tracker.screens.flow import CUT, Line, Piece, wrapped
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance


class Words(Slot):
    """As many lines as there is room for; pages on when the current words leave it."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The page of the instruction on which the current words begin; a gap above, if it fits."""
        width, height = room
        seen = view.glance
        text = visible(seen.instruction)
        breaks = wrapped(text, width - 2)
        current = sum(start <= seen.now[0] for start, _ in breaks) - 1
        first = page_start(current, len(breaks), height)
        shown = breaks[first : first + height]
        lines = [self._inked(text, start, end, seen) for start, end in shown]
        if first + height < len(breaks):
            lines[-1].append((f" {CUT}", self.inks.quiet))
        return [[], *lines] if len(lines) < height else list(lines)

    def _inked(self, text: str, start: int, end: int, seen: Glance) -> list[Piece]:
        """One line in up to three inks."""
        inks = self.inks
        now, then = (min(max(at, start), end) for at in seen.now)
        done = min(max(min(seen.done, now), start), end)
        return [
            (text[start:done], inks.done),
            (text[done:now], inks.text),
            (text[now:then], inks.now),
            (text[then:end], inks.text),
        ]


def page_start(current: int, lines: int, height: int) -> int:
    """The first line to show: pages share one line, so that what was read stays in sight."""
    if lines <= height:
        return 0
    step = max(1, height - 1)
    return min(current // step * step, lines - height)
