"""What the file says of one entry, and what it means: a small strict subset of TOML.

Read by a reader of our own, since a piece holds thousands of entries. In the file parts,
copies, rounds and times count from 1, as makers do; steps and loops count those done.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from tracker.lean import NamedTuple
from tracker.session.events import Event
from tracker.session.fields import EntryError, Value, bounded, down, number, parse, shown, truth, up
from tracker.session.items import Did, Stretch, Walked
from tracker.session.own_entries import changing_fields, changing_of
from tracker.session.place import Asking, Pace
from tracker.session.state import RoundKey, Spot


class Undo(NamedTuple):
    """So many presses taken back."""

    presses: int


class Redo(NamedTuple):
    """So many presses done again."""

    presses: int


class PutDown(NamedTuple):
    """The piece was closed in good order."""


Entry = Walked | Did | Undo | Redo | PutDown


_STRETCH = r"(\d{1,10})(?:\.(\d{1,10}))?(?:-(\d{1,10})(?:\.(\d{1,10}))?)?"


class Written(NamedTuple):
    """What a line says: an entry, when it was made ("" if not said), and the seconds it took.

    ``took`` is None where the times of the lines tell it.
    """

    entry: Entry
    when: str
    took: int | None


def entry_text(entry: Entry, took: int | None = None) -> str:
    """The fields of an entry, as they stand in the file; with what it took, if given."""
    fields = _fields(entry) | ({} if took is None else {"took": took})
    return ", ".join(f"{name} = {shown(value)}" for name, value in fields.items())


def entry_of(text: str) -> Written:
    """What the fields say. Raises `EntryError` where they make no entry."""
    fields = parse(text)
    when = str(fields.pop("when", ""))
    took = fields.pop("took", None)
    if took is not None and (isinstance(took, bool) or not isinstance(took, int)):
        raise EntryError("not a number of seconds")
    return Written(_entry(fields), when, took)


def common_entry(
    numbers: Sequence[int], to: bytes | None, count: bytes | None, more: bytes | None
) -> Walked | None:
    """The entry of the commonest lines. None where they need a closer look.

    ``numbers`` are the part, copy, round and time of ``round`` and the first of ``steps``;
    ``to`` is the last of ``steps``; ``count`` the numbers of a count, between commas.
    """
    part, copy, line, nth, step = numbers
    presses = 1 if to is None else int(to) - step + 1
    if not (part and copy and line and nth) or (to is not None and presses < 2):
        return None
    tally = None
    if count is not None:
        of_part, of_copy, of_line, of_nth, counted = map(int, count.split(b","))
        if not (of_part and of_copy and of_line and of_nth):
            return None
        tally = RoundKey(of_part - 1, of_copy - 1, of_line - 1, of_nth - 1), counted
    if more is not None and nth == 1:
        return None
    key = RoundKey(part - 1, copy - 1, line - 1, nth - 1)
    return Walked(key, (Stretch(step, 0, presses),), presses, tally, more is not None)


def _fields(entry: Entry) -> dict[str, Value]:
    """What the file says of an entry. Parts, copies, rounds and times count from 1."""
    if isinstance(entry, Walked):
        steps = " ".join(_stretch_text(stretch) for stretch in entry.stretches)
        more = {"more": True} if entry.more else {}
        return {"round": up(entry.key), "steps": steps, **_count_field(entry.tally), **more}
    if isinstance(entry, Did) and entry.done.worked is not None:
        return {"worked": entry.done.worked}
    if isinstance(entry, Did):
        return _event_fields(entry.done)
    if isinstance(entry, PutDown):
        return {"down": True}
    return {"undo" if isinstance(entry, Undo) else "redo": entry.presses}


def _event_fields(event: Event) -> dict[str, Value]:
    fields: dict[str, Value] = {}
    if event.spot is not None:
        spot = event.spot
        fields["round"] = up(spot.key)
        fields["steps"] = _stretch_text(Stretch(spot.step, spot.loop))
    if event.finished:
        fields["finished"] = True
    fields |= _count_field(event.tally)
    if event.again is not None:
        fields["times"] = up((*event.again[0], event.again[1]))
    if event.mark is not None:
        fields["mark"] = (*up(event.mark.key), event.mark.step, event.mark.loop)
    if event.choose is not None:
        fields["choose"] = event.choose + 1
    if event.spread is not None:
        key, off = event.spread
        fields["spread"] = (*up(key), max(0, -off), max(0, off))
    for name, kept in (("note", event.note), ("measured", event.measured)):
        if kept is not None:
            spot, words = kept
            fields["at"] = (*up(spot.key), spot.step, spot.loop)
            fields[name] = words
    if event.weighed is not None:
        fields["yarn"], fields["left"] = event.weighed
    return fields | changing_fields(event.changing) | _choice_fields(event)


def _count_field(count: tuple[RoundKey, int] | None) -> dict[str, Value]:
    return {} if count is None else {"count": (*up(count[0]), count[1])}


def _choice_fields(event: Event) -> dict[str, Value]:
    fields: dict[str, Value] = {}
    if event.pace is not None:
        fields["pace"] = event.pace.value
    if event.asking is not None:
        fields["asking"] = event.asking.value
    if event.loops_shown is not None:
        fields["loops"] = event.loops_shown
    return fields


def _stretch_text(stretch: Stretch) -> str:
    """Such as "13", "1-40", "13.2" (two loops done), "13.1-13.4"."""
    first = _spot_text(stretch.step, stretch.loop)
    if stretch.presses == 1:
        return first
    return f"{first}-{_spot_text(*stretch.at(stretch.presses - 1))}"


def _spot_text(step: int, loop: int) -> str:
    return f"{step}.{loop}" if loop else str(step)


def _stretch(text: str) -> Stretch:
    match = re.fullmatch(_STRETCH, text)
    if match is None:
        raise EntryError("not a list of steps")
    step, loop, to, to_loop = (bounded(digits or "0") for digits in match.groups())
    if match[3] is None:
        return Stretch(step, loop)
    by_loop = step == to
    presses = (to_loop - loop if by_loop else to - step) + 1
    if presses < 2 or (not by_loop and (loop or to_loop)):
        raise EntryError("not a list of steps")
    return Stretch(step, loop, presses, by_loop)


_MOVES = frozenset(("round", "steps", "count", "more"))
_KNOWN = frozenset(
    (
        *("round", "steps", "finished", "count", "times", "mark", "choose"),
        *("pace", "asking", "loops", "spread", "at", "note", "measured", "yarn", "left"),
        *("change", "add", "omit", "restore", "after", "words", "spared"),
    )
)


def _entry(fields: Mapping[str, Value]) -> Entry:
    if {"round", "steps"} <= fields.keys() <= _MOVES:
        return _walked(fields)
    if fields == {"down": True}:
        return PutDown()
    if fields.keys() == {"worked"}:
        return Did(Event(worked=number(fields["worked"])), presses=0)
    for name, kind in (("undo", Undo), ("redo", Redo)):
        if fields.keys() == {name}:
            return kind(number(fields[name]))
    if not fields or not fields.keys() <= _KNOWN or ("round" in fields) != ("steps" in fields):
        raise EntryError("not an entry")
    if ("yarn" in fields) != ("left" in fields):
        raise EntryError("not a weighing")
    return Did(_event(fields))


def _walked(fields: Mapping[str, Value]) -> Walked:
    steps = fields["steps"]
    if not isinstance(steps, str):
        raise EntryError("not a list of steps")
    stretches = tuple(_stretch(text) for text in steps.split(" "))
    presses = sum(stretch.presses for stretch in stretches)
    count = _count(fields["count"]) if "count" in fields else None
    key = RoundKey(*down(fields["round"], 4))
    more = truth(fields["more"]) if "more" in fields else False
    if more and key.nth == 0:
        raise EntryError("the first time is not one more")
    return Walked(key, stretches, presses, count, more)


def _event(fields: Mapping[str, Value]) -> Event:
    spot = _spot(_walked(fields)) if "round" in fields else None
    return Event(
        spot=spot,
        finished=truth(fields["finished"]) if "finished" in fields else False,
        tally=_count(fields["count"]) if "count" in fields else None,
        again=_again(fields["times"]) if "times" in fields else None,
        mark=Spot(*down(fields["mark"], 6)) if "mark" in fields else None,
        choose=number(fields["choose"]) - 1 if "choose" in fields else None,
        pace=_pace(fields["pace"]) if "pace" in fields else None,
        asking=_asking(fields["asking"]) if "asking" in fields else None,
        loops_shown=truth(fields["loops"]) if "loops" in fields else None,
        spread=_spread(fields["spread"]) if "spread" in fields else None,
        note=_kept_at(fields, "note") if "note" in fields else None,
        measured=_kept_at(fields, "measured") if "measured" in fields else None,
        weighed=_weighed(fields) if "left" in fields else None,
        changing=changing_of(fields),
    )


def _spot(walked: Walked) -> Spot:
    if walked.presses != 1:
        raise EntryError("more than one step at once")
    return walked.spot(1)


def _count(value: Value) -> tuple[RoundKey, int]:
    *key, count = down(value, 5)
    return RoundKey(*key), count


def _again(value: Value) -> tuple[tuple[int, int, int], int]:
    part, copy, line, times = down(value, 4)
    return (part, copy, line), times


def _spread(value: Value) -> tuple[RoundKey, int]:
    """A round, then how many are too few and how many too many below it."""
    *key, few, many = down(value, 6)
    return RoundKey(*key), many - few


def _kept_at(fields: Mapping[str, Value], name: str) -> tuple[Spot, str]:
    """A place, and the words of a field that are kept with it."""
    words = fields[name]
    if "at" not in fields or not isinstance(words, str):
        raise EntryError("not something kept with a place")
    return Spot(*down(fields["at"], 6)), words


def _weighed(fields: Mapping[str, Value]) -> tuple[str, str]:
    from tracker.measure.yarn import read_scale  # only for a line that tells a weight

    letter, left = fields.get("yarn"), fields["left"]
    if not isinstance(letter, str) or not isinstance(left, str):
        raise EntryError("not a weighing")
    try:
        read_scale(left)
    except ValueError:
        raise EntryError("not a weight") from None
    return letter, left


def _pace(value: Value) -> Pace:
    try:
        return Pace(str(value))
    except ValueError:
        raise EntryError("not a pace") from None


def _asking(value: Value) -> Asking:
    try:
        return Asking(str(value))
    except ValueError:
        raise EntryError("not a way of asking") from None
