"""Notes at any place; and what the first copy tells while the second is worked."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING
from tracker.session import mending, worksheet
from tracker.session.events import Event
from tracker.session.presses import Press
from tracker.session.state import Spot, State
from tracker.session.typed import kept

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tracker.pattern.plan import Plan

LONGEST = 200
"""Characters of a note."""


def note(plan: Plan, state: State, words: str) -> Press:
    """Keep a note with this place. No words: the note that was here is dropped."""
    spot = worksheet.here(plan, state)
    words = kept(words, LONGEST)
    if words == state.notes.get(spot, ""):
        return Press(None, "the note stays as it is" if words else "no note")
    return Press(Event(note=(spot, words)), f"noted: {words}" if words else "note dropped")


def memo(plan: Plan, state: State) -> str:
    """What is kept with the round stood in: its notes, and for a further copy the first's."""
    spot = worksheet.here(plan, state)
    said = list(_notes(plan, state, spot))
    if spot.copy:
        said += [f"copy 1: {words}" for words in _first(plan, state, spot)]
    return "; ".join(said)


def _notes(plan: Plan, state: State, spot: Spot) -> Iterator[str]:
    """The notes of a round, each with its stitch; those of the very place first."""
    here = [(at, words) for at, words in state.notes.items() if at.key == spot.key]
    walk = worksheet.round_at(plan, spot).walk
    for at, words in sorted(here, key=lambda pair: (pair[0].step != spot.step, pair[0])):
        where = "" if at.step == spot.step else f" after stitch {walk.made_before(at.step)}"
        yield f"note{where}: {words}"


def _first(plan: Plan, state: State, here: Spot) -> Iterator[str]:
    """What was different in the first copy's round: its notes, count and changes."""
    words = worksheet.round_at(plan, here).text
    spot = here._replace(copy=0)
    if not worksheet.is_worked(plan, spot):
        yield "this round was left out"
        return
    planned = worksheet.round_at(plan, spot)
    if planned.text != words:
        yield f"worked so: {planned.text}"
    times = state.times(spot.part, 0, spot.round)
    yield from _notes(plan, state, spot)
    if planned.until and (spot.part, 0, spot.round) in state.again:
        yield f"worked {times} times"
    counted = state.counts.get(spot.key)
    if counted is not None and counted != planned.ends_on:
        yield f"{counted} counted"
    off = mending.off_below(plan, state, spot)
    if off:
        yield mending.words(planned.walk, off)
