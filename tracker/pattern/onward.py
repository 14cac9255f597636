"""Rows that go on as those before them did: "Continue in the same manner until 18 rows"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from tracker.notation.tokens import Token, Type, tokenize

#: Rows of how many kinds may take turns.
MOST_KINDS = 4


def kinds(rows: Sequence[str], made: Sequence[int | None], *, lenient: bool) -> int:
    """How many of the last ``rows`` take turns; 0 where they show no order to go on in.

    As many as the fewest whose words, but for their figures, stand before them once more.
    Where no row is like one before it, the last alone goes on if the stitches ``made``
    show that each row so far changed the count by the same number.
    ``lenient``: the last alone goes on in any case.
    """
    for count in range(1, MOST_KINDS + 1):
        if len(rows) >= 2 * count and all(_goes_on(rows, -i, count) for i in range(1, count + 1)):
            return count
    return int(bool(rows) and (lenient or _steady(made)))


def _goes_on(rows: Sequence[str], at: int, count: int) -> bool:
    """Whether row ``at`` is like that ``count`` rows before, and goes on from the one before."""
    if following(rows[at - count], rows[at]) is None:
        return False
    if len(rows) < 2 * count - at:
        return True
    before = following(rows[at - 2 * count], rows[at - count])
    return before is None or before == rows[at]


def _steady(made: Sequence[int | None]) -> bool:
    """Whether the last rows, two at least, each changed the count by the same number."""
    known = [n for n in made[-3:] if n is not None]
    steps = {b - a for a, b in pairwise(known)}
    return len(known) > 1 and len(steps) == 1 and len(known) == len(made[-3:])


def following(one: str, other: str) -> str | None:
    """The row that comes after two: each figure goes on as far as it went from one to other.

    None where they differ in more than their figures, or a figure would become less than 0.
    """
    if one == other:
        return other
    before, after = tokenize(one), tokenize(other)
    if len(before) != len(after) or not all(map(_alike, before, after)):
        return None
    found, end = [], 0
    for old, new in zip(before, after, strict=True):
        if new.type is Type.NUMBER:
            value = 2 * new.value - old.value
            if value < 0:
                return None
            found += [other[end : new.start], str(value)]
            end = new.end
    return "".join(found) + other[end:]


def _alike(one: Token, other: Token) -> bool:
    """Whether two tokens are the same but for a figure."""
    return one.type is other.type and (one.type is Type.NUMBER or one.text == other.text)
