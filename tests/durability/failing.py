"""The Nth operation fails, for every N: while working, folding, recovering, taking over."""

import errno
import random
from pathlib import Path

from tests.durability import piece
from tests.session.faults import FaultyDisk
from tracker.session.access import StoreError

CODES = (errno.ENOSPC, errno.EIO, errno.EROFS, errno.EACCES, errno.EDQUOT)


def work(session, presses):
    """Work with pauses in which the file is folded."""
    ways = piece.actions(session, random.Random(5))
    for number in range(presses):
        next(ways)()
        if number % 9 == 8:
            piece.pause(session)


def fail_at_every(
    folder: Path, *, presses: int, step: int = 1, codes: tuple[int, ...] = CODES
) -> dict[str, int]:
    """Let operations fail, once and for good; counts of what failed."""
    counts = {"operations failed": 0, "pieces worked": 0, "of those in recovery": 0}
    for code in codes:
        for lasting in (False, True):
            where = folder / f"{code}-{lasting}"
            _while_working(where, counts, presses, step, (code, lasting))
            _while_recovering(where, counts, step, (code, lasting))
    return {**counts, "pieces with anything lost": 0}


def _disk(nth, fault):
    code, lasting = fault
    return FaultyDisk(nth, code, lasting=lasting, short=nth % 2 == 0)


def _while_working(folder, counts, presses, step, fault):
    nth, failed, wanted = 1, True, None
    while failed:
        disk = _disk(nth if wanted else 0, fault)
        session = piece.start(folder / f"{nth}-{wanted is None}", disk=disk, background=False)
        work(session, presses)
        failed = wanted is None or disk.count >= nth
        wanted = wanted or piece.standing(session)
        assert (session.state, session.can_undo) == wanted[:2]
        _comes_out_whole(session, disk, wanted)
        counts["operations failed"] += disk.failures
        counts["pieces worked"] += 1
        nth += step


def _while_recovering(folder, counts, step, fault):
    session = piece.start(folder, disk=FaultyDisk(), background=False)
    work(session, 12)
    session.close()
    torn = session.path.read_bytes()[:-120]
    nth, failed = 1, True
    while failed:
        session.path.write_bytes(torn)
        disk = _disk(nth, fault)
        try:
            opened = piece.reopen(session.path, disk=disk, background=False)
        except StoreError:
            assert session.path.read_bytes() == torn
        else:
            opened.next()
            _comes_out_whole(opened, disk, (opened.state, opened.can_undo, 0))
        kept = [path.read_bytes() for path in folder.glob("*.damaged-*")]
        assert session.path.read_bytes() == torn or any(torn.endswith(one) for one in kept)
        for path in folder.glob("*.damaged-*"):
            path.unlink()
        failed = disk.failures > 0
        counts["operations failed"] += disk.failures
        counts["of those in recovery"] += disk.failures
        nth += step


def _comes_out_whole(session, disk, wanted):
    disk.heal()
    session.retry()
    assert session.glance().trouble == ""
    session.close()
    again = piece.reopen(session.path, disk=FaultyDisk(), background=False)
    assert (piece.standing(again), again.notices) == (wanted, ())
    again.close()
