"""``python -m tests.benchmarks``: the table of ratios, each against its floor.

Floors: a Textual app of one line for all that concerns the screen, ``python -c pass`` for
the commands. Both sides are measured in turn, so that a busy machine slows both alike.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.benchmarks.pieces import make_piece
from tests.benchmarks.pty import FLOOR, ROOT, Watched, environ, hookside
from tracker.session.looking import look

PRESSES = 300
STARTS = 9
COMMANDS = 21
IDLE = 4
TURNED = 0.4
"""Seconds."""
BURST = 200
SIZES = {"100 stitches, 10 rounds": 130, "100,000 stitches, 10,000 rounds": 130_000}
SHOWN = "must end on"


def main():
    """Measure all, print as it comes."""
    print(f"{'':46}{'floor':>10}{'hookside':>10}{'ratio':>8}{'at most':>9}")
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        pieces = {
            size: make_piece(home / "pieces", f"scarf-{presses}", width=10, presses=presses)
            for size, presses in SIZES.items()
        }
        for size, path in pieces.items():
            print(size)
            screens(path, home)
            commands(path, home)
        check(home)


def row(what, floor, ours, most, unit="ms"):
    """One line of the table."""
    ratio = f"{ours / floor:.2f}" if floor else ""
    late = "" if most is None or (ours / floor if floor else ours) <= most else "  over"
    bound = "" if most is None else f"{most:g}"
    print(f"  {what:44}{floor:>10.1f}{ours:>10.1f}{ratio:>8}{bound:>9} {unit}{late}", flush=True)


def screens(path, home):
    """Everything that is seen on a terminal."""
    first_paints(path, home)
    with Watched(FLOOR, home) as floor, Watched(hookside("work", path), home) as ours:
        floor.first_paint("0 presses")
        ours.first_paint(SHOWN)
        floor.settle()
        ours.settle()
        keys(floor, ours)
        idle(floor, ours)
        row("peak memory", floor.peak(), ours.peak(), None, "MiB")
        burst(ours, path)
        row("peak memory, against 45 MiB", 45, ours.peak(), 1, "MiB")
        assert ours.leave() == 0


def first_paints(path, home):
    """From the start of the process to the place on the screen."""
    times = {"floor": [], "ours": []}
    for _ in range(STARTS):
        with Watched(FLOOR, home) as floor:
            times["floor"].append(floor.first_paint("0 presses"))
        with Watched(hookside("work", path), home) as ours:
            times["ours"].append(ours.first_paint(SHOWN))
            ours.leave()
    floor, ours = (statistics.median(found) * 1000 for found in times.values())
    row("first paint, median", floor, ours, 1.15)


def keys(floor, ours):
    """From a key to the first changed cell, one program after the other."""
    times = {"floor": [], "ours": []}
    for number in range(PRESSES + 20):
        pair = floor.press(), ours.press()
        if number >= 20:
            times["floor"].append(pair[0] * 1000)
            times["ours"].append(pair[1] * 1000)
    for name, share, most in (("median", 50, 2), ("p95", 95, None), ("p99", 99, 3)):
        at = [statistics.quantiles(found, n=100)[share - 1] for found in times.values()]
        row(f"key to changed cell, {name}", *at, most)


def idle(floor, ours):
    """What a program does while nothing is pressed."""
    before = floor.cpu(), ours.cpu()
    begun = time.monotonic()
    count = ours.settle(IDLE)
    seconds = time.monotonic() - begun
    used = [(now - was) * 1000 / seconds for now, was in zip(
        (floor.cpu(), ours.cpu()), before, strict=True)]  # fmt: skip
    row("idle: processor time a second", *used, None)
    row("idle: bytes written", 0, count, 0, "bytes")


def burst(ours, path):
    """Many presses at once: how many of them are in the file."""
    before = look(path).history.done
    os.write(ours.outer, b" " * BURST)
    ours.settle(2)
    row("burst: presses lost of 200", 0, BURST - (look(path).history.done - before), 0, "")


def commands(path, home):
    """``where``: told again, after each press in an open window, after each change by hand."""
    where = hookside("where", path)
    row("hookside where, nothing changed", *timed(where, home, lambda: None), 4)
    with Watched(hookside("work", path), home) as window:
        window.first_paint(SHOWN)
        window.settle()
        row("hookside where, a press each time", *timed(where, home, lambda: pressed(window)), 4)
        assert window.leave() == 0
    row("hookside where, changed by hand each time", *timed(where, home, lambda: touch(path)), 4)


def pressed(window):
    """A press, and a moment as long as it takes to turn to another window."""
    window.press()
    window.settle(TURNED)


def touch(path):
    """Another byte at the end of the file: its line is not known, all is worked out anew."""
    with path.open("ab") as file:
        file.write(b"\n")


def check(home):
    """``check`` of a demo pattern."""
    print("tea-cosy, all sizes")
    row("hookside check", *timed(hookside("check", "tea-cosy"), home, lambda: None), None)


def timed(command, home, before):
    """Median milliseconds of ``python -c pass`` and of a command, taken in turn."""
    floor, ours = [], []
    for _ in range(COMMANDS):
        before()
        floor.append(run((sys.executable, "-c", "pass"), home))
        ours.append(run(command, home))
    return statistics.median(floor) * 1000, statistics.median(ours) * 1000


def run(command, home):
    """Seconds that a command takes."""
    begun = time.perf_counter()
    subprocess.run(command, env=environ(home), cwd=ROOT, capture_output=True, check=True)
    return time.perf_counter() - begun


if __name__ == "__main__":
    main()
