"""Crochet hooks: the millimetre is the size; the names that makers give differ."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from tracker.measure.reference import reference
from tracker.measure.units import read_amount, read_number


@dataclass(frozen=True, slots=True)
class Hook:
    """One diameter and what it is called.

    Attributes:
        mm: the diameter in mm.
        us, uk: the name that most sources read give it; "" where they differ or none does.
        us_also, uk_also: other names read for the same diameter.
        note: where the sources differ, in words.
        steel: whether it is one of the fine steel hooks, which are numbered by themselves.
    """

    mm: Fraction
    us: str = ""
    uk: str = ""
    us_also: tuple[str, ...] = ()
    uk_also: tuple[str, ...] = ()
    note: str = ""
    steel: bool = False


def hooks() -> tuple[Hook, ...]:
    """Every hook of the table, from fine to thick; steel ones last."""
    table = reference("hooks")
    return tuple(
        Hook(
            mm=row["mm"],
            us=row.get("us", ""),
            uk=row.get("uk", ""),
            us_also=tuple(row.get("us_also", ())),
            uk_also=tuple(row.get("uk_also", ())),
            note=row.get("note", ""),
            steel=steel,
        )
        for steel, kind in ((False, "hook"), (True, "steel"))
        for row in table[kind]
    )


def hook_sources() -> tuple[str, ...]:
    """The charts that the table was read from."""
    return tuple(reference("hooks")["sources"].values())


def hooks_called(word: str) -> tuple[Hook, ...]:
    """The hooks that a word may mean: "5 mm", "H-8", "H", "US 7", "UK 6", "steel 7".

    Several where makers differ, or where a bare number may be a name or millimetres; none
    where no table has it.
    """
    low = " ".join(word.lower().replace("/", "-").split())
    try:
        mm = read_amount(low)
    except ValueError:
        bare = read_number(low)
        metric = tuple(one for one in hooks() if one.mm == bare)
        return tuple(dict.fromkeys((*_named(low), *metric)))
    return tuple(one for one in hooks() if mm.unit == "mm" and one.mm == mm.number)


def _named(low: str) -> tuple[Hook, ...]:
    found = re.fullmatch(r"(?:(us|uk|british|steel)\s+)?(?:size\s+)?(.+)", low)
    kind, name = (found[1] or "", found[2]) if found else ("", low)
    return tuple(one for one in hooks() if any(_same(name, known) for known in _names(one, kind)))


def _names(one: Hook, kind: str) -> tuple[str, ...]:
    """The names of a hook on one side of the sea, or on both."""
    if one.steel or kind == "steel":
        return (one.us,) if one.steel and kind != "uk" else ()
    us = () if kind in ("uk", "british") else (one.us, *one.us_also)
    uk = () if kind == "us" else (one.uk, *one.uk_also)
    return (*us, *uk)


def _same(name: str, known: str) -> bool:
    """Whether a name is the one known, or its letter alone."""
    whole = known.lower().replace("/", "-")
    letters = re.match(r"[a-z]+(?:-[a-z]+)*", whole)
    return bool(known) and (name == whole or bool(letters and name == letters[0]))
