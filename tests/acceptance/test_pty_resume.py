"""A piece put down in the middle of a round is taken up again at the very same step."""

import subprocess
import sys

from tests.screens.terminal import Terminal

HOOKSIDE = (sys.executable, "-m", "tracker")
BEGIN = (*HOOKSIDE, "work", "tea-cosy", "--size", "4 cups")
SMALL = (40, 12)
"""The size of terminal on which the counter stands in plain figures."""

STITCH, ROUND = b"p", b"pp"
"""Keys that turn the pace from a round to a stitch, and from a stitch to a round."""


def where():
    """The place as the command prints it."""
    done = subprocess.run((*HOOKSIDE, "where"), capture_output=True, text=True, check=True)
    return done.stdout


def press(terminal, keys, words):
    """Press keys one at a time, as fingers do; the words are on the screen after the last."""
    for key in keys:
        terminal.send(bytes((key,)))
        terminal.read(0.02)
    terminal.until(words)


def work_into_the_texture_round(terminal):
    """First round stitch by stitch, rounds 2 to 8 whole, then 12 thickets; the presses made."""
    terminal.until("0 made · must end on 8")
    first = b" " * 11
    press(terminal, first, "8 made · must end on 8")
    on = b" " + ROUND + b"  " * 7
    press(terminal, on, "0 made · must end on 32")
    texture = STITCH + b" " * 13
    press(terminal, texture, "12 made · must end on 32")
    return len(first + on + texture)


def page(terminal):
    """All rows of the screen but the last three, which tell of presses and keys."""
    terminal.read(0.3)
    return terminal.page.display[:-3]


def test_the_place_and_the_undo_outlive_the_process():
    with Terminal(*SMALL, command=BEGIN) as terminal:
        presses = work_into_the_texture_round(terminal)
        before = page(terminal)
        assert "Rnd 9 of 19" in "\n".join(before)
        terminal.send(b"q")
        assert terminal.left() == 0
    place = where()
    assert "Rnd 9 of 19 · 12 of 32 stitches made · next: thk" in place

    with Terminal(*SMALL, command=HOOKSIDE) as terminal:
        terminal.until("12 made · must end on 32")
        assert page(terminal) == before
        assert where() == place
        press(terminal, b" ", "13 made · must end on 32")
        press(terminal, b"uu", "11 made · must end on 32")
        press(terminal, b"r", "12 made · must end on 32")
        press(terminal, b"u" * presses, "0 made · must end on 8")
        press(terminal, b"u", "nothing to undo")
        press(terminal, b"r" * presses, "12 made · must end on 32")
        terminal.send(b"q")
        assert terminal.left() == 0
    assert where() == place
