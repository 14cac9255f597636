"""Reading stitches that reach further: long ones, and any stitch round a post."""

from __future__ import annotations

from tracker.notation.amounts import Amounts
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Target

#: Words for a stitch that is drawn up from further down.
_LONG = ("long", "elongated", "elongate", "spike", "spiked", "dropped", "tall", "deep")


class Reaching(Amounts):
    """Rules for stitches that go further than the round below.

    ``long`` tells whether the stitch read last is one; each goes where the last one named
    its place.
    """

    long = False
    _long_place: Target | None = None

    def reaching_stitch(self) -> Stitch | None:
        """``("long" | "spike" …) stitch | ("fp" | "front post" …) stitch``"""
        mark = self.at
        self.long = bool(self.accept_any(*_LONG))
        side = "" if self.long else self._post_side()
        if self.long or side:
            self.accept("-")
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and key not in ("ch", "sl st"):
                self.accept_any("stitch", "stitches", "st", "sts")
                found = self.lexicon.stitch(key)
                return found._replace(abbr=f"{side} {found.abbr}") if side else found
        self.at, self.long = mark, False
        return None

    def _post_side(self) -> str:
        """``"fp" | "bp" | ("front" | "back") "post"``, as in "FP puff st"."""
        if (self.here.text,) in self.lexicon.phrases:
            return ""
        side = self.accept_any("fp", "bp")
        if not side and self.ahead().text == "post":
            side = {"front": "fp", "back": "bp"}.get(self.here.text, "")
            self.at += 2 * bool(side)
        return side

    def by_hook(self) -> None:
        """``"by" "inserting" ["the"] "hook"`` before a place"""
        mark = self.at
        if self.accept("by") and self.accept_any("inserting", "putting", "working"):
            self.accept_all("the", "your", "hook")
        else:
            self.at = mark

    def reached(self, target: Target | None) -> Target | None:
        """Where a stitch goes: a long one without a place goes where the last one did."""
        if not self.long:
            return target
        if target is None:
            return self._long_place
        if target.at is At.BELOW:
            self._long_place = target
        return target
