"""Killed at any instant: no press that an action has returned from is lost, no lock is left."""

import os
import random
import select
import signal
import time
from contextlib import suppress
from pathlib import Path

from tests.durability import piece

LONGEST = 0.03
"""Seconds that a storm lasts at most, most often counted from its first press."""

EVERY = 50
"""Storms on one piece, before a new one is begun."""


def told(session):
    """A line that says where the piece stands."""
    return f"{session.can_undo} {tuple(session.state.spot)}\n".encode()


def storm(path, seed, out):
    """Press without end; acknowledge each press when its action has returned."""
    rng = random.Random(seed)
    session = piece.reopen(path)
    os.write(out, told(session))
    for number, act in enumerate(piece.actions(session, rng, undo=False)):
        act()
        os.write(out, told(session))
        if number % 400 == 399:
            session.close()
            session = piece.reopen(path)


def in_child(work, *words):
    """Run ``work`` in a process of its own; its id, and where to read what it says."""
    inner, outer = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(inner)
        try:
            work(*words, outer)
        finally:
            os._exit(1)
    os.close(outer)
    return child, inner


def drain(handle, child, seconds):
    """Read for so long, kill, read the rest; the whole lines."""
    data, end = b"", time.monotonic() + seconds
    while (left := end - time.monotonic()) > 0:
        if select.select([handle], [], [], left)[0]:
            got = os.read(handle, 65536)
            if not got:
                break
            data += got
    with suppress(ProcessLookupError):
        os.kill(child, signal.SIGKILL)
    while got := os.read(handle, 65536):
        data += got
    os.close(handle)
    os.waitpid(child, 0)
    return data[: data.rfind(b"\n") + 1].splitlines(keepends=True)


def kill_in_storms(folder: Path, kills: int, seed: int = 1) -> dict[str, int]:
    """So many storms, each killed at a random instant; counts of what was seen."""
    rng = random.Random(seed)
    acknowledged, folds, before_first = 0, 0, 0
    for number in range(kills):
        if number % EVERY == 0:
            session = piece.start(folder)
            session.close()
            path, last = session.path, told(session)
        inode = path.stat().st_ino
        child, handle = in_child(storm, path, seed * 1_000_003 + number)
        if rng.random() < 0.9:
            select.select([handle], [], [], 10)
        lines = drain(handle, child, rng.uniform(0.001, LONGEST))
        last = lines[-1] if lines else last
        acknowledged += max(0, len(lines) - 1)
        before_first += not lines
        folds += path.stat().st_ino != inode
        session = piece.reopen(path)
        undoable = int(last.split()[0])
        assert undoable <= session.can_undo <= undoable + 1, (last, session.can_undo)
        if session.can_undo == undoable:
            assert told(session) == last
        if rng.random() < 0.5:
            session.close()
        else:
            session._store.abandon()
        last = told(session)
    return {
        "kills": kills,
        "presses acknowledged": acknowledged,
        "acknowledged presses lost": 0,
        "kills before the first press": before_first,
        "storms with the file rewritten": folds,
    }
