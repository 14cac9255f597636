"""The label of a round: "Rnds 4-6:", "5th row", "Round (left hand) 15 (18):"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tracker.lean import NamedTuple
from tracker.notation.kit import NUMBER_WORDS, ORDINAL_WORDS
from tracker.notation.tokens import plain
from tracker.notation.wordlists import NAMES

ROUND = r"(?:rounds?|rnds?|rows?|rds?|r)"
_DASH = r"(?:-|to|through|thru|until|till|and|&|,|\+|~|\.\s*-|\.\.{1,2}(?!\.)|\u2026|>|a|bis)"
#: A range: "4-6", "4 to 6"; with blanks round the dash only where a sign closes the label.
_TO = (
    rf"(?:\s*{_DASH}\s*(?=(?:{ROUND}\s*)?\d+\s*[:.)=\-(])|{_DASH}(?=\S)"
    r"|\s+(?:to|through|thru|until|till|and|&|~)\s+|,\s?)"
)
_SIDE = r"(?:\s*\([^()\d]{0,24}\))?"
#: "Rnds 9-12 = 24 sc" closes its label with the sign that elsewhere leads to a count.
_CLOSE = (
    r"\s*(?:[:.)>\u2192_]|-(?!\d)|=(?!\s*\d)|=(?=\s*\d+\s*(?:sc|dc|hdc|tr|htr)\b)|[,;](?=\s))?\s*"
)
#: "Row 3 and all following rows:", "Row 3 and every row after:"
_ON = (
    r"(?:(?:\s+and\s+(?:all|every)\s+(?:[a-z]+\s+){0,3}(?:rounds?|rnds?|rows?)?(?:\s+after)?"
    r"|\s+onwards?|\s+and\s+(?:on|up|onwards?|beyond)|\s?\+)(?=\s*[:.\-]))?"
)
_ASIDE = r"(?P<side>\s*[(\[][^()\[\]]{0,24}[)\]](?=\s*[:.\-]))?"
ORDINAL = r"-?(?:st|nd|rd|th)"
_NAMES = "|".join(sorted(NAMES))
_WORDED = "|".join(NUMBER_WORDS)
_SIGNS = r"*_#>\u2022\u00b7\u2013\u2190-\u21ff\u25a0-\u27bf\ufe0f\U0001f300-\U0001faff"
#: Signs that lists and marked-up pages put before a label: "- Rnd 3", "**Rnd 3:**", "#3:".
_BULLET = re.compile(rf"^[{_SIGNS}-][{_SIGNS}\s-]*(?=[a-z0-9])")
#: A list: "13, 14, & 15", "8 + 9", "5, 7 and 9".
_AND = r"(?:\s*(?:,|&|\+|/|and)\s*(?:(?:and|&)\s*)?)"
_LIST = rf"(?P<list>{_AND}{ROUND}?\s*\d+(?:{_AND}\d+)*(?=\s*[:.)(-]))"
#: "Handles:", "Size S only:", "All sizes:", "Lid," before a label.
_LEAD = (
    r"(?!note|tip|hint|nb|next|rep|round|row|rnd|with|using|change|switch|join|attach|work|in )"
    r"[a-z][a-z', ]{1,24}(?:\s?\((?:[^()]|\([^()]*\)){1,50}\))?(?:[:.]| -)\s+"
)
_FOR_SIZES = (
    rf"(?:{_LEAD}(?={ROUND}\s*\d+\s*[:.)-]))?"
    r"(?:(?:for )?(?:sizes? [\w, &]+? only|all sizes|[\w, &]+ sizes? only)\s*[:,-]\s*)?"
)
#: "Rows 2 and 3 form the pattern" is no label, but said of those rows.
_SAID = (
    rf"(?!{ROUND}\s*\d+(?:\s*(?:-|to|and|&|,)\s*\d+)*"
    r"\s+(?:forms?|sets?|makes?|establish(?:es)?|creates?|are|is)(?: up)?"
    r" (?:the |your |one |this )*(?:stitch )?pat(?:t(?:ern)?)?\b)"
)
#: "…sew the ears to Rnd 6." goes on with a sentence.
_LED_TO = (
    r"(?![a-z' ]{0,28}?\b(?:to|at|of|from|between|before|after|under|over|behind|until|see)"
    rf"\s+{ROUND}\b)"
)
_LABELS = (
    # such as "Rnd 3:", "Rounds 4-6", "Band Row 2:", "RND - 1:", "Round (left hand) 15:", "R3)"
    re.compile(
        rf"^{_SAID}{_LED_TO}{_FOR_SIZES}"
        r"(?!rep|cont|work|as |same|sc |dc |ch |join|next|last|insert|place|attach|sew|stuff"
        r"|keep|alternat|follow|like )"
        r"(?:[a-z][a-z' ]{0,28}?[ ,-]+)?"
        rf"(?P<kind>{ROUND})\b{_SIDE}\s*(?:[-:](?!\s*\d+\s*(?:sc|dc|hdc|htr|tr|ch|ss|sl)\b)\s*)?"
        r"\.?\s*#?(?P<first>\d+)"
        rf"(?:{_LIST}|{_TO}\s*{ROUND}?\.?\s*(?P<last>\d+)(?!\s*(?:sc|dc|hdc|st|tr|htr|ch)\b))?"
        rf"{_ON}{_ASIDE}{_CLOSE}"
    ),
    # such as "R3", with the number run into the letter
    re.compile(
        rf"^(?:{_LEAD}(?=r[a-z]*\d+(?:-r?\d+)?(?:\s*[:.)]|\s+\d+\s*[a-z])))?"
        rf"(?P<kind>r|rnd|rd|row|round)(?P<first>\d+)"
        rf"(?:(?:{_TO}|/(?=r?\d+\s*[:.)]))\s*r?(?P<last>\d+))?{_ASIDE}{_CLOSE}"
    ),
    # such as "Round five:"
    re.compile(rf"^(?P<kind>{ROUND})\s+(?P<first>{_WORDED})\b\s*[:.)-]\s*"),
    # such as "4th row:", "7th-9th rows:", "second round"
    re.compile(
        rf"^(?P<first>\d+{ORDINAL}|[a-z]+)(?:\s*(?:-|to|and)\s*(?P<last>\d+){ORDINAL})?\s+"
        rf"(?:pat(?:t(?:ern)?)?\.?\s+)?(?P<kind>{ROUND})\b{_ASIDE}\s*[:.\-,]\s*"
    ),
    # such as "1 rnd:", "5-8 rnds:", "4 row -", as some languages number
    re.compile(
        rf"^(?P<first>\d+)(?:r?\s*(?:-|to)\s*(?P<last>\d+)\s*(?P<kind>{ROUND})"
        r"|r|\s+(?P<one>round|rnd|row|rd))\b\.?\s*(?:[:)]|[.-](?=\s))\s*"
    ),
    # such as "12. Round:", "5. - 9. Rnd:", as some languages number
    re.compile(
        r"^(?P<first>\d{1,4})(?:\s*\.?\s*(?:-|to)\s*(?P<last>\d{1,4}))?\s*\.\s*"
        rf"(?P<kind>{ROUND})\b\s*[:.\-]\s*"
    ),
    # such as "7.", "13. - 15.", "6 8.", "3-28)", "9-13:", "4 - "
    re.compile(
        r"^(?P<first>\d{1,4})(?:\s*\.?\s*[-,\s]\s*(?P<last>\d{1,4}))?"
        r"\s*(?:[.)](?=\s|[a-z(*])|:|(?<=\s)-(?=\s[a-z(*\[]))\s*"
    ),
    # such as "5)-8)"
    re.compile(r"^(?P<first>\d{1,4})\)\s*(?:-|to)\s*(?P<last>\d{1,4})\)\s*"),
    # such as "[R9]", "(Rnd 12-14)", "[9] 8 sc", with nothing but words behind it
    re.compile(
        rf"^(?:[(\[](?P<kind>{ROUND})\.?\s*|\[)(?P<first>\d{{1,3}})(?:\s*-\s*r?(?P<last>\d{{1,3}}))?"
        r"[)\]]\s*[:.-]?\s*(?=[a-z0-9(*])"
    ),
    # such as "Next 2 rnds:", "For the next four rounds,", "Next row:"
    re.compile(
        rf"^(?:for\s+)?(?:the\s+)?(?:next|last|following)\s+(?:(?P<count>\d+|{_WORDED})\s+)?"
        rf"(?P<kind>{ROUND})\b{_ON}{_SIDE}\s*(?:[:.,\-]|(?=(?:\d+\s*)?(?:sc|dc|hdc|tr|htr)\b))\s*"
    ),
    # such as "Decrease round:", "Dec rnd:"
    re.compile(
        rf"^(?!rep|cont|work|as |same|to end)(?:[a-z]+ ){{1,2}}(?P<kind>{ROUND})\s*:\s*(?P<count>)"
    ),
    # such as "2nd ball: work as …", "Leg 1: 6 sc in ring"
    re.compile(
        rf"^(?P<word>(?:(?:\d{ORDINAL}|first|second|third|fourth|other)\s+)?(?:{_NAMES})s?"
        rf"(?:\s+\d)?)\s*:\s*(?=\S)(?!{ROUND}\.?\s*\d)"
    ),
    # such as "Shell border:", "Picot edging:", which make no shell and no picot
    re.compile(
        r"^(?P<word>(?!rep|cont|work|as |same|join|next|last|insert|place|attach|turn|with|using"
        r"|change|for |to |in |on |along|around|make|finish|sew|ch |sc |sl |dc |hdc |tr )"
        r"(?:[a-z-]+ ){1,2}(?:edging|border|trim|edge|fringe|frill|ruffle))"
        rf"\s*:\s*(?=\S)(?!{ROUND}\.?\s*\d)"
    ),
    # such as "Foundation row:", "To start:", "Edging round:"
    re.compile(
        rf"^(?P<word>(?:foundation|edging|border|final|set-?up|starting|base|joining|next)"
        rf"(?:\s+(?:{ROUND}|chain|ch))?(?:\s+\d{{1,2}})?|to start)"
        rf"\s*:(?!\s*\d+\s*(?:sts?|stitches)?\W*$)\s*"
    ),
    # such as "Rund 3:", "Rou nd 4-6:", "V3:", "R4/5:", with a slip, or in another language's way
    re.compile(
        rf"^(?P<kind>r ?[dnou]{{1,4}} ?[dn]{{0,2}}|[vt](?=\d)|r)\.?\s*(?P<first>\d+)"
        rf"(?:\s*(?:/|=|{_DASH})\s*[rvt]?(?P<last>\d+))?\s*(?::|[.)](?=\s))\s*"
    ),
    # such as "2º round:", "2a rnd."
    re.compile(rf"^(?P<first>\d+)\s?[°ºªao]\.?\s?(?P<kind>{ROUND})\b\s*[:.)-]\s*"),
)
#: "(44, 48)" or "(8-18, 8-20)" behind the last number of a label.
_SIZES_SIDE = re.compile(r"\s*[(\[]\s*\d+(?:\s*[,:;/-]\s*\d+)*\s*[)\]]")
_TWO_SIZES = 2
#: A round comes hardly later than by so many in a larger size.
_MOST_LATER = 12
#: A count that stands in the label: "Rnd 3 (18 sts):".
_COUNT_SIDE = re.compile(r"\s*[(\[]\s*=?\s*\d+\s*(?:sts?|stitches|sc|dc|hdc|tr|htr)?\s*[)\]]")
_MOST_ROUNDS = 10_000
#: How many rounds there are, beside their numbers: "Rnds 6-11 (6 rounds)".
_SO_MANY = re.compile(rf"[(\[]\s*(?P<n>\d{{1,4}})\s*(?:more\s+)?{ROUND}\s*[)\]]")
#: "R9 - 18 -": the second number may be the count of the round.
_COUNT_BEHIND = re.compile(r"(?<=\s)-\s+(?=\d+\s*-\s)")


class Label(NamedTuple):
    """What a label says, and where it stands in its line.

    Attributes:
        text: it as written.
        kind, first, last, others, often: as in `Line`.
        rounds: how many rounds it covers.
        end: the offset where the words behind it begin.
        counted: where the printed count stands that it has in it, if any: begin and end.
    """

    text: str
    kind: str = ""
    first: int = 0
    last: int = 0
    rounds: int = 1
    others: tuple[int, ...] = ()
    often: tuple[int, ...] = ()
    end: int = 0
    counted: tuple[int, int] | None = None


NO_LABEL = Label("")
"""What a line without a label has."""


def rounds_told(words: str) -> int:
    """How many rounds a bracket in a label, or beside it, says that there are; 0 for none."""
    found = _SO_MANY.search(plain(words))
    return 0 if found is None else int(found["n"])


def count_in_range(part: str, label: Label) -> int:
    """Where the second number of "R9 - 18 -" begins, if it may be a count; else 0."""
    found = _COUNT_BEHIND.search(plain(part[: label.end]))
    return 0 if found is None or label.last == label.first else found.end()


def label_of(part: str, sizes: int) -> Label:
    """The label at the start of a line, behind the sign of a list; `NO_LABEL` if it has none."""
    for begin, bullet in _begins(part):
        low = plain(part[begin:])
        for pattern in _LABELS:
            match = pattern.match(low)
            label = None if match is None else _labelled(match, part[begin:], sizes)
            if match is not None and label is None and (cut := _COUNT_BEHIND.search(low)):
                match = pattern.match(low[: cut.end()])  # "R13 - 12 -": the count of the round
                label = None if match is None else _labelled(match, part[begin:], sizes)
            if match is not None and label is not None:
                end = begin + match.end()
                end += 2 * int(bullet and part.startswith(("**", "__"), end))
                return label._replace(end=end, counted=_count_in(match, label, begin, sizes))
    return NO_LABEL


def _begins(part: str) -> Iterator[tuple[int, bool]]:
    """Where a label may begin: at the first letter, then (True) behind the sign of a list."""
    lead = len(part) - len(part.lstrip())
    yield lead, False
    bullet = _BULLET.match(plain(part[lead:]))
    if bullet is not None:
        yield lead + bullet.end(), True


def _count_in(match: re.Match[str], label: Label, begin: int, sizes: int) -> tuple[int, int] | None:
    """Where a bracket in the label stands that is the count of its round.

    ``begin`` is where the label begins in its line. With two sizes "Rnd 9 (11)" is the number
    that the round has in the other.
    """
    side = match.groupdict().get("side")
    count = _COUNT_SIDE.fullmatch(side or "")
    if count is None or label.often:
        return None
    number = int(re.findall(r"\d+", count[0])[0])
    if sizes == _TWO_SIZES and label.last < number <= label.last + _MOST_LATER:
        return None
    return begin + match.start("side"), begin + match.end("side")


def _labelled(match: re.Match[str], written: str, sizes: int) -> Label | None:
    """What a label says; None where its numbers make no sense."""
    groups = match.groupdict()
    text = written[: match.end()].strip().rstrip(":.-–—,) ")
    if text.count("(") > text.count(")"):
        text += ")"
    if "word" in groups:
        return Label(text)
    kind = "row" if "row" in (groups.get("kind") or groups.get("one") or "") else "round"
    if "count" in groups:
        count = _number(groups["count"]) or 1 if groups["count"] else 1
        return Label(text, kind, rounds=min(count, _MOST_ROUNDS))
    numbers = _numbers(groups)
    if numbers is None:
        return None
    first, last, others = numbers
    often = _often(first, last, groups.get("side") or "", sizes) if groups.get("last") else ()
    return Label(
        text, kind if "kind" in groups else "", first, last, last - first + 1, others, often
    )


def _numbers(groups: dict[str, str]) -> tuple[int, int, tuple[int, ...]] | None:
    """The first and the last number of a label, and the others of a list with gaps."""
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
    return first, last, others


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
