"""What a piece asks of a disk: so that one that fails can stand in its place."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from pathlib import Path

    from tracker.session.files import Seen, StrPath


class Disk(Protocol):
    """The file operations; each may raise OSError."""

    def read(self, path: StrPath) -> bytes:
        """The whole of a plain file of bounded size."""

    def make_folder(self, folder: Path) -> None:
        """Make a folder and those above it, unless they are there."""

    def open_append(self, path: Path) -> int:
        """A descriptor that writes at the end of an existing file."""

    def open_new(self, path: Path) -> int:
        """A descriptor that writes at the end of a file that was not there before."""

    def write(self, handle: int, data: bytes) -> int:
        """Write some of ``data``; returns how many bytes."""

    def fsync(self, handle: int) -> None:
        """Make what was written last through a loss of power."""

    def close(self, handle: int) -> None:
        """Let go of a descriptor."""

    def replace(self, source: Path, target: Path) -> None:
        """Put ``source`` in the place of ``target``, all at once."""

    def fsync_folder(self, folder: Path) -> None:
        """Make the names in a folder last through a loss of power."""

    def remove(self, path: Path) -> None:
        """Remove a file, if it is there."""

    def hold(self, handle: int) -> None:
        """Keep other windows from holding the same file, until `let` or `close`."""

    def let(self, handle: int) -> None:
        """Let other windows hold the file again."""

    def seen(self, path: Path) -> Seen | None:
        """The version of the file at ``path``; None if there is none."""

    def seen_open(self, handle: int) -> Seen:
        """The version of an open file."""
