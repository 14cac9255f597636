"""Any work, then any change of the pattern file: the place is one that the pattern has."""

import tempfile
from pathlib import Path

from faults import FaultyDisk
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.session.test_carrying import PATTERN
from tracker.pattern.load import load_text
from tracker.session.looking import look
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings
from tracker.session.worksheet import here

EDITS = st.sampled_from(
    (
        ("Rnd 2: inc in each st around. (12)", "Rnd 2: [sc, inc] x 3. (9)"),
        ("Rnd 3: [sc, inc] x 6. (18)", "Rnd 3: sc in next 6 sts, inc x 6. (18)"),
        ("Rnds 4-6: sc in each st around. (18)\n", ""),
        ("Rnds 4-6", "Rnds 4-9"),
        ('name = "Disc"', 'name = "Plate"'),
        ("make = 2", "make = 1"),
        ("Rnd 1: 5 sc in magic ring. (5)\n", ""),
        ("Rnd 8: [sc, sc2tog] x 6. (12) Fasten off.\n", ""),
        ("until piece measures 6 cm.", "(18)"),
    )
)
DEEDS = st.sampled_from(
    ("next", "next", "back", "undo", "redo", "next_round", "mark", "length_reached", "improvise")
)


def do(session, deed, number):
    if deed == "improvise":
        choices = session.improvising().choices
        chosen = choices[number % len(choices)]
        session.improvise(chosen, chosen.words or "sc around")
    elif deed == "next":
        for _ in range(number):
            session.next()
    else:
        getattr(session, deed)()
    if number == 9:
        session.go_to_part(1, 0)
    elif number == 8:
        session.go_to_part(0, 1)


def around():
    return Surroundings(background=False, disk=FaultyDisk())


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(DEEDS, st.integers(1, 9)), max_size=15), st.sets(EDITS, min_size=1))
def test_after_any_work_and_any_change_one_stands_in_the_pattern(deeds, edits):
    folder = Path(tempfile.mkdtemp())
    file = folder / "sampler.toml"
    session = Session.start(load_text(PATTERN), "", folder, file=file, around=around())
    for deed, number in deeds:
        do(session, deed, number)
    text = PATTERN
    for old, new in edits:
        text = text.replace(old, new)
    file.write_text(text, encoding="utf-8")
    changed = session.changed_file()
    assert changed is not None
    undone = look(session.path).history.undone
    session.carry_over(changed)
    assert look(session.path).history.undone <= undone
    assert here(session.plan, session.state) == session.state.spot
    seen, file_place = session.glance(), session.path
    session.close()
    again = Session.open(file_place, around=around())
    assert (again.notices, again.glance().place) == ((), seen.place)
    assert again.changed_file() is None
    while again.can_undo:
        again.undo()
        again.glance()
    again.close()
