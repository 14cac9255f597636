"""Reading places that are named by something that stands there: hook, ring, turning chain."""

from __future__ import annotations

from itertools import pairwise

from tracker.notation.gaps import Gaps
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Target
from tracker.notation.wordlists import (
    BEGINNING,
    CHAIN_WORDS,
    END_WORDS,
    MIDDLE,
    NOISE,
    ON_THE_ROW,
    ON_THE_STITCH,
    PREPOSITIONS,
    RING_WORDS,
    ROUND_WORDS,
    SPACE_WORDS,
    STITCH_WORDS,
)

#: Words before a ring that is pulled tight.
_MAGIC = (
    *("magic", "magical", "adjustable", "center", "centre", "sliding", "slip"),
    *("thread", "yarn", "amigurumi"),
)

#: What became of a yarn or a turning chain in a place.
_JOINED_AT = frozenset(
    ("joined", "attached", "joins", "join", "comes", "stands", "sits", "started")
)
#: Words behind "just".
_MADE = frozenset(("made", "formed", "created", "worked", "completed"))


_MIDDLE = ("middle", "center", "centre")


class Landmarks(Gaps):
    """Rules for landmarks.

    ``led`` is the preposition before the place read last; ``begun`` tells whether the round
    has made a stitch yet, ``in_ring`` whether a ring was made that "it" may mean.
    """

    led = ""
    begun = False
    in_ring = False
    _on_top = False

    def _noise(self) -> None:
        """Words before a place that do not change it, and the loop if it is named."""
        while True:
            if self.accept_loop():
                self._on_top = self.tokens[self.at - 1].text == "of"
                if not (self.here.text in END_WORDS and self._is_to_the_end()):
                    self.accept_any(*PREPOSITIONS)
                continue
            if self.here.text in ON_THE_STITCH and self.ahead().text == "of":
                based = self.here.text == "base" and self.ahead(2).type is Type.NUMBER
                if based or self._middle_of_several():
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

    def _middle_of_several(self) -> bool:
        """``middle "of" ["the" "next"] figure stitches``: one stitch for all of them"""
        words = [self.ahead(n) for n in range(2, 6)]
        at = next((i for i, t in enumerate(words) if t.text not in ("the", "next", "foll")), 0)
        glued = self.ahead(at + 3).text == "-"
        return self.here.text in MIDDLE and words[at].type is Type.NUMBER and not glued

    def _base(self) -> Target | None:
        """``["same" kind] ["the"] "base" "of" ["the"] chain``: where the chain comes from"""
        mark = self.at
        if self.accept_any("same"):
            self.kind()
            self.accept_any("as", "at")
        self.accept_any("the")
        if self.accept("base") and self.accept("of"):
            self.accept_all("the", "same", "your", "turning", "beginning", "beg", "starting")
            if self.ahead().text in CHAIN_WORDS:
                self.accept_number()
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
        just = self._just_made()
        if just is not None:
            return just
        if self.accept_any("current", "joining"):
            kind = self.kind()
            return Target(At.SAME, kind or "st") if kind or self.led else None
        if self.ahead().text in (*ROUND_WORDS, *ON_THE_ROW) or not self.accept_any("same", "that"):
            return None
        kind, nth = self.kind() or "st", 0
        looped = self.tokens[self.at - 1].text in ("loop", "loops", "lp", "lps")
        if kind == "sp" and looped and self._loops_named():
            kind = "st"  # "in front loop of next st, ch 3, 2 dc in same loop"
        if kind in ("sp", "gap"):
            self._between()
        if self.accept("as"):
            self.accept_any("the")
            nth = int(self.accept_any("last", "first", "previous", "beg", "beginning") == "first")
            self._number_of_stitch()
            if self.accept_any("ch", "chain"):
                self._skip_length()
            elif not self.accept_any("join", "joining", "sc"):
                self.accept_phrase(self.lexicon.phrases)
        self._where_joined()
        return Target(At.SAME, kind, nth=nth)

    def _where_joined(self) -> None:
        """``("where" | "that") words ("joined" | "attached" …)`` behind "same st": that one"""
        mark = self.at
        if self.accept_any("where", "that", "which"):
            words = self._clause_words()
            if not words.isdisjoint(_JOINED_AT) and len(words) < 8:
                while self.tokens[self.at - 1].text not in _JOINED_AT:
                    self.at += 1
                return
        self.at = mark

    def _just_made(self) -> Target | None:
        """``(space | "joining" stitch) ("just" "made" | "formed" "by" words)``: behind the hook

        A stitch that closed the round below, if not a slip stitch, stands in that space.
        """
        mark = self.at
        closing = self.accept_any("joining", "closing")
        if not closing and _MADE.isdisjoint(self.ahead(n).text for n in range(1, 7)):
            return None
        kind = self.kind()
        made = self.accept_any("just")
        said = self.accept_any(*_MADE)
        if said and not made:
            made = self.accept_any("by", "with", "from", "at")
            self.accept_all("the", "a", "your", "join", "joining", "closing", "last", "end", "of")
            self.accept_phrase(self.lexicon.phrases)
            self.accept_all("join", *ROUND_WORDS)
        spaced = kind is not None and (kind in ("sp", "corner") or kind.endswith(" sp"))
        stitch = kind not in (None, "st", "ch", "sl st", "tch") and not spaced
        if (spaced and (closing or (made and said))) or (closing and stitch):
            return Target(At.SAME, kind if spaced and kind else "sp")
        self.at = mark
        return None

    def _loops_named(self) -> bool:
        """Whether the text speaks of front or back loops of stitches."""
        words = [t.text for t in self.tokens]
        return any(
            a in ("front", "back", "unused") and b in ("loop", "loops", "lp", "lps")
            for a, b in pairwise(words)
        )

    def _number_of_stitch(self) -> None:
        """``[number]`` before a stitch: "in same ch as first 2 sc"."""
        mark = self.at
        if self.accept_number() is None or not self._stitch_named():
            self.at = mark

    def _stitch_named(self) -> bool:
        """Whether the short name of a stitch stands here."""
        mark = self.at
        key = self.accept_phrase(self.lexicon.phrases)
        self.at = mark
        return key not in (None, "ch", "sl st")

    def _ring(self) -> Target | None:
        """``ring = ["magic" | "adjustable" | "center"] ("ring" | "circle" | "mr" | "mc" …)``"""
        if self.in_ring and self.accept("it") and self._clause_is_over():
            return Target(At.RING)
        magic = self.accept_any(*_MAGIC)
        if self.here.text == "mc" and self._names_yarn():
            return None
        if self.accept_any(*RING_WORDS, *self.lexicon.rings):
            return Target(At.RING)
        if magic and self.accept_any("loop"):
            return Target(At.RING)
        return None

    def _names_yarn(self) -> bool:
        """Whether "MC" is the main yarn and no magic circle: the words go round or name another."""
        words = {token.text for token in self.tokens}
        return not words.isdisjoint(("cc", "each", "next", "around", "across"))

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
        if nth is not None and self._of_so_many_chains():
            return Target(At.LAST, "tch")
        loops = (*STITCH_WORDS, *SPACE_WORDS) if self.ahead().text == "from" else ()
        if nth is None or (self._space_ahead() and not loops):
            return None
        if not self.accept_any(*CHAIN_WORDS, *loops):
            return None
        self.accept_any("stitch", "stitches")
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

    def _of_so_many_chains(self) -> bool:
        """``"of" ["the"] [figure | "beg" …] "ch" [figure]`` behind "3rd"."""
        mark = self.at
        if self.accept("of"):
            self.accept_all("the", "your", "these", "first")
            if self._chain_length() is not None and not self._space_ahead():
                return True
        self.at = mark
        return False

    def _aside_before_from(self) -> None:
        """A bracket between "ch" and "from hook" tells only what is passed over."""
        close = self.closing() if self.here.type is Type.OPEN else -1
        if close > 0 and self.tokens[close + 1].text == "from":
            self.at = close + 1

    def _turning(self) -> Target | None:
        """``tch = ["beg" | "turning"] "ch" ["-" number] | "tch" | "top of" "ch" number``"""
        if self.accept_any("tch") or self.accept("t", "-", "ch") or self.accept("top", "ch"):
            return Target(At.LAST, "tch", group="sp" if self.accept_any(*SPACE_WORDS) else "")
        if not self._space_ahead():
            mark = self.at
            found = self._chain_length()
            if found is not None and (self._on_top or self.tokens[self.at - 1].text in ROUND_WORDS):
                return found
            self.at = mark
        if self.here.text in BEGINNING and self.ahead().text in CHAIN_WORDS:
            if self.here.text == "turning" and self.ahead(2).text in SPACE_WORDS:
                self.at += 3
                return Target(At.LAST, "tch", group="sp")
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
            self.accept("-")
            found = bool(self.accept_any(*CHAIN_WORDS))
            if found and self.here.text in BEGINNING and self.ahead().text in CHAIN_WORDS:
                self.at += 2  # "of 3-ch turning chain"
        else:
            found = bool(self.accept_any(*CHAIN_WORDS))
            if found:
                self._skip_length()
        if found:
            self._suffix()
        return Target(At.LAST, "tch") if found else None

    def _post(self) -> Target | None:
        """``"post"`` alone: of the stitch that stands between two petals"""
        self.at += 1
        return Target(At.NEXT, "post") if self._clause_is_over() else None

    def _which(self) -> At | None:
        """``which = "next" | "following" | "first" | "last" | "remaining"``"""
        word = self.accept_any("next", "nearest", "foll", "following", "remaining", "rem")
        if word:
            self.accept_any("remaining")
            return At.EACH if word in ("remaining", "rem") else At.NEXT
        if self.here.text in _MIDDLE and self.ahead().type is Type.NUMBER:
            self.at += 1  # "in each of the middle 6"
            return At.NEXT
        if self.here.text == "other" and self.ahead().type is Type.NUMBER:
            self.at += 1  # "in the other 14 sts"
            return At.EACH
        if self.accept_any("first", "1st", "rst") or self.accept("r", "st"):
            return At.FIRST
        if self.here.text in BEGINNING and self.ahead().text in (*SPACE_WORDS, "corner"):
            self.at += 1
            return At.FIRST
        if self.here.text == "end" and self.ahead().text in (*STITCH_WORDS, *CHAIN_WORDS):
            self.at += 1
            return At.LAST
        return At.LAST if self.accept_any("last", "final") else None
