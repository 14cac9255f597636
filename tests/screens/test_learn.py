"""Learning a key: what arrived is shown, bound and kept; clashes are said."""

import tomllib

import pytest

from tests.screens.stage import begin, on_stage, text
from tracker.screens.keeping import with_keys
from tracker.screens.settings import read_settings


def words(app):
    """The screen as one line, however it is wrapped."""
    return " ".join(text(app).split())


async def pick(pilot, app, title):
    """Take the line with this title in the list of actions."""
    from textual.widgets import OptionList

    options = app.screen.query_one(OptionList)
    rows = [str(option.prompt) for option in options.options]
    options.highlighted = next(n for n, row in enumerate(rows) if row.startswith(title + " "))
    await pilot.press("enter")
    await pilot.pause()


async def test_a_key_is_learned_and_kept(tmp_path, own_home):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l")
        assert "Press the key" in text(app)
        await pilot.press("f18")
        assert "f18, sent as ESC [ 57381u" in words(app)
        assert "So far it does nothing." in words(app)
        await pick(pilot, app, "Next")
        assert 'f18 now does "Next".' in words(app)
        await pilot.press("escape", "f18", "space")
        assert session.glance().place.step == 2
    assert read_settings(own_home / "settings.toml").keys["next"][-1] == "f18"


async def test_what_else_is_set_stays(tmp_path, own_home):
    own_home.mkdir()
    path = own_home / "settings.toml"
    path.write_text('theme = "light"\nheld = "each"\n[keys]\nundo = ["z"]\n')
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "f13")
        await pick(pilot, app, "Back")
    table = tomllib.loads(path.read_text())
    assert (table["theme"], table["held"], table["keys"]["undo"]) == ("light", "each", ["z"])
    assert table["keys"]["back"] == ["backspace", "left", "pageup", "f13"]


async def test_a_clash_is_said_and_the_key_changes_hands(tmp_path, own_home):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "right")
        assert 'It now does "Next"; given to another, it no longer does that.' in words(app)
        await pick(pilot, app, "Back")
        assert 'now does "Back", no longer "Next".' in words(app)
    keys = read_settings(own_home / "settings.toml").keys
    assert "right" in keys["back"]
    assert "right" not in keys["next"]


async def test_the_last_key_of_an_action_is_not_taken_away(tmp_path, own_home):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "u")
        await pick(pilot, app, "Next")
        assert 'Not done: u is the only key for "Undo"' in words(app)
    assert not (own_home / "settings.toml").exists()


async def test_a_key_it_has_already_and_a_key_left_alone(tmp_path, own_home):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "u")
        await pick(pilot, app, "Undo")
        assert 'u does "Undo" already.' in words(app)
        await pilot.press("f13", "escape")
        assert "f13 is left as it was." in words(app)
    assert not (own_home / "settings.toml").exists()


async def test_settings_that_cannot_be_written_are_said(tmp_path, own_home):
    own_home.mkdir()
    (own_home / "settings.toml").write_text("theme = [")
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "f13")
        await pick(pilot, app, "Next")
        assert "Not kept: settings.toml is not TOML" in words(app)
        await pilot.press("escape", "f13")
        assert session.glance().place.step == 0


WRITTEN = """\
# My own.
theme = "light"   # the lamp is behind me

[keys]
# The pedal under the table:
next = ["space", "f13"]  # left
back = [
    "backspace",
    "f14",
]
# That is all.

[bell]
# No bell at night.
round = false
"""


async def test_only_the_lines_of_the_keys_learned_are_written_anew(tmp_path, own_home):
    own_home.mkdir()
    path = own_home / "settings.toml"
    path.write_text(WRITTEN)
    session = begin(tmp_path)
    settings = read_settings(path)
    async with on_stage(session, settings=settings) as (app, pilot):
        for key, title in (("f15", "Next"), ("f14", "Undo"), ("f16", "Back")):
            await pilot.press("l", key)
            await pick(pilot, app, title)
            await pilot.press("escape")
    assert path.read_text() == WRITTEN.replace(
        'next = ["space", "f13"]', 'next = ["space", "f13", "f15"]'
    ).replace(
        'back = [\n    "backspace",\n    "f14",\n]\n',
        'back = ["backspace", "f16"]\nundo = ["u", "f14"]\n',
    )


@pytest.mark.parametrize(
    "text",
    ["", "# Nothing yet.", "[bell]\nround = true", "[keys]", '[keys]\nundo = ["z"]', "[keys]\r\n"],
)
def test_keys_are_kept_whatever_is_in_the_file(text):
    kept = with_keys(text, {"next": ("space", "f13")})
    assert kept.startswith(text)
    assert tomllib.loads(kept) == {
        **tomllib.loads(text),
        "keys": {**tomllib.loads(text).get("keys", {}), "next": ["space", "f13"]},
    }


@pytest.mark.parametrize("text", ['keys.undo = ["z"]\n', 'keys = { undo = ["z"] }\n'])
async def test_keys_written_in_another_way_are_left_to_the_maker(tmp_path, own_home, text):
    own_home.mkdir()
    path = own_home / "settings.toml"
    path.write_text(text)
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("l", "f13")
        await pick(pilot, app, "Next")
        assert "Not kept: the keys in settings.toml do not stand" in words(app)
        assert "put this there yourself: next =" in words(app)
    assert path.read_text() == text
