"""What lies ahead, in words."""

from __future__ import annotations

from collections.abc import Iterator

from tracker.measure.estimate import Range
from tracker.session.outlook import Outlook
from tracker.session.yarn_ahead import YarnAhead

NOTHING = "nothing is known yet: work on, and weigh the yarn now and then"
SURE = "in brackets: nine times in ten it lies between these"


def about_time(seconds: float) -> str:
    """A time to come, no finer than it is known: "4 min", "1 h 25 min", "12 h"."""
    minutes = max(1, round(seconds / 60))
    if minutes >= 60:
        minutes = 5 * round(minutes / 5)
    if minutes >= 10 * 60:
        return f"{round(minutes / 60)} h"
    hours, rest = divmod(minutes, 60)
    return " ".join(word for word in (hours and f"{hours} h", rest and f"{rest} min") if word)


def about_grams(grams: float) -> str:
    """A weight: "43 g"; below ten to the tenth: "4.3 g"."""
    return f"{grams:.0f} g" if grams >= 10 else f"{grams:.1f} g"


def lines(ahead: Outlook) -> Iterator[str]:
    """All of it, a line each."""
    for name, left in (("round", ahead.round), ("part", ahead.part), ("piece", ahead.piece)):
        if left is not None:
            spread = f"{about_time(left.low)} to {about_time(left.high)}"
            yield f"{name}: {about_time(left.likely)} left ({spread})"
    if ahead.piece is not None:
        yield from _left_out(ahead)
    for kind, each in ahead.pace:
        yield f"pace of {kind}: {each.likely:.1f} s ({each.low:.1f} to {each.high:.1f})"
    for yarn in ahead.yarns:
        yield yarn_line(yarn)
        yield from (f"  {kind}: {_each(each)}" for kind, each in yarn.each)


def _left_out(ahead: Outlook) -> Iterator[str]:
    if ahead.lengths:
        yield "rounds worked to a length count once each: they may be more"
    if ahead.making_up:
        yield "the making up is not counted"


def _each(grams: Range) -> str:
    hundred = (100 * one for one in (grams.likely, grams.low, grams.high))
    return "{:.2f} g for a hundred ({:.2f} to {:.2f})".format(*hundred)


def yarn_line(yarn: YarnAhead) -> str:
    """What is known of a yarn, in one line."""
    if yarn.needs is None:
        return f"{yarn.name}: {about_grams(yarn.left)} left; weigh it again some rounds from here"
    needs = yarn.needs
    spread = f"{about_grams(needs.low)} to {about_grams(needs.high)}"
    have = f"{about_grams(yarn.left)} left, {about_grams(needs.likely)} ({spread}) needed"
    return f"{yarn.name}: {verdict(yarn)}; {have}"


def verdict(yarn: YarnAhead) -> str:
    """Whether it lasts, and where not: "runs out in about Rnd 31 (Rnd 29 to Rnd 34)"."""
    if yarn.lasts:
        return "lasts"
    if yarn.lasts is None and not yarn.runs_out:
        return f"may run out, in {yarn.first} at the earliest"
    last = yarn.last or "not at all"
    where = "" if yarn.first == yarn.last else f" ({yarn.first} to {last})"
    return f"runs out in about {yarn.runs_out}{where}"
