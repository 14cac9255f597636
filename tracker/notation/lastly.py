"""Reading what only the last of several rounds does: "Rnds 6-9: 20 sc. In the last dec twice"."""

from __future__ import annotations

import re

from tracker.lean import NamedTuple
from tracker.notation.kit import NUMBER_WORDS, TIMES_WORDS
from tracker.notation.round_text import Stated
from tracker.notation.tokens import plain
from tracker.notation.tree import Evenly

_NUMBER = rf"(?:\d{{1,3}}|an?|{'|'.join(NUMBER_WORDS)})"
_SENTENCE = r"[^.;()\[\]{}<>]*?"
_CLAUSE = r"[^,.;()\[\]{}<>]*?"
_COUNT = (
    r"\s*(?:[.,]\s*)?(?:[(\[{<]\s*=?\s*(?P<count>\d+)\s*(?:sts?|stitches|sc|dc|hdc|tr)?\s*[)\]}>]"
    r"|(?:=|-)\s*(?P<bare>\d+)\s*(?:sts?|stitches|sc|dc|hdc|tr)?(?=\s*(?:[.;]|$)))"
)
#: The shaping, before or behind the words for the round: "make 2 dec in the last round".
_SHAPE = (
    rf"(?:(?P<n>{_NUMBER})\s+)?(?P<way>inc|dec)(?:r|s|rease[sd]?|reasing|rs)?\b\.?"
    rf"(?:\s+(?P<more>\d{{1,3}})(?:\s+(?:sts?|stitches|sc|dc))?\b(?!\s*times)"
    rf"|\s*(?:x\s*(?P<cross>\d{{1,3}})|(?P<often>once|twice|(?:{_NUMBER})\s+times)))?"
)
_ROUND = r"(?:one|rounds?|rnds?|rows?|rds?)"
_LAST = re.compile(
    rf"(?<=[.;,)\]}}>])\s*(?:(?:and|but|then)\s+)*"
    rf"(?:{_CLAUSE}\b(?:last|final)\s+{_ROUND}\b{_SENTENCE}(?P<front>\b(?:inc|dec){_SENTENCE})"
    rf"|{_CLAUSE}\b(?P<back>(?:inc|dec)[a-z]*\b{_SENTENCE})\b(?:last|final)\s+{_ROUND}\b)"
    rf"(?P<end>{_COUNT}|\s*(?=[.;]|$))"
)
_AGAIN = re.compile(r"\b(?:rep|repeat|repeating|until|till|each|every)\b")


class InLast(NamedTuple):
    """What the last round does: the shaping, its printed count, and the words for it."""

    shape: Evenly
    stated: Stated | None
    start: int
    end: int


def in_last(text: str) -> InLast | None:
    """The sentence on the last round, if ``text`` has one that only shapes it."""
    low = plain(text)
    found = _LAST.search(low)
    if found is None or _AGAIN.search(found.group()):
        return None
    start, end = found.span()
    shape = re.search(_SHAPE, low[start:end])
    if shape is None:
        return None
    change = 1 if shape["way"] == "inc" else -1
    count = found["count"] or found["bare"]
    stated = None
    if count is not None:
        stated = Stated((int(count),), (("", (int(count),)),), start, end)
    return InLast(Evenly((_times(shape),), change, start, end), stated, start, end)


def _times(shape: re.Match[str]) -> int:
    """How many increases or decreases the words ask for; one if they do not say."""
    word = shape["cross"] or shape["often"] or shape["more"] or shape["n"] or "1"
    word = word.split()[0]
    if word in ("a", "an"):
        return 1
    return int(word) if word.isdigit() else TIMES_WORDS.get(word) or NUMBER_WORDS[word]
