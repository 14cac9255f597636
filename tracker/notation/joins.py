"""Reading how a round is closed: joins, and slip stitches that join."""

from __future__ import annotations

from itertools import pairwise

from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.paces import Paces
from tracker.notation.tokens import Type
from tracker.notation.tree import Act, At, Deed, Note
from tracker.notation.wordlists import (
    AGAIN,
    CHAIN_WORDS,
    ENDINGS,
    JOINS,
    PIECES,
    SKIPS,
    SPACE_WORDS,
    STITCH_WORDS,
    THINGS,
    TILES,
)

#: What is done after a round is closed.
_AFTERWARDS = (*ENDINGS, "leave", "leaving", "sew", "weave", "stuff", "pull")


class Joins(Paces):
    """Rules for joins. ``begun`` says whether the round has made a stitch yet."""

    in_last = False

    def _join(self) -> Act | None:
        """``join = ("join" | "connect") words``; a colour or a first stitch may be in it."""
        start = self.here.start
        self.accept_all("to", "and", "invisible", "invisibly")
        if not self.accept_any(*JOINS, "crochet"):
            return None
        if self.tokens[self.at - 1].text == "crochet":
            return self._joined_by_stitches(start, "")
        colour, mark = self.colour_name(), self.at
        self.accept_all("the", "your", "a", "new", "next", "yarn", "color", "colour")
        if self.accept_any("with", "by") and not self._slip_here():
            self.accept_all("a", "an", "standing")
            if self._stitch_here() or self._numbered_here():
                return Act(Deed.JOIN if self.begun else Deed.COLOUR, start, self.last_end, colour)
        self.at = mark
        if self._over_so_many():
            return None
        return self._joined_by_stitches(start, colour) or self._joined(start, colour)

    def _over_so_many(self) -> bool:
        """Whether a piece is joined "over 4 stitches", which are worked as well."""
        clause = self.tokens[self.at : self.clause_end()]
        numbered = any(
            (one.type is Type.NUMBER or one.text in NUMBER_WORDS) and other.text in STITCH_WORDS
            for one, other in pairwise(clause)
        )
        over = {"over", "across", "for"} & {t.text for t in clause}
        return (
            self.begun and numbered and bool(over) and not PIECES.isdisjoint(t.text for t in clause)
        )

    def _numbered_here(self) -> bool:
        """Whether a number of stitches stands here: "close with 6 sc through both layers"."""
        mark = self.at
        found = self.accept_number() is not None and self._stitch_here()
        self.at = mark
        return found

    def _joined_by_stitches(self, start: int, colour: str) -> Act | None:
        """``piece ("with" | "by") ["working"] (stitch | figure)``: those stitches join it"""
        mark, end = self.at, self.clause_end()
        words = {t.text for t in self.tokens[mark:end]}
        named = words & PIECES or (self.folded and words & THINGS)
        while named and self.at < end:
            if not self.accept_any("with", "by"):
                self.at += 1
                continue
            self.accept_all("working", "work", "making", "a", "an", "the", "next")
            number = self.here.type is Type.NUMBER
            if self.at < end and not self._slip_here() and (number or self._stitch_here()):
                return Act(Deed.COLOUR, start, self.last_end, colour, onto="piece")
        self.at = mark
        return None

    def _joined(self, start: int, colour: str) -> Act:
        """``["with"] ["a" …] ["sl st"] [target] words``: the rest of a join."""
        begin = self.at
        target = None
        self.accept_all("with", "a", "round", "yarn", "new", "color", "colour", "by", "rnd", "each")
        new = "new" in {t.text for t in self.tokens[begin : self.at]}
        self._accept_slip()
        if self.here.text in ("in", "into", "to", "at", "between"):
            target = self.target()
        self.in_last = target is not None and target.at is At.LAST and bool(colour or new)
        if self.begun or target is None or not self._with_first_stitch():
            self._to_work()
        onto, named = self._closed(begin)
        if not onto and not PIECES.isdisjoint(t.text for t in self.tokens[begin : self.at]):
            onto = "piece"
        if not self.begun and target is not None and target.at is At.RING:
            return Act(Deed.RING, start, self.last_end)
        if not self.begun and target is not None:
            return Act(Deed.COLOUR, start, self.last_end, colour, target, onto)
        length = self._chain_named(begin)
        return Act(Deed.JOIN, start, self.last_end, colour, None, onto, length, named)

    def _with_first_stitch(self) -> bool:
        """``("with" | "using") ["a"] ["standing"] stitch``: the join makes that stitch"""
        mark = self.at
        if self.accept_any("with", "using", "by", "making"):
            self.accept_all("a", "an", "working", "making", "standing", "first")
            if self._stitch_here() and not self._slip_here():
                return True
        self.at = mark
        return False

    def _to_work(self) -> None:
        """Pass over the rest of the clause, up to "and" before a number of stitches."""
        end = self.clause_end()
        while self.at < end:
            mark = self.at
            if self.accept_any("and", "then", "&"):
                self.accept_all("work", "make", "crochet", "then")
                numbered = self.accept_number() is not None
                stitch = not self._slip_here() and self._stitch_here()
                numbered = numbered or self.ahead().type is Type.NUMBER
                self.at = mark
                if numbered and stitch:
                    return
            self.at = mark + 1

    def _chain_named(self, begin: int) -> int:
        """The length of a chain named "ch 3" or "ch-3" since token ``begin``; 0 if none."""
        for index in range(begin, self.at - 1):
            if self.tokens[index].text in CHAIN_WORDS:
                after = self.tokens[index + 1 + (self.tokens[index + 1].text == "-")]
                if after.type is Type.NUMBER:
                    return after.value
        return 0

    def passes_join(self) -> Note | None:
        """``(skip | "not" ["work"] "in") "the" join``: what closed a round is no stitch

        Nor is a chain that is not worked into: "join in first dc, not in the ch 2".
        """
        mark, start, skipped = self.at, self.here.start, self.here.text in SKIPS
        if self._passed_over():
            begin = self.at
            if self._names_join() and self._clause_is_over():
                return Note(start, self.last_end)
            self.at = begin
            self.accept_any("the", "your")
            chain = self._turning() or self._chain_length()
            if chain and (self._and_joins() if skipped else self._clause_is_over()):
                return Note(start, self.last_end)
        self.at = mark
        return None

    def _and_joins(self) -> bool:
        """Whether ``"and" (join | "sl st")`` stands here: "skip the ch 2 and join"."""
        mark = self.at
        found = self.accept("and") and (self.here.text in JOINS or self._accept_slip())
        self.at = mark
        return found

    def _passed_over(self) -> bool:
        """``skip ["over"] | ["do"] "not" ["work"] "in"``"""
        if self.accept_any(*SKIPS):
            self.accept_any("over")
            return True
        if self.accept("do", "not") or self.accept("don't") or self.accept("never"):
            self.accept_any("work", "crochet", "stitch")
        elif not self.accept("not"):
            return False
        return bool(self.accept_any("in", "into", "to")) or self.ahead(-1).text == "not"

    def _names_join(self) -> bool:
        """``["the"] ["sl st" ["from"]] ("join" ["sl st"] | "seam")``, but not ``"joining" kind``"""
        self.accept_any("the", "your", "first", "last")
        slip = self._accept_slip()
        if slip:
            self.accept_all("from", "of", "the")
        elif self.ahead().text == "seam":
            self.at += 1
        word = self.accept_any("join", "joining", "seam")
        slip = self._accept_slip() or slip
        if not word or (not slip and self.kind() is not None):
            return False
        self._suffix()
        return True

    def _slip_here(self) -> bool:
        mark = self.at
        found = self._accept_slip()
        self.at = mark
        return found

    def _accept_slip(self) -> bool:
        """``["a"] "sl st"``"""
        begin = self.at
        self.accept_any("1", "one")
        numbered = self.at > begin
        self.accept_any("a", "an")
        mark = self.at
        if self.accept_phrase(self.lexicon.phrases) == "sl st":
            return True
        self.at = begin if numbered else mark
        return False

    def _slip_join(self) -> Act | None:
        """``["1" | "work"] "sl st" words``: into the first stitch, the chain, the top."""
        start, begin = self.here.start, self.at
        self.accept_any("1", "work", "make")
        if not self._accept_slip():
            return None
        if self.begun and not self.starring and self._closes_round():
            return Act(Deed.JOIN, start, self.last_end, bare=True)
        words = self._clause_words()
        if words in ({"in", "last", "ch"}, {"in", "the", "last", "ch"}, {"in", "last", "chain"}):
            return None  # a stitch like the others, at the end of a foundation
        if "hook" in words and not words & {"ring", "form", "join", "circle"}:
            return None  # back into its own chain: a picot
        tiled = "of" in words and not words.isdisjoint(TILES)  # into a tile of the row below
        if words & {"each", "every"} or (tiled and not words.isdisjoint(SPACE_WORDS)):
            return None
        closing = {
            "join",
            "close",
            "form",
            "joining",
            "beg",
            "beginning",
            "top",
            "first",
            "1st",
            "finish",
            "standing",
        }
        chain = not words.isdisjoint(CHAIN_WORDS) and words.isdisjoint(SPACE_WORDS)
        to_chain = chain and self.here.text in ("in", "to", "into", "around")
        ring = chain and bool(words & {"first", "1st"})
        if not self.begun and not ring and not words & {"join", "form", "close", "ring"}:
            return None
        if not (words & closing or to_chain):
            return None
        self.to_clause_end()
        onto, named = self._closed(begin)
        length = self._chain_named(begin)
        return Act(Deed.JOIN, start, self.last_end, onto=onto, length=length, named=named)

    def _closes_round(self) -> bool:
        """Whether a bare "sl st" here is the last thing of the round but for a chain or turn."""
        if self.here.type in (Type.WORD, Type.NUMBER) and self.here.text not in _AFTERWARDS:
            return False
        mark, found = self.at, True
        while not self.done() and found and self.here.text != ".":
            if self.here.type is Type.OPEN and self.closing() > 0:
                self.at = self.closing()
            key = self.accept_phrase(self.lexicon.phrases)
            found = key in (None, "ch", "sl st") and self.here.text not in AGAIN
            self.at += key is None
        self.at = mark
        return found

    def _closed(self, begin: int) -> tuple[str, str]:
        """What tokens since ``begin`` say a round is closed to, and the stitch named.

        The first is "chain", "stitch", "st" (a stitch of no name) or "".
        """
        at, end = self.at, self.at
        self.at = begin
        onto, named = "", ""
        while self.at < end:
            if self.here.text in CHAIN_WORDS:
                onto = "chain"
                self.at += 1
                continue
            self.accept_beginning()
            key = self.accept_phrase(self.lexicon.phrases)
            if key is None:
                if self.here.text in ("st", "stitch") and not onto:
                    onto = "st"
                self.at += 1
            elif key not in ("sl st", "ch") and onto != "chain":
                onto, named = "stitch", named or key
        self.at = at
        return onto, "" if onto == "chain" else named
