"""Flat circles: the counts of rounds 1 to 10 in sc, hdc and dc.

Source: https://garturstitchfarmshop.com/blogs/blog/crocheting-a-flat-circle gives rounds
1 to 5 for the three stitches; the same rule (one increase more of plain stitches between
increases each round) continues them. The printed figures are left out of the lines.
"""

from __future__ import annotations

import pytest

from .case import last, rounds

COUNTS = {
    "sc": [6, 12, 18, 24, 30, 36, 42, 48, 54, 60],
    "hdc": [8, 16, 24, 32, 40, 48, 56, 64, 72, 80],
    "dc": [12, 24, 36, 48, 60, 72, 84, 96, 108, 120],
}
ROUNDS = [(stitch, number) for stitch in COUNTS for number in range(1, 11)]


def spiral(stitch: str, number: int) -> str:
    """Round ``number`` of a disc worked in a spiral."""
    sections = COUNTS[stitch][0]
    if number == 1:
        return f"Rnd 1: {sections} {stitch} in ring."
    if number == 2:
        return f"Rnd 2: 2 {stitch} in each st around."
    plain = f"next {number - 2} sts" if number > 3 else "next st"
    return f"Rnd {number}: [{stitch} in {plain}, 2 {stitch} in next st] x {sections}."


def joined(number: int) -> str:
    """Round ``number`` of a dc disc in joined rounds, where ch 3 counts as a dc."""
    if number == 1:
        return "Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join."
    if number == 2:
        return "Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join."
    between = f"dc in each of next {number - 2} sts" if number > 3 else "dc in next st"
    after_chain = {3: "", 4: "dc in next st, "}.get(
        number, f"dc in each of next {number - 3} sts, "
    )
    return (
        f"Rnd {number}: Ch 3, {after_chain}2 dc in next st, "
        f"*{between}, 2 dc in next st; rep from * around; join."
    )


def uncounted(stitch: str, number: int) -> str:
    """Round ``number`` in joined rounds, where the beginning chain is no stitch."""
    sections = COUNTS[stitch][0]
    if number == 1:
        return f"Rnd 1: Ch 1 (does not count as a st), {sections} {stitch} in ring; join."
    if number == 2:
        return f"Rnd 2: Ch 1, 2 {stitch} in each st around; join with sl st in first {stitch}."
    plain = f"each of next {number - 2} sts" if number > 3 else "next st"
    return (
        f"Rnd {number}: Ch 1, *2 {stitch} in next st, {stitch} in {plain}; rep from * around; join."
    )


@pytest.mark.parametrize(("stitch", "number"), ROUNDS)
def test_a_round_of_a_spiral_disc(stitch: str, number: int) -> None:
    text = "\n".join(spiral(stitch, n) for n in range(1, number + 1))
    found = last(text)
    assert found.verdict == "unstated"
    assert found.makes == (COUNTS[stitch][number - 1],)
    assert found.made == {stitch: (COUNTS[stitch][number - 1],)}
    if number > 1:
        assert found.takes == (COUNTS[stitch][number - 2],)


@pytest.mark.parametrize("stitch", ["sc", "hdc"])
def test_a_joined_disc_with_a_beginning_chain_that_is_no_stitch(stitch: str) -> None:
    found = rounds("\n".join(uncounted(stitch, n) for n in range(1, 11)))
    assert [r.makes for r in found] == [(n,) for n in COUNTS[stitch]]


def test_a_joined_disc_with_a_beginning_chain_that_counts() -> None:
    found = rounds("\n".join(joined(n) for n in range(1, 11)))
    assert [r.makes for r in found] == [(n,) for n in COUNTS["dc"]]


@pytest.mark.parametrize("stitch", COUNTS)
def test_a_figure_one_off_is_told(stitch: str) -> None:
    wrong = COUNTS[stitch][5] + 1
    found = last(spiral(stitch, 6) + f" ({wrong})", below=COUNTS[stitch][4])
    assert found.verdict == "differs"
    assert found.makes == (COUNTS[stitch][5],)
