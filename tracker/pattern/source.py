"""The text of a pattern file, and the TOML in it; whatever is wrong is one clear message."""

from __future__ import annotations

import os
import re
import stat
import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tracker.notation.problems import Message, visible
from tracker.pattern.tables import TEXT, Decimal

LARGEST = 1024 * 1024
"""Bytes of a pattern file."""

SHOWN = 12
"""Faults that one error shows; of the rest only the number."""

_NAME = r"""(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')"""
#: A key of more than twenty names. `tomllib` takes time that grows with the square of them.
_LONG_KEY = re.compile(rf"(?<![\w-]){_NAME}(?:[ \t]*+\.[ \t]*+{_NAME}){{20}}")
_AT_LINE = re.compile(r"(.*) \(at line (\d+), column (\d+)\)", re.DOTALL)


class PatternError(Exception):
    """A pattern that cannot be used, and every reason why.

    Attributes:
        file: the file's name as it was given.
        faults: one message each; line 0 for one that has no place in the text.
    """

    def __init__(self, file: str, faults: Sequence[Message]) -> None:
        super().__init__(file, faults)
        self.file = file
        self.faults = tuple(faults)

    def __str__(self) -> str:
        """All faults in plain text, each led by the file's name; the first dozen of many."""
        name = visible(self.file)
        shown = [f"{name}: {_worded(fault)}" for fault in self.faults[:SHOWN]]
        more = len(self.faults) - len(shown)
        return "\n".join(
            [*shown, f"{name}: and {more:,} more like these"][: len(shown) + (more > 0)]
        )


def _worded(fault: Message) -> str:
    return str(fault) if fault.line else f"{fault.text}. {fault.hint}".rstrip()


def read_source(path: Path | str) -> str:
    """The text of a file. Raises `PatternError` for anything but a plain file in UTF-8."""
    file = os.fspath(path)
    return decode(file, read_bytes(file))


def _refused(file: str, text: str, hint: str = "") -> PatternError:
    return PatternError(file, [Message(0, 0, 0, text, hint=hint)])


def too_large(file: str, most: int = LARGEST) -> PatternError:
    """The refusal of a file of more than ``most`` bytes."""
    return _refused(file, "too large for a pattern", f"The most is {most >> 20} MiB.")


# Opening a FIFO that nobody else has open must not wait for ever; no link is followed, even
# if it was put there a moment ago.
_SAFELY = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOFOLLOW", 0)


def read_bytes(file: str, most: int = LARGEST) -> bytes:
    """The bytes of a plain file. A pipe is opened without waiting for its other end.

    Raises `PatternError`: nothing of this name, a link, no plain file, or more than ``most``
    bytes. The folders above may be links.
    """
    if Path(file).is_symlink():
        real = visible(os.path.realpath(file))
        raise _refused(file, f"is a link to {real}", "Name that file itself.")
    try:
        handle = os.open(file, os.O_RDONLY | _SAFELY)
    except FileNotFoundError:
        raise _refused(file, "no such file", "Look at its name and folder.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _refused(file, f"cannot be opened: {reason.lower()}") from None
    try:
        return _read_plain(file, handle, most)
    finally:
        os.close(handle)


def _read_plain(file: str, handle: int, most: int) -> bytes:
    about = os.fstat(handle)
    if stat.S_ISDIR(about.st_mode):
        raise _refused(file, "is a folder, not a file", "Name the pattern file in it.")
    if not stat.S_ISREG(about.st_mode):
        raise _refused(file, "is not a plain file", "A pattern is a TOML file.")
    if about.st_size > most:
        raise too_large(file, most)
    return _read_all(handle, most + 1)


def _read_all(handle: int, most: int) -> bytes:
    found = b""
    while len(found) < most and (more := os.read(handle, most - len(found))):
        found += more
    return found


def decode(file: str, data: bytes) -> str:
    """The text of ``data``. Raises `PatternError` where it is not UTF-8, with the place."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line = before.count(b"\n") + 1
        column = len(before.rpartition(b"\n")[2].decode("utf-8", "replace")) + 1
        message = Message(line, column, 1, "not text in UTF-8", hint="Save the file as UTF-8.")
        raise PatternError(file, [message]) from None


def parse(file: str, source: str) -> dict[str, Any]:
    """The data of a TOML text; floats as `Decimal`. Raises `PatternError`."""
    if len(source) > LARGEST:
        raise too_large(file)
    long = _LONG_KEY.search(source)
    if long:
        line = source.count("\n", 0, long.start()) + 1
        column = long.start() - source.rfind("\n", 0, long.start())
        raise PatternError(file, [Message(line, column, 0, "a key of more than 20 names")])
    try:
        return tomllib.loads(source, parse_float=Decimal)
    except RecursionError:
        raise _refused(file, "brackets are nested too deep to be read") from None
    except ValueError as error:
        raise PatternError(file, [_not_toml(source, str(error))]) from None


def _not_toml(source: str, said: str) -> Message:
    """The TOML reader's own message, with the line it is about."""
    found = _AT_LINE.fullmatch(said)
    lines = source.split("\n")
    if found:
        what, line, column = found[1], int(found[2]), int(found[3])
    elif said.endswith("(at end of document)"):
        what, line, column = said.removesuffix(" (at end of document)"), len(lines), 1
        column = len(lines[-1]) + 1
    else:
        return Message(0, 0, 0, "not TOML: a number or date in it cannot be read")
    return Message(
        line,
        column,
        1,
        f"not TOML: {visible(what[:1].lower() + what[1:])}",
        source=lines[line - 1].rstrip("\r")[:TEXT],
        hint="Texts stand in quotes; rounds stand between ''' and '''.",
    )
