"""Who may write to a piece: one window at a time, by a lock of the operating system.

The lock lies on a file beside the piece; a process that was killed leaves none behind. Who
takes a piece over puts a new lock file in the place of the old one, and the window that had
the piece sees that before its next write. Each write and each taking over is done with the
piece's own file held (`alone`), so that neither comes between the other's look and deed.
"""

from __future__ import annotations

import errno
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.access import InUse

if TYPE_CHECKING:
    from tracker.session.disk import Disk

if sys.platform != "win32":
    import fcntl

Release = Callable[[], None]


class Hold:
    """The right to write to a piece, until it is released or taken over.

    ``seized`` says that it was taken from another window.
    """

    def __init__(self, path: Path, release: Release | None, *, seized: bool = False) -> None:
        self.seized = seized
        self._file = _lock_file(path)
        self._release = release
        self._mark = _mark(self._file) if release else None

    @classmethod
    def none(cls, path: Path) -> Hold:
        """No right yet."""
        return cls(path, None)

    @classmethod
    def take(cls, path: Path) -> Hold:
        """Raises `InUse` where another window has the piece.

        Where the folder cannot be written to, nothing else can write there either.
        """
        return cls(path, _locked(_lock_file(path), path))

    @classmethod
    def seize(cls, path: Path) -> Hold:
        """Take a piece over from the window that has it. Raises `InUse` if that fails."""
        file = _lock_file(path)
        new = file.with_name(f".{file.name}.new")
        release = _locked(new, path)
        try:
            new.replace(file)
        except OSError:
            if release is not None:
                release()
            raise InUse(f"{path.name} cannot be taken over from the other window.") from None
        return cls(path, release, seized=True)

    def lost(self) -> bool:
        """Whether another window has taken the piece over."""
        return self._mark is not None and _mark(self._file) not in (None, self._mark)

    def release(self) -> None:
        """Let others have the piece."""
        if self._release is not None:
            self._release()
            self._release = None


@contextmanager
def alone(disk: Disk, path: Path) -> Iterator[None]:
    """No other window writes to the piece meanwhile. Raises `InUse` where one does not let go.

    A file that is missing, or that cannot be written to, needs no guarding.
    """
    handle = _held(disk, path)
    try:
        yield
    finally:
        if handle is not None:
            with suppress(OSError):
                disk.close(handle)


def _held(disk: Disk, path: Path) -> int | None:
    """A descriptor of the file at ``path``, held; None where it needs no guarding."""
    while True:
        try:
            handle = disk.open_append(path)
        except OSError:
            return None
        if _still_there(disk, path, handle):
            return handle
        with suppress(OSError):
            disk.close(handle)


def _still_there(disk: Disk, path: Path, handle: int) -> bool:
    """Hold a file; whether it is still the one at ``path``, and was not replaced meanwhile."""
    try:
        disk.hold(handle)
        seen = disk.seen(path)
        return seen is None or seen.inode == disk.seen_open(handle).inode
    except OSError as error:
        if error.errno != errno.EBUSY:
            return True
        with suppress(OSError):
            disk.close(handle)
        raise InUse(f"{path.name} is open in a window that does not answer.") from None


def _lock_file(path: Path) -> Path:
    return path.with_name(path.name + ".lock")


def _mark(file: Path) -> int | None:
    """What tells one lock file from another: its inode, which stays while it is locked."""
    try:
        return file.stat().st_ino
    except OSError:
        return None


def _locked(file: Path, path: Path) -> Release | None:
    """Lock a file of no content; what lets go of it. None where it cannot be made."""
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        return _lock(file)
    except BlockingIOError:
        raise InUse(f"{path.name} is open in another window already.") from None
    except OSError:
        return None


if sys.platform == "win32":

    def _lock(file: Path) -> Release:
        from filelock import FileLock, Timeout

        lock = FileLock(file)
        try:
            lock.acquire(blocking=False)
        except Timeout:
            raise BlockingIOError from None
        return lock.release

else:
    # Not by filelock here: importing it would be a twentieth of the time to the first screen.
    def _lock(file: Path) -> Release:
        while True:
            handle = os.open(file, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW | os.O_CLOEXEC, 0o644)
            try:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except OSError:
                os.close(handle)
                raise
            if os.fstat(handle).st_ino == _mark(file):
                return lambda: os.close(handle)
            # Another window put its own lock file there meanwhile.
            os.close(handle)
