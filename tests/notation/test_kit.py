"""Brackets and figures, as the reader meets them."""

from __future__ import annotations

import pytest

from tracker.notation.kit import Kit


def closing_of(text: str, at: int) -> int:
    kit = Kit(text)
    kit.at = at
    return kit.closing()


@pytest.mark.parametrize(
    ("text", "at", "closing"),
    [
        ("(sc)", 0, 2),
        ("(sc [dc] sc)", 0, 6),
        ("(sc [dc] sc)", 2, 4),
        ("(sc", 0, -1),
        ("(sc]", 0, -1),
        ("sc)", 0, -1),
    ],
)
def test_a_bracket_is_closed_by_the_one_that_fits(text: str, at: int, closing: int) -> None:
    assert closing_of(text, at) == closing


@pytest.mark.parametrize(
    ("text", "depth"),
    [
        ("sc", 0),
        ("(sc)", 1),
        ("(sc) [dc]", 1),
        ("(sc [dc] {tr})", 2),
        ("((((sc", 0),
        ("(" * 40 + ")" * 40, 40),
    ],
)
def test_depth_counts_closed_brackets_in_one_another(text: str, depth: int) -> None:
    assert Kit(text).depth() == depth


@pytest.mark.parametrize(
    ("text", "sizes", "figure"),
    [
        ("8", 1, (8,)),
        ("eight", 1, (8,)),
        ("8 (9, 10)", 1, (8,)),
        ("8 (9, 10)", 3, (8, 9, 10)),
        ("8 [9; 10]", 3, (8, 9, 10)),
        ("8/9/10", 3, (8, 9, 10)),
        ("8 (9, 10)", 2, (8,)),
        ("8 (sc, dc)", 3, (8,)),
    ],
)
def test_a_figure_is_read_for_all_sizes_or_for_one(
    text: str, sizes: int, figure: tuple[int, ...]
) -> None:
    assert Kit(text, sizes).accept_figure() == figure


def test_a_bracket_that_is_no_list_of_sizes_stays_to_be_read() -> None:
    kit = Kit("8 (9, 10)", 2)
    kit.accept_figure()
    assert kit.here.text == "("
