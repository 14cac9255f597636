"""Making up: its sentences, one under the other, ticked as they are done."""

from __future__ import annotations

from tracker.screens.flow import Line, paragraph
from tracker.screens.inks import Inks
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance

TICKED, HERE, OPEN = "✓ ", "▸ ", "· "


class Ticks(Slot):
    """All sentences; where they do not fit, those round the current one."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The current sentence is always wholly in sight where it fits at all."""
        width, height = room
        seen = view.glance
        blocks = tick_lines(seen, view.sentences, width, self.inks)
        if not blocks:
            return []
        here = len(blocks) - 1 if seen.part_done else min(seen.round, len(blocks)) - 1
        first = here
        spare = height - len(blocks[here])
        while first > 0 and len(blocks[first - 1]) <= spare // 2:
            first -= 1
            spare -= len(blocks[first])
        rest = [line for block in blocks[first:] for line in block]
        every = [line for block in blocks for line in block]
        return every if len(every) <= height else rest


def tick_lines(
    seen: Glance, sentences: tuple[str, ...], width: int, inks: Inks
) -> list[list[Line]]:
    """The lines of each sentence."""
    done = len(sentences) if seen.part_done else seen.round - 1
    blocks: list[list[Line]] = []
    for number, sentence in enumerate(sentences):
        mark, ink = TICKED, inks.done
        if number >= done:
            mark, ink = (HERE, inks.place) if number == done else (OPEN, inks.text)
        rows = paragraph(sentence, width - len(mark))
        blocks.append([[(mark if not n else "  ", ink), (row, ink)] for n, row in enumerate(rows)])
    return blocks
