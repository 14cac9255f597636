"""The signs that a chart uses, each with its name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tracker.notation.dictionary import STITCHES, in_terms, name_in
from tracker.pattern.model import Pattern
from tracker.writing.chart.frames import Point
from tracker.writing.chart.knots import Knot, Knots, seen
from tracker.writing.chart.laid import Laid

_WORDS = {
    "ch": "chain",
    "space": "chain",
    "rise": "chain",
    "join": "slip stitch",
    "slip": "slip stitch",
    "sl st": "slip stitch",
    "picot": "picot",
    "fasten": "fasten off",
}


@dataclass(frozen=True, slots=True)
class Entry:
    """One sign of the legend, drawn in a field about 1.6 wide and 1.2 high."""

    knot: Knot
    words: str
    feet: tuple[Point, ...]
    heads: tuple[Point, ...]
    line: tuple[Point, ...] = ()


def legend(knots: Knots, rounds: Sequence[Laid], pattern: Pattern) -> list[Entry]:
    """One entry for each sign drawn, in the order in which they first come."""
    found: dict[str, Entry] = {}
    for nth, laid in enumerate(rounds):
        for knot in laid.round.knots:
            if knot.sign == "fasten" and nth + 1 < len(rounds):
                continue
            drawn = seen(knot) if laid.wrong else knot
            words = _name(drawn, knots, pattern)
            found.setdefault(words, _entry(replace(drawn, loop=""), words))
            if drawn.loop:
                words = f"in the {drawn.loop} loop only"
                found.setdefault(words, _entry(replace(drawn, sign="sc"), words))
    return list(found.values())


def _name(knot: Knot, knots: Knots, pattern: Pattern) -> str:
    if knot.sign in _WORDS:
        return _WORDS[knot.sign]
    if knot.own:
        stitch = knots.own[knot.own]
        return knot.own if stitch.name == knot.own else f"{knot.own}: {stitch.name}"
    if knot.sign not in STITCHES:
        return knot.sign
    short, name = in_terms(knot.sign, pattern.terms), name_in(knot.sign, pattern.terms)
    return name if short == name else f"{short}: {name}"


def _entry(knot: Knot, words: str) -> Entry:
    foot, head = Point(0.85, 1.3), Point(0.85, -0.2)
    takes = 2 if knot.own and len(knot.feet) > 1 else 1
    if knot.sign.endswith("tog"):
        takes = STITCHES[knot.sign].takes
    wide = 0.55 if takes > 1 else 0.0
    feet = tuple(
        Point(foot.x + wide * (2 * n / (takes - 1) - 1) if takes > 1 else foot.x, foot.y)
        for n in range(takes)
    )
    middle = Point(0.85, 0.55)
    if words == "chain":
        line = (Point(0.5, 0.55), Point(1.2, 0.55))
        return Entry(replace(knot, sign="ch", chains=1), words, (), (), line)
    if words in ("slip stitch", "fasten off"):
        sign = "fasten" if words == "fasten off" else "join"
        return Entry(replace(knot, sign=sign), words, (), (middle,))
    if knot.sign == "picot":
        return Entry(knot, words, (), (middle,))
    return Entry(knot, words, feet, (head,))
