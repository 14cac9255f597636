"""The pattern as it was worked: a pattern of its own, that checks, and says what it changed."""

import pytest

from tests.screens.stage import begin, begin_text
from tests.session.test_improvise import RING, SIZES, improvise
from tracker.fabric.verdicts import Verdict
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern, load_text
from tracker.pattern.plan import make_plan
from tracker.session.as_worked import Difference, as_worked
from tracker.session.session import Session
from tracker.session.state import State


def worked(session):
    return as_worked(session.printed, session.state)


def steps(rounds):
    """What the hands do in each round, and what it ends on."""
    return [
        ([(r.kind, r.stitch, r.text, r.where, r.count) for r in one.walk.runs], one.ends_on)
        for one in rounds
    ]


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_worked_as_printed_it_is_the_same_rounds_in_one_size(name, size):
    plan = make_plan(load_pattern(library.demo_patterns()[name]), size)
    found = as_worked(plan, State())
    assert found.differences == ()
    again = make_plan(load_text(found.pattern.source))
    for part, before in zip(again.parts, plan.parts, strict=True):
        assert steps(part.rounds) == steps(before.rounds)
    assert check_pattern(again.pattern).well


@pytest.fixture
def disc(tmp_path):
    session = begin_text(tmp_path, RING.format(make=1))
    session.go_to_round(3)
    yield session
    session.close()


def test_changed_added_and_left_out_rounds_are_handed_on_numbered_anew(disc):
    improvise(disc, "Rnd 3 otherwise", "*sc 2, inc; rep")
    improvise(disc, "a round of yours before Rnd 3", "sc around")
    disc.go_to_round(4)
    improvise(disc, "Rnd 4 left out")
    found = worked(disc)
    rounds = found.pattern.parts[0].rounds.splitlines()
    assert rounds[:5] == [
        "Rnd 1: 6 sc in magic ring. (6)",
        "Rnd 2: inc in each st around. (12)",
        "Rnd 3: sc around. (12)",
        "Rnd 4: *sc 2, inc; rep. (16)",
        "Rnds 5-6: sc in each st around. (16)",
    ]
    assert found.differences == (
        Difference("Disc", "Rnd 4", "left out", "sc in each st around. (18)", ""),
        Difference("Disc", "Rnd 3", "added", "", "sc around. (12)"),
        Difference("Disc", "Rnd 4", "changed", "[sc, inc] x 6. (18)", "*sc 2, inc; rep. (16)"),
    )
    checked = check_pattern(load_text(found.pattern.source)).parts[0].rounds
    assert [one.verdict for one in checked[:6]] == [Verdict.AGREES] * 6


def test_copies_that_differ_are_parts_of_their_own(tmp_path):
    session = begin_text(tmp_path, RING.format(make=4))
    session.go_to_part(0, 2)
    session.go_to_round(3)
    improvise(session, "Rnd 3 left out")
    names = [(part.name, part.make) for part in worked(session).pattern.parts]
    assert names == [("Disc, copies 1 to 2", 2), ("Disc, copies 3 to 4", 2)]
    load_text(worked(session).pattern.source)
    session.close()


def test_a_round_that_came_right_is_told(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(56)
    session.next()
    session.enter_count(54)
    session.come_right()
    (found,) = worked(session).differences
    assert (found.label, found.how) == ("Rnd 8", "came right")
    assert found.worked.startswith("work stitches 17 and 49 into the same st")
    session.close()


def test_the_pattern_as_worked_can_be_worked_again(disc, tmp_path):
    improvise(disc, "Rnd 3 otherwise", "go wild all over (20)")
    again = Session.start(load_text(worked(disc).pattern.source), "", tmp_path, "once more")
    again.go_to_round(3)
    assert (again.glance().ends_on, again.glance().verdict) == (20, Verdict.UNREAD)
    again.close()
