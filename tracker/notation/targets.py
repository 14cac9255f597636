"""Reading where stitches go: "in each of next 3 sts", "in 2nd ch from hook"."""

from __future__ import annotations

from tracker.notation.kit import Kit
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Target

_PREPOSITIONS = (
    "in", "into", "on", "onto", "over", "through", "under", "within", "thru", "to", "inside",
    "round", "around", "on", "at",
)  # fmt: skip
_ON_THE_STITCH = (
    "top", "base", "post", "posts", "back", "middle", "center", "centre", "tip",
)  # fmt: skip
_NOISE = ("the", "a", "an", "of", "each", "your", "both", "this", "these", "it", "to")
_STITCH_WORDS = ("st", "sts", "stitch", "stitches", "place", "spot", "post", "posts", "stich")
_CHAIN_WORDS = ("ch", "chs", "chain", "chains")
_SPACE_WORDS = ("sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches")
_RING_WORDS = ("ring", "circle", "mr", "mc")
_END_WORDS = ("around", "across", "round")
_ROUND_WORDS = ("rnd", "rnds", "round", "rounds", "row", "rows", "r")
_BEGINNING = ("beg", "beginning", "turning", "starting", "start", "first")


class Targets(Kit):
    """Rules for places. ``loop`` is set aside when the words name a loop."""

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, sizes)
        self.lexicon = lexicon
        self.loop = ""
        self._plural = False
        self._plural_sts = False
        self._below = 0
        self.led = ""
        self._until_kind = ""

    def target(self) -> Target | None:
        """``target = [preposition] place [end]``; None (and nothing read) if none is here."""
        mark = self.at
        if self.here.text in _END_WORDS and self._is_to_the_end():
            self.at += 1
            return self._to_end(Target(At.EACH))
        self.led = self.accept_any(*_PREPOSITIONS)
        led = bool(self.led)
        if led:
            self.accept_any("to")
        self._below = 0
        found = self._place(led)
        if found is None:
            self.at = mark
        elif self._below:
            return Target(At.BELOW, found.kind, found.count, nth=self._below)
        return found

    def _is_to_the_end(self) -> bool:
        """Whether "around" here ends a clause, rather than leading to a place."""
        return self.ahead().type in (Type.SIGN, Type.END, Type.OPEN, Type.CLOSE) or (
            self.ahead().text in ("to", "until", "and", "with", "join", *_ROUND_WORDS, "turn")
            or (self.ahead().text in ("the",) and self.ahead(2).text in _ROUND_WORDS)
        )

    def _place(self, led: bool) -> Target | None:
        """``place = same | ring | hook | each | next | nth | tch | counted | bare``"""
        self._noise()
        for rule in (self._same, self._ring, self._hook, self._turning, self._each, self._next):
            mark = self.at
            found = rule()
            if found is not None:
                return found
            self.at = mark
        return self._bare() if led else None

    def _noise(self) -> None:
        """Words before a place that do not change it, and the loop if it is named."""
        while True:
            if self.accept_loop():
                self.accept_any(*_PREPOSITIONS)
                continue
            if self.here.text in _ON_THE_STITCH and self.ahead().text == "of":
                self.at += 2
                continue
            if self.here.text in _NOISE and self.here.text != "each":
                self.at += 1
                continue
            return

    def accept_loop(self) -> bool:
        """``loop = "blo" | "back loop" ["s"] ["only"] | …``; sets ``self.loop``."""
        mark = self.at
        self.accept_any("the")
        side = self._loop_side()
        if not side:
            self.at = mark
            return False
        self.loop = f"{side} loop"
        self.accept_any("only")
        self.accept_any("of")
        return True

    def _loop_side(self) -> str:
        short = self.accept_any("blo", "flo", "bl", "fl", "blp", "flp", "bls", "fls")
        if short:
            return "back" if short[0] == "b" else "front"
        side = self.here.text
        if side in ("back", "front") and self.ahead().text in ("loop", "loops", "lp", "lps"):
            self.at += 2
            return side
        return ""

    def _same(self) -> Target | None:
        """``same = "same" [kind] ["as" words]``"""
        if self.accept_any("current"):
            return Target(At.SAME, self.kind() or "st")
        if not self.accept("same"):
            return None
        kind = self.kind() or "st"
        if self.accept("as"):
            self.accept_any("the")
            self.accept_any("last", "first", "previous", "beg", "beginning")
            if not self.accept_any("join", "joining", "ch", "chain", "sc"):
                self.accept_phrase(self.lexicon.phrases)
        return Target(At.SAME, kind)

    def _ring(self) -> Target | None:
        """``ring = ["magic" | "adjustable" | "center"] ("ring" | "circle" | "mr" | "mc" …)``"""
        magic = self.accept_any("magic", "adjustable", "center", "centre", "sliding")
        if self.accept_any(*_RING_WORDS, *self.lexicon.rings):
            return Target(At.RING)
        if magic and self.accept_any("loop"):
            return Target(At.RING)
        return None

    def _hook(self) -> Target | None:
        """``hook = ordinal "ch" ["from" ["the"] "hook"]``"""
        nth = self.accept_ordinal()
        if nth is not None and nth > 1 and self._clause_is_over():
            return Target(At.HOOK, "ch", nth=nth)
        if nth is None or self._space_ahead() or not self.accept_any(*_CHAIN_WORDS):
            return None
        if self.here.type is Type.OPEN and self.closing() > 0:
            if self.tokens[self.closing() + 1].text == "from":
                self.at = self.closing() + 1
        if self.accept("from"):
            self.accept_any("the", "your")
            return Target(At.HOOK, "ch", nth=nth) if self.accept_any("hook") else None
        if self.accept("of"):
            self._noise()
            found = self._turning() or self._chain_length()
            self._suffix()
            return found
        return Target(At.HOOK, "ch", nth=nth) if nth > 1 else Target(At.NEXT, "ch")

    def _turning(self) -> Target | None:
        """``tch = ["beg" | "turning"] "ch" ["-" number] | "tch"``"""
        if self.accept_any("tch") or self.accept("t", "-", "ch") or self.accept("top", "ch"):
            return Target(At.LAST, "tch")
        if self.here.text in _BEGINNING and self.ahead().text in _CHAIN_WORDS:
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
        return self.here.type in (Type.END, Type.OPEN, Type.CLOSE) or self.here.text in (",", ".")

    def _space_ahead(self) -> bool:
        """Whether a chain space is named here."""
        mark = self.at
        found = self._space() is not None
        self.at = mark
        return found

    def _names_space(self) -> bool:
        """Whether "first ch …" here goes on as the name of a chain space."""
        words = [self.ahead(i).text for i in range(2, 6)]
        sign = [w for w in words if w in _SPACE_WORDS]
        return bool(sign) and all(
            w in ("-", *_SPACE_WORDS) or w.isdigit() for w in words[: words.index(sign[0]) + 1]
        )

    def _length_follows(self) -> bool:
        return self.here.type is Type.NUMBER or self.here.text == "-"

    def _skip_length(self) -> None:
        self.accept("-")
        self.accept_number()

    def _chain_length(self) -> Target | None:
        """A chain named by its length: "ch 3", "3 ch", "ch-4"."""
        self.accept_any(*_BEGINNING)
        if self.accept_number() is not None:
            return Target(At.LAST, "tch") if self.accept_any(*_CHAIN_WORDS) else None
        if self.accept_any(*_CHAIN_WORDS):
            self._skip_length()
            return Target(At.LAST, "tch")
        return None

    def _each(self) -> Target | None:
        """``each = ("each" | "every" | "all") ["of"] ["next"] [figure] [kind] [end]``"""
        word = self.accept_any("each", "every", "all", "ea")
        if not word:
            return None
        if word == "all" and self.accept("but"):
            return self._all_but()
        self.accept_all("of", "the", "every", "one")
        self.accept_loop()
        at = self._which() or At.NEXT
        count = self._count_of_places()
        self.accept_loop()
        kind = self.kind() or ("st" if self._may_lack_kind() else "")
        if not kind:
            return None
        if count is not None or (at is not At.NEXT):
            return self._to_end(Target(at, kind, count))
        return self._to_end(Target(At.EACH, kind))

    def _may_lack_kind(self) -> bool:
        return self.here.type in (Type.SIGN, Type.END, Type.CLOSE, Type.OPEN) or (
            self.here.text in _END_WORDS or self.here.text in ("to", "and")
        )

    def _all_but(self) -> Target | None:
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
        if self.accept_any("first", "1st"):
            return At.FIRST
        return At.LAST if self.accept_any("last") else None

    def _next(self) -> Target | None:
        """``next = which [figure] [kind]``; "any" and "skipped" likewise."""
        if self.accept_any("any"):
            return Target(At.ANY, self.kind() or "st")
        if self.ahead().text == "skipped":
            self.accept("next")
        if self.accept_any("skipped"):
            self._suffix()
            return Target(At.SKIPPED, self.kind() or "st")
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
            return None
        kind = self.kind()
        if kind is None:
            self.at = mark
            count = self.accept_figure()
            kind = self.kind()
            if count is None or kind is None:
                return None
            return self._to_end(Target(At.NEXT, kind, count))
        every = kind == "st" and self._plural_sts
        found = self._grouped(Target(At.EACH if every else At.NEXT, kind))
        return self._to_end(found) if nth is None or nth > 0 else None

    def _grouped(self, found: Target) -> Target:
        """``["of" ["next"] group]``: the place is inside a named group."""
        mark = self.at
        if self.accept("of") or self.accept("from"):
            self.accept_all("the", "each", "next", "same", "last")
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and len(self.lexicon.stitch(key).spaces) > 0:
                return Target(found.at, found.kind, found.count, group=key)
        self.at = mark
        return found

    def kind(self) -> str | None:
        """``kind = "st" | space | "ch" | "corner" | stitch``, as `Target.kind` names it."""
        self._plural = False
        mark = self.at
        for rule in (self._corner, self._space, self._group_kind, self._stitch_kind):
            found = rule()
            if found is not None:
                if self.here.text == "(" and self.ahead().text == "s" and self.ahead(2).text == ")":
                    self.at += 3
                self._suffix()
                return found
            self.at = mark
        return None

    def _corner(self) -> str | None:
        self.accept_any("edge")
        if not self.accept_any("corner", "corners"):
            return None
        self.accept("-")
        if self._space() is None:
            self.accept_any(*_STITCH_WORDS)
        return "corner"

    def _space(self) -> str | None:
        """``space = ["ch"] ["-"] [number] ["-"] ["ch"] ["-"] ("sp" | "loop" | …)``"""
        length = None
        chain = bool(self.accept_any(*_CHAIN_WORDS))
        if chain:
            self.accept("-")
        if self.here.type is Type.NUMBER:
            length = self.here.value
            self.at += 1
            self.accept("-")
        if not chain:
            chain = bool(self.accept_any(*_CHAIN_WORDS))
        if chain:
            self.accept("-")
        if not self.accept_any("corner") and not (chain or length is None):
            return None
        if not chain and self.here.text in ("loop", "loops") and length is not None:
            return None
        word = self.accept_any(*_SPACE_WORDS)
        if not word:
            return None
        self._plural = word.endswith("s")
        return "sp" if length is None else f"ch-{length} sp"

    def _group_kind(self) -> str | None:
        """``["center" stitch "of"] [figure stitch] ("shell" | "fan" | "group")``"""
        mark = self.at
        if self.accept_any("center", "centre", "middle"):
            self.kind_of_stitch()
            if not self.accept("of"):
                self.at = mark
                return None
            self.accept_all("the", "next", "each")
        if self.here.type is Type.NUMBER:
            self.at += 1
            self.accept("-")
            self.accept_phrase(self.lexicon.phrases)
        if self.accept_any("fan", "fans", "group", "groups", "shell", "shells"):
            return "group"
        self.at = mark
        return None

    def kind_of_stitch(self) -> None:
        """Read the name of a stitch, if one stands here."""
        if not self.accept_any(*_STITCH_WORDS):
            self.accept_phrase(self.lexicon.phrases)

    def _stitch_kind(self) -> str | None:
        if self.here.text in ("row", "rows") and self.ahead().text in ("end", "ends"):
            self.at += 2
            return "st"
        word = self.accept_any(*_STITCH_WORDS)
        self._plural_sts = word in ("sts", "stitches")
        if word:
            if self.accept("and") and self.accept_any("in"):
                self.accept_any("each")
            if self.tokens[self.at - 1].text in ("and", "in", "each"):
                if self.accept_any(*_CHAIN_WORDS, *_SPACE_WORDS):
                    return "st+ch"
                while self.tokens[self.at - 1].text in ("and", "in", "each"):
                    self.at -= 1
            return "st"
        if self.accept_any(*_CHAIN_WORDS):
            return "ch"
        key = self.accept_phrase(self.lexicon.phrases)
        if key is not None:
            self.accept_any(*_STITCH_WORDS)
        return key

    def _suffix(self) -> None:
        """Words after a kind that add nothing: "of the previous round", "below", "made"."""
        while True:
            mark = self.at
            if self.accept("you"):
                while self.here.type is Type.WORD and self.here.text != "and":
                    self.at += 1
            self.accept_any("made", "below", "worked")
            if self.accept_any("of", "from", "in", "on"):
                self.accept_any("the")
                self.accept_any("previous", "prev", "last", "below")
                if not self.accept_any(*_ROUND_WORDS):
                    self.at = mark
                else:
                    self._below = self.accept_number() or 0
                    self.accept_any("below")
            if self.at == mark:
                return
            if self.tokens[self.at - 1].text in ("of", "from", "in", "on", "the"):
                self.at = mark
                return

    def _to_end(self, found: Target) -> Target:
        """``end = "around" | "across" | "to end" | "to last" figure kind | …``

        "around" after a counted place only says how the work goes on.
        """
        around = self._ends()
        mark = self.at
        if self.accept_any("to", "until", "till"):
            self.accept_all("the", "you", "reach")
            if self.accept_any("last"):
                leave = self.accept_figure() or (1,)
                self.kind()
                return Target(At.EACH, found.kind, leave=leave)
            if found.at is At.EACH and self._next_until():
                return Target(At.EACH, found.kind, until=self._until_kind)
            self.at = mark
        if around and found.at is At.NEXT and found.count is None:
            return Target(At.EACH, found.kind)
        return found

    def _next_until(self) -> bool:
        self._until_kind = ""
        self.accept_any("next")
        kind = self.kind()
        if kind is None or kind == "st":
            return False
        self._until_kind = kind
        return True

    def _ends(self) -> bool:
        """``("all" | "the way")? ("around" | "across" | "to the end" ["of" "round"])``"""
        found = False
        while True:
            mark = self.at
            self.accept_any("all")
            if self.accept_any(*_END_WORDS):
                self.accept_all("the", *_ROUND_WORDS)
                found = True
                continue
            if self.accept_any("to", "until", "till"):
                self.accept_any("the")
                self.accept_any("very")
                if self.accept_any("end"):
                    if self.accept("of"):
                        self.accept_all("the", "chain", *_ROUND_WORDS)
                    found = True
                    continue
            self.at = mark
            return found
