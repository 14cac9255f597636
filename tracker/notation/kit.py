"""A small reader kit: look at tokens, accept them, go back."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from tracker.notation.tokens import Token, Type, plain, tokenize
from tracker.notation.tree import Figure

_NUMBERS = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
    " sixteen seventeen eighteen nineteen twenty"
)
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth"
#: Numbers in words, and ordinals with the ways in which pages misprint them.
NUMBER_WORDS: Mapping[str, int] = {w: n for n, w in enumerate(_NUMBERS.split(), start=1)}
ORDINAL_WORDS: Mapping[str, int] = {
    **{w: n for n, w in enumerate(_ORDINALS.split(), start=1)},
    "forth": 4,
    "rst": 1,
}
TIMES_WORDS: Mapping[str, int] = {"once": 1, "twice": 2, "thrice": 3}

_CLOSER = {"(": ")", "[": "]", "{": "}", "<": ">"}


class Kit:
    """Tokens of one text and a position among them.

    Methods named ``accept_*`` move on and return what they found, or stay and return
    None (or False). ``sizes`` is how many figures a figure for all sizes has.
    """

    def __init__(self, text: str, sizes: int = 1) -> None:
        self.text = text
        self.low = plain(text)
        self.sizes = sizes
        self.tokens, self._closers = _tokens_of(text)
        self.at = 0
        self.starring = 0

    @property
    def here(self) -> Token:
        """The token that comes next."""
        return self.tokens[self.at]

    def ahead(self, n: int = 1) -> Token:
        """The token ``n`` after the next one."""
        at = self.at + n
        return self.tokens[at] if at < len(self.tokens) else self.tokens[-1]

    @property
    def last_end(self) -> int:
        """Offset just past the token read last."""
        return self.tokens[self.at - 1].end if self.at else 0

    def done(self) -> bool:
        """Whether all tokens are read."""
        return self.here.type is Type.END

    def accept(self, first: str, *others: str) -> bool:
        """Read these words or signs, in this order, or none of them."""
        # Asked a hundred thousand times in a few hundred rounds, and mostly in vain.
        if self.tokens[self.at].text != first:
            return False
        if any(self.ahead(i).text != text for i, text in enumerate(others, start=1)):
            return False
        self.at += 1 + len(others)
        return True

    def accept_any(self, *texts: str) -> str:
        """Read one of these words or signs; "" where none stands here."""
        text = self.tokens[self.at].text  # that of the last token is empty
        if text in texts and text:
            self.at += 1
            return text
        return ""

    def accept_all(self, *texts: str) -> None:
        """Read as many of these words as stand here, in any order."""
        while self.tokens[self.at].text in texts and not self.done():
            self.at += 1

    def accept_phrase(self, phrases: Mapping[tuple[str, ...], str]) -> str | None:
        """The longest phrase that stands here; what it means, or None."""
        words: list[str] = []
        best: tuple[int, str] | None = None
        for i in range(5):
            words.append(self.ahead(i).text)
            meaning = phrases.get(tuple(words))
            if meaning is not None:
                best = (i + 1, meaning)
        if best is None:
            return None
        self.at += best[0]
        return best[1]

    def accept_number(self) -> int | None:
        """A single number, in digits or (up to twenty) in words."""
        token = self.here
        if token.type is Type.NUMBER:
            self.at += 1
            return token.value
        if token.text in NUMBER_WORDS:
            self.at += 1
            return NUMBER_WORDS[token.text]
        return None

    def accept_ordinal(self) -> int | None:
        """An ordinal, in digits ("2nd") or words ("second")."""
        token = self.here
        if token.type is Type.ORDINAL:
            self.at += 1
            return token.value
        if token.text == "r" and self.ahead().text == "st":
            # "first" with its "fi" lost, as some pages print it
            self.at += 2
            return 1
        if token.text in ORDINAL_WORDS:
            self.at += 1
            return ORDINAL_WORDS[token.text]
        return None

    def accept_figure(self) -> Figure | None:
        """``figure = number [ "(" number {"," number} ")" | number {"/" number} ]``

        The bracket is taken for other sizes only when it holds one number for each.
        """
        first = self.accept_number()
        if first is None:
            return None
        if self.sizes == 1:
            return (first,)
        more = self._other_sizes()
        return (first, *more) if len(more) == self.sizes - 1 else (first,)

    def _other_sizes(self) -> list[int]:
        """``{"/" number} | "(" number {"," number} ")"``, one for each further size"""
        mark, found = self.at, []
        if self.here.text in ("/", "-"):
            sign = self.here.text
            while self.accept(sign) and self.here.type is Type.NUMBER:
                found.append(self.here.value)
                self.at += 1
        elif self.here.type is Type.OPEN:
            found = self._bracketed_each() or self._bracketed_sizes()
        if len(found) != self.sizes - 1:
            self.at = mark
            return []
        return found

    def _bracketed_each(self) -> list[int]:
        """``{"(" number ")"}``: a bracket for each further size"""
        mark = self.at
        found: list[int] = []
        while len(found) < self.sizes - 1 and self.closing() == self.at + 2:
            if self.ahead().type is not Type.NUMBER:
                break
            found.append(self.ahead().value)
            self.at += 3
        if len(found) < self.sizes - 1:
            self.at = mark
            return []
        return found

    def _bracketed_sizes(self) -> list[int]:
        """Numbers in a bracket, where it holds nothing else; brackets may be nested."""
        found: list[int] = []
        depth = 0
        while True:
            token = self.here
            if token.type is Type.OPEN:
                depth += 1
            elif token.type is Type.CLOSE:
                depth -= 1
            elif token.type is Type.NUMBER:
                found.append(token.value)
            elif token.text not in (",", "-", "/", ";", ":"):
                return []
            self.at += 1
            if depth == 0:
                return found

    def _clause_words(self) -> set[str]:
        """The words up to the end of this clause."""
        return {t.text for t in self.tokens[self.at : self.clause_end()]}

    def clause_end(self) -> int:
        """Index of the token that ends this clause: a separator, a bracket or a star."""
        index = self.at
        while True:
            token = self.tokens[index]
            if token.type in (Type.END, Type.OPEN, Type.CLOSE, Type.STAR):
                return index
            if token.text in (",", ";", ".", ":", "=", "-") and not self._inside_word(index):
                return index
            index += 1

    def _inside_word(self, index: int) -> bool:
        """Whether a sign stands inside a word or number, as in "ch-2" and "5.5"."""
        token, before, after = (self.tokens[i] for i in (index, index - 1, index + 1))
        glued = before.end == token.start and token.end == after.start
        if self.text[token.start : token.end] == "\u2014":
            return False  # a long dash parts words also where no blank stands beside it
        return glued and (token.text == "-" or after.type is Type.NUMBER)

    def to_clause_end(self) -> None:
        """Pass over the rest of this clause."""
        self.at = self.clause_end()

    def depth(self) -> int:
        """How many brackets, each in the one before, the text has at most."""
        open_: list[int] = []
        deepest = 0
        for opening in sorted(self._closers):
            while open_ and open_[-1] < opening:
                open_.pop()
            open_.append(self._closers[opening])
            deepest = max(deepest, len(open_))
        return deepest

    def closing(self) -> int:
        """Index of the bracket that closes the one standing here; -1 where none does."""
        return self._closers.get(self.at, -1)


@lru_cache(64)
def _tokens_of(text: str) -> tuple[list[Token], dict[int, int]]:
    """The tokens of a text, and its brackets; a round is read by several readers in turn.

    Neither is ever changed.
    """
    tokens = tokenize(text)
    return tokens, match_brackets(tokens)


def _closes(closing: Token, opening: Token) -> bool:
    return _CLOSER[opening.text] == closing.text


def match_brackets(tokens: list[Token]) -> dict[int, int]:
    """Index of each opening bracket -> index of the one that closes it."""
    open_: list[int] = []
    found: dict[int, int] = {}
    for index, token in enumerate(tokens):
        if token.type is Type.OPEN:
            open_.append(index)
        elif token.type is Type.CLOSE and open_ and _closes(token, tokens[open_[-1]]):
            found[open_.pop()] = index
    return found
