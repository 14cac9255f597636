"""Where a bracket may have been left out, or one of another kind written."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tracker.notation.edits import Edit
from tracker.notation.tokens import Token, Type, plain

_CLOSERS = {"(": ")", "[": "]", "{": "}", "<": ">"}
_OPENERS = {closer: opener for opener, closer in _CLOSERS.items()}
#: Before these a bracket closes: how often it is worked, or the printed count.
_BEHIND = re.compile(
    r"[ ,;]*(?:x ?\d|\* ?\d|\d+ ?(?:x\b|times)|\b(?:twice|around|rep(?:eat)?)\b|[(\[{]\s*=?\s*\d)"
)
#: So many places are tried for a bracket.
_MOST = 6


def bracketings(text: str, tokens: list[Token]) -> Iterator[Edit]:
    """Ways to give the one bracket that stands alone its other half, the likeliest first."""
    open_: list[Token] = []
    alone: list[Token] = []
    for token in tokens:
        if token.type is Type.OPEN:
            open_.append(token)
        elif token.type is Type.CLOSE:
            closes = bool(open_) and _CLOSERS[open_.pop().text] == token.text
            alone += [] if closes else [token]
    alone += open_
    if len(alone) == 2:
        yield from _turned(alone)
    if len(alone) != 1:
        return
    one = alone[0]
    if one.type is Type.OPEN:
        yield from _closings(text, one)
    elif crossed := _crossed(tokens, one):
        yield Edit(one.start, one.end, _CLOSERS[crossed])
    else:
        yield from _openings(text, one)
    yield Edit(one.start, one.end, "")


def _turned(alone: list[Token]) -> Iterator[Edit]:
    """The second of two opening brackets, or the first of two closing ones, the other way."""
    one, two = alone
    if one.type is Type.OPEN and two.text == one.text:
        yield Edit(two.start, two.end, _CLOSERS[two.text])
    elif one.type is Type.CLOSE and two.text == one.text:
        yield Edit(one.start, one.end, _OPENERS[one.text])


def _crossed(tokens: list[Token], closing: Token) -> str:
    """The bracket of another kind that ``closing`` closes; "" where none is open."""
    open_: list[str] = []
    for token in tokens:
        if token is closing:
            return open_[-1] if open_ else ""
        if token.type is Type.OPEN:
            open_.append(token.text)
        elif token.type is Type.CLOSE and open_:
            open_.pop()
    return ""


def _closings(text: str, opening: Token) -> Iterator[Edit]:
    """Where an open bracket may close: before how often, before the count, at the end."""
    closer = _CLOSERS[opening.text]
    places = [m.start() for m in _BEHIND.finditer(plain(text), opening.end)][: _MOST - 1]
    end = len(text.rstrip(" .;,"))
    for place in (*places, end):
        yield Edit(place, place, closer)


def _openings(text: str, closing: Token) -> Iterator[Edit]:
    """Where a bracket that is only closed may open: at the start, or behind a sign."""
    opener = _OPENERS[closing.text]
    before = [m.end() for m in re.finditer(r"[,;:.)\]}]\s*", text[: closing.start])]
    for place in (0, *before[-_MOST + 1 :]):
        yield Edit(place, place, opener)
