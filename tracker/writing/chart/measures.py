"""How wide and how high each sign is, in widths of a single crochet."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.dictionary import base_of
from tracker.writing.chart.knots import Knot

_HEIGHTS = {
    "ch": 0.55,
    "sl st": 0.6,
    "sc": 1.05,
    "hdc": 1.4,
    "dc": 1.9,
    "tr": 2.5,
    "dtr": 3.1,
    "trtr": 3.7,
    "own": 1.7,
    "space": 0.0,
    "rise": 0.0,
}
_TALL = 1.9
CHAIN = 0.66
"""Length of one chain's sign."""

RISE = 0.75
NUMBER = 1.5
"""Room for a beginning chain, and for a round's number."""


def number_of(label: str) -> str:
    """The number alone of "Rnd 7"; "" where there is none."""
    last = label.rpartition(" ")[2]
    return last if last.isdigit() else ""


def half_of(number: str) -> float:
    """Half the width of the field that a round's number stands in."""
    return 0.3 + 0.24 * len(number)


def height(knot: Knot) -> float:
    """From foot to head."""
    base = base_of(knot.sign)
    if knot.loop:
        return 0.25 + height(replace(knot, loop=""))
    return _HEIGHTS.get(base, _HEIGHTS.get(base.removeprefix("e"), _TALL))


def width(knot: Knot) -> float:
    """Room that each of its places needs beside others."""
    if knot.sign == "space":
        return 0.4 + 0.44 * knot.chains
    if knot.sign == "rise":
        return RISE
    if knot.sign == "own":
        return 1.15
    if knot.sign == "ch":
        return CHAIN + 0.12
    return 1.1 if knot.sign in ("bobble", "puff", "popcorn", "cl") else 0.9
