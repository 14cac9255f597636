"""Extra stitches that only move the start of the rounds: "3 sc more; the round starts here"."""

from __future__ import annotations

import re

from tracker.lean import NamedTuple
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.tokens import plain

_N = rf"(?:\d{{1,2}}|{'|'.join(NUMBER_WORDS)})"
_STITCH = r"(?:sc|hdc|dc|(?:half )?double crochets?|single crochets?|sts?|stitch(?:es)?)"
_EXTRA = r"(?:extra|more|additional|further|another)"
#: "4 more sc"; "an extra 8 sc"; "sc an additional 3 sts", "sc 5 further"; "3 sc past the marker"
_MORE = rf"(?P<n1>{_N}) (?:{_EXTRA} )(?P<s1>{_STITCH})"
_SOME = rf"(?:an?d? )?{_EXTRA} (?P<n2>{_N}) ?(?P<s2>{_STITCH})"
_AFTER = (
    rf"(?P<s3>{_STITCH}) (?:in )?(?:an? |(?:the |each of (?:the )?)?next )?(?:{_EXTRA} )?"
    rf"(?P<n3>{_N})(?: {_EXTRA})?(?: (?:sts|stitches))?"
)
_BEFORE = rf"(?P<n4>{_N}) ?(?P<s4>{_STITCH})(?: {_EXTRA}| past (?:the|your) (?:stitch )?marker)?"
_AMOUNT = f"(?:{_MORE}|{_SOME}|{_AFTER}|{_BEFORE})"
_VERB = (
    r"(?:(?:now|then|next|and|you|we|will|to|need|please|complete|work|working|make|making|do"
    r"|crochet|crocheting|add|adding) )*"
)

_BEGIN = r"(?:start(?:s|ing)?|begin(?:s|ning)?|first (?:st|stitch))"
_ROUND = r"(?: (?:of|for) (?:the|your|each|every) (?:next )?(?:round|rnd)s?)?"
_ON = r"(?: from (?:now|here) on(?:wards)?| for the (?:rest|remaining)[a-z ]*)?"
_IT_IS = (
    rf"(?:this|it|here|that|which)(?:'s| is| will (?:now )?be| becomes)(?: now)? "
    rf"(?:our|your|the)(?: new)?(?: [a-z]+){{0,2}}(?: and (?:our|your|the)(?: new)?)? {_BEGIN}"
    rf"(?: (?:point|place|stitch|st))?{_ROUND}{_ON}"
)
_BEGINS_HERE = (
    rf"the (?:next |new |following )?(?:round|rnd)s?(?: will)?(?: now)? (?:start|begin)s?"
    rf"(?: from)? (?:here|there|at this point){_ON}"
)
_MARKER = (
    r"(?:and )?(?:move|place|put|shift|reposition)s? (?:your |the |a )?(?:stitch )?marker"
    r"(?: here| there| to (?:here|this (?:st|stitch|point))| in (?:this|the last) (?:st|stitch))?"
)
_WHAT = (
    r"(?:new )?(?:stitch |colou?r |beginning |start )?"
    r"(?:marker|start|beginning|seam|change|changes|join|round)\b[a-z' ]*"
)
_PURPOSE = (
    r"(?:in order )?(?:to|so as to) (?:move|shift|bring|get|take|put|reach|line up|align|ensure"
    rf"|make sure|keep|hide)(?: up)? (?:that )?(?:the |your )?{_WHAT}"
)
_RESULT = (
    rf"so (?:that )?(?:the |your )(?:{_WHAT}"
    r"|(?:legs|arms|ears|eyes|face|increases|decreases|stripes)"
    r" (?:line up|are|is|will|match)[a-z ]*)"
)
_EARLIER = r"before (?:you )?(?:start|begin)(?:ning|ing)?(?: with| on)? the next (?:round|rnd)"
_BY = (
    r"(?:move|shift|bring) (?:the |your )?(?:stitch )?(?:start|beginning|marker)"
    r"(?: of the (?:round|rnd))?(?: (?:over|along|forward|on|further))? by"
)
#: What shows that the stitches move the start of the round.
_SIGN = f"(?:{_IT_IS}|{_BEGINS_HERE}|{_MARKER}|{_PURPOSE}|{_RESULT}|{_EARLIER}|{_BY})"
_JOINT = r"(?:[,;:.\u2013(-]* ?(?:and |then )?)"
_MOVING = re.compile(
    rf"(?:(?<=^)|(?<=[.;!,] )|(?<=then )|(?<=and ))"
    rf"(?:(?P<before>{_SIGN}){_JOINT})?{_VERB}(?P<work>{_AMOUNT})(?P<after>(?:{_JOINT}{_SIGN})*)"
    r"[.)!]*(?=\s*$|\s*[(\[]\s*\d+[^()\[\]]*[)\]]\.?\s*$)"
)
#: Words that ask for more than plain stitches.
_OTHER = re.compile(r"\b(?:inc|dec|skip|miss|repeat|rep|ch|chain|until|each|every|around)\b|\d")
_ON_TOP = re.compile(rf"\b{_EXTRA}\b|\bpast\b")
_STARTS = re.compile(r"\b(?:start|begin|first|move|moves|shift|bring)")


class Moving(NamedTuple):
    """Stitches that move the start.

    Attributes:
        start, end: offsets of the words in the text.
        number: how many stitches.
        stitch: offsets of the word for the stitch.
        extra: whether the words say that they come on top of the round told before them.
    """

    start: int
    end: int
    number: int
    stitch: tuple[int, int]
    extra: bool


def moving(text: str) -> Moving | None:
    """The words at the end of a text that only move the start of the rounds."""
    low = plain(text)
    found = _MOVING.search(low)
    if found is None or not (found["before"] or found["after"]):
        return None
    told = (found["before"] or "") + (found["after"] or "")
    if _OTHER.search(told):
        return None
    which = next(i for i in "1234" if found[f"n{i}"])
    number = found[f"n{which}"]
    many = int(number) if number.isdigit() else NUMBER_WORDS[number]
    extra = bool(_ON_TOP.search(found["work"]) and _STARTS.search(told))
    return Moving(found.start(), found.end(), many, found.span(f"s{which}"), extra)
