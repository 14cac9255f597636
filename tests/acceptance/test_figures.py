"""A slip of any one figure in the rounds of a demo pattern is found by the check."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

import pytest

from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern

DEMOS = {name: load_pattern(path) for name, path in library.demo_patterns().items()}
PARTS = [
    pytest.param(pattern, part, id=f"{name}: {part.name}")
    for name, pattern in DEMOS.items()
    for part in pattern.parts
    if part.rounds
]
BEGINNING = re.compile(r"[^:]*: (?:[^,;]*, )??ch (\d+)(?: \([^)]*\))?,\D*?(?:\d+ )?([a-z]+)")
"""A round that begins with a chain: its length, and the stitch that comes first."""


@dataclass(frozen=True)
class Figure:
    """A number in the rounds of a part: its line (from 0), where it begins and ends there."""

    line: int
    start: int
    end: int


def figures(rounds: str) -> Iterator[Figure]:
    """Every number, those in "sc3tog" and "ch-3 sp" too."""
    for number, line in enumerate(rounds.split("\n")):
        for found in re.finditer(r"\d+", line):
            yield Figure(number, *found.span())


def changed(rounds: str, figure: Figure, by: int) -> str:
    """The rounds with one figure raised or lowered."""
    lines = rounds.split("\n")
    line = lines[figure.line]
    value = int(line[figure.start : figure.end]) + by
    lines[figure.line] = f"{line[: figure.start]}{value}{line[figure.end :]}"
    return "\n".join(lines)


def well(pattern, part, rounds: str) -> bool:
    """Whether this part alone, with these rounds, checks clean."""
    return check_pattern(pattern._replace(parts=(part._replace(rounds=rounds),))).well


def measured(rounds: str, figure: Figure) -> bool:
    """A length in cm. It is measured on the work: no stitch shows what it should be."""
    after = rounds.split("\n")[figure.line][figure.end :]
    return re.match(r"(/\d+)* cm\b", after) is not None


def end_of_last_range(rounds: str, figure: Figure) -> bool:
    """The last number of "Rnds 5-8" in a part's last line.

    Nothing follows by whose number it could be told how many plain rounds were meant.
    """
    lines = rounds.rstrip("\n").split("\n")
    return figure.line == len(lines) - 1 and bool(
        re.fullmatch(r"(Rnds|Rows) \d+-", lines[-1][: figure.start])
    )


def lone_chain(rounds: str, figure: Figure) -> bool:
    """The length of a chain before a kind of stitch with which no other round begins.

    Where it is no stitch it only lifts the hook, so any length makes the same stitches.
    Rounds that begin with the same stitch must begin with the same chain; this one has no
    other to agree with.
    """
    lines = rounds.split("\n")
    begun = [BEGINNING.match(line) for line in lines]
    here = begun[figure.line]
    if here is None or here.span(1) != (figure.start, figure.end):
        return False
    counts = "(counts as" in lines[figure.line]
    return not counts and sum(found is not None and found[2] == here[2] for found in begun) == 1


EXCUSED = (measured, end_of_last_range, lone_chain)


def excused(part) -> list[Figure]:
    """The figures of a part for which one of the excuses holds."""
    return [
        figure
        for figure in figures(part.rounds)
        if any(excuse(part.rounds, figure) for excuse in EXCUSED)
    ]


def passed_over(pattern, part, figure: Figure, by: int) -> str:
    """The changed line, a mark before the figure, if it still checks clean; else ""."""
    rounds = changed(part.rounds, figure, by)
    if not well(pattern, part, rounds):
        return ""
    line = rounds.split("\n")[figure.line]
    return f"{line[: figure.start]}>>>{line[figure.start :]}"


@pytest.mark.parametrize(("pattern", "part"), PARTS)
def test_each_part_alone_checks_clean(pattern, part):
    assert well(pattern, part, part.rounds)


@pytest.mark.parametrize("by", [1, -1])
@pytest.mark.parametrize(("pattern", "part"), PARTS)
def test_any_figure_changed_makes_the_check_differ(pattern, part, by):
    held = [figure for figure in figures(part.rounds) if figure not in excused(part)]
    found = [passed_over(pattern, part, figure, by) for figure in held]
    assert [line for line in found if line] == []


@pytest.mark.parametrize(("pattern", "part"), PARTS)
def test_no_figure_is_excused_that_the_check_would_find(pattern, part):
    for figure in excused(part):
        assert any(passed_over(pattern, part, figure, by) for by in (1, -1)), figure
