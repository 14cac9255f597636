"""What a piece tells beside its pattern: when it was worked, counts, notes, lengths, yarn."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from fractions import Fraction
from itertools import pairwise

from tracker.measure.yarn import read_scale
from tracker.pattern.plan import Plan
from tracker.session import worksheet
from tracker.session.about import spoken_time
from tracker.session.ahead_words import about_grams
from tracker.session.naming import label, name
from tracker.session.state import RoundKey, Spot, State
from tracker.session.weighing import yarn_named, yarns
from tracker.writing.as_worked import versions
from tracker.writing.sheet import Items, Section


def record(plan: Plan, state: State, started: datetime, seconds: int) -> Section:
    """The section on how a piece was worked.

    Args:
        plan: the plan with the maker's own changes.
        state: the piece's.
        started: when it was begun.
        seconds: how long was worked on it; 0 if not known.
    """
    return Section("As worked", (Items(tuple(_items(plan, state, started, seconds))),))


def _items(plan: Plan, state: State, started: datetime, seconds: int) -> Iterator[str]:
    size = f"In the size {plan.size}, begun" if plan.size else "Begun"
    done = "finished" if worksheet.piece_done(plan, state) else "not finished"
    worked = f", {spoken_time(seconds)} of work so far" if seconds >= 60 else ""
    yield f"{size} on {started.day} {started:%B %Y}, {done}{worked}."
    yield from _yarn(plan, state)
    if any(one.renumbered for at in range(len(plan.parts)) for one in versions(plan, state, at)):
        yield (
            "Its rounds are numbered as they were worked; sentences of the making up name "
            "them by the numbers of the pattern."
        )
    yield from _counts(plan, state)
    yield from _notes(plan, state)


def _yarn(plan: Plan, state: State) -> Iterator[str]:
    """What each yarn became less by from one weighing to the next."""
    for letter in yarns(plan):
        left = [read_scale(one.left)[0] for one in state.weighed if one.yarn == letter]
        used = sum((a - b for a, b in pairwise(left) if a > b), Fraction(0))
        if used:
            named = yarn_named(plan, letter)
            yield f"Used of {named}: {about_grams(float(used))} between weighings."


def _counts(plan: Plan, state: State) -> Iterator[str]:
    """The counts that were not what the round should end on."""
    for key, counted in sorted(state.counts.items()):
        spot = _known(plan, state, Spot(*key))
        if spot is None:
            continue
        right = worksheet.round_at(plan, spot).ends_on
        if right is not None and counted != right:
            end = _named(plan, state, spot)
            yield f"Counted {counted} in place of {right} at the end of {end}."


def _notes(plan: Plan, state: State) -> Iterator[str]:
    for kept, lead in ((state.notes, "Noted"), (state.measured, "Measured")):
        for spot, words in sorted(kept.items()):
            if _known(plan, state, spot) is not None:
                made = worksheet.round_at(plan, spot).walk.made_before(spot.step)
                after = f", {made} made" if made else ""
                # The colon stands before the round, so that none is read back as one.
                yield f"{lead}: {words} ({_named(plan, state, spot)}{after})"


def _known(plan: Plan, state: State, spot: Spot) -> Spot | None:
    """The spot, if the piece as it is worked now has its round."""
    found = worksheet.settle(plan, state, spot)
    return spot if RoundKey(*found[:4]) == RoundKey(*spot[:4]) else None


def _named(plan: Plan, state: State, spot: Spot) -> str:
    """A round by the name it has in what is written."""
    found = versions(plan, state, spot.part)
    mine = next((one for one in found if spot.copy in one.copies), None)
    said = mine.labels.get((spot.round, spot.nth)) if mine else None
    return f"{name(plan, spot)}, {said or label(plan, spot)}"
