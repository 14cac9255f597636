"""Moments of a walk: what is in force as the hands go on, and what is kept to come back to."""

from __future__ import annotations

from dataclasses import dataclass
from operator import attrgetter

from tracker.fabric.below import Cursor
from tracker.fabric.edge import Spot
from tracker.fabric.places import Hold
from tracker.fabric.steps import Pass, Run
from tracker.notation.tree import Chain, Node


@dataclass(slots=True)
class Now:
    """What changes as the hands go on and must be put back when a try fails.

    Attributes:
        steps: steps so far. ``begun``: whether a stitch was made yet.
        over_skip: the thing made last is a chain that may span places below.
        chain_used: foundation chains worked into.
        inside: index of the pass the hands are in, or -1.
        loop: the loop that stitches go into from here on.
        joined, turned: whether the round was closed, the work turned.
        group, opens: key of the group being made; whether its first stitch is still to come.
        in_place: whether all goes into one place.
        at_place: kind of the place the round begins in, where that is no stitch.
        place: words for the place of the group that begins, until its first stitch.
        skipped: places skipped before the next stitch.
        body: what is repeated by the innermost repeat.
        colour: letter of the yarn in hand. ``pending``: a chain for the next round.
        placed: places on the edge that the round has left so far.
        bridge: length of the chain that the round made between two pieces.
        own: chains of one made in this round that are still to be worked back along.
        free_side: chains of it that are still free, on the side worked along.
        aside: the words have led to its other side, and nothing is made there yet.
        reach: where on the edge below the hands were at the stitch made last.
    """

    colour: str = ""
    steps: int = 0
    begun: bool = False
    over_skip: bool = False
    chain_used: int = 0
    inside: int = -1
    loop: str = ""
    joined: bool = False
    turned: bool = False
    group: str = ""
    opens: bool = False
    in_place: bool = False
    at_place: str = ""
    place: str = ""
    skipped: int = 0
    body: tuple[Node, ...] = ()
    pending: Chain | None = None
    placed: int = 0
    bridge: int = 0
    own: int = 0
    free_side: int = 0
    aside: bool = False
    reach: tuple[int, int] = (0, 0)

    def copy(self) -> Now:
        """The same state, to be changed on its own."""
        return Now(*_FIELDS(self))


_FIELDS = attrgetter(*Now.__slots__)


@dataclass(frozen=True, slots=True)
class Mark:
    """A moment of the walk to come back to."""

    now: Now
    cursor: Cursor
    out: int
    last: Spot | None
    runs: int
    passes: int
    times: int
    counted: dict[str, int]
    seen: frozenset[str]


@dataclass(frozen=True, slots=True)
class Kept:
    """A moment of the walk with copies of all that was made until then."""

    mark: Mark
    out: list[Spot]
    runs: list[Run]
    holds: list[Hold]
    passes: list[Pass]
    times: list[int]
    spans: list[tuple[int, int]]
