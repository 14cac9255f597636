"""A text of instructions -> its rounds: label, numbers, words, and where they stand."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

from tracker.notation.kit import NUMBER_WORDS, ORDINAL_WORDS
from tracker.notation.rising import rising
from tracker.notation.tokens import plain
from tracker.notation.wordlists import NAMES

_ROUND = r"(?:rounds?|rnds?|rows?|rds?|r)"
_DASH = r"(?:-|to|through|thru|until|till|and|&|,|\+|~|\.\s*-|\.\.+|\u2026|>)"
#: A range: "4-6", "4 to 6"; with blanks round the dash only where a sign closes the label.
_TO = (
    rf"(?:\s*{_DASH}\s*(?=r?\d+\s*[:.)=\-(])|{_DASH}(?=\S)"
    r"|\s+(?:to|through|thru|until|till|and|&|~)\s+|,\s?)"
)
_SIDE = r"(?:\s*\([^()\d]{0,24}\))?"
#: "Rnds 9-12 = 24 sc" closes its label with the sign that elsewhere leads to a count.
_CLOSE = r"\s*(?:[:.)]|-(?!\d)|=(?!\s*\d)|=(?=\s*\d+\s*(?:sc|dc|hdc|tr|htr)\b)|[,;](?=\s))?\s*"
#: "Row 3 and all following rows:", "Row 3 and every row after:"
_ON = (
    r"(?:(?:\s+and\s+(?:all|every)\s+(?:[a-z]+\s+){0,3}(?:rounds?|rnds?|rows?)?(?:\s+after)?"
    r"|\s+onwards?|\s+and\s+(?:on|up|onwards?|beyond)|\s?\+)(?=\s*[:.\-]))?"
)
_ASIDE = r"(?P<side>\s*[(\[][^()\[\]]{0,24}[)\]](?=\s*[:.\-]))?"
_ORDINAL = r"-?(?:st|nd|rd|th)"
_NAMES = "|".join(sorted(NAMES))
_WORDED = "|".join(NUMBER_WORDS)
#: Signs that lists and marked-up pages put before a label: "- Rnd 3", "**Rnd 3:**", "#3:".
_BULLET = re.compile(
    r"^[*_#>\u2022\u00b7\u25a1\u25a2\u2610\u2013-][*_#>\u2022\u00b7\u25a1\u25a2\u2610\u2013\s-]*(?=[a-z0-9])"
)
#: A list: "13, 14, & 15", "8 + 9", "5, 7 and 9".
_AND = r"(?:\s*(?:,|&|\+|/|and)\s*(?:(?:and|&)\s*)?)"
_LIST = rf"(?P<list>{_AND}{_ROUND}?\s*\d+(?:{_AND}\d+)*(?=\s*[:.)(-]))"
#: "Handles:", "Size S only:", "All sizes:", "Lid," before a label.
_LEAD = (
    r"(?!note|tip|hint|nb|next|rep|round|row|rnd|with|using|change|switch|join|attach|work|in )"
    r"[a-z][a-z', ]{1,24}(?:\s?\((?:[^()]|\([^()]*\)){1,50}\))?(?:[:.]| -)\s+"
)
_FOR_SIZES = (
    rf"(?:{_LEAD}(?={_ROUND}\s*\d+\s*[:.)-]))?"
    r"(?:(?:for )?(?:sizes? [\w, &]+? only|all sizes|[\w, &]+ sizes? only)\s*[:,-]\s*)?"
)
#: "Rows 2 and 3 form the pattern" is no label, but said of those rows.
_SAID = (
    rf"(?!{_ROUND}\s*\d+(?:\s*(?:-|to|and|&|,)\s*\d+)*"
    r"\s+(?:forms?|sets?|makes?|establish(?:es)?|creates?|are|is)(?: up)?"
    r" (?:the |your |one |this )*(?:stitch )?pat(?:t(?:ern)?)?\b)"
)
_LABELS = (
    # such as "Rnd 3:", "Rounds 4-6", "Band Row 2:", "RND - 1:", "Round (left hand) 15:", "R3)"
    re.compile(
        rf"^{_SAID}{_FOR_SIZES}"
        r"(?!rep|cont|work|as |same|sc |dc |ch |join|next|last|insert|place|attach|sew|stuff"
        r"|keep|alternat|follow|like )"
        r"(?:[a-z][a-z' ]{0,28}?[ ,-]+)?"
        rf"(?P<kind>{_ROUND})\b{_SIDE}\s*(?:[-:](?!\s*\d+\s*(?:sc|dc|hdc|htr|tr|ch|ss|sl)\b)\s*)?"
        r"\.?\s*#?(?P<first>\d+)"
        rf"(?:{_LIST}|{_TO}\s*{_ROUND}?\.?\s*(?P<last>\d+)(?!\s*(?:sc|dc|hdc|st|tr|htr|ch)\b))?"
        rf"{_ON}{_ASIDE}{_CLOSE}"
    ),
    # such as "R3", with the number run into the letter
    re.compile(
        rf"^(?:{_LEAD}(?=r[a-z]*\d+(?:-r?\d+)?(?:\s*[:.)]|\s+\d+\s*[a-z])))?"
        rf"(?P<kind>r|rnd|rd|row|round)(?P<first>\d+)(?:{_TO}\s*r?(?P<last>\d+))?{_ASIDE}{_CLOSE}"
    ),
    # such as "Round five:"
    re.compile(rf"^(?P<kind>{_ROUND})\s+(?P<first>{_WORDED})\b\s*[:.)-]\s*"),
    # such as "4th row:", "7th-9th rows:", "second round"
    re.compile(
        rf"^(?P<first>\d+{_ORDINAL}|[a-z]+)(?:\s*(?:-|to|and)\s*(?P<last>\d+){_ORDINAL})?\s+"
        rf"(?P<kind>{_ROUND})\b{_ASIDE}\s*[:.\-,]\s*"
    ),
    # such as "1 rnd:", "5-8 rnds:", "4 row -", as some languages number
    re.compile(
        rf"^(?P<first>\d+)(?:r?\s*(?:-|to)\s*(?P<last>\d+)\s*(?P<kind>{_ROUND})"
        r"|r|\s+(?P<one>round|rnd|row|rd))\b\.?\s*(?:[:)]|[.-](?=\s))\s*"
    ),
    # such as "7.", "13. - 15.", "6 8.", "3-28)", "9-13:", "4 - "
    re.compile(
        r"^(?P<first>\d{1,4})(?:\s*\.?\s*[-,\s]\s*(?P<last>\d{1,4}))?"
        r"\s*(?:[.)](?=\s|[a-z(*])|:|(?<=\s)-(?=\s[a-z(*\[]))\s*"
    ),
    # such as "[R9]", "(Rnd 12-14)", "[9] 8 sc", with nothing but words behind it
    re.compile(
        rf"^(?:[(\[](?P<kind>{_ROUND})\.?\s*|\[)(?P<first>\d{{1,3}})(?:\s*-\s*r?(?P<last>\d{{1,3}}))?"
        r"[)\]]\s*[:.-]?\s*(?=[a-z0-9(*])"
    ),
    # such as "Next 2 rnds:", "For the next four rounds,", "Next row:"
    re.compile(
        rf"^(?:for\s+)?(?:the\s+)?(?:next|last|following)\s+(?:(?P<count>\d+|{_WORDED})\s+)?"
        rf"(?P<kind>{_ROUND})\b{_ON}\s*(?:[:.,\-]|(?=(?:\d+\s*)?(?:sc|dc|hdc|tr|htr)\b))\s*"
    ),
    # such as "Decrease round:", "Dec rnd:"
    re.compile(
        rf"^(?!rep|cont|work|as |same|to end)(?:[a-z]+ ){{1,2}}(?P<kind>{_ROUND})\s*:\s*(?P<count>)"
    ),
    # such as "2nd ball: work as …", "Leg 1: 6 sc in ring"
    re.compile(
        rf"^(?P<word>(?:(?:\d{_ORDINAL}|first|second|third|fourth|other)\s+)?(?:{_NAMES})s?"
        rf"(?:\s+\d)?)\s*:\s*(?=\S)(?!{_ROUND}\.?\s*\d)"
    ),
    # such as "Foundation row:", "To start:", "Edging round:"
    re.compile(
        rf"^(?P<word>(?:foundation|edging|border|final|set-?up|starting|base|joining|next)"
        rf"(?:\s+(?:{_ROUND}|chain|ch))?(?:\s+\d{{1,2}})?|to start)"
        rf"\s*:(?!\s*\d+\s*(?:sts?|stitches)?\W*$)\s*"
    ),
)
#: A label in the middle of a line, after the bracket that closes the round before it.
_INNER = re.compile(
    rf"(?:(?<=[)\]}}>])\s*|(?<=[.,;])\s+(?={_ROUND}\s*\d|next )"
    r"|^(?:with|using|change to|switch to|in) [a-z]+(?: [a-z]+)?[:.,]\s+)"
    rf"(?={_ROUND}\s*\d+(?:\s*-\s*r?\d+)?\s*(?::|[.)]\s)"
    r"|next (?:round|rnd|row)\s*:|\d{1,3}(?:\s*-\s*\d{1,3})?\.\s)"
    rf"|(?<=\.)\s+(?=\d+{_ORDINAL}\s+(?:{_ROUND})\s*[:.])"
)
#: "…. Repeat rnd 4 three times": a sentence of its own, behind the round on the same line.
_AGAIN = re.compile(
    rf"(?<=[.;)\]}}])\s+(?=(?:rep(?:eat)?\.?|work) (?:(?:the )?(?:this|last|previous) {_ROUND}\b"
    rf"|{_ROUND}\.?\s*\d|\d+{_ORDINAL} {_ROUND}\b))"
)
#: "Rep this rnd until piece measures 9 cm" belongs to its round: that is of open length.
_SENTENCE = r"(?:[^.;]|(?<=\d)\.(?=\d))*?"
_TO_LENGTH = re.compile(
    rf"(?:rep(?:eat)?\.?|work) (?:the )?(?:this|last|previous) {_ROUND}{_SENTENCE}"
    rf"\b(?:until|till|for)\b{_SENTENCE}"
    r"(?:measure|desired|long\b|length|tall\b|deep\b|big enough|fits"
    r"|\d\s*(?:(?:cm|mm|in|inch|inches)\b|[\"”″]))"
)
#: "(44, 48)" or "(8-18, 8-20)" behind the last number of a label.
_SIZES_SIDE = re.compile(r"\s*[(\[]\s*\d+(?:\s*[,:;/-]\s*\d+)*\s*[)\]]")
_TWO_SIZES = 2
#: A round comes hardly later than by so many in a larger size.
_MOST_LATER = 12
_STITCHES = re.compile(r"(?<![a-z])(?:sc|dc|hdc|htr|tr|dtr|inc|dec|sts?|stitch(?:es)?)\b")
_AGAIN_HERE = re.compile(r"(?:rep(?:eat)?\.?|work) ")
#: A count that stands in the label: "Rnd 3 (18 sts):".
_COUNT_SIDE = re.compile(r"\s*[(\[]\s*=?\s*\d+\s*(?:sts?|stitches|sc|dc|hdc|tr|htr)?\s*[)\]]")
#: A count in a bracket at the end of a line.
_COUNTED = re.compile(r"[(\[{]\s*=?\s*\d+\s*(?:sts?|stitches|sc|dc|hdc|tr|htr)?\s*[)\]}][.;]?\s*$")
#: A count as the last words of a line: "… rep from * around. 28 sts".
_COUNT_ENDS = re.compile(r"[.;:=-]\s*\d+ ?(?:sts?|stitches|sc|dc|hdc|tr|htr)\b[. ]*$")
_STARS_AGAIN = re.compile(r"^(?:rep|repeat)\w*\s+(?:from|between|\*)")
_COUNT_LINE = re.compile(
    r"^(?:\d+|[a-z]+)(?:\s*[(\[/][\d,/ :()\[\]-]+)?\s+(?:sts?|stitches|sc|dc|hdc|tr)\b[ .]*$"
)
_GOES_ON = re.compile(
    r"^(?:[a-z*(\[{<]|\d+\s*(?:sc|dc|hdc|tr|htr|ch|st)|you (?:now|should|will)\b)"
)
#: "eyes x2: 5 sc in ring": a small piece of its own, though in small letters.
NAMED_PIECE = re.compile(
    r"(?!then|next|rep|note|tip|and|or |from|to |in |join|turn|for )"
    r"[a-z][a-z' ]{1,20}(?: ?x ?\d+)?: "
)
_MOST_ROUNDS = 10_000


@dataclass(frozen=True, slots=True)
class Line:
    """One round's words as they stand in the text.

    Attributes:
        label: the label as written ("Rnds 4-6"), or "".
        kind: "round", "row" or "" (a bare number, or a word such as "Foundation").
        first, last: the numbers it has; 0 where it has none.
        count: how many rounds the label covers.
        body: the words, lines joined by line ends.
        pieces: (offset in ``body``, line from 1, column from 1), in order.
        others: further numbers of a list whose numbers do not follow one another.
        often: how many rounds in each size, where that differs: "Rows 3-40 (44, 48)".
    """

    label: str
    kind: str
    first: int
    last: int
    count: int
    body: str
    pieces: tuple[tuple[int, int, int], ...]
    others: tuple[int, ...] = ()
    often: tuple[int, ...] = ()

    @property
    def line(self) -> int:
        """The line it begins on, from 1."""
        return self.pieces[0][1]

    def where(self, offset: int) -> tuple[int, int]:
        """Line and column (from 1) of an offset in ``body``."""
        at = bisect_right([p[0] for p in self.pieces], offset) - 1
        begin, line, column = self.pieces[max(0, at)]
        return line, column + offset - begin


def split_lines(text: str, sizes: int = 1) -> Iterator[Line]:
    """The rounds of a text, one `Line` each; blank lines only part them.

    ``sizes``: for two, "Rnds 5-9 (11)" is longer in the second; else that is a count.
    """
    open_: _Open | None = None
    blank = True
    for number, raw in enumerate(text.split("\n"), start=1):
        for column, part in _parts(raw):
            if not part.strip():
                blank = True
                continue
            begun = _begin(part, number, column, sizes)
            apart = column > 1 and bool(_AGAIN_HERE.match(plain(part)))
            if (
                open_ is not None
                and not apart
                and begun.label == ""
                and not blank
                and open_.goes_on(part)
            ):
                open_.add(part, number, column)
            else:
                if open_ is not None:
                    yield open_.line()
                open_ = begun
            blank = False
    if open_ is not None:
        yield open_.line()


def _parts(raw: str) -> Iterator[tuple[int, str]]:
    """A line, cut where a second label stands in its middle; columns from 1."""
    begin = 0
    low = plain(raw)
    again = (
        m.end()
        for m in _AGAIN.finditer(low)
        if _STITCHES.search(low, 0, m.start()) and not _TO_LENGTH.match(low, m.end())
    )
    inner = {match.end() for match in _INNER.finditer(low)}
    for cut in sorted(inner.union(again, rising(low))):
        yield begin + 1, raw[begin:cut].rstrip()
        begin = cut
    yield begin + 1, raw[begin:]


class _Open:
    """A round whose words may go on on the next line."""

    def __init__(self, label: str, kind: str, first: int, last: int, count: int) -> None:
        self.label, self.kind = label, kind
        self.first, self.last, self.count = first, last, count
        self.others: tuple[int, ...] = ()
        self.often: tuple[int, ...] = ()
        self._written: list[str] = []
        self._length = 0
        self._open_brackets = 0
        self.pieces: list[tuple[int, int, int]] = []

    def add(self, part: str, number: int, column: int) -> None:
        """Add a line of words."""
        lead = len(part) - len(part.lstrip())
        words = part.strip()
        if self._length:
            self._length += 1
        elif self._written:
            self._written.clear()
        self.pieces.append((self._length, number, column + lead))
        self._written.append(words)
        self._length += len(words)
        self._open_brackets += sum(map(words.count, "([{")) - sum(map(words.count, ")]}"))

    def goes_on(self, part: str) -> bool:
        """Whether an unlabelled line continues this round."""
        last, low = self._written[-1][-1:], plain(part.strip())
        if not last or last in ",:-&*" or self._open_brackets > 0:
            return True
        if _STARS_AGAIN.match(low):
            return True
        if last == ";":
            return bool(self.label)
        if not self.label and low[:1] in "([" and _COUNTED.search(plain(self._written[-1])):
            return False  # the round before has its count; this one begins with a bracket
        if not self.label and low[:1] == "*" and _COUNT_ENDS.search(plain(self._written[-1])):
            return False
        if _COUNT_LINE.match(low) or low[:1] in "[<{*":
            return True
        if NAMED_PIECE.match(low):
            return False
        written = part.strip()
        return (bool(_GOES_ON.match(low)) and not written[0].isupper()) or low.startswith("you ")

    def line(self) -> Line:
        """The finished line."""
        body = "\n".join(self._written)
        pieces = tuple(self.pieces)
        numbers = (self.first, self.last, self.count)
        return Line(self.label, self.kind, *numbers, body, pieces, self.others, self.often)


def _begin(part: str, number: int, column: int, sizes: int) -> _Open:
    """The label at the start of a line, if it has one, and the words behind it."""
    lead = len(part) - len(part.lstrip())
    bullet = _BULLET.match(plain(part[lead:]))
    for begin in (lead, lead + bullet.end() if bullet else lead):
        low = plain(part[begin:])
        for pattern in _LABELS:
            match = pattern.match(low)
            found = None if match is None else _labelled(match, part[begin:], sizes)
            if match is not None and found is not None:
                end = begin + match.end()
                end += 2 * int(bool(bullet) and part.startswith(("**", "__"), end))
                found.add(part[end:] or " ", number, column + end)
                side = match.span("side") if "side" in match.groupdict() else (-1, -1)
                if side[0] >= 0 and _is_count(low[slice(*side)], found, sizes):
                    found.add(part[begin:][slice(*side)], number, column + begin + side[0])
                return found
    found = _Open("", "", 0, 0, 1)
    found.add(part, number, column)
    return found


def _is_count(side: str, found: _Open, sizes: int) -> bool:
    """Whether a bracket in a label is the count of its round.

    With two sizes "Rnd 9 (11)" is the number that the round has in the other.
    """
    count = _COUNT_SIDE.fullmatch(side)
    if count is None or found.often:
        return False
    number = int(re.findall(r"\d+", side)[0])
    return sizes != _TWO_SIZES or not found.last < number <= found.last + _MOST_LATER


def _labelled(match: re.Match[str], written: str, sizes: int) -> _Open | None:
    """The round a label opens; None where its numbers make no sense."""
    groups = match.groupdict()
    label = written[: match.end()].strip().rstrip(":.-–—,) ")
    if label.count("(") > label.count(")"):
        label += ")"
    kind = "row" if "row" in (groups.get("kind") or groups.get("one") or "") else "round"
    if "count" in groups:
        count = _number(groups["count"]) or 1 if groups["count"] else 1
        return _Open(label, kind, 0, 0, min(count, _MOST_ROUNDS))
    if "word" in groups:
        return _Open(label, "", 0, 0, 1)
    first = _number(groups["first"])
    last = _number(groups.get("last") or groups["first"])
    others: tuple[int, ...] = ()
    if groups.get("list") and first:
        others = tuple(map(int, re.findall(r"\d+", groups["list"])))
        if [first, *others] == list(range(first, first + len(others) + 1)):
            last, others = others[-1], ()
        elif sorted({first, *others}) != [first, *others]:
            return None
    if not first or last is None or not first <= last < first + _MOST_ROUNDS:
        return None
    if "kind" not in groups:
        kind = ""
    opened = _Open(label, kind, first, last, last - first + 1)
    opened.others = others
    if groups.get("last"):
        opened.often = _often(first, last, groups.get("side") or "", sizes)
    return opened


def _often(first: int, last: int, side: str, sizes: int) -> tuple[int, ...]:
    """How many rounds each size has, where a bracket in the label tells the others' numbers."""
    if not _SIZES_SIDE.fullmatch(side):
        return ()
    found = [last - first + 1]
    for one in re.split(r"[,:;/]", side):
        numbers = [int(n) for n in re.findall(r"\d+", one)]
        ranged = len(numbers) == _TWO_SIZES and numbers[0] in (first, numbers[1])
        ranged = ranged or (len(numbers) == _TWO_SIZES and "," in side)
        if ranged:
            found.append(numbers[1] - numbers[0] + 1)
        else:
            found += [n - first + 1 for n in numbers]
    told = len(found) > _TWO_SIZES or sizes == _TWO_SIZES
    return tuple(found) if told and min(found) > 0 else ()


def _number(text: str) -> int | None:
    digits = re.match(r"\d{1,6}", text)
    if digits:
        return int(digits.group())
    return ORDINAL_WORDS.get(text) or NUMBER_WORDS.get(text)
