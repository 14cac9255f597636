"""The round as a picture: its stitches on the round below, worked and to come."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from textual.style import Style

from tracker.fabric.steps import Kind
from tracker.screens.flow import Line, Piece
from tracker.screens.inks import Inks
from tracker.screens.picture_shapes import PITCH, TALL, own_marks
from tracker.screens.picture_signs import Look
from tracker.screens.picture_strip import Size, Stood, Strip
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View

Spots = Iterable[tuple[int, str, Style]]
"""Words with the column they begin at, from left to right."""

TALL_ROWS = TALL + 3
"""Rows of the tall picture: repeats, stitches, the round below, their names."""

BLANK = Style()

UNREAD = "no picture: the words of this round stand for themselves"


class Picture(Slot):
    """In one row the stitches alone; the round below, the repeats and names as rows allow."""

    def __init__(self, inks: Inks) -> None:
        super().__init__(inks)
        self._marks = own_marks()

    def lines(self, view: View, room: Room) -> list[Line]:
        """The rows that there is room for, from the top: repeats, stitches, the round below."""
        walk, width, height = view.walk, *room
        if walk.runs[0].kind is Kind.SENTENCE:
            return [*([[]] * (height // 2)), [(UNREAD, self.inks.quiet)]]
        large = height >= TALL_ROWS
        pitch = PITCH if large else 1 if height == 1 else 2
        size = Size(width, pitch, (1, 1, 3, 3, 4)[pitch])
        strip = Strip(walk, view.glance.place.step, size, view.terms, self._marks)
        stood = strip.stood()
        rows = [row_of(self._bodies(stood, row), width) for row in range(TALL if large else 1)]
        if height >= 2:
            rows.append(row_of(self._ground(stood), width))
        if height >= 3:
            rows.insert(0, row_of(self._turns(stood, width), width))
        if large:
            rows.append(row_of(self._names(stood), width))
        return list(rows)

    def _bodies(self, stood: Sequence[Stood], row: int) -> Spots:
        for one in stood:
            words = one.drawn.rows[row]
            lit = one.drawn.lit if one.here else len(words)
            yield one.x, words[:lit], self._ink(one)
            yield one.x + lit, words[lit:], self.inks.text

    def _ink(self, one: Stood) -> Style:
        inks = self.inks
        if one.here:
            return inks.now
        if one.sign.look is Look.GROW:
            return inks.grow
        if one.sign.look is Look.CLOSE:
            return inks.close
        return inks.mark if one.worked else inks.text

    def _ground(self, stood: Sequence[Stood]) -> Spots:
        """The edge of the round below, unbroken; heavy up to the place."""
        for one in stood:
            ink = self.inks.place if one.here else self.inks.mark if one.worked else self.inks.quiet
            line = self._marks.line[one.worked]
            yield one.x - one.gap, line * one.gap + one.drawn.foot, ink

    def _turns(self, stood: Sequence[Stood], width: int) -> Spots:
        """The number of each pass where it begins, or tens; the pointer over the current step."""
        here = next((one for one in stood if one.here), None)
        at = -2 if here is None else here.x + (here.drawn.lit - 1) // 2
        for one in stood:
            number = str(one.turn or one.tenth or "")
            whole = 0 <= one.x <= width - len(number)
            if number and whole and not one.x - 1 <= at <= one.x + len(number):
                yield one.x, number, self.inks.quiet
            if one.here:
                yield at, self._marks.here, self.inks.place

    def _names(self, stood: Sequence[Stood]) -> Spots:
        """What each kind of stitch is called, where it begins."""
        last, end = "", 0
        for one in stood:
            name = f"{one.sign.of} {one.run.text}" if one.sign.of > 1 else one.run.text
            x = max(one.x, 0)
            if name != last and x >= end and one.run.stitch:
                yield x, name, self.inks.place if one.here else self.inks.quiet
                end = x + len(name) + 1
            last = name


def row_of(spots: Spots, width: int) -> Line:
    """Words at their columns as one line of ``width``, cut off at both ends."""
    line: list[Piece] = []
    at = 0
    for x, words, ink in spots:
        if x > at:
            _add(line, " " * (min(x, width) - at), BLANK)
        seen = words[max(0, at - x) : max(0, width - x)]
        _add(line, seen, ink)
        at = max(x, at) + len(seen)
    return line


def _add(line: list[Piece], words: str, ink: Style) -> None:
    """Add to the line; words of one ink are kept together, since each piece costs."""
    if words and line and line[-1][1] is ink:
        line[-1] = (line[-1][0] + words, ink)
    elif words:
        line.append((words, ink))
