"""Stitches that a text defines as several part-made ones closed together, or loop by loop."""

from __future__ import annotations

import re

from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.stitches import Stitch

_LOOPS = r"(?:loops|lps|loop|lp)"
_N = r"(?P<n>\d+|two|three|four|five|six|seven)"
#: Words that close all that was made as one stitch (common practice, no source).
_CLOSED = re.compile(
    rf"through (?:all|both|the|rem\w*) [\w ()]*{_LOOPS}"
    rf"|through (?:\d+|three|four|five|six) {_LOOPS}"
    rf"|through all\b|drop\w* (?:the )?(?:last |working )?{_LOOPS}|dropped {_LOOPS}"
    rf"|(?:leav|hold|keep)\w* (?:back )?(?:the )?last {_LOOPS}|closed? (?:them )?(?:all )?together"
    r"|(?:remove|take) (?:the )?hook from"
)
#: Places one after another: "in each of next 3 sts", "over the next 2 sts".
_OVER = re.compile(
    rf"\b(?:in|over|of|across|into) (?:each )?(?:of )?(?:the )?(?:next|following|first) {_N}\b"
)
_ONE = re.compile(
    r"\b(?:same|indicated|specified|designated|one|that) (?:\w+ )?"
    r"(?:st|stitch|sp|space|place|ch|dc|sc)\b"
    r"|\b(?:st|stitch|sp|space|place)(?: or (?:st|sp|space))? (?:indicated|specified|designated)"
)
#: "(yo, insert hook in next st, draw up a loop) twice": one place each time, if it is no puff.
_EACH_TIME = re.compile(
    r"[(\[*][^()\[\]*]*\bnext (?:st|stitch|sp|ch|sc|dc|hdc|tr)\b[^()\[\]*]*[)\]*] *"
    rf"(?:{_N} times|twice)"
)
_AGAIN = re.compile(r"\b(?:times|twice|repeat|rep|once more|thrice)\b")
_COUNTS = re.compile(
    rf"\bcount(?:s|ed|ing)? as (?:an? |the )?(?:{_N} )?(?:st|sts|stitch|stitches|dc|sc|hdc|tr)\b"
)
#: Stars are told in ways that take one place more or less at the start of a row.
_UNSURE = re.compile(r"\bstars?\b|\beye\b")


def closed(name: str, low: str) -> Stitch | None:
    """The one stitch that several become; None where nothing says so, or not over how many."""
    if not _CLOSED.search(low) or _UNSURE.search(low) or _UNSURE.search(name.lower()):
        return None
    over = _OVER.search(low)
    if over is not None:
        return Stitch(name, name, number(over["n"]), 1)
    several = _EACH_TIME.search(low)
    if several is not None and not _ONE.search(low):
        shaped = re.search(r"dec|tog", name.lower())
        return Stitch(name, name, number(several["n"] or "2"), 1) if shaped else None
    into = len(re.findall(r"\bnext (?:st|stitch|sp|ch|sc|dc|hdc|tr)\b", low))
    if into > 1 and not _ONE.search(low):
        return None if _AGAIN.search(low) else Stitch(name, name, into, 1)
    return Stitch(name, name, 1, 1)


def counts_as(low: str) -> int:
    """How many stitches the words say it counts as; 0 where they do not say."""
    found = _COUNTS.search(low)
    return 0 if found is None else number(found["n"] or "1")


def number(word: str) -> int:
    """A number in digits or in words."""
    return int(word) if word.isdigit() else NUMBER_WORDS.get(word, 1)
