"""What each press does, seen through the session and its glance."""

import pytest
import scene

from tracker.session.place import Asking, Pace, Place
from tracker.session.session import Session


@pytest.fixture
def piece(tmp_path):
    session = scene.start(tmp_path)
    yield session
    session.close()


def at(session):
    return tuple(
        getattr(session.glance().place, name) for name in ("part", "copy", "round", "step")
    )


def work_to(session, round_number):
    session.set_asking(Asking.NEVER)
    session.go_to_round(round_number)


def test_begins_before_the_first_step(piece):
    seen = piece.glance()
    assert seen.place == Place(0, 0, 0, 0)
    assert (seen.step_text, seen.step_where, seen.made, seen.ends_on) == (
        "sc",
        "in the next st",
        0,
        6,
    )
    assert seen.colour == "A, moss"
    assert seen.hook == "5 mm"
    assert [line.label for line in seen.coming] == ["Rnd 2", "Rnd 3", "Rnd 4", "Rnd 5", "Rnd 6"]


def test_one_press_is_one_stitch_and_the_counter_follows(piece):
    scene.press(piece, 4)
    seen = piece.glance()
    assert (at(piece), seen.made, seen.last_press) == ((0, 0, 0, 4), 4, "next stitch")


def test_count_is_asked_at_the_end_and_confirmed_by_going_on(piece):
    scene.press(piece, 7)
    seen = piece.glance()
    assert (seen.at_end, seen.asking, seen.step_text) == (True, True, "count the stitches")
    assert seen.step_where == "there should be 6"
    piece.next()
    assert at(piece) == (0, 0, 1, 0)
    assert dict(piece.state.counts.items()) == {(0, 0, 0, 0): 6}


def test_a_count_that_differs_is_kept_and_work_goes_on(piece):
    scene.press(piece, 7)
    piece.enter_count(5)
    assert at(piece) == (0, 0, 1, 0)
    assert dict(piece.state.counts.items()) == {(0, 0, 0, 0): 5}
    assert piece.glance().last_press == "5 counted; on to Rnd 2"


@pytest.mark.parametrize("count", [-1, 1_000_001])
def test_a_count_out_of_reason_is_refused(piece, count):
    scene.press(piece, 7)
    piece.enter_count(count)
    assert at(piece) == (0, 0, 0, 7)
    assert piece.glance().last_press == "a count lies between 0 and 1000000"


def test_a_count_can_be_entered_at_the_next_rounds_start_but_not_amid(piece):
    work_to(piece, 2)
    piece.enter_count(7)
    assert dict(piece.state.counts.items()) == {(0, 0, 0, 0): 7}
    piece.next()
    piece.enter_count(8)
    assert piece.glance().last_press == "a count is entered at a round's end"


def test_when_nothing_is_asked_the_last_press_stands_at_the_next_round(piece):
    piece.set_asking(Asking.NEVER)
    scene.press(piece, 7)
    assert at(piece) == (0, 0, 1, 0)
    assert not piece.glance().asking


def test_only_increase_rounds_are_asked_for_if_so_chosen(piece):
    piece.set_asking(Asking.INCREASES)
    piece.set_pace(Pace.ROUND)
    piece.next()
    assert at(piece) == (0, 0, 1, 0)
    piece.next()
    assert (at(piece), piece.glance().asking) == ((0, 0, 1, 14), True)


def test_repeat_pace_goes_by_what_stands_outside_and_by_passes(piece):
    work_to(piece, 2)
    piece.set_pace(Pace.REPEAT)
    steps = []
    for _ in range(5):
        piece.next()
        steps.append(at(piece)[3])
    assert steps == [1, 4, 7, 10, 13]
    piece.next()
    assert at(piece) == (0, 0, 2, 0)


def test_repeat_pace_from_amid_a_pass_goes_to_its_borders(piece):
    work_to(piece, 2)
    scene.press(piece, 5)
    piece.set_pace(Pace.REPEAT)
    assert at(piece)[3] == 5
    piece.next()
    assert at(piece)[3] == 7
    piece.undo()
    piece.back()
    assert at(piece)[3] == 4
    piece.back()
    assert at(piece)[3] == 1


def test_changing_the_pace_never_moves_the_place(piece):
    scene.press(piece, 3)
    before = at(piece)
    for pace in (Pace.REPEAT, Pace.ROUND, Pace.STITCH):
        piece.turn_pace()
        assert (piece.glance().pace, at(piece)) == (pace, before)


def test_back_takes_the_same_way_as_next_did(piece):
    piece.show_loops(True)
    way = []
    for _ in range(60):
        way.append((piece.state.spot, piece.glance().at_end))
        piece.next()
    for spot, _ in reversed(way):
        piece.back()
        assert piece.state.spot == spot


def test_back_at_the_very_first_step_says_so(piece):
    piece.back()
    assert at(piece) == (0, 0, 0, 0)
    assert piece.glance().last_press == "this is the very first step of Body"


def test_second_stitch_of_a_place_goes_into_the_same(piece):
    work_to(piece, 2)
    scene.press(piece, 3)
    seen = piece.glance()
    assert (seen.step_where, seen.after) == ("in the same st", "then sc in the next st")
    assert [(r.k, r.of, r.step, r.steps) for r in seen.repeats] == [(1, 4, 3, 3)]


def test_open_length_is_worked_again_until_reached(piece):
    work_to(piece, 3)
    scene.press(piece, 12)
    seen = piece.glance()
    assert (seen.at_end, seen.step_text) == (True, "long enough?")
    # 5 mm a round by the gauge, and three are done
    assert seen.step_where == "to 9 cm about 15 more rounds, by the gauge"
    piece.next()
    scene.press(piece, 12)
    assert (at(piece), piece.glance().rounds) == ((0, 0, 3, 12), 7)
    piece.length_reached()
    assert at(piece) == (0, 0, 4, 0)
    assert piece.glance().round_label == "Rnd 4"


def test_length_reached_said_at_the_start_of_one_more_drops_that_one(piece):
    work_to(piece, 3)
    scene.press(piece, 13)
    assert piece.glance().rounds == 7
    piece.length_reached()
    assert (at(piece), piece.glance().rounds) == ((0, 0, 3, 0), 6)


def test_length_cannot_be_judged_amid_a_round_nor_in_a_counted_one(piece):
    piece.length_reached()
    assert piece.glance().last_press == "this round has no open length"
    work_to(piece, 3)
    scene.press(piece, 2)
    piece.length_reached()
    assert piece.glance().last_press == "the length is judged at a round's end"


def test_count_of_an_open_round_keeps_the_maker_at_its_end(piece):
    piece.go_to_round(3)
    scene.press(piece, 12)
    assert piece.glance().asking
    piece.enter_count(11)
    seen = piece.glance()
    assert (seen.at_end, seen.asking) == (True, False)
    piece.next()
    assert dict(piece.state.counts.items()) == {(0, 0, 2, 0): 11}


def test_rounds_of_open_length_are_counted_when_going_to_a_round(piece):
    work_to(piece, 3)
    for _ in range(2):
        scene.press(piece, 13)
    piece.go_to_round(4)
    assert at(piece) == (0, 0, 3, 0)
    assert piece.state.spot.round == 2
    piece.go_to_round(6)
    assert piece.glance().round_label == "Rnd 4"
    piece.go_to_round(9)
    assert piece.glance().last_press == "there is no round 9: Body has 8"


def test_going_back_in_open_rounds_adds_none(piece):
    work_to(piece, 3)
    scene.press(piece, 13)
    piece.back()
    piece.next()
    assert (at(piece), piece.glance().rounds) == ((0, 0, 3, 0), 7)


def test_loops_are_shown_one_by_one_with_the_variant_of_the_first(piece):
    work_to(piece, 4)
    piece.show_loops(True)
    seen = piece.glance()
    assert seen.variant == "first"
    assert seen.loops == ("up through the join", "draw through all")
    assert seen.how_to == "Begin in the join."
    places = []
    for _ in range(5):
        piece.next()
        places.append((at(piece)[3], piece.glance().loop))
    assert places == [(0, 1), (1, 0), (1, 1), (1, 2), (2, 0)]


def test_hiding_loops_keeps_the_place_and_the_next_press_ends_the_stitch(piece):
    work_to(piece, 4)
    piece.show_loops(True)
    piece.next()
    piece.show_loops(False)
    assert at(piece)[3] == 0
    piece.next()
    assert (at(piece)[3], piece.glance().loop) == (1, 0)


def test_go_to_a_stitch(piece):
    work_to(piece, 2)
    piece.go_to_stitch(5)
    assert (at(piece)[3], piece.glance().made) == (6, 5)
    piece.go_to_stitch(12)
    assert (at(piece)[3], piece.glance().step_text) == (13, "join")
    piece.go_to_stitch(13)
    assert piece.glance().last_press == "there is no stitch 13: this round makes 12"


def test_next_and_previous_round(piece):
    scene.press(piece, 3)
    piece.previous_round()
    assert at(piece) == (0, 0, 0, 0)
    piece.next_round()
    assert at(piece) == (0, 0, 1, 0)
    piece.previous_round()
    assert at(piece) == (0, 0, 0, 0)
    piece.go_to_round(6)
    piece.next_round()
    assert piece.glance().last_press == "this is the last round of Body"


def test_mark_and_return(piece):
    piece.return_to_mark()
    assert piece.glance().last_press == "no place is marked"
    scene.press(piece, 3)
    piece.mark()
    piece.go_to_part(1, 1)
    piece.return_to_mark()
    assert at(piece) == (0, 0, 0, 3)
    assert piece.glance().mark == "Body, Rnd 1, 3 stitches made"


def finish_part(session):
    session.set_pace(Pace.ROUND)
    for _ in range(30):
        if session.glance().part_done:
            return
        if session.glance().until and session.glance().at_end:
            session.length_reached()
        else:
            session.next()


def test_the_part_ends_then_the_next_copy_follows(piece):
    piece.go_to_part(1, 0)
    finish_part(piece)
    seen = piece.glance()
    assert (seen.at_end, seen.part_done, seen.piece_done) == (True, True, False)
    assert (seen.step_text, seen.step_where) == ("part done", "next comes Ear, copy 2 of 2")
    piece.next()
    assert at(piece) == (1, 1, 0, 0)


def test_a_part_is_taken_up_where_it_was_left(piece):
    scene.press(piece, 3)
    piece.go_to_part(1, 1)
    scene.press(piece, 2)
    piece.go_to_part(0, 0)
    assert at(piece) == (0, 0, 0, 3)
    piece.go_to_part(1, 1)
    assert at(piece) == (1, 1, 0, 2)


@pytest.mark.parametrize(("part", "copy"), [(5, 0), (1, 2), (-1, 0), (0, -1)])
def test_a_part_that_is_not_there_is_refused(piece, part, copy):
    piece.go_to_part(part, copy)
    assert piece.glance().last_press == "there is no such part"


def test_going_back_into_a_finished_part_takes_it_up_again(piece):
    piece.go_to_part(1, 0)
    finish_part(piece)
    piece.back()
    assert not piece.glance().part_done
    assert piece.glance().parts[1].copies[0] == (1, 2, False)


def test_returning_to_a_mark_in_a_finished_part_takes_it_up_again(piece):
    piece.go_to_part(1, 0)
    piece.next()
    piece.mark()
    finish_part(piece)
    piece.go_to_part(0, 0)
    assert piece.glance().parts[1].copies[0][2]
    piece.return_to_mark()
    assert not piece.glance().parts[1].copies[0][2]


def test_undo_is_exact_after_much_was_undone_and_other_things_were_done(piece):
    states = []
    for n in range(50):
        states.append(piece.state)
        piece.set_pace((Pace.REPEAT, Pace.STITCH)[n % 2])
    for _ in range(45):
        piece.undo()
        assert piece.state == states.pop()
    for n in range(50):
        states.append(piece.state)
        piece.set_asking((Asking.NEVER, Asking.EVERY)[n % 2])
    while states:
        piece.undo()
        assert piece.state == states.pop()


def test_of_alternatives_the_first_is_worked_unless_another_is_chosen(piece):
    assert [line.chosen for line in piece.glance().parts] == [True, True, True, False, True]
    piece.choose(3)
    assert [line.chosen for line in piece.glance().parts] == [True, True, False, True, True]
    piece.undo()
    assert [line.chosen for line in piece.glance().parts] == [True, True, True, False, True]


def test_going_to_a_part_set_aside_chooses_it(piece):
    piece.go_to_part(3, 0)
    assert piece.glance().parts[3].chosen
    assert not piece.glance().parts[2].chosen


def test_choosing_away_from_the_part_in_work_moves_to_the_chosen(piece):
    piece.go_to_part(2, 0)
    piece.choose(3)
    assert at(piece)[:2] == (3, 0)


def work_all(session: Session) -> list[str]:
    order = []
    for _ in range(40):
        seen = session.glance()
        if seen.piece_done:
            return order
        order.append(f"{seen.part} {seen.copy}")
        finish_part(session)
        session.next()
    return order


def test_the_whole_piece_is_worked_to_its_end(piece):
    piece.choose(3)
    assert work_all(piece) == ["Body 1", "Ear 1", "Ear 2", "Plain trim 1", "Making up 1"]
    seen = piece.glance()
    assert (seen.piece_done, seen.step_text) == (True, "piece done")
    before = piece.state
    piece.next()
    assert piece.state == before
    assert piece.glance().last_press == "the piece is done"


def test_an_earlier_part_left_undone_comes_after_the_later_ones(piece):
    piece.go_to_part(1, 0)
    assert work_all(piece)[-1] == "Body 1"


def test_making_up_is_ticked_sentence_by_sentence_without_a_count(piece):
    piece.go_to_part(4, 0)
    seen = piece.glance()
    assert (seen.making_up, seen.instruction) == (True, "Sew on the ears.")
    piece.next()
    assert piece.glance().instruction == "Weave in all ends."
    piece.next()
    assert piece.glance().part_done
