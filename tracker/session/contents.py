"""What a piece's file holds, read on from what was kept of it."""

from __future__ import annotations

import os

from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError, read_bytes
from tracker.session.head import PaperError
from tracker.session.midway import kept_midway
from tracker.session.paper import Found, read_paper

if TYPE_CHECKING:
    from tracker.session.disk import Disk
    from tracker.session.files import StrPath


def read_piece(path: StrPath, disk: Disk) -> tuple[bytes, Found]:
    """The bytes of a piece's file, and what they hold. Raises `StoreError`."""
    data = read_bytes(path, disk)
    return data, found_in(path, data)


def found_in(path: StrPath, data: bytes) -> Found:
    """What the bytes of a piece's file hold. Raises `StoreError`."""
    try:
        return read_paper(data, kept_midway(path))
    except PaperError as error:
        raise StoreError(f"{os.path.basename(path)} cannot be opened: {error}.") from None
