"""Going on after a wrong count: the next round worked so that it comes right.

The round keeps its own stitches and its own count; only, at a few places spread evenly, a
stitch of the round below is used twice, or two of them as one. Many makers fudge so:
http://www.crochetgeek.com/2009/06/counting-stitches-for-accurate-stitch.html (comments).
"""

from __future__ import annotations

from tracker.fabric.steps import Kind
from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session import worksheet

if TYPE_CHECKING:
    from tracker.fabric.steps import Walk
    from tracker.pattern.plan import Plan
    from tracker.session.state import Spot, State

TWICE = "in the same st once more"
AS_ONE = "over the next 2 sts as one"

ROOM = 3
"""Plain stitches there must be for each place, or the fabric would pucker. Our own choice."""


class Miscount(NamedTuple):
    """The start of a round, what was counted at its end, and what it must be."""

    start: Spot
    counted: int
    should: int


def miscount(plan: Plan, state: State) -> Miscount | None:
    """The wrong count of the round just worked; None where it is right or not counted."""
    return _miscount(plan, state, just_worked(plan, state))


def late_miscount(plan: Plan, state: State) -> Miscount | None:
    """The wrong count of the round below the one in work; None where it is being put right."""
    spot = worksheet.here(plan, state)
    if off_below(plan, state, spot):
        return None
    return _miscount(plan, state, worksheet.earlier_round(plan, state, spot))


def _miscount(plan: Plan, state: State, start: Spot | None) -> Miscount | None:
    if start is None:
        return None
    counted, should = state.counts.get(start.key), worksheet.round_at(plan, start).ends_on
    if counted is None or should is None or counted == should:
        return None
    return Miscount(start, counted, should)


def just_worked(plan: Plan, state: State) -> Spot | None:
    """The start of the round at whose end the maker stands, or of the one before."""
    spot = worksheet.here(plan, state)
    if worksheet.at_end(plan, spot):
        return worksheet.start_of(spot)
    return worksheet.earlier_round(plan, state, spot) if spot.step == spot.loop == 0 else None


def off_below(plan: Plan, state: State, spot: Spot) -> int:
    """By how much the count below is off where this round is to put it right; else 0.

    A round below that was ripped back and counted anew needs no putting right.
    """
    off = state.spread.get(spot.key, 0)
    below = worksheet.earlier_round(plan, state, spot) if off else None
    if below is None:
        return 0
    should = worksheet.round_at(plan, below).ends_on
    counted = state.counts.get(below.key)
    still = counted is not None and should is not None and counted - should == off
    return off if still else 0


def places(walk: Walk, off: int) -> tuple[int, ...]:
    """The steps at which a round below that is ``off`` (-2: two too few) is put right.

    Spread evenly over the plain stitches; empty where there are too few of those.
    """
    plain = [
        index
        for at, run in enumerate(walk.runs)
        if run.kind is Kind.STITCH and run.per_place == run.takes == run.makes == 1
        for index in range(walk.run_start(at), walk.run_start(at + 1))
    ]
    many = abs(off)
    if not many or len(plain) < many * ROOM:
        return ()
    return tuple(plain[(2 * n + 1) * len(plain) // (2 * many)] for n in range(many))


def words(walk: Walk, off: int) -> str:
    """What is done at those places, in one sentence; "" where there are none."""
    steps = places(walk, off)
    if not steps:
        return ""
    numbers = [str(walk.made_before(step) + 1) for step in steps]
    which = " and ".join(word for word in (", ".join(numbers[:-1]), numbers[-1]) if word)
    stitch = "stitch" if len(steps) == 1 else "stitches"
    where = "into the same st as the one before" if off < 0 else "over 2 sts of the round below"
    return f"work {stitch} {which} {where}, all else as written"


def where(walk: Walk, off: int, step: int) -> str:
    """Where a step goes that puts the count right; "" for every other step."""
    if step not in places(walk, off):
        return ""
    return TWICE if off < 0 else AS_ONE
