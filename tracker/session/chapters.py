"""Chapter marks of a recording: when each round was begun, from the times of the presses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session import worksheet
from tracker.session.entries import PutDown, Redo, Undo
from tracker.session.history import History
from tracker.session.moments import Moment
from tracker.session.naming import label, name
from tracker.session.own import OwnPlan

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import State

STOPPED = 60 * 60
"""Seconds without a press after which a recording is taken to have ended. Our own choice."""

BRIEF = 10
"""Seconds; a round that was only passed through in less is no chapter. Our own choice."""


class Chapter(NamedTuple):
    """One mark: seconds into the recording, and the part and the round begun there."""

    at: int
    part: str
    round: str


def chapters(
    printed: Plan, log: Iterable[Moment], began: int, ended: int | None = None
) -> tuple[Chapter, ...]:
    """The marks of a recording; none where nothing was pressed in it.

    The first is at 0, whatever round was in work then. Where the file was folded since, a
    mark may be as much too early as one press took.

    Args:
        printed: the plan as the pattern has it.
        log: every line of the piece's file.
        began: when the recording began, in seconds since 1970.
        ended: when it ended; None: when nothing was pressed for an hour.
    """
    found = list(_joined(_marks(OwnPlan(printed), log, began, ended)))
    return tuple(found)


def lines(found: Iterable[Chapter]) -> Iterator[str]:
    """The marks as plain lines: "00:00 Rnd 1"; with the part where there are several."""
    marks = list(found)
    several = len({mark.part for mark in marks}) > 1
    for mark in marks:
        minutes, seconds = divmod(mark.at, 60)
        hours, minutes = divmod(minutes, 60)
        clock = f"{hours}:{minutes:02}:{seconds:02}" if hours else f"{minutes:02}:{seconds:02}"
        yield f"{clock} {mark.part}, {mark.round}" if several else f"{clock} {mark.round}"


def _marks(own: OwnPlan, log: Iterable[Moment], began: int, ended: int | None) -> Iterator[Chapter]:
    """A mark for each change of round within the recording."""
    history, last = History(), began
    here: Chapter | None = None
    for moment in log:
        when = moment.when
        if when >= began:
            if _is_over(moment, last, ended):
                return
            here = here or _mark(own, history.state, 0)
            yield here
            last = max(last, when)
        _replay(history, moment)
        if here is not None and when >= began:
            now = _mark(own, history.state, max(here.at, when - moment.took - began))
            here = now if now[1:] != here[1:] else here
            yield here


def _is_over(moment: Moment, last: int, ended: int | None) -> bool:
    if ended is not None:
        return moment.when > ended
    return moment.when - last > STOPPED


def _replay(history: History, moment: Moment) -> None:
    entry = moment.entry
    if isinstance(entry, Undo):
        history.undo(entry.presses)
    elif isinstance(entry, Redo):
        history.redo(entry.presses)
    elif not isinstance(entry, PutDown):
        history.add(entry)


def _mark(own: OwnPlan, state: State, at: int) -> Chapter:
    plan = own.at(state)
    spot = worksheet.here(plan, state)
    return Chapter(at, name(plan, spot), label(plan, spot))


def _joined(marks: Iterable[Chapter]) -> Iterator[Chapter]:
    """The marks without those that are the same, or over at once."""
    open_: Chapter | None = None
    for mark in marks:
        if open_ is None or mark.at - open_.at < BRIEF:
            open_ = mark if open_ is None else mark._replace(at=open_.at)
        elif mark[1:] != open_[1:]:
            yield open_
            open_ = mark
    if open_ is not None:
        yield open_
