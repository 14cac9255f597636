"""How much one stitch of each kind takes, of yarn or of time, from what was measured.

What is measured is never one stitch, but a stretch of many, of several kinds. So the kinds
are fitted together, by least squares and none below 0, and held near what is known of how
they compare (a double crochet takes about twice the yarn of a single crochet) for as long as
the measurements do not tell them apart. How much any of them takes is taken from the
measurements alone.

Estimates are floats: their error is far above that of a float.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

from tracker.measure.linear import (
    Matrix,
    Vector,
    dot,
    forward,
    least_squares,
    normal,
    part,
    root,
)
from tracker.measure.student import reach

BELIEF = 4.0
"""How many measurements the assumed scatter counts for, beside the scatter that is seen.

Our own choice, no source.
"""

Amounts = Mapping[str, float]
"""How many of each kind."""


@dataclass(frozen=True, slots=True)
class Ratio:
    """How a kind compares with one single crochet: ``times`` as much.

    ``spread`` is its standard deviation, as a share of it.
    """

    times: float
    spread: float


@dataclass(frozen=True, slots=True)
class Table:
    """How stitches compare: the plain ones by US names, ``special`` those not known.

    ``shared`` is what stitches that are closed together have in common: the closing loop.
    """

    ratios: Mapping[str, Ratio]
    special: Ratio
    shared: float = 0.0

    def legs(self, plain: Ratio, together: int) -> Ratio:
        """So many of a plain stitch closed together, or made in one place.

        Each adds all but what they share. Our own assumption, no source.
        """
        more = max(0.0, plain.times - self.shared)
        return Ratio(plain.times + more * (together - 1), max(plain.spread, 0.35))


@dataclass(frozen=True, slots=True)
class Group:
    """Measurements whose errors go together.

    Attributes:
        rows: how many of each kind were made in each.
        measured: what each came to, in the unit of the estimate.
        errors: their covariance, as assumed.
    """

    rows: Sequence[Amounts]
    measured: Vector
    errors: Matrix


@dataclass(frozen=True, slots=True)
class Range:
    """What is likely, and an interval that holds the truth nine times in ten."""

    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True)
class Estimate:
    """What one of each kind takes.

    Attributes:
        likely: by kind, in the unit measured; none is below 0.
        freedom: degrees of freedom of the scatter.
        scatter: the scatter seen and assumed, as a multiple of the assumed (variance).
    """

    likely: Mapping[str, float]
    freedom: float
    scatter: float
    _lower: Matrix
    _free: tuple[str, ...]

    def ahead(self, amounts: Amounts, variance: float = 0.0) -> Range:
        """What so many of each kind will take.

        ``variance`` is how much that scatters by itself, by the assumption that the errors
        of the measurements were stated with. A kind that is not known takes nothing.
        """
        likely = sum(self.likely.get(kind, 0.0) * many for kind, many in amounts.items())
        root_of = forward(self._lower, [amounts.get(kind, 0.0) for kind in self._free])
        width = reach(self.freedom) * sqrt(self.scatter * (dot(root_of, root_of) + variance))
        return Range(max(0.0, likely - width), likely, likely + width)

    def each(self, kind: str) -> Range:
        """What one of a kind takes on average."""
        return self.ahead({kind: 1.0})


def singles(amounts: Amounts, ratios: Mapping[str, Ratio]) -> float:
    """How many single crochets the same is about."""
    return sum(ratios[kind].times * many for kind, many in amounts.items())


def unit_of(groups: Iterable[Group], ratios: Mapping[str, Ratio]) -> float:
    """What one single crochet takes by what was measured in all; 0 where that says nothing."""
    measured = made = 0.0
    for group in groups:
        measured += sum(group.measured)
        made += sum(singles(row, ratios) for row in group.rows)
    return measured / made if measured > 0 and made > 0 else 0.0


def fit(groups: Sequence[Group], ratios: Mapping[str, Ratio]) -> Estimate | None:
    """Fit every kind in ``ratios``; None where nothing was measured."""
    unit = unit_of(groups, ratios)
    if not unit:
        return None
    kinds = tuple(ratios)
    rows, goals = _whitened(groups, kinds)
    measurements = len(rows)
    for kind in kinds:
        rows.append(_belief(kind, ratios, unit))
        goals.append(0.0)
    gram, moment = normal(rows, goals)
    found = least_squares(gram, moment)
    misses = [dot(row, found) - goal for row, goal in zip(rows, goals, strict=True)]
    freedom = BELIEF + measurements - 1
    lower, free = _error(gram, found, kinds)
    return Estimate(
        likely=dict(zip(kinds, found, strict=False)),
        freedom=freedom,
        scatter=(BELIEF + dot(misses, misses)) / freedom,
        _lower=lower,
        _free=free,
    )


def _whitened(
    groups: Sequence[Group], kinds: Sequence[str]
) -> tuple[list[list[float]], list[float]]:
    """All measurements as equations with errors of 1 that do not go together.

    The last unknown is what one single crochet takes.
    """
    rows: list[list[float]] = []
    goals: list[float] = []
    for group in groups:
        lower = root(group.errors)
        goals += forward(lower, group.measured)
        columns = [forward(lower, [row.get(kind, 0.0) for row in group.rows]) for kind in kinds]
        rows += [[*row, 0.0] for row in zip(*columns, strict=True)]
    return rows, goals


def _belief(kind: str, ratios: Mapping[str, Ratio], unit: float) -> list[float]:
    """The equation that holds a kind near its ratio."""
    ratio = ratios[kind]
    error = ratio.spread * ratio.times * unit
    return [*((1 / error if other == kind else 0.0) for other in ratios), -ratio.times / error]


def _error(gram: Matrix, found: Vector, kinds: Sequence[str]) -> tuple[Matrix, tuple[str, ...]]:
    """The root of the covariance' inverse, of the kinds that are not held at 0.

    The single crochet's unknown comes first, so that it drops out of every forward solution.
    """
    free = [k for k, value in enumerate(found) if value > 0]
    order = sorted(free, key=lambda k: k < len(kinds))
    lower = root(part(gram, order))
    cut = len(free) - sum(k < len(kinds) for k in free)
    return [row[cut:] for row in lower[cut:]], tuple(kinds[k] for k in order[cut:])
