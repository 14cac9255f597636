"""``hookside measure``: how long a piece is, kept with it."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence

from tracker.cli import Complaint
from tracker.cli_piece import meant, opened, parted, taken_up
from tracker.measure.units import NUMBER
from tracker.notation.problems import visible

LENGTH = re.compile(rf"{NUMBER}\s*(?:[A-Za-z]*|[\"”″])")


def measure(words: Sequence[str], *, as_json: bool) -> int:
    """Keep how long a piece measures, where it stands now; tell what is left to a length.

    Raises `Complaint`: the words are no length, or there is no such piece.
    """
    piece, length = parted(words, LENGTH)
    if not length:
        raise Complaint(
            "say a length, such as: hookside measure 14.5 cm, or: hookside measure tea-cosy 14.5 cm"
        )
    path = meant(piece)
    session = opened(lambda: taken_up(path))
    try:
        before = session.can_undo
        session.measure(length)
        kept, here, seen = session.can_undo > before, session.measured_here(), session.glance()
    finally:
        session.close()
    if not kept:
        raise Complaint(seen.last_press)
    if as_json:
        print(json.dumps({"measured": here, "left": seen.left}, indent=2))
    else:
        print("\n".join(map(visible, filter(None, (seen.last_press, seen.left)))))
    return 0
