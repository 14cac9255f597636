"""The events that change the state of a piece, and what comes of each.

An event says what is so after it (where the maker stands, what was counted), never how it
came about: so the fold needs no pattern, and a pattern that is read differently one day
cannot move a place kept today.
"""

from __future__ import annotations

from collections.abc import Mapping

from tracker.lean import NamedTuple
from tracker.pattern.changes import Change
from tracker.session.place import Asking, Pace
from tracker.session.state import Copy, RoundKey, Spot, State, Weighed


class Changing(NamedTuple):
    """A round worked otherwise, in a part and copy and in the copies after it.

    ``spared``: copies after it that have got past the round already, and stay as they are.
    """

    part: int
    copy: int
    change: Change
    spared: tuple[int, ...] = ()


class Event(NamedTuple):
    """One change. What is None (or False) stays as it was.

    Attributes:
        spot: where the maker stands now.
        finished: the part and copy stood in is done.
        tally: a round and what the maker counted in it.
        again: (part, copy, round) of open length and how often it was worked beyond the
            first time.
        mark: the place marked.
        choose: a part chosen among its alternatives.
        pace, asking, loops_shown: the maker's choices.
        worked: seconds that the piece was worked on until now. No press of the maker: it
            stands alone, changes no state, and is not taken back.
        spread: a round that is to come right, and by how many the one below is off.
        note: a place and the words kept with it; "" drops them.
        measured: a place and how long the piece was there; "" drops it.
        weighed: a yarn's letter and what is left of it.
        changing: a round that is worked otherwise, added or left out from now on.
    """

    spot: Spot | None = None
    finished: bool = False
    tally: tuple[RoundKey, int] | None = None
    again: tuple[tuple[int, int, int], int] | None = None
    mark: Spot | None = None
    choose: int | None = None
    pace: Pace | None = None
    asking: Asking | None = None
    loops_shown: bool | None = None
    worked: int | None = None
    spread: tuple[RoundKey, int] | None = None
    note: tuple[Spot, str] | None = None
    measured: tuple[Spot, str] | None = None
    weighed: tuple[str, str] | None = None
    changing: Changing | None = None

    @property
    def only_moves(self) -> bool:
        """Whether nothing changes but the spot, with perhaps a count, or one more round."""
        if self.spot is None or self.again not in (None, (self.spot[:3], self.spot.nth)):
            return False
        return self == Event(spot=self.spot, tally=self.tally, again=self.again)


def apply(state: State, event: Event) -> State:
    """The state after ``event``."""
    if event.worked is not None:
        return state
    spot, left, finished = _moved(state, event.spot)
    if event.finished:
        finished = finished | {spot.of}
    return State(
        spot=spot,
        left=left,
        finished=finished,
        counted=event.tally is not None if event.spot is None else False,
        pace=event.pace or state.pace,
        asking=event.asking or state.asking,
        loops_shown=state.loops_shown if event.loops_shown is None else event.loops_shown,
        mark=event.mark or state.mark,
        chosen=_chosen(state.chosen, event.choose),
        counts=state.counts.put(*event.tally) if event.tally else state.counts,
        again=_again(state.again, event.again),
        spread={**state.spread, event.spread[0]: event.spread[1]} if event.spread else state.spread,
        notes=_noted(state.notes, event.note),
        measured=_noted(state.measured, event.measured),
        weighed=_weighed(state, event.weighed),
        changes=_changed(state, event.changing),
    )


def _weighed(state: State, event: tuple[str, str] | None) -> tuple[Weighed, ...]:
    if event is None:
        return state.weighed
    return (*state.weighed, Weighed(*event, state.spot, state.progress))


def _changed(state: State, changing: Changing | None) -> Mapping[Copy, tuple[Change, ...]]:
    if changing is None:
        return state.changes
    part, copy, change, spared = changing
    kept = {(part, later): state.version(part, later) for later in spared}
    own = (*state.version(part, copy), change)
    return {**state.changes, **kept, (part, copy): own}


def _noted(notes: Mapping[Spot, str], note: tuple[Spot, str] | None) -> Mapping[Spot, str]:
    """What is kept with places, with one more, or one dropped."""
    if note is None:
        return notes
    rest = {spot: words for spot, words in notes.items() if spot != note[0]}
    return {**rest, note[0]: note[1]} if note[1] else rest


def _moved(state: State, to: Spot | None) -> tuple[Spot, Mapping[Copy, Spot], frozenset[Copy]]:
    """Spot, left and finished after a move. A move inside a finished part takes it up again."""
    if to is None:
        return state.spot, state.left, state.finished
    if to.of == state.spot.of:
        done = state.finished - {to.of} if to.of in state.finished else state.finished
        return to, state.left, done
    left = {**state.left, state.spot.of: state.spot}
    was = left.pop(to.of, None)
    kept = was == to or to.of not in state.finished
    return to, left, state.finished if kept else state.finished - {to.of}


def _chosen(chosen: tuple[int, ...], part: int | None) -> tuple[int, ...]:
    if part is None:
        return chosen
    return (*(other for other in chosen if other != part), part)


def _again(
    again: Mapping[tuple[int, int, int], int],
    change: tuple[tuple[int, int, int], int] | None,
) -> Mapping[tuple[int, int, int], int]:
    if change is None:
        return again
    rest = {key: times for key, times in again.items() if key != change[0]}
    return {**rest, change[0]: change[1]} if change[1] else rest
