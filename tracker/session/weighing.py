"""Weighing what is left of a yarn, now and then."""

from __future__ import annotations

import re

from tracker.lean import TYPE_CHECKING
from tracker.measure.units import NUMBER
from tracker.measure.yarn import read_scale
from tracker.notation.problems import visible
from tracker.session import worksheet
from tracker.session.events import Event
from tracker.session.presses import Press
from tracker.session.state import State

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

LONGEST = 40
"""Characters of what is typed."""

_TYPED = re.compile(rf"(?:([^\d\s].*?)\s+)?({NUMBER})\s*([A-Za-z]*)\.?")

HOW = 'type what the scale shows, such as "43 g"'


def weigh(plan: Plan, state: State, typed: str, letter: str = "") -> Press:
    """Keep what is left of a yarn, all balls of it together.

    ``typed`` is a weight, such as "43 g", "43.5" (grams) or "1 3/4 oz"; with the yarn's
    letter before it where another than the one in hand was weighed ("B 43 g").
    """
    found = _TYPED.fullmatch(visible(typed).strip()) if len(typed) <= LONGEST else None
    if found is None:
        return Press(None, HOW)
    meant = found[1] or letter
    known = yarn_called(plan, meant) if meant else yarn_in_hand(plan, state)
    if known is None:
        return Press(None, f"no yarn is called {meant}: there is {', '.join(yarns(plan))}")
    left = f"{found[2].replace(',', '.')} {found[3].lower() or 'g'}"
    try:
        read_scale(left)
    except ValueError as error:
        return Press(None, str(error))
    of = f" of {known}" if known else ""
    return Press(Event(weighed=(known, left)), f"{left}{of} left")


def yarns(plan: Plan) -> tuple[str, ...]:
    """The letters of a plan's yarns, those in the rounds too; one "" where it names none."""
    found = dict.fromkeys(yarn.letter for yarn in plan.pattern.yarns)
    first = next(iter(found), "")
    for part in (version for each in plan.parts for version in each.versions):
        if not part.making_up:
            for planned in part.rounds:
                found |= dict.fromkeys(run.colour or first for run in planned.walk.runs)
    return tuple(found) or ("",)


def yarn_called(plan: Plan, word: str) -> str | None:
    """The letter of the yarn that a word means, whatever its case; None for no yarn."""
    wanted = word.strip().casefold()
    return next((letter for letter in yarns(plan) if letter.casefold() == wanted), None)


def yarn_in_hand(plan: Plan, state: State) -> str:
    """The letter of the yarn that the maker works with; the first in a making-up."""
    spot = worksheet.here(plan, state)
    walk = worksheet.round_at(plan, spot).walk
    colour = walk.runs[walk.run_of(min(spot.step, len(walk) - 1))].colour
    return colour or yarns(plan)[0]


def yarn_named(plan: Plan, letter: str) -> str:
    """A yarn as a maker says it: "A, moss"; "the yarn" where it has no letter."""
    for yarn in plan.pattern.yarns:
        if yarn.letter == letter:
            return ", ".join(word for word in (letter, yarn.colour or yarn.name) if word)
    return letter or "the yarn"


def asked(plan: Plan, state: State) -> tuple[str, str, str]:
    """What to ask of a maker who weighs: a title, what is wanted, what to begin with."""
    letters, mine = yarns(plan), yarn_in_hand(plan, state)
    last = next((one.left for one in reversed(state.weighed) if one.yarn == mine), "")
    before = f"; {last} the last time" if last else ""
    told = f"what is left, all balls of it together, such as 43 g{before}"
    return f"Weigh {yarn_named(plan, mine)}", told, f"{mine} " if len(letters) > 1 else ""
