"""What a right repeat looks like on the work, to hold a wrong one against."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from tracker.fabric.steps import Kind, Run, Walk
from tracker.session.corners import SAME


def right_repeat(walk: Walk) -> str:
    """The first pass of the round's main repeat as it stands on the work; "" without one.

    Such as "5 hdc, 2 hdc from one foot: 7 stitches".
    """
    number = max(range(len(walk.times)), key=lambda one: walk.times[one], default=-1)
    if number < 0 or walk.times[number] < 2:
        return ""
    first = next(at for at, one in enumerate(walk.passes) if one.repeat == number)
    runs = [run for run in walk.runs if _within(walk, run, first)]
    makes = sum(run.count * run.makes for run in runs)
    stitches = "1 stitch" if makes == 1 else f"{makes} stitches"
    return f"{', '.join(map(_group, _groups(runs)))}: {stitches}"


def _within(walk: Walk, run: Run, wanted: int) -> bool:
    at = run.inside
    while at >= 0 and at != wanted:
        at = walk.passes[at].outer
    return at == wanted


def _groups(runs: Sequence[Run]) -> list[list[Run]]:
    """The runs, those that go into one place together."""
    groups: list[list[Run]] = []
    for at, run in enumerate(runs):
        after = runs[at + 1] if at + 1 < len(runs) else None
        between = run.kind is Kind.CHAIN and after is not None and after.where == SAME
        if groups and (run.where == SAME or between):
            groups[-1].append(run)
        else:
            groups.append([run])
    return groups


def _group(runs: Sequence[Run]) -> str:
    first = runs[0]
    if len(runs) > 1:
        texts = [run.text for run in runs for _ in range(run.count)]
        counted = [(text, len(list(same))) for text, same in groupby(texts)]
        inner = ", ".join(text if many == 1 else f"{many} {text}" for text, many in counted)
        return f"({inner}) {_one_place(first)}"
    if first.per_place > 1:
        times = first.count // first.per_place
        again = f" {times} times" if times > 1 else ""
        return f"{first.per_place} {first.text} {_one_place(first)}{again}"
    many = first.text if first.count == 1 else f"{first.count} {first.text}"
    return many + _shape(first)


def _one_place(run: Run) -> str:
    """Where several stitches stand that went into one place."""
    if run.where.startswith("in the next ") and "sp" in run.where.split():
        return f"in one {run.where.removeprefix('in the next ')}"
    return "from one foot"


def _shape(run: Run) -> str:
    """How a stitch looks that takes or makes other than one."""
    if run.kind is not Kind.STITCH or run.takes == run.makes or "sp" in run.where.split():
        return ""
    if run.takes > run.makes == 1:
        return f" ({run.takes} feet under one top)"
    return f" ({run.makes} tops from one foot)" if run.makes > run.takes == 1 else ""
