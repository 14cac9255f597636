"""What a maker is easily caught by at a step, said before it is made."""

from __future__ import annotations

from tracker.fabric.steps import Kind, Walk
from tracker.lean import NamedTuple
from tracker.pattern.model import Worked
from tracker.session.corners import begins_side

FIRST, LAST, NONE = "first", "last", "none"
ROUND = (FIRST, LAST, NONE)
"""Which stitch of a spiral's round holds the marker. Makers differ:
https://littleowlshut.com/single-post/2015/12/09/which-stitch-marker-should-you-use-for-littleowlshut-toys
"""

CORNER = "the next st hides under the corner"
"""https://crochetclassescapetown.co.za/blog/item/15-never-forget-about-this-stitch"""


class Markers(NamedTuple):
    """Where the maker puts markers.

    Attributes:
        round: which stitch of a spiral's round: "first", "last" or "none".
        every: after how many stitches of a long chain or row; 0 for none.
    """

    round: str = FIRST
    every: int = 0


NO_MARKERS = Markers(NONE)


def hint(walk: Walk, step: int, worked: Worked, markers: Markers) -> str:
    """The words for a step of a round, with all before it done; "" for most."""
    if step >= len(walk):
        return ""
    which = walk.run_of(step)
    if step == walk.run_start(which) and begins_side(walk, which):
        return CORNER
    if worked is Worked.SPIRAL and step == _marked(walk, markers.round):
        return f"{markers.round} stitch: move the marker here"
    return _counted(walk, step, markers.every)


def _marked(walk: Walk, which: str) -> int:
    """The step that makes the stitch which the marker is moved into, -1 for none."""
    order = range(len(walk.runs))
    for at in order if which == FIRST else reversed(order):
        if which != NONE and walk.runs[at].kind is Kind.STITCH:
            return walk.run_start(at) if which == FIRST else walk.run_start(at + 1) - 1
    return -1


# https://ghanawebshop.com/2025/04/how-i-count-my-crochet-stitches.html puts a marker in every
# so many stitches, so that only the last stretch is counted again.
def _counted(walk: Walk, step: int, every: int) -> str:
    run = walk.runs[walk.run_of(step)]
    made = walk.made_before(step)
    long = every and run.makes == 1 and run.count >= 2 * every
    if not long or not made or made % every or made == walk.made_before(step - 1):
        return ""
    return f"{made} made: a marker here"
