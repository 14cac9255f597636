"""What a stitch takes of yarn and time: pieces of known truth."""

from fractions import Fraction

import pytest

from tests.measure.simulated import time_ahead, yarn_ahead
from tracker.measure import pace, yarn
from tracker.measure.pace import Stretch, fit_pace
from tracker.measure.yarn import Weighing, fit_yarn

PIECES = 400


def told(pieces):
    """The share of intervals that hold the truth, and how wide half of them are at the most."""
    known = [(true, found) for true, found in pieces if found]
    assert len(known) > 0.95 * PIECES
    held = sum(found.low <= true <= found.high for true, found in known)
    widths = sorted((found.high - found.low) / 2 / true for true, found in known)
    return held / len(known), widths[len(widths) // 2]


@pytest.mark.parametrize("weighings", [2, 4, 8, None])
def test_the_true_yarn_lies_in_nine_of_ten_intervals(weighings):
    share, width = told([yarn_ahead(seed, weighings) for seed in range(PIECES)])
    assert 0.85 <= share <= 0.97
    assert width < 0.2


@pytest.mark.parametrize("sittings", [1, 3, 8, None])
def test_the_true_time_lies_in_nine_of_ten_intervals(sittings):
    share, width = told([time_ahead(seed, sittings) for seed in range(PIECES)])
    assert 0.85 <= share <= 0.97
    assert width < 0.4


def test_more_weighings_narrow_the_interval():
    few = told([yarn_ahead(seed, 2) for seed in range(PIECES)])[1]
    many = told([yarn_ahead(seed, 8) for seed in range(PIECES)])[1]
    assert many < few / 2


def test_kinds_are_told_apart_where_the_weighings_tell_them_apart():
    """By rounds of one kind each, whatever the table says of them."""
    true, made, left, kept = {"sc": 0.05, "dc": 0.06}, {"sc": 0.0, "dc": 0.0}, 200.0, []
    for number in range(12):
        kept.append(Weighing(Fraction(left).limit_denominator(10**6), Fraction(1, 10), dict(made)))
        kind = ("sc", "dc")[number % 2]
        made[kind] += 200
        left -= 200 * true[kind]
    estimate = fit_yarn(kept, {kind: yarn.RATIOS[kind] for kind in true})
    for kind, grams in true.items():
        assert estimate.each(kind).low <= grams <= estimate.each(kind).high
        assert estimate.likely[kind] == pytest.approx(grams, rel=0.06)


def test_nothing_is_pretended_before_there_are_two_weighings():
    ratios = {"sc": yarn.RATIOS["sc"]}
    one = Weighing(Fraction(50), Fraction(1), {"sc": 100.0})
    assert fit_yarn([], ratios) is None
    assert fit_yarn([one], ratios) is None
    assert fit_yarn([one, one], ratios) is None
    assert fit_pace([], ratios) is None
    assert fit_pace([[Stretch({"sc": 19.0}, 300.0)]], ratios) is None


def test_a_ball_that_was_added_is_not_taken_for_yarn_worked_backwards():
    ratios = {"sc": yarn.RATIOS["sc"]}
    reading = ((50, 0), (40, 100), (140, 200), (130, 300))
    kept = [Weighing(Fraction(g), Fraction(1, 10), {"sc": float(n)}) for g, n in reading]
    assert fit_yarn(kept, ratios).likely["sc"] == pytest.approx(0.1)


def test_rounds_that_were_jumped_over_are_no_pace():
    worked = [Stretch({"sc": 30.0}, 240.0)] * 4
    jumped = [Stretch({"sc": 300.0}, 20.0)]
    ratios = {"sc": pace.RATIOS["sc"]}
    assert fit_pace([worked + jumped], ratios).likely == fit_pace([worked], ratios).likely
