"""What ``hookside size`` found, and the same as plain data."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tracker.cli_tables import hook_data
from tracker.measure.crown import Crown
from tracker.measure.gauge import Ease
from tracker.measure.heads import Head
from tracker.measure.hooks import Hook
from tracker.measure.units import CM, shown
from tracker.pattern.finished import Finished
from tracker.pattern.model import Pattern
from tracker.pattern.ruler import Ruler
from tracker.pattern.sizing import Body, Choice, Sized


@dataclass(frozen=True, slots=True)
class Told:
    """All that is told.

    Attributes:
        pattern: the pattern.
        ruler: the swatch laid to it; ``own``: the one of the pattern's gauge, if it has one.
        sizes: the sizes asked for, by the swatch.
        planned: the same by the pattern's gauge, where another swatch was given.
        ease: what the piece shall be larger by; None where nobody said.
        heads: the tables that the bodies come from.
        fits: each body asked for with the sizes, the best first.
        hooks: what the hook asked for may be.
        unit: "cm" or "in".
        left: for a piece, what is left to the length it is worked to; "" for nothing.
    """

    pattern: Pattern
    ruler: Ruler
    own: Ruler | None
    sizes: tuple[Sized, ...]
    planned: tuple[Sized, ...]
    ease: Ease | None
    heads: tuple[Head, ...]
    fits: tuple[tuple[Body, tuple[Choice, ...]], ...]
    hooks: tuple[Hook, ...]
    unit: str
    left: str

    def show(self, cm: Fraction) -> str:
        """A length for people, in the unit that was asked for."""
        return shown(cm, self.unit)

    @property
    def over(self) -> tuple[Fraction, str]:
        """The length a swatch is told over, in cm and in words."""
        return (Fraction(10), "10 cm") if self.unit == "cm" else (4 * CM["in"], "4 in")


def as_data(told: Told) -> dict[str, Any]:
    """All of it as plain data; lengths in cm, to the hundredth of a millimetre."""
    return {
        "title": told.pattern.title,
        "swatch": {
            "stitches_in_10_cm": _figure(10 / told.ruler.swatch.stitch_cm),
            "rounds_in_10_cm": _figure(10 / told.ruler.swatch.round_cm),
            "flat_increases": _figure(told.ruler.swatch.flat_increases),
            "own": told.ruler == told.own,
        },
        "sizes": [_size_data(one) for one in told.sizes],
        "by_own_gauge": [_size_data(one) for one in told.planned],
        "fits": [_fit_data(told, body, sizes) for body, sizes in told.fits],
        "hooks": [hook_data(one) for one in told.hooks],
        "left": told.left,
    }


def _size_data(one: Sized) -> dict[str, Any]:
    return {
        "size": one.size,
        "around_cm": _figure(one.around),
        "parts": [_part_data(part) for part in one.parts],
    }


def _part_data(one: Finished) -> dict[str, Any]:
    return {
        "name": one.name,
        "rows": one.rows,
        "stitches": one.stitches,
        "wide_cm": _figure(one.wide),
        "rounds": one.rounds,
        "long_cm": _figure(one.long),
        "unsure": one.unsure,
        "crown": _crown_data(one.crown),
    }


def _crown_data(crown: Crown | None) -> dict[str, Any] | None:
    if crown is None:
        return None
    return {
        "rounds": crown.rounds,
        "stitches": crown.stitches,
        "across_cm": _figure(crown.across),
        "increases": _figure(crown.increases),
        "lies": str(crown.lies),
        "since": crown.since,
    }


def _fit_data(told: Told, body: Body, sizes: tuple[Choice, ...]) -> dict[str, Any]:
    return {
        "who": body.who,
        "low_cm": _figure(body.low),
        "middle_cm": _figure(body.middle),
        "high_cm": _figure(body.high),
        "wanted_cm": _figure((told.ease or Ease()).on(body.middle)),
        "sizes": [
            {"size": one.size, "around_cm": _figure(one.around), "ease_cm": _figure(one.ease)}
            for one in sizes
        ],
    }


def _figure(number: Fraction | None) -> float | None:
    return None if number is None else round(float(number), 3)
