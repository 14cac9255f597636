"""Words that the maker typed, as the lines of a piece's file can hold them."""

from __future__ import annotations

from tracker.notation.problems import visible

_SAFE = str.maketrans({'"': "”", "\\": "/"})
"""What those lines cannot hold in a text, and what stands for it."""


def kept(words: str, longest: int) -> str:
    """The words on one line, without what the file cannot hold, cut where they are too long."""
    return visible(words).translate(_SAFE).strip()[:longest]
