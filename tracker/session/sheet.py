"""The file at one path that is added to at its end, or replaced as a whole; never else.

It knows what it wrote: so a file that something else changed meanwhile is noticed.
"""

from __future__ import annotations

import errno
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from enum import Enum
from pathlib import Path
from zlib import crc32

from tracker.lean import TYPE_CHECKING
from tracker.session.files import Seen, write_whole
from tracker.session.syncer import Syncer

if TYPE_CHECKING:
    from tracker.session.disk import Disk


class Outside(Enum):
    """What happened to a file from outside: nothing, it is gone, it was changed."""

    NOTHING = 0
    GONE = 1
    CHANGED = 2


class Sheet:
    """One file, and all that was written to it. Everything here may raise OSError.

    ``size`` and ``check`` are the length and the CRC-32 of what it holds.
    """

    def __init__(self, path: Path, disk: Disk, syncer: Syncer) -> None:
        self.path = path
        self.size = 0
        self.there = 0
        self._disk = disk
        self._syncer = syncer
        self._handle: int | None = None
        self._seen: Seen | None = None
        self.check = 0

    def adopt(self, data: bytes) -> None:
        """Go on from a file that holds ``data``."""
        self.size, self.check = len(data), crc32(data)

    @contextmanager
    def alone(self) -> Iterator[None]:
        """No other window writes to the file or takes it over meanwhile."""
        self._open_anew()
        handle = self._handle
        if handle is not None:
            self._disk.hold(handle)
        try:
            yield
        finally:
            if handle is not None and handle == self._handle:
                with suppress(OSError):
                    self._disk.let(handle)

    def outside(self, pending: bytes) -> Outside:
        """What happened since we wrote last.

        Bytes at the end that are the first of ``pending`` are ours: a write that failed half
        way left them. ``there`` says how many they are.
        """
        self.there = 0
        seen = self._disk.seen(self.path)
        if seen == self._seen:
            return Outside.NOTHING
        if seen is None:
            self._seen = None
            return Outside.GONE
        data = self._disk.read(self.path)
        ours, more = data[: self.size], data[self.size :]
        if crc32(ours) != self.check or not pending.startswith(more):
            return Outside.CHANGED
        if self._handle is None or self._disk.seen_open(self._handle).inode != seen.inode:
            raise OSError(errno.EBUSY, "the file is being changed by something else")
        self._account(more)
        self.there, self._seen = len(more), seen
        return Outside.NOTHING

    def add(self, data: bytes) -> int:
        """Write some of ``data`` at the end, and sync it soon; returns how many bytes."""
        assert self._handle is not None
        written = self._disk.write(self._handle, data)
        self._account(data[:written])
        return written

    def added(self) -> None:
        """All is added for now: sync it soon."""
        if self._handle is not None:
            self._seen = self._disk.seen_open(self._handle)
            self._syncer.request(self._handle)

    def replace(self, data: bytes) -> None:
        """Put a file with ``data`` in its place. Its name is not made to last: see `settle`."""
        new = write_whole(self._disk, self.path, data)
        self.let_go()
        self._handle = new
        self.adopt(data)
        # The file is ours now, whatever fails from here on; unseen, it is compared whole.
        self._seen = None
        with suppress(OSError):
            self._seen = self._disk.seen_open(new)

    def settle(self) -> None:
        """Make the name last."""
        self._disk.fsync_folder(self.path.parent)

    def let_go(self) -> None:
        """Close the file."""
        if self._handle is not None:
            self._syncer.let_go(self._handle)
            self._handle = None

    def _account(self, written: bytes) -> None:
        self.check = crc32(written, self.check)
        self.size += len(written)

    def _open_anew(self) -> None:
        """Have the file open that is at our path now, if there is one."""
        seen = self._disk.seen(self.path)
        if self._handle is not None:
            if seen is not None and self._disk.seen_open(self._handle).inode == seen.inode:
                return
            self.let_go()
        if seen is not None:
            self._handle = self._disk.open_append(self.path)
