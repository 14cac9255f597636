"""Abbreviations that keep their dots, as in old booklets: "1 d.c. into next tr., miss 2 sts."."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from tracker.notation.tokens import Token, Type
from tracker.notation.wordlists import AGAIN, SHORTENED

#: The most letters of one abbreviation that are parted by dots: "d.tr.tr.".
_MOST_PARTS = 3


def undotted(text: str, tokens: list[Token], known: Collection[tuple[str, ...]]) -> list[Token]:
    """The tokens with "d.c." as the one word "dc", and without the dots that only shorten.

    A dot before a capital letter, a number or the end of the text may end a sentence; it stays.
    ``known``: the ways in which stitches are written.
    """
    if "." not in text:
        return tokens
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        word, used = _joined(tokens, at, known)
        at += used
        found.append(word)
        shortened = word.text in SHORTENED or (word.text,) in known
        lists = (tokens[min(at + 1, len(tokens) - 1)].text,) in known  # "4 sc. dec. 3 sc."
        if word.type is Type.WORD and shortened and _dot_shortens(text, tokens, at):
            at += not lists
    return found


def _joined(tokens: list[Token], at: int, known: Collection[tuple[str, ...]]) -> tuple[Token, int]:
    """The abbreviation whose letters begin at ``at``, and how many tokens it is written in."""
    first = tokens[at]
    best, used, word = first, 1, first.text
    if first.type is not Type.WORD:
        return best, used
    for part in range(1, _MOST_PARTS):
        dot, letters = (tokens[min(at + 2 * part - i, len(tokens) - 1)] for i in (1, 0))
        before = tokens[min(at + 2 * part - 2, len(tokens) - 1)]
        glued = before.end == dot.start and dot.end == letters.start
        if dot.text != "." or not glued or letters.type is not Type.WORD:
            break
        word += letters.text
        if (word,) in known:
            best = replace(first, text=word, end=letters.end)
            used = 2 * part + 1
    return best, used


def _dot_shortens(text: str, tokens: list[Token], at: int) -> bool:
    """Whether the dot at ``at`` touches its word, and the sentence goes on behind it."""
    dot, after = tokens[at], tokens[min(at + 1, len(tokens) - 1)]
    if dot.text != "." or tokens[at - 1].end != dot.start:
        return False
    if after.type is Type.WORD:
        return text[after.start].islower() and after.text not in AGAIN
    return after.type in (Type.SIGN, Type.CLOSE) or (
        after.type is Type.ORDINAL and dot.end < after.start
    )
