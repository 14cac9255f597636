"""The little linear algebra that an estimate needs: a dozen unknowns, no library.

A numeric library would do it too, but loading one takes longer and more memory than all of
the program, for matrices of ten rows. The tests hold it against such a library.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

Vector = Sequence[float]
Matrix = Sequence[Sequence[float]]

TINY = 1e-12
"""A pivot smaller than this share of its diagonal makes a matrix singular."""

ROUNDS = 30
"""Exchanges for each unknown, at the most; three are usual."""


def dot(one: Vector, other: Vector) -> float:
    """The sum of products."""
    return sum(a * b for a, b in zip(one, other, strict=True))


def root(matrix: Matrix) -> list[list[float]]:
    """The lower triangle L with L Lᵀ = ``matrix``, which is symmetric.

    Raises:
        ArithmeticError: the matrix is not positive definite.
    """
    lower: list[list[float]] = []
    for i, row in enumerate(matrix):
        done: list[float] = []
        for j in range(i):
            done.append((row[j] - dot(done, lower[j][:j])) / lower[j][j])
        pivot = row[i] - dot(done, done)
        if not pivot > TINY * abs(row[i]):
            raise ArithmeticError("not positive definite")
        lower.append([*done, sqrt(pivot)])
    return lower


def forward(lower: Matrix, right: Vector) -> list[float]:
    """The x with L x = ``right``."""
    found: list[float] = []
    for row, value in zip(lower, right, strict=True):
        found.append((value - dot(found, row[: len(found)])) / row[len(found)])
    return found


def backward(lower: Matrix, right: Vector) -> list[float]:
    """The x with Lᵀ x = ``right``."""
    size = len(lower)
    found = [0.0] * size
    for i in reversed(range(size)):
        rest = sum(lower[j][i] * found[j] for j in range(i + 1, size))
        found[i] = (right[i] - rest) / lower[i][i]
    return found


def solve(matrix: Matrix, right: Vector) -> list[float]:
    """The x with ``matrix`` x = ``right``. Raises ArithmeticError, as `root`."""
    lower = root(matrix)
    return backward(lower, forward(lower, right))


def part(matrix: Matrix, of: Sequence[int]) -> list[list[float]]:
    """The rows and columns ``of`` a matrix."""
    return [[matrix[i][j] for j in of] for i in of]


def normal(rows: Matrix, goals: Vector) -> tuple[list[list[float]], list[float]]:
    """AᵀA and Aᵀb of the equations A x = b."""
    columns = list(zip(*rows, strict=True))
    gram = [[dot(one, other) for other in columns] for one in columns]
    return gram, [dot(column, goals) for column in columns]


def least_squares(gram: Matrix, moment: Vector) -> list[float]:
    """The x, none of it below 0, that makes ½ xᵀ ``gram`` x - ``moment`` x smallest.

    With the `normal` equations of A x = b: non-negative least squares. It frees one unknown
    after the other and holds back what would fall below 0, until no step makes it better
    (the active set method of Lawson and Hanson, Solving Least Squares Problems, 1974,
    chapter 23); so the answer is the exact one, up to rounding.

    Raises:
        ArithmeticError: unknowns cannot be told apart.
    """
    found = [0.0] * len(moment)
    free: list[int] = []
    least = TINY * max((abs(value) for value in moment), default=0.0)
    for _ in range(ROUNDS * len(moment)):
        slopes = [value - dot(row, found) for row, value in zip(gram, moment, strict=True)]
        worth = [k for k, slope in enumerate(slopes) if k not in free and slope > least]
        if not worth:
            break
        free.append(max(worth, key=slopes.__getitem__))
        found, free = _settled(gram, moment, found, free)
    return found


def _settled(
    gram: Matrix, moment: Vector, found: list[float], free: list[int]
) -> tuple[list[float], list[int]]:
    """The best point with only these unknowns free; those that it would bring below 0 held."""
    while free:
        best = solve(part(gram, free), [moment[k] for k in free])
        below = [k for k, value in zip(free, best, strict=True) if value <= 0]
        goal = [0.0] * len(moment)
        for k, value in zip(free, best, strict=True):
            goal[k] = value
        if not below:
            return goal, free
        share = min(found[k] / (found[k] - goal[k]) if found[k] else 0.0 for k in below)
        found = [now + share * (then - now) for now, then in zip(found, goal, strict=True)]
        stopped = [k for k in below if found[k] <= TINY * max(found)]
        free = [k for k in free if k not in (stopped or below)]
        found = [value if k in free else 0.0 for k, value in enumerate(found)]
    return found, free
