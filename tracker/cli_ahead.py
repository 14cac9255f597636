"""``hookside ahead`` and ``hookside weigh``: time and yarn of a piece."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from tracker.cli import Complaint
from tracker.cli_piece import meant, opened, parted, taken_up
from tracker.measure.units import NUMBER
from tracker.notation.problems import visible

WEIGHT = re.compile(rf"{NUMBER}\s*[A-Za-z]*")

if TYPE_CHECKING:
    from pathlib import Path

    from tracker.measure.estimate import Range
    from tracker.session.outlook import Outlook


def ahead(word: str | None, *, as_json: bool) -> int:
    """Print how long a piece takes and whether its yarn lasts, from here."""
    path = meant(word)
    found = opened(lambda: _outlook(path))
    if as_json:
        print(json.dumps(as_data(found), indent=2))
        return 0
    from tracker.session.ahead_words import NOTHING, lines

    for words in list(lines(found)) or [NOTHING]:
        print(visible(words))
    return 0


def weigh(words: Sequence[str], letter: str | None, *, as_json: bool) -> int:
    """Keep what is left of a yarn with a piece, where it stands now."""
    piece, weight = parted(words, WEIGHT)
    if not weight:
        raise Complaint(
            "say a weight, such as: hookside weigh 43 g, or: hookside weigh tea-cosy 43 g"
        )
    path = meant(piece)
    session = opened(lambda: taken_up(path))
    try:
        before = session.can_undo
        session.weigh(weight, letter or "")
        kept, seen = session.can_undo > before, session.glance()
        found = session.outlook()
    finally:
        session.close()
    if not kept:
        raise Complaint(seen.last_press)
    if as_json:
        print(json.dumps(as_data(found), indent=2))
        return 0
    from tracker.session.ahead_words import yarn_line

    print(visible(seen.last_press))
    for yarn in found.yarns:
        print(visible(yarn_line(yarn)))
    return 0


def as_data(found: Outlook) -> dict[str, Any]:
    """What lies ahead as JSON has it: seconds and grams; null for what is not known."""
    return {
        "seconds left": {
            name: _range(left)
            for name, left in (
                ("round", found.round),
                ("part", found.part),
                ("piece", found.piece),
            )
        },
        "lengths ahead": found.lengths,
        "making up ahead": found.making_up,
        "seconds each": {kind: _range(each) for kind, each in found.pace},
        "yarns": [
            {
                "letter": yarn.letter,
                "grams left": round(yarn.left, 3),
                "grams needed": _range(yarn.needs),
                "lasts": yarn.lasts,
                "runs out in": yarn.runs_out or None,
                "at the earliest": yarn.first or None,
                "at the latest": yarn.last or None,
                "grams each": {kind: _range(each) for kind, each in yarn.each},
            }
            for yarn in found.yarns
        ],
    }


def _range(found: Range | None) -> dict[str, float] | None:
    """An estimate and its interval, no finer than anything that was measured."""
    if found is None:
        return None
    return {name: round(one, 4) for name, one in asdict(found).items()}


def _outlook(path: Path) -> Outlook:
    from tracker.session.looking import look, plan_at
    from tracker.session.outlook import Looker

    found = look(path)
    plan = plan_at(path, found)
    return Looker(plan).outlook(found.history.state, found.history)
