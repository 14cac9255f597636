"""The card that is shown before the work when a piece lay for a while."""

from datetime import datetime, timedelta, timezone

import pytest

from tests.screens.stage import on_stage, text
from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.screens.card import CardScreen
from tracker.screens.work import WorkScreen
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings

PUT_DOWN = datetime(2026, 3, 2, 10, 15, tzinfo=timezone(timedelta(hours=1)))


def clock(after=timedelta(0)):
    return Surroundings(clock=lambda: PUT_DOWN + after)


def put_down(folder, name="tea-cosy", size="4 cups", *, at_round=7, made=17):
    """A piece that was put down at a place of its first part."""
    session = Session.start(
        load_pattern(library.demo_patterns()[name]), size, folder, around=clock()
    )
    session.go_to_round(at_round)
    session.go_to_stitch(made)
    session.close()
    return session.path


def later(path, **gap):
    return Session.open(path, around=clock(timedelta(**gap)))


@pytest.mark.parametrize(
    ("gap", "said"),
    [
        ({"minutes": 61}, "1 hour ago"),
        ({"hours": 30}, "30 hours ago"),
        ({"days": 4}, "4 days ago"),
    ],
)
async def test_how_long_ago_is_said(tmp_path, gap, said):
    async with on_stage(later(put_down(tmp_path), **gap)) as (app, _):
        assert isinstance(app.screen, CardScreen)
        assert f"Put down {said}  2026-03-02 10:15" in text(app)


@pytest.mark.parametrize("gap", [{"minutes": 59}, {"days": -1}])
async def test_there_is_no_card_after_a_moment_nor_where_the_clock_went_back(tmp_path, gap):
    async with on_stage(later(put_down(tmp_path), **gap)) as (app, _):
        assert isinstance(app.screen, WorkScreen)


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_place_last_next_and_how_to_find_it_are_in_sight_at_every_size(tmp_path, size):
    async with on_stage(later(put_down(tmp_path), days=4), size) as (app, _):
        seen = text(app)
        for words in (
            "Rnd 7 of 19 · Body",
            "4 days ago",
            "last         hdc in the next st",
            "next         ",
            "hook 5 mm · A, moss",
            "6 whole, Rnd 7 begun",
            "17 since the marker",
            "1 loop, not a stitch",
        ):
            assert words in seen


async def test_the_place_is_put_right_by_typing_the_stitch(tmp_path):
    session = later(put_down(tmp_path), days=4)
    async with on_stage(session) as (app, pilot):
        await pilot.press("3", "2", "backspace", "1")
        assert "Go to stitch: 31_" in text(app)
        await pilot.press("space")
        assert "31 since the marker" in text(app)
        assert session.glance().made == 31
        await pilot.press("space")
        assert isinstance(app.screen, WorkScreen)
        assert "31" in text(app)
        await pilot.press("u")
        assert session.glance().made == 17


async def test_a_stitch_that_is_not_there_is_said(tmp_path):
    session = later(put_down(tmp_path), days=4)
    async with on_stage(session) as (app, pilot):
        await pilot.press("9", "9", "space")
        assert "there is no stitch 99: this round makes 56" in text(app)
        assert session.glance().made == 17


async def test_the_round_and_the_part_are_put_right(tmp_path):
    session = later(put_down(tmp_path), days=4)
    async with on_stage(session) as (app, pilot):
        await pilot.press("g", "5", "space")
        assert "4 whole, Rnd 5 not begun" in text(app)
        await pilot.press("t", "down", "space")
        await pilot.pause()
        assert isinstance(app.screen, CardScreen)
        assert session.glance().place.part == 1


async def test_escape_drops_what_is_typed_and_back_moves_nothing(tmp_path):
    session = later(put_down(tmp_path), days=4)
    async with on_stage(session) as (app, pilot):
        await pilot.press("3", "escape", "backspace")
        assert isinstance(app.screen, CardScreen)
        assert "Go to" not in text(app)
        assert session.glance().made == 17


async def test_the_advice_on_tension_is_given_only_within_a_round(tmp_path):
    async with on_stage(later(put_down(tmp_path), days=1)) as (app, _):
        assert "common" in text(app)
    async with on_stage(later(put_down(tmp_path / "2", made=0), days=1)) as (app, _):
        assert "common" not in text(app)
        assert "Rnd 6 was finished" in text(app)


async def test_rows_are_counted_as_rows_without_the_foundation(tmp_path):
    path = put_down(tmp_path, "headband", "adult", at_round=4, made=20)
    async with on_stage(later(path, days=1)) as (app, _):
        assert "rows         2 whole, Row 3 begun" in text(app)
        assert "20 since the turn" in text(app)
