"""Which of a round's special stitches is its first and which its last."""

from __future__ import annotations

from tracker.fabric.steps import Run
from tracker.fabric.trees import every
from tracker.notation.tree import Make, Node


def mark_variants(runs: list[Run], nodes: tuple[Node, ...]) -> None:
    """Set `Run.variant` on the first and the last of each special stitch that has one."""
    special = {
        n.stitch.abbr: n.stitch
        for n in every(nodes)
        if isinstance(n, Make) and (n.stitch.first or n.stitch.last)
    }
    for abbr, stitch in special.items():
        at = [i for i, run in enumerate(runs) if run.stitch == abbr]
        if stitch.last and at:
            runs[at[-1]] = runs[at[-1]]._replace(variant="last")
        if stitch.first and at:
            runs[at[0]] = runs[at[0]]._replace(variant="first")
