"""Reading what the hands do that makes no stitch: join, turn, colour, marker, end."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.tokens import Type
from tracker.notation.tree import Act, At, Deed, Loops, Note, OtherSide, Skip
from tracker.notation.ways import Ways
from tracker.notation.wordlists import CHAIN_WORDS, ENDINGS, ROUND_WORDS

#: Words behind "mark" that lead to a place.
_MARKED = ("any", "the", "a", "this", "that", "your", "first", "last", "each", "one")
#: Words for an edge that is held to another, and which of them it is.
_EDGES = ("edge", "edges", "end", "ends", "chain", "ch")
_WHICH_EDGE = (
    *("the", "both", "two", "short", "long", "first", "last", "final", "foundation"),
    *("starting", "beginning", "other", "of", "your", "strip", "band", "cuff"),
)
#: Words with which the hands go on to something else.
_ONWARD = ("and", "then", "now")


class Deeds(Ways):
    """Rules for deeds."""

    def deed(self) -> Act | OtherSide | Loops | Note | Skip | None:
        """``deed = join | slip join | turn | other side | end | colour | marker | loops``"""
        for rule in (
            self._do_not,
            self.passes_join,
            self._aside,
            self._at_an_edge,
            self._one_made,
            self._returning,
            self._said_of_work,
            self._announced,
            self._distance,
            self._in_turn,
            self._to_other_round,
            self._goes_on,
            self._forms_space,
            self._ring_made,
            self._start_here,
            self._changed_in_last,
            self._joined_on,
            self._seam,
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

    def _seam(self) -> Note | None:
        """``("sl st" | "sc" | "crochet" …) edge ("together" | "to" edge)``: closed to a tube"""
        start = self.here.start
        how = self.accept_any("crochet", "seam", "join", "whipstitch")
        stitched = not how and self.here.text in ("sl", "slip", "ss", "sc", "single")
        if stitched and self.accept_phrase(self.lexicon.phrases) not in ("sl st", "sc"):
            return None
        if not (how or stitched):
            return None
        if not self._edge():
            return None
        if self.accept_any("to", "and", "with"):
            over = self._edge() and (self.accept_any("together", "tog") or True)
        else:
            over = bool(self.accept_any("together", "tog"))
        if over and self.accept_any("with", "using", "by"):
            self.to_clause_end()
        if not over or not self._clause_is_over():
            return None
        return Note(start, self.last_end)

    def _edge(self) -> bool:
        """``["the"] ["last" | "foundation" …] ("row" | "edge" | "ends" | "chain")``"""
        self.accept_all(*_WHICH_EDGE)
        return bool(self.accept_any("row", "rows", "side", "sides", *_EDGES))

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
        """``[ordinal] ("corner" | "petal" …)`` as the clause ends, or before ``"and"``"""
        mark = self.at
        self.accept_ordinal()
        words = ("corner", "corners", "petal", "point", "side", "leaf", "scallop", "tip")
        over = self.accept_any(*words) and (self._clause_is_over() or self.here.text in _ONWARD)
        if over:
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
        self.at, self.in_ring = mark, True
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
        """``"pm" | ("place" | "insert" | "attach") words "marker" words | "mark" place``"""
        start = self.here.start
        marks = self.here.text in ("mark", "marking") and self.ahead().text in _MARKED
        if marks and self._clause_words().isdisjoint(("and", "then", "work", "with")):
            self.to_clause_end()
            return Act(Deed.MARKER, start, self.last_end)
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
