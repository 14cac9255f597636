"""The command that speaks, as the maker has set it."""

from __future__ import annotations

from tracker.lean import NamedTuple


class Command(NamedTuple):
    """A program and its arguments; the words come last, or on its standard input."""

    words: tuple[str, ...]
    by_input: bool = False
