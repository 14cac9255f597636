"""On the work screen: how many rounds are left to a length, and the measure that corrects it."""

import pytest
from textual.widgets import Input

from tests.screens.stage import begin, on_stage, shown, text
from tests.screens.test_plain import plain
from tracker.screens.work import WorkScreen
from tracker.session.looking import glance_at

SIZES = [(40, 12), (80, 24), (100, 30), (200, 60)]


def at_length(folder):
    """The tea cosy at the start of the round that is worked to a length of 19 cm."""
    session = begin(folder)
    session.go_to_round(17)
    return session


async def write(pilot, words):
    await pilot.press("d")
    await pilot.pause()
    await pilot.press(*words, "enter")
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
async def test_the_rounds_left_are_in_sight_and_follow_a_measure(tmp_path, size):
    session = at_length(tmp_path)
    async with on_stage(session, size) as (app, pilot):
        assert "about 4 more rounds" in text(app)
        await write(pilot, ["1", "2", "full_stop", "5"])
        assert isinstance(app.screen, WorkScreen)
        assert session.measured_here() == "12.5 cm"
        assert "about 8 more rounds" in text(app)
        while not session.glance().at_end:
            session.next()
        await pilot.press("m")
        assert "about 7 more" in text(app)


async def test_the_page_says_what_to_type_and_keeps_what_was_there(tmp_path):
    session = at_length(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("d")
        await pilot.pause()
        assert "Length at Rnd 17, 0 made" in text(app)
        assert "such as 14.5 cm" in text(app)
        await pilot.press("5", "space", "i", "n", "enter")
        await pilot.pause()
        await pilot.press("d")
        await pilot.pause()
        assert app.screen.query_one(Input).value == "5 in"
        await pilot.press("escape")
        await pilot.pause()
        await write(pilot, ["backspace"] * 4 + ["q"])
        assert '"q" is not a number with a unit' in text(app)
        assert session.measured_here() == "5 in"


async def test_where_no_length_is_worked_to_nothing_is_said(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    async with on_stage(session, (100, 30)) as (app, pilot):
        before = shown(app)
        await write(pilot, ["9"])
        after = shown(app)
        changed = [
            row for row, (was, now) in enumerate(zip(before, after, strict=True)) if was != now
        ]
        assert [after[row].strip().startswith("last press  9 cm measured") for row in changed] == [
            True
        ]


def test_line_by_line_a_length_is_typed_in_millimetres(own_home):
    session = at_length(own_home / "pieces")
    session.close()
    lines = plain(b"d125\r")
    assert "about 8 more rounds with this one as measured" in lines[-1]
    assert glance_at(session.path).left.startswith("about 8 more")
