"""A round asked for by its count: "evenly to 60" becomes the line that is worked."""

from __future__ import annotations

import re

from tracker.lean import TYPE_CHECKING
from tracker.measure.spread import even_round, even_words
from tracker.notation.dictionary import in_terms
from tracker.pattern.ruler import main_stitch, tall_as

if TYPE_CHECKING:
    from tracker.pattern.model import Pattern
    from tracker.pattern.plan import PlannedRound

_ASKED = re.compile(r"evenly to (\d{1,5})(?: sts?)?\.?")


def evenly(words: str, pattern: Pattern, like: PlannedRound, below: int | None) -> str:
    """The words of a round that brings ``below`` stitches to the count asked for.

    In the stitch that most of the round ``like`` is. Other words, and a count that cannot be
    reached in one round, are given back as they are.
    """
    found = _ASKED.fullmatch(" ".join(words.lower().split()))
    if found is None or not below:
        return words
    try:
        made = even_round(below, int(found[1]))
    except ValueError:
        return words
    basic = in_terms("sc", pattern.terms)
    us = tall_as(pattern, main_stitch(like.walk))
    return even_words(made, in_terms(us, pattern.terms) if us else basic, basic)
