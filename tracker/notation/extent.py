"""How often a round is worked and until where: "… for 5 rounds", "until piece measures 9 cm"."""

from __future__ import annotations

import re

from tracker.lean import NamedTuple
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.tokens import plain
from tracker.notation.tree import Figure

#: Up to the end of the sentence; a point inside a figure ("8.5 cm") does not end it.
_WORDS = r"(?:[^.;(\[]|(?<=\d)\.(?=\d))*"
#: "2 dc in next st" is no length.
_NO_PLACE = (
    r"(?! (?:the|next|each|every|same|first|last|that|this|one|a|an|both|all|it|st|sts|ch|sp|sc"
    r"|ring|magic|mr|back|front|blo|flo|any|center|centre|corner|\d)\b)"
)
_LENGTH_UNIT = rf"(?:(?:cm|mm|in{_NO_PLACE}|inch|inches)\b|[\"”″])"
#: Figures of the other sizes in brackets, such as the last ones of "15 (16, 17½) cm".
_OTHERS = r"(?:\s*[(\[][\d,;./ ¼½¾⅓⅔⅛⅜⅝⅞]+[)\]])+"
_UNTIL = re.compile(
    r"(?:\brep(?:eat)? (?:this|last) (?:rnd|round|row)s?,? )?\b(?:until|till|for)\b"
    rf"{_WORDS}?"
    r"(?:\b(?:measures?\b|desired|long\b|length|tall\b|deep\b|big enough|fits)"
    r"|(?:hole|opening|gap) (?:is )?clos(?:es|ed)"
    rf"|[\d¼½¾⅓⅔⅛⅜⅝⅞](?:{_OTHERS})?\s*{_LENGTH_UNIT}){_WORDS}"
    rf"(?:{_OTHERS}\s*{_LENGTH_UNIT}{_WORDS})?"
)
#: The lengths of the other sizes without a unit of their own: "12 cm (14, 16)".
_MORE_LENGTHS = re.compile(
    rf"(?P<first>\d+)[^\d(\[]*{_LENGTH_UNIT}[^\d(\[]*"
    rf"(?P<more>[(\[]\d[\d,;./ ¼½¾⅓⅔⅛⅜⅝⅞]*[)\]]){_WORDS}"
)
#: No size is longer than the smallest by more than this: a larger figure is a count.
_MOST_LONGER = 2
#: What follows on words on a length and is worked besides: ", dec 1 st at each end".
_BESIDES = re.compile(
    r"(?:,|\b(?:then|but|and))\s+(?:[a-z]+\s+){0,4}?"
    r"(?:inc|dec|omit|skip|miss|leav|except|\d+ ?(?:sc|dc|hdc|tr|htr)\b)"
)
_NUMBER = r"(?P<n>\d+|one|two|three|four|five|six|seven|eight|nine|ten)"
#: Words that lead to the next rounds.
_LEAD = r"(?:(?:next|now|then|after that|again)\b[, ]*)?(?:(?:work|make|crochet|do) )?"
#: "… for 5 rounds", "…, 2 rounds", "do this for 7 rounds in all", "… each round"
_SO_MANY = re.compile(
    rf"(?:(?:do this |work(?:ed)? )?\bfor (?:the )?(?:next )?|, ){_NUMBER} +(?:more )?"
    r"(?:rounds?|rnds?|rows?)\b"
    r"(?: in (?:all|total))?"
)
#: "for 5 (6, 7) rounds": how many of them differs by size
_SO_MANY_EACH = re.compile(
    r"(?:\bfor (?:the )?(?:next )?|(?<=^work ))(?P<n>\d+) ?"
    r"(?P<more>[(\[/][\d,/ :;-]+[)\]]?) ?(?:more )?(?:rounds?|rnds?|rows?)\b"
)
#: "work 5 rounds of 24 sc"
_ROUNDS_OF = re.compile(rf"^\W*{_LEAD}{_NUMBER} (?:more )?(?:rounds?|rnds?|rows?) of (?=\d)")
#: "work 3 more rounds of sc", "5 (6, 7) rounds in hdc": the words behind it are for each
_ROUNDS_IN = re.compile(
    rf"^\W*{_LEAD}(?P<often>{_NUMBER} ?(?P<more>[(\[/][\d,/ :;-]+[)\]]?)? ?"
    r"(?:more )?(?:rounds?|rnds?|rows?)) (?:of|in) (?:plain )?(?=[a-z])(?!.*\bthen\b)"
)
_A_ROUND = "a round"
#: "(5 rounds)" beside a round that is worked so often
_ROUNDS_BESIDE = re.compile(
    rf"[(\[] ?{_NUMBER} (?:rounds?|rnds?|rows?)(?: total| in all| in total)? ?[)\]]"
)
_EACH_ROUND = re.compile(r"\b(?:each|every|per) (?:round|rnd|row)\b(?=\s*(?:[.,;()\[\]<{=-]|$))")
#: "until you have 20 sc", "until 2 sc rem", "until only 8 sts are left"
COME_TO = (
    r"\b(?:until|till|(?:down |up )?to) (?:(?:you|have|there|are|left with|down to|reach|only"
    r"|get to|get down to|about|just) )*(?P<n>\d+) (?:sts?|stitches|sc|dc|hdc|tr)\b"
    r"(?: (?:in (?:all|total)|total|on (?:the |your )?(?:rnd|round|row|hook)"
    r"|rem(?:ain)?(?:s|ing)?|are left|left))*"
)
_GOAL = re.compile(COME_TO)
#: "until there are 54 (60, 66) sts"
_GOALS = re.compile(
    r"\b(?:until|till|to) (?:you have |there are )?(?P<n>\d+) ?(?P<more>[(\[/][\d,/ :;-]+[)\]]?) ?"
    r"(?:sts?|stitches|sc|dc|hdc|tr)\b"
)
#: "Rows 2 and 3 form the pattern.": said of rounds, and asking for none.
_FORMING = re.compile(
    r"^\W*(?:(?:the )?(?:last|above) )?(?:(?:\d+|two|three|four) )?(?:rounds?|rnds?|rows?)"
    r"(?: ?\d+(?:(?: ?(?:-|to|and|&|,) ?)+\d+)*)? "
    r"(?:forms?|sets?|makes?|establish(?:es)?|creates?|are|is)(?: up)? (?:the |your |one |this )*"
    r"(?:stitch )?(?:patt|pattern|pat)(?: repeat)?\b[^.,;]*[.,;]?"
)


class Extent(NamedTuple):
    """What a text says of how often its round is worked, and the words without that.

    Attributes:
        body: the words, with those blanked out that are told in the other fields.
        until: words on a length it is worked to, or on a number that differs by size.
        rounds: how many rounds; 0 where nothing is said.
        goal: the count of stitches to come to, or 0.
        often: how many rounds in each size, where that differs; else ().
    """

    body: str
    until: str
    rounds: int
    goal: int
    often: Figure


def extent_of(text: str) -> Extent:
    """How often the round of a text is worked, and what is left to read of its words."""
    forming = _FORMING.match(plain(text))
    text = text if forming is None else blanked(text, *forming.span())
    body, until = _until(text)
    body, often = _each_size(body)
    body, rounds = _so_many(body)
    goal = _GOAL.search(plain(body))
    wanted = 0 if goal is None else int(goal["n"])
    return Extent(body, until, rounds, wanted, often)


def words_of_goal(text: str) -> str:
    """The words on the count of stitches to come to, without what stands before them."""
    found = _GOAL.search(plain(text))
    return "" if found is None else text[found.start() : found.end()]


def without_goal(text: str) -> str:
    """The text with words on a count to come to blanked out."""
    goal = _GOAL.search(plain(text))
    return text if goal is None else blanked(text, *goal.span())


def _until(text: str) -> tuple[str, str]:
    """The text without words on the length it is worked to, and those words."""
    match = _UNTIL.search(plain(text))
    if match is None:
        return text, ""
    begin, end = match.start(), _end_of_lengths(plain(text), match)
    besides = _BESIDES.search(plain(text), begin, end)
    end = end if besides is None else besides.start()
    return blanked(text, begin, end), text[begin:end].strip()


def _end_of_lengths(low: str, match: re.Match[str]) -> int:
    """Where words on a length end, with those of the other sizes in a bracket behind it."""
    more = _MORE_LENGTHS.search(low, match.start())
    if more is None or more.start("more") > match.end() or more.end() <= match.end():
        return match.end()
    most = _MOST_LONGER * int(more["first"])
    others = [int(n) for n in re.findall(r"(?<![\d.])\d+", more["more"])]
    return more.end() if len(others) > 1 and max(others) <= most else match.end()


def goals_each(text: str, sizes: int) -> Figure:
    """The counts of stitches at which each size stops, where they differ; else ()."""
    found = _GOALS.search(plain(text)) if sizes > 1 else None
    figures = re.findall(r"\d+", f"{found['n']} {found['more']}") if found else []
    return tuple(map(int, figures)) if len(figures) == sizes else ()


def _each_size(text: str) -> tuple[str, Figure]:
    """The text without words on how many rounds each size works, and those numbers."""
    low = plain(text)
    among = _ROUNDS_IN.match(low)
    found = among if among is not None and among["more"] else _SO_MANY_EACH.search(low)
    if found is None:
        return text, ()
    often = tuple(map(int, re.findall(r"\d+", f"{found['n']} {found['more']}")))
    text = blanked(text, *found.span()) if found is not among else _as_one(text, found)
    return text, often


def _as_one(text: str, match: re.Match[str]) -> str:
    """The text with "a round" in place of how many rounds."""
    begin, end = match.span("often")
    return text[:begin] + _A_ROUND.ljust(end - begin) + text[end:]


def _so_many(text: str) -> tuple[str, int]:
    """The text without words on how many rounds are worked so, and that number (0: unsaid)."""
    for match in _EACH_ROUND.finditer(plain(text)):
        text = blanked(text, *match.span())
    low = plain(text)
    among = _ROUNDS_IN.match(low)
    found = among or _SO_MANY.search(low) or _ROUNDS_OF.match(low)
    found = found or _ROUNDS_BESIDE.search(low)
    if found is None:
        return text, 0
    word = found["n"]
    text = blanked(text, *found.span()) if found is not among else _as_one(text, found)
    return text, int(word) if word.isdigit() else NUMBER_WORDS[word]


def blanked(text: str, begin: int, end: int) -> str:
    """The text with what stands from ``begin`` to ``end`` blanked out, so that columns keep."""
    return text[:begin] + " " * (end - begin) + text[end:]
