"""Reading what a text says of its own stitches: "Shell: 5 dc in same st"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from tracker.notation.closed import closed, counts_as
from tracker.notation.dictionary import STITCHES
from tracker.notation.grammar import Reader
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.lexicon import Lexicon, words_of
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import plain
from tracker.notation.tree import At, Chain, Group, Make, Node, Note, Repeat, Skip

_HEADER = re.compile(
    r"^\s*(?:special\s+(?:stitch(?:es)?|sts?|abbreviations?)|abbreviations?(?:\s+used)?"
    r"|stitch(?:es)?\s+(?:guide|used|key))\s*(?:$|:\s*(?P<rest>.*)$)",
    re.IGNORECASE,
)
#: "sc - single crochet": a dash with blanks round it parts a short name from its meaning.
_DASH = r"\s[-\u2013\u2014]\s"
_ENTRY = re.compile(
    rf"(?:^|(?<=[.;])\s+|(?<=\n)|(?<=,)\s+(?=[A-Za-z][\w ]{{0,12}}(?:\s*=|{_DASH})))\s*"
    rf"(?P<name>[^\W_][\w/'\" ()-]{{0,40}}?)(?:\s*[:=]\s+|(?<![\w ]{{13}}){_DASH})",
    re.MULTILINE,
)
#: A list of stitches by their full names, wherever it stands: "X - single crochet, V - increase".
_NAMED = re.compile(
    rf"\s*(?:[a-z.]{{1,5}}(?: ?st\.?)?(?:\s*[=:]\s*|{_DASH})(?P<meaning>[a-z ]{{7,40}})"
    r"(?:\([^()]{0,60}\))?\s*(?:[,;.]\s*|$))+$"
)
_MEANING = re.compile(rf"(?:[=:]|{_DASH})\s*(?P<meaning>[a-z ]{{7,40}}?)\s*(?:[,;.(]|$)")
_NUMBER = r"(?P<{0}>\d+|one|two|three|four|five|six)"
#: Where a stitch of the text's own goes: "in one st", "in st or sp indicated".
_PLACE = re.compile(
    r"\b(?:worked |all )*in(?:to)? (?:(?:one|a|an|the|same|next|1|any|each"
    r"|indicated|specified|designated|given|required|stated) )*"
    r"(?:(?:ch-\d|dc|sc|hdc|tr|indicated) )?(?:st|sp|stitch|place|space|ch|loop)\b.*"
)
#: Words that pass over places, and what a stitch counts as.
_SKIPS = re.compile(r"\b(?:sk|skip|miss)\b")
_COUNTED = re.compile(r"[.;,]? *\(?counts? as [^.;]*", re.IGNORECASE)
_ONE_PLACE = re.compile(
    r"\bin(?:to)? (?:the )?(?:one|same|next|1|a|any) (?:ch-\d )?(?:st|sp|stitch|space|place)\b"
)
_TAKES = re.compile(r"\btakes " + _NUMBER.format("takes"))
_MAKES = re.compile(r"\bmakes " + _NUMBER.format("makes"))
#: Names of what stands at the beginning of a round, whose first chain stands for a stitch.
_BEGINS = re.compile(r"(?:beg(?:inning)?|first|start(?:ing)?)\b", re.IGNORECASE)
_SPACES = re.compile(r"(?P<n>\d+|a|an|one|two|three)\s+ch-(?P<length>\d+) spaces?\b")
_OVER = re.compile(
    r"\b(?:over|work(?:ed)?|crochet)\s+(?P<n>\d|two|three)\s+(?:sts?|stitches)\b"
    r"|2 (?:sts|stitches) tog"
)


def split_definitions(text: str) -> tuple[str, str]:
    """``(definitions, rest)``: the paragraph under a heading such as "Special stitches:".

    The rest keeps its lines where they were: definitions are blanked out.
    """
    lines, found, kept, inside = text.split("\n"), [], [], False
    for line in lines:
        header = _HEADER.match(line)
        if header is not None:
            rest = (header["rest"] or "").rstrip()
            inside = not rest or rest[-1] in ",;"
            found.append(rest)
            kept.append("")
        elif (inside and line.strip()) or _names_stitches(line):
            found.append(line)
            kept.append("")
        else:
            inside = False
            kept.append(line)
    return "\n".join(found), "\n".join(kept)


def _names_stitches(line: str) -> bool:
    """Whether a line only says what stitches are called, by names of the dictionary."""
    low = plain(line)
    if not _NAMED.match(low):
        return False
    names = {" ".join(stitch.name.split()) for stitch in STITCHES.values()}
    meanings = [match["meaning"] for match in _MEANING.finditer(low)]
    return bool(meanings) and all(meaning.removesuffix(" stitch") in names for meaning in meanings)


def define(definitions: str, lexicon: Lexicon) -> None:
    """Add to ``lexicon`` every stitch that ``definitions`` explain well enough to count."""
    for names, meaning in _entries(definitions):
        _define_one(names[0], names[1:], meaning, lexicon)


def _entries(text: str) -> Iterator[tuple[list[str], str]]:
    found = list(_ENTRY.finditer(text))
    for i, match in enumerate(found):
        end = found[i + 1].start() if i + 1 < len(found) else len(text)
        names = [n.strip() for n in re.split(r"[/()]", match["name"]) if n.strip()]
        yield names, text[match.end() : end].strip()


def _define_one(name: str, others: list[str], meaning: str, lexicon: Lexicon) -> None:
    """``name ["/" others] ":" (ring | stitch | "takes" … | instruction)``"""
    low = plain(meaning)
    if re.match(r"(?:an? )?(?:magic|adjustable) (?:ring|circle|loop)", low):
        lexicon.rings.add(name.lower())
        return
    known = _alias(low, lexicon)
    if known is not None:
        if words_of(name) not in lexicon.phrases or lexicon.phrases[words_of(name)] != known:
            lexicon.alias(name, known)
        return
    stitch = _counted(name, low) or closed(name, low) or _worked(name, meaning, lexicon)
    if stitch is None and ";" in meaning:
        stitch = _worked(name, meaning.split(";", 1)[0], lexicon)
    told = counts_as(low)
    if stitch is not None and told and _MAKES.search(low) is None:
        stitch = stitch._replace(makes=told)
    if stitch is not None:
        # A stitch of the dictionary keeps its key, and takes the text's own meaning.
        spellings = [name, *others]
        keys = [lexicon.phrases.get(words_of(spelling)) for spelling in spellings]
        us = next((key for key in keys if key is not None), "")
        abbr = _abbreviated(spellings)
        full = next((spelling for spelling in spellings if spelling != abbr), abbr)
        lexicon.add(stitch._replace(abbr=abbr, name=full, us=us), *others)


def _abbreviated(spellings: Sequence[str]) -> str:
    """The one that rounds use: of "knot stitch (ks)" the short one, in front or behind."""
    short = min(spellings, key=len)
    return short if " " not in short else spellings[0]


def _alias(low: str, lexicon: Lexicon) -> str | None:
    """The stitch that the words simply name, as in "tc: abbreviation for the UK treble"."""
    tail = re.sub(r"^.*\babbreviation for\b|\([^()]*\)", "", low)
    tail = re.sub(r"\b(?:the|an?|uk|us)\b|[.;,]", " ", tail)
    return lexicon.phrases.get(words_of(tail.strip()))


def _counted(name: str, low: str) -> Stitch | None:
    """Takes and makes where the words give them: "takes 2, makes 1"."""
    takes, makes = _TAKES.search(low), _MAKES.search(low)
    if makes is None:
        return None
    spaces: list[int] = []
    for match in _SPACES.finditer(low):
        spaces += [int(match["length"])] * min(_figure(match["n"]), 9)
    return Stitch(
        name,
        name,
        _figure(takes["takes"]) if takes else 1,
        _figure(makes["makes"]),
        spaces=tuple(spaces),
    )


def _figure(word: str) -> int:
    return int(word) if word.isdigit() else NUMBER_WORDS.get(word, 1)


def _worked(name: str, meaning: str, lexicon: Lexicon) -> Stitch | None:
    """Takes and makes from the instruction itself: "2 dc, ch 1, 2 dc in one place"."""
    low = plain(meaning)
    over = _OVER.search(low)
    if over is not None:
        n = _figure(over["n"]) if over["n"] else 2
        return Stitch(name, name, n, 1)
    words = meaning if _SKIPS.search(low) else _PLACE.sub(_without_place, meaning)
    reader = Reader(_COUNTED.sub("", words), lexicon)
    nodes = [n for n in reader.round() if not isinstance(n, Note)]
    begins = _BEGINS.match(name)
    found = _summed(name, _begun(nodes) if begins else nodes) if nodes else None
    if found is not None and found.takes > 1 and _ONE_PLACE.search(low) and words != meaning:
        return found._replace(takes=1)  # "cl: dc3tog in same sp"
    return found


def _without_place(match: re.Match[str]) -> str:
    """Nothing; behind a bracket some place, so that it is not read as a printed count."""
    return "in next st" if match.string[: match.start()].rstrip().endswith((")", "]")) else ""


def _flat(nodes: Sequence[Node]) -> Iterator[Node]:
    """The nodes, with what goes into one place one after another."""
    for node in nodes:
        if isinstance(node, Group) or (isinstance(node, Repeat) and node.implied):
            yield from _flat(node.body)
        else:
            yield node


def _begun(nodes: Sequence[Node]) -> Sequence[Node]:
    """The same with the chain at its start as what it stands for: "ch 4, dc" is dc, ch 1, dc.

    It is nothing by itself where it is drawn together with what follows, as in a cluster.
    """
    flat = list(_flat(nodes))
    first = next((n for n in flat if isinstance(n, Make)), None)
    chain = flat[0] if flat else None
    if first is None or not isinstance(chain, Chain) or chain.counts is not None:
        return nodes
    if chain.count[0] == 1 or first.stitch.takes > 1:
        return flat[1:]
    over = chain.count[0] - first.stitch.height
    rest = [replace(chain, count=(over,)), *flat[1:]] if over > 0 else flat[1:]
    return [replace(chain, counts=True), *rest]


def _into_hook(node: Node) -> bool:
    return isinstance(node, Make) and node.target is not None and node.target.at is At.HOOK


def _summed(name: str, nodes: Sequence[Node]) -> Stitch | None:
    """One stitch that takes and makes what the instructions do together."""
    makes, spaces, takes, placed, skipped = 0, [], 1, 0, 0
    if any(_into_hook(node) for node in nodes):
        return Stitch(name, name, 0, 0)  # chains closed to a picot
    for node in _not_held(nodes):
        if isinstance(node, Make):
            makes += _number(node) * node.stitch.makes
            takes = max(takes, node.stitch.takes)
            placed += 0 if _aside(node) else _places(node)
        elif isinstance(node, Skip):
            skipped += node.count[0]
        elif isinstance(node, Chain) and node.counts:
            makes += 1
        elif isinstance(node, Chain):
            spaces.append(node.count[0])
        elif not isinstance(node, Note):
            return None
    if not makes or makes > 40:
        return None
    if skipped:
        takes = placed + skipped
    return Stitch(name, name, takes, makes, spaces=tuple(spaces))


def _not_held(nodes: Sequence[Node]) -> list[Node]:
    """The nodes without slip stitches that only hold others down: "sl st, ch 2, 2 dc"."""
    flat = list(_flat(nodes))
    if all(node.stitch.us == "sl st" for node in flat if isinstance(node, Make)):
        return flat
    return [n for n in flat if not (isinstance(n, Make) and n.stitch.us == "sl st")]


def _number(node: Make) -> int:
    """How many stitches a part of a definition asks for."""
    places = node.target.count if node.target is not None else None
    if places is None or (node.numbered and node.count == places):
        return node.count[0]
    return node.count[0] * places[0]


def _aside(node: Make) -> bool:
    """Whether a stitch goes where it uses nothing up: into one passed over, or the same."""
    return node.target is not None and node.target.at in (At.SKIPPED, At.SAME, At.BELOW)


def _places(node: Make) -> int:
    """How many places a stitch of a definition uses up."""
    if node.target is None or node.target.count is None:
        return node.stitch.takes * (node.count[0] if node.target is None else 1)
    return node.target.count[0]
