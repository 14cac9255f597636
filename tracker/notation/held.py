"""Reading clusters told step by step: "holding back last loop of each, 3 dc in next sp, yo …"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from tracker.notation.dictionary import STITCHES
from tracker.notation.gathers import Gathers
from tracker.notation.tree import At, Chain, Make, Node
from tracker.notation.wordlists import SEPARATORS

_HOLDING = ("holding", "leaving", "keeping", "retaining", "hold", "leave", "keep", "retain")
_LOOPS = frozenset(("loop", "loops", "lp", "lps"))
#: What the hands do to close what was held back.
_CLOSING = ("yo", "yoh", "yarn", "thread", "wrap", "draw", "pull", "then", "and", "o")
_SPARE = 3


class Held(Gathers):
    """Rules for stitches whose last loops stay on the hook until all are closed as one."""

    def held_back(self, before: list[Node]) -> list[Node] | None:
        """``holding … "loop" …, make …, (yo | draw) "through all" …``: one stitch of several

        A beginning chain before it is one of those, and stands on the first of their places.
        """
        mark, start = self.at, self.here.start
        if not self._held() or not self._closed_later():
            self.at = mark
            return None
        self.accept_all(*SEPARATORS)
        made = self.make()
        one = made[0] if made and len(made) == 1 else None
        self.accept_all(*SEPARATORS)
        if not isinstance(one, Make) or one.target is None or not self._closes_all():
            self.at = mark
            return None
        self.begun = True
        return [self._as_cluster(replace(one, start=start, end=self.last_end), before)]

    def _held(self) -> bool:
        """``holding ["back"] … "loop" …`` as a clause, or before what is made"""
        if not self.accept_any(*_HOLDING):
            return False
        end, looped = self.clause_end(), False
        while self.at < end:
            looped = looped or self.here.text in _LOOPS
            if looped and self._makes_here():
                return True
            self.at += 1
        return looped

    def _makes_here(self) -> bool:
        """Whether "work 3 dc in …" begins here, and not "of each dc"."""
        mark, before = self.at, self.tokens[self.at - 1].text
        made = self.make() if before not in ("of", "each", "every", "the") else None
        self.at = mark
        return made is not None and isinstance(made[0], Make) and made[0].target is not None

    def _closed_later(self) -> bool:
        """Whether "through all" follows, so that it is closed at all."""
        words = [token.text for token in self.tokens[self.at :]]
        return any(a == "through" and b in ("all", "both") for a, b in pairwise(words))

    def _closes_all(self) -> bool:
        """``("yo" | "draw" …) … "through all" …``, up to the end of that clause"""
        mark = self.at
        for _ in range(_SPARE):
            if self.here.text not in _CLOSING:
                break
            words = self._clause_words()
            self.to_clause_end()
            if {"through", "all"} <= words:
                return True
            self.accept_any(",")
        self.at = mark
        return False

    def _as_cluster(self, one: Make, before: list[Node]) -> Make:
        """The stitches as one, in their one place or over all of their places."""
        last = before[-1] if before else None
        chained = isinstance(last, Chain) and last.count[0] > 1 and not _worked(before)
        if isinstance(last, Chain) and chained:
            before[-1] = replace(last, counts=False, part=True)
        cluster = STITCHES["cl"]
        target = one.target
        places = target.count if target is not None else None
        if places is None:
            return replace(one, stitch=cluster, count=(1,), numbered=False)
        same = one.count[0] in (1, places[0]) and target is not None and target.at is At.NEXT
        takes = places[0] + chained if same else places[0]
        return replace(one, stitch=cluster._replace(takes=takes), count=(1,), target=None)


def _worked(nodes: list[Node]) -> bool:
    return any(isinstance(n, Make) and n.stitch.us != "sl st" for n in nodes)
