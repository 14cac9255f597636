"""The words of one round -> its instruction tree."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.lean import NamedTuple
from tracker.notation.again import AgainReader
from tracker.notation.altered import alters
from tracker.notation.foundations import foundation
from tracker.notation.grammar import Reader
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.lastly import in_last
from tracker.notation.lexicon import Lexicon
from tracker.notation.likewise import likewise
from tracker.notation.remarks import Remark, by_length, remarks
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import Act, Chain, Evenly, Figure, Node, Note, RoundText, Stated, Unread

#: Longer instructions for one round are not written by people.
MOST_LETTERS = 5_000
#: Brackets in brackets deeper than this are not either.
DEEPEST = 12
#: "Shell:" on a line of its own is what the next rounds make.
_HEADING = re.compile(r"\s*[^\W\d][\w' ]{0,30}:\s*$")
#: Letters shown of a round that is not even tried.
_SHOWN = 40
#: Up to the end of the sentence; a point inside a figure ("8.5 cm") does not end it.
_WORDS = r"(?:[^.;(\[]|(?<=\d)\.(?=\d))*"
_LENGTH_UNIT = r"(?:(?:cm|mm|in|inch|inches)\b|[\"”″])"
#: Figures of the other sizes in brackets, such as the last ones of "15 (16, 17½) cm".
_OTHERS = r"(?:\s*[(\[][\d,;./ ¼½¾⅓⅔⅛⅜⅝⅞]+[)\]])+"
_UNTIL = re.compile(
    r"(?:\brep(?:eat)? (?:this|last) (?:rnd|round|row)s?,? )?\b(?:until|till|for)\b"
    rf"{_WORDS}?"
    r"(?:measures?\b|desired|long\b|length|tall\b|deep\b|big enough|fits"
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
_EVEN = re.compile(
    r"^\W*(?:work|knit|crochet|do)?\s*"
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

#: Words behind that which ask for more than a plain round.
_NOT_EVEN = re.compile(
    r"\b(?:but|except|inc|dec|tog|together|first|last|next|then|fewer|less\b|omit|skip|miss|leav"
    r"|extra|twice|apart from)"
)
#: What follows on words on a length and is worked besides: ", dec 1 st at each end".
_BESIDES = re.compile(
    r"(?:,|\b(?:then|but|and))\s+(?:[a-z]+\s+){0,4}?"
    r"(?:inc|dec|omit|skip|miss|leav|except|\d+ ?(?:sc|dc|hdc|tr|htr)\b)"
)
_GOES_ON_IN = re.compile(
    r"^\W*(?:work|working|continue|cont|carry on|proceed)(?: working| to work)?(?: even)?"
    r" in (?:rows of |rounds of )?(?P<stitch>[a-z ]+?)(?: st| stitch| stitches)?"
    r"(?: rows?| rnds?| rounds?)?\W*$"
)
_NUMBER = r"(?P<n>\d+|one|two|three|four|five|six|seven|eight|nine|ten)"
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
#: A figure for each size, of which one may be a dash.
_DASHED = re.compile(r"(?<![\w)\]-])(?:-|\d+)\s?[(\[](?:(?:-|\d+)\s?[,/;]\s?)*(?:-|\d+)[)\]]")
#: "work 5 rounds of 24 sc"
_ROUNDS_OF = re.compile(
    rf"^\W*(?:(?:work|make|crochet|do) )?{_NUMBER} (?:more )?(?:rounds?|rnds?|rows?) of (?=\d)"
)
#: "work 3 more rounds of sc", "5 (6, 7) rounds in hdc": the words behind it are for each
_ROUNDS_IN = re.compile(
    rf"^\W*(?:(?:work|make|crochet|do) )?(?P<often>{_NUMBER} ?(?P<more>[(\[/][\d,/ :;-]+[)\]]?)? ?"
    r"(?:more )?(?:rounds?|rnds?|rows?)) (?:of|in) (?=[a-z])(?!.*\bthen\b)"
)
_A_ROUND = "a round"
#: "(5 rounds)" beside a round that is worked so often
_ROUNDS_BESIDE = re.compile(
    rf"[(\[] ?{_NUMBER} (?:rounds?|rnds?|rows?)(?: total| in all| in total)? ?[)\]]"
)
_EACH_ROUND = re.compile(r"\b(?:each|every|per) (?:round|rnd|row)\b(?=\s*(?:[.,;()\[\]<{=-]|$))")
#: "until you have 20 sc", "until 2 sc rem"
_GOAL = re.compile(
    r"\b(?:until|till|to) (?:you have |there are )?(?P<n>\d+) (?:sts?|stitches|sc|dc|hdc|tr)\b"
    r"(?: (?:rem(?:ain)?(?:ing)?|are left|left))?"
)
#: "until there are 54 (60, 66) sts"
_GOALS = re.compile(
    r"\b(?:until|till|to) (?:you have |there are )?(?P<n>\d+) ?(?P<more>[(\[/][\d,/ :;-]+[)\]]?) ?"
    r"(?:sts?|stitches|sc|dc|hdc|tr)\b"
)
#: "continue to increase 6 stitches every round"
_GROWING = re.compile(
    r"\b(?P<way>inc|dec)(?:reas(?:e|ing))? (?P<n>\d+) (?:sts?|stitches) "
    r"(?:in |on )?(?:every|each) (?:round|rnd|row)\b"
)


#: "Rows 2 and 3 form the pattern.": said of rounds, and asking for none.
_FORMING = re.compile(
    r"^\W*(?:(?:the )?(?:last|above) )?(?:(?:\d+|two|three|four) )?(?:rounds?|rnds?|rows?)"
    r"(?: ?\d+(?:(?: ?(?:-|to|and|&|,) ?)+\d+)*)? "
    r"(?:forms?|sets?|makes?|establish(?:es)?|creates?|are|is)(?: up)? (?:the |your |one |this )*"
    r"(?:stitch )?(?:patt|pattern|pat)(?: repeat)?\b[^.,;]*[.,;]?"
)

#: "Continue in the same way, increasing 8 sts each round": no round before is worked again.
_GOES_ON = re.compile(r"^\W*(?:cont(?:inue)?|keep|carry on|work|go on|increas|decreas|inc|dec)\b")


def read_round(
    text: str, lexicon: Lexicon | None = None, *, terms: str = "US", sizes: int = 1
) -> RoundText:
    """Read the words of one round, without its label.

    Args:
        text: the instruction, on one line or several.
        lexicon: the words for stitches; the dictionary of ``terms`` when None.
        terms: "US" or "UK", used when no lexicon is given.
        sizes: how many figures a figure for all sizes has.

    Words that are not understood become `Unread` nodes; nothing is raised. So does a whole
    round of more than `MOST_LETTERS` letters, or with brackets nested deeper than `DEEPEST`.
    """
    if len(text) > MOST_LETTERS:
        return _unread(text, "has more words than one round is told in")
    if _HEADING.match(text):
        return RoundText(text, (Note(0, len(text)),))
    return _told(_dashes_as_none(text, sizes), lexicon or Lexicon(terms), sizes)


def _told(text: str, lexicon: Lexicon, sizes: int) -> RoundText:
    """A round that is told in so many words, what is said beside it apart."""
    said = remarks(text)
    if said:
        return _remarked(text, said, lexicon, sizes)
    last, other = in_last(text), likewise(text)
    if last is not None:
        rest = read_round(_blanked(text, last.start, last.end), lexicon, sizes=sizes)
        return replace(rest, text=text, last=RoundText(text, (last.shape,), last.stated))
    if other is not None:
        return RoundText(text, (), _stated_of(text, lexicon, sizes), other)
    asked = _asked(text)
    growing = _GROWING.search(plain(text))
    if growing is not None and (asked.goal or _GOES_ON.match(plain(text))):
        stated = None if asked.goal else _stated_of(asked.body, lexicon, sizes)
        return RoundText(text, (_grown(growing),), stated, even=asked.rounds, goal=asked.goal)
    first = AgainReader(asked.body, lexicon, sizes)
    if first.depth() > DEEPEST:
        return _unread(text, f"has more than {DEEPEST} brackets in one another")
    again = first.again()
    if again is not None and again.alike:
        goals = _goals(text, sizes)
        if goals:
            return RoundText(text, (), None, again, goals=goals)
    if again is None:
        return _one(text, asked, lexicon, sizes)
    stated = _stated_of(asked.body, lexicon, sizes)
    counted = stated is not None and stated.end > stated.start >= again.end
    body = _blanked(asked.body, stated.start, stated.end) if stated and counted else asked.body
    again = replace(again, altered=alters(body, again.end, lexicon, sizes))
    return RoundText(
        text, (), stated, again, asked.until, asked.rounds, asked.goal, often=asked.often
    )


def _remarked(text: str, said: tuple[Remark, ...], lexicon: Lexicon, sizes: int) -> RoundText:
    """A round with what is said once for all of its beginning chains."""
    rest = text
    for one in said:
        rest = _blanked(rest, one.start, one.end)
    found = read_round(rest, lexicon, sizes=sizes)
    return replace(found, text=text, chains=tuple(by_length(said).items()))


def _dashes_as_none(text: str, sizes: int) -> str:
    """The text with 0 for the dash of a size that has no figure: "- (-, 48) sts"."""
    found = list(text)
    for match in _DASHED.finditer(plain(text)) if sizes > 1 else ():
        if len(re.findall(r"\d+|-", match[0])) == sizes:
            for at in range(*match.span()):
                found[at] = "0" if plain(text[at]) == "-" else found[at]
    return "".join(found)


class _Asked(NamedTuple):
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


def _asked(text: str) -> _Asked:
    forming = _FORMING.match(plain(text))
    text = text if forming is None else _blanked(text, *forming.span())
    match = _UNTIL.search(plain(text))
    until, body = "", text
    if match is not None:
        begin, end = match.start(), _end_of_lengths(plain(text), match)
        besides = _BESIDES.search(plain(text), begin, end)
        end = end if besides is None else besides.start()
        until, body = text[begin:end].strip(), _blanked(text, begin, end)
    body, often = _each_size(body)
    body, rounds = _so_many(body)
    goal = _GOAL.search(plain(body))
    wanted = 0 if goal is None else int(goal["n"])
    return _Asked(body, until, rounds, wanted, often)


def _end_of_lengths(low: str, match: re.Match[str]) -> int:
    """Where words on a length end, with those of the other sizes in a bracket behind it."""
    more = _MORE_LENGTHS.search(low, match.start())
    if more is None or more.start("more") > match.end() or more.end() <= match.end():
        return match.end()
    most = _MOST_LONGER * int(more["first"])
    others = [int(n) for n in re.findall(r"(?<![\d.])\d+", more["more"])]
    return more.end() if len(others) > 1 and max(others) <= most else match.end()


def _one(text: str, asked: _Asked, lexicon: Lexicon, sizes: int) -> RoundText:
    """A round told in its own words."""
    even = _even_rounds(asked.body) or int(_goes_on_in(asked.body, lexicon))
    reader = Reader(asked.body, lexicon, sizes)
    nodes = reader.round()
    chain = foundation(asked.body) if not (_understood(nodes) or _works(nodes)) else None
    if chain is not None:
        nodes = (chain,)
    elif even:
        nodes = (Evenly((0,), 0, 0, len(text), reader.named_stitch()),)
    elif reader.split and reader.stated is not None:
        # Two counts on one line: which rounds each belongs to is not known.
        nodes = (*nodes, Unread("two printed counts", reader.stated.start, reader.stated.end))
    stated = reader.stated
    if all(isinstance(node, Note) for node in nodes):
        stated = stated or _stated_of(asked.body, lexicon, sizes)
    rounds = max(even, asked.rounds)
    return RoundText(text, nodes, stated, None, asked.until, rounds, often=asked.often)


def _understood(nodes: tuple[Node, ...]) -> bool:
    """Whether all words of a round were understood, and ask for something.

    Two chains and nothing else may be one: "chain 40 + 1 turning chain".
    """
    asked = [node for node in nodes if not isinstance(node, Note | Act)]
    chains = len(asked) > 1 and all(isinstance(node, Chain) for node in asked)
    return bool(asked) and not chains and not any(isinstance(node, Unread) for node in nodes)


def _works(nodes: tuple[Node, ...]) -> bool:
    """Whether anything is asked for besides chains."""
    return any(not isinstance(node, Note | Act | Unread | Chain) for node in nodes)


def _goals(text: str, sizes: int) -> Figure:
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
    text = _blanked(text, *found.span()) if found is not among else _as_one(text, found)
    return text, often


def _as_one(text: str, match: re.Match[str]) -> str:
    """The text with "a round" in place of how many rounds."""
    begin, end = match.span("often")
    return text[:begin] + _A_ROUND.ljust(end - begin) + text[end:]


def _so_many(text: str) -> tuple[str, int]:
    """The text without words on how many rounds are worked so, and that number (0: unsaid)."""
    for match in _EACH_ROUND.finditer(plain(text)):
        text = _blanked(text, *match.span())
    low = plain(text)
    among = _ROUNDS_IN.match(low)
    found = among or _SO_MANY.search(low) or _ROUNDS_OF.match(low)
    found = found or _ROUNDS_BESIDE.search(low)
    if found is None:
        return text, 0
    word = found["n"]
    text = _blanked(text, *found.span()) if found is not among else _as_one(text, found)
    return text, int(word) if word.isdigit() else NUMBER_WORDS[word]


def _grown(match: re.Match[str]) -> Evenly:
    """One of the rounds that grow or shrink by the same number of stitches."""
    change = 1 if match["way"] == "inc" else -1
    return Evenly((int(match["n"]),), change, match.start(), match.end())


def _unread(text: str, why: str) -> RoundText:
    """A round that is not even tried; ``why`` completes a sentence about it."""
    return RoundText(text, (Unread(text[:_SHOWN], 0, min(len(text), _SHOWN), why),))


def _blanked(text: str, begin: int, end: int) -> str:
    """The text with what stands from ``begin`` to ``end`` blanked out, so that columns keep."""
    return text[:begin] + " " * (end - begin) + text[end:]


def _stated_of(text: str, lexicon: Lexicon, sizes: int) -> Stated | None:
    """The last count in a line that otherwise only repeats rounds: in a bracket, or a sentence."""
    reader = Reader(text, lexicon, sizes)
    stated = None
    while not reader.done():
        before = reader.ahead(-1)
        found = None
        dash = before.text == "-" and text[before.end :][:1].isspace()
        if dash or before.text in (".", ";", "="):
            found = reader.closing_count(True)
        if found is None and reader.at > 1 and (sizes == 1 or before.type is not Type.NUMBER):
            found = reader.bracketed_count()
        stated = found or stated
        if found is None:
            reader.at += 1
    return stated


def _goes_on_in(text: str, lexicon: Lexicon) -> bool:
    """Whether the words only ask to go on in one stitch: "Continue in sc for 10 more rows"."""
    match = _GOES_ON_IN.match(plain(text))
    key = "" if match is None else lexicon.phrases.get(tuple(match["stitch"].split()), "")
    return bool(key) and bool(lexicon.stitch(key).height)


def _even_rounds(text: str) -> int:
    """How many rounds the words ask to work even; 0 where they ask for something else."""
    match = _EVEN.match(plain(text)) or _PLAIN_ROUNDS.match(plain(text))
    if match is None or _NOT_EVEN.search(plain(text), match.end()):
        return 0
    words = match.groupdict()
    word = words["number"] or words.get("count")
    if word is None:
        return 1
    return int(word) if word.isdigit() else NUMBER_WORDS[word]
