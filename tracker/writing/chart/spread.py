"""Things side by side on a line, each as near as may be to where it belongs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

_UNTIED = 0.05
"""Weight of what belongs nowhere itself, against 1 of what does."""


@dataclass(frozen=True, slots=True)
class Thing:
    """Something ``width`` wide that belongs at ``target``, or nowhere (None)."""

    width: float
    target: float | None = None


def spread(things: Sequence[Thing], low: float, high: float) -> list[float]:
    """Where each thing's middle goes: in order, none over another, within ``low`` and ``high``.

    The sum of squares of the ways from the targets is the least there is: isotonic
    regression of the targets less the room that is needed before each,
    https://en.wikipedia.org/wiki/Isotonic_regression. All of them fit between low and high.
    """
    if not things:
        return []
    room = list(accumulate(((a.width + b.width) / 2 for a, b in pairwise(things)), initial=0.0))
    targets = _filled([thing.target for thing in things])
    weights = [_UNTIED if thing.target is None else 1.0 for thing in things]
    free = _rising([t - r for t, r in zip(targets, room, strict=True)], weights)
    first = low + things[0].width / 2
    last = high - things[-1].width / 2 - room[-1]
    return [max(first, min(last, at)) + r for at, r in zip(free, room, strict=True)]


def evenly(things: Sequence[Thing], low: float, high: float) -> list[float]:
    """Where each thing's middle goes if all share the room by their widths."""
    whole = sum(thing.width for thing in things) or 1.0
    scale = (high - low) / whole
    ends = list(accumulate((thing.width * scale for thing in things), initial=low))
    return [(a + b) / 2 for a, b in pairwise(ends)]


def _filled(targets: Sequence[float | None]) -> list[float]:
    """The targets, with the mean of the next ones on both sides where there is none."""
    before, after = _carried(targets), _carried(targets[::-1])[::-1]
    return [
        t if t is not None else _mean(b, a) for t, b, a in zip(targets, before, after, strict=True)
    ]


def _carried(targets: Sequence[float | None]) -> list[float | None]:
    found: list[float | None] = []
    last: float | None = None
    for target in targets:
        last = last if target is None else target
        found.append(last)
    return found


def _mean(one: float | None, other: float | None) -> float:
    known = [n for n in (one, other) if n is not None]
    return sum(known) / len(known) if known else 0.0


def _rising(values: Sequence[float], weights: Sequence[float]) -> list[float]:
    """The rising values next to ``values``: neighbours that fall are pooled to their mean."""
    pools: list[tuple[float, float, int]] = []
    for value, weight in zip(values, weights, strict=True):
        mean, heavy, count = value, weight, 1
        while pools and pools[-1][0] > mean:
            other, load, many = pools.pop()
            mean = (mean * heavy + other * load) / (heavy + load)
            heavy, count = heavy + load, count + many
        pools.append((mean, heavy, count))
    return [mean for mean, _, count in pools for _ in range(count)]
