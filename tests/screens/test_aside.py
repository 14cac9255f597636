"""What is told in passing: time and yarn ahead, a rest, cautions; and weighing by a key."""

import datetime as dt

import pytest

from tests.screens.stage import SIZES, begin_text, on_stage, text
from tracker.pattern.cautions import caution
from tracker.pattern.load import load_text
from tracker.screens import work
from tracker.screens.actions import DEFAULT_KEYS
from tracker.screens.plain import PlainWork
from tracker.screens.settings import Settings, SettingsError, read_settings
from tracker.session.place import Asking
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings

TUBE = """
title = "Trial tube"
[[yarn]]
letter = "A"
name = "cotton"
colour = "rust"
[[part]]
name = "Tube"
worked = "spiral"
rounds = '''
Rnd 1: 20 sc in magic ring. (20)
Rnds 2-30: sc in each st around. (20)
'''
"""

BONNET = """
title = "Snail bonnet"
sizes = ["3 months"]
[[part]]
name = "Bonnet"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
'''
[[part]]
name = "Ties"
make = 1
worked = "rows"
rounds = '''
Row 1: ch 9, sc in 2nd ch from hook and in each ch across. (8)
'''
[[part]]
name = "Making up"
steps = ["Sew a button on.", "Weave in both ends.", "Take the markers out."]
"""


class Clock:
    """A clock that is set by hand."""

    def __init__(self):
        self.now = dt.datetime(2026, 3, 2, 10, tzinfo=dt.UTC)

    def __call__(self):
        return self.now


@pytest.fixture(autouse=True)
def soon(monkeypatch):
    """What waits for a quiet moment does not wait long."""
    monkeypatch.setattr(work, "AGAIN", 0.02)


def worked(folder, clock, presses, *, weigh=()):
    """A piece on which so many presses were made, ten seconds each, weighed before some."""
    session = Session.start(load_text(TUBE), "", folder, around=Surroundings(clock=clock))
    session.set_asking(Asking.NEVER)
    for number in range(presses):
        if number in weigh:
            session.weigh(weigh[number])
        clock.now += dt.timedelta(seconds=10)
        session.next()
    return session


async def until(app, pilot, words):
    """Wait until these words are on the screen."""
    for _ in range(100):
        if words in text(app):
            return
        await pilot.pause(0.02)
    raise AssertionError(f"{words!r} is not in\n{text(app)}")


async def a_while(pilot):
    await pilot.pause(0.15)


@pytest.mark.parametrize("size", SIZES[1:])
async def test_the_time_left_stands_at_the_top_and_nothing_else_moves(tmp_path, size):
    session = worked(tmp_path, Clock(), 68)
    async with on_stage(session, size, Settings(rest=0)) as (app, pilot):
        before = text(app).splitlines()
        await until(app, pilot, "round 2 min · piece 1 h 30 min left")
        after = text(app).splitlines()
        assert [row for row in range(24) if before[row][:70] != after[row][:70]] in ([], [1], [2])


async def test_nothing_is_told_of_a_piece_just_begun(tmp_path):
    session = begin_text(tmp_path, TUBE)
    async with on_stage(session, (100, 30)) as (app, pilot):
        await a_while(pilot)
        assert " left" not in text(app)
        await pilot.press("f")
        assert "nothing is known yet" in text(app)


async def test_a_yarn_that_runs_out_is_told_and_one_that_lasts_is_not(tmp_path):
    for left, told in (("30 g", True), ("300 g", False)):
        clock = Clock()
        begin = f"{int(left.split()[0]) + 10} g"
        session = worked(tmp_path / left, clock, 65, weigh={0: begin, 64: left})
        async with on_stage(session, (100, 30), Settings(rest=0)) as (app, pilot):
            await until(app, pilot, "piece 1 h 30 min left")
            assert ("A runs out in about Rnd 1" in text(app)) is told
            await pilot.press("f")
            assert "needed" in text(app)
            assert caution("hand-strain").sentence[:30] in text(app)
            assert ("lasts;" in text(app)) is not told


@pytest.mark.parametrize("size", SIZES)
async def test_the_yarn_is_weighed_by_a_key_and_taken_back_by_undo(tmp_path, size):
    session = worked(tmp_path, Clock(), 25)
    async with on_stage(session, size) as (app, pilot):
        await pilot.press("y")
        assert "Weigh A, rust" in text(app)
        await pilot.press(*"4", "3", ".", "5", "enter")
        assert session.state.weighed[-1].left == "43.5 g"
        assert "43.5 g of A left" in text(app)
        await pilot.press("y", "escape")
        await pilot.press("y", "enter")
        assert len(session.state.weighed) == 1
        await pilot.press("u")
        assert session.state.weighed == ()


async def test_what_is_no_weight_is_said(tmp_path):
    session = worked(tmp_path, Clock(), 25)
    async with on_stage(session, (100, 30)) as (app, pilot):
        await pilot.press("y", *"much", "enter")
        assert session.state.weighed == ()
        assert "type what the scale shows" in text(app)


@pytest.mark.parametrize("size", SIZES)
async def test_a_rest_is_called_to_mind_until_there_is_one(tmp_path, size):
    clock = Clock()
    session = worked(tmp_path, clock, 190)
    async with on_stage(session, size, Settings(rest=30)) as (app, pilot):
        await until(app, pilot, "rest your hands: 30 min")
        clock.now += dt.timedelta(minutes=6)
        await a_while(pilot)
        assert "rest your hands" not in text(app)
        await pilot.press("space")
        await a_while(pilot)
        assert "rest your hands" not in text(app)


async def test_the_reminder_can_be_turned_off_by_a_key_and_in_the_settings(tmp_path):
    session = worked(tmp_path, Clock(), 190)
    async with on_stage(session, (100, 30), Settings(rest=30)) as (app, pilot):
        await until(app, pilot, "rest your hands: 30 min")
        await pilot.press("k")
        assert "reminder to rest off for now" in text(app)
        await pilot.press("space")
        await a_while(pilot)
        assert "rest" not in text(app)
        await pilot.press("k")
        await until(app, pilot, "rest your hands")
    session = worked(tmp_path / "again", Clock(), 190)
    async with on_stage(session, (100, 30), Settings(rest=0)) as (app, pilot):
        await until(app, pilot, " left")
        assert "rest" not in text(app)


@pytest.mark.parametrize(
    ("written", "minutes"), [("rest = 45", 45), ("rest = 0", 0), ("rest = false", 0), ("", 30)]
)
def test_the_settings_say_how_long_a_stretch_is(tmp_path, written, minutes):
    path = tmp_path / "settings.toml"
    path.write_text(written, encoding="utf-8")
    assert read_settings(path).rest == minutes


@pytest.mark.parametrize("written", ["rest = -1", 'rest = "often"', "rest = true", "rest = 1.5"])
def test_what_is_no_stretch_is_said(tmp_path, written):
    path = tmp_path / "settings.toml"
    path.write_text(written, encoding="utf-8")
    with pytest.raises(SettingsError, match="rest is a number of minutes"):
        read_settings(path)


async def test_cautions_come_where_they_matter_and_their_sentences_on_their_page(tmp_path):
    session = Session.start(load_text(BONNET), "3 months", tmp_path)
    async with on_stage(session, (100, 30)) as (app, pilot):
        await a_while(pilot)
        assert "take care" not in text(app)
        session.go_to_part(1, 0)
        await until(app, pilot, "take care: cords, ties and drawstrings; tie cords on")
        session.go_to_part(2, 0)
        await until(app, pilot, "take care: buttons, safety eyes, beads")
        await pilot.press("space")
        assert "take care" not in text(app)
        await pilot.press("space")
        assert "take care: markers and pins left in the work (i)" in text(app)
        await pilot.press("i")
        flat = " ".join(text(app).split())
        assert f"Here: {caution('markers-left-in').sentence}" in flat
        assert flat.count(caution("markers-left-in").sentence[:40]) == 1
        assert caution("hat-ties").sentence[:40] in flat


def test_line_by_line_the_same_is_told(tmp_path):
    clock = Clock()
    session = worked(tmp_path, clock, 190, weigh={0: "40 g", 60: "30 g"})
    plain = PlainWork(session, DEFAULT_KEYS, rest=30)
    told = [*plain.retry(), *plain.retry(), *plain.retry()]
    assert told[0].startswith("rest your hands: 30 min")
    assert told[1].startswith("A runs out in about Rnd 1")
    assert len(told) == 2
    assert any(words.startswith("piece: ") for words in plain.press("f"))
    assert list(plain.press("k")) == ["reminder to rest off for now"]
    plain.press("y")
    for digit in "21":
        plain.press(digit)
    assert "21 g of A left" in next(iter(plain.press("space")))
    session.close()
