"""Checking a text or a pattern: every round read, worked in every size, and judged."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.effort import Effort
from tracker.notation.definitions import define, split_definitions
from tracker.notation.lexicon import Lexicon
from tracker.notation.sizes import sizes_in
from tracker.notation.tree import Figure
from tracker.pattern.checked import Check, CheckedPart, CheckedRound
from tracker.pattern.house import House
from tracker.pattern.model import Part, Pattern, Worked
from tracker.pattern.part_checker import PartChecker

__all__ = ["Check", "CheckedPart", "CheckedRound", "check_pattern", "check_text"]


def check_text(text: str, *, terms: str = "US", below: int | Sequence[int] | None = None) -> Check:
    """Check instructions as people write them.

    Args:
        text: the lines; a paragraph under a heading such as "Special stitches:" defines
            stitches.
        terms: "US" or "UK".
        below: stitches that the first round is worked into, one figure or one a size;
            None where it begins from nothing.

    Raises:
        ValueError: ``terms`` is neither "US" nor "UK", or ``below`` is negative.
    """
    figures = _figures(below)
    if terms not in ("US", "UK"):
        raise ValueError(f'terms must be "US" or "UK", not {terms!r}')
    definitions, rest = split_definitions(text)
    lexicon = Lexicon(terms)
    define(definitions, lexicon)
    sizes = max(len(figures), sizes_in(rest))
    rounds = PartChecker(lexicon, sizes, figures).check(rest)
    return Check((CheckedPart("", tuple(rounds)),), sizes)


def _figures(below: int | Sequence[int] | None) -> Figure:
    figures = () if below is None else (below,) if isinstance(below, int) else tuple(below)
    if any(n < 0 for n in figures):
        raise ValueError("below must not be negative")
    return figures


def check_pattern(pattern: Pattern) -> Check:
    """Check every part of a pattern, in every size. Line numbers are those of its file."""
    sizes = max(1, len(pattern.sizes))
    parts = []
    effort = Effort()
    for part in pattern.parts:
        rounds = part_checker(pattern, part, effort).check(part.rounds)
        parts.append(CheckedPart(part.name, tuple(rounds)))
    return Check(tuple(parts), sizes)


def part_checker(pattern: Pattern, part: Part, effort: Effort | None = None) -> PartChecker:
    """What checks a part of a pattern in every size. ``effort``: what may be spent on it."""
    return PartChecker(
        lexicon_of(pattern),
        max(1, len(pattern.sizes)),
        part.below,
        rows=part.worked is Worked.ROWS,
        offset=part.rounds_line - 1,
        house=House(pattern.sizes),
        effort=effort,
    )


def lexicon_of(pattern: Pattern) -> Lexicon:
    """The words for stitches of a pattern."""
    lexicon = Lexicon(pattern.terms, pattern.stitches)
    lexicon.rings.update(ring.lower() for ring in pattern.rings)
    return lexicon
