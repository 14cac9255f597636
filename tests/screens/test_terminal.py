"""The real command on a pseudo-terminal: colours, pedals, and every way of leaving."""

import os
import re
import signal
import sys
import termios

import pytest
from textual import events
from textual._xterm_parser import XTermParser

from tests.screens.terminal import Terminal
from tracker.screens.pedals import VT220, name_pedals
from tracker.session.looking import look
from tracker.session.returning import HOLD
from tracker.session.shelf import latest, pieces_folder

COLOUR = re.compile(rb"\x1b\[([0-9;:]*)m")


def colour_codes(raw):
    """All SGR codes that set a colour (ECMA-48 8.3.117 and the aixterm bright ones)."""
    codes = []
    for match in COLOUR.finditer(raw):
        for code in re.split(rb"[;:]", match[1]):
            number = int(code or 0)
            if number in (*range(30, 50), *range(90, 108)):
                codes.append(number)
    return codes


EVERYWHERE = (
    *(b"  ", b"t", b"\x1b", b"?", b"q", b"/", b"ma", b"\x1b", b"l", b"\x1b", b"n", b"a\r"),
    *(b"i", b"q", b"f", b"q", b"v", b"\x1b", b"pp", b" ", b"7", b"\r", b"w", b"\x1b"),
)
"""Keys that lead to every screen and back."""


def test_without_colour_no_colour_code_is_written():
    with Terminal(NO_COLOR="1") as terminal:
        terminal.until("must end on")
        for keys in EVERYWHERE:
            terminal.send(keys)
            terminal.read(0.4)
        terminal.send(b"q")
        assert terminal.left() == 0
        assert colour_codes(terminal.raw) == []
        assert b"\x1b[1m" in terminal.raw
        assert re.search(rb"\x1b\[[0-9;]*7m", terminal.raw)


def test_without_colour_the_shelf_has_none_either():
    command = (sys.executable, "-m", "tracker", "shelf")
    with Terminal(command=command, NO_COLOR="1") as terminal:
        terminal.until("nothing on it yet")
        terminal.send(b"n")
        terminal.until("What will you work on?")
        terminal.send(b"\r")
        terminal.until("Before you begin")
        assert colour_codes(terminal.raw) == []


def test_with_colour_there_are_colours():
    with Terminal() as terminal:
        terminal.until("must end on")
        assert colour_codes(terminal.raw)


@pytest.mark.parametrize(("columns", "rows"), [(100, 30), (80, 24), (40, 12)])
def test_who_puts_down_is_told_the_place_and_to_hold_the_loop_in_whole_words(columns, rows):
    with Terminal(columns, rows) as terminal:
        terminal.until("must end on")
        for keys in (b"g", b"7", b"\r", b"q"):
            terminal.send(keys)
            terminal.read(0.2)
        assert terminal.left() == 0
        terminal.read()
        told = terminal.raw.rpartition(b"\x1b[?1049l")[2].decode()
        rows = [row for row in re.sub(r"\x1b\[[^a-z]*[a-zA-Z]", "", told).splitlines() if row]
        assert all(len(row) <= columns for row in rows)
        assert " ".join(rows).endswith(
            "Hedgerow tea cosy, 4 cups · Body · Rnd 7 of 19 · 0 of 56 stitches made"
            f" · next: ch 1 {HOLD}"
        )


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_signal_leaves_in_good_order(number):
    with Terminal() as terminal:
        terminal.until("must end on")
        terminal.send(b" ")
        terminal.until("last press  ")
        terminal.process.send_signal(number)
        assert terminal.left() == 0
        assert termios.tcgetattr(terminal.inner)[3] == terminal.before[3]
        assert b"\x1b[?1049l" in terminal.raw


def until_stopped(terminal):
    for _ in range(200):
        pid, status = os.waitpid(terminal.process.pid, os.WUNTRACED | os.WNOHANG)
        if pid and os.WIFSTOPPED(status):
            return
        terminal.read(0.05)
    raise AssertionError("it never stopped")


def test_to_the_shell_and_back_the_place_and_the_terminal_are_as_they_were():
    with Terminal() as terminal:
        terminal.until("must end on")
        for presses in (1, 2):
            terminal.send(b" ")
            terminal.until("last press  ")
            terminal.read(0.3)
            shown = terminal.page.display
            terminal.send(b"\x1a")
            until_stopped(terminal)
            terminal.read()
            assert termios.tcgetattr(terminal.inner) == terminal.before
            assert terminal.raw.count(b"\x1b[?1049l") == presses
            assert terminal.raw.rfind(b"\x1b[?25h") > terminal.raw.rfind(b"\x1b[?25l")
            terminal.page.reset()
            terminal.process.send_signal(signal.SIGCONT)
            terminal.until("? help")
            assert terminal.page.display == shown
        terminal.send(b"q")
        assert terminal.left() == 0
    assert look(latest(pieces_folder()).path).history.done == 2


def test_a_storm_of_sizes_loses_no_press_and_ends_in_a_whole_screen():
    with Terminal(100, 30) as terminal:
        terminal.until("must end on")
        for number in range(150):
            rows, columns = ((1, 1), (1 + number % 60, 1 + number * 7 % 200))[number % 2]
            terminal.resize(columns, rows)
            if number % 30 == 0:
                terminal.send(b" ")
            terminal.read(0.005)
        terminal.page.reset()
        terminal.resize(100, 30)
        terminal.until("must end on")
        terminal.send(b"q")
        assert terminal.left() == 0
        assert termios.tcgetattr(terminal.inner) == terminal.before
    assert look(latest(pieces_folder()).path).history.done == 5


def test_a_terminal_that_is_gone_ends_the_process_even_where_sighup_is_ignored():
    command = (
        "import signal, sys; signal.signal(signal.SIGHUP, signal.SIG_IGN);"
        "from tracker.cli import main; sys.exit(main(['work', 'tea-cosy', '--size', '4 cups']))"
    )
    with Terminal(command=(sys.executable, "-c", command)) as terminal:
        terminal.until("must end on")
        os.close(terminal.inner)
        os.close(terminal.outer)
        assert terminal.process.wait(timeout=10) is not None


@pytest.mark.parametrize(("code", "name"), VT220.items())
def test_pedal_keys_have_their_names(code, name):
    name_pedals()
    parsed = [
        event.key
        for event in XTermParser(debug=False).feed(f"\x1b[{code}")
        if isinstance(event, events.Key)
    ]
    assert parsed == [name]


def test_settings_that_cannot_be_used_are_said_before_the_screen_opens(own_home):
    own_home.mkdir()
    (own_home / "settings.toml").write_text('[keys]\nnext = ["spacebar"]\n')
    with Terminal() as terminal:
        assert terminal.left() == 2
        terminal.read()
        page = "\n".join(terminal.page.display)
        assert '"spacebar" is not the name of a key' in page
        assert "Traceback" not in page


def test_settings_that_are_a_link_are_refused_and_nothing_is_lost(own_home):
    own_home.mkdir()
    real = own_home.with_name("real.toml")
    real.write_text('theme = "light"\n')
    (own_home / "settings.toml").symlink_to(real)
    with Terminal(200, 24) as terminal:
        assert terminal.left() == 2
        terminal.read()
        said = f"settings.toml is a link to {real}: put that file itself in its place"
        assert said in "\n".join(terminal.page.display)
    assert real.read_text() == 'theme = "light"\n'
