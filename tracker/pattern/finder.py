"""Where things stand in a TOML text, so that a message can point at them.

`tomllib` reads the values but forgets where they stood. This goes over a text that it has
already accepted, and notes the place of every key and of every table's heading.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

Path = tuple[str | int, ...]
"""Keys and positions in arrays of tables: ("part", 0, "rounds")."""

_KEY = r"""(?:[\w-]++|"(?:\\.|[^"\\\n])*+"|'[^'\n]*+')"""
_KEYS = re.compile(rf"{_KEY}(?:[ \t]*+\.[ \t]*+{_KEY})*+")
_ONE_KEY = re.compile(_KEY)
_BLANK = re.compile(r"(?:[ \t\r\n]++|#[^\n]*+)*+")
_VALUE = re.compile(
    r'''"""(?:\\.|[^\\])*?"{3,5}|\'\'\'.*?\'{3,5}|"(?:\\.|[^"\\\n])*+"|'[^'\n]*+'|#[^\n]*+'''
    r"""|[\[{]|[\]}]|\n|[^"'#\[\]{}\n]++""",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in the text: line and column from 1, how many characters, the whole line.

    ``value_line`` is the line on which the value's text begins: for a string of several
    lines that begins with a line break, the line after it.
    """

    line: int
    column: int
    length: int
    source: str
    value_line: int


@dataclass(frozen=True, slots=True)
class _Found:
    start: int
    end: int
    value: int


class Finder:
    """Finds keys in one TOML text."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._lines = text.split("\n")
        self._starts = [0, *accumulate(len(line) + 1 for line in self._lines)]
        self._found = dict(_scan(text))

    def spot(self, path: Path) -> Spot:
        """Where ``path`` stands, or the nearest thing it is inside of; the top, if none."""
        while path and path not in self._found:
            path = path[:-1]
        found = self._found.get(path, _Found(0, 0, 0))
        line = self._line_of(found.start)
        return Spot(
            line=line + 1,
            column=found.start - self._starts[line] + 1,
            length=found.end - found.start,
            source=self._lines[line].rstrip("\r"),
            value_line=self._line_of(found.value) + 1,
        )

    def _line_of(self, offset: int) -> int:
        return bisect_right(self._starts, offset) - 1


def _scan(text: str) -> Iterator[tuple[Path, _Found]]:
    """Every key and heading, in order, with its path."""
    at, here = 0, _Headings()
    while (at := _end(_BLANK, text, at)) < len(text):
        heading = text.startswith("[", at)
        many = text.startswith("[[", at)
        begin = _end(_BLANK, text, at + heading + many)
        keys = _KEYS.match(text, begin)
        if keys is None:
            return
        names = tuple(_plain(key) for key in _ONE_KEY.findall(keys.group()))
        if heading:
            end = text.find("]", keys.end()) + 1 + many
            yield here.enter(names, many=many), _Found(at, end, end)
            at = end
        else:
            value = _end(_BLANK, text, text.index("=", keys.end()) + 1)
            yield (*here.path, *names), _Found(begin, keys.end(), _content(text, value))
            at = _value_end(text, value)


def _end(pattern: re.Pattern[str], text: str, at: int) -> int:
    match = pattern.match(text, at)
    return match.end() if match else at


def _plain(key: str) -> str:
    """A key without its quotes. One with escapes in it stays as it is, and is not found."""
    return key[1:-1] if key[0] in "\"'" else key


def _content(text: str, value: int) -> int:
    """Where a value's own text begins: past the quotes and the line break behind them."""
    for quotes in ('"""', "'''"):
        if text.startswith(quotes, value):
            for line_break in ("\r\n", "\n"):
                if text.startswith(line_break, value + 3):
                    return value + 3 + len(line_break)
    return value


def _value_end(text: str, at: int) -> int:
    """One past the last character of the value at ``at``, arrays and their lines included."""
    depth = 0
    while (match := _VALUE.match(text, at)) is not None:
        found = match.group()
        if found == "\n" and depth == 0:
            return at
        depth += (found in "[{") - (found in "]}")
        at = match.end()
    return len(text)


class _Headings:
    """The table that the lines now belong to."""

    def __init__(self) -> None:
        self.path: Path = ()
        self._arrays: dict[Path, int] = {}

    def enter(self, names: tuple[str, ...], *, many: bool) -> Path:
        """Go into the table of a heading; the path it has."""
        path: Path = ()
        for depth, name in enumerate(names, start=1):
            path = (*path, name)
            if many and depth == len(names):
                self._arrays[path] = self._arrays.get(path, -1) + 1
            if path in self._arrays:
                path = (*path, self._arrays[path])
        self.path = path
        return path
