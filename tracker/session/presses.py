"""What each press does: the event it makes, and the words that tell the maker of it.

Pure functions; a press that cannot apply makes no event and says why.
"""

from __future__ import annotations

from tracker.fabric.steps import Kind
from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session import worksheet
from tracker.session.events import Event
from tracker.session.lookup import loops_of
from tracker.session.naming import label, name
from tracker.session.place import Asking, Pace
from tracker.session.state import RoundKey, Spot, State

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

MOST_COUNTED = 1_000_000
"""A count above this is a slip of the fingers."""

NOT_COUNTED = "a count is entered at a round's end"


class Press(NamedTuple):
    """What a press comes to: an event (None: nothing changes) and a few words."""

    event: Event | None
    words: str


def next_press(plan: Plan, state: State) -> Press:
    """One press on, by the pace; at a round's end it confirms and goes on."""
    spot = worksheet.here(plan, state)
    if worksheet.at_end(plan, spot):
        return _on_from_end(plan, state, spot)
    walk = worksheet.round_at(plan, spot).walk
    if state.pace is Pace.ROUND:
        return arrive(plan, state, worksheet.end_of(plan, spot), "to the round's end")
    if state.pace is Pace.REPEAT:
        bounds = worksheet.unit(walk, spot.step)
        inside = walk[spot.step].repeats
        words = "next repeat" if inside else "on to the next repeat"
        return arrive(plan, state, spot._replace(step=bounds[1], loop=0), words)
    return _one_on(plan, state, spot)


def _one_on(plan: Plan, state: State, spot: Spot) -> Press:
    run = worksheet.round_at(plan, spot).walk[spot.step].run
    if state.loops_shown and spot.loop + 1 < len(loops_of(plan, run)):
        return Press(Event(spot=spot._replace(loop=spot.loop + 1)), "next loop")
    words = "next stitch" if run.kind is Kind.STITCH else f"{run.text}: done"
    return arrive(plan, state, spot._replace(step=spot.step + 1, loop=0), words)


def arrive(plan: Plan, state: State, spot: Spot, words: str) -> Press:
    """Come to a spot. At a round's end where nothing is asked, go straight on."""
    if not worksheet.at_end(plan, spot) or worksheet.stops(plan, state, spot):
        return Press(Event(spot=spot), words)
    following = worksheet.following_round(plan, state, spot)
    if following is None:
        return Press(Event(spot=spot, finished=True), f"{words}; {name(plan, spot)} done")
    return Press(Event(spot=following), f"{words}; on to {label(plan, following)}")


def _on_from_end(plan: Plan, state: State, spot: Spot) -> Press:
    if spot.of in state.finished:
        return _next_part(plan, state)
    count = _confirmed(plan, state, spot)
    if worksheet.round_at(plan, spot).until:
        return _one_more(state, spot, count)
    return _leave(plan, state, spot, count)


def _confirmed(plan: Plan, state: State, spot: Spot) -> tuple[RoundKey, int] | None:
    """The count that a press confirms: what the round must end on, if it is asked."""
    ends_on = worksheet.round_at(plan, spot).ends_on
    if ends_on is None or not worksheet.asking(plan, state):
        return None
    return spot.key, ends_on


def _one_more(state: State, spot: Spot, count: tuple[RoundKey, int] | None) -> Press:
    to = Spot(spot.part, spot.copy, spot.round, spot.nth + 1)
    line = (spot.part, spot.copy, spot.round)
    again = (line, to.nth) if to.nth >= state.times(*line) else None
    return Press(Event(spot=to, tally=count, again=again), "one more round")


def _leave(plan: Plan, state: State, spot: Spot, count: tuple[RoundKey, int] | None) -> Press:
    """From a round's end to the next round, or to the part's end."""
    said = f"{count[1]} counted; " if count else ""
    following = worksheet.following_round(plan, state, spot)
    if following is None:
        return Press(Event(finished=True, tally=count), f"{said}{name(plan, spot)} done")
    return Press(Event(spot=following, tally=count), f"{said}on to {label(plan, following)}")


def _next_part(plan: Plan, state: State) -> Press:
    undone = worksheet.next_undone(plan, state)
    if undone is None:
        return Press(None, "the piece is done")
    to = worksheet.settle(plan, state, state.left_at(*undone))
    return Press(Event(spot=to), f"on to {name(plan, to)}")


def back_press(plan: Plan, state: State) -> Press:
    """One press back, by the pace."""
    spot = worksheet.here(plan, state)
    if spot.step == 0 and spot.loop == 0:
        return _back_over(plan, state, spot)
    return Press(Event(spot=_one_back(plan, state, spot)), _back_words(state.pace))


def _back_over(plan: Plan, state: State, spot: Spot) -> Press:
    """From a round's start: to the end of the round before, or by one unit into it."""
    earlier = worksheet.earlier_round(plan, state, spot)
    if earlier is None:
        return Press(None, f"this is the very first step of {name(plan, spot)}")
    end = worksheet.end_of(plan, earlier)
    to = end if worksheet.stops(plan, state, end) else _one_back(plan, state, end)
    return Press(Event(spot=to), f"back to {label(plan, to)}")


def _one_back(plan: Plan, state: State, spot: Spot) -> Spot:
    """To the start of the unit the spot is inside of, or of the one before."""
    if state.pace is Pace.ROUND:
        return worksheet.start_of(spot)
    if state.pace is Pace.REPEAT:
        inside = spot.step if spot.loop else spot.step - 1
        walk = worksheet.round_at(plan, spot).walk
        return spot._replace(step=worksheet.unit(walk, inside)[0], loop=0)
    if spot.loop:
        return spot._replace(loop=spot.loop - 1 if state.loops_shown else 0)
    return spot._replace(step=spot.step - 1, loop=_last_loop(plan, state, spot))


def _last_loop(plan: Plan, state: State, spot: Spot) -> int:
    """The loops done of the step before, when all but its last are."""
    if not state.loops_shown:
        return 0
    run = worksheet.round_at(plan, spot).walk[spot.step - 1].run
    return max(0, len(loops_of(plan, run)) - 1)


def _back_words(pace: Pace) -> str:
    return {
        Pace.STITCH: "back one",
        Pace.REPEAT: "back by a repeat",
        Pace.ROUND: "back to the start of the round",
    }[pace]


def set_pace(state: State, pace: Pace) -> Press:
    """Set the pace."""
    return Press(Event(pace=pace) if pace is not state.pace else None, f"by {pace.value}")


def set_asking(state: State, asking: Asking) -> Press:
    """After which rounds the count is asked for."""
    words = f"count asked: {asking.value}"
    return Press(Event(asking=asking) if asking is not state.asking else None, words)


def show_loops(state: State, *, shown: bool) -> Press:
    """Whether special stitches go loop by loop."""
    words = "loop by loop" if shown else "stitch by stitch"
    return Press(Event(loops_shown=shown) if shown is not state.loops_shown else None, words)


def may_count(plan: Plan, state: State) -> bool:
    """Whether a round was just worked whose count can be entered."""
    spot = worksheet.here(plan, state)
    if worksheet.at_end(plan, spot):
        return True
    at_start = spot.step == spot.loop == 0
    return at_start and worksheet.earlier_round(plan, state, spot) is not None


def enter_count(plan: Plan, state: State, count: int) -> Press:
    """Keep the maker's count with the finished round, and go on.

    At the very start of a round it is the count of the round before. A round of open
    length keeps the maker at its end, since its length is still to be judged.
    """
    spot = worksheet.here(plan, state)
    if not 0 <= count <= MOST_COUNTED:
        return Press(None, f"a count lies between 0 and {MOST_COUNTED}")
    if worksheet.at_end(plan, spot):
        return _entered_at_end(plan, state, spot, count)
    earlier = worksheet.earlier_round(plan, state, spot)
    if earlier is None or not may_count(plan, state):
        return Press(None, NOT_COUNTED)
    words = f"{count} counted in {label(plan, earlier)}"
    return Press(Event(spot=spot, tally=(earlier.key, count)), words)


def _entered_at_end(plan: Plan, state: State, spot: Spot, count: int) -> Press:
    kept = (spot.key, count)
    if worksheet.round_at(plan, spot).until or spot.of in state.finished:
        return Press(Event(tally=kept), f"{count} counted")
    return _leave(plan, state, spot, kept)


def length_reached(plan: Plan, state: State) -> Press:
    """A round of open length is long enough: go on with what follows.

    Said at the very start of one more such round, it means the round before was the last.
    """
    spot = worksheet.here(plan, state)
    if not worksheet.round_at(plan, spot).until:
        return Press(None, "this round has no open length")
    count = _confirmed(plan, state, spot)
    last = spot
    if not worksheet.at_end(plan, spot):
        if spot.nth == 0 or spot.step or spot.loop:
            return Press(None, "the length is judged at a round's end")
        last = worksheet.end_of(plan, spot._replace(nth=spot.nth - 1))
    return _length_done(plan, state, last, count)


def _length_done(plan: Plan, state: State, last: Spot, count: tuple[RoundKey, int] | None) -> Press:
    line = (last.part, last.copy, last.round)
    again = (line, last.nth) if last.nth + 1 != state.times(*line) else None
    following = worksheet.following_line(plan, last)
    if following is not None:
        event = Event(spot=following, tally=count, again=again)
        return Press(event, f"length reached; on to {label(plan, following)}")
    moved = None if last == state.spot else last
    event = Event(spot=moved, finished=True, tally=count, again=again)
    return Press(event, f"length reached; {name(plan, last)} done")
