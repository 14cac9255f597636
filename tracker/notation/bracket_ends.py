"""Reading what stands behind a bracket: how often it is done, where it goes, what it is."""

from __future__ import annotations

from tracker.notation.ends import spacey
from tracker.notation.stars import Stars
from tracker.notation.stitches import Stitch
from tracker.notation.things import Tail
from tracker.notation.tokens import Type
from tracker.notation.tree import Chain, Figure, Group, Make, Node, Repeat, Target
from tracker.notation.wordlists import AGAIN


class BracketEnds(Stars):
    """Rules for the ends of brackets."""

    def _bracket_end(self, body: tuple[Node, ...], start: int) -> list[Node]:
        """``["-" "first" stitch] [star] [tail | target]`` behind a bracket"""
        named = self._first_aside()
        if named is not None:
            target = next((n.target for n in reversed(body) if isinstance(n, Make)), None)
            return [Make(named, (1,), target, start, self.last_end)]
        mark = self.at
        times = self._bare_times()
        if times is not None:
            return [Repeat(body, start, self.last_end, times)]
        found = None if self._star_again() else self.tail(starred=False)
        if found is None and self.here.type is Type.STAR and self.ahead().text in AGAIN:
            self.at += 1
            found = self.tail(starred=True)
        if found is None:
            self.at = mark
            target = self._target_of_bracket()
            target = self.hook_counts(target)
            if target is not None:
                return [Group(body, target, start, self.last_end), *self._also(body)]
            placed = self._place_behind_chain(body, start)
            if placed:
                return placed
            return [Repeat(body, start, self.last_end, (1,), implied=True)]
        if found.target is not None and found.times is None:
            return [Group(body, found.target, start, self.last_end)]
        return self._bracket_repeat(body, found, start)

    def _star_again(self) -> bool:
        """Whether "rep from *" stands here inside that star: it is not the bracket's."""
        mark = self.at
        self.accept_any(",", ";", ".")
        found = self.accept_any(*AGAIN) and self.accept("from") and self.here.type is Type.STAR
        self.at = mark
        return bool(found) and self.starring > 0

    def _bare_times(self) -> Figure | None:
        """``number count``, as the last of the text: "(sc 2, inc) 6 [24]" is done 6 times"""
        mark, times = self.at, self.here.value
        if self.here.type is not Type.NUMBER or self.ahead().type is not Type.OPEN:
            return None
        self.at += 1
        ends = self.bracketed_count() is not None and self.here.type in (Type.END, Type.SIGN)
        self.at = mark + 1 if ends else mark
        return (times,) if ends else None

    def _target_of_bracket(self) -> Target | None:
        """The place behind a bracket, also behind a comma: "(3 dc, ch 2, 3 dc), in any sp"."""
        if self.here.text in ("around", "across"):
            return None
        mark = self.at
        comma = self.accept(",")
        self.accept_any("all")
        if not comma or self.here.text in ("in", "into"):
            target = self.target()
            if target is not None and (not comma or self._clause_is_over()):
                return target
        self.at = mark
        return None

    def _bracket_repeat(self, body: tuple[Node, ...], found: Tail, start: int) -> list[Node]:
        """``tail ["in" target]``: repeated in its own places, or in one"""
        mark = self.at
        target = self.target() if self.here.text in ("in", "into") else None
        if target is not None:
            inner: tuple[Node, ...] = (self._repeat(body, found, start, starred=False),)
            return [Group(inner, target, start, self.last_end)]
        self.at = mark
        return [self._repeat(body, found, start, starred=False)]

    def _place_behind_chain(self, body: tuple[Node, ...], start: int) -> list[Node]:
        """``[","] chain [","] ("in" | "into") place``, told behind a bracket that goes there"""
        mark = self.at
        self.accept_any(",")
        chained = any(isinstance(n, Chain) for n in body[1:-1])
        chain = self.chain() if chained else None
        end = self.last_end
        self.accept_any(",")
        if chain is not None and self.here.text in ("in", "into"):
            target = self.target()
            spaced = target is not None and spacey(target.kind)
            if target is not None and spaced and self._clause_is_over():
                return [Group(body, target, start, end), chain]
        self.at = mark
        return []

    def _also(self, body: tuple[Node, ...]) -> list[Node]:
        """``group target {"and" target}``: the same group in further places."""
        mark, start = self.at, self.here.start
        if self.here.type is Type.OPEN and self.tokens[self.closing() - 1].text == "made":
            self.at = self.closing() + 1  # "… in same sp (corner made) and in each sp"
        self.accept_any(",")
        if self.accept_any("and"):
            self.accept_any("in", "into")
            target = self._place(led=False)
            if target is not None:
                return [Group(body, target, start, self.last_end)]
        self.at = mark
        return []

    def _first_aside(self) -> Stitch | None:
        """``("-" "first" | ["counts"] "as") stitch`` behind a bracket: it made that stitch."""
        mark = self.at
        dashed = self.accept("-")
        counted = bool(self.accept_any("counts", "counting", "counted"))
        named = (counted or not dashed) and self.accept("as")
        named = named or (dashed and bool(self.accept_any("first")))
        if named:
            self.accept_all("a", "the", "first", "beginning", "beg")
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None:
                self.accept_any("stitch", "st")
                return self.lexicon.stitch(key)
        self.at = mark
        return None
