"""Clauses of advice and other words that are no instruction."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from tracker.notation.dictionary import STITCHES
from tracker.notation.keys import LIKELY, parts_of, slip
from tracker.notation.kit import NUMBER_WORDS, ORDINAL_WORDS
from tracker.notation.repeats import Repeats
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Token, Type
from tracker.notation.tree import Act, Deed, Make, Node, Note, Unread
from tracker.notation.wordlists import (
    BOUNDING,
    CHAIN_WORDS,
    COLOURS,
    CRAFT,
    FOLDS,
    HANDS,
    IDLE,
    JOINS,
    NAMES,
    PIECES,
    PREPOSITIONS,
    SEPARATORS,
    SHAPING,
    SKIPS,
    STITCH_WORDS,
    TAIL_WORDS,
    THINGS,
    VERBS,
    WORKING,
)

#: A decrease spelt out: "draw up a loop in each of next 2 sts, yo and draw through all 3".
_TOGETHER = re.compile(
    r"(?:draw|pull) up (?:an? )?(?:loop|lp)s? in (?:each of )?(?:the )?(?:next |first |last )?"
    r"(?P<n>\d|two|three|four) (?:sts?|stitches|sc)\b[ ,;.]*(?:and |then )?"
    r"(?:(?:yo|yoh|yarn over|wrap yarn(?: over hook)?)[ ,]*)?(?:and |then )?"
    r"(?:(?:draw|pull|bring) (?:yarn |a loop |a lp |loop )?)?through (?:all )?(?:the )?"
    r"(?:\d|three|four|five)? ?(?:loops|lps)(?: on (?:the |your )?hook)?"
)
#: "Continue as for head": asks for rounds that are told elsewhere.
_LIKE_ANOTHER = re.compile(
    r"(?:work|continue|cont|complete|finish|make|proceed|shape|go on)(?:ing)? (?:on |it |to work )?"
    r"(?:(?:the )?(?:rest|remainder) )?(?:exactly )?(?:(?:in )?(?:the )?same (?:way |manner )?)?"
    r"(?:as|like) (?:(?:for|in|on|of) |(?:the )?(?:first|second|other|back|front|left|right) )"
)
_MARKERS = frozenset(("marker", "markers", "marked"))
#: "Adding 2 sts at the back" asks for stitches, "7 sts apart" does not.
_CHANGES = frozenset(["add", "adding", "lose", "losing", "drop", "dropping", "gain", "gaining"])
#: "Attach the arm over 4 sts" is worked as well.
_FIXING = frozenset(("attach", "attaching", "join", "joining"))
#: "Crocheting two together" is worked, "sewing two together" is not.
_WORKED = frozenset(("crochet", "crocheting", "crocheted", "work", "working", "make", "making"))
_CLOSED = frozenset(("tog", "together"))
_LOOP_WORDS = frozenset(("loop", "loops", "blo", "flo"))
#: The stitches that rounds are mostly made of.
_MOSTLY = ("sc", "hdc", "dc", "tr", "inc", "dec", "invdec", "sc2tog", "increase", "decrease")
#: Longer words that stand alone are no abbreviation of a stitch.
_MOST_LETTERS = 6
#: A clause of fewer words may be one word cut in two.
_FEW = 3


#: Words before a "one" that counts nothing.
_POINTING = ("this", "that", "which", "the")
#: What the hands do with another piece before it is joined.
_TAKING = frozenset(("take", "place", "put", "pick", "position", "grab", "get", "bring"))


class Advice(Repeats):
    """Rules for words that make nothing by themselves.

    Attributes:
        deep: in how many stars and brackets the reader is.
    """

    deep = 0

    def _accept_tail_words(self) -> bool:
        """``("ending" | "end" | "finish") ["this" "row"] ["with"]`` before what ends a round"""
        mark = self.at
        if self.accept_any(*TAIL_WORDS):
            self.accept_all("this", "the", "last", "rep", "repeat", "rnd", "row", "round")
            begins = self.here.type in (Type.NUMBER, Type.OPEN) or self.here.text in SKIPS
            if self.accept_any("with") or begins or self._stitch_here():
                return True
            if self._alike():
                return True
        self.at = mark
        return False

    def _alike(self) -> bool:
        """``"to" ("correspond" | "match") | "as" …``: the end mirrors the beginning"""
        if self.accept_any("to") and self.accept_any("correspond", "match"):
            return True
        return self.accept_any("as") != "" and bool(self.accept_any("before", "established"))

    def _tail_follows(self) -> bool:
        """Whether "with" here leads to what ends a round: "… around with 1 sc in last sc"."""
        mark = self.at
        self.at += 1
        self.accept_number()
        found = self._stitch_here()
        self.at = mark
        return found

    def _shown(self) -> list[Node] | None:
        """``("draw" | "insert" | "yo") … stitch "made"``: how it is made, then its name"""
        if self.here.text not in ("draw", "insert", "yo", "yoh", "pull"):
            return None
        mark, start = self.at, self.here.start
        spelt = _TOGETHER.match(self.low, start)
        if spelt is not None:
            takes = spelt["n"]
            stitch = STITCHES.get(f"sc{NUMBER_WORDS.get(takes, takes)}tog")
            while self.here.start < spelt.end() and not self.done():
                self.at += 1
            return None if stitch is None else [Make(stitch, (1,), None, start, spelt.end())]
        while not self.done() and self.at < mark + 60 and self.here.type is not Type.STAR:
            here = self.at
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and self.accept_any("made"):
                return [Make(self.lexicon.stitch(key), (1,), None, start, self.last_end)]
            self.at = here + 1
        self.at = mark
        return None

    def named_stitch(self) -> Stitch | None:
        """The first stitch named anywhere in the text, if one is."""
        for index in range(len(self.tokens)):
            self.at = index
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and key not in ("ch", "sl st", "inc", "dec", "invdec"):
                return self.lexicon.stitch(key)
        return None

    def _words(self) -> Node:
        """A clause of other words: a note, or unread where it could change a count."""
        start = self.here.start
        begin = self.at
        self.at = self._before_work()
        if self.at == begin:
            self.at += 1
        clause = self.tokens[begin : self.at]
        if _says_nothing_new(clause) or (begin == 0 and self.done() and _is_heading(clause)):
            return Note(start, self.last_end)
        if {"ring", "form"} <= {t.text for t in clause}:
            return Act(Deed.RING, start, self.last_end)
        if clause[0].text == "=":
            return Unread("=", start, self.last_end)
        end = self.last_end
        known = self._unknown(begin, clause) or self._unknown_place(begin)
        if known or self._unknown_kind(begin) or self.like_another(start):
            return Unread(self.text[start:end], start, end)
        words = {t.text for t in clause}
        self.folded = self.folded or bool(words & FOLDS)
        # "insert hook in next st": a part of a stitch that is told step by step
        told = bool(words & HANDS) and bool(words & {"next", "each"})
        told = told or (bool(words & _CHANGES) and self._numbers_stitches(clause))
        told = told or (bool(words & _FIXING) and self._numbers_stitches(clause))
        told = told or (bool(words & _WORKED) and bool(words & _CLOSED))
        craft = bool(words & CRAFT) or (clause[0].text in _TAKING and bool(words & PIECES))
        advice = craft and not told and not self._asks_for_stitches(begin, self.at)
        if not advice and (
            self._could_count(begin, self.at)
            or any(t.type is Type.NUMBER or _is_number(t, before) for before, t in _pairs(clause))
        ):
            return Unread(self.text[start:end], start, end)
        return Note(start, end)

    def like_another(self, start: int) -> bool:
        """``("work" | "continue" …) "as" ("for" | "in" …)``: as it is told elsewhere"""
        return _LIKE_ANOTHER.match(self.low, start) is not None

    def _numbers_stitches(self, clause: list[Token]) -> bool:
        """Whether a number of stitches is in the words."""
        return any(
            (one.type is Type.NUMBER or one.text in NUMBER_WORDS) and other.text in STITCH_WORDS
            for one, other in pairwise(clause)
        )

    def _before_work(self) -> int:
        """Where this clause of other words ends: also at "and" before an instruction."""
        mark, end = self.at, self.clause_end()
        pieces = not PIECES.isdisjoint(t.text for t in self.tokens[mark:end])
        if self.here.text not in CRAFT | _TAKING and not pieces:
            return end
        for index in range(mark + 1, end):
            if self.tokens[index].text in ("and", "then", "&"):
                self.at = index + 1
                self.accept_all(*VERBS, *JOINS, "both", *THINGS, "it", "with", "by")
                self.accept_number()
                works = self._stitch_named() or self._slip_named()
                self.at = mark
                if works:
                    return index
        return end

    def _slip_named(self) -> bool:
        """Whether a slip stitch stands here, without going on."""
        mark = self.at
        found = self.accept_phrase(self.lexicon.phrases) == "sl st"
        self.at = mark
        return found

    def _unknown_place(self, begin: int) -> bool:
        """Whether a clause goes on from a stitch with a place that is not known."""
        before, first = self.tokens[begin - 1], self.tokens[begin]
        goes_on = begin > 0 and before.type is Type.WORD and before.text not in SEPARATORS
        clause = {t.text for t in self.tokens[begin : self.at]}
        bounded = first.text in BOUNDING or ("only" in clause and clause.isdisjoint(_LOOP_WORDS))
        if goes_on and (bounded or self._at_a_marker(begin)):
            return True
        known = self.tokens[min(begin + 1, len(self.tokens) - 1)].text == "it"
        return goes_on and not known and first.text in PREPOSITIONS and self._is_stitch(begin - 1)

    def _at_a_marker(self, begin: int) -> bool:
        """``("to" | "with" …) … "marker"``: which stitches are meant"""
        words = [t.text for t in self.tokens[begin : self.at]]
        return words[0] in (*PREPOSITIONS, "with", "at") and not _MARKERS.isdisjoint(words)

    def _unknown_kind(self, begin: int) -> bool:
        """Whether a word stands where the kind of a place is named, and is not known for one."""
        word, before = self.tokens[begin], self.tokens[begin - 1]
        led = begin > 0 and before.text in ("next", "first", "last", "same", "each", "every")
        return led and word.type is Type.WORD and word.text not in IDLE | CRAFT | SHAPING

    def _is_stitch(self, index: int) -> bool:
        """Whether the token there is the short name of a stitch."""
        return (self.tokens[index].text,) in self.lexicon.phrases

    def _unknown(self, begin: int, clause: list[Token]) -> bool:
        """Whether a clause is a single word of a few letters that might be a stitch: "idc".

        Words may be run together, or one cut in two. Right behind a stitch it might be a name
        of one with a slip in it: "sc imc".
        """
        word, before = clause[0].text, self.tokens[begin - 1]
        if self._is_glued(clause):
            return True
        if len(clause) > 1 or clause[0].type is not Type.WORD or begin == 0:
            return False
        if self._is_stitch(begin - 1) and word not in CRAFT | IDLE | COLOURS:
            return any(slip(word, name) == LIKELY for name in _MOSTLY)
        begins = before.text in SEPARATORS or before.type in (Type.OPEN, Type.STAR)
        glued = before.type is Type.NUMBER and before.end == clause[0].start
        listed = before.text == "," == self.here.text and word != "s"
        fits = 1 < len(word) <= _MOST_LETTERS or bool(self.deep) or listed or not word.isalpha()
        return glued or (begins and fits and word not in CRAFT | IDLE | COLOURS)

    def _is_glued(self, clause: list[Token]) -> bool:
        """Whether a stitch and other words are run together, or its name is cut: "scaround"."""
        whole = "".join(t.text for t in clause)
        if len(clause) >= _FEW or not whole.isalpha() or whole in CRAFT | IDLE:
            return False
        parts = parts_of(whole)
        named = parts[:1] in self.lexicon.phrases or len(clause) == 1
        return len(parts) + len(clause) > 2 and named

    def _asks_for_stitches(self, begin: int, end: int) -> bool:
        """Whether the words have a stitch in them, or say to skip, repeat or change."""
        back, found = self.at, False
        self.at = begin
        while self.at < end and not found:
            found = self.here.text in SHAPING or self._stitch_named()
            self.at += 1
        self.at = back
        return found

    def _could_count(self, begin: int, end: int) -> bool:
        """Whether the words from ``begin`` to ``end`` name a stitch or a working word."""
        back = self.at
        found = False
        self.at = begin
        while self.at < end and not found:
            found = self.here.text in WORKING or self._stitch_here()
            self.at += 1
        self.at = back
        return found


def _pairs(clause: list[Token]) -> Iterator[tuple[str, Token]]:
    """Each token of a clause with the text of the one before it."""
    before = ""
    for token in clause:
        yield before, token
        before = token.text


def _is_number(token: Token, before: str) -> bool:
    """Whether a word is a number, and not the "one" of "this one is easy"."""
    return token.text in NUMBER_WORDS and not (token.text == "one" and before in _POINTING)


def _is_heading(clause: list[Token]) -> bool:
    """Whether a line is only the name of a part: "First ball", "Leg 2"."""
    words = [t.text for t in clause if t.type is Type.WORD and t.text not in ORDINAL_WORDS]
    return 0 < len(words) == 1 < len(clause) <= 2 and words[0].removesuffix("s") in NAMES


def _says_nothing_new(clause: list[Token]) -> bool:
    """Whether a clause only tells where the last stitch goes, or what a chain is a multiple of."""
    words = [t.text for t in clause]
    if words[0] == "working" and "last" in words[1:3]:
        return True
    if words[0] == "instead":
        return True  # "4 dc in last sc instead of 7"
    multiple = {"multiple", "multiples"} & set(words) or {"number", "of"} <= set(words)
    return bool(multiple) and words[0] in CHAIN_WORDS
