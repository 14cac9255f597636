"""Reading what is made: stitches, with their number and their place."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.dictionary import base_of
from tracker.notation.doubts import doubt_of
from tracker.notation.naming import Naming
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, Group, Make, Node, Repeat, Skip, Target, Unread
from tracker.notation.wordlists import END_WORDS, OF_EDGES, PIECES, VERBS

#: What the rows of a ribbing worked sideways are held to, and words before it.
_OF_PIECES = ("main", "lower", "bottom", "top", "upper", "foundation", "last", "long", "short")
_HELD_TO = (
    *("body", "yoke", "edge", "hem", "bodice", "neckline", "armhole", "armholes", "sleeve"),
    *("hat", "crown", "piece", "dress", "sweater", "cardigan", "skirt", "blanket", "scarf"),
    *("shawl", "vest", "mitt", "mitten", "sock", "cowl", "panel", "bag"),
)
_ALONG = ("along", "across", "around", "round", "over", "up", "down", "in", "on", "from")
#: More than so many "around" are not meant for each place (common practice, no source).
_MOST_IN_EACH = 3


class Makes(Naming):
    """Rules for stitches.

    ``picking``: whether those that are made are picked up along an edge.
    """

    picking = False

    def make(self) -> list[Node] | None:
        """``make = [verb] [figure] stitch [figure] [target] {"and" target} [times]``"""
        mark, start = self.at, self.here.start
        self.loop = ""
        self.accept_all(*VERBS)
        self.picking = self.accept("pick", "up") or self.accept("picking", "up")
        if self.picking:
            self.accept_all("and", *VERBS)
        together = self._next_together(start)
        if together is not None:
            return together
        if ("a",) not in self.lexicon.phrases:
            self.accept_any("a")
        self.accept_any("an", "another", "the")
        self.accept_all("standing", "chainless", "starting")
        self.accept_beginning()
        self.accept_loop()
        bare = self.bare_number()
        if bare is not None:
            return [bare]
        count = None if self._named_by_number() else self.accept_figure()
        if count is not None:
            self.accept_any("-", *self.crosses, "more")
        self.accept_loop()
        stitch = self._stitch() or self._in_one_place(count)
        if stitch is None:
            self.at = mark
            return None
        if stitch.us in ("inc", "dec") and self.tokens[self.at - 1].type is Type.NUMBER:
            count = None
        return self._made(stitch, count, start)

    def _made(self, stitch: Stitch, count: Figure | None, start: int) -> list[Node]:
        gathered, apart = self._gathered(stitch, count), None
        if gathered is not None:
            shaped = base_of(gathered.us) == stitch.us and gathered != stitch
            closed = self.here.type is Type.CLOSE or self.here.text in self.crosses
            apart = (count or ((1,) if closed else None)) if shaped else None
            stitch, count = gathered, None
        behind = count is None
        if count is None:
            count = self._shaped_behind(stitch) or self._count_behind()
        self.accept_all("more")
        if self.accept_loop() and count is None:
            count = self._count_behind()
        numbered = count is not None
        together = self._together(stitch, count)
        target = None
        if together is not None:
            stitch, count = together, (1,)
        else:
            stitch, target = self._stitch_and_target(stitch, count)
        colour = self._in_colour() if target is None else None
        count = count or self._counted_along(target)
        end = self.last_end
        first = Make(stitch, count or (1,), target, start, end, self.loop, numbered, behind, apart)
        if count is None and target is not None and target.group == "both":
            first = replace(first, target=replace(target, at=At.EACH))
        elif count is None and target is not None and target.kind == "along" and not self.one:
            why = "does not say how many stitches"
            return [Unread(self.text[start:end], start, end, why)]
        doubt = doubt_of(first, self.text[start:end], gathered is not None)
        if doubt:
            return [Unread(self.text[start:end], start, end, doubt)]
        made = self._made_from_hook(first) or self._made_there(first, together is None)
        return made if colour is None else [colour, *made]

    def _made_there(self, first: Make, alone: bool) -> list[Node]:
        """``make {"and" target} [times]``; ``alone``: not several closed together"""
        stitch, target = first.stitch, first.target
        also = self._and_also(stitch, first) or self._and_so_many(stitch, first)
        if stitch.takes > 1 and also:
            # "sc2tog over last sp and last sc": one stitch, and the places it closes
            first, also = replace(first, target=None, end=self.last_end, loop=self.loop), []
        if target is None and alone:
            pair = self._together_in(first)
            if pair is not None:
                return [pair]
        return self._so_often_made(first, also, plain=target is None)

    def _made_from_hook(self, first: Make) -> list[Node]:
        """``make ("from" | "starting in") hook ["to end"]``, where the stitch has no place"""
        mark = self.at
        target = self._from_hook() if first.target is None else None
        if target is None:
            return []
        passed = Skip((target.nth - 1,), "ch", first.end, self.last_end, At.FIRST)
        if first.numbered:
            return [passed, first]
        if self._ends():
            return [passed, replace(first, target=Target(At.EACH, "ch"))]
        self.at = mark
        return []

    def _counted_along(self, target: Target | None) -> Figure | None:
        """``"(" figure [stitches] ")"`` behind "sc around the first leg": how many go along it"""
        if target is None or target.kind != "along":
            return None
        mark = self.at
        if self.accept_any("for", "over", "across"):
            self.accept_all("the", "next")
        figure = self.accept_figure()
        if figure is not None:
            if self.kind() is None:
                self.accept_phrase(self.lexicon.phrases)
            if self._clause_is_over():
                return figure  # "sc through both layers 5 sc", "… for 5 sts"
            self.at = mark
        stated = self.bracketed_count_ahead()
        if stated is None or self.tokens[self.closing() + 1].type is Type.END:
            return None
        self.at = self.closing() + 1
        return stated.total

    def _stitch_and_target(
        self, stitch: Stitch, count: Figure | None
    ) -> tuple[Stitch, Target | None]:
        """``[target] [loop] [counts]``, with the stitch as the place shapes it"""
        self.accept_any("loosely", "tightly")
        if self.here.text in ("goes", "worked", "made") and self.ahead().text in ("in", "into"):
            self.at += 1
        self.by_hook()
        target = self._along_edge()
        if target is not None and count is None:
            return stitch, replace(target, count=(0,))  # so many as the printed count says
        at = self.at
        target = self.reached(target or self._loose_object() or self.target())
        if target == Target(At.EACH) and count is not None and self._in_all(at, count):
            target = None
        if target is None and self.folded and count is not None:
            target = Target(At.NEXT, "along", group="both")
        if target == Target(At.FIRST) and self.begun and self.accept_any("again"):
            target = Target(At.SAME, nth=1)  # "sc around, sc in first st again"
        self._loop_behind()
        self._with_piece(target, count)
        if stitch.us == "sl st" and self.begun and target is not None and self._held_to_piece():
            return stitch, Target(At.EDGE, count=target.count)
        if (
            self.led == "over"
            and stitch.us != "sl st"
            and target is not None
            and target.count is not None
        ):
            # "over next 3 sts": the one stitch is spread over all of them
            return stitch._replace(takes=target.count[0]), None
        return stitch, self.hook_counts(target)

    def _with_piece(self, target: Target | None, count: Figure | None) -> None:
        """``["together"] ("with" | "through" | "joining" …) piece`` behind a place: how, not where

        "Sc next 4 sts together with the arm": one stitch in each of them, through both.
        """
        mark = self.at
        placed = target is not None and target.count is not None
        if not placed and (target is not None or count is None):
            return
        self.accept_any(*(("together", "tog") if placed else ()))
        leads = ("with", "through", "and") if placed else ()
        if self.accept_any("joining", "attaching", "adding", "catching", *leads):
            self.accept_all("both", "the", "your", "first", "second", "other", "of", "body", "and")
            self.accept_any("left", "right")
            if self.accept_any(*PIECES) and self._clause_is_over():
                return
        self.at = mark

    def _held_to_piece(self) -> bool:
        """``("of" | "along") ["the"] {word} ("body" | "edge" | …)``: beside this row, not below

        So the rows of a ribbing that is worked sideways are held to the piece they go round.
        """
        mark = self.at
        if self.accept_any("of", "along", "on", "from", "in"):
            self.accept_any("the")
            self.accept_all(*OF_EDGES, *_OF_PIECES)
            if self.accept_any(*_HELD_TO) and self._clause_is_over():
                return True
        self.at = mark
        return False

    def _in_all(self, at: int, count: Figure) -> bool:
        """Whether a number before a bare "around" is that of the round: "24 sc around"

        "2 sc around" is two in each.
        """
        word = self.tokens[at].text
        alone = word in ("each", "ea") and self.at == at + 1  # "24 sc each", of several rounds
        return min(count) > _MOST_IN_EACH and (word in (*END_WORDS, "to", "all") or alone)

    def _along_edge(self) -> Target | None:
        """``"evenly" ["spaced"] ("along" | "across" …) words``: over an edge, not into stitches"""
        mark = self.at
        self.accept_any("st", "sts", "stitches")
        if self.accept_any("evenly") or self.picking:
            self.accept_all("evenly", "spaced", "spread")
            if self.accept_any(*_ALONG):
                self.to_clause_end()
                return Target(At.EDGE)
        self.at = mark
        return None

    def _so_often_made(self, first: Make, also: list[Node], *, plain: bool) -> list[Node]:
        """``make {make} [times]``; times behind a stitch without a number are its number"""
        times = self._times_behind()
        if times is None:
            return [first, *also]
        if plain and not also and not first.numbered:
            return [replace(first, count=times, target=None, end=self.last_end, numbered=True)]
        return [Repeat((first, *also), first.start, self.last_end, times)]

    def _loop_behind(self) -> None:
        """``["through" | "in"] loop`` behind the place, and "all across" behind that."""
        mark = self.at
        self.accept_any("through", "in", "into")
        if self.accept_loop():
            self._ends()
        else:
            self.at = mark

    def _together_in(self, first: Make) -> Group | None:
        """``make "and" make target``, the first without a place: both in that place."""
        mark = self.at
        if not self.accept("and"):
            return None
        more = self.make()
        other = more[0] if more is not None and len(more) == 1 else None
        if isinstance(other, Make) and other.target is not None:
            target = other.target
            if target.at in (At.NEXT, At.SAME, At.FIRST) and target.count is None:
                body = (first, replace(other, target=None))
                return Group(body, target, first.start, self.last_end)
        self.at = mark
        return None

    def _and_also(self, stitch: Stitch, first: Make) -> list[Node]:
        """``"and" (place | end)``: the same again in further places, or all the way."""
        found: list[Node] = []
        while True:
            mark, start = self.at, self.here.start
            self.accept_any(",")
            if not self.accept_any("and", "&"):
                self.at = mark
                return found
            if self.ahead().text in ("in", "into"):
                self.accept_any("then", "also")
            begin, led = self.at, self.accept_any("in", "into")
            target = self._place(led=bool(led)) or self._space_too(first.target)
            if target is None and not led and first.target is not None:
                self.at = begin
                target = self._all_the_way()
            led_on = self.here.text in ("work", "make", "place")  # "and in each sp work 3 dc"
            if target is None or led_on or self._stitch_here_alone(mark):
                self.at = mark
                return found
            found.append(Make(stitch, first.count, target, start, self.last_end, self.loop))

    def _and_so_many(self, stitch: Stitch, first: Make) -> list[Node]:
        """``("and" | ",") figure ("in" | "into") place``: of "1 sc in first st and 2 in next"."""
        mark, start = self.at, self.here.start
        if first.target is not None and first.target.at in (At.NEXT, At.FIRST):
            self.accept_any(",")
            self.accept_any("and", "then")
            figure = self.accept_figure() if self.at > mark else None
            if figure is not None and self.here.text in ("in", "into"):
                target = self.target()
                if target is not None and target.at in (At.NEXT, At.LAST):
                    return [Make(stitch, figure, target, start, self.last_end, self.loop)]
        self.at = mark
        return []

    def _space_too(self, first: Target | None) -> Target | None:
        """``space`` behind "in each dc and" or "in next 2 dc and": each of those, or the next"""
        if first is None:
            return None
        space = self._space()
        if first.at is At.EACH and first.count is None:
            return None if space is None else self._to_end(Target(At.EACH, space))
        return Target(At.NEXT, space) if space and self._clause_is_over() else None

    def _all_the_way(self) -> Target | None:
        """``("across" | "around" | "to") …``, after "in 2nd ch from hook and"."""
        if self.here.text not in (*END_WORDS, "to"):
            return None
        found = self.target()
        return found if found is not None and found.at is At.EACH else None

    def _stitch_here_alone(self, mark: int) -> bool:
        return self.tokens[mark].text == "," and self.here.type is Type.NUMBER
