"""What the eyes are needed for just now, or what has just ended: worked out from the place."""

from __future__ import annotations

from enum import StrEnum

from tracker.fabric.steps import Kind, Run, Walk


class Cue(StrEnum):
    """The occasions for a bell, by their names in the settings."""

    REPEAT = "repeat"
    ROUND = "round"
    COLOUR = "colour"
    STITCH = "stitch"
    LAST = "last-repeat"


Cues = dict[Cue, str]
"""The occasions at a place, each with its words."""


def cues_at(walk: Walk, step: int) -> Cues:
    """What to know at ``step``, with all before it done; looks at the steps beside it.

    The words may be "", where those of the step itself say it.
    """
    if step >= len(walk):
        return {Cue.ROUND: ""}
    which = walk.run_of(step)
    cues = _at_start(walk, which) if step == walk.run_start(which) else {}
    after = walk.runs[which + 1] if which + 1 < len(walk.runs) else None
    is_last = step + 1 == walk.run_start(which + 1)
    if after is not None and is_last and _changes_in(walk.runs[which], after):
        cues[Cue.COLOUR] = f"its last yarn over in colour {after.colour}"
    return cues


def _at_start(walk: Walk, which: int) -> Cues:
    """What is new with a run of equal steps."""
    run = walk.runs[which]
    before = walk.runs[which - 1] if which else None
    cues: Cues = {}
    _repeats(walk, run, before, cues)
    if run.kind is Kind.COLOUR and not (before and _changes_in(before, run)):
        cues[Cue.COLOUR] = ""
    worked = _worked_before(walk, which)
    if worked is not None and run.kind is Kind.STITCH and _work(worked) != _work(run):
        cues[Cue.STITCH] = _told(worked, run)
    return cues


def _changes_in(run: Run, after: Run) -> bool:
    """Whether the colour after a stitch already comes in with its last yarn over.

    So it does wherever a colour is changed and not joined anew (common practice, no source).
    """
    changes = after.kind is Kind.COLOUR and not after.text.startswith("join")
    return changes and run.kind is Kind.STITCH


def _repeats(walk: Walk, run: Run, before: Run | None, cues: Cues) -> None:
    """The end of one pass of the outermost repeat, the beginning of the last."""
    mine, last = _outermost(walk, run), -1 if before is None else _outermost(walk, before)
    if mine == last:
        return
    if last >= 0:
        cues[Cue.REPEAT] = f"repeat {walk.passes[last].k} is done"
    if mine >= 0:
        here = walk.passes[mine]
        if here.k == walk.times[here.repeat] > 1:
            cues[Cue.LAST] = "the last repeat"


def _outermost(walk: Walk, run: Run) -> int:
    at = run.inside
    while at >= 0 and walk.passes[at].outer >= 0:
        at = walk.passes[at].outer
    return at


def _worked_before(walk: Walk, which: int) -> Run | None:
    """The stitch made last, past an action or two between."""
    for run in reversed(walk.runs[max(0, which - 2) : which]):
        if run.kind is Kind.STITCH:
            return run
    return None


def _work(run: Run) -> tuple[object, ...]:
    """What makes a stitch another one to work."""
    return run.stitch, run.per_place, run.makes, run.variant


def _told(worked: Run, run: Run) -> str:
    """What is new with the stitches of a run after those that were worked last."""
    if (worked.stitch, worked.variant) == (run.stitch, run.variant):
        return f"now {run.per_place} {run.text} to a place"
    name = f"{run.per_place} {run.text}" if run.per_place > 1 else run.text
    return f"another stitch: {name}"
