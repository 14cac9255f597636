"""What the maker is told: what is asked, what is wrong, what the last press did."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.screens.actions import Keys
from tracker.screens.entry import Entry
from tracker.screens.flow import CUT, Line, cut, paragraph, spread
from tracker.screens.keys import shown
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance

HELD = "a key held down: it counts once"


class Notice(Slot):
    """The number being typed, trouble with saving, what is asked, doubts about the round."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The most pressing first, set low; where it is cut, the key to all of it."""
        width, height = room
        seen, inks = view.glance, self.inks
        said = [(words, inks.warn) for words in (*told(seen, view.keys), view.untold)]
        if view.entry is not None:
            said.insert(0, (cut(prompt(view.entry, view.keys, width), width), inks.place))
        else:
            said.insert(1 if seen.trouble else 0, (asked(seen, view.keys), inks.strong))
        left = "" if seen.at_end else seen.left
        said += [(words, inks.text) for words in (left, view.care, seen.note)]
        rows = [(row, ink) for words, ink in said if words for row in paragraph(words, width)]
        asides = [(cut(words, width), inks.quiet) for words in packed(view.asides, width)]
        rows += asides[: max(0, height - len(rows))]
        if len(rows) <= height:
            return [*([[]] * (height - len(rows))), *([piece] for piece in rows)]
        more = f"  {shown(view.keys['before'][0])} more"
        words, ink = rows[height - 1]
        last = [(cut(words + CUT, width - len(more)), ink), (more, inks.quiet)]
        return [*([piece] for piece in rows[: height - 1]), last]


def told(seen: Glance, keys: Keys) -> tuple[str, ...]:
    """What must be known here, the most pressing first."""
    off = f"{shown(keys['wrong'][0])}: {seen.off}" if seen.off else ""
    every = (seen.trouble, off, seen.right, seen.memo, seen.warning)
    return tuple(words for words in every if words)


def packed(asides: Sequence[str], width: int) -> list[str]:
    """Several short sayings in as few rows as they need."""
    rows: list[str] = []
    for words in asides:
        both = f"{rows[-1]} · {words}" if rows else words
        if rows and len(both) <= width:
            rows[-1] = both
        else:
            rows.append(words)
    return rows


class Last(Slot):
    """What the last press did; the pace and the mark at the right."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """One row."""
        seen, inks = view.glance, self.inks
        pace = f"a press is a {seen.pace.value}"
        mark = f"marked: {seen.mark} · " if seen.mark else ""
        did = HELD if view.held else seen.last_press
        left = [("last press  ", inks.quiet), (did, inks.text)]
        for right in (mark + pace, pace, f"by {seen.pace.value}"):
            line = spread(left, [(right, inks.quiet)], room.width)
            if len(line) > len(left):
                return [line]
        return [spread(left[1:], [(f"by {seen.pace.value}", inks.quiet)], room.width)]


def prompt(entry: Entry, keys: Keys, width: int) -> str:
    """The number being typed, and what the keys do with it."""
    typed = f"{entry.asked.value}: {entry.digits}_"
    yes, no = shown(keys["next"][0]), shown(keys["back"][0])
    long = f"{typed}   {yes} takes it, {no} corrects it, esc drops it"
    return long if len(long) <= width else f"{typed}  {yes}: yes  esc: no"


def asked(seen: Glance, keys: Keys) -> str:
    """What is asked at the end of a round or a part; "" where nothing is."""
    yes = shown(keys["next"][0])
    if seen.piece_done:
        return "The piece is done."
    if seen.part_done:
        return f"{yes}: {seen.part} is done, {seen.step_where}"
    if seen.until and seen.at_end:
        enough, measure = (shown(keys[name][0]) for name in ("long-enough", "measure"))
        # Short enough that the two that go on are whole in 40 columns, with more behind them.
        return f"{yes}: one more  {enough}: enough  {measure}: measure"
    if not seen.asking:
        return ""
    if seen.ends_on is None:
        return f"Type what you counted, or {yes} to go on."
    return f"{yes}: it is {seen.ends_on}, or type your count"
