"""Reading lines that ask for the rounds of another part: "Work as for arm up to rnd 6"."""

from __future__ import annotations

import re

from tracker.notation.kit import NUMBER_WORDS, ORDINAL_WORDS
from tracker.notation.round_text import Again
from tracker.notation.tokens import plain
from tracker.notation.wordlists import NO_PARTS

_ROUND = r"(?:rounds?|rnds?|rows?|rds?|r)(?:\b\.?|(?=\d))"
_AS = (
    r"(?:(?:exactly )?(?:the )?same(?: way)?(?: as| like)?|as|like|identical(?:ly)? to"
    r"|(?:the )?(?:pattern|instructions|directions|steps) (?:of|for))"
)
_OF = r"(?:of|from|as(?: for| in)?|like)"
_PART = r"(?:for |in |with |on )*(?:the |your |a )?(?P<part>[a-z0-9][a-z0-9' -]{1,30}?)"
_VERB = (
    r"(?:(?:work|make|crochet|do|begin|start|follow|knit|repeat|rep)\w*\.?(?: it| this| them)? )?"
)
_UPTO = (
    rf"(?: ?,? ?(?:but )?(?:only )?(?:up to|until|till|to|through|thru|as far as)"
    rf"(?: and including)?(?: the)?(?: end of)?(?: the)?"
    rf" (?:{_ROUND} ?#?(?P<upto>\d{{1,3}})|(?P<nth>\d{{1,3}})(?:st|nd|rd|th) {_ROUND}"
    r"|(?:there are |you have )?(?P<goal>\d{1,4}) (?:sts?|stitches|sc|dc|hdc|tr)\b"
    rf"(?: on (?:the )?{_ROUND})?(?: remain(?:ing)?)?))?"
)
_COUNT = r" ?(?:[(\[{<]? ?=? ?\d+ ?(?:sts?|stitches|sc|dc|hdc|tr)? ?[)\]}>])?"
#: "With B, ch 2.": the start, which is that of the other part.
_LED = (
    r"(?:(?:with|using|in) (?:colou?r |yarn )?[a-z]+(?: [a-z]+)?[,:.] )?"
    r"(?:(?:ch|chain) ?[2-6][,;.] (?:and |then )?)?"
)
_LINE = re.compile(
    rf"\W*{_LED}(?:then |now |next )?(?:{_VERB}{_AS} {_PART}"
    rf"|{_VERB}{_ROUND} ?(?P<first>\d{{1,3}})(?: ?(?:-|to|through|thru|and|&) ?(?:{_ROUND} ?)?"
    rf"(?P<last>\d{{1,3}}))? {_OF} (?P<bare>(?:the |your )?)(?P<other>[a-z][a-z0-9' -]{{1,30}}?))"
    rf"{_UPTO}{_COUNT}\W*"
)


def likewise(text: str) -> Again | None:
    """The part that a whole line asks to be worked like, and how far; None for other lines."""
    low = " ".join(plain(text).split())
    found = _LINE.fullmatch(low)
    if found is None:
        return None
    words = name_words(found["part"] or found["other"])
    if not words or words <= NO_PARTS or words & {"round", "rnd", "row", "rounds", "rnds", "rows"}:
        return None
    if all(re.fullmatch(r"\d+|r\d+|rnd\d+|row\d+", word) for word in words):
        return None
    first = int(found["first"] or 0)
    last = int(found["last"] or found["first"] or 0)
    upto = int(found["upto"] or found["nth"] or 0)
    goal = int(found["goal"] or 0)
    return Again(first, last, None, 0, len(text), upto=upto, part=tuple(sorted(words)), goal=goal)


def name_words(name: str) -> frozenset[str]:
    """The words of a part's name that tell it from others: "2" and "ball" of "2nd ball (x 2)"."""
    low = re.sub(r"\([^()]*\)|\b(?:make|x) ?\d+\b", " ", plain(name))
    found = set()
    for word in re.findall(r"[a-z0-9]+", low):
        nth = re.fullmatch(r"(\d+)(?:st|nd|rd|th)", word)
        number = ORDINAL_WORDS.get(word) or NUMBER_WORDS.get(word)
        if nth or number:
            found.add(nth[1] if nth else str(number))
        elif word not in ("the", "for", "of", "your", "a", "an", "part", "and", "one"):
            found.add(word.removesuffix("s") if len(word) > 3 else word)
    return frozenset(found)
