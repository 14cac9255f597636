"""What was worked out before, kept so that it need not be worked out anew.

Only copies: the folder may be removed at any time. A copy is used only where this very
program made it and it is whole; else it is as if it were not there.
"""

from __future__ import annotations

import os
from contextlib import suppress
from functools import cache
from zlib import crc32

from tracker import __version__
from tracker.session.files import RealDisk

MOST = 64
"""Copies kept; beyond that the oldest goes."""

LARGEST = 8 * 1024 * 1024
"""Bytes; what is larger is not kept."""

ENDING = ".kept"


def kept(name: str) -> bytes | None:
    """What was kept under a name, or None."""
    try:
        seal, made_by, body = RealDisk().read(_path(name)).split(b"\n", 2)
        whole = int(seal, 16) == crc32(body)
        return body if whole and made_by == _program() else None
    except (OSError, ValueError):
        return None


def keep(name: str, body: bytes) -> None:
    """Keep something for the next time; where that cannot be done it is not."""
    path = _path(name)
    folder, beside = os.path.dirname(path), f"{path}.{os.getpid()}"
    if len(body) > LARGEST:
        return
    with suppress(OSError):
        os.makedirs(folder, exist_ok=True)
        with open(beside, "wb") as file:
            file.write(b"%08x\n%b\n%b" % (crc32(body), _program(), body))
        os.replace(beside, path)
        _forget_oldest(folder)


def _path(name: str) -> str:
    """The file of a name: in ``HOOKSIDE_HOME`` if set, else in the user's cache folder."""
    home = os.environ.get("HOOKSIDE_HOME")
    if home:
        return os.path.join(home, "cache", name + ENDING)
    from platformdirs import user_cache_dir

    return os.path.join(user_cache_dir("hookside", appauthor=False), name + ENDING)


@cache
def _program() -> bytes:
    """What tells one state of this program from another: its version and its files."""
    home = os.path.dirname(os.path.dirname(__file__))
    found = [__version__]
    for layer in ("notation", "fabric", "pattern", "session"):
        with os.scandir(os.path.join(home, layer)) as entries:
            for entry in sorted(entries, key=lambda entry: entry.name):
                about = entry.stat()
                if not entry.is_dir():
                    found.append(f"{entry.name} {about.st_size} {about.st_mtime_ns}")
    return b"%08x" % crc32("\n".join(found).encode())


def _forget_oldest(folder: str) -> None:
    """Remove what was kept longest, beyond `MOST`."""
    with os.scandir(folder) as entries:
        old = sorted((e.stat().st_mtime_ns, e.path) for e in entries if e.is_file())
    for _, path in old[:-MOST]:
        os.unlink(path)
