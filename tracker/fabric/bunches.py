"""How many petals, shells or groups a round makes, in all the ways a maker may count them."""

from __future__ import annotations

from collections import Counter
from itertools import groupby

from tracker.fabric.edge import UNCOUNTED, Edge
from tracker.fabric.outcome import Outcome

#: So many stitches in each of several places and more are groups there.
_LEAST = 3


def bunches(outcome: Outcome) -> set[int]:
    """The numbers that "so many petals" may stand for; empty where none can be told.

    Groups of stitches in one place; stitches between spaces, and in halves; passes through a
    repeat, with one more where something stands beside it; and special stitches.
    """
    edge = tuple(s for s in outcome.edge if s.name not in UNCOUNTED)
    groups = _groups(edge)
    found = groups | _passes(outcome, groups)
    for count in outcome.counted.values():
        found |= {count, count + 1}
    spaces = sum(s.count for s in edge if s.chains)
    if spaces:
        found |= {spaces, _between_spaces(edge), *_halves(edge)}
    return found - {0}


def _groups(edge: Edge) -> set[int]:
    """Groups in one place: all, those of each size (there may be half shells beside whole ones).

    One more where the first may have been begun beside them, with a chain of its own.
    """
    sizes: list[int] = []
    for spot in edge:
        if spot.group and spot.opens:
            sizes.append(0)
        if spot.group and sizes:
            sizes[-1] += spot.count
        if not spot.group and spot.each >= _LEAST:
            sizes += [spot.each] * (spot.count // spot.each)
    counts = Counter(sizes)
    begun = bool(edge[0].group and edge[0].opens) if edge else True
    several = {s.name for s in edge if s.group or s.each >= _LEAST}
    alike = bool(edge) and edge[0].name in several
    loose = not begun and alike and sizes[:1] == [n for n, _ in counts.most_common(1)]
    return {n + more for n in (len(sizes), *counts.values()) if n for more in (0, loose)}


def _between_spaces(edge: Edge) -> int:
    """Stretches of stitches that chain spaces part, round the whole round."""
    stretches = [key for key, _ in groupby(edge, key=lambda spot: bool(spot.chains))]
    meets = len(stretches) > 1 and not stretches[0] and not stretches[-1]
    return stretches.count(False) - meets


def _halves(edge: Edge) -> set[int]:
    """Stretches of stitches that spaces and the borders of groups part: the halves of corners.

    One less where the first was begun with a chain of its own.
    """
    found, open_ = 0, False
    for spot in edge:
        begins = not spot.chains and (spot.opens or not open_)
        found += begins
        open_ = not spot.chains
    loose = len(edge) > 1 and not edge[0].group and not edge[0].chains and edge[1].opens
    return {found, found - loose}


def _passes(outcome: Outcome, groups: set[int]) -> set[int]:
    """Passes through each repeat; one more where stitches stand outside it.

    Not where each pass makes a group, and there are no more of them.
    """
    sums: dict[tuple[int, int], int] = {}
    for span, times in zip(outcome.spans, outcome.times, strict=True):
        sums[span] = sums.get(span, 0) + times
    found = set()
    for (start, end), times in sums.items():
        outside = any(r.makes and not start <= r.start < end for r in outcome.runs)
        found |= {times, times + (outside and times not in groups)}
    return found
