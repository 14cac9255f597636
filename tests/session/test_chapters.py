"""Chapter marks from the times of the presses: exact to the second, whatever was undone."""

import datetime as dt
import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest
import scene

from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.session.chapters import BRIEF, STOPPED, chapters, lines
from tracker.session.moments import moments
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings

BEGIN = dt.datetime(2026, 3, 2, 10, 15, tzinfo=dt.UTC)
START = int(BEGIN.timestamp())


class Worker:
    """Works the hand-made piece on a clock of its own."""

    def __init__(self, folder):
        self.now = BEGIN
        self.session = scene.start(folder, clock=lambda: self.now, fold_at=10**9)

    def press(self, *gaps):
        for seconds in gaps:
            self.wait(seconds)
            self.session.next()

    def wait(self, seconds):
        self.now += dt.timedelta(seconds=seconds)

    def marks(self, began=START, ended=None):
        log = list(moments(self.session.path.read_bytes()))
        return list(lines(chapters(scene.plan(), log, began, ended)))


@pytest.fixture
def worker(tmp_path):
    made = Worker(tmp_path)
    yield made
    made.session.close()


def test_each_round_is_marked_where_it_was_begun(worker):
    worker.press(*[20] * 7)  # six stitches and the join: the count is asked for
    worker.press(20)  # the count is right: Rnd 2 begins, at 2:40
    worker.press(*[10] * 14)  # to its end
    worker.press(30)  # Rnd 3 begins
    assert worker.marks() == ["00:00 Rnd 1", "02:40 Rnd 2", "05:30 Rnd 3"]


def test_long_talk_in_the_middle_of_a_round_moves_no_mark(worker):
    worker.press(*[20] * 8)
    worker.press(10, 10, 900)  # fifteen minutes of talk
    worker.press(*[10] * 11)
    worker.press(30)
    assert worker.marks()[1:] == ["02:40 Rnd 2", "20:20 Rnd 3"]


def test_a_recording_that_begins_later_begins_with_the_round_in_work(worker):
    worker.press(*[20] * 10)
    worker.press(*[20] * 5)
    assert worker.marks(START + 200) == ["00:00 Rnd 2"]
    assert worker.marks(START + 155) == ["00:00 Rnd 2"]
    assert worker.marks(START + 140) == ["00:00 Rnd 1", "00:20 Rnd 2"]


def test_going_back_is_marked_and_passing_through_is_not(worker):
    worker.press(*[20] * 9)
    worker.wait(60)
    worker.session.previous_round()
    worker.session.previous_round()
    worker.press(*[20] * 3)
    assert worker.marks() == ["00:00 Rnd 1", "02:40 Rnd 2", "04:00 Rnd 1"]
    worker.wait(60)
    for _ in range(3):
        worker.wait(1)
        worker.session.next_round()
    worker.press(BRIEF + 1)
    assert worker.marks()[3:] == ["06:01 Rnd 4"]


def test_what_was_undone_leaves_the_marks_of_what_was_seen(worker):
    worker.press(*[20] * 9)
    worker.wait(40)
    worker.session.undo()
    worker.wait(20)
    worker.session.undo()
    worker.press(40)
    assert worker.marks() == ["00:00 Rnd 1", "02:40 Rnd 2", "04:00 Rnd 1", "04:40 Rnd 2"]


def test_several_parts_are_named(worker):
    worker.press(20, 20)
    worker.wait(60)
    worker.session.go_to_part(1, 1)
    worker.press(20)
    assert worker.marks() == ["00:00 Body, Rnd 1", "01:40 Ear, copy 2 of 2, Row 1"]


def test_it_ends_when_nothing_was_pressed_for_an_hour_or_where_it_is_said(worker):
    worker.press(*[20] * 9)
    worker.wait(STOPPED + 1)
    worker.session.next_round()
    worker.press(30)
    assert worker.marks() == ["00:00 Rnd 1", "02:40 Rnd 2"]
    assert worker.marks(ended=START + 100) == ["00:00 Rnd 1"]
    late = worker.marks(ended=START + 2 * STOPPED)
    assert late == ["00:00 Rnd 1", "02:40 Rnd 2", "1:03:01 Rnd 3"]


def test_a_folded_file_gives_the_same_marks_but_for_one_press(tmp_path):
    worker = Worker(tmp_path)
    worker.press(*[20] * 9)
    worker.press(*[10] * 14)
    before = chapters(scene.plan(), moments(worker.session.path.read_bytes()), START)
    worker.session.close()
    again = scene.reopen(worker.session.path, clock=lambda: worker.now, fold_at=1)
    again.mark()
    again.retry()
    again.retry()
    log = list(moments(worker.session.path.read_bytes()))
    assert len(log) < 20
    after = chapters(scene.plan(), log, START)
    assert [mark[1:] for mark in after] == [mark[1:] for mark in before]
    assert all(0 <= a.at - b.at <= 20 for a, b in zip(before, after, strict=True))
    again.close()


def test_nothing_pressed_is_no_chapter(worker):
    worker.press(20, 20)
    assert worker.marks(START + 1000) == []


def command(home, *words):
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "chapters", *words],
        cwd=Path(__file__).parents[2],
        env={**os.environ, "HOOKSIDE_HOME": str(home), "TZ": "UTC"},
        capture_output=True,
        check=False,
        timeout=60,
    )
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def test_the_command_takes_a_time_of_the_last_day_or_a_date(own_home, monkeypatch):
    monkeypatch.setenv("TZ", "UTC")
    time.tzset()
    now = [BEGIN]
    pattern = load_pattern(library.find("dusk-moth"))
    session = Session.start(
        pattern, "", own_home / "pieces", around=Surroundings(clock=lambda: now[0])
    )
    for _ in range(9):
        now[0] += dt.timedelta(seconds=20)
        session.next()
    session.close()
    marks = "00:00 Rnd 1\n02:40 Rnd 2\n"
    assert command(own_home, "--began", "10:15") == (0, marks, "")
    assert command(own_home, "dusk-moth", "--began", "2026-03-02 10:15:00") == (0, marks, "")
    assert command(own_home, "--began", "10:15", "--ended", "10:16") == (0, "00:00 Rnd 1\n", "")
    told = json.loads(command(own_home, "--began", "10:15", "--json")[1])["chapters"]
    assert [(one["seconds"], one["round"]) for one in told] == [(0, "Rnd 1"), (160, "Rnd 2")]
    status, out, err = command(own_home, "--began", "11:00")
    assert (status, out) == (2, "")
    assert "in the hour after 11:00" in err
    for words in ("half past ten", "0001-01-01"):
        status, out, err = command(own_home, "--began", words)
        assert (status, out) == (2, "")
        assert "is no time" in err
