"""Yarn and time of a stitch, against figures that others have published."""

from fractions import Fraction

import pytest

from tracker.measure import pace, yarn
from tracker.measure.pace import Stretch, fit_pace
from tracker.measure.units import read_length, read_weight
from tracker.measure.yarn import Weighing, fit_yarn, needed


def test_one_kind_is_the_published_rule_of_the_swatch():
    """By stitch: grams of the swatch over its 30 x 10 = 300 stitches, times the project's.

    https://sdrta.net/how-much-yarn-to-crochet-a-blanket/; its blanket of 50 in by 60 in has
    18,144 stitches. The swatch's 21 g are our own.
    """
    ratios = {"dc": yarn.RATIOS["dc"]}
    swatch = [
        Weighing(Fraction(100), Fraction(1), {}),
        Weighing(Fraction(79), Fraction(1), {"dc": 300.0}),
    ]
    found = needed(fit_yarn(swatch, ratios), {"dc": 18_144.0}, ratios)
    assert found.likely == pytest.approx(21 / 300 * 18_144)
    assert found.low < found.likely < found.high


def test_a_leaflets_blanket_takes_its_yards():
    """105 stitches by 94 rows, single and double crochet by turns, 1870 yd: 17.3 cm a stitch.

    Leaflet BRC0502-035419M, its ball 250 g and 146 yd;
    https://cdn.shopify.com/s/files/1/0711/5132/1403/files/BRC0502-035419M.pdf
    """
    grams = Fraction(1870, 146) * 250
    made = {"sc": 105.0 * 47, "dc": 105.0 * 47}
    kept = [Weighing(grams, Fraction(1), {}), Weighing(Fraction(0), Fraction(1), made)]
    estimate = fit_yarn(kept, {kind: yarn.RATIOS[kind] for kind in made})
    mean = sum(estimate.likely.values()) / 2
    assert mean / 250 * 146 * 91.44 == pytest.approx(17.3, abs=0.05)


@pytest.mark.parametrize(
    ("kind", "inches"), [("ch", 25.5), ("sc", 53.0), ("hdc", 78.5), ("dc", 102.0)]
)
def test_the_table_of_yarn_is_one_makers_rows_of_five_inches(kind, inches):
    """https://www.windchilde.com/bluedepth/tag/crochet/"""
    assert yarn.RATIOS[kind].times == pytest.approx(inches / 53.0, abs=0.005)


@pytest.mark.parametrize("ratio", [1.0, 1.5, 1.9])
def test_the_table_holds_the_claim_that_taller_stitches_take_more_each(ratio):
    """1 : 1.5 : 1.9 a stitch, and about 1.5 less than taller ones:

    https://thecrocheting.com/pt/blogs/the-crocheting-blog/the-frugal-stitch-unraveling-the-mystery-of-the-crochet-stitch-that-uses-the-least-yarn
    """
    assert any(abs(yarn.RATIOS[kind].times - ratio) < 0.05 for kind in ("sc", "hdc", "dc"))


@pytest.mark.parametrize(
    ("work", "an_hour"), [("a mathematical piece", 300), ("a first scarf", 500)]
)
def test_a_published_pace_is_found_again(work, an_hour):
    """25,511 stitches in 85 hours; about 1,500 in three. Sources beside `pace.PUBLISHED`."""
    stitches, seconds = pace.PUBLISHED[work]
    parts = [Stretch({"sc": stitches / 10}, seconds / 10)] * 10
    estimate = fit_pace([parts], {"sc": pace.RATIOS["sc"]})
    assert 3600 / estimate.likely["sc"] == pytest.approx(an_hour, rel=0.01)


def test_no_published_pace_is_taken_for_a_jump():
    for stitches, seconds in pace.PUBLISHED.values():
        assert seconds / stitches > 10 * pace.QUICKEST


BALLS = (
    ("PAC0116-030195M", "50 g", 166, 152, 304),
    ("CAC0116-029868M", "170 g", 315, 288, 169),
    ("CAC0125-012177M", "100 g", 127, 116, 116),
    ("BRC0202-003788M", "140 g", 155, 142, 101),
    ("BRC0502-029618M", "225 g", 285, 261, 116),
    ("PAC0116-031552M", "100 g", 83, 76, 76),
    ("BRC0502-031867M", "300 g", 220, 201, 67),
    ("BRC0502-035419M", "250 g", 146, 133, 53),
    ("BRC0502-028564M", "225 g", 170, 155, 69),
)


@pytest.mark.parametrize(("leaflet", "ball", "yards", "metres", "for_100_g"), BALLS)
def test_the_balls_of_leaflets_are_as_long_in_yards_as_in_metres(
    leaflet, ball, yards, metres, for_100_g
):
    """Ball lines of https://cdn.shopify.com/s/files/1/0711/5132/1403/files/LEAFLET.pdf"""
    long = read_length(f"{yards} yd").cm / 100
    assert abs(long - metres) <= 1
    assert round(100 * long / read_weight(ball).grams) == pytest.approx(for_100_g, abs=1)
