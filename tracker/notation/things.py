"""Reading how many petals, spikes or tentacles there are in the end, and what comes of a repeat."""

from __future__ import annotations

from dataclasses import dataclass

from tracker.notation.bunches import named
from tracker.notation.reached import Reached
from tracker.notation.round_text import Stated
from tracker.notation.tokens import Type
from tracker.notation.tree import Figure, More, Target, Upto

#: Said of what is finished.
DONE = frozenset(
    ("made", "formed", "worked", "joined", "done", "used", "filled", "completed", "complete")
)


@dataclass(frozen=True, slots=True)
class Tail:
    """What stands behind a repeated body: how often, until where, how it ends."""

    times: Figure | None = None
    more: More = More.TOTAL
    leave: Figure | None = None
    kind: str = "st"
    omit: int = 0
    target: Target | None = None
    until: str = ""
    upto: Upto | None = None


class Things(Reached):
    """Rules for what is made of several stitches.

    ``things``: how many of them the words say there are in the end.
    """

    things: Stated | None = None

    def more_things(self) -> Tail | None:
        """``"make" figure ("more" | "other" …) things ["in" "the" "same" "way" | "so"]``"""
        mark = self.at
        self.accept_any("now", "then")
        if self.accept_any("make", "work", "crochet", "do"):
            figure = self.accept_figure()
            if figure and self.accept_any("more", "other", "further", "additional"):
                things = named([self.here.text]) == "bunch" or self.here.text in ("times", "of")
                self.at += things
                self.accept_all("these", "them", "those")
                self.accept_all("in", "the", "same", "this", "way", "manner", "like", "just", "as")
                self.accept_all("before", "first", "one", "that")
                if things and (self._clause_is_over() or self.here.text == "around"):
                    self.accept_any("around")
                    return Tail(figure, More.MORE)
        self.at = mark
        return None

    def _so_many_things(self) -> bool:
        """``("for" | "to make" | "so you have" …) ["all" | "a total of"] figure things``"""
        mark = self.at
        self.accept_any(",")
        begin = self.at
        if self.accept_any("to") or self.accept_any("so"):
            self.accept_all("that", "you", "we", "end", "up", "with", "will", "now", "should")
            self.accept_all("have", "get", "there", "are", "make", "form", "create", "be")
        else:
            self.accept_any("for", "making", "giving", "forming", "creating", "on", "with")
            self.accept_any("you")
        if self.at > begin and self._keeps_things():
            return True
        self.at = mark
        return False

    def _keeps_things(self) -> bool:
        """``["all" | "a total of" | "the other"] figure things ["in all"]``, kept in `things`"""
        mark, start = self.at, self.here.start
        self.accept_all("made", "all", "of", "the", "your", "a", "total")
        figure = self.accept_figure()
        mine = self.at
        while figure is not None and self.here.type is Type.WORD and self.at < mine + 2:
            if named([self.here.text]):
                break
            self.at += 1  # "for all six outer petals"
        words = self.tokens[self.at : self.clause_end()]
        if figure is None or not words or named([words[0].text]) != "bunch":
            self.at = mark
            return False
        self.at += 1
        self.accept_all("in", "all", "total", "altogether", "have", "has", "been", "are", *DONE)
        self.things = Stated(None, (("bunch", figure),), start, self.last_end)
        return True

    def _until_made(self, words: set[str]) -> Tail | None:
        """``"until" figure things "have been made"``: as far as there are so many of them."""
        mark, figure = self.at, self.accept_figure()
        upto = None if figure is None else self.made_by_then(figure)
        if upto is not None:
            return Tail(None, upto=upto)
        self.at = mark
        told = self._keeps_things()
        if not told and not words & {"made", "formed", "worked", "clusters", "groups"}:
            return None
        self.to_clause_end()
        return Tail(None)
