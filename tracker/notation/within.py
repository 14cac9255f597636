"""Reading places in a group of the round below: "in 2nd dc of next shell"."""

from __future__ import annotations

from tracker.notation.stops import Stops
from tracker.notation.tree import At, Target

#: Words before a group: which one.
_WHICH = ("the", "next", "each", "every", "same", "last", "first", "following", "that")


class Within(Stops):
    """Rules for one stitch, or the gap between two, of shells and V stitches."""

    def _of_group(self) -> Target | None:
        """``(ordinal | "last") stitch "of" ["next" | "each" | "same"] group``: one stitch of it"""
        nth = self.accept_ordinal() or -int(bool(self.accept_any("last")))
        kind = self._stitch_kind() if nth else None
        if kind is None or kind == "ch" or not self.accept_any("of", "on", "in", "from"):
            return None
        words = self._clause_words()
        self.accept_all(*_WHICH)
        group = self._group_named()
        if not group:
            return None
        self._suffix()
        at = At.EACH if words & {"each", "every"} else At.NEXT
        at = At.SAME if words & {"same", "that"} else at
        return self._to_end(Target(at, group, nth=nth))

    def _amid(self) -> Target | None:
        """``"between" ordinal [stitch] "and" ordinal [stitch] "of" which group``: in its middle"""
        mark = self.at
        led = self.led == "between" or self.accept("between")
        if led and self._nth_and_nth() and self.accept_any("of", "in", "on"):
            words = self._clause_words()
            self.accept_all(*_WHICH)
            group = self._group_named()
            if group:
                self._suffix()
                at = At.EACH if words & {"each", "every"} else At.NEXT
                return self._to_end(Target(at, group))
        self.at = mark
        return None

    def _nth_and_nth(self) -> bool:
        """``ordinal [stitch] ("and" | "&") ordinal [stitch]``"""
        self.accept_any("the")
        first = self.accept_ordinal()
        self._stitch_kind()
        both = bool(first) and bool(self.accept_any("and", "&"))
        second = self.accept_ordinal() if both else None
        self._stitch_kind()
        return bool(first and second == first + 1)

    def _group_named(self) -> str:
        """``[figure stitch] group | stitch`` that makes several in one place; "" for neither"""
        found = self._group_kind()
        if found is None:
            key = self.accept_phrase(self.lexicon.phrases) or "ch"
            stitch = self.lexicon.stitch(key)
            found = key if stitch.takes == 1 and stitch.makes > 1 and not stitch.height else ""
            self.accept_any("st", "sts", "stitch")
        return found
