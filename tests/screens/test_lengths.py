"""On the work screen: how many rounds are left to a length, and the measure that corrects it."""

import pytest
from textual.widgets import Input

from tests.screens.stage import begin, on_stage, shown, text
from tests.screens.test_plain import plain
from tests.test_cli import PATTERNS
from tracker.pattern.foreword import foreword
from tracker.pattern.load import load_text
from tracker.pattern.plan import make_plan
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
        assert "7 more" in text(app)


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
    assert "to 19 cm about 8 more rounds with this one, as measured" in lines[-1]
    assert glance_at(session.path).left.startswith("to 19 cm about 8 more")


async def test_before_the_first_stitch_the_size_it_comes_out_at_is_told(tmp_path):
    session = begin(tmp_path, "tea-cosy", "4 cups")
    async with on_stage(session, (100, 30)) as (app, pilot):
        await pilot.press("i")
        await pilot.pause()
        # 64 hdc at 14 in 10 cm
        assert "By the gauge Body comes out 45.7 cm round and 20.2 cm deep." in text(app)


def test_a_crown_that_does_not_lie_flat_is_told_before_it_is_begun(tmp_path):
    source = (PATTERNS / "tea-cosy.toml").read_text(encoding="utf-8")
    plan = make_plan(load_text(source.replace("rounds = 10.5", "rounds = 14")), "8 cups")
    assert "Its crown ruffles: 10 more a round, where 6.3 lie flat." in " ".join(
        foreword(plan, plan.parts[0].part)
    )
