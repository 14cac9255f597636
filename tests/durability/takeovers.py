"""Taken over in the middle of a storm: each acknowledged press is in one file or the other."""

import os
import random
import select
from pathlib import Path

from tests.durability import piece
from tests.durability.kills import in_child, told


def storm(path, seed, out):
    """Press until the piece is taken over; then say what was kept beside, and end."""
    rng = random.Random(seed)
    session = piece.reopen(path)
    os.write(out, told(session))
    for act in piece.actions(session, rng, undo=False):
        act()
        if any("taken over" in said for said in session.notices):
            os.write(out, b"=" + repr(session.notices).encode() + b"\n")
            session.close()
            return
        trouble = session.glance().trouble
        os.write(out, b"-" + trouble.encode() + b"\n" if trouble else told(session))


def lines_until_taken(handle, seconds):
    """What the other process said, up to its end; it ends by itself once taken over."""
    data = b""
    while select.select([handle], [], [], seconds)[0]:
        got = os.read(handle, 65536)
        if not got:
            break
        data += got
    return data.splitlines(keepends=True)


def take_over_in_storms(folder: Path, times: int, seed: int = 2) -> dict[str, int]:
    """So many storms, each taken over at a random instant; counts of what was seen."""
    rng = random.Random(seed)
    session = piece.start(folder)
    session.close()
    path, acknowledged, beside = session.path, 0, 0
    for number in range(times):
        child, handle = in_child(storm, path, seed * 1_000_003 + number)
        select.select([handle], [], [], 10)
        select.select([], [], [], rng.uniform(0, 0.02))
        mine = piece.reopen(path, take_over=True)
        *said, end = lines_until_taken(handle, 10)
        os.close(handle)
        os.waitpid(child, 0)
        assert end.startswith(b"="), end
        # What was told not to be saved was not acknowledged; it is in the copy beside.
        said = [line for line in said if not line.startswith(b"-")]
        assert said[-1] == told(mine), (said[-1], told(mine))
        kept = list(folder.glob("*.ours-1.piece.toml"))
        if kept:
            other = piece.reopen(kept[0])
            assert int(said[-1].split()[0]) < other.can_undo
            other.close()
            kept[0].unlink()
        beside += len(kept)
        acknowledged += len(said)
        mine.next()
        assert mine.glance().trouble == ""
        mine.close()
    return {
        "take-overs": times,
        "presses acknowledged": acknowledged,
        "acknowledged presses lost": 0,
        "unsaved work kept beside": beside,
    }
