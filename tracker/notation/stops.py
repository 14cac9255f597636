"""Reading the place up to which stitches go, and what names it again: "… to corner, 3 sc in it"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.ends import spacey
from tracker.notation.landmarks import Landmarks
from tracker.notation.tree import At, Target
from tracker.notation.wordlists import PREPOSITIONS


class Stops(Landmarks):
    """Rules for stops.

    ``_reached``: up to which kind of place stitches were last said to go, and behind which
    token; "" for none.
    """

    _reached = ("", 0)

    def _so_far(self) -> Target | None:
        """``["up"] "to" end``: each stitch from here to there"""
        mark = self.at
        led = self.here.text in ("up", "along", "across", "over")
        to = self.ahead().text if led else self.here.text
        if to not in ("to", "till", "until"):
            return None
        to_end = self._to_end(Target(At.EACH))
        self._reached = to_end.until, self.at
        if self.at == mark:
            return None
        between = self._between() if to_end.until == "sp" else None
        if spacey(to_end.until):
            self.of_tile()
        return to_end if between is None else replace(to_end, until=between.kind)

    def _stop(self) -> Target | None:
        """``"it" | ("that" | "this") kind``: the place up to which the work went just before"""
        kind, at = self._reached
        mark = self.at
        between = (t.text for t in self.tokens[at : mark - 1])
        if not kind or any(word in PREPOSITIONS for word in between):
            return None
        there = self.accept_any("it") and self._clause_is_over()
        if there or (self.accept_any("that", "this") and self.kind() is not None):
            return Target(At.SAME if self._only_slipped(at) else At.NEXT, kind)
        self.at = mark
        return None

    def _only_slipped(self, at: int) -> bool:
        """Whether nothing but slip stitches is told up to token ``at``: the round begins there."""
        mark, keys = self.at, set()
        for self.at in range(at):
            keys.add(self.accept_phrase(self.lexicon.phrases))
        self.at = mark
        return "sl st" in keys and keys <= {None, "sl st", "ch"}
