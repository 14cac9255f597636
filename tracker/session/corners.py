"""Where a round has corners: groups of stitches round a chain, worked into one place."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.fabric.steps import Kind, Run, Walk

SAME = "in the same place"


def sides_begin(walk: Walk) -> Sequence[int]:
    """The runs that are worked right after a corner group (stitches, chain, stitches)."""
    return [at for at in range(len(walk.runs)) if begins_side(walk, at)]


def begins_side(walk: Walk, at: int) -> bool:
    """Whether a run of stitches is worked right after a corner group."""
    if at < 3:
        return False
    before, chain, after, side = walk.runs[at - 3 : at + 1]
    return (
        chain.kind is Kind.CHAIN
        and before.kind is after.kind is side.kind is Kind.STITCH
        and after.where in (SAME, before.where)
        and side.where != after.where
        and not in_space(side)
    )


def in_space(run: Run) -> bool:
    """Whether a run's stitches go into a chain space."""
    return " sp" in run.where or "space" in run.where
