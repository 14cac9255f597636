"""Reading which side of a chain comes next, and what is worked there or in the other stitches."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.tokens import Type
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Evenly,
    Make,
    Node,
    Note,
    OtherSide,
    Target,
)
from tracker.notation.wholes import Wholes
from tracker.notation.wordlists import SKIPS, VERBS

#: Words before the chain that is worked into first.
_TO_CHAIN = ("in", "into", "starting", "start", "from", "beginning")


class AlongChains(Wholes):
    """Rules for words on the sides of a chain that was worked along."""

    def _turned_back(self, before: list[Node]) -> bool:
        """``["now"] ("working" | "going" …) "back" ("along" | "down") "the" "chain"`` behind one

        What is told next goes into that chain.
        """
        mark = self.at
        last = next((n for n in reversed(before) if not isinstance(n, Note)), None)
        self.accept_all("now", "then", "and")
        moved = self.accept_any("working", "work", "going", "go", "coming", "come", "crochet")
        moved = moved or self.accept_any("crocheting", "returning", "return", "turn", "turning")
        if moved and isinstance(last, Chain):
            self.accept_all("your", "way", "and", "work", "working", "go")
            back = self.accept_any("back", "down")
            if back and (self._back_along() or back == "down"):
                self.accept_all(",", ":", "and")
                stands = self._stitch_here() or self.here.type in (Type.NUMBER, Type.END)
                if stands or self.here.text in (*_TO_CHAIN, *SKIPS, *VERBS):
                    return True
        self.at = mark
        return False

    def _other_side_alike(self, before: list[Node]) -> list[Node] | None:
        """``("mirror" | "repeat") ["these" "stitches"] "on" other_side``: of a chain, as on this"""
        mark, start = self.at, self.here.start
        self.accept_all("now", "then", "and")
        if self.accept_any("mirror", "mirroring", "repeat", "repeating"):
            self.accept_all("this", "these", "the", "same", "stitches", "sts", "sequence", "of")
            self.accept_all("in", "reverse", "order", "all", "pattern", "steps")
        elif not self._same_again():
            self.at = mark
            return None
        led = self.here.text in ("on", "along", "down", "up", "for")
        self.at += self.here.text in ("for", "up")
        side = self._other_side() if led else None
        along = _one_side(before) if side is not None and self._clause_is_over() else []
        if not along:
            self.at = mark
            return None
        return [OtherSide(start, self.last_end), *reversed(along)]

    def _same_again(self) -> bool:
        """``("work" | "do") ["these" | "the"] "same" ["stitches"] ["in" "reverse" ["order"]]``"""
        if self.accept_any("work", "do", "crochet", "make", "working"):
            begin = self.at
            self.accept_all("these", "the", "same", "stitches", "sts", "thing", "in", "reverse")
            self.accept_all("order", "again")
            return "same" in {t.text for t in self.tokens[begin : self.at]}
        return False

    def _in_the_others(self, before: list[Node]) -> bool:
        """``stitch "in" ("between" | "the" "others" …)`` behind "dec at both ends": the rest"""
        mark = self.at
        last = before[-1] if before else None
        if isinstance(last, Evenly) and last.ends:
            self.accept_all("and", "with", "1", "one", "work", "working", "a")
            named = self.accept_phrase(self.lexicon.phrases) not in (None, "ch", "inc", "dec")
            if named and self.accept_any("in", "into"):
                self.accept_all("all", "each", "every", "of", "the")
                if self.accept_any("between", "others", "other", "rest", "remaining"):
                    self.accept_all("them", "sts", "stitches", "st", "ones")
                    if self._clause_is_over():
                        return True
        self.at = mark
        return False


def _one_side(before: list[Node]) -> list[Make]:
    """The stitches along a chain, one in each place, with the next place for each; else []."""
    made = [node for node in before if not isinstance(node, Chain | Note | Act)]
    found = []
    for node in made:
        target = node.target if isinstance(node, Make) else None
        if not isinstance(node, Make) or node.stitch.takes != 1 or node.stitch.makes != 1:
            return []
        if target is None:
            found.append(node)
        elif target.at in (At.HOOK, At.NEXT, At.LAST) and node.count == (1,):
            found.append(replace(node, target=Target(At.NEXT, "st", target.count)))
        else:
            return []
    hooked = made[0].target if made and isinstance(made[0], Make) else None
    return found if hooked is not None and hooked.at is At.HOOK else []
