"""Reading a petal that is told as a thing of its own: "make a petal in each st: ch 3, 2 dc …"."""

from __future__ import annotations

from tracker.notation.bunches import named
from tracker.notation.corners import Corners
from tracker.notation.gathers import MAKING
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Group, Make, Node, Note, Repeat


class Petals(Corners):
    """Rules for petals, leaves and scallops whose stitches are told behind their name."""

    def _things_led(self) -> list[Node] | None:
        """``[target] "make" "a" thing [target] (":" | "as" "follows") (bracket | list)``

        What is told behind it is one petal, in each of those places. Without a place the words
        only say what comes.
        """
        mark, start = self.at, self.here.start
        target = self.target() if self.here.text in ("in", "into") else None
        self.accept_any(",")
        if not self.accept_any(*MAKING, "create", "form", "working", "making"):
            self.at = mark
            return None
        self.accept_all("a", "an", "the", "one", "1", "your", "first", "each", "another")
        thing = named([self.here.text]) == "bunch"
        if not thing:
            self.at = mark
            return None
        self.at += 1
        target = target or (self.target() if self.here.text in ("in", "into", "on") else None)
        self.accept("as", "follows") or self.accept("like", "this")
        if (
            not self.accept_any(":", "-")
            or self._counts_things()
            or (target and target.at is At.RING)
        ):
            self.at = mark
            return None
        if target is None:
            return [Note(start, self.last_end)]
        body = self._told_thing()
        if not body:
            self.at = mark
            return None
        self.begun = True
        return [Group(tuple(body), target, start, self.last_end)]

    def _for_each_thing(self) -> list[Node] | None:
        """``"for" ("each" | "every") thing (":" | ",") words``: the sentence, again and again

        ``"for each of the" figure things`` says how often.
        """
        mark, start = self.at, self.here.start
        led = self.accept("for") and self.accept_any("each", "every", "all")
        self.accept_all("of", "the", "your")
        figure = self.accept_figure() if led else None
        if not led or named([self.here.text]) != "bunch" or self.begun or self.deep:
            self.at = mark
            return None
        self.at += 1
        if not self.accept_any(":", ",", "-"):
            self.at = mark
            return None
        end = self.at
        while self.tokens[end].text != "." and self.tokens[end].type is not Type.END:
            end += 1
        body = self.sequence(end)
        worked = any(isinstance(n, Make | Group) for n in body)
        ended = any(isinstance(n, Repeat) and n.times is None for n in body)
        if not worked or ended:
            self.at = mark
            return None
        return [Repeat(tuple(body), start, self.last_end, figure, starred=figure is None)]

    def _counts_things(self) -> bool:
        """Whether a number of petals stands here: no petal is told, but their count."""
        mark = self.at
        found = self.accept_figure() is not None and named([self.here.text]) == "bunch"
        self.at = mark
        return found

    def _told_thing(self) -> list[Node]:
        """``bracket [["all"] "in" "same" stitch] | (make | chain) {"," (make | chain)}``"""
        found: list[Node] = []
        if self.here.type is Type.OPEN and self.closing() > 0:
            found = self._inside(self.closing())
            self._all_in_same()
            return found
        while True:
            mark = self.at
            item = self.chain() or self._item_in_same()
            if item is None:
                self.at = mark
                return found if any(isinstance(n, Make) for n in found) else []
            found.append(item)
            mark = self.at
            self.accept_all(",", "and", "&", "then")

    def _item_in_same(self) -> Make | None:
        """A stitch without a place of its own, or in the same one."""
        mark = self.at
        made = self.make()
        only = made[0] if made is not None and len(made) == 1 else None
        if isinstance(only, Make) and (only.target is None or only.target.at is At.SAME):
            return only
        self.at = mark
        return None
