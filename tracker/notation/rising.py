"""Rounds run on in one line, as in a maker's own notes: "R1 6 sc in MR, R2 inc x6, R3-5 12 sc"."""

from __future__ import annotations

import re
from collections.abc import Iterator

_LABEL = re.compile(
    r"(?<![\w(-])(?:(?:rounds?|rnds?|rows?|rds?|r)\.? ?#?(?P<first>\d{1,4})"
    r"(?: ?- ?r?(?P<last>\d{1,4}))?(?= ?[:.)=-]? )"
    r"|(?P<nth>\d{1,4})(?:st|nd|rd|th) (?:round|rnd|row) ?[:.-])"
)
#: Words before the number of a round that is only spoken of.
_SPOKEN = re.compile(
    r"(?:rep(?:eat(?:ing)?)?|as|of|in|on|at|to|into|from|and|or|until|till|like|work|see|after"
    r"|before|between|behind|through|thru|by|for|with|than|next|last|the|this|rounds|rnds|rows|[&+-])"
    r"[,;.]?$"
)


def rising(low: str) -> Iterator[int]:
    """Where in a line of small letters a round with the next number begins.

    Nothing where the line does not begin with a round, or with the first of a piece.
    """
    last = 0
    for match in _LABEL.finditer(low):
        before = low[: match.start()].split()
        spoken = bool(before) and _SPOKEN.match(before[-1]) is not None
        first = int(match["first"] or match["nth"])
        begins = (
            not last and not spoken and (not before or (first == 1 and before[-1][-1] in ":;."))
        )
        if begins or (last and first == last + 1 and not spoken):
            if before:
                yield match.start()
            last = max(first, int(match["last"] or first))
