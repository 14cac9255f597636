"""Another version of a piece that lies beside it, as a synced folder leaves one.

It was begun at the same time under the same title and in the same size, which no press and no
change of the pattern's file changes, and has a name that goes on from the piece's own or that
the piece's own goes on from.
"""

from __future__ import annotations

import re
from pathlib import Path

from tracker.session.access import StoreError, read_bytes
from tracker.session.files import ENDING, RealDisk

_BEGUN = re.compile(rb"^\[piece\]\r?\n(title = .*?\nstarted = [^\r\n]*)", re.DOTALL | re.MULTILINE)
"""Title, size and time in a head; they stand before all that may change in it."""


def version_beside(path: Path) -> Path | None:
    """Another version of the piece at ``path`` in its folder, or None."""
    try:
        names = sorted(one.name for one in path.parent.iterdir())
    except OSError:
        return None
    others = (path.with_name(name) for name in names if _is_like(path.name, name))
    return next((other for other in others if same_piece(path, other)), None)


def bears_the_name(path: Path, other: Path) -> bool:
    """Whether it is the file at ``path``, and not its other version, that has the piece's name."""
    return not other.name.endswith(ENDING) or len(_stem(path.name)) <= len(_stem(other.name))


def same_piece(one: Path, other: Path) -> bool:
    """Whether two files are versions of one piece."""
    begun = _begun(one)
    return begun is not None and begun == _begun(other)


def _is_like(own: str, name: str) -> bool:
    if name == own or not name.endswith(".toml") or name.startswith("."):
        return False
    shorter, longer = sorted((_stem(own), _stem(name)), key=len)
    return longer.startswith(shorter)


def _begun(path: Path) -> bytes | None:
    try:
        found = _BEGUN.search(read_bytes(path, RealDisk()))
    except StoreError:
        return None
    return found[1] if found else None


def _stem(name: str) -> str:
    """A name without its ending; some put what they add before the last dot."""
    return name.removesuffix(ENDING).removesuffix(".toml").replace(".piece", "", 1)
