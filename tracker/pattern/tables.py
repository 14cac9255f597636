"""Strict reading of TOML tables: every wrong thing is noted, with its place, and gone past."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from difflib import get_close_matches
from fractions import Fraction
from typing import Any

from tracker.notation.problems import Message, visible
from tracker.pattern.finder import Finder, Path

LINE = 200
"""Characters of a name, a title, a size: what must fit on one line."""

TEXT = 2_000
"""Characters of a sentence or a paragraph."""

_NUMBER = re.compile(r"(\d{1,6})(?:\.(\d{1,6}))?|(?:(\d{1,6}) )?(\d{1,6})/(\d{1,6})")


class Decimal(str):
    """A TOML float, kept as it is written so that it stays exact."""

    __slots__ = ()


class Faults:
    """What is wrong with one text, in the order it was noticed."""

    def __init__(self, finder: Finder) -> None:
        self.finder = finder
        self.messages: list[Message] = []

    def add(self, path: Path, text: str, hint: str = "") -> None:
        """Note one fault at the thing ``path``."""
        spot = self.finder.spot(path)
        length = min(spot.length, max(0, LINE - spot.column))
        source = spot.source[:LINE] if spot.column < LINE else ""
        self.messages.append(Message(spot.line, spot.column, length, text, source, hint))


class Table:
    """One table: its values by type, in bounds. What is wrong becomes a fault and a default."""

    def __init__(self, data: Mapping[str, Any], path: Path, faults: Faults) -> None:
        self._data = data
        self.path = path
        self.faults = faults

    def __contains__(self, key: str) -> bool:
        return key in self._data

    def known(self, keys: Collection[str]) -> None:
        """Note every key that is not one of ``keys``, with the one that was likely meant."""
        for key in self._data:
            if key not in keys:
                self._unknown(key, keys)

    def _unknown(self, key: str, keys: Collection[str]) -> None:
        self.fault(key, f'unknown key "{short(key)}"', nearest(key, keys))

    def fault(self, key: str, text: str, hint: str = "") -> None:
        """Note a fault at one of the keys (at the table itself where the key is missing)."""
        self.faults.add((*self.path, key), text, hint)

    def text(self, key: str, *, needed: bool = False, most: int = LINE) -> str:
        """A text of at most ``most`` characters; "" where there is none."""
        if key not in self._data:
            if needed:
                self.fault(key, f'"{key}" is missing')
            return ""
        value = self._data[key]
        if type(value) is not str:
            self._wrong(key, "a text in quotes")
            return ""
        if needed and not value.strip():
            self.fault(key, f'"{key}" is empty')
        return self._within(key, value, most)

    def _within(self, key: str, value: str, most: int) -> str:
        if len(value) <= most:
            return value
        self.fault(key, f'"{key}" has {len(value):,} characters; the most is {most:,}')
        return value[:most]

    def _wrong(self, key: str, wanted: str) -> None:
        self.fault(key, f'"{key}" must be {wanted}, not {_kind(self._data[key])}')

    def integer(self, key: str, low: int, high: int, default: int | None = None) -> int | None:
        """A whole number from ``low`` to ``high``; ``default`` where there is none."""
        value = self._data.get(key)
        if value is None:
            return default
        if type(value) is not int:
            self._wrong(key, "a whole number")
        elif not low <= value <= high:
            self.fault(key, f'"{key}" must be from {low} to {high:,}')
        else:
            return value
        return default

    def needed_integer(self, key: str, low: int, high: int) -> int:
        """A whole number that has to be there."""
        if key not in self._data:
            self.fault(key, f'"{key}" is missing', f"A whole number from {low} to {high:,}.")
        return self.integer(key, low, high) or 0

    def fraction(self, key: str) -> Fraction:
        """An exact number above 0: 14, 17.5 or "17 1/2"; 0 where it is missing or wrong."""
        value = self._data.get(key)
        found = None if type(value) is bool else _NUMBER.fullmatch(str(value))
        number = _exact(found) if found and isinstance(value, int | str) else Fraction(0)
        if not number:
            about = f"not {_kind(value)}" if key in self._data else "but it is missing"
            self.fault(key, f'"{key}" must be a number above 0, {about}', 'Such as 14 or "17 1/2".')
        return number

    def choice(self, key: str, choices: Sequence[str], default: str) -> str:
        """One of a few words."""
        value = self.text(key) if key in self._data else default
        if value in choices:
            return value
        self.fault(
            key, f'"{key}" cannot be "{short(value)}"', f"It is one of: {', '.join(choices)}."
        )
        return default

    def texts(self, key: str, count: int, most: int = LINE) -> tuple[str, ...]:
        """A list of at most ``count`` texts, none of them empty; empty where there is none."""
        value = self._data.get(key, [])
        if not isinstance(value, list) or any(type(item) is not str for item in value):
            self._wrong(key, 'a list of texts, such as ["one", "two"]')
            return ()
        if len(value) > count:
            self.fault(key, f'"{key}" has {len(value):,} entries; the most is {count}')
        if any(not item.strip() for item in value):
            self.fault(key, f'"{key}" has an empty entry')
        return tuple(self._within(key, item, most) for item in value[:count])

    def lines(self, key: str, count: int) -> tuple[str, ...]:
        """A list of texts, or one text with one entry a line."""
        if type(self._data.get(key)) is not str:
            return self.texts(key, count, TEXT)
        found = [line.strip() for line in self._data[key].splitlines() if line.strip()]
        if len(found) > count:
            self.fault(key, f'"{key}" has {len(found):,} lines; the most is {count}')
        return tuple(self._within(key, line, TEXT) for line in found[:count])

    def whole_numbers(self, key: str, count: int, high: int) -> tuple[int, ...]:
        """A list of at most ``count`` whole numbers from 1 to ``high``; empty where missing."""
        value = self._data.get(key, [])
        if not isinstance(value, list) or any(type(item) is not int for item in value):
            self._wrong(key, "a list of whole numbers, such as [2, 2]")
        elif len(value) > count or any(not 1 <= item <= high for item in value):
            self.fault(key, f'"{key}" holds at most {count} numbers, each from 1 to {high:,}')
        else:
            return tuple(value)
        return ()

    def figures(self, key: str, sizes: int, high: int) -> tuple[int, ...]:
        """A whole number, or a list with one for each of ``sizes`` sizes."""
        value = self._data.get(key, [])
        listed = value if isinstance(value, list) else [value]
        if any(type(item) is not int for item in listed):
            self._wrong(key, "a whole number, or a list with one for each size")
        elif any(not 1 <= item <= high for item in listed):
            self.fault(key, f'"{key}" must be from 1 to {high:,}')
        elif key in self._data and len(listed) not in (1, max(1, sizes)):
            wanted = f"1 or {sizes}" if sizes > 1 else "1"
            self.fault(key, f'"{key}" has {len(listed)} figures where it needs {wanted}')
        else:
            return tuple(listed)
        return ()

    def table(self, key: str) -> Table | None:
        """A table inside this one; None where there is none."""
        value = self._data.get(key)
        if value is None or isinstance(value, dict):
            return None if value is None else Table(value, (*self.path, key), self.faults)
        self._wrong(key, f"a table, begun with [{key}]")
        return None

    def tables(self, key: str, count: int) -> list[Table]:
        """A list of tables inside this one."""
        value = self._data.get(key, [])
        if not isinstance(value, list) or any(not isinstance(item, dict) for item in value):
            self._wrong(key, f"a list of tables, each begun with [[{key}]]")
            return []
        if len(value) > count:
            self.fault(key, f"{len(value):,} tables [[{key}]]; the most is {count}")
        return [
            Table(item, (*self.path, key, index), self.faults)
            for index, item in enumerate(value[:count])
        ]


def nearest(word: str, known: Collection[str]) -> str:
    """A hint on a word that is not known: the one likely meant, else all there are."""
    near = get_close_matches(word[:LINE], known, n=1)
    return f'Did you mean "{near[0]}"?' if near else f"Known here: {', '.join(known)}."


def short(text: str) -> str:
    """A text from a file as it can be quoted in a sentence: plain, and not long."""
    return visible(text if len(text) <= 40 else text[:39] + "…")


def _exact(found: re.Match[str]) -> Fraction:
    whole, decimals, units, over, under = found.groups()
    if whole is not None:
        return Fraction(f"{whole}.{decimals or 0}")
    return (
        Fraction(int(units or 0)) + Fraction(int(over), int(under)) if int(under) else Fraction(0)
    )


def _kind(value: object) -> str:
    """What a value is, in words."""
    if isinstance(value, str) and not isinstance(value, Decimal):
        return f'"{short(value)}"' if value else "an empty text"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | Decimal):
        return (
            short(str(value)) if isinstance(value, str) or abs(value) < 10**9 else "a huge number"
        )
    if isinstance(value, list | dict):
        return "a list" if isinstance(value, list) else "a table"
    return "a date or time"
