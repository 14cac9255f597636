"""Reading where stitches go: "in each of next 3 sts", "in 2nd ch from hook"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.ends import spacey
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Target
from tracker.notation.within import Within
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    END_WORDS,
    PREPOSITIONS,
    ROUND_WORDS,
)


class Targets(Within):
    """Rules for places."""

    def target(self) -> Target | None:
        """``target = [preposition] place [end]``; None (and nothing read) if none is here."""
        mark = self.at
        self.led = ""
        if self.here.text in END_WORDS and self._is_to_the_end():
            self.at += 1
            return self._to_end(Target(At.EACH))
        if (self.here.text, self.ahead().text) == ("all", "the") and self._ends():
            return Target(At.EACH)
        to_end = self._so_far()
        if to_end is not None:
            return to_end
        self._through_both()
        self.led = self.accept_any(*PREPOSITIONS)
        if self.led:
            self.accept_any("to")
        self._below, self.along_rows, self.into_rows = 0, False, False
        found = self._place(bool(self.led))
        if found is None:
            if self.led and self.loop and self._ends():
                return Target(At.EACH)  # "in front loop only around"
            self.at = mark
        elif found.until:
            self._reached = found.until, self.at
        elif self.into_rows:
            return replace(found, rows=True)
        elif self._below:
            return Target(At.BELOW, found.kind, found.count, nth=self._below, of=found.at)
        return found

    def _through_both(self) -> None:
        """``"through" ("both" | "all") thing`` before "in each st": how, and not where"""
        mark = self.at
        if self.accept("through") and self.accept_any("both", "all", "two", "the"):
            self.accept_any("two", "2")
            if self.here.type is Type.WORD and self.here.text not in ("loop", "loops", "lps"):
                self.at += 1
                if self.here.text in ("in", "into") and self.ahead().text in ("each", "every"):
                    return
        self.at = mark

    def _place(self, led: bool) -> Target | None:
        """``place = base | same | ring | hook | each | next | nth | tch | counted | bare``"""
        base = self._stop() or self._base()
        if base is not None:
            return base
        self._on_top = False
        self._noise()
        between = self._amid() or self._between()
        if between is not None:
            return between
        rules = (self._of_group, self._same, self._ring, self._hook, self._turning, self._each)
        for rule in (*rules, self._center_of_corner, self._next):
            mark = self.at
            found = rule()
            if found is not None:
                return found
            self.at = mark
        return self._bare() if led else None

    def _center_of_corner(self) -> Target | None:
        """``["each"] corner_center``"""
        mark = self.at
        each = self.accept_any("each", "every")
        begin = self.at
        if self.corner_center():
            words = {each, *(t.text for t in self.tokens[begin : self.at])}
            self._suffix()
            at = At.EACH if words & {"each", "every"} else At.NEXT
            return self._to_end(Target(at, "corner"))
        self.at = mark
        return None

    def _each(self) -> Target | None:
        """``each = ("each" | "every" | "all") ["of"] ["next"] [figure] [kind] [end]``"""
        word = self.accept_any("each", "every", "all", "ea", "per", "rest")
        if not word:
            return None
        if word == "rest":
            self.accept_all("of", "the", *ROUND_WORDS)
            return Target(At.EACH, self.kind() or "st")
        if word == "all" and self.accept("but"):
            return self._all_but()
        self.accept_all("of", "the", "every", "one")
        self.accept_loop()
        at = self._which() or At.NEXT
        count = self._count_of_places()
        if self.accept_any("skipped", "missed"):
            return Target(At.SKIPPED, self.kind() or "st", count)
        self.accept_loop()
        kind = self.kind() or ("st" if self._may_lack_kind() else "")
        if not kind:
            return None
        if count is not None and kind == "corner" and at is At.NEXT and not self._told_next(word):
            return Target(At.EACH, kind, count)  # "in each of the four corners"
        if count is not None or (at is not At.NEXT):
            return self._to_end(Target(at, kind, count, said_each=count is not None))
        return self._to_end(self._grouped(Target(At.EACH, kind)))

    def _told_next(self, word: str) -> bool:
        """Whether "next" stands between that word and here: "each of next 3 corners"."""
        words = [token.text for token in self.tokens[max(0, self.at - 8) : self.at]]
        return "next" in words[max(i for i, text in enumerate(words) if text == word) :]

    def _may_lack_kind(self) -> bool:
        """Whether the kind of place may be left out here: it is stitches then."""
        return self.here.type in (Type.SIGN, Type.END, Type.CLOSE, Type.OPEN) or (
            self.here.text in END_WORDS or self.here.text in ("to", "and")
        )

    def _all_but(self) -> Target | None:
        """``"all but" ["the"] ["last"] [figure] [kind]``"""
        self.accept_any("the")
        self.accept_any("last")
        leave = self.accept_figure() or (1,)
        return Target(At.EACH, self.kind() or "st", leave=leave)

    def _skipped(self) -> int:
        """``["each" "of"] [figure | ordinal] "skipped"``: how many of those passed over, or 0"""
        mark = self.at
        self.accept_any("each")
        self.accept_any("of")
        few = 1 + int("both" in (self.ahead(-1).text, self.accept_any("the", "next", "both")))
        count = 1 if self.accept_ordinal() is not None else self.accept_number() or few
        if self.accept_any("skipped", "missed"):
            return count
        self.at = mark
        return 0

    def _next(self) -> Target | None:
        """``next = which [figure] [kind]``; "any" and "skipped" likewise."""
        if self.accept_any("any"):
            return self._grouped(Target(At.ANY, self.kind() or "st"))
        skipped = self._skipped()
        if skipped:
            self._suffix()
            return Target(At.SKIPPED, self.kind() or "st", (skipped,))
        at = self._which()
        if at is None:
            return None
        count = self._count_of_places()
        self.accept_loop()
        kind = self.kind() or ("st" if self.accept("one") else None)
        if count is not None and len(set(count)) == 1 and kind == "sp" and not self._plural:
            # "next 2 ch sp" is one space of two chains; "next 2 ch sps" are two spaces
            return Target(at, f"ch-{count[0]} sp")
        if at is At.EACH and kind is None:
            kind = "st"
        if at is At.EACH and count is not None:
            at = At.NEXT  # "in remaining 18 sts"
        found = Target(at, kind or "st", count)
        return self._to_end(self._grouped(found))

    def _count_of_places(self) -> Figure | None:
        """A number of places, unless it belongs to a space or group: "next 4-ch loop"."""
        mark = self.at
        grouped = self.ahead().text == "-" and self._group_kind() is not None
        self.at = mark
        if grouped:
            return None
        if self._space() is not None and not self._plural:
            self.at = mark
            return None
        self.at = mark
        return self.accept_figure()

    def _bare(self) -> Target | None:
        """``bare = [figure] kind``, after a preposition"""
        nth = self.accept_ordinal()
        mark = self.at
        if nth is None and self.here.text in ("post", "posts"):
            return self._post()
        kind = self._over_chain() or self.kind()
        if kind is None:
            self.at = mark
            count = self.accept_figure()
            kind = self.kind() or ("st" if self._clause_is_over() else None)
            if count is None or kind is None:
                return None
            return self._to_end(Target(At.NEXT, kind, count))
        if self.at_base:
            return Target(At.SAME, kind)
        every = kind == "st" and self._plural_sts
        every = every or (self._plural and kind == "corner" and nth is None)
        found = self._grouped(Target(At.EACH if every else At.NEXT, kind))
        return self._to_end(found) if nth is None or nth > 0 else None

    def _over_chain(self) -> str | None:
        """``"ch" "-" number`` behind "over" or "along": the space under those chains"""
        mark = self.at
        chain = self.led in ("over", "along", "under") and self.accept_any(*CHAIN_WORDS)
        if chain and self.accept("-"):
            length = self.accept_number()
            if length and self._clause_is_over():
                return f"ch-{length} sp"
        self.at = mark
        return None

    def _beside_next(self) -> Target | None:
        """``("before" | "after") ["the"] ("next" | "last") stitch``: beside it; none is used"""
        mark = self.at
        if self.accept_any("before", "after"):
            self.accept_any("the")
            named = self._which() is not None
            if self.kind() is not None and named:
                return Target(At.BELOW)
        self.at = mark
        return None

    def _set_apart(self, found: Target) -> Target | None:
        """``"between" words | beside``: what a space or gap that is no chain's lies between"""
        between = self._between()
        if between is not None:
            return replace(between, at=found.at, count=found.count)
        return self._beside_next()

    def _grouped(self, found: Target) -> Target:
        """``["of" ["next"] group]``: the place is inside a named group."""
        if self.in_group:
            return replace(found, group=self.in_group)
        mark = self.at
        if spacey(found.kind) and self.of_tile():
            return found
        apart = self._set_apart(found) if found.kind in ("sp", "gap") else None
        if apart is not None:
            return apart
        if self.accept("of", "any"):
            while self.here.type in (Type.WORD, Type.NUMBER) or self.here.text == "-":
                self.at += 1
            return Target(At.ANY, found.kind)
        if self.accept("of") or self.accept("from"):
            self.accept_any("the")
            each = bool(self.accept_any("each", "every"))
            same = self.here.text == "same"
            self.accept_all("the", "next", "same", "last")
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and len(self.lexicon.stitch(key).spaces) > 0:
                if same:
                    return Target(At.SAME, found.kind)
                at = At.EACH if each else found.at
                count = found.count
                if found.at is At.EACH and not each:
                    # "in each ch-2 sp of next V-st": all the spaces of that one
                    at, count = At.NEXT, (len(self.lexicon.stitch(key).spaces),)
                return Target(at, found.kind, count, group=key)
        self.at = mark
        return found
