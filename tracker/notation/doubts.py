"""Words for a stitch that are read well enough, and yet may mean another number."""

from __future__ import annotations

from tracker.notation.tree import Make

_MANIFOLD = frozenset(("double", "triple", "treble"))
_UNTIL = frozenset(("until", "till"))


def doubt_of(made: Make, text: str, gathered: bool) -> str:
    """What keeps the words of a stitch from being one thing; "" where nothing does.

    "Double inc" may be 2 dc in one or an increase of two. ``gathered``: the words name both
    a stitch and what is done with several of it.
    """
    words = set(text.lower().split())
    if gathered and not _MANIFOLD.isdisjoint(words) and "crochet" not in words:
        return "may be a stitch, or how much it is shaped"
    if made.stitch.us == "inc" and "over" in words:
        return "does not say how many stitches"
    leaves = made.target is not None and made.target.leave is not None
    if leaves and made.stitch.takes > 1 and not _UNTIL.isdisjoint(words):
        return "may go on for several rounds"
    return ""
