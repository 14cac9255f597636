"""Reading where stitches go: "in each of next 3 sts", "in 2nd ch from hook"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from tracker.notation.ends import Ends
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Target
from tracker.notation.wordlists import (
    BEGINNING,
    CHAIN_WORDS,
    END_WORDS,
    GROUPS,
    NOISE,
    ON_THE_ROW,
    ON_THE_STITCH,
    PREPOSITIONS,
    RING_WORDS,
    ROUND_WORDS,
    SPACE_WORDS,
    STITCH_WORDS,
)


class Targets(Ends):
    """Rules for places. ``led`` is the preposition before the place read last."""

    led = ""
    #: whether the round has made a stitch yet
    begun = False
    _on_top = False

    def target(self) -> Target | None:
        """``target = [preposition] place [end]``; None (and nothing read) if none is here."""
        mark = self.at
        self.led = ""
        if self.here.text in END_WORDS and self._is_to_the_end():
            self.at += 1
            return self._to_end(Target(At.EACH))
        if self.here.text in ("to", "till", "until"):
            to_end = self._to_end(Target(At.EACH))
            if self.at > mark:
                between = self._between() if to_end.until == "sp" else None
                return to_end if between is None else replace(to_end, until=between.kind)
        self.led = self.accept_any(*PREPOSITIONS)
        if self.led:
            self.accept_any("to")
        self._below, self.along_rows = 0, False
        found = self._place(bool(self.led))
        if found is None:
            if self.led and self.loop and self._ends():
                return Target(At.EACH)  # "in front loop only around"
            self.at = mark
        elif self._below:
            return Target(At.BELOW, found.kind, found.count, nth=self._below, of=found.at)
        return found

    def _place(self, led: bool) -> Target | None:
        """``place = base | same | ring | hook | each | next | nth | tch | counted | bare``"""
        base = self._base()
        if base is not None:
            return base
        self._on_top = False
        self._noise()
        between = self._between()
        if between is not None:
            return between
        rules = (self._same, self._ring, self._hook, self._turning, self._each)
        for rule in (*rules, self._center_of_corner, self._next):
            mark = self.at
            found = rule()
            if found is not None:
                return found
            self.at = mark
        return self._bare() if led else None

    def _center_of_corner(self) -> Target | None:
        """``"center" stitch "of" ["each"] [number stitch] "corner" [stitch]``"""
        each = self.accept_any("each", "every")
        if not self.accept_any("center", "centre", "middle"):
            return None
        self.kind_of_stitch()
        if self.accept_any("of", "at", "in"):
            each = self.accept_any("each", "every") or each
            self.accept_any("the", "next", "first", "last", "all")
            self.accept_number()
            self.accept("-")
            self.kind_of_stitch()
        if not self.accept_any("corner", "corners"):
            return None
        self.kind_of_stitch()
        self._suffix()
        return self._to_end(Target(At.EACH if each else At.NEXT, "corner"))

    def _between(self) -> Target | None:
        """``["sp"] "between" words``: a gap; there are as many as stitches in a round

        Between groups, such as fans, nothing of the round below is used up: the gaps between
        them are places of their own. So are those further down, or beside the edge.
        """
        mark = self.at
        self.accept_any("in")
        self.accept_any(*SPACE_WORDS)
        self.accept_any("in")
        if not self.accept_any("between", "bet"):
            self.at = mark
            return None
        clause, numbered = self._clause_words(), self._names_round()
        begin = self.at
        while self.here.type in (Type.WORD, Type.NUMBER, Type.ORDINAL):
            self.at += 1
        words = {t.text for t in self.tokens[begin : self.at]}
        if not clause & GROUPS and not numbered:
            return Target(At.NEXT)
        self.to_clause_end()
        apart = "and" in words or not words.isdisjoint(CHAIN_WORDS)
        return Target(At.BELOW) if apart or numbered else Target(At.NEXT, "gap")

    def _names_round(self) -> bool:
        """Whether a round is named by its number up to the end of this clause."""
        clause = self.tokens[self.at : self.clause_end() + 1]
        return any(
            one.text in ROUND_WORDS and other.type is Type.NUMBER for one, other in pairwise(clause)
        )

    def _noise(self) -> None:
        """Words before a place that do not change it, and the loop if it is named."""
        while True:
            if self.accept_loop():
                if not (self.here.text in END_WORDS and self._is_to_the_end()):
                    self.accept_any(*PREPOSITIONS)
                continue
            if self.here.text in ON_THE_STITCH and self.ahead().text == "of":
                if self.here.text == "base" and self.ahead(2).type is Type.NUMBER:
                    self.led = "over"  # "sc in base of 2 bobbles": one stitch for both
                self._on_top = self.here.text == "top"
                self.at += 2
                continue
            if self.here.text in ON_THE_ROW and self.ahead().text == "of":
                self.at += 2
                self.along_rows = True
                continue
            if self.here.text in NOISE:
                self.at += 1
                continue
            return

    def _base(self) -> Target | None:
        """``["same" kind] ["the"] "base" "of" ["the"] chain``: where the chain comes from"""
        mark = self.at
        if self.accept_any("same"):
            self.kind()
            self.accept_any("as", "at")
        self.accept_any("the")
        if self.accept("base") and self.accept("of"):
            self.accept_all("the", "same", "your", "turning", "beginning", "beg", "starting")
            if self.accept_any(*CHAIN_WORDS):
                self.accept_any("-")
                self._chain_figure()
                return Target(At.SAME, "st")
        self.at = mark
        return None

    def _chain_figure(self) -> None:
        """The length of a chain that is named: "of ch 3", but not "of ch, 2 dc in …"."""
        if self.here.type is Type.NUMBER:
            self.at += 1

    def _same(self) -> Target | None:
        """``same = "same" [kind] ["as" words]``"""
        if self.accept_any("current", "joining"):
            return Target(At.SAME, self.kind() or "st")
        if not self.accept_any("same", "that"):
            return None
        kind, nth = self.kind() or "st", 0
        if kind == "sp":
            self._between()
        if self.accept("as"):
            self.accept_any("the")
            nth = int(self.accept_any("last", "first", "previous", "beg", "beginning") == "first")
            if not self.accept_any("join", "joining", "ch", "chain", "sc"):
                self.accept_phrase(self.lexicon.phrases)
        return Target(At.SAME, kind, nth=nth)

    def _ring(self) -> Target | None:
        """``ring = ["magic" | "adjustable" | "center"] ("ring" | "circle" | "mr" | "mc" …)``"""
        magic = self.accept_any("magic", "adjustable", "center", "centre", "sliding", "slip")
        if self.accept_any(*RING_WORDS, *self.lexicon.rings):
            return Target(At.RING)
        if magic and self.accept_any("loop"):
            return Target(At.RING)
        return None

    def _from_hook(self) -> Target | None:
        """``("from" | "starting in" …) hook``: the first chain that is worked into"""
        mark = self.at
        if self.accept_any("starting", "start", "beginning"):
            self.accept_any("in", "at", "from", "with")
        elif not self.accept_any("from"):
            return None
        self.accept_any("the")
        target = self._hook()
        if target is None or target.at is not At.HOOK:
            self.at = mark
            return None
        return target

    def _hook(self) -> Target | None:
        """``hook = ordinal "ch" ["from" ["the"] "hook"]``"""
        nth = self.accept_ordinal()
        if nth is not None and nth > 1 and self._clause_is_over():
            return Target(At.NEXT, "st") if self.begun else Target(At.HOOK, "st", nth=nth)
        if nth is None or self._space_ahead() or not self.accept_any(*CHAIN_WORDS):
            return None
        self._aside_before_from()
        if self.accept("from"):
            self.accept_any("the", "your")
            return Target(At.HOOK, "ch", nth=nth) if self.accept_any("hook") else None
        if self.accept("of"):
            self._noise()
            found = self._turning() or self._chain_length()
            self._suffix()
            return found
        return Target(At.HOOK, "ch", nth=nth) if nth > 1 else Target(At.FIRST, "ch")

    def _aside_before_from(self) -> None:
        """A bracket between "ch" and "from hook" tells only what is passed over."""
        close = self.closing() if self.here.type is Type.OPEN else -1
        if close > 0 and self.tokens[close + 1].text == "from":
            self.at = close + 1

    def _turning(self) -> Target | None:
        """``tch = ["beg" | "turning"] "ch" ["-" number] | "tch" | "top of" "ch" number``"""
        if self.accept_any("tch") or self.accept("t", "-", "ch") or self.accept("top", "ch"):
            return Target(At.LAST, "tch")
        if self._on_top and not self._space_ahead():
            found = self._chain_length()
            if found is not None:
                return found
        if self.here.text in BEGINNING and self.ahead().text in CHAIN_WORDS:
            if self._names_space():
                return None
            first = self.here.text == "first"
            self.at += 2
            if first and not self._length_follows():
                return Target(At.FIRST, "ch")
            self._skip_length()
            return Target(At.LAST, "tch")
        return None

    def _clause_is_over(self) -> bool:
        closed = self.here.type in (Type.END, Type.OPEN, Type.CLOSE)
        return closed or self.here.text in (",", ";", ".")

    def _names_space(self) -> bool:
        """Whether "first ch …" here goes on as the name of a chain space."""
        words = [self.ahead(i).text for i in range(2, 6)]
        sign = [w for w in words if w in SPACE_WORDS]
        return bool(sign) and all(
            w in ("-", *SPACE_WORDS) or w.isdigit() for w in words[: words.index(sign[0]) + 1]
        )

    def _length_follows(self) -> bool:
        return self.here.type is Type.NUMBER or self.here.text == "-"

    def _skip_length(self) -> None:
        """``["-"] [number]``"""
        self.accept("-")
        self.accept_number()

    def _chain_length(self) -> Target | None:
        """A chain named by its length: "ch 3", "3 ch", "ch-4"."""
        self.accept_any(*BEGINNING)
        if self.accept_number() is not None:
            found = bool(self.accept_any(*CHAIN_WORDS))
        else:
            found = bool(self.accept_any(*CHAIN_WORDS))
            if found:
                self._skip_length()
        if found:
            self._suffix()
        return Target(At.LAST, "tch") if found else None

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
        if count is not None or (at is not At.NEXT):
            return self._to_end(Target(at, kind, count))
        return self._to_end(self._grouped(Target(At.EACH, kind)))

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

    def _which(self) -> At | None:
        """``which = "next" | "following" | "first" | "last" | "remaining"``"""
        word = self.accept_any("next", "foll", "following", "remaining", "rem")
        if word:
            self.accept_any("remaining")
            return At.EACH if word in ("remaining", "rem") else At.NEXT
        if self.accept_any("first", "1st", "rst") or self.accept("r", "st"):
            return At.FIRST
        if self.here.text == "end" and self.ahead().text in (*STITCH_WORDS, *CHAIN_WORDS):
            self.at += 1
            return At.LAST
        return At.LAST if self.accept_any("last") else None

    def _skipped(self) -> int:
        """``["each" "of"] [figure | ordinal] "skipped"``: how many of those passed over, or 0"""
        mark = self.at
        self.accept_any("each")
        self.accept_any("of")
        self.accept_any("the", "next", "both")
        count = 1 if self.accept_ordinal() is not None else self.accept_number() or 1
        if self.accept_any("skipped", "missed"):
            return count
        self.at = mark
        return 0

    def _next(self) -> Target | None:
        """``next = which [figure] [kind]``; "any" and "skipped" likewise."""
        if self.accept_any("any"):
            return Target(At.ANY, self.kind() or "st")
        skipped = self._skipped()
        if skipped:
            self._suffix()
            return Target(At.SKIPPED, self.kind() or "st", (skipped,))
        at = self._which()
        if at is None:
            return None
        count = self._count_of_places()
        self.accept_loop()
        kind = self.kind()
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
        """A number of places, unless the number belongs to a space: "next 4-ch loop"."""
        mark = self.at
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
        kind = self.kind()
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
        found = self._grouped(Target(At.EACH if every else At.NEXT, kind))
        return self._to_end(found) if nth is None or nth > 0 else None

    def _post(self) -> Target | None:
        """``"post"`` alone: of the stitch that stands between two petals"""
        self.at += 1
        return Target(At.NEXT, "post") if self._clause_is_over() else None

    def _grouped(self, found: Target) -> Target:
        """``["of" ["next"] group]``: the place is inside a named group."""
        if self.in_group:
            return replace(found, group=self.in_group)
        mark = self.at
        if found.kind == "sp":
            between = self._between()
            if between is not None:
                return replace(between, at=found.at, count=found.count)
        if self.accept("of", "any"):
            while self.here.type in (Type.WORD, Type.NUMBER) or self.here.text == "-":
                self.at += 1
            return Target(At.ANY, found.kind)
        if self.accept("of") or self.accept("from"):
            self.accept_any("the")
            each = bool(self.accept_any("each", "every"))
            self.accept_all("the", "next", "same", "last")
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and len(self.lexicon.stitch(key).spaces) > 0:
                at = At.EACH if each else found.at
                count = found.count
                if found.at is At.EACH and not each:
                    # "in each ch-2 sp of next V-st": all the spaces of that one
                    at, count = At.NEXT, (len(self.lexicon.stitch(key).spaces),)
                return Target(at, found.kind, count, group=key)
        self.at = mark
        return found
