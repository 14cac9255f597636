"""How much yarn a stitch takes, from weighing what is left of it now and then."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from tracker.measure.estimate import Amounts, Estimate, Group, Range, Ratio, Table, fit, singles
from tracker.measure.units import GRAMS, read_weight

RATIOS: Mapping[str, Ratio] = {
    "ch": Ratio(0.48, 0.2),
    "sc": Ratio(1.0, 0.2),
    "hdc": Ratio(1.48, 0.2),
    "dc": Ratio(1.92, 0.2),
    "tr": Ratio(2.4, 0.3),
    "dtr": Ratio(2.9, 0.3),
    "trtr": Ratio(3.4, 0.3),
    "sl st": Ratio(0.5, 0.4),
}
"""Yarn of one stitch, in single crochets, by US names.

Chain to double crochet: one maker's rows of 5 in, 25.5, 53, 78.5 and 102 in of yarn
(https://www.windchilde.com/bluedepth/tag/crochet/); one maker, one yarn, hence the spread.
Taller ones go on by as much a step, and a slip stitch is taken for a chain: our own
assumptions, no source.
"""

SPECIAL = Ratio(3.0, 0.6)
"""A stitch of which nothing is known. Our own assumption, no source."""

TABLE = Table(RATIOS, SPECIAL, shared=RATIOS["ch"].times)

WANDERS = 0.8
"""How the yarn in n single crochets scatters: variance over that of one, for each of them.

A hand that is 5 % looser or tighter for some 300 stitches at a time. Our own assumption, no
source; what is measured corrects it.
"""

KEPT = 60
"""Weighings that are used, the latest; more would only cost time."""


@dataclass(frozen=True, slots=True)
class Weighing:
    """What was left of a yarn, all balls of it together.

    Attributes:
        grams: as weighed; exact.
        step: the step of the scale, in grams: 1 for "43 g", 1/10 for "43.5 g".
        made: how many stitches of each kind the piece had of it then.
    """

    grams: Fraction
    step: Fraction
    made: Amounts


def read_scale(text: str) -> tuple[Fraction, Fraction]:
    """A weight as the maker wrote it, and the step of the scale that showed it, in grams.

    The step is that of the last figure: 1 g of "43 g", 1/10 g of "43.5 g", 1/4 oz of
    "1 3/4 oz". Raises `ValueError`, see `units.read_weight`; for one below 0 too.
    """
    amount = read_weight(text)
    if amount.number < 0:
        raise ValueError(f"{amount} is less than nothing")
    figures = text.strip().replace(",", ".")
    places = re.match(r"\d+\.(\d+)", figures)
    parts = re.search(r"\d/(\d+)", figures)
    finest = 10 ** len(places[1]) if places else int(parts[1]) if parts else 1
    return amount.grams, GRAMS[amount.unit] / finest


def fit_yarn(weighings: Sequence[Weighing], ratios: Mapping[str, Ratio]) -> Estimate | None:
    """Grams for each kind; None where no two weighings tell anything.

    A yarn that weighs more than before, or a piece that has less of it, begins anew: yarn
    was added, or work ripped back.
    """
    groups = [
        group
        for chain in _chains(weighings[-KEPT:], ratios)
        if (group := _group(chain, ratios)) is not None
    ]
    return fit(groups, ratios)


def needed(estimate: Estimate, ahead: Amounts, ratios: Mapping[str, Ratio]) -> Range:
    """Grams that the work ahead will take."""
    unit = _unit(estimate, ratios)
    # Less than nothing lies ahead where work was ripped back since a weighing.
    return estimate.ahead(ahead, WANDERS * unit**2 * abs(singles(ahead, ratios)))


def _unit(estimate: Estimate, ratios: Mapping[str, Ratio]) -> float:
    """Grams of one single crochet, near enough for a scatter."""
    known = [estimate.likely[kind] / ratio.times for kind, ratio in ratios.items()]
    return sum(known) / len(known) if known else 0.0


def _chains(weighings: Sequence[Weighing], ratios: Mapping[str, Ratio]) -> list[list[Weighing]]:
    chains: list[list[Weighing]] = []
    for one in weighings:
        before = chains[-1][-1] if chains else None
        made = singles(one.made, ratios) - (singles(before.made, ratios) if before else 0.0)
        if before is None or one.grams > before.grams or made < 0:
            chains.append([one])
        elif made == 0:
            # Weighed again at the same place: the later one counts.
            chains[-1][-1] = one
        else:
            chains[-1].append(one)
    return chains


def _group(chain: Sequence[Weighing], ratios: Mapping[str, Ratio]) -> Group | None:
    """The yarn used from one weighing to the next; None for a single weighing."""
    pairs = list(pairwise(chain))
    used = [float(one.grams - other.grams) for one, other in pairs]
    rows = [_between(one.made, other.made) for one, other in pairs]
    made = [singles(row, ratios) for row in rows]
    if not sum(used):
        return None
    unit = sum(used) / sum(made)
    reading = [float(one.step / 2) ** 2 for one in chain]
    errors = [[0.0] * len(rows) for _ in rows]
    for i, many in enumerate(made):
        errors[i][i] = reading[i] + reading[i + 1] + WANDERS * unit**2 * many
        if i:
            # Both have the reading between them in common, with opposite signs.
            errors[i][i - 1] = errors[i - 1][i] = -reading[i]
    return Group(rows, used, errors)


def _between(before: Amounts, after: Amounts) -> dict[str, float]:
    kinds = before.keys() | after.keys()
    return {kind: after.get(kind, 0.0) - before.get(kind, 0.0) for kind in kinds}
