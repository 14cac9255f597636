"""The place in a piece as one plain line, told at once where the file has not changed.

The line was worked out from the file's bytes; the same bytes give the same line. Nothing is
imported here that only working it out needs.
"""

from __future__ import annotations

import os
from pathlib import Path
from zlib import crc32

from tracker.session.files import RealDisk
from tracker.session.kept import keep, kept


def told(path: Path) -> str:
    """The place in a piece, which may be open elsewhere. Raises `StoreError`."""
    return _kept(path) or _worked_out(path)


def keep_told(path: Path, size: int, check: int, line: str) -> None:
    """Keep the line of a file of so many bytes, with this CRC-32."""
    keep(_name(path), b"%s\n%s" % (_sign(size, check), line.encode()))


def _kept(path: Path) -> str | None:
    found = kept(_name(path))
    if found is None or path.is_symlink():
        return None
    sign, _, line = found.partition(b"\n")
    try:
        data = RealDisk().read(path)
    except OSError:
        return None
    return line.decode() if sign == _sign(len(data), crc32(data)) else None


def _worked_out(path: Path) -> str:
    from tracker.session.access import inside, read_piece
    from tracker.session.glance import glance, line
    from tracker.session.looking import plan_at
    from tracker.session.midway import keep_midway

    data, found = read_piece(inside(path), RealDisk())
    said = line(glance(plan_at(path, found), found.history.state))
    keep_told(path, len(data), crc32(data), said)
    if found.midway is not None:
        keep_midway(path, found.midway)
    return said


def _name(path: Path) -> str:
    return f"{crc32(os.fsencode(path.absolute())):08x}.told"


def _sign(size: int, check: int) -> bytes:
    return b"%d %08x" % (size, check)
