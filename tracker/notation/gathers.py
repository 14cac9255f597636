"""Reading lists of things whose place stands behind the last: "3 dc, ch 2, 3 dc in next sp"."""

from __future__ import annotations

import re
from dataclasses import replace

from tracker.notation.brackets import Brackets
from tracker.notation.ends import spacey
from tracker.notation.lexicon import words_of
from tracker.notation.stitches import Stitch
from tracker.notation.tokens import Type, plain
from tracker.notation.tree import At, Chain, Group, Make, Node, Note, Repeat, Skip, Target

#: "beg popcorn made", and what the stitch is called there.
_MADE = re.compile(
    r"(?:(?:1st|first|beg|beginning|starting) )?"
    r"(?P<stitch>popcorn|pc|cluster|cl|bobble|puff)(?: (?:st|stitch))? (?:made|completed|formed)$"
)
#: What a group of stitches in one place is called behind it: "(shell made)".
_CALLED = re.compile(
    r"(?:(?:1st|first|one|1) )?(?P<name>(?:double |small |large )?"
    r"(?:shell|fan|scallop|v[ -]?st(?:itch)?))(?: st| stitch)? (?:is )?(?:made|completed|formed)"
)
_KEYS = {
    "popcorn": "popcorn",
    "pc": "popcorn",
    "cluster": "cl",
    "cl": "cl",
    "bobble": "bobble",
    "puff": "puff",
}
#: Words between a place and what is made there.
MAKING = ("work", "make", "place", "do", "crochet", "knit")
#: The shortest list with a place behind it: "dc, ch 2, dc in next st".
_SHORTEST = 2


class Gathers(Brackets):
    """Rules for several things in one place that no bracket holds together."""

    def _led(self) -> list[Node] | None:
        """``led = ["work"] target [("make" | "work") [":"]] (bracket | list | make)``

        The place comes first.
        """
        mark, start = self.at, self.here.start
        asked = self.accept_any("work", "make", "crochet", "working", "making")
        at = self.here.text == "at" and self.ahead().text in ("each", "every", "the", "all")
        led = ("in", "into", "over", *(() if asked else ("to", "from")))
        if self.here.text not in led and not (at and "corner" in self._clause_words()):
            self.at = mark
            return None
        target = self._from_hook() or self.target()
        if target is None or (asked and target.at is At.RING):
            self.at = mark
            return None
        if self.here.text == "," and self.ahead().text in ("work", "make"):
            self.at += 1
        colon = () if target.at is At.HOOK else (":",)
        asked = self.accept_any(*MAKING, *colon) or asked
        self.accept_all(*MAKING, *colon)
        if self.here.type is Type.OPEN and self.closing() > 0:
            return self._bracket_led(target, start)
        if target.at is At.RING:
            return [Note(start, self.last_end)]
        spaced = target.kind == "corner" or (spacey(target.kind) and target.at is At.EACH)
        listed = asked or (spaced and target.count is None)
        made = self._list_led(target, start, bool(asked)) if listed else None
        made = made or self._make_led(target, start)
        if made is None:
            self.at = mark
        return made

    def _into_which(self, before: list[Node]) -> list[Node] | None:
        """``("in" | "into") "which" ["work"] (bracket | make)``: in the place named last"""
        mark, start = self.at, self.here.start
        last = before[-1] if before else None
        named = last.target if isinstance(last, Make | Group) else None
        led = named is not None and self.accept_any("in", "into") and self.accept("which")
        if named is not None and led:
            until = named.until
            target = Target(At.NEXT, until) if until else Target(At.SAME, named.kind)
            self.accept_all("you", "work", "make", "place", ":")
            if self.here.type is Type.OPEN and self.closing() > 0:
                return self._bracket_led(target, start)
            made = self._make_led(target, start)
            if made is not None:
                return made
        self.at = mark
        return None

    def _bracket_led(self, target: Target, start: int) -> list[Node]:
        """``target "(" sequence ")" [times]``"""
        body = self._inside(self.closing())
        self._all_in_same()
        times = self._times_behind()
        if times is not None:
            body = [Repeat(tuple(body), start, self.last_end, times)]
        self.begun = True
        return [Group(tuple(body), target, start, self.last_end)]

    def _all_in_same(self) -> None:
        """``[","] ["all"] "in" "the" "same" stitch`` behind a bracket whose place is told"""
        mark = self.at
        self.accept_any(",")
        self.accept_any("all")
        target = self.target() if self.here.text in ("in", "into") else None
        if target is None or target.at is not At.SAME:
            self.at = mark

    def _list_led(self, target: Target, start: int, asked: bool) -> list[Node] | None:
        """``target "work" make {"," (make | chain)}``: all of the list goes in that place"""
        mark, after = self.at, self.at
        found: list[Node] = []
        kept = 0
        while True:
            item = self._list_item()
            if item is None:
                break
            found.append(item)
            if isinstance(item, Make):
                kept, after = len(found), self.at
            self.accept_all(",", "and", "&")
            if self.here.text == "then":
                break  # "in the first st make an inc, then sc 10"
        few = sum(isinstance(n, Make) for n in found) < _SHORTEST
        if few or not (asked or _there_and_back(found[:kept])):
            self.at = mark
            return None
        self.at, self.begun = after, True
        return [Group(tuple(found[:kept]), target, start, self.last_end)]

    def _list_item(self) -> Make | Chain | None:
        """A stitch without a place of its own, or chains."""
        chain = self.chain()
        if chain is not None:
            return chain
        mark = self.at
        made = self.make()
        only = made[0] if made is not None and len(made) == 1 else None
        if isinstance(only, Make) and only.target is None:
            return only
        self.at = mark
        return None

    def _make_led(self, target: Target, start: int) -> list[Node] | None:
        """``target make``: a single thing made there, or chains passed over."""
        made = self.make()
        first = made[0] if made is not None and len(made) == 1 else None
        each = self.tokens[self.at - 1].text == "each"  # "in the remaining sts work 1 sc each"
        each = each and isinstance(first, Make) and first.target == Target(At.EACH)
        if isinstance(first, Make) and (first.target is None or each):
            self.begun = True
            return [replace(first, target=target, start=start)]
        if target.at is At.HOOK and made is None:
            return [Skip((target.nth - 1,), "ch", start, self.last_end, At.FIRST)]
        return None

    def _all_into(self, before: list[Node]) -> list[Node] | None:
        """``make {"," make} [","] ["all"] target``: all before it goes into that place."""
        mark = self.at
        loose: list[Node] = []
        while before and isinstance(before[-1], Make | Chain):
            last = before[-1]
            if isinstance(last, Make) and last.target is not None:
                break
            loose.insert(0, before.pop())
        self.accept_any("all")
        if self.here.text in ("in", "into", "on") and any(isinstance(n, Make) for n in loose):
            target = self.target()
            if target is not None and self._clause_is_over():
                return [Group(tuple(loose), target, loose[0].start, self.last_end)]
        before.extend(loose)
        self.at = mark
        return None

    def _gathered_up(self, before: list[Node], nodes: list[Node]) -> list[Node]:
        """``make … "(" stitch "made" ")"``: several in one place, then gathered to that stitch

        "Ch 3, 4 dc in same st, drop loop, … (popcorn made)": the chain is one of them.
        """
        self._called(before, nodes)
        self.called_corner(before, nodes)
        gathered = self._named_made(nodes)
        at = len(before) - 1
        while at >= 0 and isinstance(before[at], Note):
            at -= 1
        made = before[at] if at >= 0 else None
        if gathered is None or not isinstance(made, Make) or made.target is None:
            return nodes
        if made.count[0] < _SHORTEST or made.target.count is not None:
            return nodes
        chain = before[at - 1] if at else None
        if isinstance(chain, Chain) and made.target.at in (At.SAME, At.RING):
            before[at - 1] = replace(chain, counts=False, part=True)
        before[at] = replace(made, stitch=gathered, count=(1,), numbered=False)
        return [Note(node.start, node.end) for node in nodes]

    def called_corner(self, before: list[Node], nodes: list[Node]) -> None:
        """Keep what is called a corner; told in the storey of corners."""

    def _called(self, before: list[Node], nodes: list[Node]) -> None:
        """``group … "(" name "made" ")"``: from here on that name means such a group

        Only where the text has not said before what it means.
        """
        node, made = nodes[0] if len(nodes) == 1 else None, _last_work(before)
        if not isinstance(node, Note | Make) or made is None:
            return
        found = _CALLED.fullmatch(plain(self.text[node.start : node.end]).strip("()[] -"))
        stitch = None if found is None else _as_stitch(found["name"], made)
        if found is None or stitch is None:
            return
        key = self.lexicon.phrases.get(words_of(found["name"]), "")
        if (key or found["name"]) not in self.lexicon.special():
            self.lexicon.add(stitch._replace(us=key))

    def _named_made(self, nodes: list[Node]) -> Stitch | None:
        """The gathered stitch that is all that ``nodes`` name, as made."""
        node = nodes[0] if len(nodes) == 1 else None
        if not isinstance(node, Note | Make):
            return None
        found = _MADE.search(plain(self.text[node.start : node.end]).strip("()[] -"))
        if found is None or (isinstance(node, Note) and found.start()):
            return None
        return self.lexicon.stitch(_KEYS[found["stitch"]])

    def _listed(self, before: list[Node], made: list[Node]) -> list[Node]:
        """``make {"," (make | chain)} "," make target``: all of it in that place, perhaps

        With a chain among them, things listed before a single place share it: a shell
        written without its brackets. ``Reading.apart`` tells whether they do after all not.
        """
        last = made[0]
        if len(made) != 1 or not isinstance(last, Make):
            return made
        target = last.target
        each = target is not None and target == Target(At.EACH, target.kind)
        each = each and target is not None and spacey(target.kind)
        ended = target is not None and target.at in (At.LAST, At.FIRST) and target.count is None
        ended = ended and target is not None and (spacey(target.kind))
        if not _single(last) and not each and not ended:
            return made
        loose = _placeless(before)
        if not any(isinstance(n, Chain) or n.stitch.us == "sl st" for n in (*loose, last)):
            return made
        if len(loose) + 1 < _SHORTEST or last.target is None:
            return made
        chained = isinstance(before[-len(loose) - 1], Chain) if len(before) > len(loose) else False
        if last.target.at is not At.SAME and not _mirrored(loose[0], last, chained):
            return made
        del before[len(before) - len(loose) :]
        body = (*loose, replace(last, target=None))
        return [Group(body, last.target, loose[0].start, self.last_end, listed=True)]


def _last_work(nodes: list[Node]) -> Node | None:
    """What was worked last, but for remarks."""
    return next((node for node in reversed(nodes) if not isinstance(node, Note)), None)


def _as_stitch(name: str, made: Node) -> Stitch | None:
    """What was made in one place as a stitch of that name; None where it is not several."""
    body: tuple[Node, ...] = made.body if isinstance(made, Group) else (made,)
    target = made.target if isinstance(made, Group | Make) else None
    if target is None or target.count is not None:
        return None
    if not all(isinstance(node, Make | Chain) for node in body):
        return None
    makes = sum(n.count[0] * n.stitch.makes for n in body if isinstance(n, Make))
    spaces = tuple(n.count[0] for n in body if isinstance(n, Chain))
    return Stitch(name, name, 1, makes, spaces=spaces) if makes >= _SHORTEST else None


def _single(node: Make) -> bool:
    """Whether a stitch goes into one place that is named."""
    target = node.target
    return target is not None and target.at in (At.NEXT, At.SAME) and target.count is None


def _mirrored(first: Make | Chain, last: Make, chained: bool) -> bool:
    """Whether a list begins as it ends, as a shell does: "2 dc, ch 2, 2 dc".

    ``chained``: a chain stands before it, which may stand for one of its stitches.
    """
    if not isinstance(first, Make) or last.stitch.takes != 1:
        return False
    alike = first.count == last.count or (chained and first.count[0] + 1 == last.count[0])
    return first.stitch == last.stitch and alike


def _there_and_back(found: list[Node]) -> bool:
    """Whether a list with chains in it ends as it begins: "2 dc, ch 2, 2 dc"."""
    first, last = found[0], found[-1]
    chained = any(isinstance(n, Chain) for n in found)
    if not chained or not isinstance(first, Make) or not isinstance(last, Make):
        return False
    return _mirrored(first, last, chained=False)


def _placeless(before: list[Node]) -> list[Make | Chain]:
    """What stands last in ``before`` without a place of its own, from a stitch on."""
    found: list[Make | Chain] = []
    for node in reversed(before):
        if not isinstance(node, Make | Chain) or (isinstance(node, Make) and node.target):
            break
        found.insert(0, node)
    while found and isinstance(found[0], Chain):
        del found[0]
    return found
