"""Rounds told as a whole: worked even, or with increases or decreases spread evenly."""

from __future__ import annotations

from tracker.notation.advice import Advice
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Evenly, Make, Node, Note, Target, Unread
from tracker.notation.wordlists import BEGINNING, CHANGING, PIECES, ROUND_WORDS, SIDES

#: Words for increases (1) and decreases (-1).
CHANGES = {
    **dict.fromkeys(("inc", "incs", "increase", "increases", "increasing"), 1),
    **dict.fromkeys(
        ("dec", "decs", "decrease", "decreases", "decreasing", "reduce", "reducing"), -1
    ),
}
_OFTEN = {"once": (1,), "twice": (2,)}
_EVEN = ("even", "unchanged", "straight")
_SPREAD = ("evenly", "spaced", "spread", "out", "apart")


class Spreading(Advice):
    """Rules for what is said of a round as a whole."""

    def evenly(self) -> Node | None:
        """``evenly = even | plain | changes``"""
        mark, start = self.at, self.here.start
        found = self._even(start) or self._plain_round(start)
        if found is not None:
            return found
        self.at = mark
        changes = self._changes(start)
        if changes is None:
            self.at = mark
        return changes

    def _even(self, start: int) -> Node | None:
        """``["work" [figure "rounds"] | "continue"] ("even" | "straight" | end) ["in" stitch]``"""
        mark, across = self.at, False
        if self.accept("work") and self.accept_number() and self.accept_any(*ROUND_WORDS):
            pass  # how many is read with the label
        else:
            self.at = mark
            across = self.accept("work") and self._ends()
            if not across:
                self.accept_any("continue", "cont")
        if not across and not self.accept_any(*_EVEN):
            self.at = mark
            return None
        stitch = None
        if self.accept("in"):
            key = self.accept_phrase(self.lexicon.phrases)
            if key is None:
                self.at = mark
                return None
            stitch = self.lexicon.stitch(key)
        self._ends()
        if across and not self._clause_is_over():
            self.at = mark
            return None
        return Evenly((0,), 0, start, self.last_end, stitch)

    def _plain_round(self, start: int) -> Node | None:
        """``["work"] ("1" | "a") "round" ["of" | "in"] stitch ["around"] | "work" "in" stitch``

        As a clause of its own.
        """
        mark = self.at
        led = self.accept_any("work", "crochet", "do", "make", "add")
        one = bool(self.accept_any("1", "one", "a", "another"))
        self.accept_any(*(("more", "last", "final") if one else ()))
        one = one and bool(self.accept_any(*ROUND_WORDS))
        of = self.accept_any("of", "in")
        if (one and (led or of)) or (led and of == "in"):
            self.accept_any("plain", "regular")
            key = self.accept_phrase(self.lexicon.phrases)
            self.loop = ""
            self._loop_behind()
            self._ends()
            if key is not None and key != "ch" and self._clause_is_over():
                stitch = self.lexicon.stitch(key)
                return Make(stitch, (1,), Target(At.EACH), start, self.last_end, self.loop)
        self.at = mark
        return None

    def _changes(self, start: int) -> Evenly | Note | Unread | None:
        """``[verb] ["evenly"] (change figure | figure changes | change "to" figure) spread``"""
        self.accept_any("continue", "cont", "and", "with")
        self.accept("at", "the", "same", "time")
        self.accept_any("to")
        self.accept_any("working", "work", "make", "making", "placing", "adding")
        spread = self._spread_words()
        figure = self.accept_figure()
        word = self.accept_any(*CHANGES)
        change = CHANGES.get(word) or self._named_change()
        if not change:
            return None
        spread = self._spread_words() or spread
        to = figure is None and self.accept("to")
        by = figure is None and self.ahead().type is Type.NUMBER and self.accept("by")
        figure = figure or self.accept_figure() or _OFTEN.get(self.accept_any(*_OFTEN))
        if figure is None:
            return self._one_at_each_end(change, start)
        if not self.accept_any("times"):
            self.kind()
        how = self._how_changed()
        if how == "told":
            return Note(start, self.last_end)  # what is behind it tells what is made, and where
        ends = how if how in ("first", "last") else self._at_ends()
        spread = self._spread_words() or self._in_the_round() or bool(ends) or spread
        spread = spread or self._somewhere() or bool(how)
        beside = (word in CHANGING or to or by) and (self._ends() or self._is_listed())
        if not (spread or beside):
            return None
        self._ends()
        self.to_clause_end()
        self.begun = True
        return Evenly(figure, change, start, self.last_end, to=to, ends=ends)

    def _how_changed(self) -> str:
        """``"by" words``: how each of those is made: in any place, at the "first", the "last"

        "told" where these words ask for the stitches themselves; "" where nothing is said.
        """
        if self.here.text != "by" or self.ahead().type is not Type.WORD:
            return ""
        self.at += 1
        words = self._clause_words()
        if words & {"next", "each", "every", "same"}:
            return "told"
        self.to_clause_end()
        return next((end for end in ("first", "last") if end in words), "anywhere")

    def _one_at_each_end(self, change: int, start: int) -> Evenly | Unread | None:
        """``"at" ("beg" "and" "end" | garment_edge)`` behind "dec": one at each"""
        mark = self.at
        ends = self._at_ends()
        led = self.tokens[mark].text in ("at", "on")
        if not ends or self.tokens[mark].text == "each" or (ends in ("first", "last") and not led):
            return None
        alone = all(token.type is not Type.WORD for token in self.tokens[self.at :])
        if ends != "both" and alone and not self.begun:
            why = "does not say how the other stitches are worked"
            return Unread(self.text[start : self.last_end], start, self.last_end, why)
        self.begun = True
        return Evenly((1,), change, start, self.last_end, ends=ends)

    def _somewhere(self) -> bool:
        """``"anywhere" | ("at" | "in") "the" "back" …``: a place that no count tells from others"""
        mark = self.at
        if self.accept_any("anywhere", "somewhere"):
            return self._is_listed()
        if self.accept_any("at", "in", "on", "near"):
            begin = self.at
            self.accept_all(*SIDES, *PIECES, "seam", "join", "the", "of", "your", "this")
            if self.at > begin and self._clause_is_over():
                return True
        self.at = mark
        return False

    def _named_change(self) -> int:
        """-1 for a decrease named by its stitch ("sc2tog"), which is read; else 0"""
        mark = self.at
        key = self.accept_phrase(self.lexicon.phrases)
        stitch = None if key in (None, "ch") else self.lexicon.stitch(key)
        if stitch is not None and (stitch.takes, stitch.makes) == (2, 1):
            return -1
        self.at = mark
        return 0

    def _spread_words(self) -> bool:
        """``{"evenly" | "spaced" | …}``, "evenly" among them"""
        mark = self.at
        self.accept_all(*_SPREAD)
        words = {token.text for token in self.tokens[mark : self.at]}
        if "evenly" not in words:
            self.at = mark
        return "evenly" in words

    def _at_ends(self) -> str:
        """``["at"] ("each" | "both" | "the beginning and") "end" ["of" "row"]``"""
        mark = self.at
        self.accept_any("at", "on")
        self.accept_any("the")
        found = ""
        if self.accept_any("each", "both") and self.accept_any("end", "ends", "side", "sides"):
            found = "both"
        elif self.accept_any(*BEGINNING):
            found = "first"
        elif self.accept_any("end"):
            found = "last"
        elif self.garment_edge():
            found = "one"
        self._of_the_row()
        if found == "first" and self.accept_any("and"):
            self.accept_all("at", "the")
            found = "both" if self.accept_any("end") else ""
            self._of_the_row()
        if not self._clause_is_over() and self.here.text not in (":", "=", "-"):
            found = ""
        if not found:
            self.at = mark
        return found

    def _of_the_row(self) -> None:
        """``["of" ["the" | "each"] "row"]``; "each row" alone was read with the label"""
        if self.accept_any("of"):
            self.accept_any("the", "this", "each", "every", "next")
            self.accept_any(*ROUND_WORDS)

    def _in_the_round(self) -> bool:
        """``("in" | "over" | "on") ("this" | "the" | "each" | "every" | "next") "round"``"""
        mark = self.at
        if self.accept_any("in", "over", "on"):
            self.accept_any("this", "the", "each", "every")
            self.accept_any("next", "following")
            if self.accept_any(*ROUND_WORDS):
                return True
        self.at = mark
        return False
