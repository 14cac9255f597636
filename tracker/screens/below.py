"""The rounds to come, and beneath them how the present stitch goes."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.screens.flow import Line, Piece, cut_line, paragraph
from tracker.screens.inks import Inks
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Coming, Glance

LABEL = 10
"""Columns for the label of a round to come, at the least."""

ENDS = 14
"""Columns for the count it must end on, which is left out where there are few."""

WIDE = 68


class Below(Slot):
    """Coming rounds; the loops and the how-to, where wanted, take the lower rows."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The next round always stays, unless a how-to or a loop needs all the room."""
        detail = [] if view.beside else self._detail(view, room)
        keep = room.height - len(detail)
        ahead = self._coming(view.glance.coming[:keep], room.width)
        return [*ahead, *([[]] * (keep - len(ahead))), *detail]

    def _detail(self, view: View, room: Room) -> list[Line]:
        seen, (width, height) = view.glance, room
        if view.how:
            return how_lines(seen, width, self.inks)[:height]
        lower = height - 1 if height > 2 else height
        return loop_lines(seen, width, lower, self.inks) if seen.loops_shown else []

    def _coming(self, coming: Sequence[Coming], width: int) -> list[Line]:
        label = max([LABEL, *(len(one.label) + 2 for one in coming)])
        return [self._one(one, min(label, width // 2), width) for one in coming]

    def _one(self, one: Coming, label: int, width: int) -> Line:
        inks = self.inks
        ends = "" if one.ends_on is None else f"ends on {one.ends_on}"
        line: list[Piece] = [(one.label.ljust(label), inks.text)]
        if width >= WIDE:
            line.append((ends.ljust(ENDS), inks.text))
        return cut_line([*line, (one.text, inks.quiet)], width)


def loop_lines(seen: Glance, width: int, room: int, inks: Inks) -> list[Line]:
    """The loops of the stitch with the next one lit; from that one on where room is short."""
    blocks = [
        _loop(number, words, seen.loop, len(seen.loops), width, inks)
        for number, words in enumerate(seen.loops)
    ]
    every = [line for block in blocks for line in block]
    if len(every) <= room or not blocks:
        return every
    first = min(seen.loop, len(blocks) - 1)
    return [line for block in blocks[first:] for line in block][:room]


def _loop(number: int, words: str, done: int, loops: int, width: int, inks: Inks) -> list[Line]:
    head = f"{'loop ' if width >= WIDE else ''}{number + 1} of {loops}  "
    ink = inks.done if number < done else inks.place if number == done else inks.text
    rows = paragraph(words, width - len(head) - 2)
    mark = "▸ " if number == done else "✓ " if number < done else "  "
    first: Line = [(mark, inks.place), (head, ink), (rows[0], ink)]
    return [first, *([(" " * (len(head) + 2) + row, ink)] for row in rows[1:])]


def how_lines(seen: Glance, width: int, inks: Inks) -> list[Line]:
    """How the present stitch is made."""
    words = seen.how_to or "nothing is written on how this is made"
    return [[(row, inks.text)] for row in paragraph(f"{seen.step_text}: {words}", width)]
