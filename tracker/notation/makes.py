"""Reading what is made: stitches, chains, skips."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.counts import Counts
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.kit import TIMES_WORDS
from tracker.notation.stitches import Stitch
from tracker.notation.targets import _CHAIN_WORDS, _SPACE_WORDS, _STITCH_WORDS
from tracker.notation.tokens import Type
from tracker.notation.tree import At, Chain, Figure, Group, Make, Node, Repeat, Skip, Target

_VERBS = ("work", "working", "make", "do", "complete", "crochet", "then", "just", "place")
_SKIPS = ("sk", "skip", "miss", "skipping", "missing")
#: Stitches that gather several part-made ones: "5-dc popcorn" is one popcorn.
_GATHERED = frozenset(("popcorn", "cl", "bobble", "puff"))
_MOST_IN_ONE = 40


class Makes(Counts):
    """Rules for stitches, chains and skips."""

    def chain(self) -> Chain | None:
        """``chain = "ch" ["-"] figure [counts] | figure ["-"] "ch" [counts]``"""
        mark, start = self.at, self.here.start
        self.accept_all(*_VERBS, "a", "foundation", "for", "this", "sample", "start", "with")
        figure = self._chain_count()
        if figure is None or self._is_space():
            self.at = mark
            return None
        self.accept_all(
            "stitches", "sts", "for", "all", "sizes"
        ) if self.here.text != "in" else None
        found = Chain(figure, start, self.last_end)
        return self._counts(found)

    def _chain_count(self) -> Figure | None:
        mark = self.at
        if self.accept_any(*_CHAIN_WORDS):
            self.accept_any("-", "of", ":")
            figure = self.accept_figure()
            if figure is None:
                self.at = mark
            if figure is not None and self.here.text in _CHAIN_WORDS:
                self.at += 1
            return figure
        figure = self.accept_figure()
        if figure is None:
            if self.here.text in ("a",) and self.ahead().text in _CHAIN_WORDS:
                self.at += 1
                figure = (1,)
            else:
                return None
        self.accept("-")
        return figure if self.accept_any(*_CHAIN_WORDS) else None

    def _is_space(self) -> bool:
        """Whether the chain just read is the name of a space: "ch-3 sp"."""
        at = self.at + (self.here.text == "-")
        return self.tokens[at].text in _SPACE_WORDS

    def _counts(self, chain: Chain) -> Chain:
        """``counts = ["("] "counts as" [stitch ["and" chain]] ["throughout"] [")"]``"""
        mark = self.at
        bracket = self.here.type is Type.OPEN and self.closing()
        if bracket:
            self.at += 1
        self.accept_any(",")
        self.accept_all("this", "always", "will", "the", "ch", "chain", "here", "-")
        if self.here.type is Type.NUMBER and self.ahead().text in ("counts", "count"):
            self.at += 1
        counts = self._counts_or_not()
        if counts is None:
            self.at = mark
            return self._spelt_out(chain)
        found = self._stands_for(chain, counts)
        if bracket:
            lasting = {"throughout", "always", "now", "every", "following", "all"}
            words = {t.text for t in self.tokens[mark:bracket]}
            found = replace(found, lasting=found.lasting or bool(words & lasting))
            self.at = bracket + 1
        return replace(found, end=self.last_end)

    def _counts_or_not(self) -> bool | None:
        if self.accept_any("counts", "count", "counting", "regard", "starts", "stands", "equals"):
            return not self.accept_any("not")
        if self.accept_any("does", "do", "don't", "doesn't", "not", "is", "never"):
            self.accept_any("not")
            return False if self.accept_any("count", "counted", "counts", "a") else None
        return None

    def _stands_for(self, chain: Chain, counts: bool) -> Chain:
        self.accept_all("as", "for", "a", "the", "one", "first", "1st", "your", "beg", "of")
        self.accept_number()
        key = self.accept_phrase(self.lexicon.phrases)
        self.accept_any(*_STITCH_WORDS)
        plus = 0
        if self.accept_any("and", "plus", "+", ","):
            self.accept_any("a", "one")
            figure = self._chain_count()
            if figure is None and self.accept_any(*_CHAIN_WORDS):
                figure = (1,)
            plus = figure[0] if figure and not self._is_space() else (figure[0] if figure else 0)
        lasting = bool(self.accept_any("throughout", "always", "here", "now"))
        return replace(
            chain, counts=counts, stands_for=key or "", plus=plus if counts else 0, lasting=lasting
        )

    def _spelt_out(self, chain: Chain) -> Chain:
        """``"(" figure stitch "and" chain ")"`` right behind a chain says what it is."""
        if self.here.type is not Type.OPEN or self.closing() < 0:
            return chain
        mark, close = self.at, self.closing()
        self.at += 1
        found = self._stands_for(chain, True)
        if self.at == close and found.stands_for and found.plus:
            self.at += 1
            return replace(found, end=self.last_end)
        self.at = mark
        return chain

    def skip(self) -> Skip | None:
        """``skip = "sk" ["next" | "first" | "last"] [figure] [kind]``"""
        start = self.here.start
        if not self.accept_any(*_SKIPS):
            return None
        self.accept_all("over", "the")
        at = self._which() or At.NEXT
        self.accept_any("of", "the")
        count = self.accept_figure() or (1,)
        self._which()
        self.accept_any("remaining", "rem")
        kind = self.kind() or "st"
        return Skip(count, kind, start, self.last_end, At.NEXT if at is At.EACH else at)

    def make(self) -> list[Node] | None:
        """``make = [verb] [figure] stitch [figure] [target] {"and" target} [times]``"""
        mark, start = self.at, self.here.start
        self.loop = ""
        self.accept_all(*_VERBS)
        self.accept_any("a", "an", "another", "the")
        self.accept_any("last", "first")
        self.accept_loop()
        count = None if self._named_by_number() else self.accept_figure()
        if count is not None:
            self.accept_any("-", "x", "more")
        self.accept_loop()
        stitch = self._stitch(count) or self._in_one_place(count)
        if stitch is None:
            self.at = mark
            return None
        if stitch.us in ("inc", "dec") and self.tokens[self.at - 1].type is Type.NUMBER:
            count = None
        return self._made(stitch, count, start)

    def _named_by_number(self) -> bool:
        """Whether the number here begins the name of a stitch: "2V-st"."""
        mark = self.at
        found = self.here.type is Type.NUMBER and self._stitch_here()
        self.at = mark
        return found

    def _in_one_place(self, count: Figure | None) -> Stitch | None:
        """``figure ("in" | "to") "1"``: an increase, a decrease, named by what it does."""
        if count is None or self.ahead().text != "1" or self.here.text not in ("in", "to"):
            return None
        widens = self.here.text == "in"
        self.at += 2
        n = min(count[0], _MOST_IN_ONE)
        if widens:
            return replace(STITCHES["inc"], makes=n)
        return replace(STITCHES["dec"], takes=n)

    def _made(self, stitch: Stitch, count: Figure | None, start: int) -> list[Node]:
        gathered = self._gathered(stitch, count)
        if gathered is not None:
            stitch, count = gathered, None
        numbered = count is not None
        if count is None:
            count = self._count_behind()
            numbered = count is not None
        self.accept_all("more")
        self.accept_loop()
        together = self._together(stitch)
        target: Target | None
        if together is not None:
            stitch, target, count = together, None, (1,)
        else:
            target = self.target()
            self._loop_behind()
            if self.led == "over" and target is not None and target.count is not None:
                # "over next 3 sts": the one stitch is spread over all of them
                stitch, target = replace(stitch, takes=target.count[0]), None
            target = self.hook_counts(target)
        made: list[Node] = [
            Make(stitch, count or (1,), target, start, self.last_end, self.loop, numbered)
        ]
        also = self._and_also(stitch, count or (1,))
        if stitch.takes > 1 and also:
            # "sc2tog over last sp and last sc": one stitch, and the places it closes
            made = [Make(stitch, count or (1,), None, start, self.last_end, self.loop, numbered)]
        else:
            made += also
        if target is None and together is None and isinstance(made[0], Make):
            pair = self._together_in(made[0])
            if pair is not None:
                return [pair]
        times = self._times_behind()
        if times is None:
            return made
        if target is None and len(made) == 1 and not numbered:
            return [Make(stitch, times, None, start, self.last_end, self.loop, True)]
        return [Repeat(tuple(made), start, self.last_end, times)]

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

    def hook_counts(self, target: Target | None) -> Target | None:
        """``target "(" words "count" ["not"] … ")"``: whether chains passed over count."""
        if target is None or target.at is not At.HOOK:
            return target
        counts = self._chains_count()
        return target if counts is None else replace(target, counts=counts)

    def _chains_count(self) -> bool | None:
        close = self.closing() if self.here.type is Type.OPEN else -1
        words = {t.text for t in self.tokens[self.at : max(close, self.at)]}
        if not words & {"counts", "count", "counted", "regard", "stands", "counting"}:
            return None
        self.at = close + 1
        return not words & {"not", "don't", "doesn't", "never"}

    def _count_behind(self) -> Figure | None:
        """``"sc 3"``, ``"sc x 3"``: a number behind its stitch."""
        mark = self.at
        crossed = bool(self.accept_any("x"))
        figure = self.accept_figure()
        if figure is None:
            self.at = mark
            return None
        if self.accept("more", "times"):
            return figure
        if not crossed and (self.here.text in _STITCH_WORDS or self._stitch_here()):
            self.at = mark
            return None
        if self.here.text in ("times", "x") and not crossed:
            self.at = mark
            return None
        return figure

    def _stitch_here(self) -> bool:
        mark = self.at
        found = self.accept_phrase(self.lexicon.phrases) is not None
        self.at = mark
        return found

    def _stitch(self, count: Figure | None) -> Stitch | None:
        """A stitch phrase; "2 sc inc" and "sc dec" are read as one."""
        key = self.accept_phrase(self.lexicon.phrases)
        if key is None or key == "ch":
            return None
        if self.here.text in ("stitch", "stitches"):
            self.at += 1
        if self.here.type is Type.OPEN and self.ahead().text == "see" and self.closing() > 0:
            self.at = self.closing() + 1
        if self.here.text == "(" and self.ahead().text == "s" and self.ahead(2).text == ")":
            self.at += 3
        return self.lexicon.stitch(key)

    def _gathered(self, stitch: Stitch, count: Figure | None) -> Stitch | None:
        """``figure stitch "popcorn"`` is one popcorn; ``figure stitch "inc"`` one increase."""
        mark = self.at
        self.accept("-")
        if base_of(stitch.us) != stitch.us and stitch.us not in ("sl st",):
            self.at = mark
            return None
        key = self.accept_phrase(self.lexicon.phrases)
        if key in _GATHERED or (key == "shell" and count is not None):
            self.accept_any(*_STITCH_WORDS)
            found = self.lexicon.stitch(key)
            return replace(found, makes=count[0]) if key == "shell" and count else found
        if key == "inc":
            return _in_one(stitch, count[0] if count else 2)
        if key == "dec":
            return _together(stitch, 2)
        self.at = mark
        return None

    def _together(self, stitch: Stitch) -> Stitch | None:
        """``stitch ["in"] ["next"] figure ["sts"] "tog"`` closes them as one."""
        mark = self.at
        if self.accept_any("tog", "together"):
            # "2 sc together": the figure stood before the stitch
            before = self.tokens[mark - 2]
            return _together(stitch, before.value) if before.type is Type.NUMBER else None
        self.accept_any("in", "over")
        self.accept_any("the")
        self.accept_any("next")
        figure = self.accept_figure()
        if figure is not None:
            self.kind()
            if self.accept_any("tog", "together"):
                return stitch if stitch.takes == figure[0] else _together(stitch, figure[0])
        self.at = mark
        return None

    def _and_also(self, stitch: Stitch, count: Figure) -> list[Node]:
        """``"and" target``: the same again in further places."""
        found: list[Node] = []
        while True:
            mark, start = self.at, self.here.start
            self.accept_any(",")
            if not self.accept_any("and", "&"):
                self.at = mark
                return found
            self.accept_any("in", "into")
            target = self._place(led=False)
            if target is None or self._stitch_here_alone(mark):
                self.at = mark
                return found
            found.append(Make(stitch, count, target, start, self.last_end, self.loop))

    def _stitch_here_alone(self, mark: int) -> bool:
        return self.tokens[mark].text == "," and self.here.type is Type.NUMBER

    def _times_behind(self) -> Figure | None:
        """``times = "x" figure | figure "times" | "twice" | "*" figure``"""
        mark = self.at
        if self.accept_any("x") or (
            self.here.text == "*" and self.ahead().type is Type.NUMBER and self.accept("*")
        ):
            figure = self.accept_figure()
            if figure is not None:
                self.accept_any("times")
                return figure
            self.at = mark
            return None
        if self.here.text in TIMES_WORDS and self.ahead().text != "more":
            self.at += 1
            return (TIMES_WORDS[self.tokens[self.at - 1].text],)
        figure = self.accept_figure()
        if figure is not None and self.accept_any("times", "x", "time"):
            if self.here.text not in ("more",):
                self.accept_any("total")
                return figure
        self.at = mark
        return None


def _in_one(stitch: Stitch, n: int) -> Stitch:
    """``n`` of a stitch worked into one place, as one thing: an increase."""
    n = min(n, _MOST_IN_ONE)
    return replace(stitch, abbr=f"{n} {stitch.abbr} in one", takes=1, makes=n)


def _together(stitch: Stitch, n: int) -> Stitch:
    """``n`` of a stitch closed as one: a decrease."""
    known = STITCHES.get(f"{stitch.us}{n}tog")
    return known or replace(
        stitch, abbr=f"{stitch.abbr}{n}tog", takes=min(n, _MOST_IN_ONE), makes=1
    )
