"""What the hands do just now: the next step, or what is asked at the round's end."""

from __future__ import annotations

import re

from tracker.lean import TYPE_CHECKING
from tracker.session import mending, worksheet
from tracker.session.lookup import HowTo, how_to, loops_of

if TYPE_CHECKING:
    from typing import TypedDict

    from tracker.fabric.steps import InRepeat, Run, Step
    from tracker.pattern.plan import Plan
    from tracker.session.state import Spot, State

    class Current(TypedDict):
        """The facts of a `Glance` on the next step, or on the round's end in its place."""

        colour: str
        step_text: str
        step_where: str
        variant: str
        loops: tuple[str, ...]
        loop: int
        how: HowTo
        repeats: tuple[InRepeat, ...]
        now: tuple[int, int]
        done: int


def at_step(plan: Plan, spot: Spot, off: int) -> Current:
    """The facts on the step at ``spot``; ``off``: how far the count of the round below is off."""
    walk = worksheet.round_at(plan, spot).walk
    step = walk[spot.step]
    run, loops = step.run, loops_of(plan, step.run)
    return {
        "colour": _colour(plan, run),
        "step_text": run.text,
        "step_where": (mending.where(walk, off, spot.step) if off else "") or _where(step),
        "variant": run.variant,
        "loops": loops,
        "loop": min(spot.loop, len(loops)),
        "how": how_to(plan, run),
        "repeats": step.repeats,
        "now": (run.start, run.end),
        "done": run.start,
    }


def at_end(plan: Plan, state: State, spot: Spot, left: str) -> Current:
    """The facts where no step is left: what is asked of the maker takes the step's place.

    ``left``: how many rounds are left to a length, in words.
    """
    planned = worksheet.round_at(plan, spot)
    text, where = _asked(plan, state, spot, left)
    end = len(planned.text)
    return {
        "colour": _colour(plan, planned.walk.runs[-1]),
        "step_text": text,
        "step_where": where,
        "variant": "",
        "loops": (),
        "loop": 0,
        "how": HowTo(),
        "repeats": (),
        "now": (end, end),
        "done": end,
    }


def _asked(plan: Plan, state: State, spot: Spot, left: str) -> tuple[str, str]:
    """What is asked of the maker at a round's end, in the words of a step."""
    planned = worksheet.round_at(plan, spot)
    if worksheet.piece_done(plan, state):
        return "piece done", ""
    if spot.of in state.finished:
        return "part done", _goes_on(plan, state)
    if planned.until:
        return "long enough?", left or _until(planned.until)
    if planned.ends_on is None:
        return "count the stitches", ""
    return "count the stitches", f"there should be {planned.ends_on}"


def _until(words: str) -> str:
    """The words that end a round, without what is to be done until then."""
    found = re.search(r"\b(?:until|till|for)\b", words, re.IGNORECASE)
    return words[found.start() :] if found else words


def _goes_on(plan: Plan, state: State) -> str:
    undone = worksheet.next_undone(plan, state)
    if undone is None:
        return ""
    part = plan.parts[undone[0]].part
    copy = f", copy {undone[1] + 1} of {part.make}" if part.make > 1 else ""
    return f"next comes {part.name}{copy}"


def step_words(step: Step) -> str:
    """A step and where it goes: "hdc in the same st"."""
    return f"{step.run.text} {_where(step)}".rstrip()


def _where(step: Step) -> str:
    """Where a step goes; the second into one place goes into the same."""
    if step.nth == 1:
        return step.run.where
    for begin in ("in the next ", "in next "):
        if step.run.where.startswith(begin):
            return "in the same " + step.run.where[len(begin) :]
    return step.run.where


def _colour(plan: Plan, run: Run) -> str:
    for yarn in plan.pattern.yarns:
        if yarn.letter == run.colour:
            return ", ".join(word for word in (yarn.letter, yarn.colour or yarn.name) if word)
    return run.colour
