"""Presses that lead elsewhere: to a round, a stitch, a part, one of a choice, the mark.

Pure functions, as in `presses`.
"""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING
from tracker.session import worksheet
from tracker.session.events import Event
from tracker.session.naming import label, name, spot_words
from tracker.session.presses import Press, arrive

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import State


def next_round(plan: Plan, state: State) -> Press:
    """To the start of the next round."""
    spot = worksheet.here(plan, state)
    to = worksheet.following_round(plan, state, spot)
    if to is None:
        return Press(None, f"this is the last round of {name(plan, spot)}")
    return Press(Event(spot=to), f"to the start of {label(plan, to)}")


def previous_round(plan: Plan, state: State) -> Press:
    """To the start of this round, or of the one before when already there."""
    spot = worksheet.here(plan, state)
    start = worksheet.start_of(spot)
    to = start if start != spot else worksheet.earlier_round(plan, state, spot)
    if to is None:
        return Press(None, f"this is the very first step of {name(plan, spot)}")
    return Press(Event(spot=to), f"to the start of {label(plan, to)}")


def go_to_round(plan: Plan, state: State, number: int) -> Press:
    """To the start of round ``number`` (from 1)."""
    spot = worksheet.here(plan, state)
    to = worksheet.called_round(plan, spot, number)
    to = to or worksheet.numbered_round(plan, state, spot.of, number - 1)
    if to is None:
        rounds = worksheet.rounds_in(plan, state, *spot.of)
        return Press(None, f"there is no round {number}: {name(plan, spot)} has {rounds}")
    return Press(Event(spot=to), f"to the start of {label(plan, to)}")


def go_to_stitch(plan: Plan, state: State, made: int) -> Press:
    """To where ``made`` stitches of this round are made."""
    spot = worksheet.here(plan, state)
    walk = worksheet.round_at(plan, spot).walk
    if not 0 <= made <= walk.makes:
        return Press(None, f"there is no stitch {made}: this round makes {walk.makes}")
    to = spot._replace(step=worksheet.step_with(walk, made), loop=0)
    return arrive(plan, state, to, f"to {made} stitches made")


def go_to_part(plan: Plan, state: State, part: int, copy: int) -> Press:
    """To where that part and copy was left. Going to a part set aside chooses it."""
    if not (0 <= part < len(plan.parts) and 0 <= copy < plan.parts[part].part.make):
        return Press(None, "there is no such part")
    to = worksheet.settle(plan, state, state.left_at(part, copy))
    aside = not worksheet.chosen_parts(plan, state)[part]
    if to == state.spot and not aside:
        return Press(None, f"this is {name(plan, to)}")
    return Press(Event(spot=to, choose=part if aside else None), f"to {name(plan, to)}")


def choose(plan: Plan, state: State, part: int) -> Press:
    """Choose a part among its alternatives; the maker moves to it from one of the others."""
    group = plan.parts[part].part.choose if 0 <= part < len(plan.parts) else ""
    if not group:
        return Press(None, "this part is not one of a choice")
    if worksheet.chosen_parts(plan, state)[part]:
        return Press(None, f"{plan.parts[part].name} is chosen already")
    spot = worksheet.here(plan, state)
    moves = worksheet.part_at(plan, spot).part.choose == group
    to = worksheet.settle(plan, state, state.left_at(part, 0)) if moves else None
    return Press(Event(spot=to, choose=part), f"{plan.parts[part].name} chosen")


def mark(plan: Plan, state: State) -> Press:
    """Mark this place."""
    spot = worksheet.here(plan, state)
    if spot == state.mark:
        return Press(None, "this place is marked already")
    return Press(Event(mark=spot), f"marked: {spot_words(plan, state, spot)}")


def return_to_mark(plan: Plan, state: State) -> Press:
    """Go to the marked place."""
    if state.mark is None:
        return Press(None, "no place is marked")
    to = worksheet.settle(plan, state, state.mark)
    if to == state.spot:
        return Press(None, "this is the marked place")
    return Press(Event(spot=to), f"to the mark: {spot_words(plan, state, to)}")
