"""Reading how far a place goes: "around", "across", "to the end", "to last 2 sts"."""

from __future__ import annotations

from tracker.notation.kinds import Kinds
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Target
from tracker.notation.wordlists import (
    BEGINNING,
    CHAIN_WORDS,
    CHANGING,
    END_WORDS,
    MIDDLE,
    OF_EDGES,
    ROUND_WORDS,
    THINGS,
)


def spacey(kind: str) -> bool:
    """Whether a kind of place (as in `Target`) is a chain space or a corner."""
    return kind in ("sp", "corner") or kind.endswith(" sp")


#: Where a chain that is worked back along comes from.
_ROOTS = (
    *("centre", "center", "middle", "ring", "circle", "base", "start", "beginning", "flower"),
    *("body", "head", "round", "edge", "disc", "disk"),
)
#: Other words for "to the end of this one".
_TO_THE_END = (
    ("thereafter",),
    ("after", "that"),
    ("down", "the", "chain"),
    ("along", "the", "row"),
)


class Ends(Kinds):
    """Rules for where a row of places ends.

    ``to_marker`` tells whether the words go up to a marker: the printed count has to show
    that it stands at the end of the round.
    """

    to_marker = False

    def _is_to_the_end(self) -> bool:
        """Whether "around" here ends a clause, rather than leading to a place."""
        return self.ahead().type in (Type.SIGN, Type.END, Type.OPEN, Type.CLOSE) or (
            self.ahead().text
            in ("to", "until", "and", "but", "with", "without", "join", "turn", "working", "ending")
            or self.ahead().text in (*ROUND_WORDS, *CHANGING)
            or (self.ahead().text == "the" and self.ahead(2).text in ROUND_WORDS)
            or self._in_loop_behind()
        )

    def _in_loop_behind(self) -> bool:
        """``word ("in" | "through") loop``: "hdc around in BLO" goes into each stitch's loop"""
        mark, loop = self.at, self.loop
        self.at += 1
        found = bool(self.accept_any("in", "through", "into")) and self.accept_loop()
        self.at, self.loop = mark, loop
        return found

    def _to_end(self, found: Target) -> Target:
        """``end = "around" | "across" | "to end" | "to last" figure kind | …``

        "around" after a counted place only says how the work goes on.
        """
        around = self._ends() or (found.kind == "ch" and self._back_along())
        mark = self.at
        if self.here.text in ("up", "along") and self.ahead().text in ("to", "until"):
            self.at += 1
        if self.accept_any("to", "until", "till"):
            self.accept_all("the", "you", "reach", "within")
            if self.accept_any("last"):
                leave = self.accept_figure() or (1,)
                kind = self.kind() or "st"
                until = kind if spacey(kind) and not spacey(found.kind) else ""
                return Target(At.EACH, found.kind, leave=leave, until=until)
            left = self._so_many_left() or self._so_many_of_end()
            if left is not None:
                return Target(At.EACH, found.kind, leave=left)
            if found.at is At.EACH and self._to_beginning():
                return Target(At.EACH, found.kind)
            short = self._so_many_before() if found.at is At.EACH else None
            until = self._next_until() if found.at is At.EACH else ""
            if until:
                return Target(At.EACH, found.kind, until=until, short=short)
            self.at = mark
        if around and found.at is At.NEXT and found.count is None:
            return Target(At.EACH, found.kind)
        return found

    def _back_along(self) -> bool:
        """``["all" "the" "way"] ("back" | "down" …) [("along" | "to") "the" thing]``: of a chain

        It only tells which way chains are worked into.
        """
        mark = self.at
        self.accept("all", "the", "way")
        begin = self.at
        self.accept_all("back", "down", "up", "along", "again", "on", "over", "across")
        if self.at == begin:
            self.at = mark
            return False
        here = self.at
        if self.accept_any("to", "towards", "toward"):
            self.accept_all("the", "your", "its")
            if not self.accept_any(*_ROOTS):
                self.at = here
                return True
        else:
            self.accept_all("the", "your", "same")
            if not self.accept_any("ch", "chain", "chains", "chs"):
                self.at = here
                return True
            if self.accept_any("to", "towards", "toward"):
                self.accept_all("the", "your")
                self.accept_any(*_ROOTS)
        return True

    def _so_many_left(self) -> Figure | None:
        """``["there" "is"] figure kind "remain"``: how many places are left at the end"""
        mark = self.at
        self.accept_all("there", "is", "are", "you", "have", "only")
        figure = self.accept_figure()
        if figure is not None:
            self.accept_any("more")
            self.kind()
            self.accept_any("is", "are")
            if self.accept_any("remain", "remains", "remaining", "rem", "left"):
                return figure
        self.at = mark
        return None

    def _so_many_of_end(self) -> Figure | None:
        """``figure kind ("of" | "from") ["the"] "end"``, as in "within 2 sts of end"."""
        mark = self.at
        figure = self.accept_figure()
        if figure is not None and self.kind() is not None and self.accept_any("of", "from"):
            self.accept_any("the")
            if self.accept("end"):
                self._ends()
                return figure
        self.at = mark
        return None

    def _so_many_before(self) -> Figure | None:
        """``[figure] kind "before"``, as in "to 2 sts before next corner"."""
        mark = self.at
        figure = self.accept_figure() or (1,)
        if self.kind() is not None and self.accept("before"):
            self.accept_all("the", "you", "reach")
            return figure
        self.at = mark
        return None

    def _to_beginning(self) -> bool:
        """``["beg"] "ch" [number] | "join"``: back to where the round began"""
        mark = self.at
        beg = bool(self.accept_any(*BEGINNING)) and self.tokens[self.at - 1].text != "first"
        if beg and self.accept_any(*CHAIN_WORDS, "of"):
            self.accept("-")
            self.accept_number()
            self.accept_all("the", *ROUND_WORDS)
            return True
        self.at = mark
        return bool(self.accept_any("join", "beginning"))

    def corner_center(self) -> bool:
        """``"center" stitch ["of" ["each"] [number stitch] "corner" [stitch]]``

        Of what it is the middle may be left out where the words speak of corners at all.
        """
        mark = self.at
        if self.accept_any(*MIDDLE):
            begin = self.at
            self.kind_of_stitch()
            named = self.at > begin
            if not self.accept_any("of", "at", "in"):
                if named and any(t.text in ("corner", "corners") for t in self.tokens):
                    return True
            else:
                self.accept_all("the", "next", "first", "last", "all", "each", "every")
                self.accept_number()
                self.accept("-")
                self.kind_of_stitch()
            if self.accept_any("corner", "corners"):
                self.kind_of_stitch()
                return True
        self.at = mark
        return False

    def _next_until(self) -> str:
        """``["next"] kind``: the kind of place to stop before; "" where none is named."""
        self.accept_any("next", "first", "beginning", "beg", "starting", "same", "following")
        if self.corner_center():
            return "corner"
        if self.here.text in MIDDLE and self.ahead().type in (Type.SIGN, Type.END):
            self.at += 1
            return "middle"
        kind = self.kind()
        return "" if kind is None or kind == "st" else kind

    def _along_sides(self) -> bool:
        """``("along" | "on") ["each" | "all" …] "sides"`` of a square: round it"""
        mark = self.at
        if self.accept_any("along", "on", "down"):
            self.accept_all("each", "every", "all", "the", "four", "4", "of")
            if self.accept_any("side", "sides") and self.here.text not in ("of", "edge", "edges"):
                return True
        self.at = mark
        return False

    def _ends(self) -> bool:
        """``("all" | "the way")? ("around" | "across" | "to the end" ["of" "round"])``"""
        found = False
        while True:
            mark = self.at
            if self.accept("all"):
                self.accept("the", "way")
            if self.here.text in END_WORDS and self.ahead().text in THINGS:
                self.at = mark
                return found
            if self.accept_any(*END_WORDS):
                self.accept_all("the", *ROUND_WORDS)
            elif not self._end_in_words():
                self.at = mark
                return found
            found = True

    def _end_in_words(self) -> bool:
        """Set words such as "thereafter", along the sides, or to the end."""
        if any(self.accept(*words) for words in _TO_THE_END):
            return True
        return self._along_sides() or self._to_the_very_end()

    def _to_the_very_end(self) -> bool:
        """``"to" ["the"] ["very"] ("end" ["of" "round"] | "marker" | garment_edge)``"""
        mark = self.at
        if self.accept_any("to", "until", "till"):
            self.accept_any("the")
            self.accept_any("very")
            if self.accept_any("end"):
                if self.accept("of"):
                    self.accept_all("the", "chain", *ROUND_WORDS)
                return True
            if self.garment_edge() and self._ends_clause():
                return True
            if self.accept_any("marker", "markers") and self._ends_clause():
                self.to_marker = True
                return True
        self.at = mark
        return False

    def garment_edge(self) -> bool:
        """``["the"] {"neck" | "armhole" | …} ("edge" | "side")``: an end of this row"""
        mark = self.at
        self.accept_any("the")
        begin = self.at
        self.accept_all(*OF_EDGES)
        if self.accept_any("edge", "edges") and self.at - begin > 1:
            return True
        self.at = mark
        return False

    def _ends_clause(self) -> bool:
        """Whether a clause ends here."""
        over = self.here.type in (Type.END, Type.OPEN, Type.CLOSE)
        return over or self.here.text in (",", ";", ".", "=", "-")
