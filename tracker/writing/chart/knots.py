"""What a chart draws: each stitch by itself, with the stitches it is worked into.

A chart shows the fabric, not the words: what is drawn comes from the places that each step
took and left when the round was counted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from tracker.notation.stitches import Stitch
from tracker.pattern.model import Worked


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
