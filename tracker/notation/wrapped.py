"""A whole round in one bracket, which says in itself what is repeated."""

from __future__ import annotations

from collections.abc import Mapping

from tracker.notation.tokens import Token, Type
from tracker.notation.wordlists import AGAIN

#: What may stand between brackets of which one holds the round.
_BETWEEN = (".", ";", ",")


def unwrapped(tokens: list[Token], closers: Mapping[int, int]) -> list[Token]:
    """The tokens without a bracket such as "[2 sc in 1st st, sc in 2nd, repeat around]".

    Only where nothing stands beside it but other brackets: words before it, a count behind.
    """
    outer = _outer(closers)
    told = [one for one in outer if _repeats_itself(tokens[one[0] : one[1]])]
    covered = {i for begin, close in outer for i in range(begin, close + 1)}
    beside = [t for i, t in enumerate(tokens[:-1]) if i not in covered]
    if len(told) != 1 or any(t.text not in _BETWEEN for t in beside):
        return tokens
    return [t for i, t in enumerate(tokens) if i not in told[0]]


def _outer(closers: Mapping[int, int]) -> list[tuple[int, int]]:
    """Where the brackets that are in no other open and close, in order."""
    found: list[tuple[int, int]] = []
    for begin, close in sorted(closers.items()):
        if not found or begin > found[-1][1]:
            found.append((begin, close))
    return found


def _repeats_itself(inside: list[Token]) -> bool:
    """Whether a bracket lists what is made, and then says that it is repeated."""
    words = {t.text for t in inside}
    stars = any(t.type is Type.STAR for t in inside)
    return "," in words and not words.isdisjoint(AGAIN) and not stars
