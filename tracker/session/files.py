"""Every operation on files that a piece needs; `Disk` is what can stand in its place."""

from __future__ import annotations

import errno
import os
import stat
import sys
import time
from contextlib import suppress

from tracker.lean import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from pathlib import Path

    from tracker.session.disk import Disk

    StrPath = str | os.PathLike[str]

if sys.platform != "win32":
    import fcntl

ENDING = ".piece.toml"
"""How the name of a piece's file ends."""

LARGEST = 64 * 1024 * 1024
"""Bytes; a larger file is no piece."""

HOLD_TRIES, HOLD_WAIT = 40, 0.005
"""How often, and how many seconds apart, a file is tried that another window holds."""


class Seen(NamedTuple):
    """What tells one version of a file from another."""

    inode: int
    size: int
    modified: int


class UnsafeFileError(OSError):
    """A file that is not read: not a plain file, or too large."""


def refuse_link(path: StrPath) -> None:
    """Raise `UnsafeFileError` for a link. The folders above may be links."""
    if os.path.islink(path):
        raise UnsafeFileError(f"it is a link to {os.path.realpath(path)}; name that file itself")


class RealDisk:
    """The file operations of the operating system."""

    def read(self, path: StrPath) -> bytes:
        """See `Disk`. Raises `UnsafeFileError` for what is not a plain file of bounded size."""
        refuse_link(path)
        handle = os.open(path, os.O_RDONLY | _SAFELY)
        with os.fdopen(handle, "rb") as file:
            about = os.fstat(file.fileno())
            if not stat.S_ISREG(about.st_mode):
                raise UnsafeFileError("it is not a plain file")
            if about.st_size > LARGEST:
                raise UnsafeFileError(f"it is larger than {LARGEST // 1024 // 1024} MiB")
            return file.read(LARGEST)

    def make_folder(self, folder: Path) -> None:
        """See `Disk`."""
        folder.mkdir(parents=True, exist_ok=True)

    def open_append(self, path: Path) -> int:
        """See `Disk`. Raises `UnsafeFileError` for what is not a plain file."""
        handle = os.open(path, os.O_WRONLY | os.O_APPEND | _SAFELY)
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            os.close(handle)
            raise UnsafeFileError("it is not a plain file")
        return handle

    def open_new(self, path: Path) -> int:
        """See `Disk`."""
        return os.open(path, os.O_WRONLY | os.O_APPEND | os.O_CREAT | os.O_EXCL | _CLOEXEC, 0o644)

    def write(self, handle: int, data: bytes) -> int:
        """See `Disk`."""
        return os.write(handle, data)

    def fsync(self, handle: int) -> None:
        """See `Disk`."""
        os.fsync(handle)

    def close(self, handle: int) -> None:
        """See `Disk`."""
        os.close(handle)

    def replace(self, source: Path, target: Path) -> None:
        """See `Disk`."""
        source.replace(target)

    def fsync_folder(self, folder: Path) -> None:
        """See `Disk`."""
        # Windows cannot open a folder; there a rename lasts without it.
        if os.name == "nt":
            return
        handle = os.open(folder, os.O_RDONLY | _CLOEXEC)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)

    def remove(self, path: Path) -> None:
        """See `Disk`."""
        path.unlink(missing_ok=True)

    def hold(self, handle: int) -> None:
        """See `Disk`. Raises OSError (EBUSY) after a moment of waiting."""
        if sys.platform == "win32":
            return
        for _ in range(HOLD_TRIES):
            try:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                time.sleep(HOLD_WAIT)
            except OSError:
                # A file system without locks: there each window watches for changes only.
                return
            else:
                return
        raise OSError(errno.EBUSY, "another window holds the file")

    def let(self, handle: int) -> None:
        """See `Disk`."""
        if sys.platform != "win32":
            fcntl.flock(handle, fcntl.LOCK_UN)

    def seen(self, path: Path) -> Seen | None:
        """See `Disk`."""
        try:
            return _seen(path.stat())
        except FileNotFoundError:
            return None

    def seen_open(self, handle: int) -> Seen:
        """See `Disk`."""
        return _seen(os.fstat(handle))


_CLOEXEC = getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_BINARY", 0)

# Opening a FIFO that nobody else has open must not wait for ever; no link is followed, even
# if it was put there a moment ago.
_SAFELY = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOFOLLOW", 0) | _CLOEXEC


def _seen(about: os.stat_result) -> Seen:
    return Seen(about.st_ino, about.st_size, about.st_mtime_ns)


def write_all(disk: Disk, handle: int, data: bytes) -> None:
    """Write all of ``data``, however little goes at once."""
    while data:
        data = data[disk.write(handle, data) :]


def write_whole(disk: Disk, path: Path, data: bytes) -> int:
    """Put a file with ``data`` at ``path``, all at once; never writes over the old one.

    Returns a descriptor that writes on at its end. The name is not yet made to last: see
    `Disk.fsync_folder`. Raises OSError, having cleaned up.
    """
    disk.make_folder(path.parent)
    beside = path.with_name(f".{path.name}.new")
    disk.remove(beside)
    handle = disk.open_new(beside)
    try:
        write_all(disk, handle, data)
        disk.fsync(handle)
        disk.replace(beside, path)
    except OSError:
        _clean_up(disk, handle, beside)
        raise
    return handle


def _clean_up(disk: Disk, handle: int, beside: Path) -> None:
    with suppress(OSError):
        disk.close(handle)
    with suppress(OSError):
        disk.remove(beside)


def free_path(disk: Disk, folder: Path, before: str, after: str = "") -> Path:
    """The first path, numbered between ``before`` and ``after``, at which there is nothing."""
    number = 1
    while disk.seen(folder / f"{before}{number}{after}") is not None:
        number += 1
    return folder / f"{before}{number}{after}"
