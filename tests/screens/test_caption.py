"""The caption file: the place at all times, whole, and no key waits for it."""

import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from tracker.screens import caption as captions
from tracker.screens.app import HooksideApp
from tracker.screens.caption import LARGEST, Caption, caption_words
from tracker.screens.inks import DARK
from tracker.screens.settings import Settings

from .stage import begin, text
from .terminal import Terminal

ROOT = Path(__file__).parents[2]


def holds(path, words, patience=400):
    """Whether a file comes to hold some words."""
    tick = threading.Event()
    for _ in range(patience):
        if path.exists() and words in path.read_text():
            return True
        tick.wait(0.01)
    return False


@pytest.fixture
def session(tmp_path):
    made = begin(tmp_path / "pieces")
    yield made
    made.close()


def test_it_holds_the_place_in_three_lines(session):
    session.go_to_round(8)
    session.go_to_stitch(17)
    assert caption_words(session.glance()) == (
        "Hedgerow tea cosy, 4 cups · Body\nRnd 8 of 19 · 17 of 64 sts\nhdc in the next st\n"
    )


async def test_every_press_is_in_the_file_soon(session, tmp_path):
    path = tmp_path / "now.txt"
    app = HooksideApp(session, tmp_path, Settings(), DARK, caption=path)
    async with app.run_test() as pilot:
        assert holds(path, "Rnd 1 of 19")
        await pilot.press("q", "down")
        assert holds(path, "Rnd 2 of 19")
        await pilot.press("down", "u")
        assert holds(path, "Rnd 2 of 19")
        await pilot.press("space", "space")
        assert holds(path, "1 of 16 sts")
        await pilot.press("space")
    assert path.read_text() == caption_words(session.glance())
    assert not list(tmp_path.glob(".now*"))


async def test_a_file_that_cannot_be_written_is_told_once_and_holds_nothing_up(session, tmp_path):
    gone = tmp_path / "gone"
    gone.mkdir()
    app = HooksideApp(session, tmp_path, Settings(), DARK, caption=gone / "now.txt")
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("q")
        assert holds(gone / "now.txt", "Rnd 1")
        (gone / "now.txt").unlink()
        gone.rmdir()
        await pilot.press("down")
        told = threading.Event()
        for _ in range(300):
            await pilot.pause()
            if "cannot be written" in text(app):
                break
            told.wait(0.01)
        assert "The caption now.txt cannot be written" in text(app)
        await pilot.press("down")
        assert session.glance().round == 3
        await pilot.press(*["left"] * 9)
        assert "cannot be written" not in text(app)


def test_a_slow_disk_holds_no_press_up_and_only_the_latest_place_is_written(
    session, tmp_path, monkeypatch
):
    path, written, go_on = tmp_path / "now.txt", [], threading.Event()

    def slowly(target, words):
        go_on.wait(20)
        written.append((target, words))

    monkeypatch.setattr(captions, "write_caption", slowly)
    shown = Caption(path, pytest.fail)
    for _ in range(50):
        session.next()
        shown.show(session.glance())
    assert written == []
    go_on.set()
    shown.close()
    assert written[-1] == (path, caption_words(session.glance()))
    assert len(written) <= 2


def test_who_reads_meanwhile_never_sees_half_a_caption(session, tmp_path):
    path = tmp_path / "now.txt"
    wanted = set()
    shown = Caption(path, pytest.fail)
    for _ in range(60):
        session.next()
        wanted.add(caption_words(session.glance()))
        shown.show(session.glance())
        if path.exists():
            assert path.read_text() in wanted
    shown.close()
    assert path.read_text() == caption_words(session.glance())


def work(*words):
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "work", *map(str, words)],
        cwd=ROOT,
        input=b"  q",
        capture_output=True,
        check=False,
        timeout=60,
    )
    return done.returncode, done.stderr.decode()


def test_line_by_line_it_holds_the_place_too(tmp_path):
    path = tmp_path / "now.txt"
    assert work("dusk-moth", "--plain", "--caption", path) == (0, "")
    assert path.read_text() == "Dusk moth · Body\nRnd 1 of 26 · 1 of 6 sts\nsc in the ring\n"
    assert work("dusk-moth", "--plain", "--caption", path) == (0, "")
    assert "3 of 6 sts" in path.read_text()


@pytest.mark.parametrize("kind", ["long", "short", "link", "folder", "nowhere"])
def test_no_other_file_is_written_over(tmp_path, kind):
    path = tmp_path / "now.txt"
    other = tmp_path / "other.txt"
    other.write_text("mine")
    if kind == "long":
        path.write_text("x" * (LARGEST + 1))
    elif kind == "short":
        path.write_text("Yarn to buy: plum\n")
    elif kind == "link":
        path.symlink_to(other)
    elif kind == "folder":
        path.mkdir()
    else:
        path = tmp_path / "nowhere" / "now.txt"
    held = path.read_text() if path.is_file() else ""
    status, said = work("dusk-moth", "--plain", "--caption", path)
    assert status == 2
    assert said.startswith("hookside: ")
    assert said.count("\n") == 1
    assert other.read_text() == "mine"
    assert held == (path.read_text() if path.is_file() else "")


def test_on_a_terminal(tmp_path):
    path = tmp_path / "now.txt"
    command = (sys.executable, "-m", "tracker", "work", "dusk-moth", "--caption", str(path))
    with Terminal(command=command) as terminal:
        terminal.until("Dusk moth")
        terminal.send(b"q")
        terminal.send(b" ")
        assert holds(path, "0 of 6 sts")
        terminal.send(b"q")
        assert terminal.left() == 0
    assert os.access(path, os.R_OK)
