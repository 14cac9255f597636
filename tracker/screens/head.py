"""The head: which round of which part and copy, of what, with which yarn and hook."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.verdicts import Verdict
from tracker.screens.flow import Line, cut, length, spread
from tracker.screens.slot import Room, Slot
from tracker.screens.view import View
from tracker.session.glance import Glance, numbered

DOT = " · "

APART = 3
"""Columns between what stands at the left and at the right."""

DOUBT = {Verdict.DIFFERS: "count differs", Verdict.UNREAD: "not fully read"}


class Head(Slot):
    """Two rows that are always there."""

    def lines(self, view: View, room: Room) -> list[Line]:
        """The round and part, then size, yarn and hook."""
        seen = view.glance
        return [self._where(seen, room.width), self._with(seen, view.times, room.width)]

    def _where(self, seen: Glance, width: int) -> Line:
        inks, start = self.inks, [(numbered(seen), self.inks.place)]
        for words, ink in ((seen.own, inks.mark), (DOUBT.get(seen.verdict), inks.warn)):
            if words:
                start += [(DOT, inks.quiet), (words, ink)]
        copy = f"{DOT}copy {seen.copy} of {seen.copies}" if seen.copies > 1 else ""
        room = width - length(start) - len(DOT) - len(copy)
        part = f"{DOT}{cut(seen.part, max(room, 1))}{copy}"
        return spread([*start, (part, self.inks.strong)], [(seen.title, self.inks.quiet)], width)

    def _with(self, seen: Glance, times: Sequence[str], width: int) -> Line:
        hook = f"hook {seen.hook}" if seen.hook else ""
        words = DOT.join(word for word in (seen.size, seen.colour, hook) if word)
        left: Line = [(words, self.inks.text)]
        fits = (one for one in times if length(left) + len(one) + APART <= width)
        return spread(left, [(next(fits, ""), self.inks.quiet)], width)
