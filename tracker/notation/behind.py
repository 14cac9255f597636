"""Reading what is told behind stitches: chains between, where the last goes, what is left."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.along import AlongChains
from tracker.notation.merging import goes_round
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Chain, Group, Make, Node, Note, Repeat, Skip, Target
from tracker.notation.wordlists import GROUPS, OF_EDGES, ROUND_WORDS, SKIPS

#: A number of places that stands for all that are left.
REST = 10**9


class Behind(AlongChains):
    """Rules for words behind stitches, which say more of them or of the places beside them."""

    def _chains_between(self, before: list[Node]) -> bool:
        """``["with"] chain "between" ["each"] [stitch]``: chains behind each stitch made last"""
        mark = self.at
        last = before[-1] if before else None
        self.accept_any("with", "working", "making", "placing")
        self.accept_any("a")
        placed = isinstance(last, Make | Group) and last.target is not None
        chain = self.chain() if placed else None
        if isinstance(chain, Chain) and self.accept_any("between", "bet"):
            self.accept_all("each", "every", "all", "the", "them", "of", "two", "any")
            if not self.accept_any("pair", "pairs", "set", "sets", *GROUPS):
                self.kind()
            if self._clause_is_over() and _with_chain(before, chain, self.last_end):
                return True
        self.at = mark
        return False

    def _where_last(self, before: list[Node]) -> bool:
        """``("working" | "with") ["the"] "last" stitch place``: where a repeat's last one goes"""
        mark = self.at
        last = before[-1] if before else None
        round_ = isinstance(last, Repeat) or (last is not None and goes_round([last]))
        bare = isinstance(last, Repeat) and (last.times, last.leave, last.until) == (None, None, "")
        bare = bare and self.here.text in ("last", "final")
        if bare or (round_ and self.accept_any("working", "making", "placing", "with")):
            self.accept_any("the", "your")
            if self.accept_any("last", "final"):
                key = self.accept_phrase(self.lexicon.phrases)
                body = last.body if isinstance(last, Repeat) else before[-1:]
                if any(isinstance(n, Make) and n.stitch.us == key for n in body):
                    self.to_clause_end()
                    return True
        self.at = mark
        return False

    def _skips(self, before: list[Node]) -> list[Node] | None:
        """``skip {"and" place}``, or a list of places in brackets"""
        mark, start = self.at, self.here.start
        passed = self.passes_join() or self._passing_each(before) or self._under_chains(before)
        if passed is not None:
            return [passed]
        mark += int(self.here.text == "but" and self.ahead().text in SKIPS)
        self.at = mark
        if self.accept_any(*SKIPS) and self.accept_any("none", "no", "nothing"):
            self.kind()
            return [Note(start, self.last_end)]
        self.at = mark
        listed = self.skip_list()
        if listed:
            return [*listed]
        skip = self.skip()
        return None if skip is None else [skip, *self.skipped_too()]

    def _passing_each(self, before: list[Node]) -> Note | None:
        """``"skipping" ("each" | "all" | "the") kind`` behind "in each ch-1 sp around"

        It says of the other places only that they are left alone.
        """
        mark, start = self.at, self.here.start
        last = before[-1] if before else None
        target = last.target if isinstance(last, Make | Group) else None
        if target is not None and target.at is At.EACH and self.accept_any(*SKIPS):
            self.accept_any("over")
            each = self.accept_any("each", "all", "every", "the")
            self.accept_any("the", "of")
            kind = self.kind() if each else None
            if kind not in (None, "st", target.kind) and target.kind != "st":
                return Note(start, self.last_end)
        self.at = mark
        return None

    def _under_chains(self, before: list[Node]) -> Skip | None:
        """``chain "over" ["the"] ["next"] figure kind``: what these chains stand over"""
        mark, start = self.at, self.here.start
        chained = bool(before) and isinstance(before[-1], Chain)
        touching = chained and self.tokens[self.at - 1].text not in (",", ";", ".")
        bracket = self.here.type is Type.OPEN
        self.at += int(bracket)
        if touching and self.accept_any("over", "across", "above", "skipping"):
            self.accept_any("the")
            self.accept_any("next", "following")
            figure, kind = self.accept_figure(), self.kind()
            if figure is not None and kind is not None and (not bracket or self.accept(")")):
                return Skip(figure, kind, start, self.last_end)
        self.at = mark
        return None

    def _last_made(self, before: list[Node]) -> list[Node]:
        """The last stitch, where the words only tell that its yarn is changed.

        "Sc to last st, change to B in last st" makes that stitch too.
        """
        in_last, self.in_last = self.in_last, False
        last = before[-1] if before else None
        if not in_last or not isinstance(last, Make) or last.target is None:
            return []
        if last.target.leave is None:
            return []
        return [replace(last, target=Target(At.NEXT, "st", last.target.leave))]

    def _left(self) -> Skip | None:
        """``("leave" | "without working" …) ["last" | "next"] [figure] [kind] ["unworked"]``

        The last ones are left unworked also where that is not said.
        """
        mark, start = self.at, self.here.start
        if self.accept_any("leave", "leaving") or self._not_worked():
            self.accept_any("the")
            last = self.here.text in ("last", "final")
            which = At.EACH if self.accept_any("rest") else self._which()
            self.accept_all("of", "the", *(ROUND_WORDS if which is At.EACH else ()))
            those = self.accept_any("these", "those", "them", "it")
            count = self.accept_figure()
            if count is None:
                count = (REST,) if which is At.EACH or those else (1,)
            kind = self.kind() or "st"
            ends = last or which is At.EACH
            left = self._unworked(ends or bool(those)) or ends
            if left and (self._clause_is_over() or self.tokens[self.at - 1].text == "unworked"):
                return Skip(count, kind, start, self.last_end)
        self.at = mark
        return None

    def _unworked(self, ends: bool) -> bool:
        """``"unworked" | "un-worked" | "free" | "for" ["the"] ("armhole" | "neck" …)``

        ``ends``: the words name the stitches at the end, which "for" needs.
        """
        if self.accept_any("unworked", "free", "alone") or self.accept("un", "-", "worked"):
            return True
        mark = self.at
        if ends and (self.accept("for", "now") or self.accept("for", "later")):
            return True
        if ends and self.accept("for"):
            self.accept_any("the")
            if self.accept_any(*OF_EDGES):
                self.to_clause_end()
                return True
        self.at = mark
        return False

    def _not_worked(self) -> bool:
        """``("without working" | "do not work" | "not working") ["in" | "into"]``"""
        denied = self.accept("without") or self.accept("do", "not") or self.accept_any("not")
        if denied and self.accept_any("working", "work", "crocheting"):
            self.accept_any("in", "into", "on")
            return True
        return False


def _with_chain(before: list[Node], chain: Chain, end: int) -> bool:
    """Put a chain behind each of the stitches or groups made last; False where none take one."""
    last = before[-1]
    if isinstance(last, Make) and last.target is not None and last.target.at is At.RING:
        body = (replace(last, count=(1,)), chain)
        before[-1] = Repeat(body, last.start, end, last.count)
        return True
    at = len(before)
    while at and _in_each(before[at - 1]):
        at -= 1
        node = before[at]
        if isinstance(node, Make | Group) and node.target is not None:
            inner = node.body if isinstance(node, Group) else (replace(node, target=None),)
            before[at] = Group((*inner, chain), node.target, node.start, end)
    first = before[at - 1] if at else None
    if at < len(before) and isinstance(first, Group) and first.target.at is At.SAME:
        before.insert(at, chain)
    return at < len(before)


def _in_each(node: Node) -> bool:
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.at is At.EACH
