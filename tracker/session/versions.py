"""Two versions of one piece, where something else changed its file while it was open."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from tracker.lean import NamedTuple
from tracker.session.access import StoreError
from tracker.session.looking import look, plan_at
from tracker.session.naming import spot_words
from tracker.session.reading import Reading

Which = Literal["ours", "theirs"]
"""Ours is what was worked in this window, theirs the file that was changed."""


class Version(NamedTuple):
    """One version of a piece.

    ``words`` say where the maker stands in it, or why it cannot be opened; ``when`` is the
    time of its last press as written, or "".
    """

    which: Which
    path: Path
    words: str
    when: str


def versions_of(
    path: Path, words: str, theirs: Path, reading: Reading | None
) -> tuple[Version, Version]:
    """Ours at ``path``, which stands at ``words``, and theirs."""
    return Version("ours", path, words, _when(path)), _other(theirs, reading)


def _when(path: Path) -> str:
    try:
        return look(path).when
    except StoreError:
        return ""


def _other(path: Path, reading: Reading | None) -> Version:
    try:
        found = look(path)
        plan = plan_at(path, found, reading)
    except StoreError as error:
        return Version("theirs", path, str(error), "")
    state = found.history.state
    return Version("theirs", path, spot_words(plan, state, state.spot), found.when)
