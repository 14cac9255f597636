"""What lies ahead, in words."""

from __future__ import annotations

from collections.abc import Iterator

from tracker.measure.estimate import Range
from tracker.pattern.cautions import caution
from tracker.session.outlook import Outlook
from tracker.session.yarn_ahead import YarnAhead

NOTHING = "nothing is known yet: work on, and weigh the yarn now and then"
SURE = ("in brackets", "nine times in ten it lies between these")


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


def head_words(ahead: Outlook) -> tuple[str, ...]:
    """The times left in one row, in full and ever shorter; nothing where none is known."""
    if ahead.piece is None or ahead.part is None or ahead.round is None:
        return ()
    if not ahead.piece.likely:
        return ()
    over = "over " if ahead.lengths else ""
    short = f"{over}{about_time(ahead.piece.likely)} left"
    whole = f"piece {short}"
    part = f"part {over}{about_time(ahead.part.likely)}" if ahead.part != ahead.piece else ""
    row = f"round {about_time(ahead.round.likely)}" if ahead.round.likely else ""
    kept = [[row, part, whole], [row, whole], [whole], [short]]
    return tuple(" · ".join(word for word in words if word) for words in kept)


def warning(yarn: YarnAhead) -> str:
    """That a yarn runs out, or may; "" where it lasts, or nothing is known."""
    return "" if yarn.lasts or not yarn.first else f"{yarn.letter or 'yarn'} {verdict(yarn)}"


def facts(ahead: Outlook, *, each: bool = True) -> Iterator[tuple[str, str]]:
    """All of it: what it is, and what is known; without ``each`` only what lies ahead.

    Nothing at all where nothing is known.
    """
    for name, left in (("round", ahead.round), ("part", ahead.part), ("piece", ahead.piece)):
        if left is not None and left.likely:
            spread = f"{about_time(left.low)} to {about_time(left.high)}"
            yield name, f"{about_time(left.likely)} left ({spread})"
    if ahead.piece is not None:
        yield from _left_out(ahead)
    for kind, one in ahead.pace if each else ():
        yield f"pace of {kind}", f"{one.likely:.1f} s ({one.low:.1f} to {one.high:.1f})"
    for yarn in ahead.yarns:
        yield yarn.name, yarn_words(yarn)
        yield from ((f"{yarn.name}: {kind}", _each(one)) for kind, one in yarn.each if each)
    if each and (ahead.piece is not None or any(yarn.needs for yarn in ahead.yarns)):
        yield SURE
    if each and ahead.piece is not None:
        yield "your hands", _rest()


def _rest() -> str:
    """The caution on resting, with its source."""
    known = caution("hand-strain")
    assert known is not None
    return f"{known.sentence} Source: {known.source} ({known.address})."


def lines(ahead: Outlook, *, each: bool = True) -> Iterator[str]:
    """The same, a line for each."""
    return (f"{name}: {words}" for name, words in facts(ahead, each=each))


def _left_out(ahead: Outlook) -> Iterator[tuple[str, str]]:
    if ahead.lengths:
        yield "not counted", "how often rounds worked to a length are worked: once each is taken"
    if ahead.making_up:
        yield "not counted", "the making up"


def _each(grams: Range) -> str:
    hundred = (100 * one for one in (grams.likely, grams.low, grams.high))
    return "{:.2f} g for a hundred ({:.2f} to {:.2f})".format(*hundred)


def yarn_line(yarn: YarnAhead) -> str:
    """What is known of a yarn, in one line."""
    return f"{yarn.name}: {yarn_words(yarn)}"


def yarn_words(yarn: YarnAhead) -> str:
    """What is known of a yarn, its name left out."""
    if yarn.needs is None:
        return f"{about_grams(yarn.left)} left; weigh it again some rounds from here"
    needs = yarn.needs
    if needs.high <= 0:
        return f"{about_grams(yarn.left)} left, no more needed"
    spread = f"{about_grams(needs.low)} to {about_grams(needs.high)}"
    have = f"{about_grams(yarn.left)} left, {about_grams(needs.likely)} ({spread}) needed"
    return f"{verdict(yarn)}; {have}"


def verdict(yarn: YarnAhead) -> str:
    """Whether it lasts, and where not: "runs out in about Rnd 31 (Rnd 29 to Rnd 34)"."""
    if yarn.lasts:
        return "lasts"
    if yarn.lasts is None and not yarn.runs_out:
        return f"may run out, in {yarn.first} at the earliest"
    where = "" if yarn.first == yarn.last else f" ({_from_to(yarn.first, yarn.last)})"
    return f"runs out in about {yarn.runs_out}{where}"


def _from_to(first: str, last: str) -> str:
    """Two rounds, what they have in common said once: "Rnd 29 to 34"."""
    same, _, number = last.rpartition(" ")
    return f"{first} to {number if first.startswith(f'{same} ') else last or 'not at all'}"
