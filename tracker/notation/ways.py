"""Reading which way the work goes on: in a spiral, along a piece, on the other side."""

from __future__ import annotations

from tracker.notation.talk import Talk
from tracker.notation.tree import Note, OtherSide
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    JOINS,
    OTHER_SIDE,
    OTHER_SIDE_LEAD,
    PIECES,
    ROUND_WORDS,
    STITCH_WORDS,
)


class Ways(Talk):
    """Rules for where the hands go on working."""

    def _flat_or_round(self) -> bool:
        """``("work" | "working") "in" ["turned" | "joined" …] ("rows" | "rounds")`` as a clause"""
        mark = self.at
        if self.accept_any("work", "working", "worked") and self.accept_any("in", "flat"):
            self.accept_all("in", "turned", "joined", "flat", "continuous", "the", "a", "short")
            self.accept_any("rows", "rounds", "rnds", "spiral", "round")
            told = self.tokens[self.at - 1].text not in ("in", "the", "a")
            if told and (self._clause_is_over() or self.here.text == ":"):
                return True
        self.at = mark
        return False

    def _goes_on(self) -> Note | None:
        """``"continue" ["to" "work"] ["in"] ("spiral" | "rounds")``; or the end of a round"""
        start = self.here.start
        if self.accept_any("continue", "cont"):
            self.accept_all("to", "work", "working", "crocheting", "in", "a", "the")
            if self.accept_any("spiral", "round", "rounds", "rnd", "rnds", "rows"):
                return Note(start, self.last_end)
            return self._along_piece(start)
        if self._flat_or_round():
            return Note(start, self.last_end)
        if self.accept_any("at", "in"):
            self.accept_any("the")
            if self.accept("end", "of"):
                self.accept_all("the", "last", "this", "each")
                self.accept_ordinal()
                if self.accept_any("row", "rnd", "round", "rows"):
                    self.accept_number()
                    return Note(start, self.last_end)
            return None
        led = self.accept_any("working", "work", "crossing", "passing")
        return self._hands_pass(start) if led else None

    def _along_piece(self, start: int) -> Note | None:
        """``("on" | "along" …) piece ("with" | ":" | ",")``: where what is told next goes"""
        if not self.accept_any("on", "onto", "along", "around", "to", "with"):
            return None
        end, begin = self.clause_end(), self.at
        while self.at < end and self.here.text != "with":
            self.at += 1
        words = {t.text for t in self.tokens[begin : self.at]}
        if self._stitch_in_clause() and self.here.text != "with":
            return None
        self.accept("with")
        return Note(start, self.last_end) if words & PIECES else None

    def _hands_pass(self, start: int) -> Note | None:
        """``"working" ("between" | "behind" | "in front" ["of"]) words``: where the hands pass"""
        if self.accept("in", "front") and self.here.text != "of":
            return Note(start, self.last_end)
        back = self.accept("in", "back", "of") or self.accept("of")
        if back or self.accept_any("between", "behind", "over"):
            if self._passed_by() and (self._stitch_here() or self.here.text in JOINS):
                return Note(start, self.last_end)  # "working behind round 3 sc in next sc"
            if self._stitch_in_clause():
                return None
            self.to_clause_end()
            return Note(start, self.last_end) if self.here.text == "," else None
        if self.accept_any("in", "into"):
            self.accept_any("each", "every", "the")
            if self.kind() is not None and self._like_a_stitch():
                return Note(start, self.last_end)
        return None

    def _passed_by(self) -> bool:
        """``"round" number | ["the" "last"] [number] stitch ["just" "made"]``: what is passed"""
        if self.accept_any(*ROUND_WORDS):
            return self.accept_number() is not None
        self.accept_all("the", "last", "first", "previous", "these", "those", "both")
        self.accept_number()
        named = self.accept_phrase(self.lexicon.phrases) or self.accept_any(*STITCH_WORDS)
        self.accept_all("s", "st", "sts", "just", "made", "worked", "skipped")
        return bool(named)

    def _like_a_stitch(self) -> bool:
        """``["as" (("if" "it" "were") | "a" | "you" …) words]`` and the end of this clause"""
        if self.accept("as") and self.accept_any("if", "a", "stitches", "you", "though"):
            self.to_clause_end()
            return True
        return self.here.text == ","

    def _to_other_round(self) -> Note | None:
        """``("continue" | "go" | "proceed") ["on"] ("to" | "with") "round" number``"""
        start = self.here.start
        if not self.accept_any("continue", "cont", "go", "proceed", "move"):
            return None
        self.accept_any("on", "straight")
        if not self.accept_any("to", "with", "onto") or not self.accept_any(*ROUND_WORDS):
            return None
        numbered = self.accept_number() is not None and self._clause_is_over()
        return Note(start, self.last_end) if numbered else None

    def _other_side(self) -> OtherSide | None:
        """``… "other side of" ["the"] ["foundation"] "chain"``"""
        start = self.here.start
        begin = self.at
        self.accept_any("working", "work")
        self.accept_any("in", "into", "along", "through")
        self.accept_any("the")
        if self._free_loops():
            return OtherSide(start, self.last_end)
        self.at = begin
        while self.at < begin + 12 and not self._side_named():
            if not self.accept_any(*OTHER_SIDE_LEAD, "back"):
                return None
        word = self.accept_any(*OTHER_SIDE)
        sided = self.accept_any("side", "edge", "loops", "half")
        if word in ("other", "opposite", "back") and not sided:
            return None
        named = self.accept("of")
        if named:
            self.accept_all("the", "your", "foundation", "starting", "beginning", "beg", "base")
            named = bool(self.accept_any(*CHAIN_WORDS))
        self.accept("as", "follows")
        if word in ("bottom", "lower", "underneath") and not named:
            return None
        return OtherSide(start, self.last_end)

    def _side_named(self) -> bool:
        """Whether the other side is named here; not in "work back along …"."""
        leads = self.here.text == "back" and self.ahead().text in OTHER_SIDE_LEAD
        return self.here.text in OTHER_SIDE and not leads

    def _free_loops(self) -> bool:
        """``("free" | "unused" …) "loops" "of" ["the"] "foundation" "chain"``"""
        if not self.accept_any("free", "unused", "remaining", "unworked", "bottom"):
            return False
        if not self.accept_any("loop", "loops", "lp", "lps") or not self.accept_any("of", "on"):
            return False
        self.accept_all("the", "your", "foundation", "starting", "beginning", "beg", "base")
        return bool(self.accept_any(*CHAIN_WORDS))
