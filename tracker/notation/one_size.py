"""A round written for several sizes -> the same round for one or some of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar, cast

from tracker.notation.round_text import RoundText, Stated
from tracker.notation.stitches import Stitch
from tracker.notation.tree import Figure

Part = TypeVar("Part")

_FIGURES = ("Figure", "Figure | None")


def in_one_size(read: RoundText, index: int) -> RoundText:
    """The round with each figure that has one number a size cut down to size ``index``."""
    return _narrowed(read, (index,))


def stated_in(stated: Stated | None, index: int) -> Stated | None:
    """A printed count in one size."""
    return _narrowed(stated, (index,))


def figure_in(figure: Figure, index: int) -> Figure:
    """A figure in one size; a figure of one number holds for all."""
    return _chosen(figure, (index,))


def in_sizes(read: RoundText, which: Sequence[int]) -> RoundText:
    """The round with each figure cut down to the sizes ``which``."""
    return _narrowed(read, which)


def stated_in_sizes(stated: Stated | None, which: Sequence[int]) -> Stated | None:
    """A printed count in the sizes ``which``."""
    return _narrowed(stated, which)


def _chosen(figure: Figure, which: Sequence[int]) -> Figure:
    if len(figure) <= max(which, default=0):
        return figure[:1] if len(which) == 1 or len(figure) != len(which) else figure
    return tuple(figure[i] for i in which)


def _narrowed(part: Part, which: Sequence[int]) -> Part:
    if not is_dataclass(part) or isinstance(part, type):
        return part
    changed: dict[str, object] = {}
    for field in fields(part):
        value = getattr(part, field.name)
        if field.type in _FIGURES:
            changed[field.name] = value and _chosen(value, which)
        elif isinstance(part, Stated) and field.name == "parts":
            changed[field.name] = tuple((what, _chosen(n, which)) for what, n in value)
        elif isinstance(value, tuple) and not isinstance(value, Stitch):
            changed[field.name] = tuple(_narrowed(one, which) for one in value)
        elif is_dataclass(value):
            changed[field.name] = _narrowed(value, which)
    return cast("Part", replace(cast("Any", part), **changed))
