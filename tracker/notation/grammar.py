"""The grammar of a whole round."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.behind import Behind
from tracker.notation.brackets import ends_round
from tracker.notation.dotted import undotted
from tracker.notation.inorder import in_order
from tracker.notation.kit import match_brackets
from tracker.notation.lexicon import (
    Lexicon,
    Matched,
    impersonal,
    repeating,
    roundless,
    without_asides,
)
from tracker.notation.merging import goes_round, merged
from tracker.notation.round_text import Stated
from tracker.notation.sayings import plainly
from tracker.notation.spelling import respelt
from tracker.notation.tokens import Type
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Evenly,
    Figure,
    Group,
    Make,
    Node,
    Note,
    Repeat,
    Skip,
    Target,
    Unread,
)
from tracker.notation.wordlists import AGAIN, SEPARATORS
from tracker.notation.wrapped import unwrapped

#: What makes or takes stitches, so that a count may follow it.
_COUNTED = Make | Group | Repeat | Evenly | Chain
#: "sc around, 2 sc" may be two stitches more; a larger number is the count of the round.
_MOST_BEHIND = 3
#: Verbs before stars and brackets, which say what is made.
_AT_WORK = ("work", "make", "working", "making", "placing", "putting", "crochet", "with")


class Reader(Behind):
    """Reads one round. The grammar of a whole round::

    round    = {element | separator}
    element  = star | bracket | again | count | deed | chain | skip | evenly
             | led | make | note
    """

    def __init__(self, text: str, lexicon: Lexicon, sizes: int = 1) -> None:
        super().__init__(text, lexicon, sizes)
        self.tokens, self._closers = lexicon.tokens_of(text, self._prepared)

    def _prepared(self) -> Matched:
        """The tokens as they are read: slips mended, asides and wrappings left out."""
        phrases = self.lexicon.phrases
        tokens = undotted(self.text, plainly(self.text, self.tokens), phrases)
        said = roundless(repeating(impersonal(respelt(tokens, phrases))))
        told = without_asides(in_order(said, phrases), self.lexicon)
        tokens = unwrapped(told, match_brackets(told))
        return tokens, match_brackets(tokens)

    def round(self) -> tuple[Node, ...]:
        """All elements to the end of the text."""
        if self.here.text == "next" and self.ahead().text in (",", *_AT_WORK):
            self.at += 1  # "Next, work a round of hdc"
        self._count_in_front()
        often, start = self._often_in_front(), self.here.start
        nodes = self.sequence(len(self.tokens) - 1)
        self.stated = self.stated or self.things
        if often:
            nodes = _so_often(nodes, often, start)
        return tuple(self._as_printed(merged(nodes)))

    def _often_in_front(self) -> Figure | None:
        """``["repeat"] figure "times" [":"]`` before all of it; or a bare "repeat"."""
        mark = self.at
        again = self.accept_any("repeat", "rep")
        if again and self.here.type in (Type.OPEN, Type.STAR):
            return None  # "repeat (3 sc, dec) 4 times"
        figure = self.accept_figure()
        if figure is not None and self.accept("times"):
            colon = self.accept_any(":", ",")
            inner = self.here.type is Type.OPEN or self.here.type is Type.STAR
            if not inner and (colon or self._number_of_stitches() or self._stitch_here()):
                return figure
        self.at = mark
        return None

    def _count_in_front(self) -> None:
        """``["="] figure "sts" (":" | "-" | ".")``: the count of what is told behind it"""
        mark = self.at
        if self._bare_count_in_front():
            return
        self.accept_any("=", "-")
        start, figure = self.here.start, self.accept_figure()
        end = self.accept_any("sts", "stitches", "st") and self.last_end
        if figure and end and self.accept_any(":", "-", ".", "=", ";") and not self.done():
            self._keep(Stated(figure, (("", figure),), start, end))
        else:
            self.at = mark

    def _bare_count_in_front(self) -> bool:
        """``figure " - "`` before a bracket, a star or a stitch: "18 - (2 sc, dec) x 6"."""
        figure, dash, then = self.here, self.ahead(), self.ahead(2)
        apart = figure.end < dash.start and dash.end < then.start
        if figure.type is not Type.NUMBER or dash.text != "-" or not apart:
            return False
        self.at += 2
        if self.here.type in (Type.OPEN, Type.STAR) or self._stitch_here():
            count = (figure.value,)
            self._keep(Stated(count, (("", count),), figure.start, figure.end))
            return True
        self.at -= 2
        return False

    def _as_printed(self, nodes: list[Node]) -> list[Node]:
        """``stitch "evenly around"`` without a number: as many as the printed count tells"""
        paced = next((n for n in nodes if isinstance(n, Repeat) and n.paced), None)
        if paced is not None and (self.stated is None or self.stated.total is None):
            why = "does not say which stitches are taken together"
            return [Unread(self.text[paced.start : paced.end], paced.start, paced.end, why)]
        if self.to_marker and (self.stated is None or self.stated.total is None):
            why = "goes up to a marker, and no count says where that is"
            return [Unread(self.text[: self.last_end], 0, self.last_end, why)]
        ends = next((n for n in nodes if isinstance(n, Evenly) and n.count == ()), None)
        if isinstance(ends, Evenly):
            return self._widened_as_printed(nodes, ends)
        open_ = next((n for n in nodes if isinstance(n, Make) and _unnumbered(n)), None)
        if not isinstance(open_, Make):
            return nodes
        if self.stated is None or self.stated.total is None:
            why = "does not say how many stitches it makes"
            return [Unread(self.text[open_.start : open_.end], open_.start, open_.end, why)]
        made = replace(open_, count=self.stated.total, target=Target(At.EDGE))
        return [
            *(n for n in nodes if isinstance(n, Chain | Act | Note) and n.start < made.start),
            made,
            *(n for n in nodes if isinstance(n, Act | Note) and n.start > made.start),
        ]

    def _widened_as_printed(self, nodes: list[Node], ends: Evenly) -> list[Node]:
        """``stitch "around" "," 2 "in each end"``: the printed count tells how many that are"""
        if self.stated is not None and self.stated.total is not None:
            told = replace(ends, count=self.stated.total)
            return [told if node is ends else node for node in nodes]
        why = "does not say how many stitches the ends have"
        return [Unread(self.text[ends.start : ends.end], ends.start, ends.end, why)]

    def sequence(self, stop: int) -> list[Node]:
        """``sequence = {element | separator}`` up to token ``stop``."""
        nodes: list[Node] = []
        while self.at < stop:
            if self.accept_any(*SEPARATORS):
                self.at -= 1
                stated = self._count_here(nodes)
                if stated is not None:
                    self._keep(stated)
                else:
                    self.at += 1
                continue
            before = self.at
            if self._again_here():
                nodes = self._repeat_before(nodes)
            else:
                nodes += self.element(nodes)
            if self.at == before:
                self.at += 1
                start, end = self.tokens[before].start, self.tokens[before].end
                nodes.append(Unread(self.text[start:end], start, end))
        return nodes

    def _count_here(self, nodes: list[Node]) -> Stated | None:
        """The printed count, where it stands behind what was worked."""
        if self.deep or not any(isinstance(n, _COUNTED) for n in nodes):
            return None
        led = self.at > 0 and self.tokens[self.at - 1].text in ("with", "ending")
        before = self.tokens[self.at - 1].text if self.at else ""
        sentence = before in (".", ";", ":") or (before == "," and self.here.value > _MOST_BEHIND)
        over = ends_round(nodes) or (sentence and (goes_round(nodes) or _goes_last(nodes)))
        return None if led else self.end_count() or self.closing_count(over)

    def element(self, before: list[Node]) -> list[Node]:
        """One element; always moves on."""
        if self.here.text in _AT_WORK and self.ahead().type in (Type.STAR, Type.OPEN):
            self.at += 1
        token = self.here
        stated = None if token.type is Type.OPEN else self._count_here(before)
        if stated is not None:
            self._keep(stated)
            return []
        if token.type is Type.STAR and self.ahead().text in AGAIN:
            self.at += 1
            return []
        if token.type is Type.STAR:
            return self._starred()
        if token.type is Type.OPEN:
            return self._gathered_up(before, self._bracket(before))
        if token.type is Type.CLOSE:
            self.at += 1
            return []
        return self._gathered_up(before, self._plain(before))

    def _plain(self, before: list[Node]) -> list[Node]:
        """An element that begins with a word or a number."""
        if self._accept_tail_words():
            if before and isinstance(before[-1], Repeat):
                before[-1] = replace(before[-1], partial=True)
            return []
        told = self._where_last(before) or self._chains_between(before)
        told = told or self._turned_back(before) or self._in_the_others(before)
        if told or (self._tail_follows() and self.accept("with")):
            return []
        often = self._times_before() or self._at_a_pace(before) or self._skips(before)
        often = often or self.at_the_ends(before)
        often = often or self.alternating() or self._other_side_alike(before)
        often = often or self.of_corners() or self.held_back(before)
        if often is not None:
            return often
        node = self.deed() or self.chain() or self._left() or self.evenly()
        if node is not None:
            return [*self._last_made(before), node]
        led = (
            self._for_each_thing() or self._things_led() or self._into_which(before) or self._led()
        )
        led = led or self._all_into(before)
        if led is not None:
            return led
        made = self.make() or self._shown()
        if made is not None:
            self.begun = True
            return self._all_round(before, made) or self._listed(before, self._over(made))
        if self.here.text in ("around", "across") and self._is_to_the_end():
            self.at += 1
            return []
        return [self._words()]

    def _at_a_pace(self, before: list[Node]) -> list[Node] | None:
        """`paced`, with which the round has begun."""
        found = self.paced(before)
        self.begun = self.begun or found is not None
        return found

    def _times_before(self) -> list[Node] | None:
        """``figure "x" element``: how often it is done stands before it"""
        mark, start = self.at, self.here.start
        figure = self.accept_figure()
        crossed = self.accept_any(*self.crosses) or (
            self.ahead().type is Type.OPEN and self.accept("*")
        )
        if figure is not None and not crossed and self.ahead().type in (Type.OPEN, Type.STAR):
            crossed = self.accept_any("times", "time")
        glued = self.here.type is Type.OPEN and self.here.start == self.last_end
        if figure is not None and not crossed and glued:  # "4(3 sc, dec)"
            crossed = self.bracketed_count_ahead() is None
        if figure is None or not crossed or self._stitch_here_only():
            self.at = mark
            return None
        inner = self.element([])
        body = tuple(inner)
        if len(inner) == 1 and isinstance(inner[0], Repeat) and inner[0].implied:
            body = inner[0].body
        return [Repeat(body, start, self.last_end, figure)] if body else None

    def _stitch_here_only(self) -> bool:
        """Whether neither a bracket, a star nor a stitch stands here."""
        return self.here.type not in (Type.OPEN, Type.STAR) and not self._stitch_here()


def _so_often(nodes: list[Node], often: Figure, start: int) -> list[Node]:
    """The round with its stitches repeated as often as is said in front of them."""
    worked = [i for i, n in enumerate(nodes) if isinstance(n, Make | Group | Repeat | Skip | Chain)]
    if not worked:
        return nodes
    end = worked[-1] + 1
    body = tuple(nodes[worked[0] : end])
    repeat = Repeat(body, start, nodes[end - 1].end, often)
    return [*nodes[: worked[0]], repeat, *nodes[end:]]


def _goes_last(nodes: list[Node]) -> bool:
    """Whether what was read last goes into the last stitch."""
    last = nodes[-1]
    return isinstance(last, Make | Group) and last.target is not None and last.target.at is At.LAST


def _unnumbered(node: Make) -> bool:
    """Whether stitches go evenly along an edge, and nothing says how many."""
    target = node.target
    return target is not None and target.at is At.EDGE and target.count == (0,)
