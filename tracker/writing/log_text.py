"""The log of a piece as lines, and as bars for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, tzinfo

from tracker.session.about import spoken_time
from tracker.session.log import Logged, LoggedPart

BLOCKS = " ▏▎▍▌▋▊▉█"
"""Eighths of a cell, from none to all."""

LEAST = 8
"""Columns of a bar, at the least."""


def log_lines(parts: Sequence[LoggedPart], zone: tzinfo | None = None) -> Iterator[str]:
    """A line for each round, and one for each thing that is to be said of it."""
    for part in parts:
        yield f"{part.name} · {_time_of(part.rounds)}"
        label = max(len(one.label) for one in part.rounds)
        wide = max(len(_made(one)) for one in part.rounds)
        for one in part.rounds:
            facts = _ticked(one, zone) if part.making_up else _facts(one, zone, wide)
            yield f"  {one.label.ljust(label)}  {facts}".rstrip()
            yield from (f"  {' ' * label}    {words}" for words in _said(one))
        if part.left_out:
            yield f"  left out: {', '.join(part.left_out)}"
        yield ""


def _facts(one: Logged, zone: tzinfo | None, wide: int) -> str:
    yarn = "  ".join(_grams(name, grams) for name, grams in one.yarn)
    took = minutes(one.seconds).rjust(9)
    return "  ".join((_made(one).rjust(wide), took, moment(one.when, zone), yarn))


def _ticked(one: Logged, zone: tzinfo | None) -> str:
    took = minutes(one.seconds).rjust(9)
    return "  ".join(("done" if one.whole else "begun", took, moment(one.when, zone), one.text))


def _made(one: Logged) -> str:
    of = "" if one.whole or one.wanted is None else f" of {one.wanted}"
    return f"{one.stitches}{of} sts"


def _said(one: Logged) -> Iterator[str]:
    again = (f"{one.again} steps worked again",) if one.again else ()
    yield from (*one.changes, *again, *one.weighed, *one.notes)


def _grams(name: str, grams: float | None) -> str:
    return name if grams is None else f"{name}, about {grams:.1f} g"


def minutes(seconds: int) -> str:
    """A time worked: "1 h 5 min", "40 s"; "-" for none."""
    return spoken_time(seconds) if seconds >= 60 else f"{seconds} s" if seconds else "-"


def _time_of(rounds: Sequence[Logged]) -> str:
    return f"{spoken_time(sum(one.seconds for one in rounds))} worked"


def moment(when: int, zone: tzinfo | None) -> str:
    """A time as a clock there shows it; blanks where it is not known."""
    if not when:
        return " " * 16
    return datetime.fromtimestamp(when, zone).astimezone(zone).strftime("%Y-%m-%d %H:%M")


def bars(parts: Sequence[LoggedPart], width: int) -> Iterator[str]:
    """Stitches and time of every round as two bars in a row, each to one scale."""
    rounds = [one for part in parts if not part.making_up for one in part.rounds]
    label = max((len(one.label) for one in rounds), default=0)
    most = max((one.stitches or 0 for one in rounds), default=0)
    longest = max((one.seconds for one in rounds), default=0)
    figures, clock = len(str(most)), max((len(minutes(s.seconds)) for s in rounds), default=0)
    room = max(2 * LEAST, width - label - figures - clock - 10)
    left = room * 3 // 5
    for part in parts:
        if part.making_up:
            continue
        yield part.name
        for one in part.rounds:
            made = bar(one.stitches or 0, most, left)
            time = bar(one.seconds, longest, room - left)
            yield (
                f"  {one.label.ljust(label)}  {one.stitches or 0:>{figures}} {made}"
                f"{'≠' if one.changes else ' '} {minutes(one.seconds).rjust(clock)} {time}"
            ).rstrip()
        yield ""
    yield "left: stitches · right: time worked · ≠ otherwise than written"


def bar(value: float, most: float, width: int) -> str:
    """A bar of eighths of cells, filled up with blanks to a width."""
    eighths = round(8 * width * value / most) if most else 0
    if value and not eighths:
        eighths = 1
    whole, rest = divmod(eighths, 8)
    return (BLOCKS[8] * whole + BLOCKS[rest] * bool(rest)).ljust(width)


def cut(words: str, most: int) -> str:
    """Words that are no longer than so many characters."""
    return words if len(words) <= most else f"{words[: most - 1]}…"
