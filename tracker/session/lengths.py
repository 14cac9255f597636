"""Measures of the piece, and how many rounds are left to the length that ends an open round."""

from __future__ import annotations

from fractions import Fraction

from tracker.lean import TYPE_CHECKING
from tracker.measure.length import Left, Measured, Since, Target, rounds_left, target_in
from tracker.measure.units import Amount, read_length, read_number
from tracker.notation.problems import visible
from tracker.pattern.ruler import Ruler, ruler_of
from tracker.session import worksheet
from tracker.session.events import Event
from tracker.session.naming import label
from tracker.session.presses import Press
from tracker.session.state import Spot, State

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

LONGEST = 24
"""Characters of a measure."""


def measure(plan: Plan, state: State, words: str) -> Press:
    """Keep how long the piece measures here. No words: the measure that was here is dropped."""
    spot = worksheet.here(plan, state)
    if worksheet.part_at(plan, spot).making_up:
        return Press(None, "there is nothing to measure in the making up")
    kept = ""
    if words.strip():
        try:
            kept = str(_length(plan, spot, words))
        except ValueError as error:
            return Press(None, visible(str(error)))
    if kept == state.measured.get(spot, ""):
        return Press(None, f"{kept} measured already" if kept else "no measure")
    said = f"{kept} measured in {label(plan, spot)}" if kept else "measure dropped"
    return Press(Event(measured=(spot, kept)), said)


def _length(plan: Plan, spot: Spot, words: str) -> Amount:
    """What the maker wrote; a bare number is in the unit of the length to be reached, or cm.

    Raises `ValueError`.
    """
    bare = read_number(words)
    length = Amount(bare, unit_at(plan, spot)) if bare is not None else read_length(words)
    if length.number <= 0:
        raise ValueError("a measure is above 0")
    return length


def unit_at(plan: Plan, spot: Spot) -> str:
    """The unit of length in which the round stood in is measured."""
    target = target_in(worksheet.round_at(plan, spot).until)
    return target.length.unit if target else "cm"


def left_words(plan: Plan, state: State) -> str:
    """The length to be reached and how many rounds are left to it; "" where nothing tells.

    Within a round they are counted with this one, so that the words stay while it is worked.
    """
    spot = worksheet.here(plan, state)
    target = target_in(worksheet.round_at(plan, spot).until)
    ended = worksheet.at_end(plan, spot)
    found = left(plan, state, spot if ended else worksheet.start_of(spot), target)
    if found is None or target is None:
        return ""
    by = "as measured" if found.corrected else "by the gauge"
    if not found.rounds:
        return f"{target.length} reached, {by}"
    rounds = "1 more round" if found.rounds == 1 else f"{found.rounds} more rounds"
    with_this = "" if ended else " with this one"
    return f"to {target.length} about {rounds}{with_this}, {by}"


def left(plan: Plan, state: State, spot: Spot, target: Target | None) -> Left | None:
    """How many rounds are left from a spot to a length; None where nothing tells."""
    if target is None:
        return None
    own = ruler_of(plan.pattern)
    ruler = own or Ruler.of_heights(plan.pattern)
    one = ruler.height(worksheet.round_at(plan, spot))
    if not one:
        return None
    begin = _begin(plan, state, ruler, spot) if target.since is Since.HERE else Fraction(0)
    return rounds_left(
        target.length.cm,
        _reckoned(plan, state, ruler, spot) - begin,
        one,
        _measures(plan, state, ruler, spot, begin),
        whole=target.since is not Since.ELSEWHERE,
        swatch=own is not None,
    )


def _measures(
    plan: Plan, state: State, ruler: Ruler, spot: Spot, begin: Fraction
) -> tuple[Measured, ...]:
    """What was measured in this part and copy up to the end of a round, in order."""
    end = worksheet.place(plan, state, worksheet.end_of(plan, spot))
    taken = sorted(
        (worksheet.place(plan, state, at), at, words)
        for at, words in state.measured.items()
        if at.of == spot.of
    )
    return tuple(
        Measured(_reckoned(plan, state, ruler, at) - begin, length.cm)
        for place, at, words in taken
        if place <= end and (length := _kept_length(words)) is not None
    )


def _kept_length(words: str) -> Amount | None:
    """A measure of the file, which may be written by hand; None where it is none."""
    try:
        return read_length(words)
    except ValueError:
        return None


def _begin(plan: Plan, state: State, ruler: Ruler, spot: Spot) -> Fraction:
    """How long the part is by the swatch before the rounds that are worked to the length."""
    return _reckoned(plan, state, ruler, Spot(*spot[:3]))


def _reckoned(plan: Plan, state: State, ruler: Ruler, spot: Spot) -> Fraction:
    """How long the part is by the swatch at a spot, in cm; a round begun counts by its share."""
    spot = worksheet.settle(plan, state, spot)
    part = worksheet.part_at(plan, spot)
    place = part.place(spot.round)
    whole = sum(
        (
            ruler.height(planned) * state.times(spot.part, spot.copy, part.number(at))
            for at, planned in enumerate(part.rounds[:place])
        ),
        Fraction(0),
    )
    planned = part.rounds[place]
    share = Fraction(spot.step, len(planned.walk))
    return whole + ruler.height(planned) * (spot.nth + share)
