"""Reading how far a repeat goes by what there is then: "until you have 6 groups of 4 dc"."""

from __future__ import annotations

from tracker.notation.deeds import Deeds
from tracker.notation.tokens import Type
from tracker.notation.tree import Figure, Upto
from tracker.notation.wordlists import BUNCHES, CHAIN_WORDS, SPACE_WORDS, STITCH_WORDS

#: What a repeat makes one of each time, besides `BUNCHES`.
_THINGS = BUNCHES | frozenset(
    [
        "set",
        "sets",
        "picot",
        "picots",
        "cluster",
        "clusters",
        "point",
        "points",
        "spoke",
        "spokes",
        "ray",
        "rays",
        "bar",
        "bars",
        "block",
        "blocks",
        "bump",
        "bumps",
        "wave",
        "waves",
        "arm",
        "arms",
        "ruffle",
        "ruffles",
        "flower",
        "flowers",
        "section",
        "sections",
        "star",
        "stars",
    ]
)


class Reached(Deeds):
    """Rules for the number of things at which a repeat stops."""

    def made_by_then(self, count: Figure) -> Upto | None:
        """``[size] thing ["of" size] [words]`` behind a figure; None where it is no such thing"""
        mark = self.at
        self.accept_any("total", "complete", "whole", "full", "such", "more")
        if self.ahead(-1).text == "more":
            self.at = mark
            return None
        size = self._size()
        found = self._thing(count, size)
        if found is None:
            self.at = mark
            return None
        self.to_clause_end()
        return found

    def _thing(self, count: Figure, size: int) -> Upto | None:
        """``space | name_of_group ["of" size]``"""
        if self.accept_any(*_THINGS):
            if self.accept_any("of", "with"):
                size = self._size() or size
            return Upto(count, "bunch", size)
        kind = self._space_made()
        return Upto(count, kind) if kind else None

    def _space_made(self) -> str:
        """``["ch" "-" number] ("sp" | "loop" …)``: the kind of space; "" for none"""
        mark = self.at
        length = 0
        chain = self.accept_any(*CHAIN_WORDS)
        self.accept("-")
        if self.here.type is Type.NUMBER:
            length = self.here.value
            self.at += 1
            self.accept("-")
            chain = self.accept_any(*CHAIN_WORDS) or chain
            self.accept("-")
        if self.accept_any(*SPACE_WORDS) and (chain or not length):
            return f"ch-{length} sp" if length else "sp"
        self.at = mark
        return ""

    def _size(self) -> int:
        """``figure ["-"] stitch``: of how many stitches a group is; 0 for other words"""
        mark = self.at
        if self.here.type is Type.NUMBER:
            size = self.here.value
            self.at += 1
            self.accept("-")
            if self.accept_any(*STITCH_WORDS) or self.accept_phrase(self.lexicon.phrases):
                self.accept("(", "s", ")")
                self.accept_any("s", "-")
                return size
        self.at = mark
        return 0
