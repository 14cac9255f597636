"""Reading what is said of each side of a square or another shape with corners."""

from __future__ import annotations

from tracker.notation.lexicon import Lexicon
from tracker.notation.targets import Targets
from tracker.notation.tokens import Type
from tracker.notation.tree import Figure
from tracker.notation.wordlists import GROUPS

#: Words for the sides of a motif, and for what stands between them.
SIDE_WORDS = ("side", "sides", "edge", "edges")
CORNER_WORDS = ("corner", "corners")
#: Words that lead to them, and words that say "each of them".
_ALONG = ("on", "along", "in", "for", "across", "at", "to", "down", "with", "a", "per", "of")
_EACH = ("each", "every", "all", "a", "the", "per")
#: What is said between "each side" and the figure.
_HAS = (
    *(
        "has",
        "have",
        "had",
        "will",
        "should",
        "must",
        "now",
        "then",
        "is",
        "are",
        "you",
        "contains",
    ),
    *("contains", "counts", "with", "there", "be", "a", "total", "of", ":", "=", "-"),
)


class Sides(Targets):
    """Rules for sides. ``sides_told``: the figures of a side in the count that is read now."""

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, lexicon, sizes)
        self.sides_told: list[tuple[str, Figure]] = []

    def side_in_bracket(self) -> bool:
        """Whether a bracket behind a figure tells of one side, as in "40 dc (10 per side)"."""
        mark, close = self.at, self.closing()
        self.at += 1
        figure = self.accept_figure() if close > 0 else None
        side = None if figure is None else self.of_side(close)
        found = side is not None and self.at == close
        self.at = mark
        if figure is not None and side is not None and found:
            self.sides_told.append((side, figure))
        return found

    def side_told(self) -> bool:
        """``["on"] ("each" | "per") "side" ["has" …]`` before a figure: it is that of a side"""
        mark = self.at
        self.accept_any(*_ALONG)
        each = self.accept_any(*_EACH) or self.tokens[self.at - 1].text == "per"
        self.accept_all("of", "the", "four", "six", "4", "6")
        if each and self.accept_any(*SIDE_WORDS):
            self.accept_all(*_HAS)
            if self.here.type is Type.NUMBER or self.number_in_words():
                return True
        self.at = mark
        return False

    def side_first(self) -> bool:
        """Whether a sentence on each side begins here: "Each side has …"."""
        return self.here.text in ("each", "every") and self.ahead().text in SIDE_WORDS

    def number_in_words(self) -> bool:
        """Whether a number in words stands here."""
        mark = self.at
        found = self.accept_number() is not None
        self.at = mark
        return found

    def of_side(self, close: int) -> str | None:
        """``[kind] ("per side" | "between corners") separator``: what is counted of one side"""
        mark = self.at
        name = self.kind() or ""
        if name == "corner":
            self.at = mark
        several = self.accept_any(*GROUPS)
        if (self._per_side() or self._between_corners()) and self._count_over(close):
            self._corners_besides()
            return "group" if several else "" if name == "st" else name
        self.at = mark
        return None

    def _corners_besides(self) -> None:
        """``"corner" ["sts" | "sps"]`` without a figure: "15 per side plus corners"."""
        mark = self.at
        self.accept_all("the", "a", "plus", "and")
        if self.accept_any(*CORNER_WORDS):
            self._space() or self.accept_any("st", "sts", "stitch", "stitches")
            self.accept_any(*CORNER_WORDS)
        else:
            self.at = mark

    def _per_side(self) -> bool:
        """``(["along" …] ("each" | "per" | "a") | "on" "all four") "side" ["of" …]``"""
        mark = self.at
        led = self.accept_any(*_ALONG)
        each = self.accept_any(*_EACH)
        self.accept_all("of", "the", "your", "four", "three", "five", "six", "eight", "3", "4", "6")
        if (each or led in ("per", "a")) and self.accept_any(*SIDE_WORDS):
            if self.accept_any("of", "between"):
                self.accept_all("the", "your", "each", "square", "hexagon", "motif", "block")
                self.accept_any(*CORNER_WORDS)
                self.accept_any("sp", "sps", "space", "spaces")
            self._between_corners()
            return True
        self.at = mark
        return False

    def _between_corners(self) -> bool:
        """``"between" ["each" | "the"] "corner" ["sps"] ["on" "each" "side"]``"""
        mark = self.at
        if self.accept_any("between", "bet"):
            self.accept_all("each", "the", "two", "of", "all", "every", "any", "pair")
            if self.kind() == "corner":
                self._per_side()
                return True
        self.at = mark
        return False

    def _count_over(self, close: int) -> bool:
        """Whether a figure with all that is said of it ends here, up to token ``close``."""
        if self.at >= close:
            return True
        return bool(self.accept_any(",", ";", "+", "&", "and", "plus", "/", "-", ":", "="))

    def times_by_sides(self) -> tuple[Figure | None, bool]:
        """``("for" | "on" …) ("each" | "remaining" [figure]) "sides"``: how often, and if so

        The number of the sides that are left, where it is told; None for all of them.
        """
        mark = self.at
        if self.accept_any("for", "on", "along", "across", "in", "at", "over"):
            self.accept_all("each", "every", "all", "of", "the", "both")
            left = self.accept_any("remaining", "other", "rem", "rest", "next")
            self.accept_all("of", "the")
            figure = self.accept_figure()
            self.accept_any("remaining", "other")
            if self.accept_any(*SIDE_WORDS, *CORNER_WORDS) and self._side_ended():
                return (figure if left else None), True
        self.at = mark
        return None, False

    def sides_here(self) -> bool:
        """Whether `times_by_sides` stands here."""
        mark = self.at
        found = self.times_by_sides()[1]
        self.at = mark
        return found

    def _side_ended(self) -> bool:
        """Whether no more is said of the sides here."""
        mark = self.at
        if self.accept_any("of", "and"):
            self.accept_all("the", "your", "square", "motif", "corner", "corners", "hexagon")
            self.accept_all("block", "side", "sides", "work")
        if self._clause_is_over() or self.here.text in ("to", "and", "until", "ending"):
            return True
        self.at = mark
        return False
