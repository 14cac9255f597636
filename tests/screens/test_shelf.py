"""The shelf: every piece, and what is done with it."""

import os
import subprocess
import sys
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from textual.widgets import Input

from tests.screens.stage import begin, shown, text
from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.screens.inks import DARK
from tracker.screens.settings import Settings
from tracker.screens.shelf import ShelfScreen
from tracker.screens.shelf_app import ShelfApp
from tracker.screens.work import WorkScreen
from tracker.session.session import Session
from tracker.session.shelf import Standing, latest, pieces
from tracker.session.surroundings import Surroundings

ROOT = Path(__file__).parents[2]


@asynccontextmanager
async def shelf(folder, size=(100, 30), palette=DARK):
    app = ShelfApp(None, folder, Settings(), palette)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        yield app, pilot
    if app.session is not None:
        app.session.close()


@pytest.fixture
def folder(own_home):
    """Two pieces, the cosy touched last."""
    folder = own_home / "pieces"
    band = begin(folder, "headband", "adult")
    band.close()
    os.utime(band.path, (1, 1))
    cosy = begin(folder)
    cosy.go_to_round(7)
    cosy.go_to_stitch(17)
    cosy.close()
    return folder


def names(folder, standing=Standing.IN_WORK):
    return [piece.name for piece in pieces(folder) if piece.standing is standing]


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_each_piece_has_its_place_and_share_in_sight(folder, size):
    async with shelf(folder, size) as (app, _):
        lines = shown(app)
        at = next(n for n, line in enumerate(lines) if "hedgerow-tea-cosy" in line)
        assert lines[at].split("%")[0].endswith(" 15 ")
        assert "Body · Rnd 7 of 19" in lines[at + 1]
        assert "furrow-headband" in text(app)
        for word in ("open", "new", "rename", "aside", "finish", "bin", "leave"):
            assert word in text(app)


async def test_an_empty_shelf_says_what_to_do_and_begins_a_piece(own_home):
    async with shelf(own_home / "pieces") as (app, pilot):
        assert "nothing on it yet: n begins a piece" in text(app)
        await pilot.press("n")
        await pilot.pause()
        assert "What will you work on?" in text(app)
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, ShelfScreen)


async def test_a_piece_is_opened(folder):
    async with shelf(folder) as (app, pilot):
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert app.session.glance().made == 17


async def test_a_piece_is_renamed(folder):
    async with shelf(folder) as (app, pilot):
        await pilot.press("e")
        assert app.screen.query_one(Input).value == "hedgerow-tea-cosy"
        await pilot.press(*"Gift [blue]", "enter")
        await pilot.pause()
        assert "Its name is gift-blue now." in text(app)
    assert names(folder) == ["gift-blue", "furrow-headband"]


async def test_a_name_without_a_letter_is_refused_and_escape_keeps_the_old_one(folder):
    async with shelf(folder) as (app, pilot):
        await pilot.press("e", *"**", "enter")
        await pilot.pause()
        assert "at least one letter" in text(app)
        await pilot.press("e", *"other", "escape")
    assert names(folder) == ["hedgerow-tea-cosy", "furrow-headband"]


async def test_a_piece_set_aside_is_not_the_latest_and_comes_back_when_opened(folder):
    async with shelf(folder) as (app, pilot):
        await pilot.press("s")
        await pilot.pause()
        assert "hedgerow-tea-cosy is set aside." in text(app)
        assert latest(folder).name == "furrow-headband"
        await pilot.press("enter")
        await pilot.pause()
        assert app.session.path.parent == folder
    assert names(folder) == ["hedgerow-tea-cosy", "furrow-headband"]


async def test_a_piece_is_finished_and_taken_back(folder):
    async with shelf(folder) as (_, pilot):
        await pilot.press("f")
        await pilot.pause()
        assert names(folder, Standing.FINISHED) == ["hedgerow-tea-cosy"]
        await pilot.press("f")
        await pilot.pause()
        assert names(folder, Standing.FINISHED) == []


async def test_the_bin_is_asked_for_twice_and_keeps_the_file(folder, own_home):
    data = (folder / "hedgerow-tea-cosy.piece.toml").read_bytes()
    async with shelf(folder) as (app, pilot):
        await pilot.press("d")
        assert "Press d again" in text(app)
        await pilot.press("escape", "d", "down", "d", "up")
        assert names(folder) == ["hedgerow-tea-cosy", "furrow-headband"]
        await pilot.press("d", "d")
        await pilot.pause()
        assert "is in the bin: b looks into it" in text(app)
    assert names(folder) == ["furrow-headband"]
    assert (own_home / "bin" / "hedgerow-tea-cosy.piece.toml").read_bytes() == data


async def test_a_piece_that_is_open_elsewhere_is_not_moved(folder):
    held = Session.open(folder / "hedgerow-tea-cosy.piece.toml")
    async with shelf(folder) as (app, pilot):
        await pilot.press("s")
        await pilot.pause()
        assert "is open in another window" in text(app)
    held.close()
    assert names(folder, Standing.SET_ASIDE) == []


async def test_a_piece_that_cannot_be_read_is_listed_with_why(folder):
    (folder / "torn.piece.toml").write_text("nonsense [red]")
    async with shelf(folder) as (app, pilot):
        assert "torn.piece.toml cannot be opened" in text(app)
        await pilot.press("end", "enter")
        await pilot.pause()
        assert isinstance(app.screen, ShelfScreen)


async def test_a_piece_moved_by_hand_within_the_folder_is_there(folder):
    (folder / "gifts").mkdir()
    (folder / "hedgerow-tea-cosy.piece.toml").rename(folder / "gifts" / "cosy.piece.toml")
    async with shelf(folder) as (app, _):
        assert "cosy" in text(app)
        assert "Rnd 7 of 19" in text(app)


async def test_the_time_worked_leaves_pauses_out_and_outlives_folding(own_home):
    folder = own_home / "pieces"
    time = [datetime(2026, 3, 2, 10, 0, tzinfo=UTC)]
    around = Surroundings(clock=lambda: time[0], fold_at=0)
    pattern = load_pattern(library.demo_patterns()["tea-cosy"])
    session = Session.start(pattern, "4 cups", folder, around=around)
    for minutes in (0, 2, 2, 60, 2):
        time[0] += timedelta(minutes=minutes)
        session.next()
    session.retry()
    session.retry()
    session.close()
    time[0] += timedelta(minutes=5)
    session = Session.open(session.path, around=around)
    session.undo()
    time[0] += timedelta(minutes=40)
    session.undo()
    time[0] += timedelta(minutes=2)
    session.next()
    session.close()
    async with shelf(folder) as (app, _):
        assert "8 min worked" in text(app)


async def test_a_piece_is_taken_out_of_the_bin_again(folder, own_home):
    async with shelf(folder) as (app, pilot):
        await pilot.press("b")
        assert "The bin  nothing in it" in text(app)
        await pilot.press("enter", "d", "d", "n", "e", "s", "f")
        assert len(pieces(folder)) == 2
        assert isinstance(app.screen, ShelfScreen)
        await pilot.press("b", "d", "d", "b")
        assert "The bin  1 in it" in text(app)
        assert "hedgerow-tea-cosy" in text(app)
        await pilot.press("enter")
        assert "is on the shelf again" in text(app)
        assert "The bin  nothing in it" in text(app)
        await pilot.press("b")
        assert "The shelf  2 on it" in text(app)
    assert [piece.standing for piece in pieces(folder)] == [Standing.IN_WORK] * 2


def worked_on(path):
    """Go on with a piece line by line, by its path."""
    command = [sys.executable, "-m", "tracker", "work", str(path), "--plain"]
    done = subprocess.run(command, cwd=ROOT, input=b" ", capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.fixture
def stray(folder, tmp_path):
    """One of the two pieces, moved out of the folder after it was worked on."""
    cosy = folder / "hedgerow-tea-cosy.piece.toml"
    worked_on(cosy)
    away = tmp_path / "away"
    away.mkdir()
    return cosy.rename(away / "my cosy.piece.toml")


async def test_a_piece_that_was_moved_away_is_missed_and_found_once_it_is_opened(folder, stray):
    async with shelf(folder, (200, 60)) as (app, pilot):
        assert "The shelf  2 on it" in text(app)
        assert f"not found where it was, {folder / 'hedgerow-tea-cosy.piece.toml'}" in text(app)
    worked_on(stray)
    async with shelf(folder, (200, 60)) as (app, pilot):
        assert "not found" not in text(app)
        assert "my cosy" in text(app)
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert app.session.path == stray


async def test_a_piece_moved_near_where_it_was_is_found_without_help(folder, stray):
    worked_on(stray)
    (stray.parent / "done").mkdir()
    moved = stray.rename(stray.parent / "done" / "cosy two.piece.toml")
    async with shelf(folder) as (app, pilot):
        assert "cosy two" in text(app)
        await pilot.press("down", "e")
        app.screen.query_one(Input).value = "cosy three"
        await pilot.press("enter")
        assert "Its name is cosy-three now." in text(app)
    assert not moved.exists()
    assert moved.with_name("cosy-three.piece.toml").exists()
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "where", "cosy-three"],
        cwd=ROOT, capture_output=True, check=True,
    )  # fmt: skip
    assert b"Hedgerow tea cosy" in done.stdout


async def test_a_piece_that_is_lost_for_good_is_forgotten(folder, stray):
    stray.unlink()
    async with shelf(folder) as (app, pilot):
        await pilot.press("down", "enter")
        assert "There is no piece hedgerow-tea-cosy.piece.toml." in text(app)
        await pilot.press("d")
        assert "Press d again to forget hedgerow-tea-cosy" in text(app)
        await pilot.press("d")
        assert "The shelf  1 on it" in text(app)
    async with shelf(folder) as (app, _):
        assert "The shelf  1 on it" in text(app)


async def test_what_is_in_the_bin_is_neither_lost_nor_on_the_shelf(folder, own_home):
    worked_on(folder / "hedgerow-tea-cosy.piece.toml")
    async with shelf(folder) as (app, pilot):
        await pilot.press("d", "d")
        assert "The shelf  1 on it" in text(app)
    (own_home / "bin" / "hedgerow-tea-cosy.piece.toml").unlink()
    async with shelf(folder) as (app, _):
        assert "The shelf  1 on it" in text(app)
