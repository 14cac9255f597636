"""Keys as they arrive at standard input, read without a screen."""

from __future__ import annotations

import os
import select
import sys
from codecs import getincrementaldecoder
from collections.abc import Iterator
from contextlib import contextmanager, suppress

from textual._xterm_parser import XTermParser
from textual.events import Key

from tracker.lean import NamedTuple

TICK = 0.1
"""Seconds after which an escape that nothing follows is taken for the key itself."""

CHUNK = 4096


class Typed(NamedTuple):
    """One key: its name, the character it types, "" for none, and when it came, in seconds."""

    name: str
    character: str
    time: float


def keys_typed() -> Iterator[Typed | None]:
    """The keys as they are pressed, until the input ends.

    None every now and then, while none is.
    """
    parser, decode = XTermParser(), getincrementaldecoder("utf-8")("replace").decode
    with _unbuffered():
        while True:
            if not select.select([0], [], [], TICK)[0]:
                yield from _typed(parser.tick())
                yield None
                continue
            data = os.read(0, CHUNK)
            if not data:
                return
            # A pipe ends its lines as no key does.
            yield from _typed(parser.feed(decode(data).replace("\n", "\r")))


def _typed(events: object) -> Iterator[Typed]:
    assert isinstance(events, Iterator)
    # All at once, so that keys that came in one go have the same time.
    for event in list(events):
        if isinstance(event, Key):
            printable = event.is_printable and event.character
            character = event.character if printable and event.character else ""
            yield Typed(event.key, character, event.time)


@contextmanager
def _unbuffered() -> Iterator[None]:
    """Each key at once and not shown by the terminal; as it was, afterwards."""
    if not sys.stdin.isatty():
        yield
        return
    import termios
    import tty

    before = termios.tcgetattr(0)
    tty.setcbreak(0)
    now = termios.tcgetattr(0)
    now[0] &= ~termios.ICRNL
    # Ctrl+c puts the piece down like the other keys for that; ctrl+z steps out as ever.
    now[6][termios.VINTR] = os.fpathconf(0, "PC_VDISABLE")
    termios.tcsetattr(0, termios.TCSADRAIN, now)
    try:
        yield
    finally:
        with suppress(termios.error):
            termios.tcsetattr(0, termios.TCSADRAIN, before)
