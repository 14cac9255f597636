"""What the README prints is so."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tracker.cli_parser import make_parser
from tracker.pattern import load
from tracker.pattern.check import check_pattern
from tracker.screens.actions import ACTIONS
from tracker.screens.keys import learn, shown

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def blocks(kind):
    """The fenced blocks of one kind, in order."""
    return re.findall(rf"^```{kind}\n(.*?)^```", README, re.MULTILINE | re.DOTALL)


EXAMPLE = next(block for block in blocks("toml") if "title" in block)


def test_the_example_pattern_checks_as_printed(tmp_path):
    path = tmp_path / "burr.toml"
    path.write_text(EXAMPLE, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "check", path],
        cwd=ROOT,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
    )
    assert done.stdout.strip() == blocks("text")[0].strip()


def test_the_example_pattern_leaves_no_key_unsaid():
    for keys in (load._PATTERN_KEYS, load._FIT_KEYS, load._STITCH_KEYS, load._PART_KEYS):
        for key in keys:
            assert re.search(rf"\b{key}\b", README), key
    assert check_pattern(load.load_text(EXAMPLE)).well


def commands():
    rows = re.findall(r"^\| `hookside ([a-z]+)([^`]*)` \|", README, re.MULTILINE)
    return [pytest.param(name, words, id=name) for name, words in rows]


@pytest.mark.parametrize(("name", "printed"), commands())
def test_every_option_of_a_command_stands_in_its_row(name, printed):
    parsers = make_parser()._subparsers._group_actions[0].choices
    known = [action.option_strings for action in parsers[name]._actions if action.option_strings]
    known.remove(["-h", "--help"])
    words = re.findall(r"(?<!\w)--?[a-z][a-z-]*", printed)
    assert sorted(words) == sorted(options[0] for options in known)


def test_every_command_has_its_row():
    parsers = make_parser()._subparsers._group_actions[0].choices
    assert sorted(parsers) == sorted(case.id for case in commands())


def test_the_keys_in_the_table_are_those_of_the_program():
    table = README[README.index("## Keys") : README.index("Pedals that send")]
    printed = re.findall(r"`([^`]+)`", table)
    every = [shown(key) for action in ACTIONS for key in action.keys]
    assert sorted(set(printed) - {"fg"}) == sorted(every)


@pytest.mark.parametrize("action", ACTIONS, ids=lambda action: action.name)
def test_every_action_stands_beside_its_key(action):
    rows = [row.split("|") for row in README.splitlines() if row.startswith("| `")]
    found = [row[2] for row in rows if f"`{shown(action.keys[0])}`" in row[1]]
    assert len(found) == 1
    assert action.title in found[0]


def test_the_settings_printed_are_settings():
    settings = tomllib.loads(next(block for block in blocks("toml") if "[keys]" in block))
    assert learn(settings["keys"])["next"] == ("space", "f13")


def test_every_picture_and_page_named_is_there():
    for name in re.findall(r"\]\(([^)#:]+)\)", README):
        assert (ROOT / name).exists(), name


def test_the_tests_are_run_by_the_same_words_everywhere():
    start, tests = (block.strip() for block in blocks("sh"))
    setup = "python3 -m venv .venv && .venv/bin/pip install -e '.[dev]' && .venv/bin/"
    assert start.startswith(f"{setup}hookside work tea-cosy")
    assert tests == f"{setup}python -m pytest"
    assert "run python -m pytest\n" in (ROOT / ".ci/run").read_text(encoding="utf-8")
