"""The edge a round leaves: the stitches and chain spaces the next one is worked into."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class Spot:
    """``count`` equal places side by side.

    Attributes:
        name: US name of the stitch, "ch" for a chain worked into by itself, or one of
            `UNCOUNTED`.
        count: how many.
        chains: 0, or the length of a chain space (then ``count`` spaces of that length).
        group: key of the special stitch it is part of; "" for none.
        opens: whether it is the first of its group.
        live: whether a chain space stands for as many stitches as it has chains, as over
            an opening: then each of its chains is worked into.
        each: how many of them went into each place, one place after another.
        middle: whether it is the middle stitch of all, where that is asked for.
    """

    name: str
    count: int = 1
    chains: int = 0
    group: str = ""
    opens: bool = False
    live: bool = False
    each: int = 1
    middle: bool = False

    def more(self, count: int) -> Spot:
        """The same with ``count`` more places; quicker than `replace`, which a round often is."""
        return Spot(
            self.name,
            self.count + count,
            self.chains,
            self.group,
            self.opens,
            self.live,
            self.each,
        )


Edge = tuple[Spot, ...]

#: Places that are no stitches: a turning chain that is not counted, a slip stitch that only
#: holds down the petals beside it, a gap between two groups.
UNCOUNTED = frozenset(("tch", "anchor", "gap"))
#: Stitches that an earlier round passed over, at the edge of an opening.
SKIPPED = "skipped st"
#: Stitches round a post, whichever they are: "each FP st".
POSTED = frozenset(("fp", "bp"))
#: Names that a group of stitches in one place may be called by.
GROUPED = frozenset(("shell", "v-st", "fan", "group"))


@lru_cache(256)
def space(length: int, group: str = "") -> Spot:
    """A chain space of ``length`` chains."""
    return Spot(f"ch-{length} sp", 1, length, group)


def plain_edge(count: int, name: str = "st") -> Edge:
    """``count`` stitches of which no more is known."""
    return (Spot(name, count),) if count > 0 else ()


def singled(edge: Edge) -> Edge:
    """The same edge with every longer chain space taken apart into single chains."""
    return tuple(Spot("ch", s.chains * s.count) if s.chains > 1 else s for s in edge)


def live(edge: Edge) -> Edge:
    """The same edge with the chains over an opening taken as single places."""
    return tuple(Spot("ch", s.chains * s.count) if s.live else s for s in edge)


def cornered(edge: Edge) -> Edge:
    """An edge without chain spaces, whose corners are groups such as "3 sc in one st".

    The middle stitch of each such group becomes a place of its own, named "corner" by its
    group.
    """
    found: list[Spot] = []
    for spot in edge:
        half = spot.count // 2
        if spot.group != "group" or spot.count % 2 == 0 or spot.count < 3:
            found.append(spot)
            continue
        found.append(replace(spot, count=half))
        found.append(replace(spot, count=1, group="corner", opens=True))
        found.append(replace(spot, count=half, opens=False))
    return tuple(found)


def with_middle(edge: Edge) -> Edge:
    """The edge with the middle one of its stitches as a place of its own; none if it is even."""
    left, rest = divmod(stitches(edge), 2)
    found: list[Spot] = []
    for spot in edge:
        counts = not spot.chains and spot.name not in UNCOUNTED
        if not rest or not counts or not 0 <= left < spot.count:
            found.append(spot)
        else:
            behind = spot.count - left - 1
            parts = (
                replace(spot, count=left),
                replace(spot, count=1, middle=True, opens=spot.opens and not left),
                replace(spot, count=behind, opens=False),
            )
            found += [part for part in parts if part.count]
        left -= spot.count if counts else 0
    return tuple(found)


def turned(edge: Edge) -> Edge:
    """The edge as met when the work is turned: a group opens at its other end."""
    found: list[Spot] = []
    for i in range(len(edge) - 1, -1, -1):
        spot = edge[i]
        last = i + 1 == len(edge) or edge[i + 1].opens or edge[i + 1].group != spot.group
        opens = bool(spot.group) and last
        found.append(spot if spot.opens == opens else replace(spot, opens=opens))
    return tuple(found)


def stitches(edge: Edge) -> int:
    """How many stitches (not spaces) the edge has."""
    return sum(s.count for s in edge if not s.chains and s.name not in UNCOUNTED)


def made(edge: Iterable[Spot]) -> dict[str, int]:
    """How many of each stitch and each kind of space, by name."""
    found: dict[str, int] = {}
    for spot in edge:
        if spot.name not in UNCOUNTED:
            found[spot.name] = found.get(spot.name, 0) + spot.count
    return found
