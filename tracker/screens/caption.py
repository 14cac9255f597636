"""A small file that always holds the place, for a streaming program to show."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from tracker.notation.problems import visible
from tracker.screens.latest import Latest
from tracker.screens.step import whole
from tracker.session.glance import Glance, numbered

LARGEST = 64 * 1024
"""Bytes; no caption is longer, so a longer file is none of ours."""

_LEAVE = 2.0
"""Seconds that leaving waits for the last place to be written."""


class Caption:
    """Keeps the latest place in a file: whole, and never waited for.

    ``failed`` is called in another thread, once, with why the file cannot be written.
    """

    def __init__(self, path: Path, failed: Callable[[str], None]) -> None:
        self._path = path
        self._latest = Latest(self._write, failed)
        self._last = ""

    def show(self, seen: Glance) -> None:
        """Let the file hold this place and no earlier one; returns at once."""
        words = caption_words(seen)
        if words != self._last:
            self._last = words
            self._latest.put(words)

    def close(self) -> None:
        """Write what is still to be written."""
        self._latest.finish(_LEAVE)

    def _write(self, words: str) -> str:
        try:
            write_caption(self._path, words)
        except OSError as error:
            reason = (error.strerror or str(error)).lower()
            return f"The caption {self._path.name} cannot be written: {reason}"
        return ""


def caption_words(seen: Glance) -> str:
    """The place in three lines: the piece and its part, the round, the next step."""
    title = ", ".join(word for word in (seen.title, seen.size) if word)
    if seen.piece_done:
        return f"{visible(title)}\nDone.\n"
    copy = f", copy {seen.copy} of {seen.copies}" if seen.copies > 1 else ""
    of = f" of {seen.ends_on}" if seen.ends_on is not None else ""
    count = "" if seen.making_up else f" · {seen.made}{of} sts"
    lines = (f"{title} · {seen.part}{copy}", f"{numbered(seen)}{count}", whole(seen))
    return "".join(f"{visible(line)}\n" for line in lines)


def refused(path: Path) -> str:
    """Why a caption must not be written to ``path``; "" if it may.

    A file that is there is replaced only if it is empty or an older caption.
    """
    if not path.parent.is_dir():
        return f"there is no folder {path.parent} for the caption"
    if not os.path.lexists(path):
        return ""
    if path.is_symlink() or not path.is_file():
        return f"{path} is no plain file, so no caption is written over it"
    try:
        ours = path.stat().st_size <= LARGEST and _is_caption(path.read_bytes())
    except OSError as error:
        return f"{path} cannot be read: {(error.strerror or str(error)).lower()}"
    return "" if ours else f"{path} is there already and is no caption: give another name"


def _is_caption(data: bytes) -> bool:
    """Whether a file holds what `caption_words` makes, or nothing."""
    first, *rest = data.decode(errors="replace").split("\n")
    if not rest:
        return not first
    return rest == ["Done.", ""] or (len(rest) == 3 and not rest[2] and " · " in first)


def write_caption(path: Path, words: str) -> None:
    """Put the words in the place of what the file held, all at once. Raises OSError."""
    handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(words)
        Path(name).chmod(0o644)
        Path(name).replace(path)
    except OSError:
        with suppress(OSError):
            Path(name).unlink()
        raise
