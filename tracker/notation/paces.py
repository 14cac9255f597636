"""Reading what comes at a pace: "2 sc in every 4th st", "inc every 3rd st"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from tracker.notation.dictionary import STITCHES
from tracker.notation.makes import Makes
from tracker.notation.merging import goes_round
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Make, Node, Repeat, Skip, Target
from tracker.notation.wordlists import SKIPS, STITCH_WORDS, VERBS

_INCREASES = ("inc", "incs", "increase", "increasing")
_SECOND = 2
_NAMED = ("inc", "dec")
#: Words before the places of a round that are told by their numbers.
_WHERE = ("in", "into", "on", "at", "@")
_DECREASES = ("dec", "decs", "decrease", "decreasing")


class Paces(Makes):
    """Rules for stitches that are told by how often they come."""

    def paced(self, before: list[Node]) -> list[Node] | None:
        """``paced = (increase | decrease | [figure] stitch) "in" "every" ("other" | nth) kind``

        Behind "sc around" it only says where that round is shaped, and takes its place.
        """
        mark, start = self.at, self.here.start
        self.accept_all(*VERBS, "with", "working", "making", "an", "a")
        of = self._round_so_far(before)
        found = (
            self._paced(start, of) or self._but_every(start, of) or self._two_at_a_pace(start, of)
        )
        if found is None:
            self.at = mark
            return self._in_places(before, start)
        if self._round_so_far(before) is not None:
            before.pop()
        return [found]

    def _in_places(self, before: list[Node], start: int) -> list[Node] | None:
        """``(increase | figure stitch) "in" nth {"," nth} "and" nth kind``, of the whole round

        The places may be plain numbers: "inc at 4, 8 and 12".
        """
        mark, of = self.at, self._round_so_far(before)
        self.accept_all(*VERBS, "with", "working", "making", "an", "a")
        what = self._what(of) if of is not None or not self.begun else None
        if what is None or what.stitch.makes < 2 or not self.accept_any(*_WHERE):
            self.at = mark
            return None
        self.accept_any(*STITCH_WORDS)
        places: list[int] = []
        while True:
            self.accept_any("the")
            nth = self.accept_ordinal() or self.accept_number()
            if nth is None or (places and nth <= places[-1]):
                break
            places.append(nth)
            self.accept_any(*STITCH_WORDS)
            self.accept_all(",", "and", "&", "+")
        if len(places) < 2 or not (self._clause_is_over() or self.here.text in ("-", "=")):
            self.at = mark
            return None
        if of is not None:
            before.pop()
        return self._at_each(what, of or STITCHES["sc"], places, start)

    def _at_each(self, what: Make, of: Stitch, places: list[int], start: int) -> list[Node]:
        """Plain stitches, and ``what`` in each of these places of the round."""
        plain = Make(of, (1,), None, start, self.last_end)
        found: list[Node] = []
        for last, place in pairwise((0, *places)):
            if place - last > 1:
                found.append(replace(plain, count=(place - last - 1,)))
            found.append(what)
        return [*found, replace(plain, target=Target(At.EACH, leave=(0,)), numbered=False)]

    def _but_every(self, start: int, of: Stitch | None) -> Repeat | None:
        """``"skip" "every" nth kind``: each of the others is worked into"""
        nth = self._nth() if self.accept_any(*SKIPS) else None
        if nth is None or self.kind() is None:
            return None
        self._ends()
        named = self._of_the_others()
        plain = Make(named or of or STITCHES["sc"], (nth - 1,), None, start, self.last_end)
        left_out = Skip((1,), "st", start, self.last_end)
        return Repeat((plain, left_out), start, self.last_end, starred=True)

    def _two_at_a_pace(self, start: int, of: Stitch | None) -> Repeat | None:
        """``["together"] "every" nth "and" nth kind ["together"]``: those two become one"""
        led = self.accept_any("together", "tog")
        nth = self._nth()
        also = self.accept_ordinal() if nth and self.accept_any("and", "&", "+") else None
        if nth is None or also is None or self.kind() is None:
            return None
        if not (led or self.accept_any("together", "tog")):
            return None
        self._ends()
        two = Make(STITCHES["dec"], (1,), None, start, self.last_end)
        return self._pace(two, nth, also, start, of)

    def _of_the_others(self) -> Stitch | None:
        """``"," stitch "in" ("the rest" | "the others")`` behind what is skipped"""
        mark = self.at
        self.accept_any(",", ";", "and")
        self.accept_all(*VERBS)
        stitch = self._stitch()
        if stitch is not None and self.accept_any("in", "into"):
            self.accept_all("all", "each", "of", "the")
            if self.accept_any("rest", "others", "other", "remaining"):
                self.kind()
                return stitch
        self.at = mark
        return None

    def _every_so_many(self) -> int | None:
        """``("every" | "each") number`` before "sts": "inc every 6 sts" is in each sixth"""
        if not self.accept_any("every", "each"):
            return None
        number = self.accept_number()
        named = self.here.text in ("sts", "stitches", "sc", "hdc", "dc") or self._clause_is_over()
        return number if number is not None and number > 1 and named else None

    def _nth(self) -> int | None:
        """``"every" ("other" | nth)``, from the second on"""
        mark = self.at
        if not self.accept_any("every", "each"):
            return None
        nth = 2 if self.accept("other") else self.accept_ordinal()
        if nth is None or nth < _SECOND:
            self.at = mark
            return None
        return nth

    def _round_so_far(self, before: list[Node]) -> Stitch | None:
        """The stitch that the round is said to be of: "sc around, …" or, first of all, "sc, …"."""
        last = before[-1] if before else None
        if not isinstance(last, Make):
            return None
        alone = len(before) == 1 and last.target is None and not last.numbered
        return last.stitch if goes_round(before) or (alone and last.stitch.takes == 1) else None

    def _paced(self, start: int, of: Stitch | None) -> Repeat | None:
        """``what "in" "every" pace``"""
        what = self._what(of)
        if what is None:
            return None
        self.accept_any("st", "stitch", "sc")
        after = int(self.accept_any("in", "into", "on", "after") == "after")
        nth = self._nth() or (self._every_so_many() if what.stitch.us in _NAMED else None)
        if nth is None:
            return None
        also = self.accept_ordinal() if self.accept_any("and", "&") else None
        if self.kind() is None and not self._clause_is_over():
            return None
        self._ends()
        return self._pace(what, nth + after, also, start, of)

    def _what(self, of: Stitch | None) -> Make | None:
        """What is made at that pace, as one thing."""
        start = self.here.start
        if self.accept_any(*_INCREASES):
            self.accept("1")
            return Make(STITCHES["inc"], (1,), None, start, self.last_end)
        if self.accept_any(*_DECREASES):
            return Make(STITCHES["dec"], (1,), None, start, self.last_end)
        figure = self.accept_figure()
        stitch = self._stitch()
        if stitch is None and figure is not None and of is not None:
            stitch = of  # "sc around, 2 in every 4th st"
        if stitch is None or stitch.takes != 1:
            return None
        if figure is None and self.accept_any(*_INCREASES):
            figure = (2,)  # "sc inc every 3rd st"
        if figure is None or figure == (1,):
            return Make(stitch, (1,), None, start, self.last_end, numbered=False)
        n = min(figure[0], 40)
        return Make(
            stitch._replace(abbr=f"{n} {stitch.abbr} in one", makes=n * stitch.makes),
            (1,),
            None,
            start,
            self.last_end,
        )

    def _pace(
        self, what: Make, nth: int, also: int | None, start: int, of: Stitch | None
    ) -> Repeat | None:
        """The repeat: plain stitches and an increase, a decrease, or stitches left out.

        ``of``: what the round is of, so that none is left out beside "a bobble in every 5th".
        """
        end = self.last_end
        base = STITCHES["sc"] if what.stitch.us in _NAMED else of or what.stitch
        plain = Make(STITCHES.get(base.us, base), (nth - 1,), None, start, end)
        if what.stitch.takes == 2:
            if also not in (None, nth + 1):
                return None
            # A decrease "every 4th st" may take the 3rd or the 5th as well.
            return Repeat((plain, what), start, end, starred=True, paced=also is None)
        if also is not None:
            return None
        shell = what.stitch.us not in _NAMED and not what.numbered and what.stitch.makes > 1
        if what.stitch.makes > 2 and of is None and not shell:
            return None  # "3 dc in every 3rd st": what the others are is not said
        shaped = what.stitch.makes > 1 and not shell
        if shaped or (of is not None and of.us != what.stitch.us):
            return Repeat((plain, what), start, end, starred=True)
        left_out = Skip((nth - 1,), "st", start, end)
        return Repeat((what, left_out), start, end, starred=True)
