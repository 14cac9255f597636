"""``hookside tables``: hooks, yarn weights and heads, with their sources and differences."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from tracker.cli import Complaint
from tracker.measure.heads import NOT_A_CHECK, Head, depth_source, ease_habits, heads_of, makers
from tracker.measure.hooks import Hook, hook_sources, hooks, hooks_called
from tracker.measure.units import plain, read_number, shown
from tracker.measure.yarn_weights import (
    GUIDELINE,
    YarnWeight,
    weights_at,
    yarn_sources,
    yarn_weights,
)
from tracker.notation.problems import visible

AGES = ("newborn", "3 months", "6 months", "9 months", "12 months", "18 months")
YEARS = ("2 years", "3 years", "4 years", "5 years")


def tables(which: str, word: str | None, unit: str, *, as_json: bool) -> int:
    """Print one table, or what a word means in it. Raises `Complaint`: no such word."""
    lines, data = {"hooks": _hooks, "yarns": _yarns, "heads": _heads}[which](word, unit)
    print(json.dumps(data, indent=2) if as_json else "\n".join(map(visible, lines)))
    return 0


def _hooks(word: str | None, _unit: str) -> tuple[Iterator[str], Any]:
    found = hooks() if word is None else hooks_called(word)
    if not found:
        raise Complaint(f'no hook is called "{word}": give mm or a name, such as "5 mm" or H-8')
    return _hook_lines(found, several=word is not None), [hook_data(one) for one in found]


def _hook_lines(found: tuple[Hook, ...], *, several: bool) -> Iterator[str]:
    yield from map(hook_line, found)
    if several and len(found) > 1:
        yield "Makers give this name to each of these: go by the millimetres."
    yield ""
    yield "The millimetre is the size; names are makers' and differ. Read from"
    yield from (f"  {source}" for source in hook_sources())


def hook_line(one: Hook) -> str:
    """A hook with all its names: "5 mm: US H-8, UK 6"."""
    words = [_named("US steel" if one.steel else "US", one.us, one.us_also)]
    words.append(_named("UK", one.uk, one.uk_also))
    names = ", ".join(word for word in words if word) or "no name"
    return f"{plain(one.mm)} mm: {names}{f' ({one.note})' if one.note else ''}"


def _named(side: str, agreed: str, others: tuple[str, ...]) -> str:
    if not others:
        return f"{side} {agreed}" if agreed else ""
    also = f"{', '.join(others)} by some"
    return f"{side} {agreed}, {also}" if agreed else f"{side} {also}"


def hook_data(one: Hook) -> dict[str, Any]:
    """A hook as plain data."""
    return {
        "mm": float(one.mm),
        "us": one.us,
        "us_also": one.us_also,
        "uk": one.uk,
        "uk_also": one.uk_also,
        "steel": one.steel,
        "note": one.note,
    }


def _yarns(word: str | None, _unit: str) -> tuple[Iterator[str], Any]:
    found = yarn_weights() if word is None else _yarns_called(word)
    return _yarn_lines(found), [_yarn_data(one) for one in found]


def _yarns_called(word: str) -> tuple[YarnWeight, ...]:
    """The classes of a name or kind, or those in whose band a number of sc in 4 in lies."""
    sts = read_number(word.lower().removesuffix("sts").removesuffix("sc"))
    low = word.strip().lower()
    named = tuple(
        one for one in yarn_weights() if low in (one.name.lower(), *one.kinds.lower().split(", "))
    )
    found = named or (weights_at(sts) if sts is not None else ())
    if not found:
        raise Complaint(f'no yarn class is called "{word}": give a name or sc in 10 cm, such as 14')
    return found


def _yarn_lines(found: tuple[YarnWeight, ...]) -> Iterator[str]:
    for one in found:
        sts = f"{one.from_sts} to {one.to_sts}" if one.from_sts else f"{one.to_sts} and fewer"
        note = f" ({one.note})" if one.note else ""
        yield f"{one.number} {one.name} ({one.kinds}): {sts} sc, hook {_hook_range(one)}{note}"
    yield ""
    yield f"Single crochet (US) in 4 in (10 cm). {GUIDELINE}"
    yield from (f"  {source}" for source in yarn_sources())


def _hook_range(one: YarnWeight) -> str:
    if one.to_mm is None:
        return f"{plain(one.from_mm)} mm and larger"
    return f"{plain(one.from_mm)} to {plain(one.to_mm)} mm"


def _yarn_data(one: YarnWeight) -> dict[str, Any]:
    return {
        "class": one.number,
        "name": one.name,
        "kinds": one.kinds.split(", "),
        "sc_in_10_cm": [one.from_sts, one.to_sts],
        "hook_mm": [float(one.from_mm), None if one.to_mm is None else float(one.to_mm)],
        "note": one.note,
    }


def _heads(word: str | None, unit: str) -> tuple[Iterator[str], Any]:
    if word is not None:
        try:
            found = [(word, heads_of(word))]
        except ValueError as error:
            raise Complaint(str(error)) from None
    else:
        found = [(age, heads_of(age)) for age in (*AGES, *YEARS)]
        found += [("", (one,)) for one in makers()]
    data = [_head_data(age, head) for age, heads in found for head in heads]
    return _head_lines(found, unit), data


def _head_lines(found: list[tuple[str, tuple[Head, ...]]], unit: str) -> Iterator[str]:
    for age, heads in found:
        for one in heads:
            who = f"{age}, {one.who}" if one.infant else one.who
            other = f" (but {one.other})" if one.other else ""
            low, high = (shown(length, unit) for length in (one.low, one.high))
            yield f"{who}: {shown(one.middle, unit)}, most {low} to {high}{other}"
    yield ""
    yield f"Makers make a hat 4/10 of the head deep, crown to ear ({depth_source()}), and work it"
    yield from (f"  {words} ({source})" for words, source in ease_habits())
    sources = dict.fromkeys(one.source for _, heads in found for one in heads)
    yield from ("Read from", *(f"  {source}" for source in sources), NOT_A_CHECK)


def _head_data(age: str, one: Head) -> dict[str, Any]:
    def figure(length: Fraction) -> float:
        return round(float(length), 2)

    return {
        "age": age or one.who,
        "who": one.who,
        "low_cm": figure(one.low),
        "middle_cm": figure(one.middle),
        "high_cm": figure(one.high),
        "source": one.source,
        "other": one.other,
    }
