"""What a piece needs from outside: a disk, a clock."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session.files import RealDisk

if TYPE_CHECKING:
    from tracker.session.disk import Disk

FOLD_AT = 64 * 1024
"""Bytes: some six hundred presses."""

Clock = Callable[[], datetime]


def now() -> datetime:
    """The present time, with the offset of this place."""
    return datetime.now().astimezone()


class Surroundings(NamedTuple):
    """What a piece needs from outside.

    Attributes:
        disk: the file operations.
        clock: the present time, with its offset.
        background: sync on a thread of its own; False only for tests that count operations.
        fold_at: bytes added since a file was last rewritten from which on it is folded.
    """

    disk: Disk = RealDisk()
    clock: Clock = now
    background: bool = True
    fold_at: int = FOLD_AT
