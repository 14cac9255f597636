"""The runs of one round taken apart into knots."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from tracker.fabric.edge import Edge
from tracker.fabric.outcome import Outcome
from tracker.fabric.places import Hold, Places
from tracker.fabric.steps import Kind, Run
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.stitches import Stitch
from tracker.writing.chart.knots import Knot

#: Stitches that only say that two go into one place, or one into two.
_INCREASES = ("inc", "shell", "v-st")
_DECREASES = ("dec", "invdec")


@dataclass(frozen=True, slots=True)
class Own:
    """The pattern's own stitches, by abbreviation.

    ``legs``: the plain stitch that several of make one, such as the dc of a shell.
    """

    stitches: Mapping[str, Stitch]
    legs: Mapping[str, str]


class Undrawn(Exception):
    """A round cannot be drawn; the text says why, behind "it"."""


class Unpicked:
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
