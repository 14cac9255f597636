"""How many sizes a text is written for, as far as its figures show."""

from __future__ import annotations

import re

from tracker.notation.tokens import plain

_LIST = re.compile(r"(?<![\w.])\d+\s*[(\[]\s*(\d+(?:\s*[,/;(\[:-]+\s*\d+)+)\s*[)\]]+")
_SLASHES = re.compile(r"(?<![\w./])\d+(?:/\d+){1,11}(?![\w/])")
_PAIR = re.compile(
    r"\([ \t]*\d+[ \t]*\[[ \t]*\d+[ \t]*\][ \t]*[a-z]"
    r"|\b(?<!x )\d+[ \t]*\[[ \t]*\d+[ \t]*\][ \t]*(?:(?:sts?|sc|dc|hdc|tr|ch|rnds?|rows?)\b|,)"
)
#: What stands before the last number of a range of rounds: "Rnds 4-".
_RANGE = re.compile(r"\b(?:rounds?|rnds?|rows?|rds?|r)\.?\s*\d+\s*(?:-|to)\s*\Z")

#: "8 (10) sc" and "(8, 10)": together they show two sizes.
_TWO = re.compile(r"\b\d+ ?\(\d+\) ?(?:sts?|sc|dc|hdc|tr|ch)\b")
_BOTH = re.compile(r"\(\d+, ?\d+\)")


def _rising(match: re.Match[str]) -> bool:
    """Whether each figure of a list is larger than the one before: "Rows 3-60 (64, 68)"."""
    figures = [int(n) for n in re.findall(r"\d+", match[0])]
    return sorted(set(figures)) == figures


def may_be_two(text: str) -> bool:
    """Whether "8 (10) sts" stands in it: two sizes, where the text names two."""
    return _TWO.search(plain(text)) is not None


def sizes_in(text: str) -> int:
    """Number of sizes that figures such as "8 (9, 10)" are written for; 1 if none are."""
    low = "\n".join(map(plain, text.split("\n")))  # "next 8 [10]" above "Rnd 6" is no pair
    found = 1
    for match in _LIST.finditer(low):
        if _RANGE.search(low, 0, match.start()) and not _rising(match):
            continue
        found = max(found, 1 + len(re.findall(r"\d+", match[1])))
    for match in _SLASHES.finditer(low):
        found = max(found, match[0].count("/") + 1) if match[0].count("/") > 1 else found
    if found == 1 and (_PAIR.search(low) or (_TWO.search(low) and _BOTH.search(low))):
        found = 2
    return min(found, 24)
