"""Another version of a piece that lies beside it, as a synced folder leaves one.

It begins with the very same head, since no press changes that, and has a name that goes on
from the piece's own or that the piece's own goes on from.
"""

from __future__ import annotations

from pathlib import Path

from tracker.session.access import StoreError, read_bytes
from tracker.session.files import ENDING, RealDisk
from tracker.session.head import head_end


def version_beside(path: Path) -> Path | None:
    """Another version of the piece at ``path`` in its folder, or None."""
    try:
        data = read_bytes(path, RealDisk())
        names = sorted(one.name for one in path.parent.iterdir())
    except (StoreError, OSError):
        return None
    head = data[: head_end(data)[0]]
    return next((path.with_name(name) for name in names if _is_other(path, name, head)), None)


def _is_other(path: Path, name: str, head: bytes) -> bool:
    if name == path.name or not name.endswith(".toml") or name.startswith("."):
        return False
    shorter, longer = sorted((_stem(path.name), _stem(name)), key=len)
    return longer.startswith(shorter) and _begins(path.with_name(name), head)


def _stem(name: str) -> str:
    """A name without its ending; some put what they add before the last dot."""
    return name.removesuffix(ENDING).removesuffix(".toml").replace(".piece", "", 1)


def _begins(path: Path, head: bytes) -> bool:
    try:
        return RealDisk().read(path).startswith(head)
    except OSError:
        return False
