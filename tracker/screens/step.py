"""The next step: in block letters where there is room, else in plain words."""

from __future__ import annotations

from tracker.fabric.steps import Kind
from tracker.screens.flow import Line, cut_line, paragraph
from tracker.screens.glyphs import ROWS, block, width_of
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance


def scale_for(text: str, width: int, height: int) -> int:
    """How large the text can be drawn: 2, 1, or 0 for not at all."""
    for scale in (2, 1):
        wide = width_of(text, scale)
        if wide is not None and wide <= width and height >= ROWS * scale:
            return scale
    return 0


class Step(Slot):
    """What to make now."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """In block letters, or in words with where it goes where only one row is there."""
        width, height = room
        seen, ink = view.glance, self.inks.place
        if height < ROWS:
            return [cut_line([(whole(seen), ink)], width)]
        text = sign(view)
        scale = scale_for(text, width, height)
        rows = list(block(text, scale) or ()) if scale else paragraph(text, width)[:height]
        return [[(row, ink)] for row in rows]


class Aim(Slot):
    """Where the step goes, what is special about it, and what comes then."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """In one row, or beside the block letters: each of the three in rows of its own."""
        if room.height < ROWS:
            return [self._in_one(view, room.width)]
        seen, inks, width = view.glance, self.inks, room.width
        parts = ((whole(seen), inks.place), (alert(view), inks.warn), (seen.after, inks.quiet))
        lines: list[Line] = []
        for (words, ink), rows in zip(parts, (2, 2, room.height - 4), strict=True):
            shown = [[(row, ink)] for row in paragraph(words, width) if row][:rows]
            lines += [*shown, *([[]] * (rows - len(shown)))]
        return lines

    def _in_one(self, view: View, width: int) -> Line:
        differs, after, inks = alert(view), view.glance.after, self.inks
        gap = "  " if differs and after else ""
        line = [(differs, inks.warn), (gap, inks.text), (after, inks.quiet)]
        return cut_line(line, width)


SIGNS = {
    Kind.FASTEN: "fasten",
    Kind.MARKER: "marker",
    Kind.SENTENCE: "read",
}
"""Words for steps whose own have no room in block letters."""


def sign(view: View) -> str:
    """The one word to be read from afar: the step, or what is asked at a round's end."""
    seen = view.glance
    if seen.part_done or seen.piece_done:
        return "done"
    if seen.at_end:
        return "long?" if seen.until else "count"
    run = view.walk[seen.place.step].run
    if run.kind is Kind.COLOUR and run.colour:
        return f"yarn {run.colour}"
    return SIGNS.get(run.kind, seen.step_text)


def whole(seen: Glance) -> str:
    """The step and where it goes, as it is written; what is asked at a round's end."""
    words = (word for word in (seen.step_text, seen.step_where) if word)
    return (": " if seen.at_end else " ").join(words)


def alert(view: View) -> str:
    """What is special here, and what the eyes are needed for; "" for nothing."""
    return "; ".join(words for words in (special(view.glance), view.cue) if words)


def special(seen: Glance) -> str:
    """That the first or last of a special stitch is worked differently; "" if not."""
    return f"the {seen.variant} one is worked differently" if seen.variant else ""
