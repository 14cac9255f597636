"""Choosing between two versions: a kill, a failing operation, a loss of power in the middle.

Whatever happens, each press of either version is in a file of the folder, and the piece opens.
"""

import errno
import os
import signal
from contextlib import suppress
from itertools import count, product
from pathlib import Path

from tests.durability import piece
from tests.durability.power import PowerDisk
from tests.session.faults import FaultyDisk
from tracker.session import shelf
from tracker.session.access import InUse
from tracker.session.head import PaperError
from tracker.session.paper import read_paper

CODES = (errno.ENOSPC, errno.EIO, errno.EACCES)
OURS, THEIRS = 9, 5
"""Presses in each version."""


class KillingDisk(FaultyDisk):
    """A disk on which the process is killed before operation ``nth``, once it is set."""

    def _fail(self, _name, _args):
        os.kill(os.getpid(), signal.SIGKILL)


def changed(folder, disk):
    """A piece in work, whose file a synced folder changed meanwhile."""
    session = _pressed(folder, disk)
    beside = session.path.with_name("arriving")
    beside.write_bytes(_shorter(session))
    beside.replace(session.path)
    session.next()
    return session


def copied(folder, disk):
    """A piece in work, beside which a synced folder leaves a copy."""
    session = _pressed(folder, disk)
    session.path.with_name("pot-mat-storm (copy).piece.toml").write_bytes(_shorter(session))
    session.next()
    session.look_beside()
    return session


def _pressed(folder, disk):
    session = piece.start(folder, disk=disk, background=False)
    for _ in range(OURS - 1):
        session.next()
    return session


def _shorter(session):
    lines = session.path.read_bytes().splitlines(keepends=True)
    return b"".join(lines[: THEIRS - OURS + 1])


WAYS = tuple(product((changed, copied), ("ours", "theirs")))


def choose_at_length(folder: Path) -> dict[str, int]:
    """All three of them; counts of what was seen."""
    failed = fail_while_choosing(folder / "failing")
    killed = kill_while_choosing(folder / "killed")
    return {**failed, **killed, **lose_power_while_choosing(folder / "crashed")}


def fail_while_choosing(folder: Path, codes: tuple[int, ...] = CODES) -> dict[str, int]:
    """Each operation of each choice fails, once and for good; counts of what failed."""
    counts = {"operations failed": 0, "chosen again": 0, "presses lost": 0}
    for number, ((come, which), code, lasting) in enumerate(product(WAYS, codes, (False, True))):
        for nth in count(1):
            disk = FaultyDisk()
            session = come(folder / f"{number}-{nth}", disk)
            disk.code, disk.lasting, disk.nth = code, lasting, disk.count + nth
            session.keep(which)
            counts["operations failed"] += disk.failures
            disk.heal()
            counts["chosen again"] += bool(session.versions())
            if session.versions():
                session.keep(which)
            assert session.versions() == ()
            assert session.can_undo == {"ours": OURS, "theirs": THEIRS}[which]
            _goes_on(session)
            if not disk.failures:
                break
    return counts


def _goes_on(session):
    """Presses are saved, nobody else can have the piece meanwhile, both versions are there."""
    folder, before = session.path.parent, session.can_undo
    session.next()
    with suppress(InUse):
        piece.reopen(session.path)
        raise AssertionError("two windows have the piece")
    session.next()
    session.retry()
    assert session.glance().trouble == ""
    assert session.can_undo == before + 2
    standing = piece.standing(session)
    session.close()
    again = piece.reopen(session.path)
    assert piece.standing(again) == standing
    again.close()
    _both_are_there(folder)


def kill_while_choosing(folder: Path) -> dict[str, int]:
    """Killed before each operation of each choice; counts of what was seen."""
    counts = {"kills": 0, "presses lost": 0}
    for number, (come, which) in enumerate(WAYS):
        for nth in count(1):
            where = folder / f"{number}-{nth}"
            killed = _chosen_in_child(come, which, where, nth)
            counts["kills"] += killed
            _both_are_there(where)
            _opens(where)
            if not killed:
                break
    return counts


def _chosen_in_child(come, which, folder, nth):
    """Let another process choose; whether it was killed in the middle."""
    child = os.fork()
    if child == 0:
        try:
            disk = KillingDisk()
            session = come(folder, disk)
            disk.nth = disk.count + nth
            session.keep(which)
            os._exit(0)
        finally:
            os._exit(1)
    _, status = os.waitpid(child, 0)
    assert os.WIFSIGNALED(status) or os.WEXITSTATUS(status) == 0
    return os.WIFSIGNALED(status)


def _opens(folder):
    """The piece that is gone on with opens, is worked on, and the choice can be made anew."""
    latest = shelf.latest(folder)
    assert latest is not None
    session = piece.reopen(latest.path)
    assert session.can_undo >= THEIRS
    session.look_beside()
    if session.versions():
        session.keep("ours")
        assert session.versions() == ()
    session.next()
    session.close()
    _both_are_there(folder)


def lose_power_while_choosing(folder: Path) -> dict[str, int]:
    """Loss of power after each operation of each choice; counts of the states that may be left."""
    counts = {"crash states": 0, "presses lost": 0}
    for number, (come, which) in enumerate(WAYS):
        disk = PowerDisk(lambda: None)
        session = come(folder / f"{number}", disk)
        disk.adopt(session.versions()[1].path)

        def crash(disk=disk):
            for files in disk.states(every=40):
                counts["crash states"] += 1
                _both_are_among(files.values())

        disk.after = crash
        session.keep(which)
        assert session.versions() == ()
        session.close()
    return counts


def _both_are_there(folder):
    _both_are_among(path.read_bytes() for path in folder.iterdir())


def _both_are_among(texts):
    """Each version is in a file, whole, perhaps with presses after it."""
    found = [done for text in texts if (done := _presses(text)) is not None]
    assert any(done >= OURS for done in found), found
    assert any(THEIRS <= done < OURS for done in found), found


def _presses(text):
    try:
        return read_paper(text).history.done
    except PaperError:
        return None
