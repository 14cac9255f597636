"""Hooks and yarn weights against published charts, those that differ among them.

Charts, as named in `hooks.toml` and `yarn_weights.toml`: the Craft Yarn Council's table and
its page for beginners, a yarn company's leaflets, a Canadian, two British, one other chart
and a Spanish sheet. "All charts read" means that every one that names the size agrees.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tracker.measure.hooks import hooks, hooks_called
from tracker.measure.yarn_weights import weights_at, weights_for_hook, yarn_weights

COUNCIL = "https://issuhub.com/view/index?id=3342&pageIndex=64"
LEAFLETS = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/"


@pytest.mark.parametrize(
    ("mm", "us"),
    [
        # all charts read
        ("3.25", "D-3"), ("3.5", "E-4"), ("4", "G-6"), ("5", "H-8"), ("5.5", "I-9"),
        ("6", "J-10"), ("6.5", "K-10 1/2"), ("8", "L-11"),
        # the Council's table and its page for beginners
        ("2.25", "B-1"), ("9", "M/N-13"), ("16", "Q"), ("19", "S"),
        # the leaflets: C/2 2.75, M/13 9, N/15 10
        ("2.75", "C-2"), ("9", "M-13"), ("10", "N-15"),
    ],
)  # fmt: skip
def test_us_names_and_their_diameters(mm, us):
    assert Fraction(mm) in [one.mm for one in hooks_called(us)]
    assert us in [name for one in hooks_called(f"{mm} mm") for name in (one.us, *one.us_also)]


@pytest.mark.parametrize(
    ("mm", "uk"),
    [
        # both British charts, the Canadian one and the other chart where they name it
        ("2", "14"), ("2.25", "13"), ("2.5", "12"), ("3.25", "10"), ("4", "8"), ("5", "6"),
        ("5.5", "5"), ("8", "0"), ("9", "00"), ("10", "000"),
    ],
)  # fmt: skip
def test_british_numbers_and_their_diameters(mm, uk):
    assert [one.mm for one in hooks_called(f"UK {uk}") if one.uk == uk] == [Fraction(mm)]


@pytest.mark.parametrize(
    ("word", "mm"),
    [
        # 2.25 to the Council, 2 on a sheet and a chart, 2.5 on a reference page
        ("B-1", ["2", "2.25", "2.5"]),
        # 11 on one British chart, 11.5 on the other
        ("P-16", ["11", "11.5"]),
        # a yarn hook in US and British terms, a steel hook, or millimetres
        ("7", ["4.5", "1.65", "7"]),
        ("steel 7", ["1.65"]),
        ("H", ["5"]),
        ("h/8", ["5"]),
        ("5 mm", ["5"]),
        ("zz", []),
        ("5.3 mm", []),
    ],
)
def test_a_name_brings_every_diameter_that_makers_give_it(word, mm):
    assert [one.mm for one in hooks_called(word)] == [Fraction(one) for one in mm]


def test_where_the_charts_differ_a_note_says_so():
    for one in hooks():
        if one.us_also or one.uk_also:
            assert one.note, one


@pytest.mark.parametrize(
    ("number", "name", "sts", "mm"),
    [
        (0, "Lace", (32, 42), ("1.5", "2.25")),
        (1, "Super Fine", (21, 32), ("2.25", "3.5")),
        (2, "Fine", (16, 20), ("3.5", "4.5")),
        (3, "Light", (12, 17), ("4.5", "5.5")),
        (4, "Medium", (11, 14), ("5.5", "6.5")),
        (5, "Bulky", (8, 11), ("6.5", "9")),
        (6, "Super Bulky", (6, 9), ("9", "16")),
    ],
)
def test_the_standard_yarn_weights(number, name, sts, mm):
    # COUNCIL: sc in 4 in (10 cm) and hooks, as printed in October 2018
    found = yarn_weights()[number]
    assert (found.number, found.name, (found.from_sts, found.to_sts)) == (number, name, sts)
    assert (found.from_mm, found.to_mm) == tuple(Fraction(one) for one in mm)


def test_jumbo_yarn_has_no_upper_bound():
    found = yarn_weights()[7]  # COUNCIL: "5 stitches and fewer", hook Q and larger
    assert (found.name, found.to_sts, found.from_mm, found.to_mm) == ("Jumbo", 5, 16, None)
    assert found.takes_hook(Fraction(25))


@pytest.mark.parametrize(
    ("number", "sts", "leaflet"),
    [
        (1, 22, "PAC0116-030195M"),
        (3, 15, "CAC0101-035975M"),
        (4, 14, "CAC0116-029868M"),
        (4, 13, "CAC0129-028772M"),
        (5, 10, "BRC0502-029618M"),
        (6, 8, "CAC0502-029059M"),
        (6, 7, "BRC0502-031867M"),
    ],
)
def test_the_gauge_of_a_leaflet_lies_in_the_band_of_the_class_it_prints(number, sts, leaflet):
    assert number in [one.number for one in weights_at(Fraction(sts))], LEAFLETS + leaflet


@pytest.mark.parametrize(
    ("sts", "numbers"),
    # the bands of the table overlap: a gauge cannot be turned back into one class
    [(13, [3, 4]), (11, [4, 5]), (9, [5, 6]), (18, [2]), (50, [])],
)
def test_a_gauge_may_belong_to_several_classes(sts, numbers):
    assert [one.number for one in weights_at(Fraction(sts))] == numbers, COUNCIL


def test_a_hook_may_be_advised_for_several_classes():
    assert [one.number for one in weights_for_hook(Fraction("5.5"))] == [3, 4]
