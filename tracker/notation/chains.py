"""Reading chains, what they count as, and places that are passed over."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.notation.closing_counts import ClosingCounts
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import At, Chain, Figure, Skip, Target
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    MIDDLE,
    OTHER_PIECES,
    SKIPS,
    SPACE_WORDS,
    STITCH_WORDS,
    VERBS,
    WHICH_PIECE,
)

#: Words and a sign that say what a chain stands for.
_COUNTS = (
    *("counts", "count", "counting", "regard", "starts", "stands", "equals", "="),
    *("replaces", "replace", "replacing", "represents", "acts"),
)
#: Words before the first chain of all.
_TO_BEGIN = ("start", "begin", "commence", "commencing", "beginning", "starting")
#: What chains passed over count as beyond a stitch: "counts as dc and ch-2 sp".
_AND_SPACE = re.compile(
    r"(?:,|and|plus|\+|&)\s*(?:(?:a|1|one)\s+)?(?:ch(?:ain)?[- ]?(\d+)|(\d+)[- ]?ch(?![- ]?\d))"
)


#: In so many words at the start of a row it is told that it begins along a chain.
_BEGINS = 14


class Chains(ClosingCounts):
    """Rules for chains and skips."""

    def chain(self) -> Chain | None:
        """``chain = "ch" ["-"] figure [counts] | figure ["-"] "ch" [counts]``"""
        mark, start = self.at, self.here.start
        self.accept_all(*VERBS, *_TO_BEGIN, "a", "foundation", "for", "this", "sample", "with")
        figure = self._chain_count()
        if figure is None or self._is_space():
            self.at = mark
            return None
        self.accept_any("stitches", "sts")
        self.accept("for", "all", "sizes")
        if self.here.text in ("to", "for") and self.ahead().text in ("turn", "turning"):
            self.at += 1  # "3 ch to turn": the deed is read behind the chain
        figure = self._joined_in_middle(figure)
        return self._counts(Chain(figure, start, self.last_end))

    def _joined_in_middle(self, figure: Figure) -> Figure:
        """``"," joins_piece "," chain`` behind a chain: one space, joined in its middle

        So pieces are joined as they go: "ch 1, sl st in corner of previous square, ch 1".
        """
        mark = self.at
        self.accept_any(",")
        if self.joins_piece():
            self.accept_any(",", ";")
            other = self._chain_count()
            if other is not None and len(other) == len(figure) and not self._is_space():
                return tuple(a + b for a, b in zip(figure, other, strict=True))
        self.at = mark
        return figure

    def joins_piece(self) -> bool:
        """``("sl st" | "join") words "previous" … "motif" words``: to a piece made before"""
        mark = self.at
        self.accept_any("work", "1", "a")
        begin = self.at
        if self.accept_any("join") or self.accept_phrase(self.lexicon.phrases) == "sl st":
            words = self._clause_words()
            named = words & OTHER_PIECES and words & WHICH_PIECE and not self._in_tiles()
            if named and self.at > begin:
                self.to_clause_end()
                return True
        self.at = mark
        return False

    def _in_tiles(self) -> bool:
        """Whether the row begins back along a chain: a "block" is then one of the row below."""
        begins = [token.text for token in self.tokens[: min(self.at, _BEGINS)]]
        return "hook" in begins and not {"ring", "rnd"} & set(begins)

    def _chain_count(self) -> Figure | None:
        """``"ch" ["-"] figure ["ch"] | (figure | "a") ["-"] "ch"``"""
        mark = self.at
        if self.accept_any(*CHAIN_WORDS):
            self.accept_any("-", "of", ":")
            figure = self.accept_figure()
            if figure is None:
                self.at = mark
            if figure is not None and self.here.text in CHAIN_WORDS:
                self.at += 1
            return figure
        figure = self.accept_figure()
        if figure is None:
            if self.here.text != "a" or self.ahead().text not in CHAIN_WORDS:
                return None
            self.at += 1
            figure = (1,)
        self.accept("-")
        self.accept_any("lifting", "rising", "raising", "initial", "turning")
        if self.accept_any(*CHAIN_WORDS) or (self.accept("air") and self._loops_of_air()):
            return figure
        self.at = mark
        return None

    def _loops_of_air(self) -> bool:
        """``"loops" | "stitches"`` behind "air": chains, as some languages call them"""
        return bool(self.accept_any("loop", "loops", "lp", "lps", *STITCH_WORDS))

    def _is_space(self) -> bool:
        """Whether the chain just read is the name of a space: "ch-3 sp"; so in "6 ch-3 sps"."""
        words = [self.ahead(i).text for i in range(3)]
        if words[0] == "-":
            return words[1] in SPACE_WORDS or (words[1].isdigit() and words[2] in SPACE_WORDS)
        return words[0] in SPACE_WORDS

    def _counts(self, chain: Chain) -> Chain:
        """``counts = ["("] "counts as" [stitch ["and" chain]] ["throughout"] [")"]``"""
        mark = self.at
        if self.ahead().type is Type.OPEN and self.ahead(2).text in _COUNTS:
            self.accept(",")
        bracket = max(0, self.closing()) if self.here.type is Type.OPEN else 0
        if bracket:
            self.at += 1
        self.accept_any(",")
        self.accept_all("this", "that", "which", "they", "these", "it", "always", "will", "the")
        self.accept_all("ch", "chain", "chains", "here")
        self.accept_all("-", "to")
        if self.here.type is Type.NUMBER and self.ahead().text in ("counts", "count"):
            self.at += 1
        counts = self._counts_or_not()
        if counts is None:
            self.at = mark
            return self._spelt_out(chain)
        part = counts and self._as_part()
        found = replace(self._stands_for(chain, counts and not part), part=part)
        if bracket:
            lasting = {"throughout", "always", "now", "every", "following", "all"}
            words = {t.text for t in self.tokens[mark:bracket]}
            found = replace(found, lasting=found.lasting or bool(words & lasting))
            self.at = bracket + 1
        return replace(found, end=self.last_end)

    def _counts_or_not(self) -> bool | None:
        """``"counts" ["not"] | ("does" | "is" …) ["not"] "count"``: the latter denies it"""
        if self.accept_any(*_COUNTS) or self._for_first():
            return not self.accept_any("not")
        if self.accept_any("does", "do", "don't", "doesn't", "not", "is", "never"):
            self.accept_any("not")
            return False if self.accept_any("count", "counted", "counts", "a") else None
        return None

    def _for_first(self) -> bool:
        """``("for" | "as" | "be" …) ["the"] "first"`` before the stitch a chain stands for"""
        mark = self.at
        if self.accept_any("for", "as", "be", "is", "acts", "forms", "makes", "becomes"):
            self.accept_any("as")
            self.accept_any("the", "your", "a")
            if self.here.text in ("first", "1st"):
                return True
        self.at = mark
        return False

    def _as_part(self) -> bool:
        """``"as" ["a"] "part" "of" words``"""
        mark = self.at
        self.accept_all("as", "a")
        if self.accept("part", "of"):
            while self.here.type in (Type.WORD, Type.NUMBER, Type.ORDINAL):
                self.at += 1
            return True
        self.at = mark
        return False

    def _stands_for(self, chain: Chain, counts: bool) -> Chain:
        """``["as"] ["a"] stitch [("and" | "plus") chain] ["throughout"]``"""
        self.accept_all("as", "for", "a", "the", "one", "first", "1st", "your", "beg", "of")
        self.accept_number()
        key = self.accept_phrase(self.lexicon.phrases)
        self.accept_any(*STITCH_WORDS)
        mark = self.at
        plus = self._plus() if self.accept_any("and", "plus", "+", ",") else 0
        self.at = self.at if plus else mark
        lasting = bool(self.accept_any("throughout", "always", "here", "now"))
        return replace(
            chain, counts=counts, stands_for=key or "", plus=plus if counts else 0, lasting=lasting
        )

    def _plus(self) -> int:
        """``["a"] chain``: the chains that go beyond the stitch a chain stands for."""
        self.accept_any("a", "one", *(("1",) if self.ahead(2).text == "-" else ()))
        figure = self._chain_count()
        if figure is not None:
            self.accept_any(*SPACE_WORDS)
            return figure[0]
        return int(bool(self.accept_any(*CHAIN_WORDS)))

    def _spelt_out(self, chain: Chain) -> Chain:
        """``"(" ("first" stitch | stitch "and" chain) ")"`` behind a chain says what it is."""
        if self.here.type is not Type.OPEN or self.closing() < 0:
            return chain
        mark, close = self.at, self.closing()
        self.at += 1
        first = self.here.text in ("first", "1st")
        found = self._stands_for(chain, True)
        if self.at == close and found.stands_for and (found.plus or first):
            self.at += 1
            return replace(found, end=self.last_end)
        self.at = mark
        return chain

    def hook_counts(self, target: Target | None) -> Target | None:
        """``target "(" words "count" ["not"] … ")"``: whether chains passed over count."""
        if target is None or target.at is not At.HOOK:
            return target
        begin = self.here.start
        counts = self._chains_count() if self.here.type is Type.OPEN else self._count_clause()
        if counts is None:
            return target
        space = _AND_SPACE.search(plain(self.text[begin : self.last_end]))
        plus = int(next(filter(None, space.groups()), 0)) if space is not None else 0
        return replace(target, counts=counts, plus=plus)

    def _count_clause(self) -> bool | None:
        """``("and" | "," | "-") "count" ["not"] words``, as in "and count this as dc"."""
        mark = self.at
        self.accept_any("and", ",", "-", ":", ";", ".")
        self.accept_all("this", "that", "these", "it", "the", "skipped", "chs", "ch", "chains")
        if self.accept_any("counts", "count", "counting"):
            self.accept_all("this", "that", "these", "it")
            denied = bool(self.accept_any("not"))
            if self.accept("as"):
                chain = self._stands_for(Chain((1,), 0, 0), True)
                if chain.stands_for and self._clause_is_over():
                    return not denied
        self.at = mark
        return None

    def _chains_count(self) -> bool | None:
        """``"(" words "count" ["not"] words ")"``"""
        close = self.closing() if self.here.type is Type.OPEN else -1
        words = {t.text for t in self.tokens[self.at : max(close, self.at)]}
        if not words & {"counts", "count", "counted", "regard", "stands", "counting"}:
            return None
        self.at = close + 1
        return not words & {"not", "don't", "doesn't", "never"}

    def skip(self) -> Skip | None:
        """``skip = "sk" ["next" | "first" | "last"] [figure] [kind]``"""
        start = self.here.start
        told = self.accept_any(*SKIPS) or self.accept("leave", "out") or self._not_into()
        if not told:
            return None
        self.accept_all("over", "the")
        if self.accept_any("joining"):
            self.kind()
            return Skip((1,), "st", start, self.last_end, At.FIRST)
        at = self._which() or At.NEXT
        if not self.begun and self.accept_any("same"):
            self.kind()  # the one that the beginning chain stands on
            return Skip((1,), "st", start, self.last_end)
        self.accept_any("of", "the")
        self.accept_any(*MIDDLE)
        count = self.accept_figure() or (1,)
        self.accept_any("a", "an")
        self._which()
        self.accept_any("remaining", "rem")
        kind = self.kind() or "st"
        if self.at_base:
            at = At.FIRST
        counts = kind == "ch" and self.here.type is Type.OPEN and self._chains_count() is True
        return Skip(count, kind, start, self.last_end, At.NEXT if at is At.EACH else at, counts)

    def _not_into(self) -> bool:
        """``"do not work" ("in" | "into")``: the place behind it is passed over"""
        mark = self.at
        denied = self.accept("do", "not", "work") or self.accept("don't", "work")
        if denied and self.accept_any("in", "into"):
            return True
        self.at = mark
        return False

    def skip_list(self) -> list[Skip]:
        """``skip ["next"] "(" [figure] kind {"," [figure] kind} ")"``: each of those"""
        mark, start = self.at, self.here.start
        found: list[Skip] = []
        if self.accept_any(*SKIPS):
            self.accept_all("over", "the", "next")
            close = self.closing() if self.here.type is Type.OPEN else -1
            self.at += int(close > 0)
            while 0 < self.at < close:
                count = self.accept_figure() or (1,)
                kind = self.kind() if self._space_ahead() else self._chains_over() or self.kind()
                if kind is None:
                    break
                found.append(Skip(count, kind, start, self.last_end))
                self.accept_any(",", "and")
            if found and self.at == close:
                self.at += 1
                return found
        self.at = mark
        return []

    def _chains_over(self) -> str | None:
        """``"ch" ["-"] number``: the space under those chains"""
        figure = self._chain_count()
        return None if figure is None else f"ch-{figure[0]} sp"

    def skipped_too(self) -> list[Skip]:
        """``{"and" ["next"] [figure] kind}`` behind a skip, each as a clause ends"""
        found: list[Skip] = []
        while True:
            mark, start = self.at, self.here.start
            if self.accept_any("and", "&"):
                self.accept_any("the")
                self._which()
                count = self.accept_figure() or (1,)
                kind = self.kind()
                if kind is not None and (self._clause_is_over() or self.here.text == "and"):
                    found.append(Skip(count, kind, start, self.last_end))
                    continue
            self.at = mark
            return found
