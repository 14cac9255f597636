"""One round as read: its instruction tree, its printed count, what it asks for of other rounds.

``start`` and ``end`` are offsets into the round's text, as those of nodes are.
"""

from __future__ import annotations

from dataclasses import dataclass

from tracker.notation.tree import Figure, Node


@dataclass(frozen=True, slots=True)
class Stated:
    """A printed count.

    ``total`` is the figure (one or one a size), or None where only ``parts`` are named:
    pairs of (what is counted, how many). ``sides``: such pairs for each side of a square or
    another shape with corners. ``start`` and ``end`` as for nodes.
    """

    total: Figure | None
    parts: tuple[tuple[str, Figure], ...]
    start: int
    end: int
    sides: tuple[tuple[str, Figure], ...] = ()


@dataclass(frozen=True, slots=True)
class Again:
    """Rounds to be worked again: from ``first`` to ``last``, ``times`` times.

    ``times`` None: once for each round of the line's own label. ``first`` 0: the ``back``
    rounds worked last. ``upto``: the number of rounds the part is to have then, or 0.
    ``alike``: the rounds go on as those before them did, in the same "manner" or "pattern".
    ``part``: words of the name of another part whose rounds are meant, with ``goal`` up to
    the one that leaves so many stitches. ``slips``: slip stitches lead to where it begins.
    ``altered``: offsets of the words behind it that change what is worked, or (0, 0).
    """

    first: int
    last: int
    times: Figure | None
    start: int
    end: int
    back: int = 1
    upto: int = 0
    alike: str = ""
    part: tuple[str, ...] = ()
    goal: int = 0
    slips: bool = False
    altered: tuple[int, int] = (0, 0)


@dataclass(frozen=True, slots=True)
class RoundText:
    """One round as read: the instruction tree and what is printed beside it.

    Attributes:
        text: the words, without the label; offsets of nodes point into it.
        nodes: the tree.
        stated: the printed count, if any.
        again: set where the line only asks for earlier rounds again.
        until: words that end a round of open length ("until piece measures 9 cm").
        even: rounds to be worked so (0: one, or as many as the label says).
        goal: the count at which to stop repeating the round ("until you have 20 sc"), or 0.
        way: with a ``goal``, whether it is shaped down (-1) or up (1) to it in a way that is
            left to the maker; else 0.
        goals: that count in each size, where it differs; else ().
        often: how many rounds are worked so in each size, where that differs; else ().
        uneven: that number differs in a way that is not followed.
        last: what is worked in the last of several rounds, where that is told apart.
        chains: what is said of the beginning chains of all rounds: length, whether it counts.
        apart: why it is not followed for which sizes the words are; or "".
        mended: words taken for others, which a slip may have made them of: what is told of
            each, with its offsets.
    """

    text: str
    nodes: tuple[Node, ...]
    stated: Stated | None = None
    again: Again | None = None
    until: str = ""
    even: int = 0
    goal: int = 0
    way: int = 0
    goals: Figure = ()
    often: Figure = ()
    uneven: bool = False
    last: RoundText | None = None
    chains: tuple[tuple[int, bool], ...] = ()
    apart: str = ""
    mended: tuple[tuple[str, int, int], ...] = ()
