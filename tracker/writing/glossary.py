"""The abbreviations that a pattern uses, and no others, with their meanings."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tracker.notation.dictionary import STITCHES, in_terms, name_in
from tracker.notation.howto import how_to
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import plain, tokenize
from tracker.pattern.model import Pattern
from tracker.pattern.translate import translate_text

Entry = tuple[str, str]

#: Short words that are no stitches; meanings as in
#: https://danceswithwools.net/2022/09/16/understanding-crochet-abbreviations/ (rnd, beg,
#: rem, prev, lp, sp, st, tog, rep, sk, yo, RS, WS),
#: https://stitch4ever.com/2012/01/30/abbreviations-in-crochet-patterns/ (BLO, FLO, cont) and
#: https://castlecreekstudio.com/crocheting/ (pm); the others: common practice, no source.
_WORDS = (
    ("st(s)", r"sts?", "stitch(es)"),
    ("ch-sp", r"ch-\d+ sps?", "the space under chains, named by how many they are"),
    ("sp", r"(?<!\d )sps?", "space"),
    ("rnd(s)", r"rnds?", "round(s)"),
    ("sk", r"sk", "skip"),
    ("rep", r"rep", "repeat"),
    ("beg", r"beg", "beginning"),
    ("rem", r"rem", "remaining"),
    ("prev", r"prev", "previous"),
    ("foll", r"foll", "following"),
    ("cont", r"cont", "continue"),
    ("tog", r"tog", "together"),
    ("lp(s)", r"lps?", "loop(s)"),
    ("yo", r"yo", "yarn over"),
    ("pm", r"pm", "place marker"),
    ("RS", r"rs", "right side"),
    ("WS", r"ws", "wrong side"),
    ("BLO", r"blo", "back loop only"),
    ("FLO", r"flo", "front loop only"),
)
#: Stitches whose names explain nothing: they are told with the special stitches.
_TOLD = ("bobble", "puff", "popcorn", "shell", "cl", "v-st", "crossed dc", "picot")


def abbreviations(pattern: Pattern) -> tuple[Entry, ...]:
    """Every abbreviation in the rounds and what is said beside them, in order of names."""
    text = "\n".join(_texts(pattern))
    low = plain(text)
    found = dict(_stitches(pattern, text))
    found |= {
        short: meaning
        for short, spelling, meaning in _WORDS
        if re.search(rf"(?<![\w-]){spelling}(?![\w-])", low)
    }
    if pattern.terms == "UK" and "sk" in found:
        found["sk"] = "miss"
    return tuple(sorted(found.items(), key=lambda entry: entry[0].lower()))


def told_stitches(pattern: Pattern) -> tuple[tuple[str, str, str], ...]:
    """Stitches of the dictionary to be told with the special ones: (short, name, how made).

    Only those that the rounds use and the pattern does not define.
    """
    used = _used(pattern, "\n".join(part.rounds for part in pattern.parts))
    return tuple(
        (short, STITCHES[us].name, translate_text(_counts(us), pattern.terms, ()))
        if pattern.terms == "UK"
        else (short, STITCHES[us].name, _counts(us))
        for us, short in used.items()
        if us in _TOLD and not STITCHES[us].spaces
    )


def _counts(us: str) -> str:
    stitch = STITCHES[us]
    return f"takes {stitch.takes}, makes {stitch.makes}. {how_to(us)}"


def _texts(pattern: Pattern) -> Iterator[str]:
    for part in pattern.parts:
        yield part.rounds
        yield part.note
        yield from part.steps
    for stitch in pattern.stitches:
        yield from (stitch.how, *stitch.loops)
        for variant in filter(None, (stitch.first, stitch.last)):
            yield from (variant.how, *variant.loops)


def _stitches(pattern: Pattern, text: str) -> Iterator[Entry]:
    for us, short in _used(pattern, text).items():
        name = name_in(us, pattern.terms)
        if short != name and us not in _TOLD:
            yield short, name


def _used(pattern: Pattern, text: str) -> dict[str, str]:
    """US names of the dictionary's stitches in a text, each with how it is written there."""
    lexicon = Lexicon(pattern.terms, pattern.stitches)
    own = set(lexicon.special())
    found: dict[str, str] = {}
    for us, written in named_in(text, lexicon):
        if us not in own:
            _note(found, us, written, pattern.terms)
    return found


def named_in(text: str, lexicon: Lexicon) -> Iterator[tuple[str, str]]:
    """Every stitch that a text names: its key in the lexicon, and the words for it."""
    longest = max(map(len, lexicon.phrases))
    tokens = [token.text for token in tokenize(text)]
    at = 0
    while at < len(tokens):
        for size in range(min(longest, len(tokens) - at), 0, -1):
            words = tokens[at : at + size]
            us = lexicon.phrases.get(tuple(words))
            if us is not None:
                yield us, " ".join(words)
                break
        at += size


def _note(found: dict[str, str], us: str, written: str, terms: str) -> None:
    """Keep the first short spelling; a stitch written out needs none."""
    usual = in_terms(us, terms)
    if us == "invdec":
        usual = "inv dec"
    if written.removesuffix("s") == usual.removesuffix("s"):
        found[us] = usual
    elif len(written) <= 8:
        found.setdefault(us, written)
