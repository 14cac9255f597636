"""Getting at a piece's file: reading it, and why it cannot be opened."""

from __future__ import annotations

import errno
from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.files import UnsafeFileError
from tracker.session.head import PaperError
from tracker.session.midway import kept_midway
from tracker.session.paper import Found, read_paper

if TYPE_CHECKING:
    from tracker.session.disk import Disk


class StoreError(Exception):
    """A piece that cannot be opened; the text is one clear sentence."""


class InUse(StoreError):
    """The piece is open in another window."""


def read_piece(path: Path, disk: Disk) -> tuple[bytes, Found]:
    """The bytes of a piece's file, and what they hold. Raises `StoreError`."""
    data = read_bytes(path, disk)
    return data, found_in(path, data)


def read_bytes(path: Path, disk: Disk) -> bytes:
    """The bytes of a piece's file. Raises `StoreError`."""
    try:
        return disk.read(path)
    except FileNotFoundError:
        raise StoreError(f"There is no piece {path.name}.") from None
    except OSError as error:
        raise StoreError(f"{path.name} cannot be read: {reason(error)}.") from None


def found_in(path: Path, data: bytes) -> Found:
    """What the bytes of a piece's file hold. Raises `StoreError`."""
    try:
        return read_paper(data, kept_midway(path))
    except PaperError as error:
        raise StoreError(f"{path.name} cannot be opened: {error}.") from None


def reason(error: OSError) -> str:
    """Why a file operation failed, in plain words."""
    if isinstance(error, UnsafeFileError):
        return str(error)
    known = {
        errno.ENOSPC: "the disk is full",
        errno.EDQUOT: "the disk space allowed to you is used up",
        errno.EROFS: "the disk can only be read",
        errno.EACCES: "writing there is not allowed",
        errno.EPERM: "writing there is not allowed",
        errno.EIO: "the disk reports a fault",
    }
    return known.get(error.errno or 0, (error.strerror or "the disk reports a fault").lower())


def inside(path: Path) -> Path:
    """The file itself. Raises `StoreError` for a link that leads out of its folder."""
    try:
        real = path.resolve()
        stays = not path.is_symlink() or real.parent == path.parent.resolve()
    except (OSError, RuntimeError, ValueError):
        stays = False
    if not stays:
        raise StoreError(f"{path.name} is a link that leads out of its folder.")
    return real
