"""The rounds of a part as knots, as far as they can be drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from tracker.fabric.places import NOWHERE
from tracker.notation.dictionary import UK_BY_US
from tracker.notation.lexicon import Lexicon
from tracker.notation.stitches import Stitch
from tracker.pattern.checked import CheckedPart, CheckedRound
from tracker.pattern.model import Part, Worked
from tracker.writing.chart.knots import Knot, KnotRound, Knots
from tracker.writing.chart.unpicked import Own, Undrawn, Unpicked
from tracker.writing.glossary import named_in

MOST = 4_000
"""Stitches of one chart; more would be too small to be seen on any page."""


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
    for one in (r for r in found.rounds if r.is_for(index)):
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


def _go_on(rounds: Sequence[KnotRound], drawn: KnotRound) -> None:
    """Raise `Undrawn` where a round does not stand on those before it, or is too much."""
    if rounds and drawn.under != rounds[-1].places and not _ringed(rounds, drawn):
        raise Undrawn("is not worked into the round before it")
    if not drawn.knots:
        raise Undrawn("makes nothing that can be drawn")
    if sum(r.made for r in rounds) + (drawn.made or drawn.places) > MOST:
        raise Undrawn(f"would make it more than {MOST} stitches")


def _ringed(rounds: Sequence[KnotRound], drawn: KnotRound) -> bool:
    """Whether a round goes into the ring that the chain before it was closed to."""
    return drawn.under == 0 and len(rounds) == 1 and not any(k.feet for k in rounds[0].knots)


def _without_ring(rounds: list[KnotRound]) -> list[KnotRound]:
    """The rounds without a chain that is only the ring for the next."""
    if len(rounds) > 1 and rounds[1].under == 0:
        return rounds[1:]
    return rounds


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
    reader = Unpicked(outcome, own)
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
