"""The words for stitches that hold in one text: the dictionary and the text's own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from tracker.notation.dictionary import STITCHES, phrases
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Token, Type, tokenize


class Lexicon:
    """Looks up stitches by the words they are written with.

    ``phrases`` maps words to the key of a stitch: its US name, or for a special stitch
    its own abbreviation in lower case; ``rings`` are words for an adjustable ring. A special
    stitch goes before the dictionary's.
    """

    def __init__(self, terms: str = "US", special: Iterable[Stitch] = ()) -> None:
        self.terms = terms
        self.phrases: dict[tuple[str, ...], str] = dict(phrases(terms))
        self.rings: set[str] = set()
        self._special: dict[str, Stitch] = {}
        for stitch in special:
            self.add(stitch)

    def add(self, stitch: Stitch, *spellings: str) -> None:
        """Add a special stitch under its abbreviation, its name and other spellings."""
        key = stitch.us or stitch.abbr.lower()
        self._special[key] = replace(stitch, us=key)
        for spelling in (stitch.abbr, stitch.name, *spellings):
            words = words_of(spelling)
            if words:
                self.phrases[words] = key
                self.phrases[(*words[:-1], words[-1] + "s")] = key

    def alias(self, spelling: str, us: str) -> None:
        """Let ``spelling`` mean a stitch of the dictionary."""
        self.phrases[words_of(spelling)] = us

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
        elif _is_aside(tokens[i - 1 : i + 4] if i else [], lexicon):
            skip = 2
        else:
            kept.append(token)
    return kept


def _is_aside(window: list[Token], lexicon: Lexicon) -> bool:
    """Whether ``window`` is a word, then a bracket that holds its abbreviation alone."""
    if len(window) < 4:
        return False
    before, opening, inside, closing = window[:4]
    if before.type is not Type.WORD or opening.type is not Type.OPEN:
        return False
    if closing.type is not Type.CLOSE:
        return False
    after = window[4].text if len(window) > 4 else ""
    known = (inside.text,) in lexicon.phrases or inside.text in ("st", "sts", "rnd", "sp")
    return (known or inside.type is Type.ORDINAL) and after not in ("x", "*", "times")


def words_of(spelling: str) -> tuple[str, ...]:
    """A spelling as the reader sees it: the texts of its tokens."""
    return tuple(t.text for t in tokenize(spelling) if t.type is not Type.END)
