"""Reading shorthands of single crochet: "MR 6", "(2, inc) x 6"."""

from __future__ import annotations

from tracker.notation.dictionary import STITCHES
from tracker.notation.objects import Objects
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Make
from tracker.notation.wordlists import END_WORDS, STITCH_WORDS

#: Words behind "in" that lead to a place.
_PLACED = ("next", "each", "every", "first", "last", "same")
#: What parts the stitches of a list: "(3+inc) x 6", "3 & inc".
_PARTING = (",", ";", "+", "&", "and")


class Shorthand(Objects):
    """Rules for single crochets that are not named."""

    def bare_number(self) -> Make | None:
        """``ring figure | figure "," increase | increase "," figure ")"``

        Single crochets without a name: "MR 6" and "(2, inc) x 6", the shorthand of round
        after round of single crochet (common practice, no source).
        """
        mark, start = self.at, self.here.start
        ring = self._ring()
        figure = self.accept_figure()
        if figure is not None and ring is not None and self._clause_is_over():
            return Make(STITCHES["sc"], figure, ring, start, self.last_end)
        if ring is None and self.accept_any(*STITCH_WORDS):
            figure = figure or (1,)  # "(2 sts, dec) x 6", "(st, inc) x 6"
        end, behind = self.last_end, self.accept_any(*_PARTING)
        shaped = figure is not None and ring is None and bool(behind) and self._shapes()
        self.at = mark
        before = [t.text for t in self.tokens[max(0, mark - 2) : mark]]
        closed = self.ahead(1 + (self.ahead().text in STITCH_WORDS)).type is Type.CLOSE
        listed = len(before) > 1 and before[0] in ("inc", "dec") and before[1] in _PARTING
        if listed and closed:
            shaped = True
        if figure is None or not shaped:
            return self._unnamed_in(start)
        self.accept_figure()
        self.accept_any(*STITCH_WORDS)
        return Make(STITCHES["sc"], figure, None, start, end)

    def _shapes(self) -> bool:
        """Whether an increase or decrease without a number stands here and ends its clause."""
        mark, start = self.at, self.here.start
        key = self.accept_phrase(self.lexicon.phrases)
        if key is not None:
            decreases = self.lexicon.stitch(key).takes > 1
            return (decreases or key == "inc") and self._is_listed()
        self.at = mark
        return bool(self._unnamed_in(start) or self._bunched_in()) and self._is_listed()

    def _bunched_in(self) -> bool:
        """``figure stitch "in" "next"``: several in one place"""
        mark, figure = self.at, self.accept_figure()
        named = figure not in (None, (1,)) and self.accept_phrase(self.lexicon.phrases)
        target = self.target() if named else None
        if target is None or target.at is not At.NEXT or target.count is not None:
            self.at = mark
            return False
        return True

    def _is_listed(self) -> bool:
        """Whether a list, or a part of it, is over here."""
        counted = self.here.text in ("-", "=") and self.ahead().type is Type.NUMBER
        return counted or self.here.type is Type.STAR or self._clause_is_over()

    def _unnamed_in(self, start: int) -> Make | None:
        """``figure "in" place | "tog"``: stitches of the round's kind, as "2 in next"."""
        mark = self.at
        if self.accept("tog"):
            self._ends()
            if self._clause_is_over():
                return Make(STITCHES["dec"], (1,), None, start, self.last_end, numbered=False)
        self.at = mark
        figure = self.accept_figure()
        self.accept_any("sts", "stitches", "times")
        at = self.at
        if figure is not None and self.accept_any("in", "into"):
            self.accept_any("the")
            ring = None if self.begun else self._ring()
            if ring is not None and self._is_listed():
                return Make(STITCHES["sc"], figure, ring, start, self.last_end)
            if self.here.text in _PLACED and self._st_or_end(self.at + 1):
                self.at = at
                stitch = self._named_before(mark) or STITCHES["sc"]
                return Make(stitch, figure, self.target(), start, self.last_end)
        self.at = mark
        return None

    def _st_or_end(self, at: int) -> bool:
        """Whether a stitch, or nothing more of the clause, stands at a token."""
        mark, self.at = self.at, at
        self.accept_figure()
        found = self._is_listed() or self.here.text in ("-", "=", *END_WORDS)
        found = found or bool(self.accept_any(*STITCH_WORDS))
        found = found or self.accept_phrase(self.lexicon.phrases) is not None
        self.at = mark
        return found

    def _named_before(self, end: int) -> Stitch | None:
        """The plain stitch named last before a token."""
        mark, found = self.at, None
        for index in range(end):
            self.at = index
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and self.lexicon.stitch(key).height:
                found = self.lexicon.stitch(key)
        self.at = mark
        return found
