"""Reading what is said of all that stands before: "…, repeat around", "…, 6 times"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.petals import Petals
from tracker.notation.things import Tail
from tracker.notation.tokens import Type
from tracker.notation.tree import (
    At,
    Chain,
    Figure,
    Group,
    Make,
    More,
    Node,
    Repeat,
    Skip,
    Target,
    Unread,
)
from tracker.notation.wordlists import AGAIN, ALTERNATELY, END_WORDS

#: "repeat" before one of these asks for rounds again, or only says that the work goes on.
_OTHER_AGAIN = (
    *("row", "rows", "rnd", "rnds", "round", "rounds"),
    *("with", "working", "crocheting", "making", "in", "even", "straight"),
    *("on", "along", "down", "up"),
)
#: Stitches that shape a round by their name alone.
SHAPES = ("inc", "dec", "invdec")


def _single(target: Target) -> bool:
    """Whether a place is a single one, come to in turn."""
    return target.at in (At.NEXT, At.FIRST, At.HOOK) and target.count is None


#: What comes behind the last stitches of a round.
_ENDING = ("sl", "slst", "ss", "join", "fasten", "fo", "change", "turn", "stuff", "then")


class Wholes(Petals):
    """Rules for words that take in the whole round so far."""

    def _again_here(self) -> bool:
        """Whether an unstarred "repeat", or "around" as a clause of its own, stands here."""
        if self.deep:
            return False
        if self.here.text in ("around", "across"):
            return self._is_to_the_end()
        if self.here.text in ALTERNATELY:
            return self.ahead().text in ("around", "across", "to")
        if self.here.type is Type.OPEN:
            return self._bracketed_again() is not None
        if self._all_around() and self.tokens[self.at - 1].text in (",", ";"):
            return self._all_the_way_round()
        if self.tokens[self.at - 1].text in (",", ";", "-") and self._all_so_often():
            return True
        return (self.here.text in AGAIN and self._again_follows()) or self._more_things_here()

    def _more_things_here(self) -> bool:
        """Whether "make 4 more petals" stands here."""
        mark = self.at
        found = self.more_things() is not None
        self.at = mark
        return found

    def _again_follows(self) -> bool:
        """Whether "repeat" here asks for all that was told before it."""
        if self.like_another(self.here.start):
            return False
        if self.ahead().text == "to":
            making = self.ahead(2).text in ("make", "form", "create", "have", "get")
            return making or "end" in (self.ahead(2).text, self.ahead(3).text)
        if {"other", "opposite"} & self._clause_words() and "side" in self._clause_words():
            return False  # of a chain
        if self._sides_follow():
            return True
        placed = ("each", "every", "next", "the", "following")
        each = self.ahead().text in ("in", "into") and self.ahead(2).text in placed
        return each or self.ahead().text not in _OTHER_AGAIN

    def _sides_follow(self) -> bool:
        """Whether "for each side" or "on remaining sides" stands behind "repeat" here."""
        mark = self.at
        self.at += 1
        found = self.times_by_sides()[1]
        self.at = mark
        return found

    def _bracketed_again(self) -> Tail | None:
        """``"(" (again | times) ")"``: "sc 4, inc (repeat 6 times)", without reading it"""
        mark, close = self.at, self.closing()
        self.at += 1
        asked = self.here.text in (*AGAIN, *self.crosses) or self.ahead().text in ("times", "x")
        found = self.tail(starred=True) if close > 0 and asked else None
        whole = self.at == close
        self.at = mark
        return found if whole else None

    def alternating(self) -> list[Node] | None:
        """``"alternate" stitch "and" stitch ["around"]``: one of each in turn, to the end"""
        mark, start = self.at, self.here.start
        if self.accept_any(*ALTERNATELY):
            self.accept_any("between", "working", "making")
            one = self.make()
            self.accept_any("and", "&", "with", ",")
            other = self.make() if one else None
            if one and other:
                ended = self._bare_of_end(other)
                return [Repeat((*one, *ended), start, self.last_end, starred=True)]
        self.at = mark
        return None

    def _bare_of_end(self, made: list[Node]) -> list[Node]:
        """The same without "around" as its place, which says how far all of it goes."""
        last = made[-1]
        if isinstance(last, Make) and last.target == Target(At.EACH):
            return [*made[:-1], replace(last, target=None)]
        return made

    def _of_one(self, close: int) -> bool:
        """Whether the bracket of a number of times is one of several, each of one stitch."""
        crossed = self.ahead().text in self.crosses or self.ahead(2).text in ("x", "times")
        others = sum(
            one.type is Type.OPEN and (two.text in self.crosses or three.text in ("x", "times"))
            for one, two, three in zip(self.tokens, self.tokens[1:], self.tokens[2:], strict=False)
        )
        goes_on = self.tokens[close + 1].text == "," and self.tokens[close + 2].text not in _ENDING
        return crossed and (others > 1 or goes_on)

    def _all_the_way_round(self) -> bool:
        """Whether "all the way around" stands here as a clause of its own."""
        mark = self.at
        found = self._ends() and self._clause_is_over()
        self.at = mark
        return found

    def _all_so_often(self) -> bool:
        """Whether a number of times ends the sentence here: "5 sc, inc, 6 times."."""
        mark = self.at
        self.at -= 1
        found = self._times_behind_comma() is not None and self._sentence_over()
        self.at = mark
        return found

    def _sentence_over(self) -> bool:
        """Whether nothing but the printed count follows in this sentence."""
        if self.here.type is Type.OPEN:
            last = self.tokens[self.closing() + 1].type is Type.END or (
                self.tokens[self.closing() + 1].text == "."
            )
            bare = self.closing() == self.at + 2
            crossed = self.tokens[self.at - 1].text in self.crosses and not bare  # "2x [1 dc]"
            return last and not crossed and self.bracketed_count_ahead() is not None
        if self.here.text == "," and self.ahead().text in ("total", "tot"):
            return True
        return self.here.type is Type.END or self.here.text in (".", "=")

    def _repeat_before(self, nodes: list[Node]) -> list[Node]:
        """``… "," again``: what was written before it on the line is repeated."""
        first = next(
            (i for i, n in enumerate(nodes) if isinstance(n, Make | Group | Repeat | Skip)), None
        )
        first = self._behind_slips(nodes, first)
        start = self.here.start
        self.accept_any(*ALTERNATELY)
        often = self.here.text not in AGAIN and self._all_so_often()
        self.at -= int(often)
        if often and nodes and isinstance(nodes[-1], Repeat):
            first = len(nodes) - 1  # "…, (sc, inc), 6 times": the bracket alone
        found, last_only = self._asked_for(nodes)
        first = len(nodes) - 1 if last_only and nodes else first
        if found is None or first is None:
            if self.here.text in ("around", "across") and first is not None:
                self.at += 1
                found = Tail()
            else:
                return [*nodes, self._words()]
        last = nodes[-1]
        again = found.target is not None and self._passes_more(nodes[first:], found.target)
        if found.target is not None and isinstance(last, Group) and not found.times and not again:
            # "… in that sp. Repeat in each ch-3 sp around."
            return [*nodes, replace(last, target=found.target, start=start, end=self.last_end)]
        first += _begins_alike(nodes[:first], nodes[first:])
        first -= _begins_with_chain(nodes[:first], nodes[first:])
        body = nodes[first:]
        if len(body) == 1 and isinstance(body[0], Repeat) and body[0].implied:
            body = list(body[0].body)
        if found.target is not None and found.target.at is At.NEXT and found.target.count:
            passes = self._passes_over(body, found.target.count)
            if not passes:
                return [*nodes, Unread(self.text[start : self.last_end], start, self.last_end)]
            found = Tail(passes, More.MORE)
        repeat = self._repeat(tuple(body), found, body[0].start, starred=True)
        return [*nodes[:first], replace(repeat, end=max(repeat.end, start))]

    def _behind_slips(self, nodes: list[Node], first: int | None) -> int | None:
        """``first``, but behind slip stitches that lead to a corner, or are a sentence alone."""
        while first is not None and first + 1 < len(nodes):
            node = nodes[first]
            if not isinstance(node, Make) or node.stitch.us != "sl st":
                break
            leads = node.target is not None and bool(node.target.until)
            if not leads and not self.text[node.end :].lstrip().startswith("."):
                break
            first += 1
        return first

    def _asked_for(self, nodes: list[Node]) -> tuple[Tail | None, bool]:
        """What is asked for here, in a bracket or not, and whether of the last thing alone."""
        bracket = self.closing() if self.here.type is Type.OPEN else -1
        if bracket < 0:
            return self.tail(starred=True), False
        found, alone = self._bracketed_again(), self._of_one(bracket)
        self.at = bracket + 1
        last = nodes[-1] if nodes else None
        return found, alone or (isinstance(last, Repeat) and last.implied)

    def _passes_more(self, body: list[Node], target: Target) -> bool:
        """Whether several things are worked once more in so many places as are named."""
        several = len(body) > 1 and target.at is At.NEXT and target.count is not None
        return several and bool(self._passes_over(body, target.count or ()))

    def _passes_over(self, body: list[Node], places: Figure) -> Figure | None:
        """How many passes more "repeat in next 6 sts" is, where each uses up as many."""
        takes = 0
        for node in body:
            if isinstance(node, Group) and _single(node.target):
                takes += 1
                continue
            if not isinstance(node, Make) or (node.target is not None and not _single(node.target)):
                return None
            takes += node.stitch.takes * (node.count[0] if node.target is None else 1)
        return None if any(n % takes for n in places) else tuple(n // takes for n in places)

    def _all_round(self, before: list[Node], made: list[Node]) -> list[Node] | None:
        """``make {"," make} "," shape "around"``: "3 sc, inc around" is all of it, again and again.

        Only where the last word is a bare "around" behind an increase or a decrease.
        """
        last = made[0] if len(made) == 1 else None
        if not isinstance(last, Make) or last.stitch.us not in SHAPES or last.target is None:
            return None
        bare = self.tokens[self.at - 1].text in END_WORDS and self.tokens[self.at - 2].text != "all"
        if last.target != Target(At.EACH) or not bare or self.led:
            return None
        first = next((i for i, n in enumerate(before) if isinstance(n, Make)), len(before))
        body = before[first:]
        if not body or not all(isinstance(n, Make) and n.target is None for n in body):
            return None
        del before[first:]
        inner = (*body, replace(last, target=None))
        return [Repeat(inner, body[0].start, self.last_end, starred=True)]


def _begins_with_chain(before: list[Node], nodes: list[Node]) -> int:
    """1 where the chain before a round's first stitch belongs to each repeat of it, else 0.

    It does where it is worked back along, in loops over stitches passed over, and where a slip
    stitch holds each petal down; not where the words end on a chain of their own.
    """
    first, last = nodes[0], nodes[-1]
    chain = before[-1] if before else None
    if not isinstance(chain, Chain) or chain.counts is not None or isinstance(last, Chain):
        return 0
    if isinstance(first, Skip):
        return int(first.at is not At.FIRST or first.kind == "ch")
    if not isinstance(first, Make):
        return 0
    hooked = first.target is not None and first.target.at is At.HOOK
    tall = chain.count[0] > 1 and not (isinstance(last, Make) and _into_hook(last))
    held = tall and isinstance(last, Make) and last.stitch.us == "sl st"
    loops = tall and chain.count[0] > 2 and first.stitch.us in ("sc", "sl st")
    return int(hooked or held or loops)


def _into_hook(node: Make) -> bool:
    return node.target is not None and node.target.at is At.HOOK


def _begins_alike(before: list[Node], nodes: list[Node]) -> int:
    """1 where the first node is, with the chain before it, what the next one says; else 0.

    "Ch 3, dc in same st, 2 dc in next st, continue around": only the latter is repeated.
    """
    chained = bool(before) and isinstance(before[-1], Chain) and before[-1].count[0] > 1
    first, then = (nodes[0], nodes[1]) if len(nodes) > 1 else (None, None)
    if not chained or not isinstance(first, Make) or not isinstance(then, Make):
        return 0
    same = first.target is not None and first.target.at is At.SAME
    return int(same and first.stitch == then.stitch and first.count[0] + 1 == then.count[0])
