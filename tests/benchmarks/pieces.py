"""Pieces of any length, with a history of real presses, written in one go."""

from datetime import UTC, datetime

from tracker.pattern.load import load_text
from tracker.pattern.plan import make_plan
from tracker.session.entries import PutDown
from tracker.session.head import Head
from tracker.session.history import History
from tracker.session.items import item_of
from tracker.session.lines import stamp_of, write_line
from tracker.session.paper import write_paper
from tracker.session.place import Asking
from tracker.session.presses import next_press, set_asking

SOURCE = """\
title = "Long scarf, {width} wide"
terms = "US"
[[part]]
name = "Scarf"
worked = "rows"
rounds = '''
Foundation: ch {chains}.
Row 1: sc in 2nd ch from hook and in each ch across; turn. ({width})
Row 2: ch 1, sc in each st across; turn. ({width})
Rep Row 2 until piece measures 9 m.
'''
"""


def make_piece(folder, name, *, width, presses):
    """A piece file of a scarf so many stitches wide, after so many presses, put down just now.

    After a longer pause the work screen would first tell where the maker left off.
    """
    source = SOURCE.format(width=width, chains=width + 1)
    plan = make_plan(load_text(source))
    history = History()
    history.add(item_of(set_asking(history.state, Asking.NEVER).event))
    for _ in range(presses):
        history.add(item_of(next_press(plan, history.state).event))
    when = datetime.now(UTC).replace(microsecond=0)
    data, number, seal = write_paper(Head(plan.pattern.title, "", when, source), history, when)
    data += write_line(number + 1, PutDown(), stamp_of(when), seal)[0]
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{name}.piece.toml"
    path.write_bytes(data)
    return path
