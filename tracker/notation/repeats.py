"""Reading repeats: stars, brackets, "rep from * around", "x 6", "to last 2 sts"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.kit import TIMES_WORDS
from tracker.notation.sides import SIDE_WORDS
from tracker.notation.things import DONE, Tail, Things
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Figure, More
from tracker.notation.wordlists import (
    ABOUT_STARS,
    AGAIN,
    BEGINNING,
    CHAIN_WORDS,
    SPACE_WORDS,
    TILES,
)


class Repeats(Things):
    """Rules for what follows a repeated body."""

    def tail(self, starred: bool) -> Tail | None:
        """``tail = ([stars] again [stars] [often] [ending] | times | around) [things]``"""
        found = self._tail(starred)
        if found is not None and found.target is None:
            self._so_many_things()
        return found

    def _tail(self, starred: bool) -> Tail | None:
        mark = self.at
        more = self.more_things()
        if more is not None:
            return more
        self.accept_any(",", ";", ".", ":")
        if starred and self.here.text in ("from", "between") and self.ahead().type is Type.STAR:
            self._stars()  # "from * to * repeat"
        if self.accept_any(*AGAIN):
            self._shortening_dot()
            found = self._again(starred)
            if found is not None:
                return self._ending(found)
            self.at = mark
            return None
        self.at = mark
        times = self._times_behind() or self._times_behind_comma() or self._glued_times()
        if times is not None:
            return self._ending(Tail(times))
        led = ("around", "across", "to", "until", *(("in", "into") if starred else ()))
        if self.here.text in led or self._all_around():
            found = self._often(starred)
            if found is not None:
                return self._ending(found)
        self.at = mark
        return None

    def _times_behind_comma(self) -> Figure | None:
        """``("," | ";" | "-") ["do" "this"] times`` as a clause: "(3 sc, inc), 6 times"."""
        mark = self.at
        if self.accept_any(",", ";", "-", ":"):
            if self.accept("do"):
                self.accept_all("this", "it", "for")
            times = self._times_behind()
            if times is not None and self._clause_is_over():
                return times
        self.at = mark
        return None

    def _glued_times(self) -> Figure | None:
        """``figure`` that touches the bracket or star before it: "(3 sc, inc)6", "*3 sc, inc*6"."""
        glued = self.at > 0 and self.tokens[self.at - 1].end == self.here.start
        if glued and self.here.type is Type.NUMBER:
            self.at += 1
            if self._clause_is_over() or self.here.text in ("-", "=", ":"):
                return (self.tokens[self.at - 1].value,)
            self.at -= 1
        return None

    def _shortening_dot(self) -> None:
        """The dot of "Rep. 6 times" and "rep. from *"."""
        behind = self.ahead()
        often = behind.type is Type.NUMBER and self.ahead(2).text in ("times", *self.crosses)
        if often or behind.type is Type.STAR or behind.text in ("from", "around", "to", "until"):
            self.accept(".")

    def _all_around(self) -> bool:
        return self.here.text == "all" and self.ahead().text in ("around", "across", "the")

    def _again(self, starred: bool) -> Tail | None:
        """What is repeated, named by its stars or brackets, and how often."""
        if self.here.text in ("row", "rows", "rnd", "rnds", "round", "rounds"):
            return None
        if self.ahead(-1).text == "complete" and not self._number_of_times_ahead():
            return None
        self._stars()
        return self._often(starred)

    def _number_of_times_ahead(self) -> bool:
        return self.here.text in TIMES_WORDS or self.number_in_words()

    def _stars(self) -> None:
        """``{star | "(" {star} ")" | "from" | "between" …}``: "from * to *", as in (from *)"""
        while True:
            if self.here.type is Type.STAR:
                self.at += 1
            elif self.here.type is Type.OPEN and self._bracket_of_stars():
                self.at = self.closing() + 1
            elif (
                self.here.text in ABOUT_STARS and not self._is_to_last() and not self.sides_here()
            ) or (self.here.text in ("-", "'", '"') and self.ahead().type is Type.STAR):
                self.at += 1
            else:
                return

    def _is_to_last(self) -> bool:
        """Whether "to", "across" or "in" here begins the words on where it ends."""
        text, then = self.here.text, self.ahead().text
        if text == "to":
            space = then in CHAIN_WORDS and self.ahead(2).text in ("-", *SPACE_WORDS)
            place = then in ("last", "the", "end", "within", "next", "corner")
            place = place or then in ("make", "form", "have")
            return space or place or self.ahead(2).text == "last"
        if text == "across":
            return True
        if text == "in":
            return then not in ("brackets", "directions", "the", "this", "that", "same")
        return text == "the" and then == "end"

    def _bracket_of_stars(self) -> bool:
        """Whether the bracket here only names what is repeated."""
        close = self.closing()
        inside = self.tokens[self.at + 1 : close] if close > 0 else []
        return close > 0 and all(t.type is Type.STAR or t.text in ABOUT_STARS for t in inside)

    def _often(self, starred: bool) -> Tail | None:
        """``often = times ["more"] | "around" | "to last" figure kind | "until" … | ""``"""
        figure = self._times()
        if figure is not None:
            return self._so_often(figure)
        if self._so_many_things():
            return Tail(None)
        left, sided = self.times_by_sides()
        if sided:
            return Tail(left, More.UNSAID if left else More.TOTAL)
        mark = self.at
        if not self.accept("all", "the", "way"):
            self.accept_any("across", "around", "all", "along")
        if self.accept_any("to", "until", "till"):
            found = self._until()
            if found is not None:
                return found
            self.at = mark
        if self._ends():
            return Tail(None)
        mark = self.at
        target = self.target()
        if target is not None and (self.led or target.at is At.EACH):
            return Tail(None, target=target)
        if target is not None:
            return None  # "repeat the first st": not how often
        self.at = mark
        return Tail(None, more=More.UNSAID) if starred or self._clause_is_over() else None

    def _times(self) -> Figure | None:
        """A number of times; "a total of 6 times", "another 3 times"."""
        mark = self.at
        self.accept_all("a", "for", "another")
        if (self.here.text, self.ahead().text) == ("in", "total"):
            self.at += 1
        if self.accept_any("total"):
            self.accept_any("of")
        self.accept_any("x")
        if self.here.text in TIMES_WORDS:
            self.at += 1
            return (TIMES_WORDS[self.tokens[self.at - 1].text],)
        figure = self.accept_figure()
        if figure is None or self.kind() is not None:
            self.at = mark
            return None
        return figure

    def _so_often(self, figure: Figure) -> Tail:
        """``["more"] ["times"] ["more"] ["in" "total"] ["around"]`` behind a number"""
        before = {t.text for t in self.tokens[max(0, self.at - 4) : self.at]}
        more = More.MORE if "another" in before else More.UNSAID
        if "total" in before:
            more = More.TOTAL
        if self.accept_any("more"):
            more = More.MORE
        self.accept_any("times", "time", "x")
        if self.accept_any("more", "again"):
            more = More.MORE
        mark = self.at
        self.accept_any("in", "for")
        self.accept_any("a")
        if self.accept_any("total", "all", "altogether"):
            more = More.TOTAL
        else:
            self.at = mark
        if not self.times_by_sides()[1]:
            self._ends()
        return Tail(figure, more)

    def _until(self) -> Tail | None:
        """``"to" ("last" figure kind | "end") | "until" figure kind "remain" …``"""
        self.accept_all(
            "the", "within", "there", "are", "is", "you", "have", "reach", "only", "made", "you've"
        )
        if self.accept_any("last"):
            return self._until_last()
        if self.here.text in BEGINNING and self.ahead().text in CHAIN_WORDS:
            self.at += 2
            self.accept("-")
            if self.here.type is Type.NUMBER:
                self.at += 1
            return Tail(None)
        if self.accept_any("end", "beginning"):
            if self.accept_any("of"):
                self.accept_any("the")
                self.kind()
                self.accept_all("of", "the", "rnd", "round", "row", "chain", "ch")
            return Tail(None)
        place = self._until_place()
        if place:
            return Tail(None, until=place)
        if self._until_all():
            return Tail(None)
        mark = self.at
        self.accept_all("made", "a", "total", "of")
        figure = self.accept_figure()
        if figure is None:
            return None
        words = self._clause_words()
        if words & {"remain", "remaining", "left", "rem"}:
            kind = self.kind() or "st"
            self.to_clause_end()
            return Tail(None, leave=figure, kind=kind)
        self.at = mark
        return self._until_made(words)

    def _until_last(self) -> Tail:
        """``"side" | [figure] kind`` behind "to last"; what follows is that side"""
        if self.accept_any(*SIDE_WORDS):
            return Tail(None)
        leave = self.accept_figure() or (1,)
        kind = "sp" if self.accept_any(*TILES) else self.kind()
        return Tail(None, leave=leave, kind=kind or "st")

    def _until_all(self) -> bool:
        """``"all" … ("worked" | "joined" …)``: until none is left"""
        mark = self.at
        if self.accept_any("all", "every", "each"):
            words = self._clause_words()
            if words & DONE and not any(word.isdigit() for word in words):
                while self.here.text not in DONE:
                    self.at += 1
                self.accept_all(*DONE, "into", "in", "together", "up")
                return True
        self.at = mark
        return False

    def _until_place(self) -> str:
        """``["next"] ("corner" | space)``: the place a repeat stops before; "" for none"""
        mark = self.at
        self.accept_any("next")
        kind = self.kind() or ""
        if kind == "corner" or kind.endswith("sp"):
            return kind
        self.at = mark
        return ""

    def _on_last_pass(self) -> bool:
        """``("on" | "of" | "in" | "at" ["the"] "end" "of") ["the"] ("last" | "final") "repeat"``"""
        mark = self.at
        if self.accept_any("at"):
            self.accept_all("the", "end")
        if self.accept_any("on", "of", "in"):
            self.accept_any("the")
            if self.accept_any("last", "final") and self.accept_any("rep", "repeat"):
                return True
        self.at = mark
        return False

    def _ending(self, found: Tail) -> Tail:
        """``[","] ("ending" ["last repeat"] "at" star | "omit last" stitch)``"""
        mark = self.at
        self.accept_any(",", ".", ";")
        if self.accept_any("ending", "end"):
            self.accept_all("the", "last", "repeat", "rep")
            if self.accept_any("at") and self.here.type is Type.STAR:
                self.at += 1
                return found
        self.at = mark
        self.accept_any(",", ".", ";")
        if self.accept_any("omit", "omitting"):
            self.accept_any("the")
            last = self.accept_any("last", "final")
            figure = self.accept_figure() or (1,)
            named = self.kind() or self.accept_phrase(self.lexicon.phrases)
            if (self._on_last_pass() or last) and named not in ("inc", "dec", "invdec"):
                return replace(found, omit=figure[0])  # else what stands instead is not said
        self.at = mark
        return found
