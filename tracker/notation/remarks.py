"""What a text says once of all the chains that rounds begin with."""

from __future__ import annotations

import re

from tracker.lean import NamedTuple
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.tokens import plain

LONGEST = 6
"""Chains; no stitch that one stands for is higher."""

_AT = r"(?:beg(?:inning)?|start(?:ing)?|turning|first|initial)"
_CHAIN = (
    r"(?:(?:ch(?:ain)?s?[ -]?(?P<length>\d|one|two|three|four|five)?s?"
    r"|(?P<before>\d|one|two|three|four|five)[ -]?ch(?:ain)?s?|t-?ch)\b)"
)
#: "at the beginning of each round", "that starts the row"; what is said of one round is not.
_SCOPE = rf"(?:(?:at|in|of|on|for|that|which|you|made|worked) (?:(?!this\b)[a-z]+ ){{0,4}}?{_AT}?s?"
_SCOPE += (
    r"(?: (?:of|to|in|on|for))?(?: (?:a|the|each|every|all|any))?(?: (?:rounds?|rnds?|rows?))?"
)
_SCOPE += r"|(?:of|in|on) (?:each|every|all|any|a) (?:rounds?|rnds?|rows?))"
_NOT = r"(?:(?:do|does|is|are|will|should|would)(?: ?not|n't| never)|never|not)"
_TAIL = r"(?:[^.;,!()\d]|\b1\b){0,60}"
_COUNTS = rf"(?:(?:(?P<no>{_NOT})|is|are|will|always|should|do|does) )*?count(?:s|ed|ing)?\b{_TAIL}"
_INCLUDED = (
    rf"(?P<out>{_NOT}|is|are)(?: be)? included in (?:the |your |any |all )?[a-z ]*counts?\b{_TAIL}"
)
_LED = r"(?:(?:please )?(?:notes?|nb|n\.b\.|remember|tips?)(?: that)?[:,]? )?"
_DETERMINED = rf"(?P<said>(?:(?:all|the|your|any|each|every) )*(?:{_AT} )*)"
_REMARK = re.compile(
    rf"(?P<lead>^[\W_]*{_LED}|(?<=[.;!,]) |\b(?:and|but) ){_DETERMINED}{_CHAIN}"
    rf"(?P<scope> {_SCOPE})? (?:{_COUNTS}|{_INCLUDED})(?=[.;,!]|$| and | but )"
)
#: "Stitch counts do not include the beginning chain."
_NOT_INCLUDED = re.compile(
    rf"(?:^[\W_]*{_LED}|(?<=[.;!]) )(?:the |all )?(?:st(?:itch)? )?counts? "
    rf"(?P<no>{_NOT} )?includes? {_DETERMINED}{_CHAIN}{_TAIL}(?=[.;,!]|$)"
)
#: "You will ch 3 at the start of each round; this does not count as a stitch."
_EACH_ROUND = re.compile(
    rf"^[\W_]*{_LED}(?=.*\b(?:each|every|all) (?:rounds?|rnds?|rows?)\b)[^.;]{{0,60}}?{_CHAIN}"
    rf"[^.;]{{0,60}}?[.;,]? (?:and )?(?:this|it|which|that) {_COUNTS}(?=[.;,!]|$)"
)
_ONE_ROUND = re.compile(r"\bthis (?:round|rnd|row)\b")


class Remark(NamedTuple):
    """One statement on beginning chains.

    Attributes:
        length: of the chains it is about; 0 for all.
        counts: whether they count as a stitch.
        start, end: offsets of its words in the text.
    """

    length: int
    counts: bool
    start: int
    end: int


def remarks(text: str) -> tuple[Remark, ...]:
    """What a text says of all beginning chains, in the order of its words."""
    low = plain(text)
    if "count" not in low:
        return ()
    found: list[Remark] = []
    for match in _REMARK.finditer(low):
        follows = bool(found) and not low[found[-1].end : match.start()].strip(" ,;")
        general = match["said"] or match["scope"] or follows
        if general and not _ONE_ROUND.search(match[0]):
            counts = match["no"] is None and match["out"] in (None, "is", "are")
            found.append(_remark(match, counts))
    others = [*_NOT_INCLUDED.finditer(low), *([] if found else _EACH_ROUND.finditer(low))]
    found += [_remark(match, match["no"] is None) for match in others]
    return tuple(found)


def _remark(match: re.Match[str], counts: bool) -> Remark:
    word = match["length"] or match["before"] or "0"
    length = int(word) if word.isdigit() else NUMBER_WORDS[word]
    return Remark(length, counts, *match.span())


def by_length(found: tuple[Remark, ...]) -> dict[int, bool]:
    """Whether a chain counts, by its length.

    What is said of all chains holds for a single one only where they do not count:
    common practice, no source.
    """
    said: dict[int, bool] = {}
    for remark in found:
        first = 2 if remark.counts else 1
        lengths = [remark.length] if remark.length else range(first, LONGEST + 1)
        said.update(dict.fromkeys(lengths, remark.counts))
    return said
