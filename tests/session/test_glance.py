"""The place as one plain line, and what a glance says at the special moments."""

import pytest
import scene

from tracker.session.glance import line
from tracker.session.place import Asking, Pace


@pytest.fixture
def piece(tmp_path):
    session = scene.start(tmp_path)
    yield session
    session.close()


def told(session):
    return line(session.glance())


def test_the_line_says_all_that_finds_the_place_again(piece):
    piece.set_asking(Asking.NEVER)
    piece.go_to_round(2)
    for _ in range(5):
        piece.next()
    assert told(piece) == (
        "Pot hat [trial] · Body · Rnd 2 of 6 · 4 of 12 stitches made, repeat 2 of 4"
        " · next: sc in the next st"
    )


def test_the_line_names_the_copy_and_the_size(piece):
    piece.go_to_part(1, 1)
    seen = piece.glance()._replace(size="small")
    assert line(seen) == (
        "Pot hat [trial], small · Ear, copy 2 of 2 · Row 1 of 2 · 0 of 3 stitches made"
        " · next: sc in the next st"
    )


def test_the_line_at_a_rounds_end(piece):
    scene.press(piece, 7)
    assert told(piece).endswith("6 of 6 stitches made · count the stitches: there should be 6")


def test_the_line_where_rounds_were_added(piece):
    piece.set_asking(Asking.NEVER)
    piece.go_to_round(3)
    scene.press(piece, 13)
    assert "· Rnd 3 (round 4 of 7) ·" in told(piece)


def test_the_line_in_making_up_and_when_all_is_done(piece):
    piece.go_to_part(4, 0)
    assert told(piece).startswith("Pot hat [trial] · Making up · 1 of 2 · next: ")
    piece.set_asking(Asking.NEVER)
    piece.set_pace(Pace.ROUND)
    for part, copy in ((0, 0), (1, 0), (1, 1), (2, 0), (4, 0)):
        piece.go_to_part(part, copy)
        while not piece.glance().part_done:
            piece.length_reached()
            piece.next()
    assert told(piece) == "Pot hat [trial] · the piece is done"


def test_control_characters_of_a_pattern_never_reach_the_terminal(piece):
    seen = piece.glance()._replace(title="a\x1b[31mb", step_where="x\x07\u202e")
    assert line(seen).isprintable()


def test_taking_up_again_says_when_it_was_put_down(piece):
    piece.next()
    piece.close()
    again = scene.reopen(piece.path)
    assert again.glance().last_press.startswith("taken up again, last worked 20")
    again.close()


def test_undo_and_redo_say_where_they_lead(piece):
    piece.undo()
    assert piece.glance().last_press == "nothing to undo"
    scene.press(piece, 2)
    piece.undo()
    assert piece.glance().last_press == "undone: Body, Rnd 1, 1 stitch made"
    piece.redo()
    assert piece.glance().last_press == "done again: Body, Rnd 1, 2 stitches made"
    piece.redo()
    assert piece.glance().last_press == "nothing to do again"
