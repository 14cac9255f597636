"""Values as lists, texts and numbers, to be kept as JSON, and back.

A list begins with a number that says what it is: a plain tuple, a mapping, a set, or an
object of one of `KINDS`. A class is imported only when an object of it is met.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module

TUPLE, MAPPING, SET = range(3)

_BY_MODULE = {
    "fractions": ("Fraction",),
    "tracker.fabric.steps": ("Kind", "Pass", "Run", "Walk"),
    "tracker.fabric.verdicts": ("Verdict",),
    "tracker.notation.stitches": ("Stitch", "Variant"),
    "tracker.pattern.changes": ("Change",),
    "tracker.pattern.model": ("Fit", "Gauge", "Part", "Pattern", "Worked", "Yarn"),
    "tracker.pattern.plan": ("Plan", "PlannedPart", "PlannedRound"),
    "tracker.session.events": ("Changing", "Event"),
    "tracker.session.items": ("Did", "Stretch", "Walked"),
    "tracker.session.place": ("Asking", "Pace"),
    "tracker.session.state": ("Counts", "Progress", "RoundKey", "Spot", "State", "Weighed"),
}

KINDS = tuple((module, name) for module, names in _BY_MODULE.items() for name in names)
"""The classes of which objects can be kept, by module and name."""

_TAGS = {kind: tag for tag, kind in enumerate(KINDS, start=SET + 1)}


def flat(value: object) -> object:
    """A value as lists, texts and numbers. Raises TypeError for one that cannot be kept."""
    kind = type(value)
    if value is None or kind in (str, int, bool):
        return value
    if isinstance(value, Mapping):
        return [MAPPING, *(flat(one) for pair in value.items() for one in pair)]
    if isinstance(value, frozenset):
        return [SET, *map(flat, value)]
    if kind in (tuple, list):
        return [TUPLE, *map(flat, value)]  # type: ignore[call-overload]
    tag = _TAGS.get((kind.__module__, kind.__qualname__))
    if tag is None:
        raise TypeError(f"{kind.__qualname__} cannot be kept")
    return [tag, *map(flat, _parts(value))]


def _parts(value: object) -> tuple[object, ...]:
    """What an object is made of anew: its fields, or its text."""
    names = getattr(value, "__match_args__", None)
    return (str(value),) if names is None else tuple(getattr(value, name) for name in names)


def raised(kept: object) -> object:
    """The value that `flat` made flat.

    Raises ValueError, TypeError, IndexError or RecursionError where it did not.
    """
    return _raised(kept, _Classes())


class _Classes(dict[int, Callable[..., object]]):
    """What makes the object behind each number."""

    def __missing__(self, tag: int) -> Callable[..., object]:
        module, name = KINDS[tag - SET - 1]
        self[tag] = found = getattr(import_module(module), name)
        made: Callable[..., object] = found
        return made


def _raised(kept: object, classes: _Classes) -> object:
    if not isinstance(kept, list):
        return kept
    tag, *values = (_raised(one, classes) if isinstance(one, list) else one for one in kept)
    if not isinstance(tag, int):
        raise TypeError("a list without a number")
    if tag == TUPLE:
        return tuple(values)
    if tag == MAPPING:
        return dict(zip(values[::2], values[1::2], strict=True))
    return frozenset(values) if tag == SET else classes[tag](*values)
