"""Slips of the keys in the longer words of the trade: "crotchet", "popcron", "accross"."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from functools import cache

from tracker.notation.tokens import Token, Type

#: Words whose slips are read; a slip of a shorter word might be another word.
_TRADE = (
    *("stitch", "stitches", "crochet", "single", "double", "treble", "triple", "popcorn"),
    *("cluster", "clusters", "bobble", "bobbles", "increase", "decrease", "repeat", "around"),
    *("across", "spaces", "corner", "corners", "previous", "remaining", "beginning", "turning"),
    *("foundation", "continue", "working", "picots", "shells", "chains", "chain"),
)
#: Shortenings of words other than stitches.
_SHORT = {
    "hk": "hook",
    "nxt": "next",
    "nx": "next",
    "frm": "from",
    "lst": "last",
    "frst": "first",
    "reapet": "repeat",
    "repaet": "repeat",
    "reapeat": "repeat",
    "rmng": "remaining",
    "you'll": "you",
    "chaining": "chain",
    "you've": "you",
}
#: "double every stitch": an increase, in translations (common practice, no source).
_DOUBLES = ("double", "doubling")
#: Behind "always" at the beginning: what is so in all rounds.
_RULED = ("ch", "chain", "turn", "join", "count", "counts", "start", "begin", "work")
#: Words of at least so many letters are read with a letter more or less; shorter ones only
#: with two letters exchanged.
_LONG = 6


def respelt(tokens: list[Token], known: Collection[tuple[str, ...]]) -> list[Token]:
    """The tokens with slips mended; words in ``known`` are what they are."""
    return _paired(
        [
            replace(token, text=mended)
            if token.type is Type.WORD
            and (token.text,) not in known
            and (mended := _SHORT.get(token.text) or _mended(token.text)) != token.text
            else token
            for token in tokens
        ]
    )


def _paired(tokens: list[Token]) -> list[Token]:
    """The tokens with "double every stitch" as an increase; without "always" in front."""
    found: list[Token] = []
    for i, token in enumerate(tokens):
        if token.text == "." and _shortens(tokens, i):
            continue
        if found and found[-1].text in _DOUBLES and _doubled(tokens[i : i + 2]):
            found[-1] = replace(found[-1], text="inc")
        if found and found[-1].text == "always" and len(found) == 1 and token.text not in _RULED:
            found.pop()  # "always 2 sc, inc": it goes on to the end
        found.append(token)
    return found


def _doubled(words: list[Token]) -> bool:
    """Whether stitches are named that are doubled: "every", "the first"."""
    first, then = words[0].text, words[-1].text
    if first in ("all", "each"):
        return then not in ("crochet", "in", "around", "the")
    return first == "every" or (first == "the" and then in ("first", "last", "next"))


def _shortens(tokens: list[Token], dot: int) -> bool:
    """Whether the full stop there only shortens: "inc. 1 sc"."""
    before, behind = tokens[max(0, dot - 1)], tokens[min(dot + 1, len(tokens) - 1)]
    return before.text in ("inc", "dec") and behind.text in ("1", "one")


@cache
def _mended(word: str) -> str:
    """The one word of the trade that a slip may have made ``word`` of; else itself."""
    if word in _TRADE or not 4 < len(word) < 13:
        return word
    found = [w for w in _TRADE if w[0] == word[0] and _slipped(word, w)]
    return found[0] if len(found) == 1 else word


def _slipped(word: str, meant: str) -> bool:
    """Whether ``word`` is ``meant`` with two letters exchanged, one doubled, added or lost."""
    if len(word) == len(meant):
        at = next(i for i in range(len(word)) if word[i] != meant[i])
        return word[at : at + 2] == meant[at : at + 2][::-1] and word[at + 2 :] == meant[at + 2 :]
    if min(len(word), len(meant)) < _LONG or abs(len(word) - len(meant)) != 1:
        return False
    longer, shorter = sorted((word, meant), key=len, reverse=True)
    if longer in (shorter + "s", shorter + "d"):
        return False  # a plural or a past form
    at = next((i for i in range(len(shorter)) if longer[i] != shorter[i]), len(shorter))
    return longer[at + 1 :] == shorter[at:]
