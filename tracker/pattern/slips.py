"""Slips of the pen in a printed count that is not what its round makes."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.begins import beginning
from tracker.fabric.edge import stitches
from tracker.fabric.judge import Judged
from tracker.fabric.outcome import Start
from tracker.notation.round_text import Stated
from tracker.notation.tree import Node


def slip_of_figure(
    nodes: tuple[Node, ...], judged: Judged, stated: Stated | None, starts: Sequence[Start]
) -> str:
    """How the printed count of a round in one size may have come about; "" where unknown."""
    if not judged.fits or stated is None or not stated.total or len(judged.outcomes) > 1:
        return ""
    printed, makes = stated.total[0], judged.outcomes[0].makes
    if str(printed) == str(makes)[::-1] and printed != makes:
        return f"the digits of {makes} may have changed places"
    edge = starts[0].edge or ()
    if printed == stitches(edge) and all(spot.name == "ch" for spot in edge):
        return f"{printed} is the number of chains below"
    chained = beginning(nodes) is not None or starts[0].pending is not None
    if printed == makes + 1 and chained:
        return "the printed count may take in the beginning chain"
    return ""


def copied_figure(judged: Judged, stated: Stated | None, starts: Sequence[Start]) -> str:
    """Where the printed count is that of the round below; "" where it is not."""
    if not judged.fits or stated is None or not stated.total or len(starts) > 1:
        return ""
    below = stitches(starts[0].edge or ())
    return f"{below} is the count of the round below" if stated.total == (below,) else ""
