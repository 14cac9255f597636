"""Reading lines that ask for earlier rounds again: "Rep Rnds 3 and 4 twice"."""

from __future__ import annotations

from collections.abc import Set
from dataclasses import replace

from tracker.notation.grammar import Reader
from tracker.notation.kit import TIMES_WORDS
from tracker.notation.round_text import Again
from tracker.notation.tokens import Type
from tracker.notation.tree import Loops, Make, Note
from tracker.notation.wordlists import (
    CHANGING,
    GROUPS,
    ROUND_WORDS,
    SEPARATORS,
    STITCH_WORDS,
)

#: Words between "repeat" or "work" and the rounds that are meant, or the pattern.
_BEFORE_ROUNDS = (
    *("as", "like", "for", "the", "in", "pattern", "patt", "pat", "of", "working"),
    *("established", "est", "estab", "same", "stitch", "st"),
)

#: Without any of these words no round is asked for again.
_ASKS = frozenset(
    (
        *("rep", "reps", "repeat", "repeating", "repeated", "as", "same", "work", "continue"),
        *("cont", "alternate", "alternating", "like", "follow", "keep", "proceed", "carry"),
        *("go", "manner", "way", "before", "established"),
    )
)


class AgainReader(Reader):
    """Rules for rounds to be worked again."""

    _patterned: Set[str] = frozenset()
    _slipped = False

    def again(self) -> Again | None:
        """A round to be worked again; None, and nothing read, where the words ask for none."""
        asked = not _ASKS.isdisjoint(token.text for token in self.tokens)
        return self._rounds_again() if asked else None

    def _rounds_again(self) -> Again | None:
        """``again = ("rep" | "as" | "work") ["rounds"] number [("-" | "and") number] [times]``"""
        self.accept_all(",", ".", ":", "-", "then")
        these = self._these_rounds()
        self._lead_in()
        start = self.here.start
        if self._may_be_repeated() or self._same_again():
            return Again(0, 0, None, start, self.last_end)
        if self._goes_on_so():
            upto = self._up_to()
            return Again(0, 0, None, start, self.last_end, 1, upto, "manner")
        bracket = self.here.type is Type.OPEN and self.accept_any("(", "[")
        if self.ahead().text == "repeating":
            self.accept_any("keep", "continue", "cont", "go")
        verb = self.accept_any(
            *("rep", "repeat", "as", "same", "work", "continue", "cont", "repeating", "reps"),
            *("alternate", "alternating", "like", "follow"),
        )
        if not verb or (verb == "work" and self.here.text == "this"):
            return None
        if verb in ("continue", "cont") and self.accept("to"):
            self.accept_any("rep", "repeat", "work")
        begin = self.at
        self._before_rounds()
        self._patterned = {t.text for t in self.tokens[begin : self.at]}
        first = last = 0
        back = self._last_rounds() or these
        alike = "pattern" if not back and verb in ("continue", "cont", "work") else ""
        if back or (alike and self._in_pattern()):
            pass  # the rounds worked last
        else:
            if self.here.type is Type.WORD and self.ahead().text in ROUND_WORDS:
                self.at += 1  # the name of the part: "Rep Band Row 2"
            first, last = self._rounds()
            if not first:
                return None
        if bracket:
            self.accept_any(")", "]")
        times = self._times_of_rounds()
        upto = self._up_to() if times is None else 0
        alike = alike if not first and times is None else ""
        found = Again(first, last, times, start, self.last_end, back or 1, upto, alike)
        return replace(found, slips=self._slipped)

    def _these_rounds(self) -> int:
        """``("these" | "last") figure "rounds" ("form" | "set" …) "pattern" "."``: how many"""
        mark = self.at
        if self.accept_any("these", "last", "the"):
            self.accept_any("last", "above")
            figure = self.accept_number()
            if figure and self.accept_any(*ROUND_WORDS):
                self.accept_any("form", "set", "make", "establish", "complete", "create")
                self.accept_all("the", "up", "one")
                if self.accept_any("patt", "pattern", "pat") and self.accept_any(".", ",", ";"):
                    return figure
        self.at = mark
        return 0

    def _lead_in(self) -> None:
        """``{(deed | chain | sl st) separator}``: what the hands do before that"""
        mark = self.at
        while self.here.text not in ("rep", "repeat", "repeating"):
            node = self.deed() or self.chain() or self._slip_along()
            if node is None or isinstance(node, Loops) or not self.accept_any(*SEPARATORS):
                self.at, self._slipped = mark, False
                return
            self.accept_all(*SEPARATORS)

    def _slip_along(self) -> Note | None:
        """``"sl st" place``: to where the round to be worked again begins"""
        start, made = self.here.start, self.make()
        if not made or not all(isinstance(n, Make) and n.stitch.us == "sl st" for n in made):
            return None
        self._slipped = True
        return Note(start, self.last_end)

    def _may_be_repeated(self) -> bool:
        """``("may" | "can" | "is") "be" "repeated" words``: the round worked last, if liked"""
        if self.accept_any("may", "can") and self.accept("be") and self.accept("repeated"):
            self.to_clause_end()
            return True
        return False

    def _same_again(self) -> bool:
        """``["the"] "same" "again"`` as a whole line: the round worked last"""
        mark = self.at
        self.accept_any("do", "work")
        self.accept_any("the")
        if self.accept("same", "again") and self.here.type is not Type.WORD:
            return True
        self.at = mark
        return False

    def _goes_on_so(self) -> bool:
        """``("continue" | "keep" …) [shaping] ("in" ["the" "same"] "manner" | "as" "before" …)``

        What else the words ask for must be how far it goes on.
        """
        mark = self.at
        led = self.accept_any("work", "continue", "cont", "keep", "proceed", "carry", "go")
        self.accept_any("on", "to")
        shaped = self._shaping()
        found = bool(led or shaped) and self._in_same_manner()
        if found:
            self.accept_any(",")
            if not self._shaping() and self.accept_any("adding", "with", "working", "having"):
                self._one_more()
        elif not led:
            found = self.accept("as") and bool(self.accept_any("before", "established"))
        over = self._clause_is_over() or self.here.text in ("until", "till", "to", "for", "through")
        if not found or not over:
            self.at = mark
        return found and over

    def _shaping(self) -> bool:
        """``"increasing" [figure [stitches]] [("each" | "every" | "both") words]``"""
        if not self.accept_any(*CHANGING, "increase", "decrease", "inc", "dec", "shaping"):
            return False
        self.accept_figure()
        self.accept_all("st", "sts", "stitch", "stitches", "sc", "dc", "hdc", "tr", "working")
        self.accept_all("at", "on", "each", "every", "both", "end", "ends", "side", "sides", "of")
        self.accept_all("the", *ROUND_WORDS)
        return True

    def _one_more(self) -> None:
        """``["one"] ("more" | "extra") [stitch] ["between" words | "each" "round" | "side"]``"""
        self.accept_any("one", "1", "an", "a", "always")
        self.accept_any("more", "extra", "additional", "another")
        self._group_more()
        self.accept_phrase(self.lexicon.phrases)
        self.accept_all("st", "stitch", "between", "before", "the", "each", "every", "two")
        self.accept_all("increases", "increase", "inc", "incs", "decreases", "decrease", "dec")
        self.accept_all("in", "on", "each", "every", "the", "time", *ROUND_WORDS)

    def _group_more(self) -> None:
        """``[figure stitch] ("group" | "cluster" …) ["of" figure stitch] [sides]``"""
        mark = self.at
        if self.accept_number():
            self.accept("-")
            self.accept_phrase(self.lexicon.phrases)
        if not self.accept_any(*GROUPS, "granny", "set", "sets"):
            self.at = mark
            return
        self.accept_any(*GROUPS)
        if self.accept_any("of") and self.accept_number():
            self.accept_phrase(self.lexicon.phrases)
        self.times_by_sides()

    def _in_same_manner(self) -> bool:
        """``["in"] ["the" "same" | "this"] ("manner" | "way") | "as" "before" | "like" "this"``"""
        if self.accept_any("like", "as"):
            return bool(self.accept_any("before", "established", "set", "this", "that"))
        self.accept_any("in")
        self.accept_all("the", "this", "that", "same", "a", "similar")
        found = self.accept_any("manner", "way", "fashion")
        self.accept_all("as", "before", "established")
        return bool(found)

    def _in_pattern(self) -> bool:
        """Whether "in pattern" was just read: the row worked last goes on"""
        patterned = not self._patterned.isdisjoint(("pattern", "patt", "pat"))
        return patterned and self.here.text not in ("row", "rnd", "round")

    def _last_rounds(self) -> int:
        """``("last" | "this" | "previous") [number] "rounds"``: how many worked last, or 0"""
        mark = self.at
        self.accept_any("the", "these")
        if self.accept_any("last", "this", "previous", "prev", "preceding") or self.at > mark:
            number = self.accept_number()
            if self.accept_any(*ROUND_WORDS):
                return number or 1
        self.at = mark
        return 0

    def _before_rounds(self) -> None:
        """``["."] words`` before what is repeated: "Rep. Rnd. 3"."""
        if self.ahead().text in ROUND_WORDS:
            self.accept(".")
        self.accept_all(*_BEFORE_ROUNDS)

    def _rounds(self) -> tuple[int, int]:
        """``"rounds" number ["-" number] | ordinal ["to" ordinal] "row"``; zeros if neither"""
        named = bool(self.accept_any(*ROUND_WORDS))
        if named and self.ahead().type is Type.NUMBER:
            self.accept(".")
        first = self.accept_ordinal() or (self.accept_number() if named else 0) or 0
        last = first
        if first and not self._times_ahead():
            last = self._last_of_range(first)
        if not named:
            self.accept_any("patt", "pattern", "pat")
        if not named and not self.accept_any(*ROUND_WORDS):
            return 0, 0
        return first, last

    def _last_of_range(self, first: int) -> int:
        """``["-" | "and" …] ["rounds"] number``; ``first`` where only one round is named"""
        mark = self.at
        if self.accept_any("-", "to", "and", "&", "through", "thru", ",", "+"):
            self.accept_any(*ROUND_WORDS)
            last = self.accept_ordinal() or self.accept_number()
            counted = self.here.text in STITCH_WORDS or self._stitch_here()
            if last is not None and not counted:  # not "Row 2, 6 sts more", "Row 2 - 31 sc"
                return last
        self.at = mark
        return first

    def _up_to(self) -> int:
        """``("until" | "through") … (figure "rounds" | "round" figure)``: how many in all"""
        mark = self.at
        self.accept_all(",", "as", "established", "set", "above")
        if self.accept_any("until", "till", "to", "through", "up", "for"):
            self.accept_all("to", "you", "have", "reach", "there", "are", "a", "total", "of", "end")
            self.accept_all("worked", "completed", "made", "done")
            self.accept_all("and", "including", "the")
            named = self.accept_any(*ROUND_WORDS)
            figure = self.accept_number()
            if figure is not None and (named or self.accept_any(*ROUND_WORDS)):
                return figure
        self.at = mark
        return 0

    def _times_ahead(self) -> bool:
        """Whether a number of times, behind a comma perhaps, stands here."""
        mark = self.at
        found = self._times_of_rounds() is not None
        self.at = mark
        return found

    def _times_of_rounds(self) -> tuple[int, ...] | None:
        """``["for"] ("twice" | ["x"] figure ("times" | "more" | "x"))``"""
        self.accept_all(",", "for", "another", "a", "total", "of")
        if self.here.text in TIMES_WORDS:
            self.at += 1
            return (TIMES_WORDS[self.tokens[self.at - 1].text],)
        mark = self.at
        self.accept_any("x")
        figure = self.accept_figure()
        if figure is not None and (
            self.accept_any("times", "more", "x") or self.tokens[mark].text == "x"
        ):
            return figure
        self.at = mark
        return None
