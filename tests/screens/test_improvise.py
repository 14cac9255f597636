"""A round improvised on the screen, line by line, and on a real terminal that is killed."""

import re
import sys
import time

import pytest
from textual.widgets import Input

from tests.screens.stage import SIZES, begin, on_stage, shown, text
from tests.screens.terminal import Terminal
from tests.screens.test_plain import plain
from tracker.screens.actions import DEFAULT_KEYS
from tracker.screens.improvise import Improvise
from tracker.screens.plain import PlainWork
from tracker.screens.work import WorkScreen
from tracker.session.looking import glance_at

COMMAND = (sys.executable, "-m", "tracker", "work")

KEYS = {" ": "space", "*": "asterisk", ",": "comma", ";": "semicolon", "(": "left_parenthesis"}


def moth(folder):
    """A moth whose body stands before round 6."""
    session = begin(folder, "dusk-moth", "")
    session.go_to_round(6)
    return session


async def write(pilot, words):
    await pilot.press(*(KEYS.get(letter, letter) for letter in words))
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
async def test_the_verdict_is_in_sight_while_the_line_is_typed(tmp_path, size):
    session = moth(tmp_path)
    async with on_stage(session, size) as (app, pilot):
        await pilot.press("v")
        await write(pilot, "*sc 4, inc; rep")
        seen = " ".join(text(app).split())
        assert "Rnd 5 below leaves 30 stitches." in seen
        assert "*sc 4, inc; rep Takes 30, makes 36: comes out even." in seen
        assert "Then Rnd 7 gets 36 stitches instead of 30 and makes 36." in seen
        assert session.state.changes == {}
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert shown(app)[1 if size == (200, 60) else 0].strip().startswith("Rnd 6 of 26 · changed")
        assert "*sc 4, inc; rep" in text(app)
        assert session.glance().ends_on == 36


async def test_words_that_are_not_understood_have_a_caret_beneath(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v")
        await write(pilot, "sc 4, 3 wobbles, sc 5")
        lines = shown(app)
        caret = next(row for row, line in enumerate(lines) if "^" in line)
        marked = re.search(r"\^+", lines[caret])
        assert lines[caret - 1][slice(*marked.span())] == "3 wobbles"
        assert "'3 wobbles' is not understood." in text(app)


async def test_words_at_fault_at_the_end_of_a_long_line_are_brought_into_sight(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session, (40, 12)) as (app, pilot):
        await pilot.press("v")
        await write(pilot, "sc 4, inc, sc 4, inc, sc 4, inc, sc 4, inc, 3 wobbles, sc")
        lines = shown(app)
        caret = next(row for row, line in enumerate(lines) if "^" in line)
        marked = re.search(r"\^+", lines[caret])
        assert lines[caret - 1][slice(*marked.span())] == "3 wobbles"


async def test_the_line_begins_with_the_present_words_and_typing_replaces_them(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(6)
    async with on_stage(session, (40, 12)) as (app, pilot):
        await pilot.press("v")
        await pilot.pause()
        assert "ch 1, *hdc in next 4 sts, 2 hdc" in text(app)
        assert "So it is worked now: type over it" in text(app)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Improvise)
        await write(pilot, "hdc 40")
        assert app.screen.query_one(Input).value == "hdc 40"


async def test_escape_leaves_everything_as_it_was(tmp_path):
    session = moth(tmp_path)
    before = session.path.read_bytes()
    async with on_stage(session) as (app, pilot):
        await pilot.press("v")
        await write(pilot, "*sc 4, inc; rep")
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert session.path.read_bytes() == before


async def test_what_does_not_come_out_takes_a_second_enter(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v")
        await write(pilot, "sc 29 (29)")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Improvise)
        assert "It does not come out even; enter once more" in text(app)
        await pilot.press("enter")
        await pilot.pause()
        assert session.glance().ends_on == 29


async def test_nothing_typed_is_not_accepted(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v", "down")
        await pilot.pause()
        await pilot.press("enter", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Improvise)
        assert "Type the round, such as: *sc 4, inc; rep" in text(app)
        assert session.state.changes == {}


async def test_the_arrows_turn_to_what_else_can_be_done(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v", "up")
        await pilot.pause()
        assert "▸ Rnd 6 left out" in text(app)
        assert "Then Rnd 7 gets 30 stitches and makes 30 as printed." in text(app)
        await pilot.press("enter")
        await pilot.pause()
        assert session.glance().round_label == "Rnd 7"
        await pilot.press("u")
        assert session.glance().round_label == "Rnd 6"


async def test_a_line_typed_is_shown_as_plain_text(tmp_path):
    session = moth(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v")
        app.screen.query_one(Input).value = "[red]sc 30[/red] (30)"
        await pilot.pause()
        assert "[red]sc 30" in text(app)


async def test_making_up_says_that_there_is_no_round(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    session.go_to_part(4, 0)
    async with on_stage(session) as (app, pilot):
        await pilot.press("v")
        await pilot.pause()
        assert "There is no round to improvise here." in text(app)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)


def test_line_by_line_enter_tells_and_enter_accepts(own_home):
    moth(own_home / "pieces").close()
    lines = plain(b"v1*sc 4, icn\x7f\x7fnc; rep\n")
    at = lines.index("Takes 30, makes 36: comes out even.")
    assert lines[at - 2 : at] == ["*sc 4, inc; rep", "Rnd 5 below leaves 30 stitches."]
    assert lines[at + 2] == "enter once more accepts it; esc leaves all as it was"
    lines = plain(b"v1*sc 4, inc; rep\n\n ")
    assert "Rnd 6 otherwise: *sc 4, inc; rep · next sc in the next st · 0 of 36 made" in "\n".join(
        lines
    )
    assert lines[-1] == "next sc in the next st · 1 of 36 made · repeat 1 of 6"


def test_line_by_line_escape_leaves_it(tmp_path):
    session = moth(tmp_path)
    work = PlainWork(session, DEFAULT_KEYS)
    for keys in (["v", "4"], ["v", "x", "1", "a"]):
        for key in keys:
            assert list(work.press(key, key))
        assert list(work.press("escape")) == ["left as it was"]
    assert session.state.changes == {}
    session.close()


def test_an_improvised_round_outlives_a_kill(own_home):
    moth(own_home / "pieces").close()
    with Terminal(command=COMMAND) as terminal:
        terminal.until("Rnd 6 of 26")
        terminal.send(b"v")
        terminal.until("Rnd 5 below leaves 30 stitches.")
        terminal.send(b"*sc 4, inc; rep")
        terminal.until("Takes 30, makes 36: comes out even.")
        terminal.send(b"\r")
        terminal.until("Rnd 6 of 26 · changed")
        terminal.send(b"   ")
        terminal.until("next stitch")
        terminal.process.kill()
    path = next((own_home / "pieces").glob("*.piece.toml"))
    assert glance_at(path).own == "changed"
    with Terminal(command=COMMAND) as terminal:
        terminal.until("Hookside was stopped")
        terminal.send(b" ")
        terminal.until("Rnd 6 of 26 · changed")
        assert "*sc 4, inc; rep" in "\n".join(terminal.page.display)
        terminal.send(b"u" * 4)
        terminal.until("sc in each st around. (30)")


def test_a_slip_is_mended_in_order_over_a_terminal_that_brings_keys_at_once(own_home):
    moth(own_home / "pieces").close()
    with Terminal(command=COMMAND) as terminal:
        terminal.until("Rnd 6 of 26")
        terminal.send(b"v")
        terminal.until("Rnd 5 below leaves 30 stitches.")
        terminal.send(b"*sc 4, icn; rep")
        terminal.until("'icn' is not understood.")
        terminal.send(b"\x7f" * len("icn; rep") + b"inc; rep")
        terminal.until("Takes 30, makes 36: comes out even.")
        assert "*sc 4, inc; rep" in "\n".join(terminal.page.display)


def test_words_that_come_fast_keep_their_spaces(own_home):
    moth(own_home / "pieces").close()
    with Terminal(command=COMMAND) as terminal:
        terminal.until("Rnd 6 of 26")
        terminal.send(b"v")
        terminal.until("Rnd 5 below leaves 30 stitches.")
        terminal.send(b" ")
        time.sleep(0.5)  # as long as a key is held before it repeats
        for word in b"sc in next 4 sts, inc in next st, sc in next 25 sts".split(b" "):
            terminal.send(word + b" ")
            time.sleep(0.03)
        terminal.until("Takes 30, makes 31")
        shown = "\n".join(terminal.page.display)
        assert " sc in next 4 sts, inc in next st, sc in next 25 sts" in shown
