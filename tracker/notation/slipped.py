"""The words of a round that are not known, and the known ones that a slip may have made them of."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from itertools import combinations

from tracker.lean import NamedTuple
from tracker.notation import kit, wordlists
from tracker.notation.edits import Edit
from tracker.notation.keys import COMMON, LIKELY, POSSIBLE, parts_of, slip, vowelless
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import Type, plain, tokenize
from tracker.notation.wordlists import MENDED, STITCH_WORDS

#: A run of letters and digits, with what a scanner makes of an "i" in its midst.
_CHUNK = re.compile(r"[^\W_]+(?:['`\u00b4][^\W_]+)*")
_RUN = re.compile(r"[a-z]+")
#: Words that join two halves of one: a blank, a line end, a hyphen at one.
_PARTED = re.compile(r"\s*-?\s+")
#: What scanned print makes of letters and digits.
_SCANNED = {
    "'": "i",
    "`": "i",
    "\u00b4": "i",
    "0": "o",
    "5": "s",
    "o": "0",
    "s": "5",
    "1": "il",
    "l": "1i",
    "i": "1l",
}
#: How much less likely a slip is with each step, compared with how rare the word is.
STEP = 3
_LEAST = 4
#: A name so long is hardly another one with a slip in it.
_LONG = 6


class Mend(NamedTuple):
    """One change of a text: its edits, how far it goes, and what is told of it.

    ``bold``: only a printed count bears it out: it changes a word that is known, or it makes a
    word one for a stitch that the text has nowhere else, or that widens or narrows a round.
    """

    edits: tuple[Edit, ...]
    far: int
    told: str = ""
    bold: bool = False

    @property
    def where(self) -> tuple[int, int]:
        """Offsets of the words in the text as written."""
        return self.edits[0].start, self.edits[0].end


class Places:
    """The words of a round; ``spans`` are those that were not understood."""

    def __init__(
        self,
        text: str,
        spans: Sequence[tuple[int, int]],
        lexicon: Lexicon,
        used: Collection[str],
    ) -> None:
        self._text, self._low, self._used = text, plain(text), used
        self._lexicon = lexicon
        self._spans = [(_with_bracket(self._low, start), end) for start, end in spans]
        names = (words for words in lexicon.phrases if min(map(len, words)) > 1)
        self._known = _listed().union(*names)
        single = (words[0] for words in lexicon.phrases if len(words) == 1)
        long = sorted(word for word in _listed() if len(word) >= _LONG - 1 and word.isalpha())
        self._targets = tuple(dict.fromkeys((*MENDED, *(w for w in single if len(w) > 1), *long)))
        self._vowelless = frozenset(filter(vowelless, self._targets))
        self._chunks = list(_CHUNK.finditer(self._low))

    def unknown(self, *, within: bool) -> list[str]:
        """The words that are not known, in what was not understood or beside it."""
        inside = dict.fromkeys(c[0] for c in self._chunks if self._is_within(*c.span()))
        beside = dict.fromkeys(c[0] for c in self._chunks if c[0] not in inside)
        return [word for word in (inside if within else beside) if not self._is_known(word)]

    def mends(self, word: str) -> list[Mend]:
        """What a word that is not known may stand for, the likeliest first."""
        places = [c.span() for c in self._chunks if c[0] == word]
        found = [
            Mend(
                tuple(Edit(*place, new) for place in places),
                far,
                self._told(places[0], new),
                self._is_bold(new, far),
            )
            for new, far in self._meant(word).items()
        ]
        return sorted([*found, *self._joined(word)], key=lambda mend: mend.far)

    def doubled(self) -> list[Mend]:
        """Words that stand twice, one of which is passed over."""
        found = []
        for one, other in zip(self._chunks, self._chunks[1:], strict=False):
            between = self._low[one.end() : other.start()]
            if one[0] == other[0] and one[0].isalpha() and between.isspace():
                edit = Edit(one.end(), other.end(), "")
                words = self._text[one.start() : other.end()]
                if self._is_within(one.start(), other.end()):
                    found.append(Mend((edit,), STEP, f"{words!r} is taken for {one[0]!r}"))
        return found

    def misplaced(self) -> Iterator[Mend]:
        """Known words where they are not understood, taken for others: "in" for "inc"."""
        for chunk in self._chunks:
            word, place = chunk[0], chunk.span()
            named = (word,) in self._lexicon.phrases or word in STITCH_WORDS
            if word.isalpha() and not named and self._is_known(word) and self._is_within(*place):
                for new, far in self._slips(word, sorted(COMMON)).items():
                    if far < STEP * POSSIBLE:
                        told = self._told(place, new)
                        yield Mend((Edit(*place, new),), far + STEP, told, bold=True)

    def _is_bold(self, new: str, far: int) -> bool:
        """Whether a word is made one for a stitch that nothing else makes likely."""
        if " " in new:
            return False
        words = [t.text for t in tokenize(new) if t.type is Type.WORD]
        names = [word for word in words if (word,) in self._lexicon.phrases]
        stitches = [self._lexicon.stitch(self._lexicon.phrases[word,]) for word in names]
        shaped = any(
            len(w) < _LONG and s.takes != s.makes for w, s in zip(names, stitches, strict=True)
        )
        return shaped or any(word not in self._used or far >= STEP * POSSIBLE for word in names)

    def _told(self, place: tuple[int, int], new: str) -> str:
        return f"{self._text[slice(*place)]!r} is taken for {new!r}"

    def _is_within(self, start: int, end: int) -> bool:
        return any(start < span[1] and span[0] < end for span in self._spans)

    def _is_known(self, chunk: str) -> bool:
        return all(
            token.text in self._known if token.type is Type.WORD else token.type is not Type.SIGN
            for token in tokenize(chunk)
        )

    def _meant(self, chunk: str) -> dict[str, int]:
        """What a chunk may stand for, and how far that is."""
        found = {new: STEP * LIKELY for new in _scanned(chunk) if self._is_known(new)}
        if not chunk.isalpha():
            found |= {new: far for new, far in self._slips(chunk).items() if not new.isalpha()}
        runs = [run for run in _RUN.finditer(chunk) if run[0] not in self._known]
        if len(runs) == 1 and "'" not in chunk:
            begin, end = runs[0].span()
            for new, far in (self._slips(runs[0][0]) | self._parted(runs[0][0])).items():
                found.setdefault(chunk[:begin] + new + chunk[end:], far)
        return found

    def _slips(self, word: str, of: Sequence[str] = ()) -> dict[str, int]:
        """Known words, or some ``of`` them, that one slip may have made a word of."""
        size = len(word)
        near = (
            (new, slip(word, new))
            for new in of or self._targets
            if abs(len(new) - size) <= 1 or new in self._vowelless
        )
        return {new: STEP * far + self._rarity(new) for new, far in near if far}

    def _rarity(self, word: str) -> int:
        if word in self._used:
            return 0
        return 1 if word in COMMON else 2

    def _parted(self, word: str) -> dict[str, int]:
        """The known words of which a word is made up: "ineach"."""
        parts = parts_of(word) if len(word) >= _LEAST else ()
        return {" ".join(parts): STEP * LIKELY} if parts else {}

    def _joined(self, word: str) -> list[Mend]:
        """The word made one with that before it or behind it: "aroun d"."""
        found = []
        for one, other in zip(self._chunks, self._chunks[1:], strict=False):
            whole = one[0] + other[0]
            between = self._low[one.end() : other.start()]
            if word in (one[0], other[0]) and _PARTED.fullmatch(between) and whole in self._targets:
                place = one.start(), other.end()
                edit = Edit(*place, whole)
                found.append(Mend((edit,), STEP * LIKELY, self._told(place, whole)))
        return found


def _listed() -> set[str]:
    """The words that the reader goes by."""
    lists = [value for value in vars(wordlists).values() if isinstance(value, tuple | frozenset)]
    numbers = {*kit.NUMBER_WORDS, *kit.ORDINAL_WORDS, *kit.TIMES_WORDS}
    words = {word for words in lists for word in words if isinstance(word, str)}
    return {word for word in words if len(word) > 1} | {"a"} | numbers


def _with_bracket(text: str, start: int) -> int:
    """Where words begin that are not understood, with a bracket right before them.

    What is in it was passed over, as if it asked for nothing: "(inv) x 6".
    """
    before = text[:start].rstrip()
    return before.rfind("(") if before.endswith(")") else start


def _scanned(chunk: str) -> Iterator[str]:
    """A chunk with one or two of its letters as scanned print may have changed them."""
    spots = [i for i, letter in enumerate(chunk) if letter in _SCANNED]
    if len(spots) > 2 * _LEAST:
        return
    for some in (*combinations(spots, 1), *combinations(spots, 2)):
        for first in _SCANNED[chunk[some[0]]]:
            letters = list(chunk)
            letters[some[0]] = first
            for other in some[1:]:
                letters[other] = _SCANNED[chunk[other]][0]
            yield "".join(letters)
