"""Which pass of a repeat this is, of how many, and where in it."""

from __future__ import annotations

from tracker.fabric.steps import InRepeat
from tracker.screens.flow import Line, Piece, length
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View

DONE, HERE, TO_COME = "■", "▣", "□"

LONGEST = 24
"""Passes drawn one by one; more of them are drawn in proportion."""


class Passes(Slot):
    """The repeats the step stands in, outermost first, each with a bar of its passes."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """Three rows for each repeat, or all in one row."""
        width, height = room
        repeats = view.glance.repeats
        if height < 3:
            return [self._in_one(repeats, width)]
        rows: list[Line] = [[("", self.inks.text)]] * (height % 3 and 1)
        for depth, repeat in enumerate(repeats[: height // 3]):
            rows += self._rows(repeat, depth, width)
        return rows

    def _rows(self, repeat: InRepeat, depth: int, width: int) -> list[Line]:
        inks = self.inks
        name = "inner repeat" if depth else "repeat"
        return [
            [(f"{name} {which(repeat)}", inks.place)],
            self._bar(repeat, min(width, LONGEST)),
            [(f"step {repeat.step} of {repeat.steps} in it", inks.strong)],
        ]

    def _in_one(self, repeats: tuple[InRepeat, ...], width: int) -> Line:
        if not repeats:
            return []
        inks, inner = self.inks, repeats[-1]
        count = " › ".join(which(repeat) for repeat in repeats)
        head: list[Piece] = [(f"repeat {count}", inks.place)]
        tail: list[Piece] = [(f"step {inner.step} of {inner.steps}", inks.strong)]
        room = width - length(head) - length(tail) - 4
        bar = self._bar(repeats[0], room) if room >= 4 else []
        return [*head, ("  ", inks.text), *bar, ("  " if bar else "", inks.text), *tail]

    def _bar(self, repeat: InRepeat, width: int) -> list[Piece]:
        """A square a pass: done, here, to come; in proportion where there are many."""
        if repeat.of == 0 or width < 1:
            return []
        cells = min(repeat.of, width)
        here = (repeat.k - 1) * cells // repeat.of
        inks = self.inks
        rest = TO_COME * (cells - here - 1)
        return [(DONE * here, inks.mark), (HERE, inks.place), (rest, inks.quiet)]


def which(repeat: InRepeat) -> str:
    """Like "3 of 8", or "3" where the number of passes is not known."""
    return f"{repeat.k} of {repeat.of}" if repeat.of else str(repeat.k)
