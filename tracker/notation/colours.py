"""Reading changes of yarn: "change to B in last st", "completing last sc with white"."""

from __future__ import annotations

from tracker.notation.joins import Joins
from tracker.notation.tokens import Type
from tracker.notation.tree import Act, Deed
from tracker.notation.wordlists import CLOSING, JOINS, WHEN

_CHANGING = ("change", "changing", "switch", "switching", "swap", "swapping")


class Colours(Joins):
    """Rules for yarn.

    ``in_last`` is set aside where the words change the yarn in the last stitch: that stitch
    is still to be made where the round was told only up to it.
    """

    def _colour(self) -> Act | None:
        """``colour = ("with" | "using" | "change to") ["colour"] name [when]``"""
        start = self.here.start
        changing = bool(self.accept_any(*_CHANGING))
        if changing:
            self.accept_any("back")
            self.accept_any("colors", "colours", "color", "colour", "yarn")
            self._in_last_before()
        led = bool(self.accept_any("to", "with", "using", "in"))
        names = self.ahead().type is Type.NUMBER or self.ahead().text == ":"
        bare = names and (self.here.text,) not in self.lexicon.phrases
        if not (led or changing or bare):
            return None
        name = self.colour_name()
        if not name and not changing:
            return None
        self._hook_change()
        self.in_last = changing and self._when()
        return Act(Deed.COLOUR, start, self.last_end, name)

    def _in_last_before(self) -> None:
        """``("in" | "at") ["the"] "last" "st"`` before the name of the yarn"""
        mark = self.at
        if self.accept_any("in", "at", "on"):
            self.accept_any("the", "your")
            last = self.accept_any("last", "final") and self.accept_any("st", "stitch", "sc")
            if last and self.here.text in ("to", "with"):
                return
        self.at = mark

    def _when(self) -> bool:
        """``("in" | "on" | "at") ["the"] ("last" | "end") words``: nothing more is made"""
        if self.here.text not in ("in", "on", "at", "with", "during", "when", "before", "for"):
            return False
        end, mark = self.clause_end(), self.at
        self.at += 1
        last = self.here.text in ("last", "final") or self.ahead().text in ("last", "final")
        if not (last or "end" in self._clause_words()) or not self._only_when(end):
            self.at = mark
            return False
        return last

    def _only_when(self, end: int) -> bool:
        """Read up to token ``end``, if nothing but words of when and stitches stands there."""
        while self.at < end:
            if not self.accept_any(*WHEN) and self.accept_phrase(self.lexicon.phrases) is None:
                return False
        return True

    def _changed_in_last(self) -> Act | None:
        """``["in" "last" kind] change`` or ``"completing" "last" kind "with" colour``"""
        start, mark = self.here.start, self.at
        if self.accept_any("in", "on"):
            self.accept_any("the")
            if self.accept_any("last", "final") and self.kind() is not None:
                self.accept_any(",", "and")
                found = self._changed()
                if found is not None:
                    self.in_last = True
                    return found
            self.at = mark
            return None
        if self.here.text in CLOSING and self.ahead().text != "off":
            return self._closed_with(start)
        return None

    def _changed(self) -> Act | None:
        """``change [to] colour | "join" [words] colour``"""
        start = self.here.start
        if self.here.text in _CHANGING:
            return self._colour()
        if self.accept_any(*JOINS):
            self.accept_all("the", "new", "in", "next")
            name = self.colour_name()
            if name or self.accept_any("color", "colour", "yarn"):
                return Act(Deed.COLOUR, start, self.last_end, name)
        return None

    def _closed_with(self, start: int) -> Act | None:
        """``verb words colour words`` where the words make no further stitch"""
        verb = self.here.text
        end = self.clause_end()
        self.at += 1
        name, last = "", False
        while self.at < end:
            last = last or self.here.text in ("last", "final")
            found = self.colour_name()
            name = name or found
            if found or self.accept_any("with", "up", "down", "a", "new", "to", "and", *WHEN):
                continue
            if self.accept_phrase(self.lexicon.phrases) is None or not last:
                return None
        if not name or not (last or verb in ("drop", "dropping", "pick", "picking")):
            return None
        return Act(Deed.COLOUR, start, self.last_end, name)

    def _hook_change(self) -> None:
        """``"and" size "hook"`` behind a change of colour."""
        mark = self.at
        if not self.accept_any("and") or not self._hook_size():
            self.at = mark

    def _hook_led(self) -> bool:
        """``("with" | "using") size "hook"``"""
        mark = self.at
        self.at += 1
        if self._hook_size():
            return True
        self.at = mark
        return False

    def _hook_size(self) -> bool:
        """``["to"] size "hook"``"""
        mark = self.at
        self.accept_any("to", "a", "an")
        while self.here.type is Type.NUMBER or self.here.text in (".", "mm", "-"):
            self.at += 1
        if self.at > mark and self.accept_any("hook"):
            return True
        self.at = mark
        return False
