"""A small real piece, and work of every kind on it."""

from datetime import UTC, datetime

from tracker.pattern.load import load_text
from tracker.pattern.plan import make_plan
from tracker.session.looking import look
from tracker.session.place import Asking, Pace
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings

SOURCE = """\
title = "Pot mat [storm]"
terms = "US"
[[part]]
name = "Mat"
make = 2
worked = "joined rounds"
rounds = '''
Rnd 1: 6 sc in ring; join. (6)
Rnd 2: ch 1, 2 sc in each st around; join. (12)
Rnd 3: ch 1, *sc in next st, 2 sc in next st; rep from * around; join. (18)
Rnd 4: ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around; join. (24)
'''
[[part]]
name = "Making up"
steps = ["Sew both mats together.", "Weave in all ends."]
"""

PATTERN = load_text(SOURCE)
PLAN = make_plan(PATTERN)
FOLD_AT = 2000
WHEN = datetime(2026, 3, 2, 10, tzinfo=UTC)
"""The time stands still, so that no time of work is recorded when a piece is put down."""


def reading(source, size):
    """The plan of the piece, if its text is as it was."""
    if (source, size) != (SOURCE, ""):
        raise ValueError("not the text of this pattern")
    return PLAN


def start(folder, **around):
    """A new piece."""
    surroundings = Surroundings(**{"fold_at": FOLD_AT, "clock": lambda: WHEN, **around})
    return Session.start(PATTERN, "", folder, around=surroundings, reading=reading)


def reopen(path, *, take_over=False, **around):
    """The piece at a path, opened."""
    surroundings = Surroundings(**{"fold_at": FOLD_AT, "clock": lambda: WHEN, **around})
    return Session.open(path, take_over=take_over, around=surroundings, reading=reading)


def actions(session, rng, *, undo=True):
    """Actions without end, each to be called; never one that cannot apply for ever.

    Without ``undo`` each adds to what can be undone, or changes nothing.
    """
    ways = [
        *[session.next] * 30,
        *[session.back] * 4,
        session.next_round,
        session.previous_round,
        session.mark,
        session.return_to_mark,
        lambda: session.go_to_round(rng.randrange(6)),
        lambda: session.go_to_stitch(rng.randrange(26)),
        lambda: session.go_to_part(rng.randrange(3), rng.randrange(2)),
        lambda: session.set_pace(rng.choice(list(Pace))),
        lambda: session.set_asking(rng.choice(list(Asking))),
        lambda: session.enter_count(rng.randrange(30)),
        lambda: pause(session),
        *([session.undo, session.undo, session.redo] if undo else []),
    ]
    while True:
        yield rng.choice(ways)


def pause(session):
    """A while without a press: the file may be folded."""
    session.retry()
    session.retry()


def standing(session):
    """What must not be lost: the state, and how far one can undo and, by the file, redo."""
    return session.state, session.can_undo, look(session.path).history.undone
