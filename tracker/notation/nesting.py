"""What stars and brackets share: they hold elements, and hold one another."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import replace

from tracker.notation.at_ends import AtEnds
from tracker.notation.round_text import Stated
from tracker.notation.things import Tail
from tracker.notation.tree import Node, Repeat

#: Stars and brackets in one another deeper than this are not written by people.
DEEPEST = 12


class Nesting(AtEnds, ABC):
    """Elements in elements.

    Attributes:
        stated: the printed count, as far as it was read.
        split: whether two different counts are printed.
    """

    stated: Stated | None = None
    split = False

    @abstractmethod
    def sequence(self, stop: int) -> list[Node]:
        """``sequence = {element | separator}`` up to token ``stop``."""

    @abstractmethod
    def element(self, before: list[Node]) -> list[Node]:
        """One element; always moves on. ``before``: what was read before it."""

    def _inside(self, close: int) -> list[Node]:
        """``"(" sequence ")"``, where token ``close`` is the bracket that closes it"""
        self.at += 1
        self.deep += 1
        body = self.sequence(close)
        self.deep -= 1
        self.at = close + 1
        return body

    def _deeper(self) -> bool:
        """Go one level down, unless that is deeper than people write."""
        if self.deep >= DEEPEST:
            return False
        self.deep += 1
        return True

    def _repeat(self, body: tuple[Node, ...], tail: Tail, start: int, starred: bool) -> Repeat:
        """The repeat of ``body`` that the words behind it ask for."""
        return Repeat(
            body,
            start,
            self.last_end,
            times=tail.times,
            more=tail.more,
            leave=tail.leave,
            kind=tail.kind,
            starred=starred,
            omit=tail.omit,
            until=tail.until,
            upto=tail.upto,
        )

    def _keep(self, stated: Stated) -> None:
        """The last printed total is the round's; one in groups gives way to it."""
        if stated.sides and not stated.total and not stated.parts and self.stated is not None:
            self.stated = replace(self.stated, sides=(*self.stated.sides, *stated.sides))
            return
        if self._two_totals(stated):
            self.split = True
        if self.stated is None or stated.total is not None or self.stated.total is None:
            self.stated = stated

    def _two_totals(self, stated: Stated) -> bool:
        """Whether two different totals are printed with words to be worked between them."""
        before = self.stated
        if before is None or not before.total or not stated.total:
            return False
        between = self.text[before.end : stated.start]
        return before.total != stated.total and any(c.isalpha() for c in between)
