"""The hour: a moth is begun, a pedal pressed, a cat comes, a count is wrong, a round is improvised.

What takes long is told and not waited for, but for the key that is held down, which comes at
the times of a real keyboard: after half a second, then every 33 ms.
"""

from __future__ import annotations

import sys
import time
from datetime import datetime, timedelta
from itertools import cycle, islice

from tests.recording.reel import Reel
from tests.screens.terminal import BEFORE, Terminal
from tracker.session.session import Session
from tracker.session.shelf import latest, pieces_folder
from tracker.session.surroundings import Surroundings

HOOKSIDE = (sys.executable, "-m", "tracker")

PEDAL, OTHER_PEDAL = b"\x1b[6~", b"\x1b[C"
"""A page turner's two pedals set to page down and to the right arrow: both are next."""

HELD_FOR = 2.0
FIRST_WAIT, EVERY = 0.5, 0.033


def film() -> Reel:
    """All of it, from the first stitch to the return after four days."""
    reel = Reel()
    with reel.begin(*HOOKSIDE, "work", "dusk-moth") as terminal:
        _begin(reel, terminal)
        _pedals(reel, terminal)
        _held(reel, terminal)
        _interrupted(reel, terminal)
        _miscounted(reel, terminal)
        _improvised(reel, terminal)
        _put_down(reel, terminal)
    reel.printed("where", "In the kitchen: where was I?", *HOOKSIDE, "where")
    _four_days_pass()
    reel.minute = 4 * 24 * 60
    with reel.begin(*HOOKSIDE) as terminal:
        _return(reel, terminal)
    return reel


def press(terminal: Terminal, times: int) -> None:
    """So many presses on, with both pedals in turn."""
    terminal.send(b"".join(islice(cycle((PEDAL, OTHER_PEDAL)), times)))


def hold(terminal: Terminal, key: bytes) -> int:
    """Hold a key down as a keyboard sends it; how often it was sent."""
    end = time.monotonic() + HELD_FOR
    terminal.send(key)
    terminal.read(FIRST_WAIT)
    sent = 1
    while time.monotonic() < end:
        terminal.send(key)
        sent += 1
        time.sleep(EVERY)
    return sent


def _begin(reel: Reel, terminal: Terminal) -> None:
    reel.shot(terminal, "before", "A moth is begun: what to know before the first stitch.", BEFORE)
    reel.shot(terminal, "begun", "The first step of the first round.", "Rnd 1 of 26")


def _pedals(reel: Reel, terminal: Terminal) -> None:
    press(terminal, 4)
    reel.shot(terminal, "pedals", "Both hands on the work: the feet press next.", "3 made")
    press(terminal, 3)
    reel.shot(terminal, "counted", "The round is full: the count is asked for.", "it is 6")
    reel.minute = 3
    press(terminal, 3)
    reel.shot(terminal, "second", "Yes to the count; two increases of the next round.", "4 made")


def _held(reel: Reel, terminal: Terminal) -> None:
    reel.minute = 5
    hold(terminal, b" ")
    caption = "An elbow rests on the space bar for two seconds: it counts once."
    reel.shot(terminal, "held", caption, "6 made")


def _interrupted(reel: Reel, terminal: Terminal) -> None:
    reel.minute = 12
    terminal.send(b"x")
    reel.shot(terminal, "guarded", "The door bell: the guard is put on.", "guard on")
    terminal.send(b"uugg5hq\x1b[A")
    terminal.read(0.3)
    reel.shot(terminal, "cat", "The cat walks over the keys: the place stays.", "guard on")
    terminal.send(b"xx")
    reel.minute = 15
    reel.shot(terminal, "back", "Back at the table, the guard off.", "undo")


def _miscounted(reel: Reel, terminal: Terminal) -> None:
    reel.minute = 35
    terminal.send(b"g5 ")
    terminal.until("Rnd 5 of 26")
    terminal.send(b"pp")
    terminal.until("by round")
    press(terminal, 1)
    terminal.until("it is 30")
    terminal.send(b"29 ")
    reel.shot(terminal, "miscounted", "29 are counted, and 30 should be.", "1 too few")
    terminal.send(b"w")
    reel.shot(terminal, "why", "Why, and what can be done.", "You missed")
    terminal.send(b"\x1b[B" * 3)
    terminal.read(0.2)
    terminal.send(b"\r")
    caption = "On, the next round worked so that it comes right."
    reel.shot(terminal, "mended", caption, "Rnd 6 of 26", "into the same st")
    reel.minute = 40
    terminal.send(b"s15 ")
    reel.shot(terminal, "same", "There the step itself says so.", "in the same st once more")


def _improvised(reel: Reel, terminal: Terminal) -> None:
    reel.minute = 45
    terminal.send(b"g7 ")
    terminal.until("Rnd 7 of 26")
    terminal.send(b"v")
    terminal.until("Rnd 6 below leaves 30 stitches.")
    terminal.send(b"*sc 4, icn; rep")
    reel.shot(terminal, "slip", "A round of one's own is typed, with a slip.", "icn; rep ", "^^^")
    terminal.send(b"\x7f" * len("icn; rep") + b"inc; rep")
    reel.shot(terminal, "typed", "Put right, it comes out even.", "inc; rep ", "makes 36:")
    terminal.send(b"\r")
    reel.shot(terminal, "improvised", "Accepted: the round is worked so.", "Rnd 7 of 26 · changed")


def _put_down(reel: Reel, terminal: Terminal) -> None:
    reel.minute = 58
    terminal.send(b"p")
    terminal.until("by stitch")
    press(terminal, 7)
    reel.shot(terminal, "late", "Seven steps into it, it is late.", "8 made")
    terminal.send(b"q")
    assert terminal.left() == 0


def _four_days_pass() -> None:
    """Turn the piece's clock back, in place of waiting: one press on and its undo, days ago."""
    piece = latest(pieces_folder())
    assert piece is not None
    past = datetime.now().astimezone() - timedelta(days=4)
    session = Session.open(piece.path, around=Surroundings(clock=lambda: past))
    session.next()
    session.undo()
    session.close()


def _return(reel: Reel, terminal: Terminal) -> None:
    reel.shot(terminal, "card", "Four days later: the card.", "4 days ago")
    terminal.send(b" ")
    reel.shot(terminal, "resumed", "The very stitch.", "8 made")
    press(terminal, 1)
    reel.shot(terminal, "on", "And on.", "9 made")
