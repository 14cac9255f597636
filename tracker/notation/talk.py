"""Reading what is only said: what is not to be done, what comes next, how far apart eyes are."""

from __future__ import annotations

import re
from itertools import pairwise

from tracker.notation.bunches import named
from tracker.notation.colours import Colours
from tracker.notation.tokens import Type
from tracker.notation.tree import Note
from tracker.notation.wordlists import (
    ALTERNATELY,
    ANNOUNCING,
    CHAIN_WORDS,
    COLOURS,
    DISTANCE,
    OF_DISTANCE,
    ROUND_WORDS,
    SAID_BEFORE,
    SEPARATORS,
    WORKING,
)

#: What a chain that is closed to a ring is not to be.
_TWISTED = ("twist", "twisted", "twisting", "straight")
_NO_SHAPING = (
    "increase",
    "increases",
    "increasing",
    "decrease",
    "decreases",
    "inc",
    "dec",
    "decreasing",
    "shaping",
    "change",
    "changes",
)
#: What a deed told before is for: "sl st in next st to even out the edge".
_PURPOSES = ("even", "smooth", "level", "finish", "hide", "secure", "neaten", "tidy", "avoid")
#: Words for stitches that an earlier row did not work.
_LEFT_FREE = ("unworked", "remaining", "rem", "left", "skipped", "unused", "free")
_BEFORE_DISTANCE = ("about", "approximately", "approx", "between", "leaving", "with", "at")
_SHAPED = ("dec", "decrease", "inc", "increase", "invdec")
#: Words with which what was just worked is called something: "these are the two handles".
_CALLING = ("is", "are", "makes", "make", "forms", "form", "creates", "create", "becomes")
_CALLED = ("the", "your", "a", "an", "our", "its", "his", "her", "where", "what", "one", "both")
_NOT_DONE = ("join", "turn", "joining", "turning", "fasten", "finish", "end", "cut")

#: "Note: you should have 24 sts." is a count.
_HAVING = re.compile(
    r"(?:you|there) (?:should |will |must )?(?:now )?(?:have|are|be) \d+ "
    r"(?:sts?|stitches|sc|hdc|dc|tr|htr)(?: now| in (?:total|all))?\s*(?:[.;]|$)"
)


class Talk(Colours):
    """Rules for words that ask for nothing."""

    def _do_not(self) -> Note | None:
        """``"do not" ("join" | "turn" | "fasten off" …)``: nothing to do."""
        start = self.here.start
        denied = self.accept("do", "not") or self.accept("don't") or self.accept("without")
        if denied or self.accept("no"):
            self.accept_any("any")
            if self.accept_any(*_NO_SHAPING):
                self.accept_all("or", "and", *_NO_SHAPING)
                self.accept_all("this", "time", "here", "in", "the", "now", *ROUND_WORDS)
                return Note(start, self.last_end) if self._clause_is_over() else None
        if denied and self.accept_any("ch", "chain", "chaining") and self._clause_is_over():
            return Note(start, self.last_end)
        if denied and self.accept("count", "the"):
            if self.accept_phrase(self.lexicon.phrases) != "sl st":
                return None
        elif not denied or not self.accept_any(*_NOT_DONE):
            return None
        self.to_clause_end()
        return Note(start, self.last_end)

    def _reminded(self) -> bool:
        """``("remember" "not" "to" | "don't" "forget" …) words``: of what is done in any case

        Not where it is a stitch, or shaping, that is to be remembered.
        """
        mark = self.at
        told = self.accept("remember", "not") or self.accept("don't", "forget")
        told = told or self.accept("do", "not", "forget") or self.accept("be", "careful", "not")
        ensured = self.accept_any("making", "make", "be", "being") and self.accept_any("sure")
        if not (ensured or told):
            self.at = mark
            return False
        shaped = {"inc", "dec", "increase", "decrease", "repeat", "ch", "chain"}
        words = self._clause_words()
        plain = words.isdisjoint(shaped) or "turning" in words
        twisted = bool(ensured) and not words.isdisjoint(_TWISTED)
        if twisted or (told and plain and not self._stitch_in_clause()):
            self.to_clause_end()
            return True
        self.at = mark
        return False

    def _aside(self) -> Note | None:
        """``"note" … "." | ("right" | "wrong") "side" | stitch "made"``: nothing to do"""
        start = self.here.start
        sized = self.ahead().text == ":" and self.accept_any("size", "sizes")
        if self.accept_any("note", "nb", "tip") or sized:
            self.accept_any(":", "-")
            counted = _HAVING.match(self.low, self.here.start)
            while not counted and self.here.text != "." and self.here.type is not Type.END:
                self.at += 1
            return Note(start, self.last_end)
        if self._reminded() or self._how_it_is_shaped() or self._behind_last():
            return Note(start, self.last_end)
        hooked = self.here.text in ("with", "using") and self._hook_led()
        if hooked or self._counts_throughout():
            return Note(start, self.last_end)
        if self.accept("to") and self.accept_any(*_PURPOSES):
            asks = any(t.type is Type.NUMBER for t in self.tokens[self.at : self.clause_end()])
            if asks or self._stitch_in_clause():
                return None
            self.to_clause_end()
            return Note(start, self.last_end)
        if (
            self.accept_any("rs", "ws")
            or self.accept("right", "side")
            or self.accept("wrong", "side")
        ):
            self.accept_any("facing")
            return Note(start, self.last_end)
        self.accept_any("first", "1st", "beg")
        if self.accept_phrase(self.lexicon.phrases) is not None:
            self.accept_any("stitch", "st")
            if self.accept_any("made", "completed"):
                return Note(start, self.last_end)
        return None

    def _behind_last(self) -> bool:
        """``"after" ["the"] "last" [figure] kind ["of" "this" "row"] ","``: where that is"""
        mark = self.at
        if self.accept("after", "the", "last") or self.accept("after", "last"):
            self.accept_figure()
            named = self.kind() is not None
            self.accept_all("of", "on", "in", "this", "the", *ROUND_WORDS)
            if named and self.accept_any(","):
                return True
        self.at = mark
        return False

    def _how_it_is_shaped(self) -> bool:
        """``"to" ["make" "a"] ("dec" | "inc" …) ("," | ":") words``: how that is made"""
        mark, before = self.at, self.ahead(-1)
        begins = before.text in SEPARATORS or before.type is Type.OPEN
        if self.at and begins and self.accept_any("to"):
            self.accept_all("make", "work", "a", "an", "each")
            if self.accept_any(*_SHAPED) and self.accept_any(",", ":", "-", "="):
                while self.here.type not in (Type.CLOSE, Type.END) and self.here.text != ".":
                    self.at += 1
                return True
        self.at = mark
        return False

    def _returning(self) -> Note | None:
        """``("return" | "go" "back") "to" words "unworked" words``: to what is worked next"""
        start = self.here.start
        led = self.accept_any("return", "returning") or self.accept("go", "back")
        if not led or not self.accept("to"):
            return None
        words = self._clause_words()
        self.accept_any("the")
        self.accept_number()
        end = self.clause_end()
        numbered = any(
            other.type is Type.NUMBER and one.text not in ROUND_WORDS
            for one, other in pairwise(self.tokens[self.at : end])
        )
        if words.isdisjoint(_LEFT_FREE) or numbered:
            return None
        self.at = end
        return Note(start, self.last_end)

    def _at_an_edge(self) -> Note | None:
        """``("at" | "on") garment_edge`` behind a stitch: where in the row that is anyway"""
        start = self.here.start
        found = self.begun and self.accept_any("at", "on") and self.garment_edge()
        return Note(start, self.last_end) if found else None

    def _one_made(self) -> Note | None:
        """``("one" | "this is" "your" "first") thing ["made"]``: what was just worked"""
        start, told = self.here.start, self.accept_any("this", "that")
        if told:  # the "'s" of "that's" is no word of its own
            self.accept_any("is", "makes", "was", "completes", "forms", "finishes")
        begin = self.at
        self.accept_all("the", "a", "your", "one", "1", "first", "1st")
        thing = self.at > begin and named([self.here.text]) == "bunch"
        self.at += thing
        made = self.accept_any("made", "completed", "complete", "done", "formed", "finished")
        over = thing and bool(made or told) and self._clause_is_over()
        return Note(start, self.last_end) if over else None

    def _said_of_work(self) -> Note | None:
        """``("this" | "these") ("is" | "are" | "makes" …) words``: what was worked is called so

        Not where the words name a stitch, or how it is used.
        """
        if self.here.text not in ("this", "these", "that", "those", "it"):
            return None
        start, end = self.here.start, self.clause_end()
        words = [t.text for t in self.tokens[self.at : end]]
        if len(words) < 4 or words[1] not in _CALLING or words[2] not in _CALLED:
            return None
        asks = not WORKING.isdisjoint(words) or not {*ROUND_WORDS, *CHAIN_WORDS}.isdisjoint(words)
        if asks or self._stitch_in_clause():
            return None
        self.at = end
        return Note(start, self.last_end)

    def _counts_throughout(self) -> bool:
        """``"which counts as" stitch ["throughout"]``, said of the chain that is joined to"""
        mark = self.at
        if not self.accept("which", "counts", "as"):
            return False
        self.accept_any("a", "one", "1", "the", "an")
        self.accept_any("first")
        named = self.kind() is not None
        self.accept_all("here", "and", "throughout", "from", "now", "on", "always")
        if named and self._clause_is_over():
            return True
        self.at = mark
        return False

    def _announced(self) -> Note | None:
        """``"now" "we" "start" "decreasing"``: what comes next, told before it is asked for"""
        start, end = self.here.start, self.clause_end()
        words = [t.text for t in self.tokens[self.at : end]]
        shaping = {"decreasing", "increasing", "decreases", "increases"} & set(words)
        shaping |= {
            w for led, w in pairwise(words) if led == "to" and w in ("decrease", "increase")
        }
        told = not ANNOUNCING.isdisjoint(words) and SAID_BEFORE.issuperset(words)
        alike = words[:1] == ["are"] and "same" in words and SAID_BEFORE.issuperset(words)
        if (shaping and told) or alike or words == ["this", "time"]:
            self.at = end
            return Note(start, self.last_end)
        if self.accept("this", "time") or self.accept("followed", "by"):
            return Note(start, self.last_end)
        return None

    def _in_turn(self) -> Note | None:
        """``"alternating" words`` on colours: which yarn is worked with, and how many with each"""
        if self.here.text not in ALTERNATELY:
            return None
        start, words = self.here.start, self._clause_words()
        yarns = {"colour", "colours", "color", "colors", "yarn", "yarns", "a", "mc", "cc"}
        asks = self._stitch_in_clause() or not words.isdisjoint(("each", "inc", "dec", "rounds"))
        if not words.isdisjoint(yarns | COLOURS) and not asks:
            self.to_clause_end()
            return Note(start, self.last_end)
        return None

    def _distance(self) -> Note | None:
        """``["about"] figure "sts" ("apart" | "between") | "between" "rounds" figures``"""
        led = self.here.type is Type.NUMBER or self.here.text in _BEFORE_DISTANCE
        if self.here.text == "between":
            led = self.ahead().text in ROUND_WORDS
        if not led or (self.at and self.tokens[self.at - 1].type is Type.WORD):
            return None
        start, end = self.here.start, self.clause_end()
        clause = self.tokens[self.at : end]
        words = {t.text for t in clause if t.type is not Type.NUMBER}
        numbers = any(t.type is Type.NUMBER for t in clause)
        if words & {"sc", "each"} or ("with" in words and not words & {"them", "eyes"}):
            return None  # "inc, with 3 sc between each" asks for stitches
        if numbers and words & DISTANCE and words <= OF_DISTANCE | set(ROUND_WORDS):
            self.at = end
            return Note(start, self.last_end)
        return None
