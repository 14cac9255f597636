"""Reading the printed count, and what its figures count: "(24)", "[12 (14, 16) sts]"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.bunches import named
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.round_text import Stated
from tracker.notation.sides import SIDE_WORDS, Sides
from tracker.notation.tokens import Type
from tracker.notation.tree import Figure
from tracker.notation.wordlists import (
    CHAIN_WORDS,
    LEFT_OUT,
    NOT_COUNTED,
    ROUND_WORDS,
    SPACE_WORDS,
    TOTAL,
)

#: Signs between the figures of a count.
_PARTING = (",", ";", "+", "&", "/", ":")
_TWO = 2


class Counts(Sides):
    """Rules for printed counts."""

    def bracketed_count(self) -> Stated | None:
        """``count = bracket (figure [words]) {"," figure [words]} bracket``

        A bracket that holds figures and nouns only, and is not asked to be repeated.
        """
        each = self._bracket_each()
        if each is not None:
            return each
        close = self.closing()
        if self.here.type is not Type.OPEN or close < 0 or self._asked_again(close):
            return None
        mark = self.at
        start = self.here.start
        self.at += 1
        found = self._figures(close)
        if found is None:
            self.at = mark
            return None
        if self.tokens[mark - 1].text in SIDE_WORDS and found.parts and not found.sides:
            found = Stated(None, (), 0, 0, found.parts)  # "… along the side (12 sc)"
        self.at = close + 1
        if self.ahead().text in (".", "", ";") and self.accept_any("sts", "stitches"):
            self.accept(".")  # "(24) sts."
        return replace(found, start=start, end=self.last_end)

    def _bracket_each(self) -> Stated | None:
        """``"(" figure ")" {"(" figure ")"}``: a bracket for each of several sizes"""
        mark, start = self.at, self.here.start
        found: list[int] = []
        while self.sizes > 1 and self.here.type is Type.OPEN and self.closing() == self.at + 2:
            found.append(self.ahead().value)
            self.at += 3
        if len(found) == self.sizes and all(found):
            return Stated(tuple(found), (), start, self.last_end)
        self.at = mark
        return None

    def bracketed_count_ahead(self) -> Stated | None:
        """The printed count that stands here, without reading it."""
        mark = self.at
        found = self.bracketed_count()
        self.at = mark
        return found

    def _asked_again(self, close: int) -> bool:
        """Whether what follows the bracket makes it a repeat or a group in one place."""
        after, then = self.tokens[close + 1], self.tokens[close + 2 : close + 3]
        if after.text == "all" and then and then[0].text in ("in", "into"):
            return True
        text = after.text
        if text in ("in", "into", "around", "across", "x", "*", "twice", "times", "to", "until"):
            return True
        number = after.type is Type.NUMBER or after.text in NUMBER_WORDS
        return number and bool(then) and then[0].text in ("times", "x", "more")

    def _figures(self, close: int) -> Stated | None:
        """Figures with what each counts, up to token ``close``."""
        if self.accept("+"):
            self.accept_number()  # "(+6 = 18)"
        self.accept_any("=", "-")
        if self.accept_any("count", "total", "stitch", "tot"):
            self.accept_any("count", "is", "of")
            self.accept_any(":", "=")
        self.accept_all(
            *("you", "should", "have", "there", "are", "now", "a", "total", "of", "will", "be"),
            *("you'll", "you've", "there'll", "we", "we'll", "we've", "must", "get"),
            *("end", "up", "with", "makes", "made", "it", "to", "is", "increased", "decreased"),
        )
        parts: list[tuple[str, Figure]] = []
        sides = self.sides_told = []
        sided = self.side_told()
        while self.at < close:
            if parts and self._left_out(self.at, close):
                self.at = close
                continue
            length = self._chain_part()
            if length:
                parts.append((f"ch-{length} sp", (1,)))
                continue
            figure = self._count_figure()
            if figure is None:
                return None
            if self._of_rounds() or self._of_changes():
                continue
            side = None if sided else self.of_side(close)
            what = self._counted(close) if side is None else side
            if what is None:
                return None
            (sides if sided or side is not None else parts).append((what, figure))
        parts = self._by_size(parts)
        return _stated(parts, sides) if (parts or sides) and not _in_turn(parts) else None

    def _by_size(self, parts: list[tuple[str, Figure]]) -> list[tuple[str, Figure]]:
        """Figures for all sizes as one: "(9, 10)", "[9, 10 sc, 1 ch-8 sp]"."""
        several = parts[: self.sizes]
        if self.sizes < _TWO or len(several) < self.sizes or any(what for what, _ in several[:-1]):
            return parts
        name = several[-1][0]
        spaced = name.endswith("sp") or name in ("group", "bunch")
        if any(len(f) > 1 for _, f in several) or (self.sizes == _TWO and spaced):
            return parts
        return [(name, tuple(f[0] for _, f in several)), *parts[self.sizes :]]

    def _chain_part(self) -> int:
        """``"ch" "-" number``: one space of that length; 0 where none is named"""
        mark = self.at
        if self.accept("ch"):
            self.accept("-")
            length = self.accept_number()
            if length is not None:
                self.accept_any(*SPACE_WORDS)
                self.accept_any(",", "+")
                return length
        self.at = mark
        return 0

    def _of_rounds(self) -> bool:
        """``("rounds" | "rows") [","]``: the figure before them counts no stitches"""
        if not self.accept_any(*ROUND_WORDS):
            return False
        self.accept_any(",", ";")
        return True

    def _of_changes(self) -> bool:
        """``("inc" | "dec") ["made"] [","]``: how many were shaped, which is no count"""
        mark = self.at
        key = self.accept_phrase(self.lexicon.phrases)
        if key in ("inc", "dec", "invdec"):
            self.accept_any("made", "done")
            self.accept_any(",", ";", "=", ":")
            return True
        self.at = mark
        return False

    def _count_figure(self) -> Figure | None:
        """A figure; "(9st)" and "(21st)" are figures run into the word for stitches."""
        token = self.here
        if token.type is Type.ORDINAL and token.text.endswith("st"):
            self.at += 1
            return (token.value,)
        return self.accept_figure()

    def _counted(self, close: int) -> str | None:
        """What a figure counts: words up to the next comma; "" for plain stitches."""
        first, name = True, ""
        words: list[str] = []
        while self.at < close and self.here.text not in _PARTING:
            token = self.here
            if token.text in ("and", "plus") or self._said_of_chain(close):
                break
            if token.text in ("in", "into") and self._place_follows():
                return None
            if token.text in NOT_COUNTED and not (
                words and token.text in ("each", "round", "around", "made")
            ):
                return None
            if first:
                mark = self.at
                name = self.kind() or ""
                first = False
                if self.at > mark:
                    words.append(name)
                    continue
            aside = token.type is Type.OPEN and self._left_out(self.at + 1, self.closing())
            if aside or (token.type is Type.OPEN and self.side_in_bracket()):
                self.at = self.closing() + 1
                continue
            if token.type in (Type.OPEN, Type.STAR):
                return None
            words.append(token.text)
            self.at += 1
        if self.at < close:
            self.accept_any(*_PARTING)
            self.accept_any("and", "plus")
        return self._name(name, words)

    def _said_of_chain(self, close: int) -> bool:
        """``("-" | "." | ":") words`` on the beginning chain, up to the end of the bracket"""
        said = self.here.text in ("-", ".", ":") and self._left_out(self.at + 1, close)
        self.at += int(said)
        return said

    def _left_out(self, begin: int, end: int) -> bool:
        """Whether the words there only say if the beginning chain is in the count."""
        words = {t.text for t in self.tokens[begin:end]}
        return not (words.isdisjoint(CHAIN_WORDS) or words.isdisjoint(LEFT_OUT))

    def _place_follows(self) -> bool:
        """Whether "in" here leads to a place and not to a total: "(3 sc in 1 st)"."""
        return self.ahead().text not in (
            "total",
            "all",
            "the",
            "this",
            "each",
            "round",
            "rnd",
            "row",
        )

    def _name(self, name: str, words: list[str]) -> str | None:
        """What words behind a figure mean, as `Stated.parts` names it."""
        if not words or name == "st":
            return named(words)
        if name == "ch" or name.endswith("sp"):
            return name
        several = named(words)
        if name == "cl" and words[1:2] == ["of"] and words[-1] != "cl":
            several = "bunch"  # "4 clusters of 3 dc"
        if several:
            return several
        if name:
            return name
        return "" if TOTAL.issuperset(words) else "group"


def _in_turn(parts: list[tuple[str, Figure]]) -> bool:
    """Whether the same comes again behind a chain space: "(2 dc, ch 2, 2 dc)" is no count."""
    names = [name for name, _ in parts]
    spaces = [i for i, name in enumerate(names) if name.startswith("ch-")]
    return any(set(names[:i]) & set(names[i + 1 :]) for i in spaces)


def _stated(parts: list[tuple[str, Figure]], sides: list[tuple[str, Figure]]) -> Stated:
    """The total, where the parts can simply be added; else only the parts."""
    if sides:
        whole = _stated(parts, []) if parts else Stated(None, (), 0, 0)
        return replace(whole, sides=tuple(sides))
    if len(parts) == 1 and parts[0][0] not in ("group", "bunch", "picot"):
        name, figure = parts[0]
        return Stated(figure if not name.endswith("sp") else None, ((name, figure),), 0, 0)
    beside = ("bunch", "picot", "corner")
    followed = [p for p in parts if p[0] not in beside and not p[0].endswith("sp")]
    plain = [figure for name, figure in followed if name != "group"]
    if len(plain) != len(followed) or not plain:
        return Stated(None, tuple(parts), 0, 0)
    length = max(len(f) for f in plain)
    total = tuple(sum(f[i] if len(f) > 1 else f[0] for f in plain) for i in range(length))
    return Stated(total, tuple(parts), 0, 0)
