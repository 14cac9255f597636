"""Written instructions -> tokens that know their columns."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

#: The largest figure that is taken for a count; longer numbers are not stitches.
MOST = 1_000_000

#: One character for another, so that columns keep: quotes, dashes, signs that writers
#: and page layout programs use for the plain ones.
_PLAIN = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u02bc": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u201e": '"',
        "\u00ab": '"',
        "\u00bb": '"',
        "\uff08": "(",
        "\uff09": ")",
        "\uff3b": "[",
        "\uff3d": "]",
        "\u3010": "[",
        "\u3011": "]",
        "\uff0c": ",",
        "\uff1a": ":",
        "\uff1b": ";",
        "\uff0a": "*",
        "\u2731": "*",
        "\u2033": '"',
        "\u2010": "-",
        "\u2011": "-",
        "\u2012": "-",
        "\u2013": "-",
        "\u2014": "-",
        "\u2212": "-",
        "\u00d7": "x",
        "\u2217": "*",
        "\u00a0": " ",
        "\u202f": " ",
        "\u0130": "I",
        "\u0131": "i",
        "!": ".",
        "\n": " ",
        "\t": " ",
        "|": ";",
    }
)


class Type(StrEnum):
    """What a token is. Brackets and stars are their own characters' kinds."""

    NUMBER = "number"
    ORDINAL = "ordinal"
    WORD = "word"
    STAR = "star"
    OPEN = "open"
    CLOSE = "close"
    SIGN = "sign"
    END = "end"


@dataclass(frozen=True, slots=True)
class Token:
    """One token: lower-case ``text``, and the offsets ``start`` and ``end`` it came from.

    ``value`` is the number for `Type.NUMBER` and `Type.ORDINAL`, else 0.
    """

    type: Type
    text: str
    start: int
    end: int
    value: int = 0


_PATTERN = re.compile(
    r"""
    (?P<word>   [a-z]+\d+(?:tog|inc|v-?st)\b | [^\W\d_]+(?:'(?!s\b)[^\W\d_]+)*)
  | (?P<ordinal>\d*(?:11|12|13)th\b | (?:\d*[^1\D])?(?:1st|2nd|3rd)\b | \d*[04-9]th\b)
  | (?P<number> \d+)
  | (?P<star>   \*+ | [\u2020\u2021\u2022]+)
  | (?P<open>   [(\[{<])
  | (?P<close>  [)\]}>])
  | (?P<space>  [\s_^]+ | (?<=[a-z])'s?\b)
  | (?P<sign>   .)
    """,
    re.VERBOSE,
)


@lru_cache(256)
def plain(text: str) -> str:
    """Text in lower case with typographic signs made plain; offsets stay the same."""
    text = text.translate(_PLAIN)
    low = text.lower()
    return (
        low
        if len(low) == len(text)
        else "".join(c.lower() if len(c.lower()) == 1 else c for c in text)
    )


#: As long as the word it is taken for, so that offsets stay the same.
_APART = re.compile(r"\b(?:apart from|aside from|other than)\b")


def tokenize(text: str) -> list[Token]:
    """All tokens of ``text``, closed by one of `Type.END`."""
    found: list[Token] = []
    low = _APART.sub("except    ", plain(text))
    for match in _PATTERN.finditer(low):
        group = match.lastgroup
        if group == "space" or group is None:
            continue
        found.append(_token(Type(group), match.group(), match.start(), match.end()))
    found.append(Token(Type.END, "", len(text), len(text)))
    return found


def _token(type_: Type, text: str, start: int, end: int) -> Token:
    if type_ is Type.NUMBER:
        return Token(type_, text, start, end, _bounded(text))
    if type_ is Type.ORDINAL:
        return Token(type_, text, start, end, _bounded(text[:-2]))
    return Token(type_, text, start, end)


def _bounded(digits: str) -> int:
    """The number, cut at one past `MOST`: longer ones cost nothing to read."""
    return min(int(digits[-8:]) if len(digits.lstrip("0")) <= 8 else MOST + 1, MOST + 1)
