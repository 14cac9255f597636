"""Reading gaps as places: "between sts", "in sp between next 2 fans"."""

from __future__ import annotations

from itertools import pairwise

from tracker.notation.ends import Ends
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Target
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    GAP_WORDS,
    GROUPS,
    ROUND_WORDS,
    SPACE_WORDS,
    TILES,
    WHICH_TILE,
)

#: Words for shapings, between which a number of stitches may be asked for.
_SHAPED = frozenset(
    ["inc", "incs", "dec", "decs", "increase", "increases", "decrease", "decreases"]
)


class Gaps(Ends):
    """Rules for gaps."""

    def _between(self) -> Target | None:
        """``["sp"] "between" words``: a gap; there are as many as stitches in a round

        Between groups, such as fans, nothing of the round below is used up: the gaps between
        them are places of their own. So are those further down, or beside the edge.
        """
        mark = self.at
        self.accept_any("in")
        self.accept_any(*SPACE_WORDS, *GAP_WORDS)
        self.accept_any("in")
        if not self.accept_any("between", "bet"):
            self.at = mark
            return None
        clause = self._clause_words()
        numbered = self._names_round() or ("down" in clause and bool(clause & set(ROUND_WORDS)))
        begin = self.at
        while self.here.type in (Type.WORD, Type.NUMBER, Type.ORDINAL):
            self.at += 1
        words = {t.text for t in self.tokens[begin : self.at]}
        if not (clause & GROUPS or numbered or self._several_named(begin)):
            alone = words <= {"each", "every", "them"} or not words.isdisjoint(_SHAPED)
            if alone or self._two_by_number(begin):
                self.at = mark  # how many stand between shapings is no place
                return None
            return Target(At.NEXT if words.isdisjoint(("each", "every")) else At.EACH)
        self.to_clause_end()
        apart = "and" in words or not words.isdisjoint(CHAIN_WORDS)
        return Target(At.BELOW) if apart or numbered else Target(At.NEXT, "gap")

    def _two_by_number(self, begin: int) -> bool:
        """``number "and" number``: a gap by its place in the round, which is not followed"""
        counting = (Type.NUMBER, Type.ORDINAL)
        return any(
            one.type in counting and other.type in counting and mid.text in ("and", "&")
            for one, mid, other in zip(
                self.tokens[begin : self.at],
                self.tokens[begin + 1 : self.at],
                self.tokens[begin + 2 : self.at],
                strict=False,
            )
        )

    def _several_named(self, begin: int) -> bool:
        """Whether a stitch that is several, such as a V stitch, was named since token ``begin``."""
        mark, found = self.at, False
        self.at = begin
        while self.at < mark and not found:
            key = self.accept_phrase(self.lexicon.phrases)
            found = key is not None and key != "inc" and self.lexicon.stitch(key).makes > 1
            found = found or self.here.text in ("v", "vs")
            self.at += key is None
        self.at = mark
        return found

    def _names_round(self) -> bool:
        """Whether a round is named by its number up to the end of this clause."""
        clause = self.tokens[self.at : self.clause_end() + 1]
        return any(
            one.text in ROUND_WORDS and other.type is Type.NUMBER for one, other in pairwise(clause)
        )

    def of_tile(self) -> bool:
        """``("of" | "on") ["the" "next"] ["row" figure] tile``: a tile has one space only"""
        mark = self.at
        if self.accept_any("of", "on", "in", "from"):
            self.accept_all(*WHICH_TILE)
            self.accept_number()
            self.accept_all(*WHICH_TILE)
            if self.accept_any(*TILES):
                self._suffix()
                return True
        self.at = mark
        return False
