"""Rounds that only some of the sizes work: the last ones of a longer piece."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from tracker.fabric.edge import Edge, made, stitches
from tracker.fabric.outcome import Outcome
from tracker.notation.one_size import in_sizes, stated_in_sizes
from tracker.notation.tree import Figure
from tracker.pattern.checked import CheckedRound
from tracker.pattern.tasks import ReadLine, Task

Thing = TypeVar("Thing")


def chosen(things: Sequence[Thing], which: Sequence[int]) -> list[Thing]:
    """Of a list with one thing a size, those of the sizes ``which``."""
    return [things[i] for i in which]


def put_back(whole: Sequence[Thing], which: Sequence[int], some: Sequence[Thing]) -> list[Thing]:
    """The list of all sizes, with the things of the sizes ``which`` exchanged."""
    found = list(whole)
    for i, thing in zip(which, some, strict=True):
        found[i] = thing
    return found


def for_some(task: Task) -> Task:
    """The task with the figures of those sizes alone that work it."""
    return replace(
        task,
        item=_narrow(task.item, task.only),
        body=_narrow(task.body, task.only),
        stated=stated_in_sizes(task.stated, task.only),
        only=(),
    )


def _narrow(item: ReadLine, which: Sequence[int]) -> ReadLine:
    return replace(item, read=in_sizes(item.read, which))


def for_all(found: CheckedRound, task: Task, edges: Sequence[Edge | None]) -> CheckedRound:
    """What was found of a round, told for all sizes: the others keep the edge they have."""
    which, idle = task.only, [Outcome(edge=edge or ()) for edge in edges]
    if found.judged is None:
        return replace(found, below=None, only=which)
    outcomes = put_back(idle, which, found.judged.outcomes)
    counts = tuple(stitches(edge or ()) for edge in edges)
    below = found.below and tuple(put_back(counts, which, found.below))
    return replace(
        found,
        below=below,
        takes=tuple(o.takes for o in outcomes),
        makes=tuple(o.makes for o in outcomes),
        made=_made(outcomes),
        stated=task.stated.total if task.stated is not None and found.stated else None,
        judged=replace(found.judged, outcomes=tuple(outcomes)),
        only=which,
    )


def _made(outcomes: Sequence[Outcome]) -> Mapping[str, Figure]:
    counts = [made(o.edge) for o in outcomes]
    names = dict.fromkeys(name for count in counts for name in count)
    return {name: tuple(count.get(name, 0) for count in counts) for name in names}


def left_behind(task: Task, edges: Sequence[Edge | None]) -> int:
    """The first size that is done before and has another count than is printed; -1 for none."""
    total = () if task.stated is None or not task.last else task.stated.total or ()
    if len(total) != len(edges):
        return -1
    return next(
        (
            i
            for i, edge in enumerate(edges)
            if i not in task.only and edge and total[i] not in (0, stitches(edge))
        ),
        -1,
    )
