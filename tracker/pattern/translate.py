"""Instructions in US terms <-> the same in UK terms, word for word and back again.

Only the names of stitches change, and the few other words of the trade that differ; all
else stays letter for letter, capitals included. Pairs of names come from the stitch
dictionary and its sources; "skip" and "miss", "gauge" and "tension": common practice, no
source.

A word of the other system in a text, such as "sc" in UK terms, is left alone: it means the
same on both sides, but nothing can bring it back from a text where it is at home. The
words "US sc" in UK terms, on the other hand, are "UK dc" in US terms.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import cache
from types import MappingProxyType

from tracker.notation.dictionary import UK_BY_US, base_of, phrases
from tracker.notation.lexicon import words_of
from tracker.notation.stitches import Stitch, Variant
from tracker.notation.tokens import Token, Type, tokenize
from tracker.pattern.model import Part, Pattern

Words = tuple[str, ...]

#: US name, UK name; the longer before the shorter ones that they hold.
_NAMES = (
    ("half double crochet", "half treble crochet"),
    ("half double", "half treble"),
    ("single crochet", "double crochet"),
    ("triple treble", "quadruple treble"),
    ("double treble", "triple treble"),
    ("treble", "double treble"),
    ("double crochet", "treble crochet"),
    ("double", "treble"),
)
#: Spellings that the dictionary has on one side only, or that pair by chance.
_PAIRS = (
    ("s c", "d c"),
    ("d c", "t c"),
    ("h dc", "half tr"),
    ("trc", "dtrc"),
    ("dtrc", "ttr"),
    ("ttr", "quad tr"),
)
#: Words of the trade that are the same thing in both directions.
_SWAPS = (("skip", "miss"), ("skips", "misses"), ("skipped", "missed"))
_GAUGE = ("gauge", "tension")
_AFTER_GAUGE = (":", "swatch", "square", "is")
#: Behind a bare "double" or "treble", these make it an everyday word.
_EVERYDAY = (
    *("strand", "strands", "stranded", "thickness", "thick", "knot", "knots", "check", "yarn"),
    *("layer", "layers", "the", "up", "over", "sided", "size", "length", "width", "time", "times"),
)
_SYSTEMS = ("US", "UK")
_OF_TERMS = ("terms", "term", "terminology", "abbreviations", "notation", "names")


def translate_text(text: str, to: str, own: Collection[Words] = ()) -> str:
    """A text in the other terms.

    Args:
        text: any words; in UK terms if ``to`` is "US", and the other way round.
        to: "US" or "UK".
        own: names that the pattern has given to stitches of its own; they stay.

    Raises:
        ValueError: ``to`` is neither.
    """
    if to not in _SYSTEMS:
        raise ValueError(f'terms must be "US" or "UK", not {to!r}')
    return _Translation(text, to, own).text()


def translate(pattern: Pattern, to: str) -> Pattern:
    """A whole pattern in ``to`` terms; the same one if it is written in them.

    Its ``source`` is empty: `tracker.pattern.draft.to_toml` writes a new one.
    """
    if pattern.terms == to:
        return pattern
    own = [words for s in pattern.stitches for words in (words_of(s.abbr), words_of(s.name))]

    def said(text: str) -> str:
        return translate_text(text, to, own)

    gauge = pattern.gauge
    return pattern._replace(
        title=said(pattern.title),
        terms=to,
        about=said(pattern.about),
        gauge=None if gauge is None else gauge._replace(stitch=said(gauge.stitch)),
        stitches=tuple(_stitch(s, to, own) for s in pattern.stitches),
        parts=tuple(_part(p, to, own) for p in pattern.parts),
        source="",
    )


def _stitch(stitch: Stitch, to: str, own: Collection[Words]) -> Stitch:
    return stitch._replace(
        how=translate_text(stitch.how, to, own),
        loops=tuple(translate_text(loop, to, own) for loop in stitch.loops),
        first=_variant(stitch.first, to, own),
        last=_variant(stitch.last, to, own),
    )


def _variant(variant: Variant | None, to: str, own: Collection[Words]) -> Variant | None:
    if variant is None:
        return None
    loops = tuple(translate_text(loop, to, own) for loop in variant.loops)
    return variant._replace(how=translate_text(variant.how, to, own), loops=loops)


def _part(part: Part, to: str, own: Collection[Words]) -> Part:
    return part._replace(
        rounds=translate_text(part.rounds, to, own),
        steps=tuple(translate_text(step, to, own) for step in part.steps),
        note=translate_text(part.note, to, own),
    )


@cache
def _table(to: str) -> Mapping[Words, Words]:
    """Every way of writing a stitch -> the same in the other terms; no two lead to one."""
    there = dict(_stitch_pairs())
    for us, uk in _PAIRS:
        for many in ("", "s"):
            there[tuple(f"{us}{many}".split())] = tuple(f"{uk}{many}".split())
    taken = set(there.values())
    there |= {uk: us for us, uk in list(there.items()) if us not in taken and uk not in there}
    for one, other in (*_SWAPS, _GAUGE):
        there[one,], there[other,] = (other,), (one,)
    back = {uk: us for us, uk in there.items()}
    return MappingProxyType(there if to == "UK" else back)


@cache
def _shared() -> frozenset[Words]:
    """Names of several words that the dictionary reads as the same in both terms."""
    in_uk = phrases("UK")
    found = {words for words, us in phrases("US").items() if in_uk.get(words) == us}
    paired = {*_table("US"), *_table("UK")}
    return frozenset(words for words in found if len(words) > 1 and words not in paired)


def _stitch_pairs() -> Iterator[tuple[Words, Words]]:
    """Pairs of spellings that the dictionary reads as the same stitch in both terms."""
    in_uk, taken = phrases("UK"), set()
    for words, us in phrases("US").items():
        other = _other_name(words, us)
        if other != words and in_uk.get(other) == us and other not in taken:
            taken.add(other)
            yield words, other


def _other_name(words: Words, us: str) -> Words:
    """A US spelling with the stitch's name exchanged for its UK name."""
    text = " ".join(words)
    for name, other in _NAMES:
        if name in text:
            return tuple(text.replace(name, other, 1).split())
    base = base_of(us)
    return tuple(text.replace(base, UK_BY_US.get(base, base), 1).split())


class _Translation:
    """One text on its way into the other terms."""

    def __init__(self, text: str, to: str, own: Collection[Words]) -> None:
        self.source = text
        self.to = to
        self.own = _shared() | frozenset(own)
        self.tokens = tokenize(text)
        self.longest = max((len(words) for words in (*_table(to), *self.own)), default=1)

    def text(self) -> str:
        """The whole text."""
        found: list[str] = []
        at = done = 0
        while at < len(self.tokens) - 1:
            step, words = self._here(at)
            if words is not None:
                found.append(self.source[done : self.tokens[at].start])
                found.append(words)
                done = self.tokens[at + step - 1].end
            at += step
        return "".join(found) + self.source[done:]

    def _here(self, at: int) -> tuple[int, str | None]:
        """``(tokens, words for them)`` at token ``at``; None where they stay."""
        system = self._written(at, at + 1)
        if system in _SYSTEMS:
            other = _SYSTEMS[system == "US"]
            if self.tokens[at + 1].text in _OF_TERMS:
                return 1, other
            size, words = self._phrase(at + 1, _table(other))
            if words is not None:
                return size + 1, f"{other}{self._gap(at)}{words}"
        return self._phrase(at, _table(self.to))

    def _phrase(self, at: int, table: Mapping[Words, Words]) -> tuple[int, str | None]:
        """The longest phrase at token ``at``."""
        for size in range(min(self.longest, len(self.tokens) - 1 - at), 0, -1):
            words = tuple(token.text for token in self.tokens[at : at + size])
            if words in self.own or (words[0] == "half" and self._foreign(words)):
                return size, None
            if words in table:
                other = table[words]
                return (
                    (size, None)
                    if self._everyday(words, at + size)
                    else (
                        size,
                        self._styled(at, size, other),
                    )
                )
        return 1, None

    def _foreign(self, words: Words) -> bool:
        """Whether these are words that only the other system has, in full."""
        return words in _table(_SYSTEMS[self.to == "US"]) and words not in _table(self.to)

    def _everyday(self, words: Words, after: int) -> bool:
        """Whether words of the trade are here meant as everyone uses them."""
        follows = self.tokens[after].text
        if words[0] in _GAUGE:
            return follows not in _AFTER_GAUGE
        return words in (("double",), ("treble",)) and follows in _EVERYDAY

    def _styled(self, at: int, size: int, words: Words) -> str:
        """``words`` in the capitals and with the gaps of the tokens they stand for."""
        old = [self._written(i, i + 1) for i in range(at, at + size)]
        gaps = [self._gap(i) for i in range(at, at + size - 1)]
        if len(words) != size:
            old, gaps = _matched(old, len(words)), [" "] * (len(words) - 1)
        if any(map(_all_capitals, old)):
            old = [like * 2 if len(like) == 1 else like for like in old]
        new = [_in_style(word, like) for word, like in zip(words, old, strict=True)]
        return "".join(a + b for a, b in zip(new, [*gaps, ""], strict=True))

    def _written(self, begin: int, end: int) -> str:
        return self.source[self.tokens[begin].start : self.tokens[end - 1].end]

    def _gap(self, at: int) -> str:
        before: Token = self.tokens[at]
        after = self.tokens[at + 1]
        return "" if after.type is Type.END else self.source[before.end : after.start]


def _matched(old: Sequence[str], count: int) -> list[str]:
    """Words whose capitals ``count`` other words take on: the first leads, the last follow."""
    rest = list(old[1:])
    if count > len(old):
        second = old[0] if _all_capitals(old[0]) or (rest and rest[0][:1].isupper()) else "x"
        return [old[0], *[second] * (count - len(old)), *rest]
    return [old[0], *old[len(old) - count + 1 :]]


def _all_capitals(word: str) -> bool:
    return len(word) > 1 and word.isupper()


def _in_style(word: str, like: str) -> str:
    """A word in the capitals of another: "DC" like "SC", "Dc" like "Sc", "FPtr" like "FPdc"."""
    if like.islower() or not like[:1].isalpha():
        return word
    if _all_capitals(like):
        return word.upper()
    if like[0].isupper() and (like[1:].islower() or not like[1:]):
        return word[0].upper() + word[1:]
    return _mixed(word, like)


def _mixed(word: str, like: str) -> str:
    """Letters that both words begin and end with keep their capitals; the rest take theirs."""
    low = like.lower()
    begin = next((i for i, (a, b) in enumerate(zip(word, low, strict=False)) if a != b), len(low))
    end = 0
    while end < min(len(word), len(low)) - begin and word[-1 - end] == low[-1 - end]:
        end += 1
    middle, old = word[begin : len(word) - end], like[begin : len(like) - end]
    middle = middle.upper() if old.isupper() else middle
    return like[:begin] + middle + (like[len(like) - end :] if end else "")
