"""The standard yarn weights: gauge and hook that go with each, as guidelines."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tracker.measure.reference import reference

GUIDELINE = "Guidelines only: the pattern's own gauge comes first, and the bands overlap."


@dataclass(frozen=True, slots=True)
class YarnWeight:
    """One class of yarn.

    Attributes:
        number, name: as the standard has them: 4, "Medium".
        kinds: other words for it.
        from_sts, to_sts: single crochet (US) in 4 in (10 cm).
        from_mm, to_mm: hooks advised; ``to_mm`` None for "and larger".
        note: where copies of the table differ; may be empty.
    """

    number: int
    name: str
    kinds: str
    from_sts: int
    to_sts: int
    from_mm: Fraction
    to_mm: Fraction | None
    note: str

    def takes_hook(self, mm: Fraction) -> bool:
        """Whether a hook of so many mm is one of those advised."""
        return self.from_mm <= mm and (self.to_mm is None or mm <= self.to_mm)


def yarn_weights() -> tuple[YarnWeight, ...]:
    """All of them, from fine to thick."""
    return tuple(
        YarnWeight(
            number=row["class"],
            name=row["name"],
            kinds=row["kinds"],
            from_sts=row["from_sts"],
            to_sts=row["to_sts"],
            from_mm=row["from_mm"],
            to_mm=row.get("to_mm"),
            note=row.get("note", ""),
        )
        for row in reference("yarn_weights")["weight"]
    )


def yarn_sources() -> tuple[str, ...]:
    """Where the table was read, and the copies that differ."""
    table = reference("yarn_weights")
    return table["source"], table["others"]


def weights_at(sts: Fraction) -> tuple[YarnWeight, ...]:
    """The classes whose band a gauge in single crochet lies in: bands overlap, so often two."""
    return tuple(one for one in yarn_weights() if one.from_sts <= sts <= one.to_sts)


def weights_for_hook(mm: Fraction) -> tuple[YarnWeight, ...]:
    """The classes for which a hook of so many mm is advised."""
    return tuple(one for one in yarn_weights() if one.takes_hook(mm))
