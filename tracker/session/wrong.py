"""A count that is not what it should be: what can be done about it from here."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.pattern.model import Worked
from tracker.session import mending, worksheet
from tracker.session.events import Event
from tracker.session.naming import label, name
from tracker.session.presses import Press
from tracker.session.right import right_repeat
from tracker.session.state import Spot, State
from tracker.session.suspects import Suspect, suspects

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan


class Wrong(NamedTuple):
    """A wrong count of the round just worked, or of the one below the round in work.

    Attributes:
        start: the start of that round.
        label: the round as the maker says it.
        counted, should: what was counted, and what it must be.
        suspects: what may have happened, the likeliest first.
        repeat: what a right repeat looks like on the work; "" where the round has none.
        following: the start of the round after it, None after the part's last.
        right: how the following round comes right in spite of it, shown before it is
            accepted; "" where it cannot, or is already in work.
    """

    start: Spot
    label: str
    counted: int
    should: int
    suspects: tuple[Suspect, ...]
    repeat: str
    following: Spot | None
    right: str

    @property
    def words(self) -> str:
        """Such as "46 in Rnd 7, not 48: 2 too few"."""
        off = self.counted - self.should
        much = f"{abs(off)} too {'many' if off > 0 else 'few'}"
        return f"{self.counted} in {self.label}, not {self.should}: {much}"


def wrong(plan: Plan, state: State) -> Wrong | None:
    """The wrong count of the round just worked, or of the one below the round in work.

    None where it is right, not counted, or being put right.
    """
    at_once = mending.miscount(plan, state)
    found = at_once or mending.late_miscount(plan, state)
    if found is None:
        return None
    start, counted, should = found
    planned = worksheet.round_at(plan, start)
    rows = worksheet.part_at(plan, start).part.worked is Worked.ROWS
    following = worksheet.following_round(plan, state, start)
    return Wrong(
        start=start,
        label=label(plan, start),
        counted=counted,
        should=should,
        suspects=suspects(planned.walk, counted, should, rows=rows),
        repeat=right_repeat(planned.walk),
        following=following,
        right=_right(plan, following, counted - should) if at_once else "",
    )


def _right(plan: Plan, following: Spot | None, off: int) -> str:
    if following is None:
        return ""
    said = mending.words(worksheet.round_at(plan, following).walk, off)
    return said and f"{label(plan, following)}: {said}"


def back_to(plan: Plan, state: State, step: int) -> Press:
    """Back to a step of the round whose count is wrong: what was made after it is undone."""
    found = wrong(plan, state)
    if found is None:
        return Press(None, "no count is wrong")
    return Press(Event(spot=found.start._replace(step=step)), f"ripped back into {found.label}")


def rip_back(plan: Plan, state: State, rounds: int) -> Press:
    """To the start of the round so many rounds back; the one just worked counts as the first."""
    spot = mending.just_worked(plan, state) or worksheet.start_of(worksheet.here(plan, state))
    for _ in range(rounds - 1):
        earlier = worksheet.earlier_round(plan, state, spot)
        if earlier is None:
            return Press(None, f"{name(plan, spot)} has not so many rounds")
        spot = earlier
    if rounds < 1:
        return Press(None, "nothing ripped back")
    many = "1 round" if rounds == 1 else f"{rounds} rounds"
    return Press(Event(spot=spot), f"ripped back {many}, to the start of {label(plan, spot)}")


def come_right(plan: Plan, state: State) -> Press:
    """Go on, the next round worked so that it comes right."""
    found = wrong(plan, state)
    if found is None or not found.right or found.following is None:
        return Press(None, "the next round cannot put that right")
    spread = (found.following.key, found.counted - found.should)
    return Press(Event(spot=found.following, spread=spread), f"on; {found.right}")
