"""Units against their definitions and against figures worked by a units library.

Definitions: the international yard and pound agreement of 1 July 1959 (US Federal Register
24 FR 5348): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, both exactly; NIST Special Publication
811, appendix B, lists the inch and the avoirdupois ounce that follow from them. The worked
figures were read off the library pint 0.25.3.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tracker.measure.units import (
    CM,
    GRAMS,
    Amount,
    plain,
    read_amount,
    read_length,
    read_weight,
    rounded,
    shown,
)


@pytest.mark.parametrize(
    ("text", "cm"),
    [
        ("1 in", "2.54"),  # 24 FR 5348: a thirty-sixth of the yard
        ("1 yd", "91.44"),  # 24 FR 5348
        ("4 in", "10.16"),  # pint: (4*u.inch).to('cm')
        ("15 in", "38.1"),  # the cm column of a maker's table prints 36, a slip
        ("1 m", "100"),  # SI
        ("3.5 mm", "0.35"),  # SI
        ("36 in", "91.44"),  # 36 in are a yard
    ],
)
def test_a_length_in_centimetres(text, cm):
    assert read_length(text).cm == Fraction(cm)


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        (
            "1 oz",
            "28.349523125",
        ),  # NIST SP 811, appendix B: 2.834 952 E-02 kg, exact from the pound
        ("16 oz", "453.59237"),  # 24 FR 5348: the pound
        ("1.75 oz", "49.61166546875"),  # pint: (1.75*u.oz).to('g') is 49.61
    ],
)
def test_a_weight_in_grams(text, grams):
    assert read_weight(text).grams == Fraction(grams)


@pytest.mark.parametrize(
    "text", ["17 1/2 in", "17.5 in", "17,5 inches", '17 1/2"', "17.5in.", "17½ in", "17 ½ in"]
)
def test_a_length_is_read_as_makers_write_it(text):
    assert read_amount(text) == Amount(Fraction(35, 2), "in")


def test_less_than_nothing_is_read_with_its_sign():
    assert read_amount("-2 cm").cm == -2
    assert read_amount("−1/2 in").cm == Fraction(-127, 100)


@pytest.mark.parametrize("text", ["", "cm", "44", "44 hands", "1/0 cm", "9999999 m", "4 4 cm", "x"])
def test_what_is_no_amount_is_told(text):
    with pytest.raises(ValueError, match="such as 44 cm"):
        read_amount(text)


def test_a_weight_is_no_length_and_a_length_no_weight():
    with pytest.raises(ValueError, match="43 g is no length"):
        read_length("43 g")
    with pytest.raises(ValueError, match="10 cm is no weight"):
        read_weight("10 cm")


@pytest.mark.parametrize(
    ("cm", "unit", "said"),
    [
        (Fraction(40), "cm", "40 cm"),
        (Fraction(445, 10), "cm", "44.5 cm"),
        (Fraction(127, 10), "in", "5 in"),
        (Fraction(4445, 100), "in", "17 1/2 in"),
        (Fraction(-127, 100), "in", "-1/2 in"),
        (Fraction(1, 10), "in", "0 in"),
        (Fraction(-255, 100), "cm", "-2.6 cm"),
    ],
)
def test_a_length_is_shown_to_what_a_tape_measure_tells(cm, unit, said):
    assert shown(cm, unit) == said


@given(st.fractions(0, 1000, max_denominator=64), st.sampled_from([*CM, *GRAMS]))
def test_an_amount_is_read_back_as_it_was_written(number, unit):
    amount = Amount(number, unit)
    assert read_amount(str(amount)) == amount


@given(st.fractions(-1000, 1000), st.fractions(Fraction(1, 64), 10))
def test_rounding_goes_to_the_nearest_step(number, step):
    near = rounded(number, step)
    assert abs(near - number) * 2 <= step
    assert (near / step).denominator == 1


@given(st.integers(-(10**9), 10**9), st.integers(0, 6))
def test_a_plain_number_is_exact(number, places):
    exact = Fraction(number, 10**places)
    assert Fraction(plain(exact)) == exact
