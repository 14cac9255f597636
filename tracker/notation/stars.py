"""Reading what stars repeat: "*sc, ch 1; rep from * around"."""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from itertools import pairwise

from tracker.notation.nesting import Nesting
from tracker.notation.tokens import Type
from tracker.notation.tree import (
    At,
    Chain,
    Group,
    Make,
    More,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
    Unread,
)
from tracker.notation.wordlists import AGAIN, SEPARATORS


class Stars(Nesting):
    """Rules for stars."""

    def _starred(self) -> list[Node]:
        """``starred = star {element} [star] tail``"""
        start, opener = self.here.start, self.here.text
        self.at += 1
        if self._is_footnote():
            return [Unread(opener, start, self.last_end)]
        body: list[Node] = []
        stop = -1
        self.starring += 1
        while not self.done() and self.here.type is not Type.CLOSE:
            if self.accept_any(*SEPARATORS):
                continue
            if self._marks_stop(opener):
                stop = len(body)
                self.at += 1
            elif self._closes(opener):
                self.at += 1
                break
            elif self._count_at_end() or self.here.text in AGAIN or not self._starred_element(body):
                break
        self.starring -= 1
        return self._star_end(tuple(body), stop, start)

    def _is_footnote(self) -> bool:
        """Whether only a number follows the star, and no stitch such as "5-dc popcorn"."""
        if self.here.type is not Type.NUMBER:
            return False
        if self.ahead().text == "-" and self.ahead(2).type is Type.WORD:
            return False
        if any(token.type is Type.STAR for token in self.tokens[self.at :]):
            return False  # "*3, inc* rep"
        mark = self.at
        self.accept_figure()
        worked = self._stitch_here()  # "*3 (1) sc", a figure for each size
        self.at = mark
        return not worked and self.ahead().type in (Type.SIGN, Type.OPEN, Type.END)

    def _count_at_end(self) -> bool:
        """Whether the printed count stands here, as the last thing of the text."""
        if self.here.type is not Type.OPEN or self.deep:
            return False
        last = self.tokens[self.closing() + 1].type is Type.END
        mark = self.at
        found = self.bracketed_count() is not None
        self.at = mark
        return last and found

    def _starred_element(self, body: list[Node]) -> bool:
        """Add one element to ``body``; False where it would be nested too deep."""
        if not self._deeper():
            return False
        body += self.element(body)
        self.deep -= 1
        # "*sc, 3 hdc, sc in each ch-3 sp around." says where all of it ends
        over = self.here.text in (".", ";") and _each_space(tuple(body)) is not None
        over = over or (self.here.text in (",", ".", ";") and _goes_into_each(tuple(body)))
        return not (over and self._no_more_stars)

    @property
    def _no_more_stars(self) -> bool:
        """Whether no star and no word for a repeat follows in the text."""
        return not any(t.type is Type.STAR or t.text in AGAIN for t in self.tokens[self.at :])

    def _marks_stop(self, opener: str) -> bool:
        """Whether the star here only marks where the last pass ends ("… at **")."""
        if self.here.type is not Type.STAR or self.here.text == opener:
            return False
        return self._named_later("at") or self._named_later("ending")

    def _closes(self, opener: str) -> bool:
        """Whether a star stands here that opens no repeat inside the one of ``opener``."""
        if self.here.type is not Type.STAR:
            return False
        nests = self._named_later("from") and not self._named_later("to")
        return self.here.text == opener or not nests

    def _named_later(self, word: str) -> bool:
        """Whether ``word`` and then stars like those here follow in the text."""
        return self._last_named.get((word, self.here.text), -1) > self.at

    @cached_property
    def _last_named(self) -> dict[tuple[str, str], int]:
        """Word and stars behind it -> index of the word where they stand last."""
        return {
            (word.text, star.text): index
            for index, (word, star) in enumerate(pairwise(self.tokens))
            if star.type is Type.STAR
        }

    def _star_end(self, body: tuple[Node, ...], stop: int, start: int) -> list[Node]:
        """``[tail]`` behind the stars; without one they may still be repeated to the end"""
        if all(isinstance(node, Note) for node in body) and self.here.text not in AGAIN:
            return list(body)  # a remark between stars
        closed, begin = self.tokens[self.at - 1].type is Type.STAR, self.at
        found = self.tail(starred=True)
        # "*sc 2, inc* repeat 6 times", closed like a bracket, is six in all
        named = any(t.type is Type.STAR for t in self.tokens[begin : self.at])
        each = _each_space(body)
        if found is None and each is not None and isinstance(body[-1], Make):
            # "*sc, 3 hdc, sc in each ch-3 sp around": all of it goes into each space
            inner = (*body[:-1], replace(body[-1], target=None))
            return [Group(inner, each, start, self.last_end)]
        round_ = _each_end(body)
        if found is None and round_:
            # "*2 sc, sc2tog to end": all of it, again and again
            return [Repeat(round_, start, self.last_end, starred=True)]
        if found is None and not closed and _goes_into_each(body):
            return list(body)  # "*(puff, ch 1) in each st around.": the star opens nothing
        if found is None:
            loose = Repeat(body, start, self.last_end, starred=True, more=More.UNSAID, implied=True)
            return [loose] if body else []
        if found.target is not None and not found.times:
            return [Group(body, found.target, start, self.last_end)]
        bracketed = closed and not named and found.times is not None
        repeat = self._repeat(body, found, start, starred=not bracketed)
        return [replace(repeat, stop=stop)] if body else []


def _each_space(body: tuple[Node, ...]) -> Target | None:
    """The chain spaces that the last of several placeless stitches names, if it does."""
    last = body[-1] if body else None
    if not isinstance(last, Make) or last.target is None or len(body) < 2:
        return None
    placed = [n for n in body[:-1] if not isinstance(n, Make | Chain) or _placed(n)]
    spaced = last.target.kind.endswith("sp") and last.target.at is At.EACH
    return last.target if spaced and not placed else None


def _goes_into_each(body: tuple[Node, ...]) -> bool:
    """Whether all that is made goes into each place to the end of the round."""
    made = [n for n in body if isinstance(n, Make | Group | Repeat | Chain | Skip)]
    first = made[0] if len(made) == 1 else None
    target = first.target if isinstance(first, Make | Group) else None
    return target == Target(At.EACH, target.kind) if target is not None else False


def _placed(node: Node) -> bool:
    return isinstance(node, Make) and node.target is not None


def _each_end(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """The body without "to end" behind its last stitch, where only that has a place."""
    last = body[-1] if body else None
    if not isinstance(last, Make) or last.target is None or len(body) < 2:
        return ()
    target = last.target
    plain = target.at is At.EACH and target.kind == "st" and target.leave is None
    if not plain or target.until or any(_placed(n) for n in body[:-1]):
        return ()
    return (*body[:-1], replace(last, target=None))
