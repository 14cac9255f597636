"""Reading what the hands do that makes no stitch: join, turn, colour, marker, end."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.talk import Talk
from tracker.notation.tokens import Type
from tracker.notation.tree import Act, At, Deed, Loops, Note, OtherSide, Skip
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    ENDINGS,
    JOINS,
    OTHER_SIDE,
    OTHER_SIDE_LEAD,
    PIECES,
    ROUND_WORDS,
)


class Deeds(Talk):
    """Rules for deeds."""

    def deed(self) -> Act | OtherSide | Loops | Note | Skip | None:
        """``deed = join | slip join | turn | other side | end | colour | marker | loops``"""
        for rule in (
            self._do_not,
            self.passes_join,
            self._aside,
            self._announced,
            self._distance,
            self._to_other_round,
            self._goes_on,
            self._forms_space,
            self._ring_made,
            self._start_here,
            self._changed_in_last,
            self._joined_on,
            self._join,
            self._slip_join,
            self._other_side,
            self._turn,
            self._fasten,
            self._colour,
            self._marker,
            self._loops_from_here,
        ):
            mark = self.at
            found = rule()
            if found is not None:
                return found
            self.at = mark
        return None

    def _joined_on(self) -> Note | None:
        """A slip stitch into a motif made before: it leaves nothing on this one"""
        start = self.here.start
        return Note(start, self.last_end) if self.begun and self.joins_piece() else None

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
        return self._hands_pass(start) if self.accept_any("working", "work") else None

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
        if self.accept_any("between", "behind", "over") or self.accept("of"):
            rounds = self.accept_any(*ROUND_WORDS) and self.accept_number()
            self.accept_any("the")
            if not rounds and self.accept_phrase(self.lexicon.phrases):
                self.accept_all("s", "st", "sts", "just", "made", "worked")
                rounds = 1  # "working in front of dc just made dc in skipped st"
            if rounds and (self._stitch_here() or self.here.text in JOINS):
                return Note(start, self.last_end)  # "working behind round 3 sc in next sc"
            self.to_clause_end()
            return Note(start, self.last_end) if self.here.text == "," else None
        if self.accept_any("in", "into"):
            self.accept_any("each", "every", "the")
            if self.kind() is not None and self._like_a_stitch():
                return Note(start, self.last_end)
        return None

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

    def _forms_space(self) -> Note | None:
        """``("to form" | "counts as") ["last"] space``: what chains and a stitch make together"""
        start = self.here.start
        if not (
            self.accept_any("forming", "for", "making")
            or self.accept("to", "form")
            or self.accept("to", "make")
        ):
            counts = self.accept_any("counts", "counting", "count", "counted")
            if not (counts and self.accept("as")):
                return None
        self.accept_all("the", "a", "as", "last", "final", "next", "new", "first")
        if not self._forms_part() and self._space() is None:
            return None
        self.accept_any("made")
        return Note(start, self.last_end)

    def _forms_part(self) -> bool:
        """``[ordinal] ("corner" | "petal" …)`` as the clause ends"""
        mark = self.at
        self.accept_ordinal()
        words = ("corner", "corners", "petal", "point", "side", "leaf", "scallop", "tip")
        if self.accept_any(*words) and self._clause_is_over():
            return True
        self.at = mark
        return False

    def _ring_made(self) -> Act | None:
        """``["make" | "create"] ring``: an adjustable ring to work into"""
        start = self.here.start
        self.accept_any("make", "create", "start", "with", "form", "begin")
        self.accept_any("with")
        self.accept_any("a", "an")
        ring, end, mark = self._ring(), self.last_end, self.at
        if ring is None or (self.accept_figure() and self._clause_is_over()):
            return None  # "MR 6" makes stitches too
        self.at = mark
        return Act(Deed.RING, start, end)

    def _start_here(self) -> Act | Note | Skip | None:
        """``("start" | "starting") target``: where the round begins"""
        mark, start = self.at, self.here.start
        if not self.accept_any("start", "starting", "beginning", "begin"):
            return None
        led = self.accept_any("with", "by")
        self.accept_any("making", "working")
        if (led and self._chain_ahead()) or self._number_of_stitches():
            return Note(start, self.last_end)
        self.accept_any("from")
        target = self.target()
        if target is not None and target.at is At.HOOK:
            return Skip((target.nth - 1,), "ch", start, self.last_end, At.FIRST)
        works = self._works_in_clause()
        if works and target is None:
            self.at = mark
            return None
        if not works:
            self.to_clause_end()
        if target is None or self.begun:
            return Note(start, self.last_end)
        return Act(Deed.COLOUR, start, self.last_end, target=replace(target, at=At.ANY))

    def _works_in_clause(self) -> bool:
        """Whether something is made further on in this clause."""
        mark, end, found = self.at, self.clause_end(), False
        while self.at < end and not found:
            found = self._stitch_named()
            self.at += 1
        self.at = mark
        return found

    def _number_of_stitches(self) -> bool:
        """Whether a number of stitches stands here."""
        mark = self.at
        found = self.accept_number() is not None and self._stitch_here()
        self.at = mark
        return found

    def _chain_ahead(self) -> bool:
        return self.here.text in ("a", *CHAIN_WORDS)

    def _turn(self) -> Act | None:
        """``("turn" | "flip") ["your"] ["work"] [("so" | "around") words]``"""
        start = self.here.start
        if self.accept_any("turn", "turning") or self.accept("flip"):
            self.accept_all("the", "your", "work", "over", "chain", "piece")
            if self.here.text in ("so", "around"):
                self.to_clause_end()
            return Act(Deed.TURN, start, self.last_end)
        return None

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

    def _fasten(self) -> Act | None:
        """``"fo" | ("fasten" | "cut" | "break" …) ("off" | "yarn" | "thread") words``"""
        start = self.here.start
        if (
            self.accept("fo")
            or self.accept("f", ".", "o")
            or self.accept("f", "/", "o")
            or (self.here.text in ENDINGS and self.ahead().text in ("off", "yarn", "the", "thread"))
        ):
            self.to_clause_end()
            return Act(Deed.FASTEN, start, self.last_end)
        return None

    def _marker(self) -> Act | None:
        """``"pm" | ("place" | "insert" | "attach") words "marker" words``"""
        start = self.here.start
        if self.accept("pm") or (
            self.here.text in ("place", "insert", "attach") and "marker" in self._clause_words()
        ):
            self.to_clause_end()
            return Act(Deed.MARKER, start, self.last_end)
        return None

    def _loops_from_here(self) -> Loops | None:
        """``["working" | "work"] ["in"] loop`` as a clause: it holds for what follows."""
        start, begin = self.here.start, self.at
        self.accept_any("working", "work", "crochet")
        self.accept_all("this", "the", "entire", "whole", "next", *ROUND_WORDS)
        self.accept_any("in", "through", "into", "along")
        self.accept_all("the", "unused", "remaining", "unworked", "free", "leftover", "left")
        self.loop = ""
        if not self.accept_loop():
            return None
        number = self._of_round()
        self.accept_all("throughout", "unless")
        led = self.tokens[begin].text in ("working", "work", "crochet", "in", "through")
        listed = self.here.type in (Type.OPEN, Type.STAR) or self.here.text in (":", ",", ".", ";")
        if listed or (led and self._begins_make()):
            return Loops(self.loop, start, self.last_end, number)
        return None

    def _of_round(self) -> int:
        """``["from" | "of"] ["the"] "round" number``: whose loops they are; 0 if not said"""
        mark = self.at
        self.accept_all("of", "from", "on", "the", "left")
        number = self.accept_number() if self.accept_any(*ROUND_WORDS) else None
        if number is None:
            self.at = mark
        return number or 0

    def _begins_make(self) -> bool:
        return self.here.type in (Type.NUMBER, Type.STAR, Type.OPEN) or self._stitch_here()
