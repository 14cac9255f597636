"""Where one can stand in a piece: its rounds, parts and copies, as worked so far.

Pure functions over the plan (the pattern in one size) and the state. A spot from a file
may lie outside the pattern; `settle` brings it in, and everything here starts from that.
"""

from __future__ import annotations

from collections.abc import Iterator

from tracker.fabric.verdicts import Verdict
from tracker.lean import TYPE_CHECKING
from tracker.session.place import Asking, Place
from tracker.session.state import Copy, Spot, State

if TYPE_CHECKING:
    from tracker.fabric.steps import Walk
    from tracker.pattern.plan import Plan, PlannedPart, PlannedRound


def settle(plan: Plan, state: State, spot: Spot) -> Spot:
    """The spot itself, or the nearest one that this pattern has."""
    part = min(spot.part, len(plan.parts) - 1)
    copy = min(spot.copy, plan.parts[part].part.make - 1)
    planned = plan.parts[part].of(copy)
    at = planned.place(spot.round)
    line = planned.number(min(at, len(planned.rounds) - 1))
    if line != spot.round and planned.numbers:
        return _beside(planned, Spot(part, copy, line), at)
    nth = min(spot.nth, state.times(part, copy, line) - 1)
    walk = planned.rounds[at].walk
    step = min(spot.step, len(walk))
    if (part, copy, line, nth, step) != spot[:5]:
        return Spot(part, copy, line, nth, step)
    return spot


def _beside(planned: PlannedPart, start: Spot, at: int) -> Spot:
    """Where one stands whose round was left out: before the next, or behind the last."""
    if at < len(planned.rounds):
        return start
    return start._replace(step=len(planned.rounds[-1].walk))


def here(plan: Plan, state: State) -> Spot:
    """Where the maker stands."""
    return settle(plan, state, state.spot)


def part_at(plan: Plan, spot: Spot) -> PlannedPart:
    """The part a spot lies in."""
    return plan.parts[spot.part].of(spot.copy)


def round_at(plan: Plan, spot: Spot) -> PlannedRound:
    """The round a spot lies in."""
    part = part_at(plan, spot)
    return part.rounds[part.place(spot.round)]


def is_worked(plan: Plan, spot: Spot) -> bool:
    """Whether its part and copy has its round, and it is not left out."""
    part = part_at(plan, spot)
    return part.number(min(part.place(spot.round), len(part.rounds) - 1)) == spot.round


def at_end(plan: Plan, spot: Spot) -> bool:
    """Whether all steps of its round are done."""
    return spot.step >= len(round_at(plan, spot).walk)


def end_of(plan: Plan, spot: Spot) -> Spot:
    """The end of its round."""
    return spot._replace(step=len(round_at(plan, spot).walk), loop=0)


def start_of(spot: Spot) -> Spot:
    """The start of its round."""
    return spot._replace(step=0, loop=0)


def counts_asked(plan: Plan, state: State, spot: Spot) -> bool:
    """Whether the maker wants the count of this round asked for.

    Never for making up, nor for a round that makes no stitch (one that only fastens off).
    """
    planned = round_at(plan, spot)
    counted = planned.walk.makes > 0 or (planned.verdict is Verdict.UNREAD and planned.ends_on)
    if part_at(plan, spot).making_up or not counted:
        return False
    if state.asking is Asking.INCREASES:
        return planned.increase
    return state.asking is Asking.EVERY


def stops(plan: Plan, state: State, spot: Spot) -> bool:
    """Whether the maker stands still at the end of this round."""
    return bool(round_at(plan, spot).until) or counts_asked(plan, state, spot)


def asking(plan: Plan, state: State) -> bool:
    """Whether the count of the round just finished is asked for now."""
    spot = here(plan, state)
    settled = state.counted or spot.of in state.finished
    return at_end(plan, spot) and not settled and counts_asked(plan, state, spot)


def rounds_in(plan: Plan, state: State, part: int, copy: int) -> int:
    """How many rounds the part has, with those added by open lengths."""
    planned = plan.parts[part].of(copy)
    return len(planned.rounds) + sum(extra for _, extra in _extras(planned, state, (part, copy)))


def _extras(planned: PlannedPart, state: State, of: Copy) -> list[tuple[int, int]]:
    """Rounds added by open lengths: where in the part, from 0, and how many; in order."""
    gone = dict(planned.gone)
    return sorted(
        (planned.place(line), extra)
        for (part, copy, line), extra in state.again.items()
        if (part, copy) == of and line not in gone
    )


def place(plan: Plan, state: State, spot: Spot) -> Place:
    """The spot as a `Place`: its round counts every round that was worked."""
    planned = part_at(plan, spot)
    at = planned.place(spot.round)
    extra = sum(more for where, more in _extras(planned, state, spot.of) if where < at)
    return Place(spot.part, spot.copy, at + extra + spot.nth, spot.step)


def following_round(plan: Plan, state: State, spot: Spot) -> Spot | None:
    """The start of the round after this one; None after the part's last."""
    if spot.nth + 1 < state.times(*spot[:3]):
        return Spot(spot.part, spot.copy, spot.round, spot.nth + 1)
    return following_line(plan, spot)


def following_line(plan: Plan, spot: Spot) -> Spot | None:
    """The start of the part's next round, past all of an open length; None at the last."""
    part = part_at(plan, spot)
    at = part.place(spot.round) + 1
    return Spot(spot.part, spot.copy, part.number(at)) if at < len(part.rounds) else None


def earlier_round(plan: Plan, state: State, spot: Spot) -> Spot | None:
    """The start of the round before this one; None before the part's first."""
    if spot.nth > 0:
        return Spot(spot.part, spot.copy, spot.round, spot.nth - 1)
    part = part_at(plan, spot)
    at = part.place(spot.round)
    if at == 0:
        return None
    line = part.number(at - 1)
    return Spot(spot.part, spot.copy, line, state.times(spot.part, spot.copy, line) - 1)


def numbered_round(plan: Plan, state: State, of: Copy, number: int) -> Spot | None:
    """The start of round ``number`` (from 0, as in `Place`); None where there is none."""
    if not 0 <= number < rounds_in(plan, state, *of):
        return None
    planned = plan.parts[of[0]].of(of[1])
    before = 0
    for at, extra in _extras(planned, state, of):
        if at + before >= number:
            break
        if at + before + extra >= number:
            return Spot(*of, planned.number(at), number - at - before)
        before += extra
    return Spot(*of, planned.number(number - before))


def called_round(plan: Plan, spot: Spot, number: int) -> Spot | None:
    """The start of the round that the pattern calls so, where the maker added or left out some.

    None where all rounds are as printed: then the round's number is its place.
    """
    part = part_at(plan, spot)
    for at, planned in enumerate(part.rounds if part.numbers else ()):
        if planned.label.endswith(f" {number}"):
            return Spot(spot.part, spot.copy, part.number(at))
    return None


def unit(walk: Walk, index: int) -> tuple[int, int]:
    """First step and one past the last of what one press by repeat counts.

    The pass of the outermost repeat round step ``index``, or the steps outside any repeat
    up to the next one.
    """
    bounds = walk.pass_bounds(index)
    if bounds is not None:
        return bounds
    low = high = walk.run_of(index)
    while low > 0 and walk.runs[low - 1].inside < 0:
        low -= 1
    while high + 1 < len(walk.runs) and walk.runs[high + 1].inside < 0:
        high += 1
    return walk.run_start(low), walk.run_start(high + 1)


def step_with(walk: Walk, made: int) -> int:
    """The first step before which ``made`` stitches (or more) are made."""
    low, high = 0, len(walk)
    while low < high:
        middle = (low + high) // 2
        if walk.made_before(middle) < made:
            low = middle + 1
        else:
            high = middle
    return low


def chosen_parts(plan: Plan, state: State) -> tuple[bool, ...]:
    """For each part whether it is to be worked: of alternatives only one is.

    It is the one chosen last, or the first of them if none was chosen.
    """
    picks: dict[str, int] = {}
    for index, planned in enumerate(plan.parts):
        picks.setdefault(planned.part.choose, index)
    for index in state.chosen:
        if index < len(plan.parts):
            picks[plan.parts[index].part.choose] = index
    return tuple(
        not planned.part.choose or picks[planned.part.choose] == index
        for index, planned in enumerate(plan.parts)
    )


def needed(plan: Plan, state: State) -> Iterator[Copy]:
    """Every part and copy that must be worked for the piece to be done, in order."""
    for index, chosen in enumerate(chosen_parts(plan, state)):
        if chosen:
            for copy in range(plan.parts[index].part.make):
                yield index, copy


def next_undone(plan: Plan, state: State) -> Copy | None:
    """The part and copy to go on with after this one: the next undone, then earlier ones."""
    of = here(plan, state).of
    undone = [copy for copy in needed(plan, state) if copy not in state.finished and copy != of]
    later = [copy for copy in undone if copy > of]
    return next(iter(later or undone), None)


def piece_done(plan: Plan, state: State) -> bool:
    """Whether all that must be worked is."""
    return all(copy in state.finished for copy in needed(plan, state))
