"""What a printed figure counts, where that is made of several stitches: "(8 petals)"."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.notation.wordlists import BUNCHES, OF_BUNCHES, SEVERAL


def named(words: Sequence[str]) -> str:
    """What words name: such things alone "bunch", those beside others "group", others ""."""
    told = [word for word in words if word not in (".", ",", "!")]
    if told and told[0] in BUNCHES and all(w in OF_BUNCHES or w.isdigit() for w in told[1:]):
        return "bunch"
    return "group" if any(word.startswith(SEVERAL) for word in words) else ""
