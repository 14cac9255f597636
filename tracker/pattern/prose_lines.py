"""A text as people lay it out -> its lines as they were meant, one round a line.

Undoes what layout does to words: Markdown marks, bullets, ligatures, lines broken at the
edge of a page. Nothing here knows what the words mean beyond a round's label.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from tracker.notation.lines import NAMED_PIECE, Line, split_lines
from tracker.notation.problems import visible
from tracker.notation.rising import rising
from tracker.notation.tokens import plain
from tracker.pattern.prose_grids import without_grids

#: From this length on, a line that stops in the middle of a sentence was broken by layout.
_WRAPPED = 45
LONGEST = 5_000
"""Characters of one round."""

_WHOLE = 2  #: a line that is not cut has these two ends
_LABEL = 100  #: more characters than a label has

_TYPOGRAPHY = str.maketrans(
    {
        **dict.fromkeys("\ufeff\u200b\u200c\u200d\u2060\u00ad"),
        **dict.fromkeys("\t\x0b\x0c\u00a0\u202f\u205f\u3000", " "),
        **dict.fromkeys(map(chr, range(0x2000, 0x200B)), " "),
        **dict.fromkeys("\x85\u2028\u2029", "\n"),
        **dict(
            zip("\ufb00\ufb01\ufb02\ufb03\ufb04", ("ff", "fi", "fl", "ffi", "ffl"), strict=True)
        ),
    }
)
_HEADING = re.compile(r"^ {0,3}(#{1,6}) +(?=[^ #])")
_UNDERLINE = re.compile(r"^ {0,3}(=|-){3,} *$")
_LONGEST_UNDERLINED = 60
_RULE = re.compile(r"^ *(?:[-=_~]{3,}|`{3,}\w*|\*(?: *\*){2,}) *$")
_BULLET = re.compile(r"^ *(?:[-•▪◦·] +|> ?)(?=\S)")
_STAR_BULLET = re.compile(r"^ *\* +(?=\S)")
_EMPHASIS = re.compile(r"^ *(\*{1,3}|_{1,3})(?=\S)(.+?)(?<=\S)\1(?!\*)")
#: The number of a page, on a line of its own or at the end of one, far from its words.
_PAGE = re.compile(
    r"(?:^|\s{3,})\s*(?:page \d+(?: of \d+)?|\d+ of \d+|- ?\d+ ?-)\s*$"
    # what browsers print on each page: the address and number, the date and time
    r"|^\s*(?:https?|file)://\S+\s+\d+/\d+\s*$"
    r"|^\s*\d{1,2}[/.]\d{1,2}[/.]\d{2,4}, \d{1,2}:\d{2}(?:\s?[AP]M)?\b.*$",
    re.IGNORECASE,
)
#: A line that stops before what it leads to: "Sew the ears between" / "Rnds 5 and 6."
_HANGING = re.compile(r"\b(?:to|at|of|on|in|from|between|before|after|under|over|behind|around)$")
_LABELLED = re.compile(r"[a-z]+ ?\d+(?: ?(?:-|to|and|&) ?\d+)? ?:")
_ENTRY = re.compile(r" *[:=]| +[–—-] ")  #: behind a word that is explained
_BOLD_COUNT = re.compile(r"\*\*([(\[][^*()\[\]]*[)\]])\*\*")
#: A word set in bold or italics inside a sentence: "does **not** count".
_STRESSED = re.compile(
    r"(\*{1,2}|_{1,2})(not|never|always|only|all|each|both|once|twice|loosely|tightly"
    r"|do not|does not|don't|doesn't)\1",
    re.IGNORECASE,
)
_ESCAPED = re.compile(r"\\([\\`*_{}\[\]()#+.!<>|~-])")


@dataclass(frozen=True, slots=True)
class Said:
    """One line as it was meant.

    Attributes:
        text: its words, on one line.
        line: the line of the text it begins on, from 1.
        rank: level of a Markdown heading; 0 for a line that is none.
        apart: whether a blank line stands before it.
        bullet: whether it is an item of a list.
    """

    text: str
    line: int
    rank: int = 0
    apart: bool = False
    bullet: bool = False


def plain_lines(text: str) -> list[str]:
    """The lines of a text without typography, numbers of pages and control characters."""
    text = text.replace("\r\n", "\n").replace("\r", "\n").translate(_TYPOGRAPHY)
    return [_PAGE.sub("", visible(line)).rstrip() for line in text.split("\n")]


def said_lines(text: str) -> list[Said]:
    """The lines of a text as they were meant: no blank ones, broken ones made whole."""
    found: list[Said] = []
    apart = True
    for number, line in enumerate(without_grids(plain_lines(text)), start=1):
        if not line.strip() or _RULE.match(line):
            if found and not apart:
                found[-1] = _underlined(found[-1], line)
            apart = True
            continue
        said = replace(_unmarked(line), line=number, apart=apart)
        if found and _goes_on(found[-1], said):
            found[-1] = replace(found[-1], text=f"{found[-1].text} {said.text}")
        else:
            found.append(said)
        apart = False
    return [one for said in found for one in _one_by_one(said)]


def _one_by_one(said: Said) -> Iterator[Said]:
    """The rounds of a line into which several are run on, and what stands before them."""
    cuts = [0, *rising(plain(said.text)), len(said.text)]
    if len(cuts) == _WHOLE:
        yield said
        return
    for begin, end in pairwise(cuts):
        words = said.text[begin:end].strip(" ,;")
        if words:
            yield replace(said, text=words, apart=said.apart and not begin)


def _underlined(said: Said, line: str) -> Said:
    """A short line with a line of "=" or "-" right under it is a heading of Markdown."""
    rule = _UNDERLINE.match(line)
    short = len(said.text) <= _LONGEST_UNDERLINED and said.text[-1] not in ".,;"
    if rule is None or not short or said.rank or said.bullet or label_of(said.text) is not None:
        return said
    return replace(said, rank=1 if rule[1] == "=" else 2)


def label_of(text: str) -> Line | None:
    """The first round of a line, if it has a label of its own."""
    first = next(split_lines(text[:_LABEL]), None)
    return first if first is not None and first.label else None


def _unmarked(line: str) -> Said:
    """A line without its Markdown marks."""
    heading = _HEADING.match(line)
    if heading is not None:
        inner = _EMPHASIS.sub(r"\2", line[heading.end() :].rstrip(" #"))
        return Said(_ESCAPED.sub(r"\1", inner), 0, len(heading[1]))
    bullet = _BULLET.match(line)
    body = line[bullet.end() :] if bullet else line.strip()
    star = _STAR_BULLET.match(body)
    if star is not None and label_of(body[star.end() :]) is not None:
        bullet, body = star, body[star.end() :]
    body, rank = _without_emphasis(body)
    body = _STRESSED.sub(r"\2", _BOLD_COUNT.sub(r"\1", body))
    return Said(_ESCAPED.sub(r"\1", body), 0, rank, bullet=bullet is not None)


def _without_emphasis(body: str) -> tuple[str, int]:
    """Words without the stars that set them in bold: a label, or a line like a heading.

    Stars round instructions are a repeat, and stay.
    """
    match = _EMPHASIS.match(body)
    if match is None:
        return body, 0
    inner, rest = match[2], body[match.end() :]
    label = label_of(inner)
    if label is not None or inner.endswith(":") or _ENTRY.match(rest):
        return inner + rest, 0
    if not rest.strip(" :") and not re.search(r"[,;]", inner) and len(match[1]) > 1:
        return inner + rest, 7
    return body, 0


def _goes_on(before: Said, said: Said) -> bool:
    """Whether a line goes on with the sentence of the line before it."""
    if said.apart or said.rank or said.bullet or before.rank:
        return False
    if len(before.text) + len(said.text) >= LONGEST:
        return False
    if _HANGING.search(plain(before.text)) and not _LABELLED.match(plain(said.text)):
        return True
    if label_of(said.text) is not None:
        return False
    if NAMED_PIECE.match(plain(said.text)):
        return False
    if label_of(before.text) is None:
        return before.text[-1] in ",;&" or (
            len(before.text) >= _WRAPPED
            and before.text[-1] not in ".!?:)]}"
            and said.text[0].islower()
        )
    return _read_on(before.text, said.text) or _broken(before.text, said.text)


def _read_on(before: str, text: str) -> bool:
    """Whether the reader itself takes ``text`` as more of the round ``before``."""
    open_ = sum(map(before.count, "([{")) > sum(map(before.count, ")]}"))
    shortened = f"Rnd 1: {'((' if open_ else 'x'} {before[-1]}"
    return len(list(split_lines(f"{shortened}\n{text}"))) == 1


def _broken(before: str, text: str) -> bool:
    """Whether a page was too narrow for the round ``before``, and ``text`` is the rest."""
    if len(before) < _WRAPPED or before[-1] in ".!?:)]}":
        return False
    return not text[0].isupper() or len(text.split()) > 4 or text[-1] in ".)]}"
