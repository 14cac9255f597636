"""The shapes of the round's picture as characters, small and tall.

Worked and to come differ by form: heavy lines and filled shapes against light and hollow
ones. What grows opens upward from one foot, what closes stands on several feet.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import lru_cache

from tracker.lean import NamedTuple
from tracker.screens.picture_signs import Look, Sign


class Marks(NamedTuple):
    """A set of characters; of two together the first is to come, the second worked.

    ``lean`` has to the left, upright and to the right; ``arch`` its two ends and its top;
    ``curl`` the two ends of a wide foot.
    """

    one: Mapping[Look, str]
    lean: tuple[str, str, str]
    legs: tuple[str, str]
    arch: tuple[str, str, str, str]
    line: str
    foot: str
    curl: str
    here: str

    def __hash__(self) -> int:
        return id(self)  # there are two of them, and what is in them has no hash


LINES = Marks(
    one={
        Look.POST: "│┃",
        Look.FRONT: "├┣",
        Look.BACK: "┤┫",
        Look.TEXTURE: "◇◆",
        Look.LOW: "╷╻",
        Look.LINK: "○●",
        Look.JOIN: "◎◉",
        Look.TURN: "↩↩",
        Look.FASTEN: "□■",
        Look.MARKER: "△▲",
        Look.SENTENCE: "≡≡",
        Look.COLOUR: "»»",
    },
    lean=("╲╲", "│┃", "╱╱"),
    legs=("╱", "╲"),
    arch=("╭", "╮", "─", "│"),
    line="─━",
    foot="┴┻",
    curl="╰╯",
    here="▼",
)

LETTERS = Marks(
    one={
        Look.POST: ":|",
        Look.FRONT: "ff",
        Look.BACK: "bb",
        Look.TEXTURE: "*@",
        Look.LOW: "..",
        Look.LINK: "oO",
        Look.JOIN: "&&",
        Look.TURN: "<<",
        Look.FASTEN: "xX",
        Look.MARKER: "^^",
        Look.SENTENCE: "==",
        Look.COLOUR: ">>",
    },
    lean=("\\\\", ":|", "//"),
    legs=("/", "\\"),
    arch=("(", ")", "-", "|"),
    line="-=",
    foot="+#",
    curl="++",
    here="v",
)
"""For terminals whose font has no shapes, such as the console of Linux."""


def marks_for(environ: Mapping[str, str]) -> Marks:
    """Which characters the terminal can show."""
    return LETTERS if environ.get("TERM") in ("linux", "dumb", "vt100") else LINES


class Drawn(NamedTuple):
    """One step: rows of equal width from the top down, and the foot it stands on."""

    rows: tuple[str, ...]
    foot: str

    @property
    def width(self) -> int:
        """Columns, with the gap to the next step."""
        return len(self.foot)

    @property
    def lit(self) -> int:
        """Columns to light when the step is the current one: those without the gap."""
        left = min(len(row) - len(row.lstrip()) for row in self.rows if row.strip())
        drawn = max(len(row.rstrip()) for row in self.rows)
        return min(drawn + left, self.width)


@lru_cache(maxsize=4096)
def small(sign: Sign, worked: bool, pitch: int, marks: Marks) -> Drawn:
    """A step in one row; ``pitch`` columns from stitch to stitch (1 or 2)."""
    body, feet = _small(sign, worked, pitch, marks)
    width = len(body) + pitch - 1
    return Drawn((body.ljust(width),), foot_line(width, feet, worked, marks))


def _small(sign: Sign, worked: bool, pitch: int, marks: Marks) -> tuple[str, tuple[int, ...]]:
    """The step's characters, and the columns of its feet."""
    if sign.look is Look.GROW:
        return _small_fan(sign, worked, pitch, marks)
    if sign.look is Look.CLOSE:
        number = str(sign.number) if sign.number > 2 else ""
        body = marks.legs[0] + number + marks.legs[1]
        return body, tuple(range(len(body)))
    if sign.look is Look.SPACE:
        body = f"{marks.arch[0]}{sign.number}{marks.arch[1]}"
        return body, (len(body) // 2,) if sign.rooted else ()
    return marks.one[sign.look][worked] + sign.words, (0,) if stands(sign) else ()


def _small_fan(sign: Sign, worked: bool, pitch: int, marks: Marks) -> tuple[str, tuple[int, ...]]:
    if sign.of == 0:
        return marks.lean[sign.nth][worked], ()
    if sign.number > 1:
        fan = [marks.lean[lean(nth, sign.number)][worked] for nth in range(sign.number)]
        return (" " * (pitch - 1)).join(fan), ((sign.number - 1) * pitch // 2,)
    centre = (sign.of - 1) * pitch // 2
    feet = (centre % pitch,) if centre // pitch == sign.nth else ()
    return marks.lean[lean(sign.nth, sign.of)][worked], feet


def lean(nth: int, of: int) -> int:
    """How the ``nth`` of ``of`` stitches from one foot leans: 0 left, 1 upright, 2 right."""
    middle = 2 * nth - (of - 1)
    return 1 if middle == 0 else 0 if middle < 0 else 2


def stands(sign: Sign) -> bool:
    """Whether the step stands on the round below by itself."""
    return sign.look in (Look.POST, Look.FRONT, Look.BACK, Look.TEXTURE, Look.LOW)


def foot_line(width: int, feet: tuple[int, ...], worked: bool, marks: Marks) -> str:
    """The edge of the round below under a step."""
    line = [marks.line[worked]] * width
    for at in feet:
        if at < width:
            line[at] = marks.foot[worked]
    return "".join(line)


TALL = 5
"""Rows of the tallest stitch."""

PITCH = 4
"""Columns from stitch to stitch in the tall picture."""


@lru_cache(maxsize=4096)
def tall(sign: Sign, worked: bool, height: int, marks: Marks) -> Drawn:
    """A step in five rows, as high as the stitch is."""
    if sign.look is Look.GROW:
        return _tall_fan(sign, worked, height, marks)
    if sign.look is Look.CLOSE:
        return _tall_close(sign, worked, marks)
    if sign.look is Look.SPACE:
        number = str(sign.number)
        left, right, top, side = marks.arch
        rows = (left + top * (len(number) + 2) + right, f"{side} {number} {side}")
        feet = (len(rows[0]) // 2,) if sign.rooted else ()
        return _set(rows, len(rows[0]) + 1, feet, worked, marks)
    body = marks.one[sign.look][worked] + sign.words
    if not stands(sign) or sign.look is Look.LOW:
        wide = max(3, len(body) + 2) if sign.look is not Look.LINK else 2
        return _set(("", body) if wide > 2 else (body,), wide, (), worked, marks, left=wide > 2)
    post = marks.one[Look.POST][worked]
    rest = post if sign.look is Look.TEXTURE else body
    return _set((" " + body, *[" " + rest] * (height - 1)), PITCH, (1,), worked, marks)


def _tall_close(sign: Sign, worked: bool, marks: Marks) -> Drawn:
    """Three rows, two legs, and how many are closed together where it is more than two."""
    left, right = marks.legs
    number = str(sign.number) if sign.number > 2 else ""
    rows = (f"  {left}{right}  ", f" {left}  {right} ", f"{left}{number:^4}{right}")
    return _set(rows, 8, (0, 5), worked, marks)


def _tall_fan(sign: Sign, worked: bool, height: int, marks: Marks) -> Drawn:
    """Upright above, leaning to the common foot in the two lowest rows."""
    if sign.number > 1:
        each = [
            tall(Sign(Look.GROW, nth, sign.number), worked, height, marks)
            for nth in range(sign.number)
        ]
        rows = tuple("".join(parts) for parts in zip(*(d.rows for d in each), strict=True))
        return Drawn(rows, "".join(d.foot for d in each))
    way = sign.nth if sign.of == 0 else lean(sign.nth, sign.of)
    post, slant = marks.one[Look.POST][worked], marks.lean[way][worked]
    low = {0: (" " + slant, "  " + slant), 1: (" " + post,) * 2, 2: (" " + slant, slant)}[way]
    drawn = _set((*[" " + post] * (height - 2), *low), PITCH, (), worked, marks)
    return drawn._replace(foot=_fan_foot(sign, worked, marks)) if sign.of else drawn


def _fan_foot(sign: Sign, worked: bool, marks: Marks) -> str:
    """The part of the common foot that lies under this stitch."""
    line = [marks.line[worked]] * PITCH
    if sign.of > 2 and sign.nth == 0:
        line[3] = marks.curl[0]
    if sign.of > 2 and sign.nth == sign.of - 2:
        line[3] = marks.curl[1]
    centre = (sign.of - 1) * PITCH // 2 + 1
    if centre // PITCH == sign.nth:
        line[centre % PITCH] = marks.foot[worked]
    return "".join(line)


def _set(
    rows: tuple[str, ...],
    width: int,
    feet: tuple[int, ...],
    worked: bool,
    marks: Marks,
    *,
    left: bool = False,
) -> Drawn:
    """Rows set on the ground; ``left`` leaves one column before them."""
    above = ("",) * (TALL - len(rows))
    set_rows = tuple(((" " if left else "") + row).ljust(width) for row in (*above, *rows))
    return Drawn(set_rows, foot_line(width, feet, worked, marks))


def own_marks() -> Marks:
    """The characters for the terminal that the program runs on."""
    return marks_for(os.environ)
