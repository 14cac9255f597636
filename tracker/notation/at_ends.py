"""Reading what is told of the ends of a round that goes on as a whole: "…, 2 sc in last st"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.dictionary import STITCHES
from tracker.notation.merging import goes_round
from tracker.notation.spreading import CHANGES, Spreading
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Evenly, Figure, Make, Node, Target, Unread
from tracker.notation.wordlists import VERBS

#: Words of a row, which has two ends of one stitch each.
_OF_ROWS = frozenset(("across", "row", "turn"))
_END = ("end", "ends")
#: "Dec 2 sts" may be one decrease of two stitches.
_AMBIGUOUS = 2


class AtEnds(Spreading):
    """Rules for the ends of a round, told behind "sc around" or "sc across"."""

    def at_the_ends(self, before: list[Node]) -> list[Node] | None:
        """``added | what "in" (both ends | first | last)``, of the round told before it

        What comes first takes the place of that round, and holds it.
        """
        last = before[-1] if before else None
        if isinstance(last, Evenly) and not last.change:
            found = self._shaped(last)
            return None if found is None else found[1:]
        if not isinstance(last, Make) or not goes_round(before) or not _whole(last):
            return None
        mark = self.at
        found = self._added(last) or self._shaped(last)
        if found is None:
            self.at = mark
            found = self._at_ends_of(last)
        if found is None:
            self.at = mark
        else:
            before.pop()
        return found

    def _shaped(self, whole: Make | Evenly) -> list[Node] | None:
        """``change figure "sts"``: so many of them, wherever they are

        "Dec 2 sts" may be a single one, too.
        """
        mark, start = self.at, self.here.start
        self.accept_any("and", "then", "also")
        word = self.accept_any(*CHANGES)
        figure = self.accept_figure() if word else None
        if figure is not None and self.accept_any("sts", "stitches") and self._clause_is_over():
            if min(figure) == _AMBIGUOUS and CHANGES[word] < 0:
                why = "may be one decrease or two"
                return [whole, Unread(self.text[start : self.last_end], start, self.last_end, why)]
            changed = Evenly(figure, CHANGES[word], start, self.last_end, whole.stitch)
            return [whole, changed] if isinstance(whole, Evenly) else [changed]
        self.at = mark
        return None

    def _added(self, whole: Make) -> list[Node] | None:
        """``("add" | "adding") figure (stitch [place] | place)``: increases, wherever they are"""
        if not self.accept_any("add", "adding"):
            return None
        figure = self.accept_figure()
        if figure is None:
            return None
        self.accept_any("extra", "more", "increase", "increases", "inc")
        named = self.kind() == "st" or self.accept_phrase(self.lexicon.phrases) is not None
        spread = self._spread_words() or self._somewhere() or self._at_ends() == "last"
        if not (spread or (named and self._clause_is_over())):
            return None
        return [Evenly(figure, 1, whole.start, self.last_end, whole.stitch)]

    def _at_ends_of(self, whole: Make) -> list[Node] | None:
        """``what "in" place``, the place at an end of the round or at both"""
        self.accept_all("and", "with", *VERBS, "an", "a")
        what = self._at_each_end(whole.stitch)
        self.accept_any("at", "in", "into", "on")
        if what is None or self.tokens[self.at - 1].text not in ("at", "in", "into", "on"):
            return None
        several = self._several_ends()
        if several is not None and self._clause_is_over():
            return self._spread_over(what, several, whole)
        ends = self._which_ends()
        return self._with_ends(whole, what, ends) if self._clause_is_over() else None

    def _at_each_end(self, of: Stitch) -> Make | None:
        """``increase | decrease | figure [stitch]``: what is made at an end"""
        start, word = self.here.start, self.accept_any(*CHANGES)
        if word:
            self.accept_any("1", "one")
            stitch = STITCHES["inc" if CHANGES[word] > 0 else "dec"]
            return Make(stitch, (1,), None, start, self.last_end)
        figure = self.accept_figure()
        stitch = self._stitch() or of
        if figure is None or stitch.takes != 1:
            return None
        return Make(stitch, figure, None, start, self.last_end)

    def _several_ends(self) -> Figure | None:
        """``"each of" ["the"] figure ("end" kind | kind "at" ("each" | "both") "ends")``

        How many that is at both ends; () where it is not said.
        """
        mark = self.at
        self.accept_all("each", "both", "all", "of", "the")
        figure = self.accept_figure()
        before = self.accept_any(*_END)
        named = self.kind() is not None
        behind = self.accept_any("at", "on") and self.accept_any("each", "both")
        if behind:
            self.accept("of", "the")
        behind = behind and self.accept_any(*_END)
        if figure is not None and (before or behind):
            return tuple(2 * n for n in figure)
        if figure is None and before and (named or self._clause_is_over()) and not self._flat():
            return ()
        self.at = mark
        return None

    def _flat(self) -> bool:
        """Whether the words are those of a row."""
        return any(t.text in _OF_ROWS for t in self.tokens)

    def _which_ends(self) -> tuple[bool, bool]:
        """``["the"] "first" [kind] ["and" ["the"] "last" [kind]] | "each end" …``"""
        begin = self.at
        self.accept_all("each", "both", "of", "the")
        words = {token.text for token in self.tokens[begin : self.at]}
        end = self.accept_any(*_END)
        if end:
            self.kind()
            return end == "ends" or not words.isdisjoint(("each", "both")), True
        first = self._one_end("first", "1st")
        if first and not self._clause_is_over():
            self.accept_any("and", "&")
            self.accept_any("in", "into")
            self.accept_all("the", "1", "in")
            return True, self._one_end("last", "final")
        return first, not first and self._one_end("last", "final")

    def _one_end(self, *words: str) -> bool:
        """``("first" | "last") [kind]``"""
        if not self.accept_any(*words):
            return False
        self.accept_any("one")
        return self.kind() in (None, "st", *STITCHES)

    def _with_ends(self, whole: Make, what: Make, ends: tuple[bool, bool]) -> list[Node] | None:
        """The round with what is made at its first end, its last, or both."""
        first, last = ends
        if not first and (not last):
            return None
        what = replace(what, end=self.last_end)
        one = what.stitch.takes == 1
        leave = (what.stitch.takes * int(last),)
        middle = replace(whole, target=Target(At.EACH, leave=leave))
        begin = replace(what, target=Target(At.FIRST) if one else None)
        end = replace(what, target=Target(At.LAST) if one else None)
        return [*([begin] if first else []), middle, *([end] if last else [])]

    def _spread_over(self, what: Make, several: Figure, whole: Make) -> list[Node] | None:
        """An increase in each of ``several`` stitches; () as many as the count tells."""
        widens = what.stitch.makes * what.count[0]
        if what.stitch.takes != 1 or widens != 2:
            return None
        found = Evenly(several, 1, whole.start, self.last_end, whole.stitch)
        return [found if several else replace(found, to=True, ends="both")]


def _whole(node: Make) -> bool:
    """Whether a stitch goes into every stitch of the round, without a bound."""
    target = node.target
    return target is not None and (target.kind, target.leave, target.until) == ("st", None, "")
