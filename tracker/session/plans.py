"""Plans kept as text, so that a piece opens without counting its pattern anew."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import TYPE_CHECKING
from zlib import crc32

from tracker.session.kept import keep, kept

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan

TUPLE = 0
"""Marks a tuple; other numbers mark a class of `_classes`."""


def kept_plan(source: str, size: str) -> Plan | None:
    """The plan kept for a pattern's TOML text in a size, or None."""
    body = kept(_name(source, size))
    if body is None:
        return None
    try:
        of_size, flat = json.loads(body)
        classes = _classes()
        plan = _raised(flat, (tuple, *classes))
    except (ValueError, TypeError, IndexError, AssertionError, RecursionError):
        return None
    if of_size != size or not isinstance(plan, classes[-1]):
        return None
    found: Plan = plan  # type: ignore[assignment]
    return found if found.pattern.source == source else None


def keep_plan(plan: Plan, source: str, size: str) -> None:
    """Keep a plan for the next time."""
    tags = {kind: tag for tag, kind in enumerate(_classes(), start=1)}
    body = json.dumps([size, _flat(plan, tags)], separators=(",", ":"))
    keep(_name(source, size), body.encode())


def _name(source: str, size: str) -> str:
    return f"{crc32(source.encode(), crc32(size.encode())):08x}.plan"


def _classes() -> tuple[type, ...]:
    """Everything a plan is made of, the plan itself last."""
    from fractions import Fraction

    from tracker.fabric.steps import Kind, Pass, Run, Walk
    from tracker.fabric.verdicts import Verdict
    from tracker.notation.stitches import Stitch, Variant
    from tracker.pattern.model import Fit, Gauge, Part, Pattern, Worked, Yarn
    from tracker.pattern.plan import Plan, PlannedPart, PlannedRound

    values = (Fraction, Kind, Verdict, Worked)
    parts = (Pass, Run, Walk, Stitch, Variant, Gauge, Fit, Part, Pattern, Yarn)
    return (*values, *parts, PlannedPart, PlannedRound, Plan)


def _flat(value: object, tags: dict[type, int]) -> object:
    """A value as lists, texts and numbers: a list begins with the number of its class."""
    kind = type(value)
    if value is None or kind in (str, int, bool):
        return value
    if isinstance(value, tuple | list):
        return [TUPLE, *(_flat(one, tags) for one in value)]
    fields = getattr(kind, "__dataclass_fields__", None)
    if fields is None:
        return [tags[kind], str(value)]
    names = [name for name in fields if not name.startswith("_")]
    return [tags[kind], *(_flat(getattr(value, name), tags) for name in names)]


def _raised(flat: object, classes: tuple[Callable[..., object], ...]) -> object:
    """The value that `_flat` made flat."""
    if not isinstance(flat, list):
        return flat
    parts = [_raised(one, classes) if isinstance(one, list) else one for one in flat]
    kind, *values = parts
    assert isinstance(kind, int)
    return tuple(values) if kind == TUPLE else classes[kind](*values)
