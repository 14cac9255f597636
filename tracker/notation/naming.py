"""Reading which stitch is meant: by its name, as several in one, as several closed together."""

from __future__ import annotations

from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.reaching import Reaching
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Make, Node, Target
from tracker.notation.wordlists import PREPOSITIONS, STITCH_WORDS

#: Stitches that gather several part-made ones: "5-dc popcorn" is one popcorn.
GATHERED = frozenset(("popcorn", "cl", "bobble", "puff"))
_MOST_IN_ONE = 40


class Naming(Reaching):
    """Rules for the names of stitches."""

    def _in_one_place(self, count: Figure | None) -> Stitch | None:
        """``figure ("in" | "to") "1"``: an increase, a decrease, named by what it does."""
        if count is None or self.ahead().text != "1" or self.here.text not in ("in", "to"):
            return None
        widens = self.here.text == "in"
        self.at += 2
        n = min(count[0], _MOST_IN_ONE)
        if widens:
            return STITCHES["inc"]._replace(makes=n)
        return STITCHES["dec"]._replace(takes=n)

    def _next_together(self, start: int) -> list[Node] | None:
        """``["off"] "next" figure "sts" ("together" | "as" 1)``: a decrease, whatever its stitch"""
        mark = self.at
        off = self.accept_any("off")
        self.accept_any("the")
        which = self.accept_any("next", "last", "first")
        if which or off or self._number_of_sts():
            figure = self.accept_figure()
            named = figure is not None and self.kind() is not None
            self.accept_any("off")
            closed = self.accept_any("together", "tog") and self.here.text != "with"
            if named and figure and (closed or self._as_one()):
                stitch = STITCHES["dec"]._replace(takes=min(figure[0], _MOST_IN_ONE))
                target = Target(At.EACH) if self._ends() else None
                told = bool(which or off)
                return [Make(stitch, (1,), target, start, self.last_end, numbered=told)]
        self.at = mark
        return None

    def _number_of_sts(self) -> bool:
        """Whether a number of stitches of no name stands here: "crocheting 2 sts together"."""
        mark = self.at
        found = self.accept_number() is not None and self.here.text in STITCH_WORDS
        self.at = mark
        return found

    def _as_one(self) -> bool:
        """``"as" ("1" | "one") [stitch]``"""
        mark = self.at
        if self.accept("as") and self.accept_any("1", "one"):
            self.kind()
            return True
        self.at = mark
        return False

    def _stitch(self) -> Stitch | None:
        """``["long" …] ["fp"] stitch ["stitch"] ["(see" words ")"] ["(s)"]``"""
        reaching = self.reaching_stitch()
        if reaching is not None:
            return reaching
        key = self.accept_phrase(self.lexicon.phrases) or self._with_glued_loop()
        if key is None or key == "ch":
            return None
        if self.here.text in ("stitch", "stitches"):
            self.at += 1
        if key == "picot" and self.here.text == "-" and self.ahead().type is Type.NUMBER:
            self.at += 2  # "picot-3": of three chains
        if self.here.type is Type.OPEN and self.ahead().text == "see" and self.closing() > 0:
            self.at = self.closing() + 1
        self.accept("(", "s", ")")
        stitch = self.lexicon.stitch(key)
        of = self._made_of() if key in GATHERED or key == "shell" else 0
        return stitch._replace(makes=of) if of and key == "shell" else stitch

    def _made_of(self) -> int:
        """``"(" number stitch ["tog"] ")"`` before a place: of how many a bobble is; 0 if unsaid"""
        close = self.closing() if self.here.type is Type.OPEN else -1
        if self.here.text == "of":
            return self._of_so_many()
        if close < 0 or self.tokens[close + 1].text not in PREPOSITIONS:
            return 0
        mark = self.at
        self.at += 1
        number = self.accept_number()
        self.accept("-")
        named = self.accept_phrase(self.lexicon.phrases) is not None
        self.accept_any("tog", "together")
        if number and named and self.at == close:
            self.at += 1
            return min(number, _MOST_IN_ONE)
        self.at = mark
        return 0

    def _of_so_many(self) -> int:
        """``"of" number stitch`` before a place, or as its clause ends: "a bobble of 5 dc"."""
        mark = self.at
        self.at += 1
        number = self.accept_number()
        named = number and self.accept_phrase(self.lexicon.phrases) not in (None, "ch")
        self.accept_any("stitches", "sts", "s")
        if number and named and (self.here.text in PREPOSITIONS or self.here.text in (",", ";")):
            return min(number, _MOST_IN_ONE)
        self.at = mark
        return 0

    def _with_glued_loop(self) -> str | None:
        """A stitch written in one with its loop: "hdcblo", "blsc"."""
        word = self.here.text
        for loop in ("blo", "flo", "bl", "fl"):
            for rest in (word.removesuffix(loop), word.removeprefix(loop)):
                key = self.lexicon.phrases.get((rest,)) if rest != word else None
                if key is not None and key in STITCHES and STITCHES[key].height:
                    self.loop = "back loop" if loop[0] == "b" else "front loop"
                    self.at += 1
                    return key
        return None

    def _gathered(self, stitch: Stitch, count: Figure | None) -> Stitch | None:
        """``figure stitch "popcorn"`` is one popcorn; ``figure stitch "inc"`` one increase."""
        mark = self.at
        self.accept("-")
        shape = stitch.us in ("inc", "dec", "invdec")
        if shape or (base_of(stitch.us) != stitch.us and stitch.us != "sl st"):
            self.at = mark
            return None
        key = self.accept_phrase(self.lexicon.phrases)
        if key in GATHERED or (key == "shell" and count is not None):
            self.accept_any(*STITCH_WORDS)
            found = self.lexicon.stitch(key)
            return found._replace(makes=count[0]) if key == "shell" and count else found
        if key in ("inc", "dec") and not self._lists(mark, count):
            if key == "dec":
                return _together(stitch, 2)
            return _in_one(stitch, max(2, count[0] if count else 2))
        self.at = mark
        return None

    def _lists(self, mark: int, count: Figure | None) -> bool:
        """Whether "7 sc inc 1 sc inc 8 sc" stands here, a list without commas

        "1 sc inc" is one increase; in "1 sc inc 1" the number belongs to the stitch.
        """
        if count is None:
            return False
        numbered = count == (1,) and self.here.type is Type.NUMBER
        return numbered or count[0] > 3 or not self._set_off(mark)

    def _set_off(self, stitch_end: int) -> bool:
        """Whether a number and its stitch, read up to there, stand at the start of a clause."""
        before = self.tokens[stitch_end - 3] if stitch_end >= 3 else None
        return before is None or before.type in (Type.SIGN, Type.OPEN, Type.STAR)

    def _together(self, stitch: Stitch, count: Figure | None) -> Stitch | None:
        """``stitch ["in"] ["next"] figure ["sts"] "tog"`` closes them as one."""
        mark = self.at
        if self.here.text == "together" and self.ahead().text == "with":
            return None  # "4 sc together with the arm"
        if self.accept_any("tog", "together"):
            # "2 sc together", "sc two together": the figure is read already
            return None if count is None else _together(stitch, count[0])
        self.accept_any("in", "over")
        self.accept_any("the")
        self.accept_any("next", "last", "first", "following")
        figure = self.accept_figure()
        if figure is not None:
            self.kind()
            if self.accept_any("tog", "together") and self.here.text != "with":
                return stitch if stitch.takes == figure[0] else _together(stitch, figure[0])
        self.at = mark
        return None


def _in_one(stitch: Stitch, n: int) -> Stitch:
    """``n`` of a stitch worked into one place, as one thing: an increase."""
    n = min(n, _MOST_IN_ONE)
    return stitch._replace(abbr=f"{n} {stitch.abbr} in one", takes=1, makes=n)


def _together(stitch: Stitch, n: int) -> Stitch:
    """``n`` of a stitch closed as one: a decrease."""
    known = STITCHES.get(f"{stitch.us}{n}tog")
    return known or stitch._replace(
        abbr=f"{stitch.abbr}{n}tog", takes=min(n, _MOST_IN_ONE), makes=1
    )
