"""The page before the work: what the pattern says of itself, and what to take care of.

During the work it begins with what is to be known of the round, for which the work screen
may not have the room.
"""

from __future__ import annotations

from tracker.pattern.care import Care
from tracker.pattern.foreword import foreword
from tracker.screens.actions import Keys
from tracker.screens.aside import matters
from tracker.screens.inks import Inks
from tracker.screens.keys import shown
from tracker.screens.pages import Pages
from tracker.screens.tell import told
from tracker.session.session import Session
from tracker.session.worksheet import here, part_at

NOTHING = "The pattern says nothing of itself."


def before_pages(session: Session, keys: Keys, inks: Inks, untold: str = "") -> Pages:
    """Pages of the pattern, with the note of the part the maker is at.

    ``untold``: why something could not be spoken or written.
    """
    plan = session.plan
    part = part_at(plan, here(plan, session.state)).part
    seen = session.glance()
    cared = () if session.begun else matters(Care(plan.pattern, plan.size), seen)
    now = tuple(one.sentence for one in cared)
    here_too = [f"Here: {said}" for said in (*told(seen, keys), *now)]
    rest = (words for words in foreword(plan, part) if words not in now)
    words = (*filter(None, (untold,)), *here_too, *rest)
    hint = f"{shown(keys['next'][0])}: on"
    return Pages("Before you begin", words or (NOTHING,), inks, hint)
