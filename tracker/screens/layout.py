"""Where each thing stands on the work screen: its spot depends on the size alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from enum import StrEnum
from functools import lru_cache

from tracker.lean import NamedTuple


class Shape(StrEnum):
    """How the screen is laid out."""

    SMALL = "small"
    BIG = "big"
    ROOMY = "roomy"
    HUGE = "huge"


class Mode(StrEnum):
    """What the screen is for just now, where that changes the layout."""

    WORK = "work"
    TICKS = "ticks"
    LOOPS = "loops"
    HOW = "how"


class Box(NamedTuple):
    """A spot: its column and row from 0, its columns and rows."""

    x: int
    y: int
    width: int
    height: int


Row = tuple[tuple[str, ...], int]
"""Slots side by side and how many rows they have; FILL takes what is left."""

FILL = 0
GAP: Row = ((), 1)

FOOT: Sequence[Row] = ((("notice",), 1), (("last",), 1), (("keyline",), 1))
FOOT_2: Sequence[Row] = ((("notice",), 2), *FOOT[1:])
HEAD: Row = (("head",), 2)
BELOW: Row = (("below",), FILL)
TICKS: Row = (("ticks",), FILL)
PLAIN: Sequence[Row] = (
    HEAD,
    *(((name,), 1) for name in ("step", "aim", "count", "passes")),
)
LETTERS: Sequence[Row] = (HEAD, GAP, (("step", "aim"), 5))
COUNTS: Row = (("count", "passes"), 6)
WIDE: Sequence[Row] = (
    GAP,
    HEAD,
    ((), 2),
    (("step", "aim"), 10),
    ((), 2),
    (("count", "passes"), 11),
    GAP,
    (("picture",), 8),
)

BIG: Sequence[Row] = (*LETTERS, COUNTS, (("words",), 3), (("picture",), 2), BELOW)
PICTURED: Sequence[Row] = (*PLAIN, GAP, (("picture",), 2), (("words",), 3), BELOW, *FOOT)
PICTURED_FROM = 16
"""Rows from which a small screen has room for the picture."""

ROWS: Mapping[tuple[Shape, Mode], Sequence[Row]] = {
    (Shape.SMALL, Mode.WORK): (*PLAIN, (("words",), 2), BELOW, *FOOT),
    (Shape.SMALL, Mode.LOOPS): (*PLAIN, (("words",), 2), BELOW, *FOOT[:2]),
    (Shape.SMALL, Mode.HOW): (*PLAIN, BELOW, *FOOT),
    (Shape.SMALL, Mode.TICKS): (HEAD, TICKS, *FOOT),
    (Shape.BIG, Mode.WORK): (*BIG, *FOOT_2),
    (Shape.BIG, Mode.LOOPS): (*BIG, *FOOT),
    (Shape.BIG, Mode.HOW): (*BIG, *FOOT),
    (Shape.BIG, Mode.TICKS): (HEAD, GAP, TICKS, *FOOT_2),
    (Shape.ROOMY, Mode.WORK): (
        *LETTERS,
        GAP,
        COUNTS,
        GAP,
        (("picture",), 3),
        (("words",), 4),
        BELOW,
        *FOOT_2,
    ),
    (Shape.ROOMY, Mode.TICKS): (HEAD, GAP, TICKS, *FOOT_2),
    (Shape.HUGE, Mode.WORK): (*WIDE, (("words",), 6), ((), 2), BELOW, *FOOT_2, GAP),
    (Shape.HUGE, Mode.TICKS): (GAP, HEAD, ((), 2), TICKS, *FOOT_2, GAP),
}

MARGIN = {Shape.SMALL: 1, Shape.BIG: 1, Shape.ROOMY: 2, Shape.HUGE: 4}
FIRST = {Shape.SMALL: 0, Shape.BIG: 48, Shape.ROOMY: 48, Shape.HUGE: 92}
"""Columns of the first of two slots side by side."""

SIDE = 56
"""Columns for the list of parts on a wide screen."""


def shape_for(width: int, height: int) -> Shape:
    """The layout for a terminal of so many columns and rows."""
    if width < 72 or height < 24:
        return Shape.SMALL
    if width < 84 or height < 30:
        return Shape.BIG
    return Shape.ROOMY if width < 168 or height < 54 else Shape.HUGE


@lru_cache(maxsize=8)
def lay_out(width: int, height: int, mode: Mode) -> Mapping[str, Box]:
    """The spot of each slot that is shown. What the terminal is too low for is left out."""
    shape = shape_for(width, height)
    rows = ROWS.get((shape, mode)) or ROWS[shape, Mode.WORK]
    if (shape, mode) == (Shape.SMALL, Mode.WORK) and height >= PICTURED_FROM:
        rows = PICTURED
    margin = MARGIN[shape]
    inner = width - 2 * margin
    boxes = {}
    if shape is Shape.HUGE:
        inner -= SIDE + margin
        boxes["side"] = Box(2 * margin + inner, 1, SIDE, height - 6)
    boxes |= _stacked(rows, Box(margin, 0, inner, height), FIRST[shape])
    return {name: box for name, box in boxes.items() if box.width > 0 and box.height > 0}


def _stacked(rows: Sequence[Row], whole: Box, first: int) -> dict[str, Box]:
    spare = max(0, whole.height - sum(height for _, height in rows))
    boxes: dict[str, Box] = {}
    y = 0
    for names, wanted in rows:
        height = min(wanted or spare, max(0, whole.height - y))
        boxes.update(_beside(names, whole._replace(y=y, height=height), first))
        y += height
    return boxes


def _beside(names: tuple[str, ...], row: Box, first: int) -> Iterator[tuple[str, Box]]:
    if len(names) == 1:
        yield names[0], row
    elif names:
        yield names[0], row._replace(width=first)
        at = first + 2
        yield names[1], row._replace(x=row.x + at, width=row.width - at)
