"""Notes at any place, and what the first copy tells while the second is worked."""

import pytest
from textual.widgets import Input

from tests.screens.stage import begin, on_stage, text
from tests.screens.test_plain import plain
from tracker.screens.work import WorkScreen
from tracker.session.looking import glance_at
from tracker.session.session import Session


async def write(pilot, words):
    await pilot.press("n")
    await pilot.pause()
    await pilot.press(*words, "enter")
    await pilot.pause()


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_a_note_is_written_and_stays_in_sight_through_its_round(tmp_path, size):
    session = begin(tmp_path)
    session.go_to_round(3)
    session.go_to_stitch(5)
    async with on_stage(session, size) as (app, pilot):
        await write(pilot, "bead [red]")
        assert isinstance(app.screen, WorkScreen)
        assert "note: bead [red]" in text(app)
        await pilot.press("space")
        assert "note after stitch 5: bead [red]" in text(app)
        await pilot.press("down")
        assert "bead" not in text(app)


async def test_a_note_is_changed_dropped_and_undone(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await write(pilot, "one")
        await pilot.press("n")
        await pilot.pause()
        assert app.screen.query_one(Input).value == "one"
        await pilot.press("t", "escape")
        await pilot.pause()
        assert session.note_here() == "one"
        await write(pilot, " two")
        assert session.note_here() == "one two"
        session.note("")
        assert session.note_here() == ""
        session.undo()
        session.undo()
        assert session.note_here() == "one"


def test_a_note_outlives_closing_whatever_stands_in_it(tmp_path):
    session = begin(tmp_path)
    session.note('a "b" \\ c\n\x1b[31m = { x } é')
    kept = session.note_here()
    session.close()
    again = Session.open(session.path)
    assert again.notices == ()
    assert again.note_here() == kept == "a ”b” / c␊␛[31m = { x } é"
    again.close()


def test_a_long_note_is_cut(tmp_path):
    session = begin(tmp_path)
    session.note("x" * 500)
    assert session.note_here() == "x" * 200
    session.close()


def tiles(folder):
    """A mat of tiles: in the first, round 2 was counted otherwise and has a note."""
    session = begin(folder, "lattice-mat", "")
    session.go_to_round(2)
    session.note("pull tight")
    session.go_to_stitch(session.glance().ends_on)
    while not session.glance().at_end:
        session.next()
    session.enter_count(session.glance().ends_on + 1)
    session.go_to_part(0, 1)
    return session


async def test_the_second_copy_tells_what_was_done_in_the_first(tmp_path):
    session = tiles(tmp_path)
    async with on_stage(session, (100, 30)) as (app, pilot):
        assert "copy 1" not in text(app).replace("copy 1 of", "")
        await pilot.press("down")
        ends_on = session.glance().ends_on
        assert f"copy 1: note: pull tight; copy 1: {ends_on + 1} counted" in text(app)


async def test_the_second_copy_is_told_how_the_first_came_right(tmp_path):
    session = begin(tmp_path, "headband", "adult")
    session.go_to_part(2, 0)
    session.go_to_stitch(88)
    while not session.glance().at_end:
        session.next()
    session.enter_count(86)
    session.come_right()
    right = session.glance().right
    session.go_to_part(2, 1)
    session.go_to_round(2)
    assert right
    assert f"copy 1: {right}" in session.glance().memo
    assert session.glance().right == ""
    session.close()


def test_line_by_line_notes_are_told_when_their_round_is_reached(own_home):
    session = tiles(own_home / "pieces")
    session.close()
    lines = plain(b"\x1b[B")
    assert "copy 1: note: pull tight" in lines[-1]
    assert glance_at(session.path).copy == 2
