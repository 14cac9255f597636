"""The rounds of a part as knots: each stitch by itself, with the stitches it is worked into.

A chart shows the fabric, not the words: what is drawn comes from the places that each step
took and left when the round was counted.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from tracker.fabric.edge import Edge
from tracker.fabric.outcome import Outcome
from tracker.fabric.places import NOWHERE, Hold, Places
from tracker.fabric.steps import Kind, Run
from tracker.notation.dictionary import STITCHES, UK_BY_US, base_of
from tracker.notation.lexicon import Lexicon
from tracker.notation.stitches import Stitch
from tracker.pattern.checked import CheckedPart, CheckedRound
from tracker.pattern.model import Part, Worked
from tracker.writing.glossary import named_in

MOST = 4_000
"""Stitches of one chart; more would be too small to be seen on any page."""

#: Stitches that only say that two go into one place, or one into two.
_INCREASES = ("inc", "shell", "v-st")
_DECREASES = ("dec", "invdec")


@dataclass(frozen=True, slots=True)
class Knot:
    """One thing to be drawn.

    Attributes:
        sign: US name of the stitch, "own" for a special one, or "space", "rise" (a chain at
            the beginning), "picot", "slip", "join", "fasten".
        feet: numbers of the places of the round below it goes into; none for a ring.
        heads: numbers of the places it leaves on the edge.
        after: how many places the round has left before it.
        chains: how many chains, for what is made of chains.
        loop: "back" or "front" where only that loop is worked.
        colour: letter of the yarn.
        own: abbreviation of a special stitch.
        made: what it adds to the count of the round.
    """

    sign: str
    feet: tuple[int, ...] = ()
    heads: tuple[int, ...] = ()
    after: int = 0
    chains: int = 0
    loop: str = ""
    colour: str = ""
    own: str = ""
    made: int = 0


@dataclass(frozen=True, slots=True)
class KnotRound:
    """One round of a chart.

    Attributes:
        label: as the maker says it ("Rnd 7", "Foundation").
        knots: in the order of work.
        places: how many places it leaves.
        under: how many places are below it; 0 for a ring.
        turns: whether the next round goes the other way.
        again: it is worked again until a length is reached.
    """

    label: str
    knots: tuple[Knot, ...]
    places: int
    under: int
    turns: bool = False
    again: bool = False

    @property
    def made(self) -> int:
        """Stitches it makes, as counted."""
        return sum(knot.made for knot in self.knots)


@dataclass(frozen=True, slots=True)
class Knots:
    """A part as far as it can be drawn; ``rest`` says in a sentence why no further, or ""."""

    rounds: tuple[KnotRound, ...]
    worked: Worked
    rest: str = ""
    own: Mapping[str, Stitch] = field(default_factory=dict)


def knots_of(
    part: Part, found: CheckedPart, index: int, own: Iterable[Stitch], terms: str = "US"
) -> Knots:
    """The knots of a part.

    Args:
        part: as the pattern has it.
        found: its check.
        index: which size.
        own: the pattern's own stitches.
        terms: in which their making is told.
    """
    stitches = {stitch.abbr: stitch for stitch in own}
    legs = {abbr: leg for abbr, stitch in stitches.items() if (leg := _leg(stitch, terms))}
    rounds: list[KnotRound] = []
    rest = ""
    pending = 0
    for one in found.rounds:
        try:
            rows = part.worked is Worked.ROWS
            for drawn in _round(one, index, Own(stitches, legs), pending, rows=rows):
                _go_on(rounds, drawn)
                rounds.append(drawn)
            pending = _pending(one, index)
        except Undrawn as why:
            rest = f"Not drawn from {one.label} on: it {why}."
            break
    return Knots(tuple(_without_ring(rounds)), part.worked, rest, stitches)


class Undrawn(Exception):
    """A round cannot be drawn; the text says why, behind "it"."""


def _go_on(rounds: Sequence[KnotRound], drawn: KnotRound) -> None:
    """Raise `Undrawn` where a round does not stand on those before it, or is too much."""
    if rounds and drawn.under != rounds[-1].places and not _ringed(rounds, drawn):
        raise Undrawn("is not worked into the round before it")
    if sum(r.made for r in rounds) + drawn.made > MOST:
        raise Undrawn(f"would make it more than {MOST} stitches")


def _ringed(rounds: Sequence[KnotRound], drawn: KnotRound) -> bool:
    """Whether a round goes into the ring that the chain before it was closed to."""
    return drawn.under == 0 and len(rounds) == 1 and not any(k.feet for k in rounds[0].knots)


def _without_ring(rounds: list[KnotRound]) -> list[KnotRound]:
    """The rounds without a chain that is only the ring for the next."""
    if len(rounds) > 1 and rounds[1].under == 0:
        return rounds[1:]
    return rounds


@dataclass(frozen=True, slots=True)
class Own:
    """The pattern's own stitches, by abbreviation.

    ``legs``: the plain stitch that several of make one, such as the dc of a shell.
    """

    stitches: Mapping[str, Stitch]
    legs: Mapping[str, str]


def _leg(stitch: Stitch, terms: str) -> str:
    """The plain stitch that a special one leaves several of, if its making names one."""
    if stitch.makes < 2:
        return ""
    named = (us for us, _ in named_in(stitch.how, Lexicon(terms)))
    return next((us for us in named if us in UK_BY_US), "")


def _pending(found: CheckedRound, index: int) -> int:
    """Chains made at the end of a round for the next one."""
    chain = found.judged.outcomes[index].pending if found.judged else None
    if chain is None:
        return 0
    return chain.count[index] if index < len(chain.count) else chain.count[0]


def _round(
    found: CheckedRound, index: int, own: Own, pending: int, *, rows: bool
) -> Iterator[KnotRound]:
    """The knots of a round; a chain that it makes to work into is a round of its own."""
    if found.judged is None:
        raise Undrawn("was not understood")
    if not found.judged.fits or found.judged.agrees is False:
        raise Undrawn("does not work out")
    outcome = found.judged.outcomes[index]
    reader = _Reader(outcome, own)
    knots = list(reader.knots())
    if pending and not (knots and knots[0].sign == "rise"):
        heads = (0,) if reader.names[:1] == ["tch"] else ()
        knots.insert(0, Knot("rise", heads=heads, chains=pending))
    _hold_fast(knots, len(reader.names))
    turns = outcome.turned or (rows and not outcome.foundation)
    places = sum(spot.count for spot in outcome.edge)
    if reader.chain and any(knot.feet for knot in knots):
        chain = [Knot("ch", heads=(n,), after=n, chains=1) for n in range(reader.chain)]
        yield KnotRound("Foundation", tuple(chain), reader.chain, 0)
        yield KnotRound(found.label, tuple(knots), places, reader.chain, turns or rows)
        return
    again = bool(found.until)
    yield KnotRound(found.label, tuple(knots), places, outcome.under, turns, again)


def _hold_fast(knots: Sequence[Knot], places: int) -> None:
    """Raise `Undrawn` where a knot is worked into what is not there, or a place is bare."""
    if [head for knot in knots for head in knot.heads] != list(range(places)):
        raise Undrawn("leaves places that are no stitches")
    if any(foot == NOWHERE for knot in knots for foot in knot.feet):
        raise Undrawn("goes along both sides of a chain")


class _Reader:
    """Takes the runs of one round apart. ``chain``: chains that it makes to work into."""

    def __init__(self, outcome: Outcome, own: Own) -> None:
        self.runs = outcome.runs
        self.holds = outcome.holds
        self.names = list(_names(outcome.edge))
        self.own = own
        self.chain = 0
        self.end = len(self.names)

    def knots(self) -> Iterator[Knot]:
        """Every knot, in order."""
        for at, run in enumerate(self.runs):
            hold = self.holds[at]
            after = self.holds[at + 1].head if at + 1 < len(self.holds) else self.end
            if run.kind is Kind.STITCH:
                yield from self._stitches(run, hold, after)
            elif run.kind is Kind.CHAIN:
                yield from self._chains(at, run, hold, after)
            elif run.kind is Kind.JOIN and hold.head:
                yield Knot("join", after=hold.head, colour=run.colour)
            elif run.kind is Kind.FASTEN:
                yield Knot("fasten", after=hold.head, colour=run.colour)

    def _chains(self, at: int, run: Run, hold: Hold, after: int) -> Iterator[Knot]:
        count = _chain_count(run)
        leaves = after - hold.head
        if run.count > 1 or run.text == "ch":
            yield from self._foundation(run, hold, leaves)
            return
        base = Knot("space", after=hold.head, chains=count, colour=run.colour)
        if run.makes:
            feet = tuple(_flat(hold.feet)[-1:])
            yield replace(base, sign="rise", feet=feet, heads=(hold.head,), made=1)
            if leaves > 1:
                yield replace(base, heads=(hold.head + 1,), chains=self._length(hold.head + 1))
        elif leaves == 1 and self.names[hold.head] == "tch":
            yield replace(base, sign="rise", heads=(hold.head,))
        elif leaves == 1:
            yield replace(base, heads=(hold.head,))
        elif self._closes(at):
            yield replace(base, sign="picot")
        elif not hold.head:
            yield replace(base, sign="rise")

    def _foundation(self, run: Run, hold: Hold, leaves: int) -> Iterator[Knot]:
        if not leaves:
            self.chain = run.count
            return
        for n in range(hold.head, hold.head + run.count):
            yield Knot("ch", (), (n,), n, 1, colour=run.colour, made=1)

    def _length(self, place: int) -> int:
        """Chains of the chain space at a place."""
        return int("".join(c for c in self.names[place] if c.isdigit()) or 1)

    def _closes(self, at: int) -> bool:
        """Whether the next step closes chains to a picot."""
        following = self.runs[at + 1] if at + 1 < len(self.runs) else None
        slips = following is not None and following.stitch == "sl st" and not following.makes
        return slips and self.holds[at].head > 0

    def _stitches(self, run: Run, hold: Hold, after: int) -> Iterator[Knot]:
        special = self.own.stitches.get(run.stitch)
        us = run.stitch if special is None else special.us
        takes = (special or STITCHES[us]).takes if special or us in STITCHES else run.takes
        each, odd = divmod(after - hold.head, run.count)
        feet = _flat(hold.feet)
        groups = run.count // run.per_place
        if odd or (run.takes and feet and len(feet) < groups * run.takes):
            raise Undrawn("cannot be taken apart into single stitches")
        for step in range(run.count):
            group = step // run.per_place
            mine = feet[group * run.takes : (group + 1) * run.takes] if run.takes else feet[-1:]
            heads = range(hold.head + step * each, hold.head + (step + 1) * each)
            knot = Knot(
                us,
                tuple(mine[-max(1, takes) :]),
                tuple(heads),
                hold.head + step * each,
                loop=_loop(run),
                colour=run.colour,
                made=run.makes,
            )
            yield from self._one(knot, us, run.stitch if special and us not in STITCHES else "")

    def _one(self, knot: Knot, us: str, own: str) -> Iterator[Knot]:
        """One step: a stitch, or the several that an increase is."""
        if own and (self.own.legs.get(own) or self._plain(knot)):
            yield from self._increase(knot, self.own.legs.get(own, ""))
        elif own:
            yield replace(knot, sign="own", own=own)
        elif us == "sl st" and not knot.heads:
            yield replace(knot, sign="slip")
        elif us == "crossed dc":
            for foot, head in zip(reversed(knot.feet), knot.heads, strict=False):
                yield replace(knot, sign="dc", feet=(foot,), heads=(head,), made=1)
        elif us in _DECREASES:
            yield replace(knot, sign=f"{base_of(self._name(knot))}2tog")
        elif us in _INCREASES or us.endswith("inc") or us not in STITCHES:
            yield from self._increase(knot)
        else:
            yield knot

    def _plain(self, knot: Knot) -> bool:
        """Whether several stitches of the dictionary are left by one step."""
        return len(knot.heads) > 1 and any(self.names[head] in STITCHES for head in knot.heads)

    def _increase(self, knot: Knot, leg: str = "") -> Iterator[Knot]:
        """The several stitches that one step makes, of one kind if ``leg`` names it."""
        for head in knot.heads:
            name = self.names[head]
            if name.endswith("sp"):
                yield replace(
                    knot, sign="space", feet=(), heads=(head,), chains=self._length(head), made=0
                )
            else:
                yield replace(knot, sign=leg or name, heads=(head,), after=head, made=1)

    def _name(self, knot: Knot) -> str:
        return self.names[knot.heads[0]] if knot.heads else "sc"


def _chain_count(run: Run) -> int:
    """Chains of a run: "ch 3", "3 ch stand for the first st", "the ch 3 is the first st"."""
    return next((int(word) for word in run.text.split() if word.isdigit()), 1)


def _loop(run: Run) -> str:
    return next((loop for loop in ("back", "front") if f"the {loop} loop" in run.where), "")


def _flat(places: Places) -> list[int]:
    return [n for first, count in places for n in range(first, first + count)]


def _names(edge: Edge) -> Iterator[str]:
    for spot in edge:
        yield from [spot.name] * spot.count


def seen(knot: Knot) -> Knot:
    """A knot made on the wrong side as it looks from the right side.

    Front and back change places:
    http://www.hookincrochet.com/hccatalog/aboutcharts.html
    """
    loop = {"back": "front", "front": "back"}.get(knot.loop, "")
    sign = knot.sign
    if sign[:2] in ("fp", "bp"):
        sign = ("bp" if sign[0] == "f" else "fp") + sign[2:]
    return replace(knot, loop=loop, sign=sign)
