"""How long a stitch takes, from the times between presses; pauses are left out before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tracker.measure.estimate import Amounts, Estimate, Group, Range, Ratio, Table, fit, singles

RATIOS: Mapping[str, Ratio] = {
    "ch": Ratio(0.3, 0.4),
    "sl st": Ratio(0.7, 0.4),
    "sc": Ratio(1.0, 0.3),
    "hdc": Ratio(1.25, 0.3),
    "dc": Ratio(1.5, 0.3),
    "tr": Ratio(2.0, 0.4),
    "dtr": Ratio(2.5, 0.4),
    "trtr": Ratio(3.0, 0.4),
}
"""Time of one stitch, in single crochets, by US names.

In proportion to its yarn overs, with two more for finding the place. Our own assumption, no
source; hence the wide spread.
"""

SPECIAL = Ratio(3.0, 0.6)
"""A stitch of which nothing is known. Our own assumption, no source."""

TABLE = Table(RATIOS, SPECIAL)

ENDS = Ratio(2.0, 0.6)
"""A join, a turn, another colour, a marker: the same."""

WANDERS = 4.0
"""How the time of n single crochets scatters: variance over that of one, for each of them.

A maker who is a fifth faster or slower for some hundred stitches at a time. Our own
assumption, no source; what is measured corrects it.
"""

SITTING = 0.15
"""How one sitting differs from another, as a standard deviation. Our own choice, no source."""

QUICKEST = 0.5
"""Seconds; stitches quicker than this each were jumped over, not worked.

Our own choice: published paces lie at seven seconds and more (`PUBLISHED`).
"""

PUBLISHED = {"a mathematical piece": (25_511, 85 * 3600), "a first scarf": (1_500, 3 * 3600)}
"""Stitches and the seconds they took, for comparison only: no estimate begins from them.

https://www.mybrilliantmistakes.com/2004/12/as-close-as-this-site-comes-to-knitting-news/ and
https://blog.hennethannun.net/tag/crocheting/
"""

LEAST_STITCHES, LEAST_SECONDS = 20, 120
"""With less there is nothing to tell a pace from. Our own choice, no source."""

ROWS = 40
"""Measurements of one sitting; longer ones are put together in longer stretches."""

SITTINGS = 12
"""Sittings that are used, the latest: a hand gets quicker as it learns a piece."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Work without a pause: how many of each kind, and how many seconds."""

    made: Amounts
    seconds: float


Sitting = Sequence[Stretch]
"""Stretches worked one after the other, without putting the piece down."""


def fit_pace(sittings: Sequence[Sitting], ratios: Mapping[str, Ratio]) -> Estimate | None:
    """Seconds for each kind; None where there is too little to tell it from."""
    latest = [_worked(sitting, ratios) for sitting in sittings][-SITTINGS:]
    every = [stretch for sitting in latest for stretch in sitting]
    seconds = sum(stretch.seconds for stretch in every)
    made = sum(singles(stretch.made, ratios) for stretch in every)
    if made < LEAST_STITCHES or seconds < LEAST_SECONDS:
        return None
    unit = seconds / made
    return fit([_group(sitting, ratios, unit) for sitting in latest if sitting], ratios)


def takes(estimate: Estimate, ahead: Amounts, ratios: Mapping[str, Ratio], sitting: float) -> Range:
    """Seconds that the work ahead will take.

    ``sitting`` is how long the maker works at a time, in seconds: over many sittings quick
    and slow ones even out.
    """
    many = singles(ahead, ratios)
    if not many:
        return Range(0.0, 0.0, 0.0)
    likely = estimate.ahead(ahead).likely
    unit = likely / many
    sittings = max(1.0, likely / sitting) if sitting > 0 else 1.0
    own = WANDERS * unit**2 * many
    return estimate.ahead(ahead, own + (SITTING * likely) ** 2 / sittings)


def _worked(sitting: Sitting, ratios: Mapping[str, Ratio]) -> list[Stretch]:
    """The stretches that were worked and not jumped over, put together to a few."""
    worked = [
        one
        for one in sitting
        if one.made and one.seconds >= QUICKEST * singles(one.made, ratios) > 0
    ]
    each = sum(one.seconds for one in worked) / ROWS
    joined: list[Stretch] = []
    for one in worked:
        if joined and joined[-1].seconds < each:
            joined[-1] = _together(joined[-1], one)
        else:
            joined.append(one)
    return joined


def _together(one: Stretch, other: Stretch) -> Stretch:
    kinds = one.made.keys() | other.made.keys()
    made = {kind: one.made.get(kind, 0.0) + other.made.get(kind, 0.0) for kind in kinds}
    return Stretch(made, one.seconds + other.seconds)


def _group(sitting: Sitting, ratios: Mapping[str, Ratio], unit: float) -> Group:
    made = [singles(one.made, ratios) for one in sitting]
    errors = [[(SITTING * unit) ** 2 * one * other for other in made] for one in made]
    for i, many in enumerate(made):
        errors[i][i] += WANDERS * unit**2 * many + 1.0
    return Group([one.made for one in sitting], [one.seconds for one in sitting], errors)
