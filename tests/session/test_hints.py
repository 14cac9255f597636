"""What is said before a stitch that makers are easily caught by."""

import pytest

from tracker.pattern.load import load_text
from tracker.pattern.model import Worked
from tracker.pattern.plan import make_plan
from tracker.session.hints import CORNER, Markers, hint

HEAD = """
title = "Trial"
terms = "US"
[[part]]
name = "Body"
worked = "{worked}"
rounds = '''
"""

SPIRAL = """
Rnd 1: 6 sc in ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: [sc in next st, 2 sc in next st] 6 times. (18)
"""

SQUARE = """
Rnd 1: ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st to top of ch 3. (12)
Rnd 2: ch 1, sc in next 3 sts, (sc, ch 2, sc) in next ch-2 sp, [sc in next 3 sts, (sc, ch 2, sc) in next ch-2 sp] 3 times; join with sl st to first sc. (20)
"""  # noqa: E501

BAND = """
Foundation: ch 51.
Row 1: sc in 2nd ch from hook and in each ch across; turn. (50)
"""


def hints(rounds, number, worked, **markers):
    """Where in a round there are hints: the stitches made before each, and its words."""
    source = HEAD.format(worked=worked.value) + rounds.strip() + "\n'''\n"
    walk = make_plan(load_text(source)).parts[0].rounds[number].walk
    told = {
        walk.made_before(step): hint(walk, step, worked, Markers(**markers))
        for step in range(len(walk) + 1)
    }
    return {made: words for made, words in told.items() if words}


@pytest.mark.parametrize(
    ("which", "at"), [("first", {0: "first"}), ("last", {17: "last"}), ("none", {})]
)
def test_in_a_spiral_the_marker_is_moved_up_as_the_maker_does_it(which, at):
    said = {made: f"{which} stitch: move the marker here" for made, which in at.items()}
    assert hints(SPIRAL, 2, Worked.SPIRAL, round=which) == said


def test_joined_rounds_need_no_marker():
    assert hints(SQUARE, 0, Worked.JOINED) == {}


def test_the_stitch_that_hides_under_a_corner_is_pointed_out():
    assert hints(SQUARE, 1, Worked.JOINED) == {5: CORNER, 10: CORNER, 15: CORNER}


@pytest.mark.parametrize(("every", "made"), [(20, {20, 40}), (10, {10, 20, 30, 40}), (0, set())])
def test_on_long_chains_and_rows_a_marker_goes_in_every_so_many(every, made):
    assert set(hints(BAND, 1, Worked.ROWS, every=every)) == made
    assert set(hints(BAND, 0, Worked.ROWS, every=every)) in ({*made}, {*made, 50})


def test_short_runs_need_no_marker_between():
    assert hints(SPIRAL, 2, Worked.SPIRAL, round="none", every=5) == {}
