"""The fields of an entry: a small strict subset of TOML, read by a reader of our own.

Parts, copies, rounds and times count from 1 in the file, as makers do.
"""

from __future__ import annotations

import re

HIGHEST = 10**9
"""No number of a file is above this."""

Value = int | str | bool | tuple[int, ...]


class EntryError(ValueError):
    """A line that is no entry; the text says why."""


_FIELD = (
    r'([a-z]+) = (?:(\d{1,10})|"([^"\\]*)"|\[([\d, ]*)\]|(true|false)|(\d{4}-[0-9T:.+Z-]*))'
    r"(?:, |$)"
)


def parse(text: str) -> dict[str, Value]:
    """The fields of a line. Raises `EntryError`."""
    fields: dict[str, Value] = {}
    at, field = 0, re.compile(_FIELD)
    while at < len(text):
        match = field.match(text, at)
        if match is None or match[1] in fields:
            raise EntryError("not an entry")
        fields[match[1]] = _value(match)
        at = match.end()
    return fields


def _value(match: re.Match[str]) -> Value:
    _, number, word, numbers, truth, stamp = match.groups()
    if number is not None:
        return bounded(number)
    if numbers is not None:
        return tuple(bounded(one) for one in numbers.split(",")) if numbers else ()
    if truth is not None:
        return truth == "true"
    return word if word is not None else stamp


def bounded(digits: str) -> int:
    """A number of the file. Raises `EntryError` where it is above `HIGHEST`."""
    try:
        number = int(digits)
    except ValueError:
        raise EntryError("not a number") from None
    if number > HIGHEST:
        raise EntryError("too high a number")
    return number


def shown(value: Value) -> str:
    """A value as it stands in the file."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, tuple):
        return f"[{', '.join(map(str, value))}]"
    return f'"{value}"' if isinstance(value, str) else str(value)


def up(numbers: tuple[int, ...]) -> tuple[int, ...]:
    """Numbers that count from 0, as the file has them."""
    return tuple(number + 1 for number in numbers)


def down(value: Value, length: int) -> tuple[int, ...]:
    """The numbers of a list, those of parts, copies, rounds and times counted from 0.

    Raises `EntryError`.
    """
    if not isinstance(value, tuple) or len(value) != length or min(value[:4]) < 1:
        raise EntryError("not a list of the right numbers")
    return (*(number - 1 for number in value[:4]), *value[4:])


def number(value: Value) -> int:
    """A whole number from 1 on. Raises `EntryError`."""
    if isinstance(value, bool) or not isinstance(value, int) or value < 1:
        raise EntryError("not a number from 1 on")
    return value


def truth(value: Value) -> bool:
    """True or false. Raises `EntryError`."""
    if not isinstance(value, bool):
        raise EntryError("neither true nor false")
    return value
