"""The log of a piece: what became of every round; as lines, bars, a picture and JSON."""

import datetime as dt
import json
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from tracker.pattern.load import load_text
from tracker.session.place import Asking, Pace
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings
from tracker.writing.log_svg import SHAPE, log_picture
from tracker.writing.log_text import bar, bars, log_lines

ROOT = Path(__file__).parents[2]

BALL = """
title = "Ball <&> net"
[[yarn]]
letter = "A"
name = "cotton"
colour = "rust"
[[part]]
name = "Ball"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: inc in each st around. (12)
Rnd 3: sc in each st around. (12)
Rnd 4: sc in each st around. (12)
Rnd 5: [sc2tog] x 6. (6)
'''
[[part]]
name = "Cap"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
'''
[[part]]
name = "Making up"
steps = ["Stuff it.", "Sew it up."]
"""

BEGIN = dt.datetime(2026, 3, 2, 10, tzinfo=dt.UTC)
SVG = "{http://www.w3.org/2000/svg}"


class Clock:
    def __init__(self):
        self.now = BEGIN

    def __call__(self):
        return self.now


def begin(folder, text=BALL):
    clock = Clock()
    return Session.start(load_text(text), "", folder, around=Surroundings(clock=clock)), clock


def work(session, clock, presses, seconds=10):
    for _ in range(presses):
        clock.now += dt.timedelta(seconds=seconds)
        session.next()


@pytest.fixture
def piece(own_home):
    """Rounds 1 to 3 and a part of round 4; one count off, a note, two weighings."""
    session, clock = begin(own_home / "pieces")
    session.weigh("20 g")
    work(session, clock, 7)
    session.note("loose")
    work(session, clock, 6, seconds=20)
    session.enter_count(11)
    session.come_right()
    work(session, clock, 12)
    session.next()
    session.weigh("17 g")
    work(session, clock, 5)
    session.close()
    return session


def test_each_round_has_its_count_its_time_and_what_was_otherwise(piece):
    (ball,) = piece.log()
    first, second, third, fourth = ball.rounds
    assert [one.label for one in ball.rounds] == ["Rnd 1", "Rnd 2", "Rnd 3", "Rnd 4"]
    assert [one.stitches for one in ball.rounds] == [6, 11, 12, 5]
    assert [one.whole for one in ball.rounds] == [True, True, True, False]
    assert (first.seconds, second.seconds, fourth.seconds) == (60, 130, 50)
    assert second.changes == ("11 counted, 12 wanted",)
    assert len(third.changes) == 1
    assert (first.weighed, second.notes) == (("20 g of A left",), ("loose",))
    assert fourth.weighed == ("17 g of A left",)
    assert sum(grams for one in ball.rounds[:3] for _, grams in one.yarn) == pytest.approx(3, 0.01)


def test_the_time_of_a_round_is_its_own_also_by_rounds_and_without_counting(tmp_path):
    session, clock = begin(tmp_path)
    session.set_pace(Pace.ROUND)
    session.set_asking(Asking.NEVER)
    for seconds in (30, 60, 90, 120, 150):
        work(session, clock, 1, seconds)
    (ball,) = session.log()
    assert [one.seconds for one in ball.rounds] == [30, 60, 90, 120, 150]
    session.close()


def test_stitches_that_were_ripped_back_are_told_and_their_time_is_kept(tmp_path):
    session, clock = begin(tmp_path)
    work(session, clock, 4)
    session.go_to_stitch(1)
    work(session, clock, 3)
    (ball,) = session.log()
    assert (ball.rounds[0].again, ball.rounds[0].seconds) == (3, 70)
    session.close()


def test_a_piece_just_begun_has_no_log_and_a_part_not_begun_is_left_out(tmp_path):
    session, clock = begin(tmp_path)
    assert session.log() == ()
    work(session, clock, 2)
    session.go_to_part(2, 0)
    work(session, clock, 1)
    assert [part.name for part in session.log()] == ["Ball", "Making up"]
    session.close()


def test_a_folded_file_has_the_same_log(tmp_path):
    session, clock = begin(tmp_path)
    session._store.around = Surroundings(clock=clock, fold_at=1)
    work(session, clock, 20)
    before = session.log()
    session.retry()
    session.retry()
    session.close()
    again = Session.open(session.path)
    assert again.log() == before
    again.close()


def test_the_lines_say_it_all(piece):
    said = "\n".join(log_lines(piece.log(), dt.UTC))
    assert "Rnd 2       11 sts      2 min  2026-03-02 10:03" in said
    for words in ("11 counted, 12 wanted", "loose", "20 g of A left", "5 of 12 sts", "about"):
        assert words in said


def test_the_bars_are_as_long_as_the_figures(piece):
    said = list(bars(piece.log(), 80))
    rows = {row.split()[1]: row for row in said if row.startswith("  Rnd")}
    assert max(map(len, said)) <= 80
    full = rows["3"].count("█")
    assert rows["1"].split("█")[0].count(" ") == rows["3"].split("█")[0].count(" ") + 1
    assert full > rows["1"].count("█")
    assert "≠" in rows["2"]
    assert "≠" not in rows["1"]


@pytest.mark.parametrize(
    ("value", "drawn"), [(0, "    "), (1, "▎   "), (8, "██  "), (9, "██▎ "), (16, "████")]
)
def test_a_bar_goes_by_eighths_of_a_cell(value, drawn):
    assert bar(value, 16, 4) == drawn


def test_whatever_is_there_at_all_can_be_seen():
    assert bar(1, 10_000, 10).strip()
    assert bar(0, 0, 3) == "   "


def test_the_picture_is_the_shape_of_the_piece(piece):
    root = ET.fromstring(log_picture("Ball <&> net", piece.log()))
    rows = [rect for rect in root.iter(f"{SVG}rect") if rect.get("class") in ("sts", "off")]
    made = [int(rect.find(f"{SVG}title").text.split()[0]) for rect in rows]
    widths = [float(rect.get("width")) for rect in rows]
    assert made == [12, 11, 6]
    for many, width, rect in zip(made, widths, rows, strict=True):
        assert width == pytest.approx(SHAPE * many / 12, abs=0.1)
        middle = float(rect.get("x")) + width / 2
        assert middle == pytest.approx(float(rows[0].get("x")) + SHAPE / 2, abs=0.1)
    heights = [float(rect.get("y")) for rect in rows]
    assert heights == sorted(heights)
    assert "href" not in ET.tostring(root, encoding="unicode")


def test_words_of_a_file_are_words_in_the_picture(tmp_path):
    session, clock = begin(tmp_path)
    session.note("<script>&\x1b[2J")
    work(session, clock, 3)
    root = ET.fromstring(log_picture("</svg><b>", session.log()))
    said = "".join(root.itertext())
    assert "</svg><b>" in said
    assert "<script>&␛[2J" in said
    session.close()


def hookside(*words):
    command = [sys.executable, "-m", "tracker", *words]
    return subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False
    )


def test_the_command_prints_draws_and_tells_programs(piece, tmp_path):
    assert "11 counted, 12 wanted" in hookside("log").stdout
    assert "█" in hookside("log", "--plot").stdout
    data = json.loads(hookside("log", "--json").stdout)
    second = data["parts"][0]["rounds"][1]
    assert (second["stitches"], second["wanted"], second["seconds"]) == (11, 12, 130)
    assert dt.datetime.fromisoformat(second["when"]).tzinfo
    picture = tmp_path / "log.svg"
    assert hookside("log", "--svg", picture).returncode == 0
    assert ET.parse(picture).getroot().tag == f"{SVG}svg"
    refused = hookside("log", "--svg", picture)
    assert refused.returncode == 2
    assert "--force" in refused.stderr
    assert hookside("log", "--svg", picture, "--force").returncode == 0


def test_without_a_press_there_is_nothing_to_tell(own_home):
    begin(own_home / "pieces")[0].close()
    assert "nothing is worked yet" in hookside("log").stdout


def test_rounds_of_the_makers_own_and_those_left_out_are_told(tmp_path):
    session, clock = begin(tmp_path)
    session.set_pace(Pace.ROUND)
    session.set_asking(Asking.NEVER)
    work(session, clock, 1, seconds=60)
    choices = {choice.title: choice for choice in session.improvising().choices}
    session.improvise(choices["Rnd 2 otherwise"], "sc 1, inc 5")
    work(session, clock, 1, seconds=90)
    choices = {choice.title: choice for choice in session.improvising().choices}
    session.improvise(choices["Rnd 3 left out"], "")
    work(session, clock, 1, seconds=120)
    (ball,) = session.log()
    assert [one.label for one in ball.rounds] == ["Rnd 1", "Rnd 2", "Rnd 4"]
    assert [one.seconds for one in ball.rounds] == [60, 90, 120]
    assert ball.rounds[1].changes[0].startswith("changed: sc 1, inc 5")
    assert ball.left_out == ("Rnd 3",)
    session.close()


def test_a_round_of_the_makers_own_that_is_left_out_again_leaves_nothing_to_tell(tmp_path):
    session, clock = begin(tmp_path)
    work(session, clock, 7)
    choices = {one.title: one for one in session.improvising().choices}
    session.improvise(choices["a round of yours before Rnd 2"], "sc in each st around (6)")
    choices = {one.title: one for one in session.improvising().choices}
    session.improvise(choices["Rnd 1a left out"], "")
    (ball,) = session.log()
    assert (len(ball.rounds), ball.left_out) == (1, ())
    session.close()
