"""At the side of a wide screen: all parts, and how the present stitch goes."""

from __future__ import annotations

from tracker.screens.below import how_lines, loop_lines
from tracker.screens.flow import Line, cut, paragraph, spread
from tracker.screens.inks import Inks
from tracker.screens.slot import Room, Slot
from tracker.screens.step import special
from tracker.screens.view import View
from tracker.session.glance import PartLine

AHEAD = 9
"""Rows for what lies ahead."""


class Side(Slot):
    """Parts, then the how-to and the loops."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The parts at the top, as many as fit in half the height; the how-to follows."""
        width, height = room
        inks, seen = self.inks, view.glance
        parts: list[Line] = [[("parts", inks.quiet)]]
        for part in seen.parts:
            parts += part_lines(part, width, inks)
        how: list[Line] = [[("how to", inks.quiet)], *how_lines(seen, width, inks), []]
        if seen.variant:
            how.append([(special(seen), inks.warn)])
        loops = loop_lines(seen, width, height, inks)
        return [*parts[: height // 2], [], *self._ahead(view, width), *how, *loops]

    def _ahead(self, view: View, width: int) -> list[Line]:
        """What lies ahead, always in as many rows, so that nothing moves when it is known."""
        inks = self.inks
        rows = [row for words in view.ahead for row in paragraph(words, width)][:AHEAD]
        head: list[Line] = [[("ahead", inks.quiet)]] if rows else [[]]
        gap: list[Line] = [[]] * (AHEAD - len(rows) + 1)
        return [*head, *([(row, inks.text)] for row in rows), *gap]


def part_lines(part: PartLine, width: int, inks: Inks) -> list[Line]:
    """A line for each copy of a part."""
    ink = inks.place if part.here else inks.text if part.chosen else inks.done
    return [
        spread(
            [("▸ " if part.here else "  ", inks.place), (cut(words, width - 14), ink)],
            [(progress, ink)],
            width,
        )
        for words, progress in copies(part)
    ]


def copies(part: PartLine) -> list[tuple[str, str]]:
    """Each copy of a part by its name, and how far it is, in words."""
    many = len(part.copies)
    named = [f"{part.name}, copy {n} of {many}" if many > 1 else part.name for n in _from_1(many)]
    return [(name, how_far(part, copy)) for name, copy in zip(named, part.copies, strict=True)]


def _from_1(many: int) -> range:
    return range(1, many + 1)


def how_far(part: PartLine, copy: tuple[int, int, bool]) -> str:
    """Like "done", "not chosen" or "7 of 24"."""
    done, rounds, finished = copy
    if finished:
        return "✓ done"
    return f"{done} of {rounds}" if part.chosen else "not chosen"
