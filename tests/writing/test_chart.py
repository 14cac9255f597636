"""Charts: as many signs as stitches, each over what it is worked into, none over another."""

import math
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.read.texts import SQUARE
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern
from tracker.pattern.model import Part, Pattern, Worked
from tracker.pattern.reading import read_pattern
from tracker.writing.chart.draw import chart
from tracker.writing.chart.frames import Lines, Polygon
from tracker.writing.chart.laid import mirrored
from tracker.writing.chart.setting import lay_out
from tracker.writing.chart.signs import strokes
from tracker.writing.chart.spread import Thing, evenly, spread
from tracker.writing.chart.worked import knots_of

SVG = "{http://www.w3.org/2000/svg}"
#: A quarter of a single crochet's width: lines keep so far from what they join.
NEAR = 0.26


LAID = {}


def laid_out(knots):
    """The layout of knots, worked out once for all tests."""
    if id(knots) not in LAID:
        LAID[id(knots)] = lay_out(knots)
    return LAID[id(knots)]


def worked(text, kind=Worked.JOINED, below=()):
    pattern = Pattern("Swatch", "US", (Part("Swatch", worked=kind, rounds=text, below=below),))
    return pattern, check_pattern(pattern)


def drawings(pattern, checked):
    for part, found in zip(pattern.parts, checked.parts, strict=True):
        if part.steps:
            continue
        for index in sorted({0, max(0, len(pattern.sizes) - 1)}):
            yield found, index, knots_of(part, found, index, pattern.stitches)


GRANNY = """\
Rnd 1: ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join. (12)
Rnd 2: sl st to next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, \
*ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1; join. (24)
"""
HEXAGON = """\
Rnd 1: ch 3 (counts as dc), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join. (12)
Rnd 2: ch 3 (counts as dc), dc in next st, (dc, ch 2, dc) in next ch-2 sp, \
*dc in next 2 sts, (dc, ch 2, dc) in next ch-2 sp; rep from * around; join. (24)
Rnd 3: ch 1, *sc in each st to next ch-2 sp, 3 sc in ch-2 sp; rep from * around; join. (42)
Rnd 4: ch 1, hdc in back loop only of each st around, ch 3, sl st in last hdc made; join. (42)
"""
GROWN = """\
Rnd 1: 12 sc in magic ring. (12)
Rnd 2: sc inc, sc in next 10 sts, sc inc. (14)
Rnd 3: [inc, sc 4, invdec] x 2. (14)
"""
SHELLS = """\
Special stitches:
Fan: 5 tr in same st.
Peak: (dc, ch 1, dc) in same st.

Shells

Rnd 1: 12 sc in magic ring; join. (12)
Rnd 2: ch 1, *sc in next st, sk 1, fan in next st, sk 1; rep from * around; join. (18)
"""
RIPPLE = """\
Row 1: ch 16, sc in 2nd ch from hook and in each ch across; turn. (15)
Row 2: ch 3 (counts as dc), dc in next 4 sts, dc2tog, dc in next st, 2 dc in next st, \
fpdc around next 6 sts; turn. (15)
Row 3: ch 1, sc in back loop only of each st across. (15)
"""
TRIMS = """\
Rnd 1: ch 1, *sc in next st, ch 3, sk 1, popcorn in next st, puff in next st; \
rep from * around; join.
"""
OVAL = """\
Rnd 1: ch 9, sc in 2nd ch from hook and in next 6 ch, 3 sc in last ch; \
working along the other side of the chain, sc in next 6 ch, 2 sc in last ch. (18)
"""

CASES = {}
for _name, _path in library.demo_patterns().items():
    CASES[_name] = load_pattern(_path)
CASES["square"] = read_pattern(SQUARE, "text.txt", "Square").pattern
CASES["hexagon"] = worked(HEXAGON)[0]
CASES["grown"] = worked(GROWN, Worked.SPIRAL)[0]
CASES["shells"] = read_pattern(SHELLS, "text.txt", "Shells").pattern
CASES["granny"] = worked(GRANNY)[0]
CASES["ripple"] = worked(RIPPLE, Worked.ROWS)[0]
CASES["trims"] = worked(TRIMS, below=(24,))[0]
EVERY = [
    pytest.param(found, index, knots, pattern, id=f"{name}-{found.name}-{index}")
    for name, pattern in CASES.items()
    for found, index, knots in drawings(pattern, check_pattern(pattern))
]
every = pytest.mark.parametrize(("found", "index", "knots", "pattern"), EVERY)


@every
def test_each_round_shows_as_many_signs_as_it_makes_stitches(found, index, knots, pattern):
    assert knots.rest == ""
    root = ET.fromstring(chart(knots, pattern, "x").svg)
    made = {}
    for group in root.iter(f"{SVG}g"):
        if group.get("class") == "round":
            signs = [int(one.get("data-made", 0)) for one in group]
            made.setdefault(group.get("data-label"), []).append(sum(signs))
    counted = {}
    for one in found.rounds:
        counted.setdefault(one.label, []).append(one.makes[index])
    assert {label: made[label] for label in counted} == counted
    assert set(made) - set(counted) <= {"Foundation"}


@every
def test_each_foot_is_the_head_of_what_it_is_worked_into(found, index, knots, pattern):
    base, rounds = laid_out(knots)
    below = base.edge
    for laid in rounds:
        for placed in laid.placed:
            assert placed.feet[: len(placed.knot.feet)] == tuple(
                below[foot] for foot in placed.knot.feet
            )
            assert placed.heads[: len(placed.knot.heads)] == tuple(
                laid.edge[head] for head in placed.knot.heads
            )
        below = laid.edge[::-1] if laid.round.turns else laid.edge


def ends(path):
    """Every pair of numbers of a path."""
    numbers = [float(n) for n in "".join(c if c in "0123456789.-" else " " for c in path).split()]
    return list(pairwise(numbers))


@every
def test_the_lines_drawn_reach_from_foot_to_head(found, index, knots, pattern):
    for laid in laid_out(knots)[1]:
        for placed in laid.placed:
            knot = placed.knot
            if not knot.feet or not knot.heads or knot.sign in ("rise", "sl st"):
                continue
            drawn = list(strokes(knot, placed.feet, placed.heads, placed.line))
            points = [point for stroke in drawn for point in ends(stroke.path)]
            for goal in (*placed.feet, *placed.heads):
                assert min(math.dist(goal, point) for point in points) < NEAR, knot


def how_far(laid, point):
    """How far out a point is: up in rows, else from the middle."""
    return -point.y if isinstance(laid.frame, Lines) else math.hypot(*point)


@every
def test_rounds_grow_outward(found, index, knots, pattern):
    rounds = laid_out(knots)[1]
    assert all(a.out < b.out for a, b in pairwise(rounds))
    for laid in rounds:
        for placed in laid.placed:
            if placed.knot.made and placed.feet:
                foot = min(how_far(laid, one) for one in placed.feet)
                assert all(how_far(laid, head) > foot for head in placed.heads)


@every
def test_no_stitch_stands_on_another(found, index, knots, pattern):
    for laid in laid_out(knots)[1]:
        heads = list(laid.edge)
        for one, other in pairwise(heads):
            assert math.dist(one, other) > 0.6
        if len(heads) > 2 and not isinstance(laid.frame, Lines):
            assert math.dist(heads[-1], heads[0]) > 0.6


@every
def test_a_round_goes_against_the_clock_and_back_after_a_turn(found, index, knots, pattern):
    sense = 1
    for laid in laid_out(knots)[1]:
        steps = list(pairwise(laid.edge))
        if isinstance(laid.frame, Lines):
            rightward = [b.x > a.x for a, b in steps]
            assert all(rightward) if sense < 0 else not any(rightward)
        elif len(steps) > 2:
            # y points down, so that a turn against the clock is a negative one.
            turns = [a.x * b.y - a.y * b.x < 0 for a, b in steps]
            assert all(turns) if sense > 0 else not any(turns)
        sense = -sense if laid.round.turns else sense


def test_corners_lie_in_one_line_with_the_middle():
    pattern = CASES["lattice-mat"]
    knots = knots_of(pattern.parts[0], check_pattern(pattern).parts[0], 0, ())
    for laid in laid_out(knots)[1][2:]:
        corners = [p.heads[0] for p in laid.placed if p.knot.sign == "space"]
        assert len(corners) == 4
        assert all(abs(x) == pytest.approx(abs(y)) for x, y in corners)


def test_rounds_without_a_space_at_the_corner_keep_the_corners_of_those_within():
    pattern = CASES["hexagon"]
    knots = knots_of(pattern.parts[0], check_pattern(pattern).parts[0], 0, ())
    assert [laid.frame for laid in lay_out(knots)[1]] == [Polygon(6)] * 4


def test_a_shell_is_drawn_as_the_stitches_that_its_making_names():
    pattern = CASES["shells"]
    found = check_pattern(pattern).parts[0]
    knots = knots_of(pattern.parts[0], found, 0, pattern.stitches, pattern.terms)
    fans = [knot for knot in knots.rounds[1].knots if knot.sign == "tr"]
    assert len(fans) == 15
    assert [fans[n].feet for n in (0, 4, 5)] == [(2,), (2,), (6,)]


@pytest.mark.parametrize("name", ["lattice-mat", "ripple"])
def test_for_a_left_handed_maker_left_and_right_change_places(name):
    pattern = CASES[name]
    knots = knots_of(pattern.parts[0], check_pattern(pattern).parts[0], 0, ())
    base, rounds = lay_out(knots)
    _, others = mirrored(base, rounds)
    for one, other in zip(rounds, others, strict=True):
        assert [(-x, y) for x, y in one.edge] == [tuple(point) for point in other.edge]
        assert (-one.number.x, one.number.y) == other.number
    right, left = (chart(knots, pattern, "x", left=left) for left in (False, True))
    assert right.svg != left.svg
    assert right.svg.count("data-made") == left.svg.count("data-made")
    assert "left-handed" in left.words
    assert "left-handed" not in right.words


def test_what_is_worked_on_the_wrong_side_is_drawn_as_seen_from_the_right_side():
    """Front and back change places: http://www.hookincrochet.com/hccatalog/aboutcharts.html."""
    pattern = CASES["headband"]
    knots = knots_of(pattern.parts[0], check_pattern(pattern).parts[0], 0, ())
    assert {k.sign for r in knots.rounds for k in r.knots if k.sign.endswith("pdc")} == {
        "fpdc",
        "bpdc",
    }
    drawn = chart(knots, pattern, "Band").svg
    assert 'data-sign="bpdc"' in drawn
    assert 'data-sign="fpdc"' not in drawn


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("Rnd 1: 6 sc in ring. (6)\nRnd 2: frumple in each st around. (6)\n", "was not understood"),
        ("Rnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st around. (13)\n", "does not work out"),
        ("Rnd 1: 5000 sc in ring. (5000)\n", "more than 4000 stitches"),
        ("Rnd 1: ch 5001, sc in 2nd ch from hook and in each ch around. (5000)\n", "than 4000 st"),
        ("Rnd 1: 0 sc in magic ring.\n", "makes nothing that can be drawn"),
        (OVAL, "both sides of a chain"),
    ],
)
def test_what_cannot_be_drawn_is_said_in_words(text, why):
    pattern, checked = worked(text)
    knots = knots_of(pattern.parts[0], checked.parts[0], 0, ())
    assert why in knots.rest
    assert len(knots.rounds) == text.count("Rnd") - 1


def test_names_of_a_pattern_are_text_in_the_drawing():
    pattern, checked = worked("Rnd 1: 6 sc in ring. (6)\n")
    knots = knots_of(pattern.parts[0], checked.parts[0], 0, ())
    root = ET.fromstring(chart(knots, pattern, "<script>alert(1)</script> & more").svg)
    assert root.find(f"{SVG}title").text == "<script>alert(1)</script> & more"
    assert {one.tag.removeprefix(SVG) for one in root.iter()} <= {
        *("svg", "title", "desc", "style", "g", "path", "circle", "rect", "text")
    }


things = st.lists(
    st.tuples(st.floats(0.2, 3), st.none() | st.floats(-40, 40)), min_size=1, max_size=30
)


@settings(max_examples=150, deadline=None)
@given(things, st.floats(0, 20))
def test_things_spread_out_keep_their_order_and_their_room(pairs, slack):
    ordered = [Thing(width, target) for width, target in pairs]
    whole = sum(thing.width for thing in ordered)
    for way in (spread, evenly):
        found = way(ordered, 0.0, whole + slack)
        assert found[0] - ordered[0].width / 2 >= -1e-6
        assert found[-1] + ordered[-1].width / 2 <= whole + slack + 1e-6
        for (a, b), (one, other) in zip(pairwise(found), pairwise(ordered), strict=True):
            assert b - a >= (one.width + other.width) / 2 - 1e-6


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.2, 2), min_size=1, max_size=20))
def test_things_with_room_stand_where_they_belong(widths):
    """The least squares of a rising list are the list itself."""
    things, at = [], 0.0
    for width in widths:
        at += width + 1.5
        things.append(Thing(width, at))
    assert spread(things, -math.inf, math.inf) == pytest.approx([t.target for t in things])
