"""One file put aside and another in its place, so that neither is ever lost."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.files import free_path

if TYPE_CHECKING:
    from tracker.session.disk import Disk


def exchange(disk: Disk, out: Path, into: Path | None, home: Path) -> str:
    """Put the file ``out`` aside, under the name ``home`` with a number, and ``into`` in its place.

    Both or, raising OSError, neither. Returns the name under which it is kept, "" where
    somebody has removed it meanwhile.
    """
    aside = free_path(disk, home.parent, f"{home.name}.aside-")
    there = disk.seen(out) is not None
    if there:
        disk.replace(out, aside)
    try:
        # Should the second name last and not the first, what is put aside would be lost.
        disk.fsync_folder(out.parent)
        if into is not None:
            disk.replace(into, out)
    except OSError:
        if there:
            with suppress(OSError):
                disk.replace(aside, out)
        raise
    return aside.name if there else ""
