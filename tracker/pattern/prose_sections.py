"""The lines of a text -> its sections: materials, gauge, parts, making up and the rest."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from tracker.fabric.trees import unread_in, works
from tracker.notation.lexicon import Lexicon, words_of
from tracker.notation.lines import Line
from tracker.notation.reader import read_round
from tracker.notation.tree import Act, At, Chain, Deed, Group, Make, Node, Note, Skip
from tracker.notation.wordlists import NAMES
from tracker.pattern.prose_headings import Kind, is_end, known_heading, text_of_heading
from tracker.pattern.prose_lines import Said, label_of

#: Lines of a part that may stand between its heading and its first round.
_LEAD = 8
_LONGEST_HEADING = 60
_MOST_WORDS = 8
#: What a line between a part's heading and its first round speaks of, without a full stop.
_ASIDE = re.compile(
    r"[(\[].*[)\]]"
    r"|(?:with|using|use|in|start(?:ing)?|begin(?:ning)?|work(?:ed|ing)?|make|crochet(?:ed)?) .*"
    r"|x ?\d+|.*\b(?:yarns?|colou?r|hook|wool|cotton|thread)\b.*",
    re.IGNORECASE,
)


#: "Inc = 2 dc in same st.", behind the rounds
_DEFINES = re.compile(r"([A-Za-z][\w ]{0,20}) = (?!\d+ ?(?:sts?|stitches)?[.!]?$)\S")
_NAMED = re.compile(r"([A-Za-z][A-Za-z' ]{1,28}(?: ?\([^()]*\)| ?x ?\d+)?) ?[:–—-] +(.+)$")
_NO_NAMES = ("note", "tip", "hint", "then", "next", "repeat", "start", "begin", "foundation")
#: Fewer chains may go over an opening of the part before.
_LEAST_CHAIN = 8
_ENTRY = re.compile(r"[:=]\s*\S|\s[–-]\s")


#: What ends where work begins, though no heading says so.
_ASIDES = (Kind.ABBREVIATIONS, Kind.NOTES, Kind.MATERIALS, Kind.GAUGE, Kind.SIZES)


@dataclass(slots=True)
class Section:
    """Lines that belong together, under the heading they stand under ("" for none).

    ``inline``: its heading and words share a line, its first, so that it ends with the
    paragraph.
    """

    kind: Kind
    heading: str = ""
    lines: list[Said] = field(default_factory=list)
    inline: bool = False


def sections(lines: Sequence[Said], terms: str) -> list[Section]:
    """All sections, in order; the first holds what stands before any heading."""
    return _Splitter(lines, Lexicon(terms)).split()


class _Splitter:
    """Goes through the lines once; ``part`` is the latest part, ``top`` its highest number."""

    def __init__(self, lines: Sequence[Said], lexicon: Lexicon) -> None:
        self.lines = lines
        self.lexicon = lexicon
        self.found = [Section(Kind.FRONT)]
        self.part: Section | None = None
        self.top = 0
        self.works: dict[str, bool] = {}

    @property
    def here(self) -> Section:
        return self.found[-1]

    def split(self) -> list[Section]:
        for index, said in enumerate(self.lines):
            self._line(index, said)
        return self.found

    def _line(self, index: int, said: Said) -> None:
        label = label_of(said.text)
        known = None if label is not None and label.kind else known_heading(said.text)
        if known is not None and self._opens(known, said):
            return
        if label is not None and self.top and self._names_piece(index, label):
            words = said.text[len(label.label) :].lstrip(":.- ")
            self._open(Section(Kind.PART, label.label, [replace(said, text=words)]))
        elif label is not None and (label.kind or self._numbered_work(said)):
            self._round(said, label.first, label.last, label.label)
        elif known is None and self._is_heading(index, said):
            self._open(Section(Kind.PART, said.text))
        elif label is None and self._defines(said):
            self._open(Section(Kind.ABBREVIATIONS, lines=[said], inline=True))
        elif label is None and said.apart and self._is_last_heading(index, said.text):
            self._open(Section(Kind.MAKING_UP, said.text))
        elif label is None and (piece := self._piece(said)):
            self._open(Section(Kind.PART, piece[1], [replace(said, text=piece[2])]))
        else:
            self._add(said)

    def _opens(self, known: tuple[Kind, str], said: Said) -> bool:
        """Open a section that the trade has a name for; False for an aside within a part."""
        kind, rest = known
        if rest and kind is Kind.NOTES and self.here.kind is Kind.PART:
            return False
        if rest and kind is Kind.MATERIALS and self._at_top():
            return False
        if not rest:
            self._open(Section(kind, said.text))
        elif kind is Kind.PART:
            self._open(Section(kind, lines=[replace(said, text=rest)]))
        else:
            self._open(Section(kind, lines=[said], inline=True))
        return True

    def _open(self, section: Section) -> None:
        self.found.append(section)
        if section.kind is Kind.PART:
            self.part, self.top = section, 0

    def _add(self, said: Said) -> None:
        """A line without label or heading."""
        if self.here.inline and said.apart:
            back = self.here.kind is Kind.MAKING_UP
            self._open(Section(Kind.MAKING_UP if back else Kind.NOTES))
        if said.apart and self.here.kind in _ASIDES and self._begins_work(said.text):
            self._open(Section(Kind.PART))
        self.here.lines.append(said)

    def _defines(self, said: Said) -> bool:
        """Whether a line explains an abbreviation: "Inc = 2 dc in same st."."""
        match = _DEFINES.match(said.text)
        if match is None or self.part is None:
            return False
        return said.apart or self._is_stitch(match[1])

    def _names_piece(self, index: int, label: Line) -> bool:
        """Whether a label such as "Body:" is followed by the first round of that."""
        after = self.lines[index + 1 : index + 2]
        following = label_of(after[0].text) if after else None
        named = label.label.lower() in NAMES
        return named and following is not None and following.first == 1

    def _piece(self, said: Said) -> re.Match[str] | None:
        """The name and the work of a small piece told on one line: "Tail (pink): ch 20, …"."""
        match = _NAMED.match(said.text)
        if match is not None and (match[1].lower() in _NO_NAMES or self._is_stitch(match[1])):
            return None
        nodes = read_round(match[2], self.lexicon).nodes if match else ()
        worked = [node for node in nodes if not isinstance(node, Act | Note)]
        chain = worked[0] if worked else None
        long = isinstance(chain, Chain) and chain.count[0] >= _LEAST_CHAIN
        alone = long and said.apart and not any(isinstance(node, Skip) for node in worked)
        return match if alone or any(map(_is_ring, nodes)) else None

    def _is_stitch(self, words: str) -> bool:
        return words_of(words) in self.lexicon.phrases

    def _begins_work(self, text: str) -> bool:
        """Whether a line without label makes a chain or a ring, as a part begins."""
        nodes = read_round(text, self.lexicon).nodes
        begins = any(isinstance(n, Chain) or _is_ring(n) for n in nodes)
        return begins and not unread_in(nodes) and _ENTRY.search(text) is None

    def _round(self, said: Said, first: int, last: int, label: str) -> None:
        """A round goes on with the part, or begins one where the numbers begin again."""
        again = first == 1 and self.top >= 1
        if self.part is None or again or (first == 1 and self.here.kind is not Kind.PART):
            self._open(Section(Kind.PART, _prefix(label)))
        elif self.here is not self.part:
            self._reopen(first)
        assert self.part is not None
        self.part.lines.append(said)
        self.top = max(self.top, last)

    def _reopen(self, first: int) -> None:
        """Rounds after an aside go on with the part before it."""
        assert self.part is not None
        if self.here.kind is Kind.MAKING_UP and not first:
            self._open(Section(Kind.PART))
            return
        self.found.remove(self.part)
        self.found.append(self.part)

    def _numbered_work(self, said: Said) -> bool:
        """Whether a line numbered without a word ("7.") is a round, not an item of a list."""
        label = label_of(said.text)
        if label is None or self.here.kind in (Kind.MATERIALS, Kind.ABBREVIATIONS):
            return False
        read = read_round(said.text[len(label.label) :].lstrip(":.)- "), self.lexicon)
        if self.here.kind is Kind.PART and self.top:
            return True
        return (works(read.nodes) and not unread_in(read.nodes)) or read.stated is not None

    def _is_heading(self, index: int, said: Said) -> bool:
        """Whether a line names what follows it: a heading of Markdown, or a short line alone."""
        if said.rank:
            return True
        text = said.text
        if self._at_top() and _ASIDE.fullmatch(text.strip(" *_:")):
            return False
        bare = re.sub(r"\([^()]*\)", "", text)
        if said.bullet or len(text) > _LONGEST_HEADING or len(bare.split()) > _MOST_WORDS:
            return False
        entry = self.here.kind is Kind.ABBREVIATIONS and _ENTRY.search(text)
        if text[-1] in ".,;!?" or entry or self._is_work(bare.strip() or text):
            return False
        return self._leads(index, said)

    def _is_last_heading(self, index: int, text: str) -> bool:
        """Whether a line heads what is to be done after the rounds, such as "POM POM"."""
        shouted = re.sub(r"\([^()]*\)", "", text).isupper()
        if not self.top or not shouted or len(text) > _LONGEST_HEADING or is_end(text):
            return False
        labels = map(label_of, (after.text for after in self.lines[index + 1 :]))
        following = next((label.first for label in labels if label is not None), 1)
        return following <= 1 and not self._is_work(text)

    def _at_top(self) -> bool:
        """Whether the heading of a part stands just before, and none of its rounds."""
        return self.here.kind is Kind.PART and self.here.heading != "" and not self.here.lines

    def _leads(self, index: int, said: Said) -> bool:
        """Whether a first round follows before long."""
        for after in self.lines[index + 1 : index + 1 + _LEAD]:
            label = label_of(after.text)
            if label is not None:
                first = label.first == 1 or (label.first == self.top + 1 and said.apart)
                return first or (not label.first and not self.top)
            if self._is_work(after.text):
                return said.apart or text_of_heading(said.text)
            known = known_heading(after.text)
            if known is not None and known[0] is Kind.MATERIALS and known[1]:
                continue
            if known is not None or after.rank or after.apart:
                return False
        return False

    def _is_work(self, text: str) -> bool:
        if text not in self.works:
            self.works[text] = is_work(text, self.lexicon)
        return self.works[text]


def is_work(text: str, lexicon: Lexicon) -> bool:
    """Whether unlabelled words are fully read as something that is worked."""
    read = read_round(text, lexicon)
    if read.again is not None or read.even or read.until:
        return True
    return works(read.nodes) and not unread_in(read.nodes)


def _is_ring(node: Node) -> bool:
    if isinstance(node, Make | Group):
        return node.target is not None and node.target.at is At.RING
    return isinstance(node, Act) and node.deed is Deed.RING


def _prefix(label: str) -> str:
    """What a label says before its kind: "Band" of "Band Row 1"."""
    match = re.match(r"([A-Za-z][A-Za-z' ]*?)[ -]+(?:rounds?|rnds?|rows?)\b", label, re.IGNORECASE)
    return match[1] if match else ""
