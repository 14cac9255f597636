"""What the widgets of the work screen draw from."""

from __future__ import annotations

from tracker.fabric.steps import Walk
from tracker.lean import NamedTuple
from tracker.screens.actions import Keys
from tracker.screens.entry import Entry
from tracker.session.glance import Glance


class View(NamedTuple):
    """A glance at the work, and what the screen itself has open.

    Attributes:
        glance: all that is true of the work.
        entry: the number being typed, or None.
        how: whether the how-to was asked for.
        beside: whether the how-to stands at the side in any case.
        sentences: the sentences of the part where it is making up; empty elsewhere.
        keys: which keys do what.
        guard: what ends the guard, in words; "" where there is none.
        cue: what the eyes are needed for now; "" for nothing.
        walk: the steps of the round.
        terms: the pattern's terms, "US" or "UK".
        held: the last press was a key held down.
        untold: why something could not be spoken or written; "" for nothing.
        times: the time left in one row, in full and ever shorter; empty where not known.
        care: what to take care of here; "" for nothing.
        asides: what is told in passing, the most pressing first.
        ahead: all that is known of what lies ahead, a line each.
    """

    glance: Glance
    entry: Entry | None
    how: bool
    beside: bool
    sentences: tuple[str, ...]
    keys: Keys
    guard: str
    cue: str
    walk: Walk
    terms: str
    held: bool
    untold: str = ""
    times: tuple[str, ...] = ()
    care: str = ""
    asides: tuple[str, ...] = ()
    ahead: tuple[str, ...] = ()
