"""The help, the palette and the chooser."""

import pytest
from textual.widgets import Input

from tests.screens.stage import begin, on_stage, text
from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.screens.actions import ACTIONS
from tracker.screens.app import HooksideApp
from tracker.screens.inks import DARK
from tracker.screens.pages import Pages
from tracker.screens.settings import Settings
from tracker.screens.work import WorkScreen
from tracker.session.shelf import pieces


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_the_help_lists_every_action(tmp_path, size):
    session = begin(tmp_path)
    async with on_stage(session, size) as (app, pilot):
        await pilot.press("question_mark")
        seen = ""
        while isinstance(app.screen, Pages):
            seen += text(app)
            await pilot.press("space")
        assert all(action.title in seen for action in ACTIONS)


async def test_the_help_turns_back(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session, (40, 12)) as (app, pilot):
        await pilot.press("question_mark")
        first = text(app)
        await pilot.press("space", "pageup")
        assert text(app) == first


@pytest.mark.parametrize("keys", [("enter",), ("pagedown",), ("down", "up", "enter")])
async def test_an_action_is_found_by_a_part_of_its_name_and_done(tmp_path, keys):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("slash", *"round next")
        await pilot.pause()
        assert app.screen.query_one(Input).value == "round next"
        await pilot.press(*keys)
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert session.glance().round == 2


async def test_where_nothing_is_called_so_that_is_said_and_nothing_done(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("slash")
        assert "Undo" in text(app)
        await pilot.press(*"frog", "enter", "down")
        await pilot.pause()
        assert "Nothing is called so" in text(app)
        await pilot.press("escape")
        assert isinstance(app.screen, WorkScreen)
        assert not session.can_undo


async def test_a_pattern_and_a_size_are_chosen_and_the_piece_is_begun(tmp_path):
    app = HooksideApp(None, tmp_path, Settings(), DARK)
    async with app.run_test() as pilot:
        await pilot.pause()
        for path in library.demo_patterns().values():
            assert load_pattern(path).title in text(app)
        titles = [load_pattern(path).title for path in library.demo_patterns().values()]
        await pilot.press(*["down"] * titles.index("Hedgerow tea cosy"), "enter")
        assert "which size?" in text(app)
        await pilot.press("down", "space")
        await pilot.pause()
        assert text(app).strip().startswith("Before you begin")
        await pilot.press("q")
        assert "4 cups" in text(app)
        assert "Rnd 1 of 19" in text(app)
        app.session.close()
    assert [piece.name for piece in pieces(tmp_path)] == ["hedgerow-tea-cosy"]


async def test_a_piece_on_the_shelf_is_gone_on_with(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(5)
    session.close()
    app = HooksideApp(None, tmp_path, Settings(), DARK)
    async with app.run_test() as pilot:
        await pilot.pause()
        assert "hedgerow-tea-cosy" in text(app)
        await pilot.press("space")
        await pilot.pause()
        assert "Rnd 5 of 19" in text(app)
        app.session.close()


async def test_a_piece_that_cannot_be_opened_is_said_and_another_can_be_chosen(tmp_path):
    (tmp_path / "torn.piece.toml").write_text("nonsense")
    app = HooksideApp(None, tmp_path, Settings(), DARK)
    async with app.run_test() as pilot:
        await pilot.pause()
        await pilot.press("space")
        await pilot.pause()
        assert "torn" in text(app).splitlines()[1]
        assert app.session is None


async def test_the_chooser_can_be_left(tmp_path):
    app = HooksideApp(None, tmp_path, Settings(), DARK)
    async with app.run_test() as pilot:
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
    assert app.return_code == 0
