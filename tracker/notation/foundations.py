"""Reading the sentences that only tell how long a foundation chain is."""

from __future__ import annotations

import re

from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.tokens import plain
from tracker.notation.tree import Chain

_CHAINS = r"(?:ch|chs|chain|chains)\b(?: (?:sts?|stitches))?"
_FIGURE = r"(?P<{0}>\d{{1,4}})"
#: "ch 45", "chain of 45", "foundation chain: 45"
_BEHIND = rf"\b(?:ch|chain) ?(?:of |: ?|- ?)?{_FIGURE.format('behind')}\b(?: {_CHAINS})?"
#: "45 ch", "45 foundation chains"
_BEFORE = rf"\b{_FIGURE.format('before')} ?(?:foundation |starting )?{_CHAINS}"
#: "+ 3 for turning", "plus 1 turning chain", "and 1 more to turn": chains on top
_EXTRA = (
    rf"[ ,(]*(?:\+|plus|and) {_FIGURE.format('extra')} ?(?:more |extra |{_CHAINS} )*"
    rf"(?:for |to |as (?:a |the )?)?(?:the )?(?:turn\w*|t-?ch|beginning)(?: {_CHAINS})?\)?"
)
_LENGTH = re.compile(rf"(?:{_BEHIND}|{_BEFORE})(?:{_EXTRA})?")
#: "I used 45", "(ours is 45)": behind a multiple that names no length
_USED = re.compile(r"\b(?:used|did|made|worked|had|mine|ours|is|was|with) (?P<n>\d{2,4})\b")
#: "a multiple of 6 + 3", "multiples of 8 sts plus 4", "an odd number of sts"
_MULTIPLE = re.compile(
    r"\b(?:any |an? )?(?:multiples?|number divisible|(?:odd|even) number)"
    r"(?: (?:of|by))?(?: \d+)?(?: (?:sts?|stitches|ch|chs|chains))?"
    r"(?:[ ,]*(?:\+|plus|and|add) ?\d+(?: (?:for|to) \w+(?: \w+)?)?)?"
)
#: Lengths and hooks: "5 mm", '9"', "30 inches", "size 7"
_MEASURE = re.compile(
    r"(?:size|hook|us|uk) \d+(?:\.\d+)?|\b\d+(?:\.\d+)?[ -]?(?:mm|cm|in|inch(?:es)?|ft|feet|yds?)\b"
    r"|\d+(?:\.\d+)? ?\""
)
#: Words that show a line to ask for more than a chain.
_MORE = re.compile(
    r"\b(?:sc|dc|hdc|htr|tr|dtr|sl st|ss|slip st\w*|join\w*|ring|from|next|first|into"
    r"|each|skip\w*|sk|miss|repeat|rep|row|rows|rnd|round|rounds|cluster|shell|size [sml])\b|\*"
    r"|\b(?:around|across)[ .;]*$"
)

#: Fewer chains may begin a round whose other words are not known: "ch 3, moss st around".
_LEAST = 10


def foundation(text: str) -> Chain | None:
    """The chain that a whole line of prose asks for; None where it asks for anything else.

    "Ch 87 for the size shown, or any multiple of 14 plus 3." is a chain of 87. A line with
    two lengths ("45 for the scarf, 99 for the wrap") says not which one is worked.
    """
    low = plain(text)
    found = [_length(match) for match in _LENGTH.finditer(low)]
    rest = _MULTIPLE.sub(" ", _LENGTH.sub(" ", low))
    if not found and _MULTIPLE.search(low):
        found = [int(match["n"]) for match in _USED.finditer(rest)]
        rest = _USED.sub(" ", rest)
    rest = _MEASURE.sub(" ", rest)
    numbers = re.search(r"\d", rest) or any(w in NUMBER_WORDS for w in rest.split())
    if len(found) != 1 or found[0] < _LEAST or numbers or _MORE.search(rest):
        return None
    return Chain((found[0],), 0, len(text))


def _length(match: re.Match[str]) -> int:
    """The chains that are asked for, with those added for turning."""
    return int(match["behind"] or match["before"]) + int(match["extra"] or 0)
