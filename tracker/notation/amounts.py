"""Reading how many and how often, behind a stitch: "sc 3", "sc x 3", "inc 3 times"."""

from __future__ import annotations

from tracker.notation.kit import TIMES_WORDS
from tracker.notation.shorthand import Shorthand
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type
from tracker.notation.tree import Figure
from tracker.notation.wordlists import STITCH_WORDS


class Amounts(Shorthand):
    """Rules for numbers of stitches and numbers of times.

    ``listing`` tells whether numbers stand in brackets behind their stitches.
    """

    listing = False

    def _named_by_number(self) -> bool:
        """Whether the number here begins the name of a stitch: "2V-st"."""
        mark = self.at
        found = self.here.type is Type.NUMBER and self._stitch_here()
        self.at = mark
        return found

    def _count_behind(self) -> Figure | None:
        """``"sc 3"``, ``"sc x 3"``: a number behind its stitch."""
        mark = self.at
        crossed = self._crossed()
        set_off = self._in_bracket() or self._behind_hyphen()
        if set_off is not None:
            return set_off
        figure = self.accept_figure()
        if figure is None:
            self.at = mark
            return None
        if self.accept("more", "times"):
            return figure
        if not crossed and self._belongs_to_next():
            self.at = mark
            return None
        if self.here.text in ("times", *self.crosses) and not crossed:
            self.at = mark
            return None
        return figure

    def _in_bracket(self) -> Figure | None:
        """``"(" number ")"`` in the middle of a list: "sc (11), inc, sc (12)", but no last count"""
        close = self.closing() if self.here.type is Type.OPEN else -1
        if close != self.at + 2 or self.ahead().type is not Type.NUMBER:
            return None
        figure = (self.ahead().value,)
        mark, self.at = self.at, close + 1
        goes_on = self.listing and self.here.type is Type.OPEN
        if self.accept_any(",", ";"):
            self.accept_number()
            self.accept_any("a", "an", "1")
            goes_on = self._stitch_here()
        self.at = close + 1 if goes_on else mark
        self.listing = self.listing or goes_on
        return figure if goes_on else None

    def _behind_hyphen(self) -> Figure | None:
        """``"-" number`` that touches its stitch: "sc-11, inc-1", but not of "sc-2tog"."""
        sign, number, after = self.here, self.ahead(), self.ahead(2)
        touching = self.tokens[self.at - 1].end == sign.start and sign.end == number.start
        if sign.text != "-" or not touching or number.type is not Type.NUMBER:
            return None
        ends = after.type is Type.END or after.text in (",", ";", ".") or after.type is Type.OPEN
        if not ends:
            return None
        self.at += 2
        return (number.value,)

    def _shaped_behind(self, stitch: Stitch) -> Figure | None:
        """``figure stitch`` behind an increase or decrease: "dec 1 sc", "inc 2 sts"."""
        mark = self.at
        figure = self.accept_figure()
        places = stitch.us == "inc" and self.here.text in STITCH_WORDS
        shapes = stitch.us in ("inc", "dec", "invdec") and (places or figure == (1,))
        if figure and shapes and self.kind() is not None and self._clause_is_over():
            return figure
        self.at = mark
        return None

    def _belongs_to_next(self) -> bool:
        """Whether the number just read stands before its stitch: "sc 3 inc" against "sc 3 inc 1"

        It stands behind its own where every stitch that follows in the clause has its number
        behind it as well.
        """
        if self.here.text in STITCH_WORDS:
            return self.ahead().text != "evenly"
        mark, found = self.at, False
        while self._stitch_here() and not found:
            self.accept_phrase(self.lexicon.phrases)
            found = self.accept_figure() is None or self.here.text in ("times", *self.crosses)
        self.at = mark
        return found

    def _times_behind(self) -> Figure | None:
        """``times = "x" figure | figure "times" | "twice" | "*" figure``"""
        mark = self.at
        if not self.accept("in", "total"):
            self.accept("a", "total", "of")
        starred = self.here.text == "*" and not self.starring
        if self._crossed() or (starred and self.ahead().type is Type.NUMBER and self.accept("*")):
            figure = self.accept_figure()
            if figure is not None:
                self.accept_any("times")
                return figure
            self.at = mark
            return None
        if self.here.text in TIMES_WORDS and self.ahead().text != "more":
            self.at += 1
            return (TIMES_WORDS[self.tokens[self.at - 1].text],)
        figure = self.accept_figure()
        often = figure is not None and self.accept_any("times", *self.crosses, "time")
        if often and self.here.text != "more":
            self.accept_any("total")
            if self.here.text == "in" and self.ahead().text in ("all", "total"):
                self.at += 2
            return figure
        self.at = mark
        return None
