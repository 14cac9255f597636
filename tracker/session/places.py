"""Where each piece was seen last, so that one whose file was moved is found again.

A piece is known by the seal of its head, which no press changes. The list lies beside the
folder of pieces, a line a piece; it may be removed at any time.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path

from tracker.session.files import ENDING, RealDisk, write_whole
from tracker.session.moving import BIN
from tracker.session.shelf import OnShelf, pieces

LIST = "places"

MOST = 200
"""Pieces on the list; beyond that the one seen longest ago goes."""

_LINE = re.compile(rb"([0-9a-f]{8}) ([^\n]+)")
_SEAL = re.compile(rb'\nsealed = "([0-9a-f]{8})"\r?\n\r?\n\[log\]')


def remember(path: Path, folder: Path) -> None:
    """Note where a piece lies; ``folder`` is that of all pieces."""
    seal = _seal(path)
    known = _read(folder)
    if seal and known.get(seal) != path.absolute():
        known.pop(seal, None)
        _write(folder, {**known, seal: path.absolute()})


def forget(path: Path, folder: Path) -> None:
    """Look no longer for a piece that was at ``path``."""
    _write(folder, {seal: at for seal, at in _read(folder).items() if at != path.absolute()})


def strays(folder: Path) -> tuple[OnShelf, ...]:
    """The pieces that do not lie in the folder, the lost ones among them with no time.

    One whose file is not where it was is looked for, by its seal, in the folder, and near
    where it was.
    """
    known = _read(folder)
    here = {piece.path for piece in pieces(folder)}
    missing = {seal: path for seal, path in known.items() if path not in here}
    found = {seal: _where(seal, path, folder) for seal, path in missing.items()}
    moved = {seal: path for seal, path in found.items() if path and path != known[seal]}
    if moved:
        _write(folder, {**known, **moved})
    return tuple(_strays(missing, found, here, folder))


def _strays(
    missing: Mapping[bytes, Path],
    found: Mapping[bytes, Path | None],
    here: set[Path],
    folder: Path,
) -> Iterator[OnShelf]:
    for seal, was in missing.items():
        path = found[seal]
        if path is None and was.parent != _bin(folder):
            yield OnShelf(was, was.name.removesuffix(ENDING), 0)
        elif path and path not in here and path.parent != _bin(folder):
            yield OnShelf(path, path.name.removesuffix(ENDING), path.stat().st_mtime_ns)


def _where(seal: bytes, path: Path, folder: Path) -> Path | None:
    """Where the piece of that seal is now; None if it is not found."""
    if _seal(path) == seal:
        return path
    for near in (folder, _bin(folder), path.parent, path.parent.parent):
        for piece in pieces(near):
            if _seal(piece.path) == seal:
                return piece.path
    return None


def _bin(folder: Path) -> Path:
    return folder.parent / BIN


def _seal(path: Path) -> bytes:
    """The seal that the head of a piece prints; empty where there is none."""
    try:
        match = _SEAL.search(RealDisk().read(path))
    except OSError:
        return b""
    return match[1] if match else b""


def _read(folder: Path) -> dict[bytes, Path]:
    try:
        data = RealDisk().read(folder.parent / LIST)
    except OSError:
        return {}
    return {seal: Path(os.fsdecode(path)) for seal, path in _LINE.findall(data)}


def _write(folder: Path, known: Mapping[bytes, Path]) -> None:
    """Keep the list; where that cannot be done it stays as it was."""
    kept = [(seal, os.fsencode(path)) for seal, path in known.items()][-MOST:]
    lines = b"".join(b"%s %s\n" % pair for pair in kept if b"\n" not in pair[1])
    disk = RealDisk()
    with suppress(OSError):
        disk.close(write_whole(disk, folder.parent / LIST, lines))
