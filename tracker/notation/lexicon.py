"""The words for stitches that hold in one text: the dictionary and the text's own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from tracker.notation.dictionary import STITCHES, phrases
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Token, Type, tokenize
from tracker.notation.tree import Node

#: What a bracket behind a word may hold, beside stitches, where it only abbreviates it.
_ABBREVIATED = (("st",), ("sts",), ("rnd",), ("sp",), ("ch", "-", "sp"), ("sps",), ("rep",))


#: So many texts are kept as tokens, for those that are read more than once.
_MOST_KEPT = 64
#: Words between "in" and the rounds that a label has named.
_EACH_OF = frozenset(("each", "every", "all", "both", "of", "the", "these", "those"))
_ROUNDS = frozenset(("rounds", "rnds", "rows"))
#: What "we" or "you" may do without that it matters who does it.
_DONE = frozenset(
    (
        "make",
        "work",
        "start",
        "begin",
        "crochet",
        "skip",
        "miss",
        "repeat",
        "close",
        "join",
        "chain",
        "turn",
        "do",
    )
)

Matched = tuple[list[Token], dict[int, int]]
"""Tokens, and the index of each opening bracket with that of the one that closes it."""


class Lexicon:
    """Looks up stitches by the words they are written with.

    ``firsts`` are the words that a stitch's name begins with.
    ``phrases`` maps words to the key of a stitch: its US name, or for a special stitch
    its own abbreviation in lower case; ``rings`` are words for an adjustable ring. A special
    stitch goes before the dictionary's. ``corner``: what the text last called a corner.
    """

    def __init__(self, terms: str = "US", special: Iterable[Stitch] = ()) -> None:
        self.terms = terms
        self.phrases: dict[tuple[str, ...], str] = dict(phrases(terms))
        self.firsts = {words[0] for words in self.phrases}
        self.rings: set[str] = set()
        self.corner: tuple[Node, ...] = ()
        self._special: dict[str, Stitch] = {}
        self._prepared: dict[str, Matched] = {}
        for stitch in special:
            self.add(stitch)

    def add(self, stitch: Stitch, *spellings: str) -> None:
        """Add a special stitch under its abbreviation, its name and other spellings."""
        self._prepared.clear()
        key = stitch.us or stitch.abbr.lower()
        self._special[key] = stitch._replace(us=key)
        for spelling in (stitch.abbr, stitch.name, *spellings):
            words = words_of(spelling)
            if words:
                self.firsts |= {words[0], words[0] + "s"}
                self.phrases[words] = key
                self.phrases[(*words[:-1], words[-1] + "s")] = key

    def alias(self, spelling: str, us: str) -> None:
        """Let ``spelling`` mean a stitch of the dictionary."""
        self._prepared.clear()
        words = words_of(spelling)
        self.phrases[words] = us
        self.firsts.update(words[:1])

    def tokens_of(self, text: str, prepare: Callable[[], Matched]) -> Matched:
        """A text as ``prepare`` makes it, which is asked once for each text."""
        if text not in self._prepared:
            if len(self._prepared) >= _MOST_KEPT:
                self._prepared.clear()
            self._prepared[text] = prepare()
        return self._prepared[text]

    def special(self) -> Mapping[str, Stitch]:
        """The text's own stitches, by key."""
        return self._special

    def stitch(self, key: str) -> Stitch:
        """The stitch behind a key found in ``phrases``."""
        return self._special.get(key) or STITCHES[key]


def without_asides(tokens: list[Token], lexicon: Lexicon) -> list[Token]:
    """The tokens without brackets that only name again what stands before them.

    "double crochet (dc)" introduces an abbreviation, "next (27th) st" helps to count.
    """
    kept: list[Token] = []
    skip = 0
    for i, token in enumerate(tokens):
        if skip:
            skip -= 1
            continue
        length = _aside(tokens, i, lexicon) if token.type is Type.OPEN and i else 0
        if length:
            skip = length - 1
            if kept and kept[-1].text == ":":
                kept.pop()  # "Chain: (ch) 8"
        else:
            kept.append(token)
    return kept


def impersonal(tokens: list[Token]) -> list[Token]:
    """The tokens without "we" and "you" before what is done: "we skip 2 stitches"."""
    return [
        token
        for token, then in zip(tokens, [*tokens[1:], tokens[-1]], strict=True)
        if token.text not in ("we", "you", "i") or then.text not in _DONE
    ]


def repeating(tokens: list[Token]) -> list[Token]:
    """The tokens with "work from * to *" as "repeat from * to *"."""
    if not any(token.text == "work" for token in tokens):
        return tokens
    found = list(tokens)
    for i, (word, led, star) in enumerate(zip(tokens, tokens[1:], tokens[2:], strict=False)):
        if word.text == "work" and led.text == "from" and star.type is Type.STAR:
            found[i] = replace(word, text="repeat")
    return found


def roundless(tokens: list[Token]) -> list[Token]:
    """The tokens without "in each of these two rounds", which the label says already."""
    if _ROUNDS.isdisjoint(token.text for token in tokens):
        return tokens
    kept: list[Token] = []
    at = 0
    while at < len(tokens):
        length = _of_rounds(tokens[at:]) if kept else 0
        if not length:
            kept.append(tokens[at])
        at += max(1, length)
    return kept


def _of_rounds(tokens: list[Token]) -> int:
    """How many tokens only say that each of several rounds is meant."""
    if tokens[0].text not in ("in", "on", "for") or tokens[1].text not in _EACH_OF:
        return 0
    end = next((i for i, t in enumerate(tokens) if i and t.text not in _EACH_OF), 1)
    end += tokens[end].type is Type.NUMBER or tokens[end].text in ("two", "three", "four")
    if tokens[end].text not in _ROUNDS:
        return 0
    over = tokens[end + 1].type in (Type.SIGN, Type.OPEN, Type.END)
    return end + 1 if over else 0


def _aside(tokens: list[Token], start: int, lexicon: Lexicon) -> int:
    """How many tokens the bracket at ``start`` has, where it only names a word again."""
    before = tokens[start - 1 - (tokens[start - 1].text == ":")]
    if tokens[start + 1].text == "see":  # "(see Special Stitches)"
        return next((i + 1 - start for i in range(start, start + 9) if _closes(tokens, i)), 0)
    close = next((i for i in range(start, start + 5) if _closes(tokens, i)), 0)
    inside = tokens[start + 1 : close] if close else []
    if before.type is not Type.WORD or not inside:
        return 0
    after = tokens[min(close + 1, len(tokens) - 1)].text
    words = tuple(t.text for t in inside)
    known = words in lexicon.phrases or words in _ABBREVIATED
    ordinal = len(inside) == 1 and inside[0].type is Type.ORDINAL
    return close + 1 - start if (known or ordinal) and after not in ("x", "*", "times") else 0


def _closes(tokens: list[Token], index: int) -> bool:
    return index < len(tokens) and tokens[index].type is Type.CLOSE


def words_of(spelling: str) -> tuple[str, ...]:
    """A spelling as the reader sees it: the texts of its tokens."""
    return tuple(t.text for t in tokenize(spelling) if t.type is not Type.END)
