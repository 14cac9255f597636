"""A text of instructions -> its rounds: their labels, words, and where they stand."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

from tracker.notation.labels import NO_LABEL, ORDINAL, ROUND, Label, count_in_range, label_of
from tracker.notation.rising import rising
from tracker.notation.tokens import plain

#: A label in the middle of a line, after the bracket that closes the round before it.
_INNER = re.compile(
    rf"(?:(?<=[)\]}}>])\s*|(?<=[.,;])\s+(?={ROUND}\s*\d|next )"
    r"|^(?:with|using|change to|switch to|in) [a-z]+(?: [a-z]+)?[:.,]\s+)"
    rf"(?={ROUND}\s*\d+(?:\s*-\s*r?\d+)?\s*(?::|[.)]\s)"
    r"|next (?:round|rnd|row)\s*:|\d{1,3}(?:\s*-\s*\d{1,3})?\.\s)"
    rf"|(?<=\.)\s+(?=\d+{ORDINAL}\s+(?:{ROUND})\s*[:.])"
)
#: "…. Repeat rnd 4 three times": a sentence of its own, behind the round on the same line.
_AGAIN = re.compile(
    rf"(?<=[.;)\]}}])\s+(?=(?:rep(?:eat)?\.?|work) (?:(?:the )?(?:this|last|previous) {ROUND}\b"
    rf"|{ROUND}\.?\s*\d|\d+{ORDINAL} {ROUND}\b))"
)
#: "Rep this rnd until piece measures 9 cm" belongs to its round: that is of open length.
_SENTENCE = r"(?:[^.;]|(?<=\d)\.(?=\d))*?"
_TO_LENGTH = re.compile(
    rf"(?:rep(?:eat)?\.?|work) (?:the )?(?:this|last|previous) {ROUND}{_SENTENCE}"
    rf"\b(?:until|till|for)\b{_SENTENCE}"
    r"(?:measure|desired|\blong\b|length|tall\b|deep\b|big enough|fits"
    r"|\d\s*(?:(?:cm|mm|in|inch|inches)\b|[\"”″]))"
)
_STITCHES = re.compile(r"(?<![a-z])(?:sc|dc|hdc|htr|tr|dtr|inc|dec|sts?|stitch(?:es)?)\b")
_SLIPS = re.compile(r"(?:then |and )?(?:sl(?:ip)?\.? ?st|slst|ss\b|slip )")
_AGAIN_HERE = re.compile(r"(?:rep(?:eat)?\.?|work) ")
#: A count in a bracket at the end of a line.
_COUNTED = re.compile(r"[(\[{]\s*=?\s*\d+\s*(?:sts?|stitches|sc|dc|hdc|tr|htr)?\s*[)\]}][.;]?\s*$")
#: A count as the last words of a line: "… rep from * around. 28 sts".
_COUNT_ENDS = re.compile(r"[.;:=-]\s*\d+ ?(?:sts?|stitches|sc|dc|hdc|tr|htr)\b[. ]*$")
_STARS_AGAIN = re.compile(r"^(?:rep|repeat)\w*\s+(?:from|between|\*)")
#: How often what stands before is worked, or what it comes to.
_TIMES = re.compile(r"^(?:x ?\d|= ?\d)")
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
    blank, counted = True, False
    for number, raw in enumerate(text.split("\n"), start=1):
        for column, part in _parts(raw):
            if not part.strip():
                blank = True
                continue
            begun = _begin(part, number, column, sizes)
            if open_ is not None:
                counted = open_.followed_by(begun.label, counted)
            apart = column > 1 and bool(_AGAIN_HERE.match(plain(part)))
            if (
                open_ is not None
                and not apart
                and not begun.label.text
                and not (blank and not _TIMES.match(plain(part.strip())))
                and open_.goes_on(part)
            ):
                open_.add(part, number, column)
            else:
                if open_ is not None:
                    yield open_.line()
                open_ = begun
            blank = False
    if open_ is not None:
        open_.followed_by(NO_LABEL, counted)
        yield open_.line()


def _parts(raw: str) -> Iterator[tuple[int, str]]:
    """A line, cut where a second label stands in its middle; columns from 1."""
    begin = 0
    low = plain(raw)
    again = (
        m.end()
        for m in _AGAIN.finditer(low)
        if _works(low[: m.start()]) and not _TO_LENGTH.match(low, m.end())
    )
    inner = {m.end() for m in _INNER.finditer(low) if not low[: m.end()].rstrip().endswith("rep.")}
    for cut in sorted(inner.union(again, rising(low))):
        yield begin + 1, raw[begin:cut].rstrip()
        begin = cut
    yield begin + 1, raw[begin:]


def _works(low: str) -> bool:
    """Whether words make stitches, and do not only slip to where a round begins."""
    clauses = (clause.strip() for clause in re.split(r"[.;:,]", low))
    return any(_STITCHES.search(clause) and not _SLIPS.match(clause) for clause in clauses)


class _Open:
    """A round whose words may go on on the next line."""

    def __init__(self, label: Label, part: str = "") -> None:
        self.label = label
        self._part = part
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

    def followed_by(self, then: Label, counted: bool) -> bool:
        """Take "R9 - 18 -" for round 9 with its count where the next line is round 10.

        ``counted``: so it was with a line before; the same is true behind this one.
        """
        begin = count_in_range(self._part, self.label)
        within = self.label.first + 1 == then.first <= self.label.last
        found = begin > 0 and (within or (counted and not then.first))
        if found and len(self.pieces) == 1:
            text = self._part[:begin].strip().rstrip("-\u2013\u2014 ")
            self.label = self.label._replace(text=text, last=self.label.first, rounds=1)
            (_, number, column), end = self.pieces.pop(), self.label.end
            self._written.clear()
            self._length = 0
            self.add(self._part[begin:], number, column - (end - begin))
        return counted or found

    def goes_on(self, part: str) -> bool:
        """Whether an unlabelled line continues this round."""
        last, low = self._written[-1][-1:], plain(part.strip())
        times = _TIMES.match(low) or self._written[-1].endswith((" x", ")x", "]x"))
        if not last or last in ",:-&*" or self._open_brackets > 0 or times:
            return True
        if _STARS_AGAIN.match(low):
            return True
        if last == ";":
            return bool(self.label.text)
        if not self.label.text and low[:1] in "([" and _COUNTED.search(plain(self._written[-1])):
            return False  # the round before has its count; this one begins with a bracket
        if not self.label.text and low[:1] == "*" and _COUNT_ENDS.search(plain(self._written[-1])):
            return False
        if _COUNT_LINE.match(low) or low[:1] in "[<{*":
            return True
        if NAMED_PIECE.match(low):
            return False
        written = part.strip()
        return (bool(_GOES_ON.match(low)) and not written[0].isupper()) or low.startswith("you ")

    def line(self) -> Line:
        """The finished line."""
        label = self.label
        return Line(
            label.text,
            label.kind,
            label.first,
            label.last,
            label.rounds,
            "\n".join(self._written),
            tuple(self.pieces),
            label.others,
            label.often,
        )


def _begin(part: str, number: int, column: int, sizes: int) -> _Open:
    """The label at the start of a line, if it has one, and the words behind it."""
    label = label_of(part, sizes)
    found = _Open(label, part)
    found.add(part[label.end :] or " ", number, column + label.end)
    if label.counted is not None:
        begin, end = label.counted
        found.add(part[begin:end], number, column + begin)
    return found
