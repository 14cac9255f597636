"""Reading brackets: repeats, groups for one place, printed counts, asides."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.asides import only_tells
from tracker.notation.bracket_ends import BracketEnds
from tracker.notation.naming import GATHERED
from tracker.notation.nesting import DEEPEST
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type, plain, tokenize
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Loops,
    Make,
    Node,
    Note,
    OtherSide,
    Repeat,
    Skip,
    Unread,
)
from tracker.notation.wordlists import AGAIN, DISTANCE, GROUPS, OF_DISTANCE, WORKING

#: Words that say which group of stitches was made, or that it was.
_SAID_OF_GROUPS = frozenset(
    (
        *("half", "corner", "small", "large", "big", "beg", "beginning"),
        *("end", "ending", "first", "last", "made", "formed", "completed"),
    )
)
_WORKED = Make | Chain | Group | Repeat | Skip | Act | Evenly


class Brackets(BracketEnds):
    """Rules for brackets."""

    def _bracket(self, before: list[Node]) -> list[Node]:
        """``bracket = "(" sequence ")" [target | tail]``, or a count, or an aside"""
        start, close = self.here.start, self.closing()
        if close < 0 or self.deep >= DEEPEST:
            self.at = max(self.at, close) + 1
            return [Unread(self.text[start : self.last_end], start, self.last_end)]
        ends = self._ends_in_bracket(before, close)
        if ends is not None:
            return ends
        worked = any(not isinstance(n, Note | Loops | Act) for n in before)
        first = self.at == 0 and self._opens_with_count(close)
        first = first or self._only_tells(before, close)
        stated = self.bracketed_count() if self.deep == 0 and (worked or first) else None
        if stated is not None:
            self._keep(stated)
            return []
        aside = self.ahead().text in ("see", "measures", "for") or self._names_group(close)
        aside = aside or (self.ahead().text == "corner" and close == self.at + 2)
        aside = aside or self._tells_distance(close) or self._tells_first(before)
        aside = aside or self._tells_of_chain(before)
        begun = self.begun
        body = self._inside(close)
        if aside:
            return [Note(start, self.last_end)]
        if not any(isinstance(n, _WORKED) for n in body):
            side = [n for n in body if isinstance(n, OtherSide)]
            return list(side) or self._bracket_aside(body, start)
        again = self._asked_again(close)
        if self.deep == 0 and ends_round(before) and not again:
            # Behind the join nothing is worked: a count that is told in another way.
            self.begun = begun
            return [Note(start, self.last_end)]
        if any(isinstance(n, Unread) for n in body) and before and not again:
            self.begun = begun
            return self._bracket_aside(body, start)
        return self._bracket_end(tuple(body), start)

    def _ends_in_bracket(self, before: list[Node], close: int) -> list[Node] | None:
        """``"(" what place ")"`` behind "sc around": what is made at an end of it"""
        mark, kept = self.at, list(before)
        self.at += 1
        found = self.at_the_ends(before)
        if found is not None and self.at == close:
            self.at = close + 1
            return found
        self.at, before[:] = mark, kept
        return None

    def _tells_of_chain(self, before: list[Node]) -> bool:
        """Whether the bracket counts what was just worked back along a chain: "(7 sc)"."""
        last = before[-1] if before else None
        target = last.target if isinstance(last, Make) else None
        into_chain = target is not None and target.kind == "ch" and target.at is At.EACH
        chained = any(isinstance(n, Chain) for n in before) and into_chain
        return chained and self.deep > 0 and self.bracketed_count_ahead() is not None

    def _only_tells(self, before: list[Node], close: int) -> bool:
        """Whether other words stand before a bracket that ends the text: "As planned. (21 sc)"."""
        over = all(t.type is Type.END or t.text == "." for t in self.tokens[close + 1 :])
        return over and bool(before) and isinstance(before[-1], Note) and len(before) == 1

    def _tells_distance(self, close: int) -> bool:
        """Whether the bracket says how far apart two things are: "(7 sts between them)"."""
        inside = {t.text for t in self.tokens[self.at + 1 : close] if t.type is not Type.NUMBER}
        return bool(inside & DISTANCE) and inside <= OF_DISTANCE

    def _tells_first(self, before: list[Node]) -> bool:
        """Whether a bracket behind "in each st" tells how the first one is made."""
        last = before[-1] if before else None
        target = last.target if isinstance(last, Make | Group) else None
        each = target is not None and target.at is At.EACH
        return each and self.ahead().text in ("starting", "beginning", "start", "begin")

    def _opens_with_count(self, close: int) -> bool:
        """Whether the round begins with its count: "(18) *sc, inc*", and not "(18) sc"."""
        mark, self.at = self.at, close + 1
        found = not self._stitch_here() and self.here.type is not Type.END
        self.at = mark
        return found and close - mark <= 3

    def _names_group(self, close: int) -> bool:
        """``"(" ["half" | "beg" …] group ["made"] ")"``: what was made is called so"""
        words = {t.text for t in self.tokens[self.at + 1 : close]}
        named = words & GROUPS and words & _SAID_OF_GROUPS
        return bool(named) and words <= GROUPS | _SAID_OF_GROUPS and not self._asked_again(close)

    def _bracket_aside(self, body: list[Node], start: int) -> list[Node]:
        """A bracket with no instruction in it; words that could count stay unread."""
        unread = [n for n in body if isinstance(n, Unread)]
        if only_tells(plain(self.text[start : self.last_end])):
            return [Note(start, self.last_end)]
        words = {t.text for n in unread for t in tokenize(n.words)}
        some = "only" in words and any(isinstance(n, _WORKED) for n in body)
        if some or words & (WORKING - {"stitch", "st", "sts", "first", "last", "same", "each"}):
            return [Unread(self.text[start : self.last_end], start, self.last_end)]
        return [Note(start, self.last_end)]

    def _over(self, made: list[Node]) -> list[Node]:
        """A bracket right behind a stitch may say what it counts as, or spell it out."""
        first = made[0]
        other = self._counted_as()
        if other is not None and isinstance(first, Make):
            return [replace(first, stitch=other, end=self.last_end)]
        if (
            isinstance(first, Make)
            and self.here.type is Type.OPEN
            and self.closing() > 0
            and (_is_special(first.stitch) or self._explains())
            and not self._asked_again(self.closing())
            and (self.bracketed_count_ahead() is None or self._tells_parts(first))
            and self._spells_out()
        ):
            start = self.here.start
            if self._says_what(first):
                made = [replace(first, count=(1,))]
            self.at = self.closing() + 1
            return [*made, Note(start, self.last_end)]
        return made

    def _tells_parts(self, first: Make) -> bool:
        """Whether "(4 dc)" here is what a bobble is made of: more of the round follows it."""
        after = self.tokens[self.closing() + 1]
        return first.stitch.us in GATHERED and after.type is not Type.END and after.text != "."

    def _says_what(self, first: Make) -> bool:
        """Whether the bracket here explains the number: "inc 2 (work 2 sc into 1 st)"."""
        inside = {t.text for t in self.tokens[self.at : self.closing()]}
        number = str(first.count[0])
        named = first.stitch.us in ("inc", "dec") and first.numbered and number in inside
        return named and bool(inside & {"1", "one", "same", "each", "tog", "together"})

    def _counted_as(self) -> Stitch | None:
        """``"(" "counts as" stitch ")"`` behind a stitch: the two of a "ch 3, dc2tog"."""
        mark = self.at
        if self.here.type is Type.OPEN and self.closing() > 0:
            close = self.closing()
            self.at += 1
            self.accept_any("counts", "together")
            self.accept_all("as", "a", "an", "the")
            key = self.accept_phrase(self.lexicon.phrases)
            if (
                key is not None
                and self.at == close
                and self.tokens[mark + 1].text in ("counts", "together")
            ):
                self.at += 1
                return self.lexicon.stitch(key)
        self.at = mark
        return None

    def _explains(self) -> bool:
        inside = self.tokens[self.at + 1 : self.closing()]
        return any(t.text in (":", "loop", "loops", "yo", "hook", "pull") for t in inside)

    def _spells_out(self) -> bool:
        """Whether the bracket here tells how a stitch is made, not what to make next."""
        close = self.closing()
        after = self.tokens[close + 1]
        if self.ahead().text in (*AGAIN, *self.crosses) or self.ahead(2).text in ("times", "x"):
            return False
        return after.type is not Type.NUMBER and after.text not in ("x", "*", "in", "into")


def _is_special(stitch: Stitch) -> bool:
    """Whether a stitch is one that texts explain beside it: an increase, a popcorn."""
    return stitch.takes != 1 or stitch.makes != 1 or stitch.us in GATHERED


def ends_round(nodes: list[Node]) -> bool:
    """Whether the round is closed by what was read last, after something was worked."""
    if not any(isinstance(n, _WORKED) and not isinstance(n, Chain | Act) for n in nodes):
        return False
    for node in reversed(nodes):
        if isinstance(node, Act) and node.deed in (Deed.JOIN, Deed.TURN, Deed.FASTEN):
            return True
        if isinstance(node, Repeat) and node.times is None and not node.implied:
            return True
        if not isinstance(node, Note | Chain | Loops):
            return False
    return False
