"""The place in a piece as one plain line, told at once where the file has not changed.

The line was worked out from the file's bytes; the same bytes give the same line. Nothing is
imported here that only working it out needs.
"""

from __future__ import annotations

import os
from zlib import crc32

from tracker.lean import TYPE_CHECKING
from tracker.session.access import read_bytes
from tracker.session.files import RealDisk
from tracker.session.kept import keep, kept

if TYPE_CHECKING:
    from tracker.session.files import StrPath


def told(path: StrPath) -> str:
    """The place in a piece, which may be open elsewhere. Raises `StoreError`."""
    data = read_bytes(path, RealDisk())
    sign = _sign(len(data), crc32(data))
    return _kept(path, sign) or _worked_out(path, data, sign)


def keep_told(path: StrPath, size: int, check: int, line: str) -> None:
    """Keep the line of a file of so many bytes, with this CRC-32."""
    _keep(path, _sign(size, check), line)


def _keep(path: StrPath, sign: bytes, line: str) -> None:
    keep(_name(path), b"%s\n%s" % (sign, line.encode()))


def _kept(path: StrPath, sign: bytes) -> str | None:
    found = kept(_name(path))
    if found is None:
        return None
    of, _, line = found.partition(b"\n")
    return line.decode() if of == sign else None


def _worked_out(path: StrPath, data: bytes, sign: bytes) -> str:
    from tracker.session.contents import found_in
    from tracker.session.glance import glance, line
    from tracker.session.looking import plan_at
    from tracker.session.midway import keep_midway

    found = found_in(path, data)
    said = line(glance(plan_at(path, found), found.history.state))
    _keep(path, sign, said)
    if found.midway is not None:
        keep_midway(path, found.midway)
    return said


def _name(path: StrPath) -> str:
    return f"{crc32(os.fsencode(os.path.abspath(path))):08x}.told"


def _sign(size: int, check: int) -> bytes:
    return b"%d %08x" % (size, check)
