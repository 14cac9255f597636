"""The places of an edge by number: which of them the steps of a round hold on to.

Places are numbered from 0 along the edge as the round below left it: each stitch, each
chain space and each turning chain is one, whatever part of it is worked into.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tracker.lean import NamedTuple

Places = tuple[tuple[int, int], ...]
"""Stretches of places side by side: the first one's number and how many."""

NOWHERE = -1
"""The number of a place that is not on the edge below: the other side of a chain."""


class Numbers(NamedTuple):
    """How the places of one spot are numbered.

    ``per`` of them share one number (the chains of a chain space worked into one by one);
    ``skip`` of them lie before the first.
    """

    first: int
    per: int = 1
    skip: int = 0

    def at(self, offset: int) -> int:
        """The number of the place at an offset into the spot."""
        return self.first + (self.skip + offset) // self.per

    def after(self, offset: int) -> Numbers:
        """The numbers of what is left of the spot from an offset on."""
        return self._replace(skip=self.skip + offset)

    def stretch(self, offset: int, count: int) -> Iterable[tuple[int, int]]:
        """The places from an offset on."""
        if self.per == 1:
            return ((self.at(offset), count),)
        return [(self.at(offset + k), 1) for k in range(count)]


ELSEWHERE = Numbers(NOWHERE, 1_000_000_000)
"""Numbers of a spot that the edge below does not have."""


class Hold(NamedTuple):
    """What one run of steps holds on to.

    Attributes:
        feet: the places of the round below that it goes into, in order.
        head: the number, on the edge that the round leaves, of the first place it leaves
            (or would leave, if it leaves none).
    """

    feet: Places
    head: int


def numbered(given: Sequence[int], counts: Sequence[int]) -> list[Numbers]:
    """The numbers of each spot.

    Args:
        given: how many places each spot of the edge has.
        counts: how many it has as it is worked into, chain by chain or not.
    """
    found, first = [], 0
    for places, parts in zip(given, counts, strict=True):
        found.append(Numbers(first, max(1, parts // max(1, places))))
        first += places
    return found


def parted(places: Places, count: int) -> tuple[Places, Places]:
    """The first ``count`` places, and the others."""
    first: list[tuple[int, int]] = []
    for at, (begin, size) in enumerate(places):
        if count < size:
            head = ((begin, count),) if count else ()
            return (*first, *head), ((begin + count, size - count), *places[at + 1 :])
        first.append((begin, size))
        count -= size
    return tuple(first), ()
