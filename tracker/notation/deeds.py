"""Reading what the hands do that makes no stitch: join, turn, colour, marker, end."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.makes import Makes
from tracker.notation.targets import _CHAIN_WORDS, _SPACE_WORDS
from tracker.notation.tokens import Type
from tracker.notation.tree import Act, At, Deed, Loops, Note, OtherSide, Skip
from tracker.notation.wordlists import COLOURS

_JOINS = ("join", "joining", "connect", "close", "attach", "rejoin")
_SLIP = ("ss", "slst", "sl", "slip", "slipstitch")
_ENDINGS = ("fasten", "finish", "tie", "end", "cut", "break", "bind")
_OTHER_SIDE = ("other", "otherside", "opposite", "underside", "back")


class Deeds(Makes):
    """Rules for deeds. ``begun`` says whether the round has made a stitch yet."""

    begun = False

    def deed(self) -> Act | OtherSide | Loops | Note | Skip | None:
        """``deed = join | slip join | turn | other side | end | colour | marker | loops``"""
        for rule in (
            self._do_not,
            self._aside,
            self._goes_on,
            self._ring_made,
            self._start_here,
            self._join,
            self._slip_join,
            self._other_side,
            self._turn,
            self._fasten,
            self._colour,
            self._marker,
            self._loops_from_here,
        ):
            mark = self.at
            found = rule()
            if found is not None:
                return found
            self.at = mark
        return None

    def _do_not(self) -> Note | None:
        """``"do not" ("join" | "turn" | "fasten off" …)``: nothing to do."""
        start = self.here.start
        if self.accept("do", "not") or self.accept("don't") or self.accept("without"):
            if self.accept_any(
                "join", "turn", "joining", "turning", "fasten", "finish", "end", "cut"
            ):
                self.to_clause_end()
                return Note(start, self.last_end)
        return None

    def _aside(self) -> Note | None:
        """``"note" … "." | ("right" | "wrong") "side" | stitch "made"``: nothing to do"""
        start = self.here.start
        if self.accept_any("note", "nb", "tip"):
            while self.here.text != "." and self.here.type is not Type.END:
                self.at += 1
            return Note(start, self.last_end)
        if (
            self.accept_any("rs", "ws")
            or self.accept("right", "side")
            or self.accept("wrong", "side")
        ):
            self.accept_any("facing")
            return Note(start, self.last_end)
        self.accept_any("first", "1st", "beg")
        if self.accept_phrase(self.lexicon.phrases) is not None:
            self.accept_any("stitch", "st")
            if self.accept_any("made", "completed"):
                return Note(start, self.last_end)
        return None

    def _goes_on(self) -> Note | None:
        """``"continue" ["to" "work"] ["in"] ("spiral" | "rounds")``; "at end of round 6" """
        start = self.here.start
        if self.accept_any("continue", "cont"):
            self.accept_all("to", "work", "working", "crocheting", "in", "a", "the")
            if self.accept_any("spiral", "round", "rounds", "rnd", "rnds", "rows"):
                return Note(start, self.last_end)
            return None
        if self.accept_any("at", "in"):
            self.accept_any("the")
            if self.accept("end", "of"):
                self.accept_all("the", "last", "this", "each")
                self.accept_ordinal()
                if self.accept_any("row", "rnd", "round", "rows"):
                    self.accept_number()
                    return Note(start, self.last_end)
            return None
        if self.accept("working", "in") and self.kind() is not None and self.here.text == ",":
            return Note(start, self.last_end)
        return None

    def _ring_made(self) -> Act | None:
        """``["make" | "create"] ring``: an adjustable ring to work into"""
        start = self.here.start
        self.accept_any("make", "create", "start", "with", "form", "begin")
        self.accept_any("with")
        self.accept_any("a", "an")
        ring = self._ring()
        return None if ring is None else Act(Deed.RING, start, self.last_end)

    def _start_here(self) -> Act | Note | Skip | None:
        """``("start" | "starting") target``: where the round begins"""
        start = self.here.start
        if not self.accept_any("start", "starting", "beginning", "begin"):
            return None
        if self.accept_any("with") and self._chain_ahead():
            return Note(start, self.last_end)
        target = self.target()
        if target is not None and target.at is At.HOOK:
            return Skip((target.nth - 1,), "ch", start, self.last_end, At.FIRST)
        self.to_clause_end()
        if target is None or self.begun:
            return Note(start, self.last_end)
        return Act(Deed.COLOUR, start, self.last_end, target=replace(target, at=At.ANY))

    def _chain_ahead(self) -> bool:
        return self.here.text in ("a", *_CHAIN_WORDS)

    def _join(self) -> Act | None:
        """``join = ("join" | "connect") words``; a colour or a first stitch may be in it."""
        start = self.here.start
        self.accept_all("to", "and")
        if not self.accept_any(*_JOINS):
            return None
        colour = self._colour_name()
        if self.accept("with") and not self._slip_here():
            self.accept_any("a", "standing")
            if self._stitch_here():
                return Act(Deed.JOIN if self.begun else Deed.COLOUR, start, self.last_end, colour)
            self.at -= 1
        return self._joined(start, colour)

    def _joined(self, start: int, colour: str) -> Act:
        """The rest of a join: where to, and what the words say it closes to."""
        begin = self.at
        target = None
        self.accept_all("with", "a", "round", "yarn", "new", "color", "colour", "by", "rnd", "each")
        self._accept_slip()
        if self.here.text in ("in", "into", "to", "at"):
            target = self.target()
        self.to_clause_end()
        onto, named = self._closed(begin)
        if not self.begun and target is not None:
            return Act(Deed.COLOUR, start, self.last_end, colour, target, onto)
        length = self._chain_named(begin)
        return Act(Deed.JOIN, start, self.last_end, colour, None, onto, length, named)

    def _chain_named(self, begin: int) -> int:
        """The length of a chain named "ch 3" or "ch-3" since token ``begin``; 0 if none."""
        for index in range(begin, self.at - 1):
            if self.tokens[index].text in _CHAIN_WORDS:
                after = self.tokens[index + 1 + (self.tokens[index + 1].text == "-")]
                if after.type is Type.NUMBER:
                    return after.value
        return 0

    def _slip_here(self) -> bool:
        mark = self.at
        found = self._accept_slip()
        self.at = mark
        return found

    def _accept_slip(self) -> bool:
        self.accept_any("a", "an")
        mark = self.at
        if self.accept_phrase(self.lexicon.phrases) == "sl st":
            return True
        self.at = mark
        return False

    def _slip_join(self) -> Act | None:
        """A slip stitch that closes the round: into the first stitch, the chain, the top."""
        start, begin = self.here.start, self.at
        self.accept_any("1", "work", "make")
        if not self._accept_slip():
            return None
        words = self._clause_words()
        closing = {"join", "close", "form", "joining", "beg", "beginning", "top", "first", "1st"}
        to_chain = self.here.text in ("in", "to", "into", "around") and bool(
            words & set(_CHAIN_WORDS) and not words & set(_SPACE_WORDS)
        )
        ring = bool(words & {"first", "1st"} and words & set(_CHAIN_WORDS)) and not words & set(
            _SPACE_WORDS
        )
        if not self.begun and not ring and not words & {"join", "form", "close", "ring"}:
            return None
        if not (words & closing or to_chain):
            return None
        self.to_clause_end()
        onto, named = self._closed(begin)
        length = self._chain_named(begin)
        return Act(Deed.JOIN, start, self.last_end, onto=onto, length=length, named=named)

    def _closed(self, begin: int) -> tuple[str, str]:
        """What tokens since ``begin`` say a round is closed to, and the stitch named.

        The first is "chain", "stitch", "st" (a stitch of no name) or "".
        """
        at, end = self.at, self.at
        self.at = begin
        onto, named = "", ""
        while self.at < end:
            if self.here.text in _CHAIN_WORDS:
                onto = "chain"
                self.at += 1
                continue
            key = self.accept_phrase(self.lexicon.phrases)
            if key is None:
                if self.here.text in ("st", "stitch") and not onto:
                    onto = "st"
                self.at += 1
            elif key not in ("sl st", "ch") and onto != "chain":
                onto, named = "stitch", named or key
        self.at = at
        return onto, "" if onto == "chain" else named

    def _turn(self) -> Act | None:
        start = self.here.start
        if self.accept_any("turn", "turning") or self.accept("flip"):
            self.accept_all("the", "your", "work", "over")
            self.to_clause_end() if self.here.text in ("so", "around") else None
            return Act(Deed.TURN, start, self.last_end)
        return None

    def _other_side(self) -> OtherSide | None:
        """``… "other side of" ["the"] ["foundation"] "chain"``"""
        start = self.here.start
        words = 0
        while words < 9 and self.here.text not in _OTHER_SIDE:
            if self.here.type is not Type.WORD or self._stitch_here():
                return None
            if self.here.text not in (
                "turn", "and", "work", "working", "going", "go", "across", "along", "down",
                "on", "the", "in", "continue", "now", "around", "to", "from", "do", "not", "up",
            ):  # fmt: skip
                return None
            self.at += 1
            words += 1
        word = self.accept_any(*_OTHER_SIDE)
        if word in ("other", "opposite", "back") and not self.accept_any("side", "edge"):
            return None
        if self.accept("of"):
            self.accept_all("the", "your", "foundation", "starting", "beginning", "beg", "base")
            self.accept_any(*_CHAIN_WORDS)
        return OtherSide(start, self.last_end)

    def _fasten(self) -> Act | None:
        start = self.here.start
        if self.accept("fo") or (
            self.here.text in _ENDINGS and self.ahead().text in ("off", "yarn", "the", "thread")
        ):
            self.to_clause_end()
            return Act(Deed.FASTEN, start, self.last_end)
        return None

    def _colour(self) -> Act | None:
        """``colour = ("with" | "using" | "change to") ["colour"] name``"""
        start = self.here.start
        changing = bool(self.accept_any("change", "changing", "switch", "switching"))
        if changing:
            self.accept_any("back")
            self.accept_any("colors", "colours", "color", "colour", "yarn")
        led = bool(self.accept_any("to", "with", "using", "in"))
        if not (led or changing):
            return None
        name = self._colour_name()
        if not name and not changing:
            return None
        self._hook_change()
        return Act(Deed.COLOUR, start, self.last_end, name)

    def _colour_name(self) -> str:
        """A yarn letter, MC or CC, or a colour word, as written."""
        mark = self.at
        worded = bool(self.accept_any("color", "colour", "yarn", "col"))
        token = self.here
        written = self.text[token.start : token.end]
        if token.type is Type.WORD and (
            (len(written) == 1 and written.isupper()) or token.text in COLOURS or worded
        ):
            self.at += 1
            return written
        self.at = mark
        return ""

    def _hook_change(self) -> None:
        """``"and" size "hook"`` behind a change of colour."""
        mark = self.at
        if self.accept_any("and"):
            self.accept_any("to")
            while self.here.type is Type.NUMBER or self.here.text in (".", "mm"):
                self.at += 1
            if self.accept_any("hook"):
                return
        self.at = mark

    def _marker(self) -> Act | Note | None:
        start = self.here.start
        if self.accept("pm") or (
            self.here.text in ("place", "insert", "attach")
            and "marker" in self._clause_words() | {self.here.text}
        ):
            self.to_clause_end()
            return Act(Deed.MARKER, start, self.last_end)
        return None

    def _loops_from_here(self) -> Loops | None:
        """``["working" | "work"] ["in"] loop`` as a clause: it holds for what follows."""
        start = self.here.start
        self.accept_any("working", "work")
        self.accept_any("in", "through", "into")
        self.loop = ""
        if not self.accept_loop():
            return None
        self.accept_all("throughout", "unless")
        if self.here.text in (":", ",", ".", ";") or self._begins_make():
            return Loops(self.loop, start, self.last_end)
        return None

    def _begins_make(self) -> bool:
        return self.here.type in (Type.NUMBER, Type.STAR, Type.OPEN) or self._stitch_here()

    def _clause_words(self) -> set[str]:
        """The words up to the end of this clause."""
        return {t.text for t in self.tokens[self.at : self.clause_end()]}

    def clause_end(self) -> int:
        """Index of the token that ends this clause: a separator, a bracket or a star."""
        index = self.at
        while True:
            token = self.tokens[index]
            if token.type in (Type.END, Type.OPEN, Type.CLOSE, Type.STAR):
                return index
            if token.text in (",", ";", ".", ":", "=", "-") and not self._inside_word(index):
                return index
            index += 1

    def _inside_word(self, index: int) -> bool:
        """Whether a sign stands inside a word or number, as in "ch-2" and "5.5"."""
        token, before, after = (self.tokens[i] for i in (index, index - 1, index + 1))
        glued = before.end == token.start and token.end == after.start
        return glued and (token.text == "-" or after.type is Type.NUMBER)

    def to_clause_end(self) -> None:
        """Pass over the rest of this clause."""
        self.at = self.clause_end()
