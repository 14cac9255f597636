"""The words of one round -> its instruction tree."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.notation.kit import TIMES_WORDS
from tracker.notation.lexicon import Lexicon, without_asides
from tracker.notation.repeats import AGAIN, Repeats, Tail
from tracker.notation.stitches import Stitch
from tracker.notation.targets import _ROUND_WORDS
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import (
    Act,
    Again,
    At,
    Chain,
    Deed,
    Evenly,
    Group,
    Loops,
    Make,
    More,
    Node,
    Note,
    Repeat,
    RoundText,
    Skip,
    Stated,
    Target,
    Unread,
)
from tracker.notation.wordlists import CRAFT, SHAPING, WORKING

#: Brackets in brackets deeper than this are not written by people.
DEEPEST = 12
_SEPARATORS = (
    ",",
    ";",
    ".",
    ":",
    "&",
    "and",
    "then",
    "+",
    "also",
    "now",
    "again",
    "finally",
    "-",
    "'",
    '"',
    "/",
)
_TAIL_WORDS = ("ending", "end", "ends", "finish", "finishing")
_UNTIL = re.compile(
    r"(?:\brep(?:eat)? (?:this|last) (?:rnd|round|row)s?,? )?\b(?:until|till|for)\b[^.;(\[]*?"
    r"(?:measures?\b|desired|long\b|length|tall\b|deep\b|big enough|fits"
    r"|\d\s*(?:cm|mm|in|inch|inches)\b)[^.;(\[]*"
    r"(?:[(\[][\d,./ ]+[)\]]\s*(?:cm|mm|in|inch|inches)\b[^.;(\[]*)?"
)
_EVEN = re.compile(
    r"^\W*(?:work|knit|crochet|do)?\s*(?:(\d+|one|two|three|four|five|six|seven|eight|nine|ten)\s+)?"
    r"(?:more\s+)?(?:rounds?|rnds?|rows?)?\W*(?:of\s+)?(even(?!ly)|straight|unchanged|without\s+(?:shaping|increasing))\b"
)


class Reader(Repeats):
    """Reads one round. The grammar of a whole round::

    round    = {element | separator}
    element  = star | bracket | again | count | deed | chain | skip | evenly
             | led | make | note
    """

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, lexicon, sizes)
        self.tokens = without_asides(self.tokens, lexicon)
        self.match_brackets()
        self.stated: Stated | None = None
        self.split = False
        self.deep = 0
        self.begun = False

    def round(self) -> tuple[Node, ...]:
        """All elements to the end of the text."""
        return tuple(self._sequence(len(self.tokens) - 1))

    def _sequence(self, stop: int) -> list[Node]:
        """``sequence = {element | separator}`` up to token ``stop``."""
        nodes: list[Node] = []
        while self.at < stop:
            if self.accept_any(*_SEPARATORS):
                self.at -= 1
                stated = self.closing_count(_ends_round(nodes)) if self.deep == 0 else None
                if stated is not None:
                    self._keep(stated)
                else:
                    self.at += 1
                continue
            before = self.at
            if self._again_here():
                nodes = self._repeat_before(nodes)
            else:
                nodes += self._element(nodes)
            if self.at == before:
                self.at += 1
                start, end = self.tokens[before].start, self.tokens[before].end
                nodes.append(Unread(self.text[start:end], start, end))
        return nodes

    def _element(self, before: list[Node]) -> list[Node]:
        """One element; always moves on."""
        token = self.here
        if token.type is Type.STAR and self.ahead().text in AGAIN:
            self.at += 1
            return []
        if token.type is Type.STAR:
            return self._starred()
        if token.type is Type.OPEN:
            return self._bracket(before)
        if token.type is Type.CLOSE:
            self.at += 1
            return []
        sentence = self.at > 0 and self.tokens[self.at - 1].text == "."
        over = _ends_round(before) or (sentence and _goes_round(before))
        stated = self.closing_count(over) if self.deep == 0 else None
        if stated is not None:
            self._keep(stated)
            return []
        return self._plain(before)

    def _plain(self, before: list[Node]) -> list[Node]:
        """An element that begins with a word or a number."""
        if self._accept_tail_words():
            return []
        if self.here.text == "with" and self._tail_follows():
            self.at += 1
            return []
        node = self.deed() or self.chain() or self.skip() or self._evenly()
        if node is not None:
            return [node]
        led = self._led() or self._all_into(before)
        if led is not None:
            return led
        made = self.make() or self._shown()
        if made is not None:
            self.begun = True
            return self._over(made)
        if self.here.text in ("around", "across") and self._is_to_the_end():
            self.at += 1
            return []
        return [self._words()]

    def _accept_tail_words(self) -> bool:
        """``("ending" | "end" | "finish") ["this" "row"] ["with"]`` before what ends a round"""
        mark = self.at
        if self.accept_any(*_TAIL_WORDS):
            self.accept_all("this", "the", "last", "rep", "repeat", "rnd", "row", "round")
            if self.accept_any("with") or self.here.type is Type.NUMBER or self._stitch_here():
                return True
        self.at = mark
        return False

    def _tail_follows(self) -> bool:
        """Whether "with" here leads to what ends a round: "… around with 1 sc in last sc"."""
        mark = self.at
        self.at += 1
        self.accept_number()
        found = self._stitch_here()
        self.at = mark
        return found

    def _over(self, made: list[Node]) -> list[Node]:
        """A bracket right behind a stitch may say what it counts as, or spell it out."""
        first = made[0]
        other = self._counted_as()
        if other is not None and isinstance(first, Make):
            return [replace(first, stitch=other, end=self.last_end)]
        if (
            isinstance(first, Make)
            and self.here.type is Type.OPEN
            and self.closing() > 0
            and (first.stitch.takes != 1 or first.stitch.makes != 1 or self._explains())
            and not self._asked_again(self.closing())
            and self.bracketed_count_ahead() is None
            and self._spells_out()
        ):
            start = self.here.start
            self.at = self.closing() + 1
            return [*made, Note(start, self.last_end)]
        return made

    def _counted_as(self) -> Stitch | None:
        """``"(" "counts as" stitch ")"`` behind a stitch: the two of a "ch 3, dc2tog"."""
        mark = self.at
        if self.here.type is Type.OPEN and self.closing() > 0:
            close = self.closing()
            self.at += 1
            self.accept_any("counts", "together")
            self.accept_all("as", "a", "an", "the")
            key = self.accept_phrase(self.lexicon.phrases)
            if (
                key is not None
                and self.at == close
                and self.tokens[mark + 1].text
                in (
                    "counts",
                    "together",
                )
            ):
                self.at += 1
                return self.lexicon.stitch(key)
        self.at = mark
        return None

    def _explains(self) -> bool:
        inside = self.tokens[self.at + 1 : self.closing()]
        return any(t.text in (":", "loop", "loops", "yo", "hook", "pull") for t in inside)

    def _spells_out(self) -> bool:
        """Whether the bracket here tells how a stitch is made, not what to make next."""
        close = self.closing()
        after = self.tokens[close + 1]
        return after.type is not Type.NUMBER and after.text not in ("x", "*", "in", "into")

    def bracketed_count_ahead(self) -> Stated | None:
        """The printed count that stands here, without reading it."""
        mark = self.at
        found = self.bracketed_count()
        self.at = mark
        return found

    def _again_here(self) -> bool:
        """Whether an unstarred "repeat", or "around" as a clause of its own, stands here."""
        if self.deep:
            return False
        if self.here.text in ("around", "across"):
            return self._is_to_the_end()
        return (self.here.text in AGAIN and self.ahead().text not in (
            "row", "rows", "rnd", "rnds", "round", "rounds", "with", "working", "crocheting",
            "making", "in", "to",
        )) or (self.here.text in AGAIN and self.ahead().text == "to" and self.ahead(2).text == "end")  # fmt: skip

    def _repeat_before(self, nodes: list[Node]) -> list[Node]:
        """``… "," again``: what was written before it on the line is repeated."""
        first = next(
            (i for i, n in enumerate(nodes) if isinstance(n, Make | Group | Repeat | Skip)), None
        )
        start = self.here.start
        found = self.tail(starred=True)
        if found is None or first is None:
            if self.here.text in ("around", "across") and first is not None:
                self.at += 1
                found = Tail()
            else:
                return [*nodes, self._words()]
        body = nodes[first:]
        if len(body) == 1 and isinstance(body[0], Repeat) and body[0].implied:
            body = list(body[0].body)
        repeat = self._repeat(tuple(body), found, body[0].start, starred=True)
        return [*nodes[:first], replace(repeat, end=max(repeat.end, start))]

    def _keep(self, stated: Stated) -> None:
        """The last printed total is the round's; one in groups gives way to it."""
        if self._two_totals(stated):
            self.split = True
        if self.stated is None or stated.total is not None or self.stated.total is None:
            self.stated = stated

    def _two_totals(self, stated: Stated) -> bool:
        """Whether two different totals are printed with words to be worked between them."""
        before = self.stated
        if before is None or not before.total or not stated.total:
            return False
        between = self.text[before.end : stated.start]
        return before.total != stated.total and any(c.isalpha() for c in between)

    # --- stars -------------------------------------------------------------------

    def _starred(self) -> list[Node]:
        """``starred = star {element} [star] tail``"""
        start, opener = self.here.start, self.here.text
        self.at += 1
        if self.here.type is Type.NUMBER and self.ahead().type in (Type.SIGN, Type.OPEN, Type.END):
            return [Unread(opener, start, self.last_end)]
        body: list[Node] = []
        stop = -1
        closed = False
        while not self.done() and self.here.type is not Type.CLOSE:
            if self.accept_any(*_SEPARATORS):
                continue
            if self.here.type is Type.STAR:
                if self._marks_stop(opener):
                    stop = len(body)
                    self.at += 1
                    continue
                if not self._nests(opener):
                    self.at += 1
                    closed = True
                    break
            if self.here.text in AGAIN or not self._deeper():
                break
            before = self.at
            body += self._element(body)
            self.deep -= 1
            if self.at == before:
                self.at += 1
        return self._star_end(tuple(body), stop, closed, start)

    def _deeper(self) -> bool:
        if self.deep >= DEEPEST:
            return False
        self.deep += 1
        return True

    def _marks_stop(self, opener: str) -> bool:
        """Whether the star here only marks where the last pass ends ("… at **")."""
        if self.here.text == opener:
            return False
        rest = self.tokens[self.at + 1 :]
        return any(
            a.text in ("at", "ending") and b.text == self.here.text
            for a, b in zip(rest, rest[1:], strict=False)
        )

    def _nests(self, opener: str) -> bool:
        """Whether the star here opens a repeat inside the one opened by ``opener``."""
        if self.here.text == opener:
            return False
        rest = self.tokens[self.at + 1 :]
        pairs = list(zip(rest, rest[1:], strict=False))
        if any(a.text == "to" and b.text == self.here.text for a, b in pairs):
            return False
        return any(a.text == "from" and b.text == self.here.text for a, b in pairs)

    def _star_end(self, body: tuple[Node, ...], stop: int, closed: bool, start: int) -> list[Node]:
        found = self.tail(starred=True)
        each = _each_space(body)
        if found is None and each is not None and isinstance(body[-1], Make):
            # "*sc, 3 hdc, sc in each ch-3 sp around": all of it goes into each space
            inner = (*body[:-1], replace(body[-1], target=None))
            return [Group(inner, each, start, self.last_end)]
        if found is None:
            loose = Repeat(body, start, self.last_end, starred=True, more=More.UNSAID, implied=True)
            return [loose] if body else []
        if found.target is not None and not found.times:
            return [Group(body, found.target, start, self.last_end)]
        repeat = self._repeat(body, found, start, starred=True)
        return [replace(repeat, stop=stop, more=_closed_more(repeat, closed))] if body else []

    def _repeat(self, body: tuple[Node, ...], tail: Tail, start: int, starred: bool) -> Repeat:
        return Repeat(
            body,
            start,
            self.last_end,
            times=tail.times,
            more=tail.more,
            leave=tail.leave,
            kind=tail.kind,
            starred=starred,
            omit=tail.omit,
        )

    # --- brackets ----------------------------------------------------------------

    def _bracket(self, before: list[Node]) -> list[Node]:
        """``bracket = "(" sequence ")" [target | tail]``, or a count, or an aside"""
        start, close = self.here.start, self.closing()
        if close < 0 or self.deep >= DEEPEST:
            self.at += 1 if close < 0 else close + 1 - self.at
            return [Unread(self.text[start : self.last_end], start, self.last_end)]
        worked = any(not isinstance(n, Note | Loops | Act) for n in before)
        stated = self.bracketed_count() if self.deep == 0 and worked else None
        if stated is not None:
            self._keep(stated)
            return []
        self.at += 1
        self.deep += 1
        begun = self.begun
        body = self._sequence(close)
        self.deep -= 1
        self.at = close + 1
        if self.tokens[self._opened(close) + 1].text in ("see", "measures", "for"):
            return [Note(start, self.last_end)]
        if not any(
            isinstance(n, Make | Chain | Group | Repeat | Skip | Act | Evenly) for n in body
        ):
            return self._bracket_aside(body, start)
        if self.deep == 0 and _ends_round(before) and not self._asked_again(close):
            # Behind the join nothing is worked: a count that is told in another way.
            self.begun = begun
            return [Note(start, self.last_end)]
        if any(isinstance(n, Unread) for n in body) and before and not self._asked_again(close):
            self.begun = begun
            return self._bracket_aside(body, start)
        return self._bracket_end(tuple(body), start)

    def _opened(self, close: int) -> int:
        """Index of the bracket that token ``close`` closes."""
        return next(a for a, b in self._closers.items() if b == close)

    def _bracket_aside(self, body: list[Node], start: int) -> list[Node]:
        """A bracket with no instruction in it; words that could count stay unread."""
        unread = [n for n in body if isinstance(n, Unread)]
        words = {t.text for n in unread for t in self.tokens if n.start <= t.start < n.end}
        if words & (WORKING - {"stitch", "st", "sts", "first", "last", "same", "each"}):
            return [Unread(self.text[start : self.last_end], start, self.last_end)]
        return [Note(start, self.last_end)]

    def _bracket_end(self, body: tuple[Node, ...], start: int) -> list[Node]:
        named = self._first_aside()
        if named is not None:
            target = next((n.target for n in reversed(body) if isinstance(n, Make)), None)
            return [Make(named, (1,), target, start, self.last_end)]
        mark = self.at
        found = self.tail(starred=False)
        if found is None and self.here.type is Type.STAR and self.ahead().text in AGAIN:
            self.at += 1
            found = self.tail(starred=True)
        if found is None:
            self.at = mark
            target = self._target_of_bracket()
            target = self.hook_counts(target)
            if target is not None:
                return [Group(body, target, start, self.last_end), *self._also(body)]
            return [Repeat(body, start, self.last_end, (1,), implied=True)]
        if found.target is not None and found.times is None:
            return [Group(body, found.target, start, self.last_end)]
        return self._bracket_repeat(body, found, start)

    def _target_of_bracket(self) -> Target | None:
        """The place behind a bracket, also behind a comma: "(3 dc, ch 2, 3 dc), in any sp"."""
        if self.here.text in ("around", "across"):
            return None
        mark = self.at
        comma = self.accept(",")
        if not comma or self.here.text in ("in", "into"):
            target = self.target()
            if target is not None and (not comma or self._clause_over()):
                return target
        self.at = mark
        return None

    def _bracket_repeat(self, body: tuple[Node, ...], found: Tail, start: int) -> list[Node]:
        mark = self.at
        target = self.target() if self.here.text in ("in", "into") else None
        if target is not None:
            inner: tuple[Node, ...] = (self._repeat(body, found, start, starred=False),)
            return [Group(inner, target, start, self.last_end)]
        self.at = mark
        return [self._repeat(body, found, start, starred=False)]

    def _also(self, body: tuple[Node, ...]) -> list[Node]:
        """``group target {"and" target}``: the same group in further places."""
        mark, start = self.at, self.here.start
        self.accept_any(",")
        if self.accept_any("and"):
            self.accept_any("in", "into")
            target = self._place(led=False)
            if target is not None:
                return [Group(body, target, start, self.last_end)]
        self.at = mark
        return []

    def _first_aside(self) -> Stitch | None:
        """``"-" "first" stitch`` behind a bracket: what the bracket made is that stitch."""
        mark = self.at
        if self.accept("-") and self.accept_any("first"):
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None:
                self.accept_any("stitch", "st")
                return self.lexicon.stitch(key)
        self.at = mark
        return None

    # --- the rest ----------------------------------------------------------------

    def _led(self) -> list[Node] | None:
        """``led = target ["make" | "work"] (bracket | make)``: the place comes first"""
        mark, start = self.at, self.here.start
        if self.here.text not in ("in", "into", "to", "from"):
            return None
        target = self.target()
        if target is None:
            self.at = mark
            return None
        if self.here.text == "," and self.ahead().text in ("work", "make"):
            self.at += 1
        self.accept_all("work", "make", "place", "do", "crochet")
        if self.here.type is Type.OPEN and self.closing() > 0:
            body = self._inside(self.closing())
            times = self._times_behind()
            if times is not None:
                body = [Repeat(tuple(body), start, self.last_end, times)]
            self.begun = True
            return [Group(tuple(body), target, start, self.last_end)]
        if target.at is At.RING:
            return [Note(start, self.last_end)]
        made = self.make()
        if (
            made is not None
            and len(made) == 1
            and isinstance(made[0], Make)
            and made[0].target is None
        ):
            self.begun = True
            return [replace(made[0], target=target, start=start)]
        if target.at is At.HOOK and made is None:
            return [Skip((target.nth - 1,), "ch", start, self.last_end, At.FIRST)]
        self.at = mark
        return None

    def _all_into(self, before: list[Node]) -> list[Node] | None:
        """``make {"," make} "," target``: all that stands before it goes into that place."""
        mark = self.at
        loose: list[Node] = []
        while before and isinstance(before[-1], Make | Chain):
            last = before[-1]
            if isinstance(last, Make) and last.target is not None:
                break
            loose.insert(0, before.pop())
        if self.here.text in ("in", "into", "on") and any(isinstance(n, Make) for n in loose):
            target = self.target()
            if target is not None and self._clause_over():
                return [Group(tuple(loose), target, loose[0].start, self.last_end)]
        before.extend(loose)
        self.at = mark
        return None

    def _shown(self) -> list[Node] | None:
        """``("draw" | "insert" | "yo") … stitch "made"``: how it is made, then its name"""
        if self.here.text not in ("draw", "insert", "yo", "yoh", "pull"):
            return None
        mark, start = self.at, self.here.start
        while not self.done() and self.at < mark + 60 and self.here.type is not Type.STAR:
            here = self.at
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and self.accept_any("made"):
                return [Make(self.lexicon.stitch(key), (1,), None, start, self.last_end)]
            self.at = here + 1
        self.at = mark
        return None

    def _inside(self, close: int) -> list[Node]:
        self.at += 1
        self.deep += 1
        body = self._sequence(close)
        self.deep -= 1
        self.at = close + 1
        return body

    def _evenly(self) -> Node | None:
        """``evenly = ("inc" | "dec") figure ["sts"] "evenly" …``; "even" works even"""
        start, mark = self.here.start, self.at
        if self.accept_any("even", "unchanged", "straight") or self.accept("work", "even"):
            self._ends()
            return Evenly((0,), 0, start, self.last_end)
        self.accept_any("working", "work")
        change = {
            "inc": 1,
            "increase": 1,
            "increasing": 1,
            "dec": -1,
            "decrease": -1,
            "decreasing": -1,
        }.get(self.here.text)
        if change is not None:
            self.at += 1
            figure = self.accept_figure()
            if figure is not None:
                self.kind()
                if self.accept_any("evenly"):
                    self.accept_all("spaced", "spread")
                    self._ends()
                    self.to_clause_end()
                    self.begun = True
                    return Evenly(figure, change, start, self.last_end)
        self.at = mark
        return None

    def named_stitch(self) -> Stitch | None:
        """The first stitch named anywhere in the text, if one is."""
        for self.at in range(len(self.tokens)):
            key = self.accept_phrase(self.lexicon.phrases)
            if key is not None and key not in ("ch", "sl st"):
                return self.lexicon.stitch(key)
        return None

    def _words(self) -> Node:
        """A clause of other words: a note, or unread where it could change a count."""
        start = self.here.start
        begin = self.at
        self.to_clause_end()
        if self.at == begin:
            self.at += 1
        clause = self.tokens[begin : self.at]
        if {"ring", "form"} <= {t.text for t in clause}:
            return Act(Deed.RING, start, self.last_end)
        if clause[0].text == "=":
            return Unread("=", start, self.last_end)
        end = self.last_end
        words = {t.text for t in clause}
        advice = bool(words & CRAFT) and not self._asks_for_stitches(begin, self.at)
        if not advice and (
            self._could_count(begin, self.at) or any(t.type is Type.NUMBER for t in clause)
        ):
            return Unread(self.text[start:end], start, end)
        return Note(start, end)

    def _asks_for_stitches(self, begin: int, end: int) -> bool:
        """Whether the words have a stitch in them, or say to skip, repeat or change."""
        back, found = self.at, False
        self.at = begin
        while self.at < end and not found:
            found = self.here.text in SHAPING or self._stitch_named()
            self.at += 1
        self.at = back
        return found

    def _stitch_named(self) -> bool:
        mark = self.at
        key = self.accept_phrase(self.lexicon.phrases)
        self.at = mark
        return key not in (None, "ch", "sl st")

    def _could_count(self, begin: int, end: int) -> bool:
        """Whether the words from ``begin`` to ``end`` name a stitch or a working word."""
        back = self.at
        found = False
        self.at = begin
        while self.at < end and not found:
            found = self.here.text in WORKING or self._stitch_here()
            self.at += 1
        self.at = back
        return found


def _each_space(body: tuple[Node, ...]) -> Target | None:
    """The chain spaces that the last of several placeless stitches names, if it does."""
    last = body[-1] if body else None
    if not isinstance(last, Make) or last.target is None or len(body) < 2:
        return None
    placed = [n for n in body[:-1] if not isinstance(n, Make | Chain) or _placed(n)]
    spaced = last.target.kind.endswith("sp") and last.target.at is At.EACH
    return last.target if spaced and not placed else None


def _placed(node: Node) -> bool:
    return isinstance(node, Make) and node.target is not None


def _goes_round(nodes: list[Node]) -> bool:
    """Whether what was read last is worked to the end of the round."""
    last = nodes[-1] if nodes else None
    return isinstance(last, Make) and last.target is not None and last.target.at is At.EACH


def _ends_round(nodes: list[Node]) -> bool:
    """Whether the round is closed by what was read last."""
    for node in reversed(nodes):
        if isinstance(node, Act) and node.deed in (Deed.JOIN, Deed.TURN, Deed.FASTEN):
            return True
        if isinstance(node, Repeat) and node.times is None:
            return True
        if not isinstance(node, Note | Chain | Loops):
            return False
    return False


def _closed_more(repeat: Repeat, closed: bool) -> More:
    """Between two stars nothing is worked before the repeat is read: its times are all."""
    if repeat.times is not None and repeat.more is More.UNSAID and closed:
        return More.UNSAID
    return repeat.more


def read_round(
    text: str, lexicon: Lexicon | None = None, *, terms: str = "US", sizes: int = 1
) -> RoundText:
    """Read the words of one round, without its label.

    Args:
        text: the instruction, on one line or several.
        lexicon: the words for stitches; the dictionary of ``terms`` when None.
        terms: "US" or "UK", used when no lexicon is given.
        sizes: how many figures a figure for all sizes has.

    Words that are not understood become `Unread` nodes; nothing is raised.
    """
    lexicon = lexicon or Lexicon(terms)
    until = _UNTIL.search(plain(text))
    body = text
    if until is not None:
        body = text[: until.start()] + " " * (until.end() - until.start()) + text[until.end() :]
    even = _even_rounds(body)
    again = _Again(body, lexicon, sizes).again()
    reader = Reader(body, lexicon, sizes)
    nodes = () if again is not None else reader.round()
    if reader.split and reader.stated is not None:
        # Two counts on one line: which rounds each belongs to is not known.
        nodes = (*nodes, Unread("two printed counts", reader.stated.start, reader.stated.end))
    if even:
        nodes = (Evenly((0,), 0, 0, len(text), reader.named_stitch()),)
    if again is not None:
        reader.stated = _stated_of(body, lexicon, sizes)
        again = replace(again, until=until.group().strip() if until else "")
    return RoundText(
        text,
        nodes,
        reader.stated,
        again,
        text[until.start() : until.end()].strip() if until else "",
        even,
    )


def _stated_of(text: str, lexicon: Lexicon, sizes: int) -> Stated | None:
    """The bracketed count in a line that otherwise only repeats rounds."""
    reader = Reader(text, lexicon, sizes)
    while not reader.done():
        if reader.here.type is Type.OPEN and reader.at > 1:
            found = reader.bracketed_count()
            if found is not None:
                reader.stated = found
                continue
        reader.at += 1
    return reader.stated


def _even_rounds(text: str) -> int:
    match = _EVEN.match(plain(text))
    if match is None:
        return 0
    word = match.group(1)
    if word is None:
        return 1
    from tracker.notation.kit import NUMBER_WORDS

    return int(word) if word.isdigit() else NUMBER_WORDS[word]


class _Again(Reader):
    """Reads lines that ask for earlier rounds again."""

    def again(self) -> Again | None:
        """``again = ("rep" | "as" | "work") ["rounds"] number [("-" | "and") number] [times]``"""
        self.accept_all(",", ".", ":", "-", "then")
        start = self.here.start
        bracket = self.here.type is Type.OPEN and self.accept_any("(", "[")
        verb = self.accept_any(
            "rep", "repeat", "as", "same", "work", "continue", "cont", "repeating", "reps"
        )
        if not verb:
            return None
        self.accept_all("as", "like", "for", "the", "in", "pattern", "of", "working")
        if self.here.type is Type.WORD and self.ahead().text in _ROUND_WORDS:
            self.at += 1  # the name of the part: "Rep Band Row 2"
        first, last = self._rounds()
        if not first:
            return None
        if bracket:
            self.accept_any(")", "]")
        times = self._times_of_rounds()
        return Again(first, last, times, "", start, self.last_end)

    def _rounds(self) -> tuple[int, int]:
        named = bool(self.accept_any("row", "rows", "rnd", "rnds", "round", "rounds", "r", "rs"))
        first = self.accept_ordinal() or (self.accept_number() if named else 0) or 0
        last = first
        if first and self.accept_any("-", "to", "and", "&", "through", "thru", ","):
            self.accept_any("row", "rnd", "round", "r")
            last = self.accept_ordinal() or self.accept_number() or first
        if not named and not self.accept_any("row", "rows", "rnd", "rnds", "round", "rounds"):
            return 0, 0
        return first, last

    def _times_of_rounds(self) -> tuple[int, ...] | None:
        self.accept_all(",", "for", "another", "a", "total", "of")
        if self.here.text in TIMES_WORDS:
            self.at += 1
            return (TIMES_WORDS[self.tokens[self.at - 1].text],)
        mark = self.at
        self.accept_any("x")
        figure = self.accept_figure()
        if figure is not None and (
            self.accept_any("times", "more", "x") or self.tokens[mark].text == "x"
        ):
            return figure
        self.at = mark
        return None
