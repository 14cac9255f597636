"""Lengths in words, and the rounds left to one."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tracker.measure.length import Measured, Since, rounds_left, target_in
from tracker.pattern.load import load_text
from tracker.pattern.plan import make_plans


@pytest.mark.parametrize(
    ("words", "length", "since"),
    [
        ("until piece measures 15 cm from the ring", "15 cm", Since.START),
        ("Rep this rnd until piece measures 6 1/2 in from beginning", "6.5 in", Since.START),
        ('until hat measures 7" from the centre of the crown', "7 in", Since.START),
        ("until it is 20 cm long", "20 cm", Since.START),
        ("until piece is 9cm tall", "9 cm", Since.START),
        ("for 5 cm", "5 cm", Since.HERE),
        ("until it measures 4 cm more", "4 cm", Since.HERE),
        ("until the cuff measures 30 mm from the last increase", "30 mm", Since.ELSEWHERE),
        ("until sleeve measures 40 cm from the armhole", "40 cm", Since.ELSEWHERE),
    ],
)
def test_the_length_in_the_words_that_end_a_round(words, length, since):
    found = target_in(words)
    assert (str(found.length), found.since) == (length, since)


@pytest.mark.parametrize("words", ["", "until desired length", "until it fits", "for 5 rounds"])
def test_where_no_length_is_said_there_is_none(words):
    assert target_in(words) is None


def test_the_swatch_alone_tells_until_something_is_measured():
    found = rounds_left(Fraction(15), Fraction(12), Fraction(1), whole=True)
    assert (found.rounds, found.now, found.corrected) == (3, 12, False)


def test_one_measure_makes_all_rounds_taller():
    # 10 rounds of 1 cm by the swatch are 12.5 cm: each is 1.25 cm, so 2 bring it to 15
    found = rounds_left(Fraction(15), Fraction(10), Fraction(1), [M(10, "12.5")], whole=True)
    assert (found.rounds, found.corrected) == (2, True)


def test_measures_far_apart_tell_of_the_rounds_between_them():
    taken = [M(10, 10), M(16, 13)]
    found = rounds_left(Fraction(18), Fraction(18), Fraction(1), taken, whole=True)
    assert (found.rounds, found.now) == (8, 14)


def test_measures_close_together_do_not():
    taken = [M(10, 10), M(11, "11.5")]
    found = rounds_left(Fraction(15), Fraction(11), Fraction(1), taken, whole=True)
    assert found.rounds == 3


def test_a_length_from_elsewhere_waits_for_a_measure():
    assert rounds_left(Fraction(15), Fraction(10), Fraction(1), whole=False) is None
    found = rounds_left(Fraction(15), Fraction(12), Fraction(1), [M(10, 11)], whole=False)
    assert (found.rounds, found.now) == (2, 13)


def test_without_a_swatch_only_measures_tell():
    assert rounds_left(Fraction(15), Fraction(10), Fraction(1), whole=True, swatch=False) is None
    taken = [M(10, 5)]
    found = rounds_left(Fraction(15), Fraction(12), Fraction(1), taken, whole=True, swatch=False)
    assert (found.rounds, found.now) == (18, 6)


def M(reckoned, cm):  # noqa: N802 - short, for the tables above
    return Measured(Fraction(reckoned), Fraction(cm))


@given(
    st.fractions(Fraction(1, 5), 3, max_denominator=100),
    st.fractions(Fraction(1, 5), 3, max_denominator=100),
    st.integers(1, 60),
    st.integers(0, 60),
    st.integers(0, 60),
)
def test_a_piece_that_grows_evenly_is_foretold_exactly(swatch, real, first, on, more):
    """Whatever the swatch said, a true measure of an even fabric gives the true rest."""
    assume(real / swatch < 100)
    target = (first + on + more) * real
    found = rounds_left(
        target, (first + on) * swatch, swatch, [Measured(first * swatch, first * real)], whole=True
    )
    assert (found.rounds, found.now) == (more, (first + on) * real)


@given(
    st.lists(st.tuples(st.integers(1, 500), st.integers(1, 500)), max_size=6),
    st.integers(0, 500),
    st.booleans(),
    st.booleans(),
)
def test_no_measures_whatever_bring_a_fault(taken, reckoned, whole, swatch):
    measures = [M(*pair) for pair in taken]
    found = rounds_left(
        Fraction(50), Fraction(reckoned), Fraction(1), measures, whole=whole, swatch=swatch
    )
    assert found is None or found.rounds >= 0


SIZED = """\
title = "Fen sleeve"
sizes = ["one", "two", "three"]
[[part]]
name = "Sleeve"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: sc in each st around {until}.
'''
"""


@pytest.mark.parametrize(
    ("until", "lengths"),
    [
        ("until piece measures 6 (6 1/2, 7) in from beginning", ["6 in", "6.5 in", "7 in"]),
        ("until piece measures 6 (6½, 7) inches", ["6 in", "6.5 in", "7 in"]),
        ("until piece measures 15.5 (16, 17.5) cm", ["15.5 cm", "16 cm", "17.5 cm"]),
        ("until piece measures 15 (16) [17] cm", ["15 cm", "16 cm", "17 cm"]),
        ("until piece measures 15, 16, 17 cm", ["15 cm", "16 cm", "17 cm"]),
        ("until piece measures 15/16/17 cm", ["15 cm", "16 cm", "17 cm"]),
        ("for 5 (6, 7) cm", ["5 cm", "6 cm", "7 cm"]),
        ('until piece measures 6 1/2" from start', ["6.5 in"] * 3),
        ("until piece measures 15 cm [6 in]", ["15 cm"] * 3),
        ("until piece measures 12-13 cm", [None] * 3),
        ("until piece measures 15, 16 cm", [None] * 3),
    ],
)
def test_each_size_is_told_its_own_length(until, lengths):
    plans = make_plans(load_text(SIZED.format(until=until)))
    rounds = [plan.parts[0].rounds[1] for plan in plans]
    assert [one.verdict for one in rounds] == ["open"] * 3
    found = [target_in(one.until) for one in rounds]
    assert [one and str(one.length) for one in found] == lengths


@pytest.mark.parametrize(
    ("again", "length"),
    [
        ("Rep this rnd until piece measures 18 cm from the ring", "18 cm"),
        ("Repeat last round for 5 cm", "5 cm"),
        ("Rep this rnd until work is 8.5 cm long", "8.5 cm"),
        ('Repeat the previous round until it measures 6 1/2"', "6.5 in"),
        ("Rep this rnd until desired length", None),
    ],
)
def test_a_round_repeated_to_a_length_is_one_round_of_open_length(again, length):
    source = SIZED.replace('sizes = ["one", "two", "three"]\n', "")
    (plan,) = make_plans(load_text(source.format(until=f"; join. {again}")))
    assert [one.label for one in plan.parts[0].rounds] == ["Rnd 1", "Rnd 2"]
    found = plan.parts[0].rounds[1]
    target = target_in(found.until)
    assert (found.verdict, target and str(target.length)) == ("open", length)
