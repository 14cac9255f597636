"""Reading a printed count that ends its line without a bracket: "= 18 sc", "You have 24 sts."."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.bunches import named
from tracker.notation.counts import Counts
from tracker.notation.round_text import Stated
from tracker.notation.tokens import Token, Type
from tracker.notation.tree import Figure
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    END_SIGNS,
    GIVING,
    RING_WORDS,
    SPACE_WORDS,
)

#: Words that a sentence on the count of a round begins with.
_TELLING = (
    "you",
    "we",
    "there",
    "stitch",
    "total",
    "tot",
    "you'll",
    "you've",
    "there'll",
    "we'll",
    "we've",
)
#: "Leaving 3 sts unworked" tells no count.
_LEFT = ("unworked", "free", "unused")
#: What the hands do behind a count, in the same sentence: "12 htr, turn."
_HANDS_ON = ("turn", "join")


class ClosingCounts(Counts):
    """Rules for counts behind the words of a round."""

    def end_count(self) -> Stated | None:
        """``sign {sign} figure [stitches] {sign}``, the very last: ". 18", "-> 18", "*18*"."""
        mark = self.at
        self._end_signs()
        signs = {t.text for t in self.tokens[mark : self.at]}
        signs |= set() if signs - {","} else self._times_before_count(mark)
        start, figure = self.here.start, self.accept_figure()
        plural = bool(self.accept_any("sts", "stitches", "st"))
        if plural:
            self.accept_any("in")
            self.accept_any("rem", "remain", "remaining", "left", "total", "all")
        end = self.last_end
        self._end_signs()
        alone = self.here.type is Type.END and bool(signs - {","} or plural)
        if figure is not None and signs and alone:
            return Stated(figure, (("", figure),), start, end)
        self.at = mark
        return None

    def _times_before_count(self, at: int) -> set[str]:
        """The words of a repeat that a bare figure ends: "(2 sc, inc) x6 24", "sc around 24"."""
        before = [t.text for t in self.tokens[max(0, at - 2) : at]]
        crossing = (*self.crosses, "*")
        crossed = len(before) == 2 and before[0] in crossing and before[1].isdigit()
        crossed = crossed or (len(before) == 2 and before[1] in crossing and before[0].isdigit())
        if at < self.at:
            return {"x"} if crossed or before[-1:] == ["times"] else set()  # "…, 6 x, 30"
        ringed = before[-1:] and before[-1] in (*RING_WORDS, *self.lexicon.rings)
        told = crossed or ringed or before[-1:] in (["times"], ["around"]) or self._list_before()
        told = told or before == ["times", ")"]
        return set(before[-1:]) if told else set()

    def _list_before(self) -> bool:
        """Whether "6 sc inc 11 sc" ends here, each number before its stitch."""
        mark = self.at
        found, self.at = self.at > 3, self.at - 2
        found = found and self.accept_number() is not None
        found = found and self.accept_phrase(self.lexicon.phrases) is not None and self.at == mark
        self.at = mark
        listed = self.tokens[max(0, mark - 3)]
        return found and (listed.text in (",", ";") or (listed.text,) in self.lexicon.phrases)

    def _end_signs(self) -> None:
        """Pass over signs such as set off a figure from the words."""
        while self.here.text in END_SIGNS or self.here.type is Type.STAR:
            self.at += 1

    def closing_count(self, deeds_before: bool) -> Stated | None:
        """A count that ends the line without a bracket.

        ``"=" figure [what]``, ``":" figure what``, ``"-" figure what``, or, as a sentence
        of its own after a join or a turn (``deeds_before``), ``figure what``.
        """
        mark, start = self.at, self.here.start
        sign = self.accept_any("=", *((":",) if deeds_before else ()), "-") or self._giving()
        end = self._sentence_end()
        if sign == "-" and not deeds_before and not self._text_over(end):
            self.at = mark
            return None
        several = self._in_groups(end)
        if several is not None:
            return Stated(None, (several,), start, self.last_end)
        if self.here.text in _TELLING:
            sign = sign or self.here.text
        sided = self._of_sides(end) if sign or deeds_before or self.side_first() else None
        if sided is not None:
            return replace(sided, start=start, end=self.last_end)
        told = {t.text for t in self.tokens[self.at : end]}
        placed = "in" in told and not told & {"total", "all", "you", "there"}
        placed = placed or ("on" in told and bool(told & {"ch", "turning"}))
        if placed or told & {"each", "next", "into", "same", "first", "last", "around"}:
            self.at = mark
            return None
        if sign or deeds_before or self._is_plain_stitches(end) or self._ends_text(mark, end):
            found = self._figures(end) if self._begins_figure() else None
            if found is not None and self.at == end:
                self.accept_any(".", ";")
                return replace(found, start=start, end=self.last_end)
        self.at = mark
        return None

    def _of_sides(self, end: int) -> Stated | None:
        """Figures of which one at least is that of a side: "You will have 9 sc per side."."""
        mark = self.at
        found = self._figures(end)
        if found is None or not found.sides or self.at != end:
            self.at = mark
            return None
        self.accept_any(".", ";")
        return found

    def _giving(self) -> str:
        """``"making" | "for" "a" "total" "of" | "to" "make" …``, before the last figure"""
        if not self._clause_words().isdisjoint(_LEFT):
            return ""
        self.accept_any("which", "this")
        word = self.accept_any(*GIVING)
        if word or self.accept("for", "a", "total", "of") or self.accept("so", "you", "have"):
            self.accept_any("you", "in")
            return "="
        if self.accept("ending", "up", "with"):
            return "="
        plain = self.ahead().type is Type.NUMBER and self.ahead(2).text in ("sts", "stitches")
        return "=" if plain and self.accept("for") else ""

    def _text_over(self, end: int) -> bool:
        """Whether nothing but a full stop stands from token ``end`` on."""
        return all(t.text == "." or t.type is Type.END for t in self.tokens[end:])

    def _ends_text(self, mark: int, end: int) -> bool:
        """Whether a number and a stitch stand here as the last sentence of the text."""
        sentence = mark > 1 and self.tokens[mark - 1].text == "."
        if not sentence or self.tokens[end + (end < len(self.tokens) - 1)].type is not Type.END:
            return False
        words = {token.text for token in self.tokens[mark:end]}
        chained = "+" in words and not words.isdisjoint(CHAIN_WORDS)
        return end - mark == 2 or chained or self.tokens[end - 1].text in SPACE_WORDS

    def _in_groups(self, end: int) -> tuple[str, Figure] | None:
        """``["you" "have"] figure ("groups" | "petals" …) words``"""
        mark = self.at
        self.accept_all(*_TELLING, "should", "have", "are", "now", "will")
        figure = self.accept_figure()
        words = [t.text for t in self.tokens[self.at : end]]
        several = named(words) if words and named(words[:1]) else ""
        if figure is not None and several and figure != (1,):
            self.at = end
            self.accept_any(".", ";")
            return several, figure
        self.at = mark
        return None

    def _begins_figure(self) -> bool:
        if self.here.text in _TELLING:
            return True
        return self.here.type is Type.NUMBER or self.number_in_words()

    def _sentence_end(self) -> int:
        """Index of the token that ends this sentence; signs in brackets do not."""
        index = self.at
        while self.tokens[index].type is not Type.END and self.tokens[index].text not in (".", ";"):
            if self.tokens[index].text == "," and self.tokens[index + 1].text in _HANDS_ON:
                return index
            if self.tokens[index].type is Type.OPEN and index in self._closers:
                index = self._closers[index]
            index += 1
        return index

    def _each_size_counted(self, end: int) -> bool:
        """Whether all up to token ``end`` is a figure for each size, and a word for stitches."""
        numbers = self.tokens[self.at : end - 1 : 2]
        each = len(numbers) == self.sizes > 1 and all(t.type is Type.NUMBER for t in numbers)
        signs = {t.text for t in self.tokens[self.at + 1 : end - 1 : 2]}
        named = (self.tokens[end - 1].text,) in self.lexicon.phrases
        return each and signs <= {",", "/", "-", ";"} and named

    def _is_plain_stitches(self, end: int) -> bool:
        """Whether the sentence is only "24 sts": a number and the word for stitches."""
        last: Token = self.tokens[end - 1]
        if self._each_size_counted(end):
            return True
        short = end - self.at <= 2 + 3 * (self.sizes > 1)
        return short and last.text in ("sts", "stitches", "st")
