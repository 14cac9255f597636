"""A line of our own, and what a source in the trade says such a line takes and makes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker import check_text

Below = int | tuple[int, ...] | None


@dataclass(frozen=True)
class Case:
    """One check.

    Attributes:
        id: names the check.
        text: own lines; what is checked is the last round of them.
        makes: stitches it leaves, one figure or one a size; None where only ``made`` counts.
        source: where the habit or the figure was read.
        below: stitches of the round below the first line.
        takes: places it uses of the round below; None where not compared.
        verdict: what the check must say; "unstated" since most lines print no figure, so
            that the count cannot be copied from the line.
        made: stitches and chain spaces by US name, where they matter.
        terms: "US" or "UK".
    """

    id: str
    text: str
    makes: int | tuple[int, ...] | None
    source: str
    below: Below = None
    takes: int | tuple[int, ...] | None = None
    verdict: str = "unstated"
    made: Mapping[str, int] = field(default_factory=dict)
    terms: str = "US"

    def __str__(self) -> str:
        return self.id


def rounds(text: str, *, terms: str = "US", below: Below = None) -> list[Any]:
    """Every round that the check finds in the text, in order."""
    check = check_text(text, terms=terms, below=below)
    return [found for part in check.parts for found in part.rounds]


def last(text: str, *, terms: str = "US", below: Below = None) -> Any:
    """The last round of the text."""
    found = rounds(text, terms=terms, below=below)
    assert found, f"no round found in {text!r}"
    return found[-1]


def figures(count: int | tuple[int, ...]) -> tuple[int, ...]:
    """One figure or one a size, always as a tuple."""
    return count if isinstance(count, tuple) else (count,)


def hold(case: Case) -> None:
    """Assert that the check says of the case's last round what the source says."""
    found = last(case.text, terms=case.terms, below=case.below)
    said = "\n".join(str(message) for message in found.messages) + f"\n({case.source})"
    assert found.verdict == case.verdict, said
    if case.makes is not None:
        assert found.makes == figures(case.makes), said
    if case.takes is not None:
        assert found.takes == figures(case.takes), said
    for name, count in case.made.items():
        assert found.made.get(name) == (count,), f"{name} in {dict(found.made)}\n{said}"
