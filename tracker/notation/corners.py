"""Reading corners as a thing that is made: "work your corner (…)", "corner in next ch-2 sp"."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.notation.held import Held
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import Act, At, Chain, Deed, Group, Make, Node, Note, Target
from tracker.notation.wordlists import JOINS

#: What was made is a corner: "(corner made)", "first corner", "= corner".
_SAID = re.compile(
    r"(?:= ?|- ?|this (?:is|makes|forms) |which (?:is|makes|forms) )?(?:(?:a|the|your|our|one|1) )?"
    r"(?:(?:1st|first|beg|beginning|starting|initial) )?corner(?: is)?(?: now)?"
    r"(?: made| formed| completed?| done)?"
)
_MAKING = ("work", "make", "working", "making", "crochet", "do", "place")
_WHICH = (
    *(
        "a",
        "your",
        "our",
        "my",
        "the",
        "another",
        "next",
        "one",
        "first",
        "second",
        "third",
        "fourth",
        "last",
    ),
    *("final", "1st", "2nd", "3rd", "4th", "same", "each", "every"),
)
_BEFORE = ("before", "established", "usual", "above", "previously")
_DONE = ("made", "formed", "completed", "complete", "done", "created")
#: Words between a corner and the bracket that tells what it is.
_OF = ("of", "with", "as", ":", "=", "by", "working", "consisting", "-", "follows")


class Corners(Held):
    """Rules for corners."""

    def of_corners(self) -> list[Node] | None:
        """``corner_made | "corner" "made" | standing_first``"""
        told = self.told_made()
        return [told] if told is not None else self.corner_made() or self.standing_first()

    def corner_made(self) -> list[Node] | None:
        """``["work"] ["a"] "corner" (list | place | separator)``: a group of stitches

        It goes into the next corner below, if no place is told. Without a list it is what the
        text called a corner before.
        """
        mark, start = self.at, self.here.start
        self.accept_all(*_MAKING)
        each = bool({"each", "every"} & self._words_of_which())
        if self.accept("corner"):
            there = Target(At.EACH if each else At.NEXT, "corner")
            self.accept_all(*_OF)
            found = self._corner_told(start, there) or self._corner_as_before(start, there)
            if found is not None:
                self.begun = True
                return [found]
        self.at = mark
        return None

    def told_made(self) -> Note | None:
        """``["first" | "this" …] ("corner" | "point" …) ["is"] "made"`` as a clause of its own"""
        mark, start = self.at, self.here.start
        self.accept_all(*_WHICH, "this", "that", "beg", "beginning", "half")
        if self.accept_any("corner", "corners", "point", "side", "scallop", "leaf", "arch"):
            self.accept_all("is", "are", "now", "has", "been")
            dashed = mark > 0 and self.tokens[mark - 1].text in ("-", "=")
            if (self.accept_any(*_DONE) or dashed) and self._clause_is_over():
                return Note(start, self.last_end)
        self.at = mark
        return None

    def standing_first(self) -> list[Node] | None:
        """``("with" | "using") "standing" stitch "," "join" [colour] place``: that stitch, there"""
        mark, start = self.at, self.here.start
        if not self.begun and self.accept_any("with", "using", "by"):
            self.accept_all("a", "an", "the", "your", "new")
            made = self.make() if self.here.text in ("standing", "chainless") else None
            self.accept_any(",")
            if made and self.accept_any(*JOINS, "begin", "start"):
                self.accept_all("the", "your", "a", "new", "next")
                colour = self.colour_name() or self.accept_any("yarn", "color", "colour")[:0]
                end, target = self.last_end, self.target()
                first = made[0]
                if target is not None and isinstance(first, Make) and first.target is None:
                    self.begun = True
                    act = Act(Deed.COLOUR, start, end, colour)
                    return [act, replace(first, target=target, end=self.last_end)]
        self.at = mark
        return None

    def _words_of_which(self) -> set[str]:
        """The words before "corner" that say which one it is."""
        begin = self.at
        self.accept_all(*_WHICH)
        return {token.text for token in self.tokens[begin : self.at]}

    def _corner_told(self, start: int, there: Target) -> Group | None:
        """``"(" list ")" [place]``"""
        close = self.closing() if self.here.type is Type.OPEN else -1
        again = close > 0 and self._asked_again(close)
        if close < 0 or (again and self.tokens[close + 1].text not in _INTO):
            return None
        mark = self.at
        body = tuple(self._inside(close))
        if not any(isinstance(n, Make) for n in body) or not _listed(body):
            self.at = mark
            return None
        target = self.target() if self.here.text in _INTO else None
        found = Group(body, target or there, start, self.last_end)
        self.lexicon.corner = body
        return found

    def _corner_as_before(self, start: int, there: Target) -> Group | None:
        """``["as" "before"] [place]`` behind a corner that was told before"""
        self.accept_any("as", "like")
        led = self.tokens[self.at - 1].text in ("as", "like")
        if led and not self.accept_any(*_BEFORE):
            return None
        target = self.target() if self.here.text in _INTO else None
        over = target is not None or self._clause_is_over() or self.here.text in ("and", "then")
        if not over or not self.lexicon.corner:
            return None
        end = self.last_end
        body = tuple(replace(node, start=start, end=end) for node in self.lexicon.corner)
        return Group(body, target or there, start, end)

    def called_corner(self, before: list[Node], nodes: list[Node]) -> None:
        """A group in a corner, or ``group "(" "corner" ["made"] ")"``: corners are such groups"""
        node = nodes[0] if len(nodes) == 1 else None
        if isinstance(node, Group) and node.target.kind == "corner":
            self._learn_corner(before, node)
        told = isinstance(node, Note) and _SAID.fullmatch(
            plain(self.text[node.start : node.end]).strip("()[]., ")
        )
        at = next((i for i in reversed(range(len(before))) if not isinstance(before[i], Note)), 0)
        made = before[at] if told and before else None
        if isinstance(made, Group):
            self._learn_corner(before[:at], made)

    def _learn_corner(self, before: list[Node], made: Group) -> None:
        """Keep what a corner is made of; a beginning chain is one of the stitches of the first."""
        body = made.body
        while body and isinstance(body[-1], Chain):
            body = body[:-1]  # "(3 dc, ch 2, 3 dc, ch 1) in each corner"
        if not body or not _listed(body):
            return
        last = next((n for n in reversed(before) if not isinstance(n, Note)), None)
        chained = isinstance(last, Chain) and last.count[0] > 1 and not isinstance(body[0], Chain)
        self.lexicon.corner = _whole(_without_chain(body)) if chained else _without_chain(body)


#: Words that lead to the place of a corner.
_INTO = ("in", "into")


def _listed(body: tuple[Node, ...]) -> bool:
    return all(isinstance(node, Make | Chain) for node in body)


def _whole(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """A corner behind a beginning chain, with the stitch that this stands for."""
    one, last = (body[0], body[-1]) if body else (None, None)
    if not isinstance(one, Make) or not isinstance(last, Make) or one.stitch != last.stitch:
        return body
    return (
        (replace(one, count=last.count), *body[1:]) if one.count[0] + 1 == last.count[0] else body
    )


def _without_chain(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """A corner that a round began with, as the others of it are: with no beginning chain.

    "(Ch 3, 2 dc, ch 2, 3 dc)" is as many at both ends; other lists tell no corner.
    """
    first, *rest = body
    if not isinstance(first, Chain):
        return body
    one, last = (rest[0], rest[-1]) if rest else (None, None)
    if not isinstance(one, Make) or not isinstance(last, Make) or one.stitch != last.stitch:
        return ()
    if len(rest) > 1 and one.count[0] + 1 == last.count[0]:
        return (replace(one, count=last.count), *rest[1:])
    return tuple(rest) if len(rest) > 1 and one.count == last.count else ()
