"""What the presses took: read from the lines, kept when the file is folded, pauses left out."""

import datetime as dt
import shutil

import scene

from tracker.pattern.load import load_text
from tracker.session.looking import look
from tracker.session.place import Asking, Pace
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings
from tracker.session.worked import BRIEF, PAUSE, worked

BEGIN = dt.datetime(2026, 3, 2, 10, 15, tzinfo=dt.timezone(dt.timedelta(hours=1)))


class Clock:
    """A clock that is set by hand."""

    def __init__(self):
        self.now = BEGIN

    def __call__(self):
        return self.now

    def wait(self, seconds):
        self.now += dt.timedelta(seconds=seconds)


def stitches(session, clock, *gaps):
    """One press after each of the gaps."""
    for seconds in gaps:
        clock.wait(seconds)
        session.next()


def times(path):
    """When each item was made, in seconds from the beginning, and what it took."""
    items = look(path).history.items
    return [(item.when - int(BEGIN.timestamp()), item.took) for item in items]


def test_each_round_knows_what_it_took_also_when_the_file_is_folded(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock, fold_at=1)
    stitches(session, clock, 5, 6, 7, 8, 9, 10, 30)
    stitches(session, clock, 4, 4)
    before = times(session.path)
    assert before == [(75, 75), (83, 8)]
    long = session.path.read_bytes()
    session.retry()
    session.retry()
    assert session.path.read_bytes().count(b"\n") < long.count(b"\n")
    assert times(session.path) == before
    session.close()
    assert times(session.path)[: len(before)] == before
    assert times(scene.reopen(session.path, clock=clock).path)[: len(before)] == before


def test_pauses_are_recognised_and_not_counted(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    stitches(session, clock, 6, BRIEF + 1, 6, PAUSE + 1, 6)
    assert worked(look(session.path).history) == 18


def test_many_stitches_in_one_press_may_take_longer(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    session.turn_pace()
    session.turn_pace()
    stitches(session, clock, PAUSE - 1)
    assert worked(look(session.path).history) == PAUSE - 1


def test_the_first_press_counts_from_when_the_piece_was_taken_up(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    stitches(session, clock, 20, 5)
    session.close()
    clock.wait(3 * PAUSE)
    session = scene.reopen(session.path, clock=clock)
    stitches(session, clock, 40, 5)
    assert worked(look(session.path).history) == 70


def test_after_a_kill_the_time_until_it_is_opened_again_is_a_pause(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    stitches(session, clock, 10, 10)
    killed = tmp_path / "killed.piece.toml"
    shutil.copy(session.path, killed)
    clock.wait(BRIEF - 1)
    session = scene.reopen(killed, clock=clock)
    stitches(session, clock, 10)
    assert worked(look(killed).history) == 30


def test_a_clock_that_goes_back_takes_nothing_away(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    stitches(session, clock, 10, -3600, 10)
    assert worked(look(session.path).history) == 20


def test_a_long_round_counted_by_one_press_is_work_and_not_a_pause(tmp_path):
    clock = Clock()
    session = begin_wide(tmp_path, clock)
    stitches(session, clock, 40 * 60, 3 * 3600, 40 * 60)
    assert worked(look(session.path).history) == 80 * 60
    session.close()
    assert worked(look(session.path).history) == 80 * 60


def test_hands_rest_only_where_there_is_a_pause(tmp_path):
    clock = Clock()
    session = begin_wide(tmp_path, clock)
    stitches(session, clock, 20 * 60, 20 * 60)
    assert session.at_a_stretch() == 40 * 60
    clock.wait(PAUSE + 1)
    assert session.at_a_stretch() == 0
    stitches(session, clock, 3 * 3600)
    assert session.at_a_stretch() == 0
    stitches(session, clock, 20 * 60)
    assert session.at_a_stretch() == 20 * 60


def begin_wide(folder, clock):
    """A piece of wide rounds, counted by the round."""
    rounds = "\n".join(f"Rnd {n}: sc in each st around. (200)" for n in range(2, 9))
    text = f"""
title = "Wide tube"
[[part]]
name = "Tube"
worked = "spiral"
below = 200
rounds = '''
Rnd 1: sc in each st around. (200)
{rounds}
'''
"""
    around = Surroundings(clock=clock)
    session = Session.start(load_text(text), "", folder, around=around)
    session.set_pace(Pace.ROUND)
    session.set_asking(Asking.NEVER)
    return session


def test_time_worked_stays_when_presses_after_it_are_taken_back_and_others_made(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock)
    stitches(session, clock, 5, 6, 7, 8)
    session.close()
    session = scene.reopen(session.path, clock=clock)
    for _ in range(3):
        session.next()
    for _ in range(3):
        session.undo()
    session.next()
    assert worked(look(session.path).history) == 26


def test_time_worked_stays_when_presses_around_it_are_done_again_and_others_made(tmp_path):
    clock = Clock()
    session = scene.start(tmp_path, clock=clock, fold_at=1)
    for press in (session.mark, session.mark, session.undo, session.mark):
        clock.wait(6)
        press()
    session.close()
    session = scene.reopen(session.path, clock=clock, fold_at=1)
    session.next()
    session.undo()
    session.undo()
    session.redo()
    session.weigh("40 g")
    assert worked(look(session.path).history) == 24
    session.retry()
    session.retry()
    assert worked(look(session.path).history) == 24
