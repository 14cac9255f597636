"""Block letters and figures, five rows tall, drawn for this program.

Two columns make a stroke, half blocks round the corners. Letters are capitals only: the
words themselves always stand beside them as they are written. A full stop is a blank.
"""

from __future__ import annotations

from functools import cache

ROWS = 5

_DRAWN = """
0 ▄████▄|██  ██|██  ██|██  ██|▀████▀
1 .▄██  |▀▀██  |  ██  |  ██  |██████
2 ▄████▄|▀▀  ██| ▄▄██▀|██▀   |██████
3 ▄████▄|▀▀  ██|  ███ |▄▄  ██|▀████▀
4 ██  ██|██  ██|▀█████|    ██|    ██
5 ██████|██    |█████▄|▄▄  ██|▀████▀
6 ▄████▄|██    |█████▄|██  ██|▀████▀
7 ██████|   ▄█▀|  ▄█▀ | ▄█▀  | ██
8 ▄████▄|██  ██| ████ |██  ██|▀████▀
9 ▄████▄|██  ██|▀█████|▄▄  ██|▀████▀
a ▄████▄|██  ██|██████|██  ██|██  ██
b █████▄|██  ██|█████ |██  ██|█████▀
c ▄████▄|██  ▀▀|██    |██  ▄▄|▀████▀
d █████▄|██  ██|██  ██|██  ██|█████▀
e ██████|██    |█████ |██    |██████
f ██████|██    |█████ |██    |██
g ▄████▄|██    |██ ▄██|██  ██|▀████▀
h ██  ██|██  ██|██████|██  ██|██  ██
i ██|██|██|██|██
j ....██|    ██|    ██|██  ██|▀████▀
k ██  ██|██ ▄█▀|████  |██ ▀█▄|██  ██
l ██   |██   |██   |██   |█████
m ██▄  ▄██|███▄▄███|██ ██ ██|██    ██|██    ██
n ██▄  ██|███▄ ██|██▀█▄██|██ ▀███|██  ▀██
o ▄████▄|██  ██|██  ██|██  ██|▀████▀
p █████▄|██  ██|█████▀|██    |██
q ▄████▄|██  ██|██  ██|██ ▄██|▀███▀█
r █████▄|██  ██|█████▀|██ ▀█▄|██  ██
s ▄█████|██    |▀████▄|    ██|█████▀
t ██████|  ██  |  ██  |  ██  |  ██
u ██  ██|██  ██|██  ██|██  ██|▀████▀
v ██  ██|██  ██|██  ██|▀█▄▄█▀| ▀██▀
w ██    ██|██    ██|██ ██ ██|███▀▀███|██▀  ▀██
x ██  ██|▀█▄▄█▀|  ██  |▄█▀▀█▄|██  ██
y ██  ██|▀█▄▄█▀|  ██  |  ██  |  ██
z ██████|   ▄█▀| ▄█▀  |█▀    |██████
- ....|    |████|    |
? ▄████▄|▀▀  ██|  ▄██▀|  ▀▀  |  ██
( ▄█|█▀|█ |█▄|▀█
) █▄|▀█| █|▄█|█▀
, ..|  |  |██|▄▀
. ..|  |  |  |██
+ ......|  ██  |██████|  ██  |
' ██|▀ |  |  |
"""


def _read(drawn: str) -> dict[str, tuple[str, ...]]:
    glyphs = {" ": ("   ",) * ROWS}
    for line in drawn.strip("\n").splitlines():
        rows = line[2:].replace(".", " ").split("|")
        wide = max(map(len, rows))
        glyphs[line[0]] = tuple(row.ljust(wide) for row in rows)
    return glyphs


GLYPHS = _read(_DRAWN)


@cache
def block(text: str, scale: int = 1) -> tuple[str, ...] | None:
    """The text in block letters, a string a row; None where a character is not drawn.

    ``scale`` 2 doubles both ways: ten rows tall.
    """
    drawn = [GLYPHS.get(char) for char in text.lower()]
    if not text or None in drawn:
        return None
    rows = tuple(" ".join(glyph[row] for glyph in drawn if glyph) for row in range(ROWS))
    return rows if scale == 1 else _doubled(rows)


def _doubled(rows: tuple[str, ...]) -> tuple[str, ...]:
    upper = str.maketrans("▀▄█", "█ █")
    lower = str.maketrans("▀▄█", " ██")
    halves = (row.translate(half) for row in rows for half in (upper, lower))
    return tuple("".join(char * 2 for char in half) for half in halves)


def width_of(text: str, scale: int = 1) -> int | None:
    """Columns that the text takes in block letters; None where it cannot be drawn."""
    rows = block(text, scale)
    return None if rows is None else len(rows[0])
