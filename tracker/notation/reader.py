"""The words of one round -> its instruction tree."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.notation.again import AgainReader
from tracker.notation.altered import alters
from tracker.notation.downto import down_to
from tracker.notation.edits import Edit, Edited, as_written
from tracker.notation.even import even_rounds, goes_on_in
from tracker.notation.extent import Extent, blanked, extent_of, goals_each, without_goal
from tracker.notation.foundations import foundation
from tracker.notation.grammar import Reader
from tracker.notation.lastly import in_last
from tracker.notation.lexicon import Lexicon, words_of
from tracker.notation.likewise import likewise
from tracker.notation.moving import Moving, moving
from tracker.notation.remarks import Remark, by_length, remarks
from tracker.notation.round_text import RoundText, Stated
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import Act, Chain, Deed, Evenly, Make, Node, Note, Unread

#: Longer instructions for one round are not written by people.
MOST_LETTERS = 5_000
#: Brackets in brackets deeper than this are not either.
DEEPEST = 12
#: "Shell:" on a line of its own is what the next rounds make.
_HEADING = re.compile(r"\s*[^\W\d][\w' ]{0,30}:\s*$")
#: Hyphens and joints that a page only shows where a line ends.
_UNSEEN = re.compile("\u00ad\n?|[\u200b\u200c\u200d\u2060\ufeff]+")
#: Letters shown of a round that is not even tried.
_SHOWN = 40
#: A figure for each size, of which one may be a dash.
_DASHED = re.compile(r"(?<![\w)\]-])(?:-|\d+)\s?[(\[](?:(?:-|\d+)\s?[,/;]\s?)*(?:-|\d+)[)\]]")
#: "continue to increase 6 stitches every round"
_GROWING = re.compile(
    r"\b(?P<way>inc|dec)(?:reas(?:e|ing))? (?P<n>\d+) (?:sts?|stitches) "
    r"(?:(?:spaced )?evenly )?(?:around )?(?:in |on )?(?:every|each) (?:round|rnd|row)\b"
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
    unseen = [Edit(*match.span(), "") for match in _UNSEEN.finditer(text)]
    if unseen:
        seen = Edited(text, unseen)
        return as_written(read_round(seen.text, lexicon, terms=terms, sizes=sizes), text, seen)
    if _HEADING.match(text):
        return RoundText(text, (Note(0, len(text)),))
    text, lexicon = _dashes_as_none(text, sizes), lexicon or Lexicon(terms)
    moved = moving(text)
    if moved is not None and (moved.extra or not text[: moved.start].strip()):
        return _moved(text, moved, lexicon, sizes)
    return _told(text, lexicon, sizes)


def _told(text: str, lexicon: Lexicon, sizes: int) -> RoundText:
    """A round that is told in so many words, what is said beside it apart."""
    said = remarks(text)
    if said:
        return _remarked(text, said, lexicon, sizes)
    last, other = in_last(text), likewise(text)
    if last is not None:
        rest = read_round(blanked(text, last.start, last.end), lexicon, sizes=sizes)
        return replace(rest, text=text, last=RoundText(text, (last.shape,), last.stated))
    if other is not None:
        return RoundText(text, (), _stated_of(text, lexicon, sizes), other)
    extent = extent_of(text)
    shaped = _shaped(text, extent, lexicon, sizes)
    if shaped is not None:
        return shaped
    first = AgainReader(extent.body, lexicon, sizes)
    if first.depth() > DEEPEST:
        return _unread(text, f"has more than {DEEPEST} brackets in one another")
    again = first.again()
    if again is not None and again.alike:
        goals = goals_each(text, sizes)
        if goals:
            return RoundText(text, (), None, again, goals=goals)
    if again is None:
        return _one(text, extent, lexicon, sizes)
    stated = _stated_of(extent.body, lexicon, sizes)
    if stated is not None and stated.end <= again.end and extent.body[stated.start].isdigit():
        stated = None  # the last of "Rep Rnds 5 - 6"
    counted = stated is not None and stated.end > stated.start >= again.end
    body = blanked(extent.body, stated.start, stated.end) if stated and counted else extent.body
    told = without_goal(body) if extent.goal else body
    again = replace(again, altered=alters(told, again.end, lexicon, sizes))
    return RoundText(
        text, (), stated, again, extent.until, extent.rounds, extent.goal, often=extent.often
    )


def _shaped(text: str, extent: Extent, lexicon: Lexicon, sizes: int) -> RoundText | None:
    """Rounds that shape by so many stitches each, or on and on to a count; None for others."""
    goal, way = down_to(text)
    if way:
        return RoundText(text, (), goal=goal, way=way)
    growing = _GROWING.search(plain(text))
    if growing is None or not (extent.goal or _GOES_ON.match(plain(text))):
        return None
    stated = None if extent.goal else _stated_of(extent.body, lexicon, sizes)
    return RoundText(text, (_grown(growing),), stated, even=extent.rounds, goal=extent.goal)


def _moved(text: str, moved: Moving, lexicon: Lexicon, sizes: int) -> RoundText:
    """A round behind which stitches only move the start, or those stitches alone."""
    if text[: moved.start].strip():
        rest = blanked(text, moved.start, moved.end)
        return replace(_told(rest, lexicon, sizes), text=text)
    begin, end = moved.stitch
    key = lexicon.phrases.get(words_of(text[begin:end]), "sc")
    count = Make(lexicon.stitch(key), (moved.number,), None, moved.start, moved.end)
    nodes = (count, Act(Deed.START, moved.start, moved.end))
    return RoundText(text, nodes, _stated_of(text, lexicon, sizes))


def _remarked(text: str, said: tuple[Remark, ...], lexicon: Lexicon, sizes: int) -> RoundText:
    """A round with what is said once for all of its beginning chains."""
    rest = text
    for one in said:
        rest = blanked(rest, one.start, one.end)
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


def _one(text: str, extent: Extent, lexicon: Lexicon, sizes: int) -> RoundText:
    """A round told in its own words."""
    even = even_rounds(extent.body) or int(goes_on_in(extent.body, lexicon))
    reader = Reader(extent.body, lexicon, sizes)
    nodes = reader.round()
    chain = foundation(extent.body) if not (_understood(nodes) or _works(nodes)) else None
    if chain is not None:
        nodes = (chain,)
    elif even:
        nodes = (Evenly((0,), 0, 0, len(text), reader.named_stitch()),)
    elif reader.split and reader.stated is not None:
        # Two counts on one line: which rounds each belongs to is not known.
        nodes = (*nodes, Unread("two printed counts", reader.stated.start, reader.stated.end))
    stated = reader.stated
    if even or all(isinstance(node, Note) for node in nodes):
        stated = stated or _stated_of(extent.body, lexicon, sizes)
    rounds = max(even, extent.rounds)
    whole = RoundText(text, nodes, stated, None, extent.until, rounds, often=extent.often)
    if stated is None and extent.until and _only_shapes(nodes):
        return replace(whole, nodes=(_shapes_on(text, nodes),))
    return _shaped_behind(whole) if extent.until else whole


def _only_shapes(nodes: tuple[Node, ...]) -> bool:
    """Whether one increase or decrease is all that is asked for: "Dec until hole is closed"."""
    work = [node for node in nodes if not isinstance(node, Note | Act)]
    made = work[0] if len(work) == 1 else None
    if not isinstance(made, Make) or made.numbered or made.target is not None:
        return False
    return made.stitch.takes != made.stitch.makes or made.stitch.us == "inc"


def _shapes_on(text: str, nodes: tuple[Node, ...]) -> Unread:
    """The words of the one stitch that is worked on and on, for it is not said how often."""
    made = next(node for node in nodes if isinstance(node, Make))
    words = text[made.start : made.end]
    return Unread(words, made.start, made.end, "does not say how many stitches it makes")


def _shaped_behind(read: RoundText) -> RoundText:
    """The round that shapes what was worked to a length, apart: "… for 9 cm, then dec 4 sts"."""
    worked = [node for node in read.nodes if not isinstance(node, Note | Act)]
    last = worked[-1] if len(worked) > 1 else None
    if not isinstance(last, Evenly) or not last.change:
        return read
    before = tuple(node for node in read.nodes if node.start < last.start)
    behind = tuple(node for node in read.nodes if node.start >= last.start)
    shaped = RoundText(read.text, behind, read.stated)
    return replace(read, nodes=before, stated=None, last=shaped)


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


def _grown(match: re.Match[str]) -> Evenly:
    """One of the rounds that grow or shrink by the same number of stitches."""
    change = 1 if match["way"] == "inc" else -1
    return Evenly((int(match["n"]),), change, match.start(), match.end())


def _unread(text: str, why: str) -> RoundText:
    """A round that is not even tried; ``why`` completes a sentence about it."""
    return RoundText(text, (Unread(text[:_SHOWN], 0, min(len(text), _SHOWN), why),))


def _stated_of(text: str, lexicon: Lexicon, sizes: int) -> Stated | None:
    """The last count in a line that otherwise only repeats rounds: in a bracket, or a sentence."""
    reader = Reader(text, lexicon, sizes)
    stated = None
    while not reader.done():
        before = reader.ahead(-1)
        found = None
        dash = before.text == "-" and text[before.end :][:1].isspace()
        told = before.text == "," and reader.here.text in ("there", "you", "each", "giving")
        if dash or told or before.text in (".", ";", "="):
            found = reader.closing_count(True)
        if found is None and reader.at > 1 and (sizes == 1 or before.type is not Type.NUMBER):
            found = reader.bracketed_count()
        stated = found or stated
        if found is None:
            reader.at += 1
    return stated
