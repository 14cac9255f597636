"""Files that a command writes: whole or not at all, and never over one that is there unasked."""

from __future__ import annotations

import os
import tempfile
from contextlib import suppress
from pathlib import Path

from tracker.cli import Complaint


def refuse(path: Path, *, force: bool) -> None:
    """Raise `Complaint` where ``path`` must not be written."""
    if not os.path.lexists(path):
        return
    if not force:
        raise Complaint(f"{path} is there already: give another name, or --force to replace it")
    if path.is_symlink() or not path.is_file():
        raise Complaint(f"{path} is no plain file, so it is not replaced")


def write_file(path: Path, text: str, *, force: bool) -> None:
    """Write a whole file or none of it. Raises `Complaint`."""
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
        try:
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
                file.write(text)
                file.flush()
                os.fsync(handle)
            _put(Path(name), path, force=force)
        finally:
            with suppress(FileNotFoundError):
                Path(name).unlink()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise Complaint(f"{path} cannot be written: {reason}") from None


def _put(ready: Path, path: Path, *, force: bool) -> None:
    """Give a finished file its name; without ``force`` it never takes another's place."""
    ready.chmod(0o666 & ~_umask())
    if not force:
        # The name is taken first, since not every file system can link, as on a memory stick.
        path.open("x").close()
    ready.replace(path)


def _umask() -> int:
    """The permissions that the maker's new files do without."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
