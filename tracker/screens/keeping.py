"""Changing the keys in ``settings.toml`` line by line, so that all else in it stays."""

from __future__ import annotations

import re
import tomllib

from tracker.screens.actions import Keys

_KEYS = re.compile(r"\s*\[\s*keys\s*\]\s*(#.*)?")
_TABLE = re.compile(r"\s*\[")


def with_keys(text: str, changed: Keys) -> str:
    """The text with the keys of these actions in its table ``keys``.

    Only the lines of these actions are others then; comments stay. Raises ValueError where
    the keys are written in a way in which that cannot be done.
    """
    wanted = tomllib.loads(text)
    wanted["keys"] = {**wanted.get("keys", {}), **{name: [*of] for name, of in changed.items()}}
    lines = text.splitlines(keepends=True)
    begin = next((n for n, line in enumerate(lines) if _KEYS.fullmatch(line.rstrip())), None)
    if begin is None:
        before = "" if not text else "\n" if text.endswith("\n") else "\n\n"
        lines.append(f"{before}[keys]\n")
        begin = len(lines) - 1
    for name, of in changed.items():
        _put(lines, begin + 1, name, of)
    found = "".join(lines)
    if tomllib.loads(found) != wanted:
        raise ValueError("the keys are not in lines of their own")
    return found


def _put(lines: list[str], begin: int, name: str, of: tuple[str, ...]) -> None:
    """Put the keys of an action in the table whose lines begin there."""
    words = ", ".join(f'"{key}"' for key in of)
    line = re.compile(rf"\s*{re.escape(name)}\s*=")
    at = end = begin
    while at < len(lines):
        after = _end_of(lines, at)
        if line.match(lines[at]):
            lines[at:after] = [f"{name} = [{words}]{_comment(lines, at, after)}"]
            return
        if _TABLE.match(lines[at]):
            break
        if after > at + 1 or "=" in lines[at].partition("#")[0]:
            end = after
        at = after
    if end and not lines[end - 1].endswith("\n"):
        lines[end - 1] += "\n"
    lines.insert(end, f"{name} = [{words}]\n")


def _end_of(lines: list[str], at: int) -> int:
    """Where the value that begins on a line ends: the number of the line after it."""
    for end in range(at + 1, len(lines) + 1):
        try:
            tomllib.loads("".join(lines[at:end]))
        except tomllib.TOMLDecodeError:
            continue
        return end
    return at + 1


def _comment(lines: list[str], at: int, after: int) -> str:
    """What stands after a value on its last line, the line's end with it."""
    value, last = "".join(lines[at : after - 1]), lines[after - 1]
    for end, character in enumerate(last):
        if character in "]\"'":
            try:
                tomllib.loads(value + last[: end + 1])
            except tomllib.TOMLDecodeError:
                continue
            return last[end + 1 :]
    return "\n"
