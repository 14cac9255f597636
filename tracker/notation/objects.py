"""Reading what stands round a stitch: its yarn, the leg or handle it goes along."""

from __future__ import annotations

from tracker.notation.chains import Chains
from tracker.notation.tokens import Token, Type
from tracker.notation.tree import Act, At, Deed, Target
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    COLOURS,
    HOLES,
    IDLE,
    LOOP_WORDS,
    NOISE_OF_ROUNDS,
    PIECES,
    PREPOSITIONS,
    RING_WORDS,
    SHAPING,
    STITCH_WORDS,
    THINGS,
    WORKING,
)

_ALONG = ("around", "round", "along", "across", "through")


class Objects(Chains):
    """Rules for what a number of stitches is worked with or along.

    ``one`` tells whether the words put a stitch into a piece, not along it; ``folded``
    whether the piece lies in two layers now.
    """

    one = False
    folded = False

    def _crossed(self) -> bool:
        """``"x"`` before a number of times"""
        if self.ahead().type is not Type.NUMBER and not self.crosses:
            return False
        return self.accept("x")

    def _may_name_yarn(self, token: Token) -> bool:
        """Whether capitals here may stand for a yarn: "A", "MS", and no stitch or other word."""
        if len(token.text) == 1:
            return True
        led = self.tokens[self.at - 1].text in ("with", "using", "in", "to", "join", "change")
        other = token.text in WORKING or token.text in LOOP_WORDS or token.text in RING_WORDS
        known = (token.text,) in self.lexicon.phrases or token.text in IDLE | NOISE_OF_ROUNDS
        return led and len(token.text) < 4 and not other and not known

    def colour_name(self) -> str:
        """``["color" | "yarn"] name``: a letter, MC or CC, or a colour word, as written"""
        mark = self.at
        worded = bool(self.accept_any("color", "colour", "yarn", "col"))
        token = self.here
        written = self.text[token.start : token.end]
        letters = written.isupper() and self._may_name_yarn(token)
        worded = worded and token.text not in (*PREPOSITIONS, "with", "by", "and", "using")
        if token.type is Type.WORD and (letters or token.text in COLOURS or worded):
            self.at += 1
            return written
        self.at = mark
        return ""

    def _in_colour(self) -> Act | None:
        """``("in" | "with") colour`` behind a stitch: the yarn it is made with"""
        mark, start = self.at, self.here.start
        if self.accept_any("in", "with"):
            name = self.colour_name()
            if name:
                return Act(Deed.COLOUR, start, self.last_end, name)
        self.at = mark
        return None

    def _loose_object(self) -> Target | None:
        """``("around" | "along" | "on" …) words`` behind a number of stitches: what they go along.

        Round a chain or a handle they go into that space; along anything else each has
        its own place, which the words do not count. `Target.group` is "ch" along a chain,
        "both" through two layers at once.
        """
        mark = self.at
        self.accept_any("together")
        lead = self.accept_any(*_ALONG, "on", "in", "into", "onto", "with")
        further = self.here.text in ("to", "until", "till")
        layers = self._layers() if lead == "through" else None
        if layers is not None:
            return layers
        words = self._clause_words() if lead and not further else set()
        if not self._is_object(words) or (lead not in _ALONG and not words & PIECES):
            self.at = mark
            return None
        self.to_clause_end()
        if words & HOLES and lead in ("around", "round"):
            return Target(At.SAME if "same" in words else At.NEXT, "sp")
        self.one = lead in ("in", "into", "onto")
        both = lead == "through" and bool(words & {"both", "two", "2"})
        chain = "ch" if words & set(CHAIN_WORDS) and not words & PIECES else ""
        return Target(At.NEXT, "along", group="both" if both else chain)

    def _layers(self) -> Target | None:
        """``("both" | "two") ["of" "the"] thing ["together" | "to close" …]``: two at once"""
        mark = self.at
        self.accept_any("the")
        if self.accept_any("both", "two", "2", "all"):
            self.accept_all("of", "the")
            sets = self.accept("sets", "of", "stitches") or self.here.text in ("for", "over")
            thing = sets or bool(self.accept_any(*THINGS))
            placed = self.here.text in ("in", "into") and self.ahead().text in ("each", "every")
            if (thing and not placed) or self._clause_is_over():
                self.accept_all("together", "at", "once", "same", "time", "across", "to", "close")
                self.accept_all("it", "the", "opening", "seam")
                return Target(At.NEXT, "along", group="both")
        self.at = mark
        return None

    def _is_object(self, words: set[str]) -> bool:
        """Whether the words of a clause name a thing, and no places that are counted."""
        if words == {"it"}:
            return True
        if not words or len(words) > 6 or words & (SHAPING | {"each", "next", "every", "end"}):
            return False
        counted = words & set(STITCH_WORDS) and any(word.isdigit() for word in words)
        return not counted and bool(words & THINGS) and not self._stitch_in_clause()

    def _stitch_in_clause(self) -> bool:
        """Whether a stitch (not a chain) is named up to the end of this clause."""
        mark, end = self.at, self.clause_end()
        found = False
        while self.at < end and not found:
            key = self.accept_phrase(self.lexicon.phrases)
            found = key not in (None, "ch")
            self.at += key is None
        self.at = mark
        return found

    def accept_beginning(self) -> None:
        """``["last" | "first" | "beg"] ["-"]`` before a stitch.

        Not where the text's own "beg shell" makes another number of stitches than a shell.
        """
        mark = self.at
        if not self.accept_any("last", "first", "beg", "beginning"):
            return
        self.accept("-")
        after, self.at = self.at, mark
        own = self.accept_phrase(self.lexicon.phrases)
        self.at = after
        plain = self.accept_phrase(self.lexicon.phrases)
        makes = [self.lexicon.stitch(key).makes if key else 0 for key in (own, plain)]
        self.at = mark if own and makes[0] != makes[1] else after

    def _stitch_here(self) -> bool:
        mark = self.at
        found = self.accept_phrase(self.lexicon.phrases) is not None
        self.at = mark
        return found
