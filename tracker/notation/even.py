"""Rounds that only go on as they are: "Work 5 rounds even", "4 rounds in sc"."""

from __future__ import annotations

import re

from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import plain
from tracker.notation.tree import Figure

_EVEN = re.compile(
    r"^\W*(?:work|knit|crochet|do)?\s*(?:in (?:a|the) (?:circle|round),?\s*)?"
    r"(?:(?P<number>\d+|one|two|three|four|five|six|seven|eight|nine|ten)\s+)?"
    r"(?:more\s+)?(?:rounds?|rnds?|rows?)?\W*(?:of\s+)?(?:[a-z]{2,5}\s+)?"
    r"(?:even(?!ly)|straight|unchanged|without\s+(?:any\s+)?"
    r"(?:shaping|increas(?:ing|es?)|changes?)(?:\s+or\s+decreas(?:ing|es?))?)\b"
)
#: "single crochet 4 rounds", "4 rounds in sc"
_PLAIN_ROUNDS = re.compile(
    r"^\W*(?:work |crochet |make |do )?(?:(?:sc|single crochets?|hdc|dc|tr)(?: around)?,? "
    r"(?P<number>\d+|one|two|three|four|five|six|seven|eight|nine|ten) (?:more )?"
    r"(?:rounds?|rnds?|rows?)\b"
    r"|(?P<count>\d+|one|two|three|four|five|six|seven|eight|nine|ten) (?:more )?"
    r"(?:rounds?|rnds?|rows?) (?:of |in |with )?(?:sc|single crochets?|hdc|dc|tr)(?: only)?"
    r"(?=\s*(?:[.,;(\[{=]|$)))"
)
_SHAPED = r"(?:inc|dec|increases?|decreases?|shaping|changes?)s?\.?"
#: All that is said of a round: "plain", "around", "no inc"
_BARELY = re.compile(
    r"^\W*(?:all (?:plain|around)|plain(?: rounds?| rnds?| rows?| sc)?|around|normal(?:ly)?"
    rf"|(?:all|only|just) sc|(?:(?:with )?no|without|w/o) {_SHAPED}"
    rf"(?:(?: or | and |/|, ){_SHAPED})?)\W*(?:\d+ ?(?:sts?|sc|stitches)?\W*)?$"
)
#: Words behind that which ask for more than a plain round.
_NOT_EVEN = re.compile(
    r"\b(?:but|except|inc|dec|tog|together|first|last|next|then|fewer|less\b|omit|skip|miss|leav"
    r"|extra|twice|apart from)"
)
_COUNT_ALONE = re.compile(
    r"^[\s=(\[-]*\d{1,4}(?:[\s,/:;()\[\]]+\d{1,4}){0,12}[)\]]?\s*"
    r"(?:sts?|stitches)?(?: each)?[)\]]?\W*$"
)
_GOES_ON_IN = re.compile(
    r"^\W*(?:work|working|continue|cont|carry on|proceed)(?: working| to work)?(?: even)?"
    r" in (?:rows of |rounds of )?(?P<stitch>[a-z ]+?)(?: st| stitch| stitches)?"
    r"(?: rows?| rnds?| rounds?)?\W*$"
)


def goes_on_in(text: str, lexicon: Lexicon) -> bool:
    """Whether the words only ask to go on in one stitch: "Continue in sc for 10 more rows"."""
    match = _GOES_ON_IN.match(plain(text))
    key = "" if match is None else lexicon.phrases.get(tuple(match["stitch"].split()), "")
    return bool(key) and bool(lexicon.stitch(key).height)


def count_alone(text: str) -> Figure:
    """The figures, if the words are a count and nothing else: "24", "24 (30, 36) sts"; or ()."""
    found = _COUNT_ALONE.match(plain(text))
    return tuple(map(int, re.findall(r"\d+", text))) if found else ()


def even_rounds(text: str) -> int:
    """How many rounds the words ask to work even; 0 where they ask for something else."""
    if _BARELY.match(plain(text)):
        return 1
    match = _EVEN.match(plain(text)) or _PLAIN_ROUNDS.match(plain(text))
    if match is None or _NOT_EVEN.search(plain(text), match.end()):
        return 0
    words = match.groupdict()
    word = words["number"] or words.get("count")
    if word is None:
        return 1
    return int(word) if word.isdigit() else NUMBER_WORDS[word]
