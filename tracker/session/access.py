"""Getting at a piece's file: reading its bytes, and why it cannot be opened."""

from __future__ import annotations

import errno
import os

from tracker.lean import TYPE_CHECKING
from tracker.session.files import UnsafeFileError, refuse_link

if TYPE_CHECKING:
    from pathlib import Path

    from tracker.session.disk import Disk
    from tracker.session.files import StrPath


class StoreError(Exception):
    """A piece that cannot be opened; the text is one clear sentence."""


class InUse(StoreError):
    """The piece is open in another window."""


def read_bytes(path: StrPath, disk: Disk) -> bytes:
    """The bytes of a piece's file. Raises `StoreError`."""
    name = os.path.basename(path)
    try:
        return disk.read(path)
    except FileNotFoundError:
        raise StoreError(f"There is no piece {name}.") from None
    except OSError as error:
        raise StoreError(f"{name} cannot be read: {reason(error)}.") from None


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


def itself(path: Path) -> Path:
    """The file by the folder that it really lies in. Raises `StoreError` for a link."""
    try:
        refuse_link(path)
        return path.parent.resolve() / path.name
    except (OSError, RuntimeError, ValueError) as error:
        why = reason(error) if isinstance(error, OSError) else "its folder is not to be found"
        raise StoreError(f"{path.name} cannot be read: {why}.") from None
