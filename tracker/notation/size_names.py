"""Names of sizes, and the words that tell for which of them something is worked."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tracker.notation.kit import NUMBER_WORDS, ORDINAL_WORDS
from tracker.notation.tokens import plain

#: Names that come in an order of their own, the smallest first.
_LETTERS = ["xxs", "xs", "s", "m", "l", "xl", "2xl", "3xl", "4xl", "5xl", "6xl"]
_AGES = ["preemie", "newborn", "baby", "toddler", "child", "tween", "teen", "adult"]
_SAME = {
    "small": "s",
    "medium": "m",
    "med": "m",
    "large": "l",
    "xxl": "2xl",
    "xxxl": "3xl",
    "nb": "newborn",
    "infant": "baby",
    "kid": "child",
    "kids": "child",
    "children": "child",
    "youth": "tween",
    "teenager": "teen",
    "adults": "adult",
    "babies": "baby",
}
_WORD = (
    r"(?:(?:extra|x)[- ]?)?(?:small|large)|medium|med|preemie|newborn|nb|infant|baby|toddler"
    r"|child(?:ren)?|kids?|tween|teen(?:ager)?|youth|adults?"
)
_SHORT = r"(?:[2-6]x|x{0,3})[sl]|m"
_MONTHS = r"\d{1,2}\s?-\s?\d{1,2}\s?(?:months?|mos?|m|years?|yrs?)"
NAME = rf"(?:{_WORD}|{_MONTHS}|{_SHORT})\b"
_AND = r"(?:\s*(?:,|/|&|and)\s*(?:(?:and|&)\s*)?)"
_LISTED = re.compile(
    rf"\b(?P<first>{NAME})\s*(?:[(\[]\s*(?P<more>{NAME}(?:\s*[,/;(\[)\]]+\s*{NAME})*)\s*[)\]]"
    rf"|(?P<rest>(?:{_AND}{NAME})+))"
)
_NUMBERS = rf"\d(?:{_AND}\d)*"
_ORDINAL = r"(?:\d(?:st|nd|rd|th)|first|second|third|fourth|fifth|last)"
_WHICH = (
    rf"sizes? (?:{NAME}(?:{_AND}{NAME})*|{_NUMBERS})|{NAME}(?:{_AND}{NAME})*"
    rf"|(?:all )?other sizes|all sizes|(?:the )?{_ORDINAL}(?:{_AND}{_ORDINAL})* sizes?"
    r"|(?:the )?(?:(?:two|three|\d) )?(?:larg(?:er|est)|small(?:er|est)) sizes?"
)
#: "Size L only:", "For sizes M and L:", "small:", "All other sizes -".
_HEAD = re.compile(
    rf"(?:^|(?<=[.;,:)\]])\s*|(?<=\n))\s*[(\[]?(?P<for>for )?(?:the )?(?P<which>{_WHICH})"
    r"(?P<word> sizes?)?(?P<only>,? only)?[)\]]?\s*(?:(?P<sign>[:=]|-(?=\s))|(?P<comma>,)|$)\s*"
)


#: Words that name sizes, wherever they stand.
_NAMED = re.compile(
    rf"\bsizes?:? {NAME}(?:{_AND}{NAME})*(?:,? only)?|\b{NAME}(?:{_AND}{NAME})* (?:sizes? )?only"
    rf"|(?:^|(?<=[.;:)\]] )|(?<=\n)){NAME}(?:{_AND}{NAME})*:"
)


def names_in(text: str, sizes: int, known: Sequence[str] = ()) -> tuple[str, ...]:
    """The names of the sizes of a text in order, the smallest first; () where they are not told.

    ``known``: as a pattern names them. Otherwise the text lists them, "S (M, L)", or names
    each somewhere; three sizes of which only some are named are small, medium and large.
    """
    if known:
        return tuple(_plain_name(name) for name in known)
    low = plain(text)
    for match in _LISTED.finditer(low):
        listed = tuple(_plain_name(n[0]) for n in re.finditer(NAME, match[0]))
        if len(listed) == sizes and len(set(listed)) == sizes:
            return listed
    named = {_plain_name(n[0]) for said in _NAMED.finditer(low) for n in re.finditer(NAME, said[0])}
    usual = _LETTERS[2 : 2 + sizes]
    months = sorted((n for n in named if n[:1].isdigit()), key=lambda n: int(n.split("-")[0]))
    for order in (_LETTERS, _AGES, [*_AGES[:2], *months]):
        found = tuple(name for name in order if name in named)
        if len(found) == sizes and found and len(named) == sizes:
            return found
    return tuple(usual) if named and named <= set(usual) and sizes in (3, 4) else ()


def _plain_name(name: str) -> str:
    """One spelling for each name: "Extra-large" is "xl", "0-3 months" is "0-3"."""
    low = re.sub(r"\s*(?:months?|mos?|years?|yrs?)\s*$", "", plain(name).strip())
    low = re.sub(r"\s", "", re.sub(r"^(?:extra|x)[- ]?(?=small|large)", "x", low))
    return _SAME.get(low) or {"xsmall": "xs", "xlarge": "xl"}.get(low) or low


class Heads:
    """The places in a text where the words turn to some sizes alone.

    Attributes:
        found: (where the head begins, where its words begin, the sizes from 0).
        unknown: whether a head names sizes that are not known here.
    """

    def __init__(self, text: str, names: Sequence[str], sizes: int) -> None:
        self.found: list[tuple[int, int, tuple[int, ...]]] = []
        self.unknown = False
        low, told = plain(text), set[int]()
        for match in _HEAD.finditer(low):
            if not _is_head(match, names):
                continue
            which = _which(match["which"], names, sizes, told)
            if which is None:
                self.unknown = True
                continue
            told.update(which if len(which) < sizes else ())
            self.found.append((match.start(), match.end(), which))
        heads = [match.span() for match in _HEAD.finditer(low)]
        self.unknown |= any(
            "only" in said[0] and not any(begin <= said.start() < end for begin, end in heads)
            for said in _NAMED.finditer(low)
        )


def _is_head(match: re.Match[str], names: Sequence[str]) -> bool:
    """Whether words tell sizes apart, and are no aside: bare names must stand before a colon."""
    which = match["which"]
    worded = "size" in match[0] or bool(match["only"])
    if worded:
        return bool(match["sign"] or match["only"] or (match["for"] and match["comma"]))
    return match["sign"] == ":" and all(
        _plain_name(n[0]) in names for n in re.finditer(NAME, which)
    )


def _which(words: str, names: Sequence[str], sizes: int, told: set[int]) -> tuple[int, ...] | None:
    """The sizes that words name; None where one is not known."""
    if words == "all sizes":
        return tuple(range(sizes))
    if "other sizes" in words:
        return tuple(i for i in range(sizes) if i not in told)
    ends = re.fullmatch(r"(?:the )?(?:(\w+) )?(larg|small)(?:er|est) sizes?", words)
    if ends:
        number = ends[1] or "1"
        count = min(NUMBER_WORDS.get(number) or int(number), sizes)
        return tuple(range(sizes)[-count:] if ends[2] == "larg" else range(count))
    found = set(_indices(words, names, sizes))
    return None if None in found or not found else tuple(sorted(i for i in found if i is not None))


def _indices(words: str, names: Sequence[str], sizes: int) -> Iterator[int | None]:
    numbered = re.fullmatch(rf"sizes? ({_NUMBERS})", words)
    if numbered:
        for digits in re.findall(r"\d", numbered[1]):
            yield int(digits) - 1 if 0 < int(digits) <= sizes else None
        return
    ordinals = re.findall(_ORDINAL, words) if words.endswith(("size", "sizes")) else []
    for word in ordinals:
        nth = sizes if word == "last" else ORDINAL_WORDS.get(word) or int(word[0])
        yield nth - 1 if nth <= sizes else None
    if ordinals:
        return
    for match in re.finditer(NAME, words.removeprefix("sizes ").removeprefix("size ")):
        name = _plain_name(match[0])
        yield names.index(name) if name in names else None
