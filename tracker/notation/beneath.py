"""Reading how far down a place is: "of the previous round", "2 rounds below", "base of ch"."""

from __future__ import annotations

from collections.abc import Mapping

from tracker.notation.kit import Kit
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import Type
from tracker.notation.wordlists import CHAIN_WORDS, ROUND_WORDS, STITCH_WORDS

#: What stitches are of as those of a round are: "every stitch of the ring".
_RINGS = ("ring", "circle", "centre", "center", "disc")


class Beneath(Kit):
    """Rules for words behind a place. ``at_base`` is set where they name the base of a chain."""

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, sizes)
        self.lexicon = lexicon
        #: the round that the words behind a place name; below 0 so many further down
        self._below = 0
        self.at_base = False

    def accept_phrase(self, phrases: Mapping[tuple[str, ...], str]) -> str | None:
        """The longest phrase that stands here; what it means, or None."""
        # Asked for at each word, and mostly in vain.
        if self.tokens[self.at].text not in self.lexicon.firsts:
            return None
        return super().accept_phrase(phrases)

    def kind_of_stitch(self) -> None:
        """Read the name of a stitch, if one stands here."""
        if not self.accept_any(*STITCH_WORDS):
            self.accept_phrase(self.lexicon.phrases)

    def _suffix(self) -> None:
        """Words after a kind that add nothing: "of the previous round", "below", "made"."""
        while True:
            mark = self.at
            if self.accept("you"):
                while self.here.type is Type.WORD and self.here.text != "and":
                    self.at += 1
            self.accept_any("made", "below", "worked", "located")
            if self._further():
                return
            if self.accept_any("of", "from", "in", "on"):
                self.accept_any("the")
                self.accept_any("previous", "prev", "last", "below")
                ringed = self.tokens[mark].text == "of" and _RINGS
                if not self.accept_any(*ROUND_WORDS, *(ringed or ())):
                    self.at = mark
                else:
                    self._below = self.accept_number() or 0
                    self.accept_any("below")
            if self.at == mark:
                return
            if self.tokens[self.at - 1].text in ("of", "from", "in", "on", "the"):
                self.at = mark
                return

    def _further(self) -> bool:
        """``["from"] "behind" words | figure "rounds below" | base of chain``"""
        if self.here.text == "from" and self.ahead().text in ("behind", "back"):
            self.at += 2
            return True
        if self.accept("from", "the", "back") or self.accept("from", "the", "front"):
            return True
        if self.accept("behind"):
            self.to_clause_end()
            return True
        self.at_base = self._base_of_chain()
        return self.at_base or self._rounds_down()

    def _rounds_down(self) -> bool:
        """``figure "rounds" ("below" | "down" | "back")``: a place further down, from two on"""
        mark = self.at
        down = self.accept_number()
        if down and self.accept_any(*ROUND_WORDS) and self.accept_any("below", "down", "back"):
            self._below = -down if down > 1 else 0
            if self.accept_any("next", "current", "this"):
                self.kind_of_stitch()
            return True
        self.at = mark
        return False

    def _base_of_chain(self) -> bool:
        """``"at" ["the"] "base" ["of" [number] "ch"]``: the stitch the chain stands on"""
        mark = self.at
        if self.accept_any("at", "in"):
            self.accept_any("the", "its")
            if self.here.text == "base" and self.ahead().text in (",", ";", ".", ""):
                self.at += 1
                return True
            if self.accept("base", "of"):
                self.accept_any("the", "beg", "turning", "starting")
                self.accept_number()
                if self.accept_any(*CHAIN_WORDS):
                    self.accept("-")
                    self.accept_number()
                    return True
        self.at = mark
        return False
