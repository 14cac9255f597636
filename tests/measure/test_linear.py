"""Our small linear algebra, held against a general library."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls
from scipy.stats import t as student

from tracker.measure.linear import backward, forward, least_squares, normal, root, solve
from tracker.measure.student import quantile, reach

NUMBERS = st.floats(-100, 100, allow_subnormal=False).map(lambda x: round(x, 3))


@st.composite
def equations(draw):
    """More equations than unknowns, which can be told apart."""
    unknowns = draw(st.integers(1, 8))
    count = draw(st.integers(unknowns, unknowns + 8))
    row = st.lists(NUMBERS, min_size=unknowns, max_size=unknowns)
    rows = draw(st.lists(row, min_size=count, max_size=count))
    singular = np.linalg.svd(np.array(rows), compute_uv=False)
    assume(singular[-1] > 1e-3 * singular[0] > 0)
    return rows, draw(st.lists(NUMBERS, min_size=count, max_size=count))


@settings(max_examples=200, deadline=None)
@given(equations())
def test_non_negative_least_squares_agrees_with_the_library(given_equations):
    rows, goals = given_equations
    expected, _ = nnls(np.array(rows), np.array(goals))
    found = least_squares(*normal(rows, goals))
    assert min(found) >= 0
    assert found == pytest.approx(expected, rel=1e-5, abs=1e-5 * (1 + max(expected)))


@settings(max_examples=100, deadline=None)
@given(equations())
def test_solving_agrees_with_the_library(given_equations):
    gram, moment = normal(*given_equations)
    expected = np.linalg.solve(np.array(gram), np.array(moment))
    assert solve(gram, moment) == pytest.approx(expected, rel=1e-4, abs=1e-6)


@settings(max_examples=100, deadline=None)
@given(equations())
def test_the_root_undoes_itself_both_ways(given_equations):
    gram, moment = normal(*given_equations)
    lower = root(gram)
    whole = np.array([[*row, *[0.0] * (len(lower) - len(row))] for row in lower])
    assert whole @ np.array(forward(lower, moment)) == pytest.approx(moment, rel=1e-6, abs=1e-6)
    assert whole.T @ np.array(backward(lower, moment)) == pytest.approx(moment, rel=1e-6, abs=1e-6)


def test_what_cannot_be_told_apart_is_said():
    with pytest.raises(ArithmeticError):
        solve([[1.0, 1.0], [1.0, 1.0]], [1.0, 2.0])


@pytest.mark.parametrize("freedom", [3, 4, 5, 7, 10, 20, 60, 500])
def test_intervals_reach_as_far_as_students_distribution(freedom):
    assert quantile(0.95, freedom) == pytest.approx(student.ppf(0.95, freedom), abs=0.01)
    assert quantile(0.9, freedom) == pytest.approx(student.ppf(0.9, freedom), abs=0.01)
    assert reach(freedom) == quantile(0.95, freedom)
