"""``hookside weigh`` and ``hookside ahead``, as processes."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.session.looking import look
from tracker.session.session import Session

ROOT = Path(__file__).parent.parent


def hookside(*words):
    """Run one command."""
    command = [sys.executable, "-m", "tracker", *words]
    return subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False
    )


@pytest.fixture
def piece(own_home):
    """A piece of the moth, at its beginning."""
    pattern = load_pattern(library.demo_patterns()["dusk-moth"])
    session = Session.start(pattern, "", own_home / "pieces")
    session.close()
    return session.path


def work(path, presses):
    session = Session.open(path)
    for _ in range(presses):
        session.next()
    session.close()


def test_weighing_twice_tells_whether_the_yarn_lasts(piece):
    assert "weigh it again" in hookside("weigh", "60", "g").stdout
    work(piece, 120)
    done = hookside("weigh", "dusk-moth", "54.5g")
    assert (done.returncode, done.stderr) == (0, "")
    first, second = done.stdout.splitlines()
    assert first == "54.5 g of A left"
    assert "A, slate" in second
    assert "needed" in second
    told = hookside("ahead").stdout
    assert second in told
    assert "nine times in ten" in told


def test_the_figures_are_there_for_programs_too(piece):
    hookside("weigh", "60 g")
    work(piece, 120)
    hookside("weigh", "54 g", "--yarn", "a")
    data = json.loads(hookside("ahead", "--json").stdout)
    (yarn,) = data["yarns"]
    assert yarn["grams needed"]["low"] < yarn["grams needed"]["likely"]
    assert data["seconds left"] == {"round": None, "part": None, "piece": None}
    assert data["making up ahead"] is True


def test_nothing_is_pretended_of_a_piece_just_begun(piece):
    assert hookside("ahead").stdout.startswith("nothing is known yet")
    assert json.loads(hookside("ahead", "--json").stdout)["yarns"] == []


@pytest.mark.parametrize(
    "words", [["4", "lb"], ["moth", "and", "4", "g"], ["much"], ["-4 g"], ["4 g", "--yarn", "Q"]]
)
def test_what_cannot_be_kept_is_one_clear_line(piece, words):
    done = hookside("weigh", *words)
    assert done.returncode == 2
    assert done.stderr.startswith("hookside: ")
    assert "Traceback" not in done.stderr
    assert look(piece).history.state.weighed == ()
