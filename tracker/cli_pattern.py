"""What the commands share: finding a pattern, and one of its sizes."""

from __future__ import annotations

import os
from pathlib import Path

from tracker.cli import Complaint
from tracker.lean import TYPE_CHECKING

if TYPE_CHECKING:
    from tracker.pattern.model import Pattern


def is_path(word: str) -> bool:
    """Whether a word means a file rather than a name."""
    return os.path.lexists(word) or os.sep in word or word.endswith(".toml")


def pattern_path(word: str) -> Path:
    """The file a word means: a demo pattern's short name, or a path. Raises `Complaint`."""
    from tracker.pattern import library

    demo = None if is_path(word) else library.find(word)
    if demo is None and not is_path(word) and "." not in word:
        known = "hookside patterns lists the demo patterns; or name a pattern file (.toml)"
        raise Complaint(f'no pattern is called "{word}": {known}')
    return demo or Path(word)


def load(path: Path) -> Pattern:
    """The pattern in a file. Raises `Complaint`."""
    from tracker.pattern.load import PatternError, load_pattern

    try:
        return load_pattern(path)
    except PatternError as error:
        raise Complaint(str(error)) from None


def choose_size(pattern: Pattern, word: str | None) -> str:
    """The one of the pattern's sizes that a word means: its name, or how only it begins.

    Without a word: "" for a pattern in one size. Raises `Complaint`.
    """
    if not pattern.sizes:
        if word:
            raise Complaint(f'"{pattern.title}" comes in one size: leave --size out')
        return ""
    if word is None:
        if len(pattern.sizes) == 1:
            return pattern.sizes[0]
        raise Complaint(f'"{pattern.title}" comes in several sizes: {_which(pattern)}')
    return _named(pattern, word)


def _named(pattern: Pattern, word: str) -> str:
    wanted = word.strip().casefold()
    exact = [size for size in pattern.sizes if size.casefold() == wanted]
    begun = [size for size in pattern.sizes if wanted and size.casefold().startswith(wanted)]
    found = exact or begun
    if len(found) != 1:
        raise Complaint(f'"{pattern.title}" has no size "{word}": it has {_which(pattern)}')
    return found[0]


def _which(pattern: Pattern) -> str:
    names = ", ".join(pattern.sizes)
    return f'{names}. Say which, such as --size "{pattern.sizes[0]}"'
