"""Measures of a piece, and the rounds left to the length that ends an open round."""

import re

import pytest

from tests.screens.stage import begin
from tracker.pattern.load import load_text
from tracker.session.looking import glance_at
from tracker.session.session import Session

TUBE = """\
title = "Reed tube"
{gauge}
[[part]]
name = "Tube"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: sc in each st around until tube {until}.
Rnd 4: dc in each st around. (12)
'''
"""
GAUGE = '[gauge]\nstitch = "sc"\nstitches = 20\nrounds = 20\nover = "10 cm"\n'


def tube(folder, until="measures 5 cm", gauge=GAUGE):
    """A piece at the start of its open round: by the gauge each round is 5 mm, two are done."""
    source = TUBE.format(gauge=gauge, until=until)
    session = Session.start(load_text(source), "", folder)
    session.go_to_round(3)
    return session


def to_end(session, times=1):
    for _ in range(times):
        if session.glance().at_end:
            session.next()
        while not session.glance().at_end:
            session.next()


def left(session):
    return session.glance().left


def test_the_gauge_tells_until_something_is_measured(tmp_path):
    session = tube(tmp_path)
    assert left(session) == "to 5 cm about 8 more rounds with this one, by the gauge"
    session.next()
    assert left(session) == "to 5 cm about 8 more rounds with this one, by the gauge"
    to_end(session)
    assert left(session) == "to 5 cm about 7 more rounds, by the gauge"
    assert session.glance().step_where == left(session)
    to_end(session, 6)
    assert left(session) == "to 5 cm about 1 more round, by the gauge"
    to_end(session)
    assert left(session) == "5 cm reached, by the gauge"
    session.close()


def test_a_measure_corrects_what_is_left(tmp_path):
    session = tube(tmp_path)
    to_end(session, 2)
    # 4 rounds are 2 cm by the gauge and 2.5 cm by the tape: 4 more at 6.25 mm
    session.measure("2.5")
    assert session.glance().last_press == "2.5 cm measured in Rnd 3, time 2"
    assert left(session) == "to 5 cm about 4 more rounds, as measured"
    session.undo()
    assert left(session) == "to 5 cm about 6 more rounds, by the gauge"
    session.redo()
    session.close()
    again = Session.open(session.path)
    assert again.notices == ()
    assert (again.measured_here(), left(again)) == (
        "2.5 cm",
        "to 5 cm about 4 more rounds, as measured",
    )
    again.close()


def test_a_measure_is_changed_and_dropped(tmp_path):
    session = tube(tmp_path)
    to_end(session, 2)
    session.measure("25 mm")
    session.measure("1 in")
    assert session.measured_here() == "1 in"
    session.measure(" ")
    assert (session.measured_here(), session.glance().last_press) == ("", "measure dropped")
    assert left(session).endswith("by the gauge")
    session.close()


def test_a_measure_taken_later_does_not_tell_of_an_earlier_place(tmp_path):
    session = tube(tmp_path)
    to_end(session, 2)
    session.measure("2.5 cm")
    session.go_to_round(3)
    assert left(session) == "to 5 cm about 8 more rounds with this one, by the gauge"
    session.close()


@pytest.mark.parametrize(
    ("words", "said"),
    [("x", "such as 44 cm"), ("3 g", "3 g is no length"), ("0", "above 0"), ("-2 cm", "above 0")],
)
def test_what_is_no_length_changes_nothing(tmp_path, words, said):
    session = tube(tmp_path)
    session.measure(words)
    assert said in session.glance().last_press
    assert (session.measured_here(), session.can_undo) == ("", 1)
    session.close()


def test_a_length_from_the_place_where_it_begins(tmp_path):
    session = tube(tmp_path, "measures 2 cm more")
    assert left(session) == "to 2 cm about 4 more rounds with this one, by the gauge"
    session.close()


def test_a_length_from_elsewhere_waits_for_a_measure(tmp_path):
    session = tube(tmp_path, "measures 6 cm from the armhole")
    assert left(session) == ""
    to_end(session)
    session.measure("3 cm")
    assert left(session) == "to 6 cm about 6 more rounds, as measured"
    session.close()


def test_nothing_is_pretended_without_gauge_and_measure(tmp_path):
    session = tube(tmp_path, gauge="")
    assert left(session) == ""
    to_end(session, 2)
    session.measure("2")
    assert left(session) == "to 5 cm about 6 more rounds, as measured"
    session.close()


@pytest.mark.parametrize("until", ["reaches the desired length", "fits"])
def test_words_without_a_length_tell_no_rounds(tmp_path, until):
    session = tube(tmp_path, until)
    assert left(session) == ""
    session.close()


def test_rounds_of_a_taller_stitch_count_by_its_height(tmp_path):
    """dc is 1.75 sc, from leaflets (see tests/outside/test_gauge.py)."""
    source = TUBE.format(gauge=GAUGE, until="measures 8.5 cm").replace("3: sc", "3: dc")
    session = Session.start(load_text(source), "", tmp_path)
    session.go_to_round(3)
    # 1 cm is done; rounds of 8.75 mm: 7.5 cm are 8.6 of them
    assert left(session) == "to 8.5 cm about 9 more rounds with this one, by the gauge"
    session.close()


def test_each_size_has_its_own_length(tmp_path):
    said = []
    for size in ("2 cups", "8 cups"):
        session = begin(tmp_path, "tea-cosy", size)
        session.go_to_round(17)
        said.append(int(re.search(r"about (\d+)", left(session))[1]))
        session.close()
    # 16 rounds of 10/10.5 cm are 15.2 cm; 18 and 22 cm are wanted
    assert said == [3, 7]


def test_a_measure_written_by_hand_that_is_none_is_passed_over(tmp_path):
    session = tube(tmp_path)
    to_end(session)
    session.measure("4 cm")
    session.close()
    text = session.path.read_text(encoding="utf-8")
    text = re.sub(r'measured = "4 cm", seal = "\w+"', 'measured = "a lot"', text)
    session.path.write_text(text, encoding="utf-8")
    assert glance_at(session.path).left == "to 5 cm about 7 more rounds, by the gauge"


def test_there_is_nothing_to_measure_in_the_making_up(tmp_path):
    session = begin(tmp_path, "tea-cosy", "4 cups")
    session.go_to_part(3, 0)
    session.measure("4 cm")
    assert "nothing to measure" in session.glance().last_press
    session.close()
