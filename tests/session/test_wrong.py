"""A wrong count: what is guessed from the round, and how the next round comes right."""

from itertools import pairwise

import pytest
import scene
from hypothesis import given
from hypothesis import strategies as st

from tracker.pattern.load import load_text
from tracker.pattern.plan import make_plan
from tracker.session import mending
from tracker.session.right import right_repeat
from tracker.session.suspects import suspects

PATTERN = """\
title = "Trial"
terms = "US"
[[part]]
name = "Body"
worked = "{worked}"
below = [{below}]
rounds = '''
{rounds}
'''
"""


def walk_of(text, below=48, worked="joined rounds"):
    source = PATTERN.format(worked=worked, below=below, rounds=text)
    return make_plan(load_text(source)).parts[0].rounds[0].walk


GROWS = "Rnd 1: ch 1, *sc in next 5 sts, 2 sc in next st; rep from * around; join. (56)"
NARROWS = "Rnd 1: ch 1, *sc in next 6 sts, sc2tog; rep from * around; join. (42)"
EVEN = "Rnd 1: ch 1, sc in each st around; join. (48)"
SPIRAL = "Rnd 1: sc in each st around. (48)"
ROW = "Row 1: ch 1, sc in each st across; turn. (48)"


@pytest.mark.parametrize(
    ("text", "counted", "should", "first"),
    [
        (GROWS, 55, 56, "You missed the increase in one of the 8 repeats."),
        (GROWS, 53, 56, "You missed the increase in 3 of the 8 repeats."),
        (GROWS, 49, 56, "One whole repeat was left out (7 stitches each, once too few)."),
        (GROWS, 57, 56, "You worked into the join of the round below."),
        (NARROWS, 43, 42, "You worked into the join of the round below."),
        (NARROWS, 45, 42, "You missed the decrease in 3 of the 6 repeats."),
        (EVEN, 50, 48, "You worked into the join and into the beginning chain of the round below."),
        (EVEN, 47, 48, "You left out the last stitch before the end of the round."),
        (SPIRAL, 49, 48, "You counted the loop on the hook."),
    ],
)
def test_the_likeliest_comes_first(text, counted, should, first):
    found = suspects(walk_of(text), counted, should, rows=False)
    assert found[0].what == first
    assert [one.weight for one in found] == sorted((one.weight for one in found), reverse=True)


def test_rows_go_wrong_at_their_ends():
    walk = walk_of(ROW, worked="rows")
    few, many = (suspects(walk, counted, 48, rows=True)[0] for counted in (47, 49))
    assert few.what == "You left out the last stitch of the row, at the turning chain."
    assert many.what == "You worked into the turning chain, which is not a stitch here."


def test_the_side_after_a_corner_is_suspected():
    text = (
        "Rnd 1: ch 1, *sc in next 11 sts, (2 dc, ch 2, 2 dc) in next st; rep from * around; join."
    )
    found = suspects(walk_of(text), 59, 60, rows=False)
    assert any("first stitch of the side after one corner of 3" in one.what for one in found)


def test_a_right_count_has_no_suspects():
    assert suspects(walk_of(GROWS), 56, 56, rows=False) == ()


@given(st.integers(-14, 14).filter(bool))
def test_the_places_are_as_many_as_are_needed_and_spread_evenly(off):
    walk = walk_of_even()
    steps = mending.places(walk, off)
    assert len(steps) == abs(off)
    gaps = [after - before for before, after in pairwise(steps)]
    assert not gaps or max(gaps) - min(gaps) <= 1
    assert all(walk[step].run.text == "sc" for step in steps)


def walk_of_even(kept=[]):  # noqa: B006
    if not kept:
        kept.append(walk_of(EVEN))
    return kept[0]


def test_too_many_places_are_not_offered():
    assert mending.places(walk_of_even(), 17) == ()
    assert mending.words(walk_of_even(), -17) == ""


def off_by(folder, counted):
    """A piece whose second round of 12 was counted otherwise."""
    session = scene.start(folder)
    session.go_to_round(2)
    session.go_to_stitch(12)
    while not session.glance().at_end:
        session.next()
    session.enter_count(counted)
    return session


def test_a_wrong_count_is_told_until_the_next_stitch(tmp_path):
    session = off_by(tmp_path, 10)
    assert session.glance().off == "10 in Rnd 2, not 12: 2 too few"
    session.next()
    assert session.glance().off == ""
    session.close()


def test_the_next_round_comes_right_and_that_is_kept_and_can_be_undone(tmp_path):
    session = off_by(tmp_path, 10)
    session.come_right()
    words = "work stitches 4 and 10 into the same st as the one before, all else as written"
    assert session.glance().right == words
    session.close()
    session = scene.reopen(session.path)
    assert session.glance().right == words
    where = []
    for made in range(12):
        session.go_to_stitch(made)
        where.append(session.glance().step_where)
    again = "in the same st once more"
    assert [n for n, one in enumerate(where, start=1) if one == again] == [4, 10]
    for _ in range(13):
        session.undo()
    assert session.glance().right == ""
    session.close()


def test_too_many_are_worked_two_as_one(tmp_path):
    session = off_by(tmp_path, 13)
    session.come_right()
    assert session.glance().right.startswith("work stitch 7 over 2 sts of the round below")
    session.close()


def test_a_round_ripped_back_and_counted_right_needs_no_putting_right(tmp_path):
    session = off_by(tmp_path, 10)
    session.come_right()
    session.rip_back(1)
    session.go_to_stitch(12)
    while not session.glance().at_end:
        session.next()
    session.enter_count(12)
    assert session.glance().round_label == "Rnd 3"
    assert session.glance().right == ""
    session.close()


@pytest.mark.parametrize(("rounds", "label"), [(1, "Rnd 2"), (2, "Rnd 1")])
def test_rounds_are_ripped_back(tmp_path, rounds, label):
    session = off_by(tmp_path, 10)
    session.rip_back(rounds)
    seen = session.glance()
    assert (seen.round_label, seen.made) == (label, 0)
    session.close()


def test_more_rounds_than_there_are_cannot_be_ripped_back(tmp_path):
    session = off_by(tmp_path, 10)
    session.rip_back(9)
    assert session.glance().last_press == "Body has not so many rounds"
    session.rip_back(0)
    assert session.glance().last_press == "nothing ripped back"
    assert session.glance().round_label == "Rnd 3"
    session.close()


def test_back_to_a_guess_stands_before_that_step(tmp_path):
    session = off_by(tmp_path, 11)
    guess = session.wrong().suspects[0]
    assert guess.what == "You missed the increase in one of the 4 repeats."
    session.back_to(guess.step)
    seen = session.glance()
    assert (seen.round_label, seen.made) == ("Rnd 2", 1)
    session.close()


@pytest.mark.parametrize(
    ("text", "looks"),
    [
        (GROWS, "5 sc, 2 sc from one foot: 7 stitches"),
        (NARROWS, "6 sc, sc2tog (2 feet under one top): 7 stitches"),
        (EVEN, ""),
        (
            "Rnd 1: *sc in next 2 sts, (2 dc, ch 2, 2 dc) in next st; rep from * around; join.",
            "2 sc, (2 dc, ch 2, 2 dc) from one foot: 6 stitches",
        ),
        ("Rnd 1: *sc in next st, ch 1, sk 1; rep from * around; join.", "sc, ch 1: 1 stitch"),
        (
            "Rnd 1: [sc in next 3 sts, inc] 12 times.",
            "3 sc, inc (2 tops from one foot): 5 stitches",
        ),
    ],
)
def test_a_right_repeat_is_told_as_it_looks_on_the_work(text, looks):
    assert right_repeat(walk_of(text)) == looks
