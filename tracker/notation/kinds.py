"""Reading kinds of place: "st", "ch-2 sp", "corner", "shell", and loops of a stitch."""

from __future__ import annotations

from tracker.notation.beneath import Beneath
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import Type
from tracker.notation.wordlists import (
    BUMPS,
    CHAIN_WORDS,
    GAP_WORDS,
    LOOP_WORDS,
    MIDDLE,
    ROUND_WORDS,
    SPACE_WORDS,
    STITCH_WORDS,
)

#: Kinds of place that are no stitches of a name.
_PLACES = ("middle", "st", "st+ch", "st+sp", "ch", "corner", "sp", "fp", "bp", "lone", "gap")


#: Words for several stitches in one place.
_GROUPS = ("fan", "fans", "group", "groups", "shell", "shells", "petal", "petals", "grp", "grps")


class Kinds(Beneath):
    """Rules for kinds of place. ``loop`` is set aside when the words name a loop."""

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, lexicon, sizes)
        self.loop = ""
        #: how the kind read last was written
        self._plural = False
        self._plural_sts = False
        self.in_group = ""
        #: whether the words name the sides of rows as places
        self.along_rows = False
        #: whether the kind read last was the end of a row
        self.into_rows = False

    @property
    def crosses(self) -> tuple[str, ...]:
        """The sign for "times", unless the text uses it for a stitch."""
        return () if ("x",) in self.lexicon.phrases else ("x",)

    def accept_loop(self) -> bool:
        """``loop = "blo" | "back loop" ["s"] ["only"] | …``; sets ``self.loop``."""
        mark = self.at
        self.accept_any("the")
        if self.here.text == "both" and self.ahead().text in ("loop", "loops", "lps"):
            self.at += 2
            self.loop = ""
            self.accept_any("only")
            self.accept_any("of")
            return True
        side = self._loop_side()
        bump = not side and self.here.text in ("back", "bottom") and self.ahead().text in BUMPS
        if not side and not bump:
            self.at = mark
            return False
        self.at += 2 * bump
        self.loop = "back bump" if bump else f"{side} loop"
        self.accept_any("only")
        self.accept_any("of")
        return True

    def _loop_side(self) -> str:
        """``"blo" | "flo" … | ("back" | "front") "loop"``"""
        short = self.accept_any(*LOOP_WORDS)
        if short:
            return "back" if "b" in short else "front"
        side = self.here.text
        if side in ("third", "3rd", "middle") and self.ahead().text in ("loop", "loops"):
            self.at += 2
            return "third"
        if side in ("back", "front") and self.ahead().text in ("loop", "loops", "lp", "lps"):
            self.at += 2
            return side
        return ""

    def kind(self) -> str | None:
        """``kind = "st" | space | "ch" | "corner" | stitch``, as `Target.kind` names it."""
        self._plural = self._plural_sts = self.at_base = False
        self.in_group = ""
        begin = self.at
        self.accept_any(
            "standing", "held", "unworked", "live", "free", "skipped", "remaining", "rem"
        )
        if self.accept_any(*GAP_WORDS):
            return "gap"
        mark = self.at
        for rule in (self._corner, self._space, self._group_kind, self._lone, self._stitch_kind):
            found = rule()
            if found is not None:
                found = self._space_of_group(found) or found
                self.accept("(", "s", ")")
                self._suffix()
                return found
            self.at = mark
        self.at = begin
        return None

    def _space_of_group(self, kind: str) -> str | None:
        """``group space``: the space in a shell or V stitch, as in "next shell sp"."""
        if kind != "group" and (kind in _PLACES or not self._has_spaces(kind)):
            return None
        if not self._space_ahead():
            return None
        self.in_group = kind
        return self._space()

    def _has_spaces(self, key: str) -> bool:
        """Whether a stitch has chain spaces in it."""
        return not key.endswith("sp") and bool(self.lexicon.stitch(key).spaces)

    def _corner(self) -> str | None:
        """``["edge"] "corner" ["-"] [space | "st"] | ("center" | "side") space | middle``"""
        if self.accept_any(*MIDDLE, "mid", "side"):
            return self._space() or self._middle()
        if self._marked():
            return "corner"
        edge = self.accept_any("edge")
        word = self.accept_any("corner", "corners")
        if not word:
            return self._space() if edge else None
        self.accept("-")
        if self._space() is None:
            self.kind_of_stitch()
            self._plural = word == "corners" or self._plural_sts
        return "corner"

    def _middle(self) -> str | None:
        """``stitch`` behind "center": the middle one of the row; not where it is a corner's"""
        cornered = any(t.text in ("corner", "corners") for t in self.tokens)
        central = self.tokens[self.at - 1].text in MIDDLE
        if cornered or not central or self._stitch_kind() in (None, "ch"):
            return None
        if self.here.text == "of":
            words = (self.ahead(n).text for n in range(1, 4))
            row = next((w for w in words if w not in ("the", "this", "last", "previous")), "")
            return "middle" if row in ROUND_WORDS else None
        return None if self._plural_sts else "middle"

    def _marked(self) -> bool:
        """``"marked" (space | stitch) | (space | stitch) "with" ["a"] "marker"``: a corner

        Makers of squares mark the places in which they turn corners: common practice, no source.
        """
        mark = self.at
        led = self.accept_any("marked")
        begin = self.at
        if self._space() is None:
            self.kind_of_stitch()
            self._plural = self._plural_sts
        named = self.at > begin
        if named and not led and self.accept_any("with", "that", "where", "marked"):
            self.accept_all("the", "a", "your", "has", "is", "holds", "stitch", "st")
            led = self.accept_any("marker", "markers", "marked")
        if named and led:
            return True
        self.at = mark
        return False

    def _space(self) -> str | None:
        """``space = ["ch"] ["-"] [number] ["-"] ["ch"] ["-"] ("sp" | "loop" | …)``"""
        length = None
        chain = bool(self.accept_any(*CHAIN_WORDS))
        if chain:
            self.accept("-")
        if self.here.type is Type.NUMBER:
            length = self.here.value
            self.at += 1
            self.accept("-")
        if not chain:
            chain = bool(self.accept_any(*CHAIN_WORDS))
        if chain:
            self.accept("-")
        corner = bool(self.accept_any("corner", "corners"))
        if not corner and not (chain or length is None):
            return None
        if not chain and self.here.text in ("loop", "loops") and length is not None:
            return None
        word = self.accept_any(*SPACE_WORDS, *(GAP_WORDS if chain and length else ()))
        if not word:
            return f"ch-{length} sp" if corner and chain and length else None
        self._plural = word.endswith("s")
        length = length or (None if chain or corner else self._of_chains())
        return "sp" if length is None else f"ch-{length} sp"

    def _of_chains(self) -> int | None:
        """``"of" number "ch"`` behind a space: "every loop of 5 ch"."""
        mark = self.at
        number = self.accept_number() if self.accept("of") else None
        if number and self.accept_any(*CHAIN_WORDS):
            return number
        self.at = mark
        return None

    def _space_ahead(self) -> bool:
        """Whether a chain space is named here."""
        mark = self.at
        found = self._space() is not None
        self.at = mark
        return found

    def _group_kind(self) -> str | None:
        """``["center" stitch "of"] [figure stitch] ("shell" | "fan" | "group")``"""
        mark = self.at
        if self.accept_any(*MIDDLE):
            self.kind_of_stitch()
            if not self.accept("of"):
                self.at = mark
                return None
            self.accept_all("the", "next", "each", "last", "first", "following", "foll")
        if self.here.type is Type.NUMBER:
            self.at += 1
            self.accept("-")
            self.accept_phrase(self.lexicon.phrases)
        if self.accept_any(*_GROUPS):
            return "group"
        self.at = mark
        return None

    def _lone(self) -> str | None:
        """``("single" | "lone") stitch``: one that stands alone, outside any shell"""
        if not self.accept_any("single", "lone") or self.here.text == "crochet":
            return None
        return None if self.accept_phrase(self.lexicon.phrases) in (None, "ch") else "lone"

    def _stitch_kind(self) -> str | None:
        """``"row ends" | "st" ["and" "ch"] | "ch" | stitch ["st"]``"""
        ends = self.here.text in ("row", "rows") and self.ahead().text in ("end", "ends")
        if ends or (self.along_rows and self.here.text in ("row", "rows")):
            self.at += 1 + ends
            self.into_rows = True
            return "st"
        word = self.accept_any(*STITCH_WORDS)
        self._plural_sts = word in ("sts", "stitches")
        if word:
            chains = self._and_chains()
            if chains:
                return chains
            self._and_stitches()
            return "st"
        if self.accept_any(*CHAIN_WORDS):
            self.accept_any("stitch", "stitches", "sts", "st")
            return "ch"
        key = self.accept_phrase(self.lexicon.phrases)
        posted = self.accept_any("fp", "bp") if key is None else ""
        if posted:
            key = self.accept_phrase(self.lexicon.phrases)  # "next FP puff st"
            if key is None and self.accept_any(*STITCH_WORDS):
                return posted
        if key is None:
            return None
        self.accept_any(*STITCH_WORDS)
        chains = self._and_chains()
        if chains:
            return chains
        return "st" if self._and_stitches() else key

    def _and_stitches(self) -> bool:
        """``("and" ["each"] | "including") stitch``: more kinds of stitch are meant alike"""
        mark = self.at
        each = self.tokens[max(0, mark - 2)].text in ("each", "every")
        if self.accept("including") or (each and self.accept("and")):
            self.accept_any("each", "every", "the")
            space = self._space_ahead()
            found = not space and self.accept_phrase(self.lexicon.phrases) is not None
            led = self.here.text in ("in", "into") or self._stitch_led()
            if found and not led:
                return True
        self.at = mark
        return False

    def _stitch_led(self) -> bool:
        """Whether "around" here leads to a stitch, as behind one that goes round its post."""
        return self.here.text == "around" and self.ahead().text in ("each", "every", "next")

    def _and_chains(self) -> str:
        """``"and" ["in" ["each"]] ("ch" | "sp")``: stitches and chains alike are places

        "st+ch" for single chains, "st+sp" for the spaces under them, "" for neither.
        """
        mark = self.at
        if self.accept("and"):
            self.accept_any("in")
            self.accept_any("each", "every")
            spaced = self.ahead().text == "-" or self.ahead().type is Type.NUMBER
            if not spaced and self.accept_any(*CHAIN_WORDS):
                self.accept_any("st", "sts", "stitch", "stitches")
                return "st+sp" if self.accept_any(*SPACE_WORDS) else "st+ch"
            if not spaced and self.accept_any(*SPACE_WORDS):
                self._of_chains()
                return "st+sp"
        self.at = mark
        return ""
