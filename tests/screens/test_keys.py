"""The table of actions, the maker's own keys, and the settings."""

import re

import pytest

from tracker.screens.actions import ACTIONS, DEFAULT_KEYS
from tracker.screens.keys import KeysError, key_named, learn
from tracker.screens.settings import Settings, SettingsError, read_settings
from tracker.session.session import Session


def test_no_key_does_two_things():
    keys = [key for action in ACTIONS for key in action.keys]
    assert len(keys) == len(set(keys))


def test_every_action_is_wholly_declared():
    for action in ACTIONS:
        assert action.title
        assert action.help.endswith(".")
        assert all(key_named(key) == key for key in action.keys)
        assert not action.method or callable(getattr(Session, action.method))


def test_no_action_needs_a_second_key_held():
    for action in ACTIONS:
        assert action.name == "suspend" or any("+" not in key for key in action.keys)


@pytest.mark.parametrize(
    ("word", "key"),
    [
        ("space", "space"),
        ("f18", "f18"),
        ("shift+f1", "shift+f1"),
        ("ctrl+n", "ctrl+n"),
        ("x", "x"),
        ("é", "é"),
        ("?", "question_mark"),
        ("/", "slash"),
        (".", "full_stop"),
        ("full_stop", "full_stop"),
        ("media_play_pause", "media_play_pause"),
        ("esc", None),
        ("hyperspace", None),
        ("ctrl+", None),
        ("", None),
        ("nokey+x", None),
    ],
)
def test_words_that_are_keys(word, key):
    assert key_named(word) == key


def test_what_is_not_named_keeps_its_keys():
    keys = learn({"next": ["f13"]})
    assert keys["next"] == ("f13",)
    assert {**keys, "next": DEFAULT_KEYS["next"]} == DEFAULT_KEYS


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ({"nxt": ["x"]}, '[keys] "nxt" is nothing that can be done; did you mean "next"?'),
        ({"next": ["spacebar"]}, '[keys] next: "spacebar" is not the name of a key'),
        ({"next": []}, '[keys] next: write a list of keys, such as ["space", "f13"]'),
        ({"next": [3]}, '[keys] next: "3" is not the name of a key'),
        ({"next": ["\x1b[2J!"]}, '[keys] next: "␛[2J!" is not the name of a key'),
        (
            {"next": ["u"]},
            "[keys] u is wanted for both next and undo; give one of them another key",
        ),
    ],
)
def test_a_table_that_cannot_be_used_is_said_in_plain_words(table, said):
    with pytest.raises(KeysError, match=f"^{re.escape(said)}$"):
        learn(table)


def test_keys_can_be_exchanged():
    keys = learn({"next": ["u"], "undo": "space"})
    assert (keys["next"], keys["undo"]) == (("u",), ("space",))


def test_no_settings_are_the_usual_ones(tmp_path):
    assert read_settings(tmp_path / "settings.toml") == Settings()


def test_settings_are_read(tmp_path):
    path = tmp_path / "settings.toml"
    path.write_text('theme = "light"\n[keys]\nnext = ["f18", "space"]\n')
    settings = read_settings(path)
    assert settings.theme == "light"
    assert settings.keys["next"] == ("f18", "space")


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ("theme = [", "settings.toml is not TOML"),
        ('theme = "mauve"', 'theme is "dark" or "light"'),
        ("theme = []", 'theme is "dark" or "light"'),
        ('colour = "x"', '"colour" is no setting'),
        ("keys = 3", "keys is a table"),
        ("[keys]\nnxt = []", "did you mean"),
        ("a = " + "[" * 100_000, "settings.toml is not TOML"),
    ],
)
def test_settings_that_cannot_be_used_are_said_in_plain_words(tmp_path, source, said):
    path = tmp_path / "settings.toml"
    path.write_text(source)
    with pytest.raises(SettingsError, match=re.escape(said)) as caught:
        read_settings(path)
    assert str(caught.value).startswith("settings.toml")


def test_settings_that_are_no_text_are_said_in_plain_words(tmp_path):
    path = tmp_path / "settings.toml"
    path.write_bytes(b"\xff\xfe")
    with pytest.raises(SettingsError, match="is no text in UTF-8"):
        read_settings(path)


@pytest.mark.parametrize("key", ["escape", "f5", "full_stop", "b"])
def test_no_action_lies_on_what_a_presenter_sends_besides(key):
    assert not [action.name for action in ACTIONS if key in action.keys]
