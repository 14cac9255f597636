"""The log of a piece as a picture: its rounds as they lie on each other, and their time.

Each round is a row, the first one lowest, as the fabric grows: at the left as wide as it has
stitches, so that the rows show the shape of the piece laid flat; at the right its minutes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape

from tracker.notation.problems import visible
from tracker.session.about import spoken_time
from tracker.session.log import Logged, LoggedPart
from tracker.writing.log_text import cut, minutes

ROW, PITCH = 9, 12
"""Units of a row's height, and from row to row."""

LABELS, SHAPE, TIME, GAP, WORDS = 112, 300, 150, 50, 260
"""Units: columns of the labels, the shape, the time, between them, and of what is said."""

MOST_SAID = 46
"""Characters of what is said of a round."""

WIDTH = LABELS + SHAPE + GAP + TIME + GAP + WORDS

LEGEND = (
    "First round lowest. ≠ and orange: otherwise than written. Only outlined: not worked to its "
    "end. Time without pauses."
)

STYLE = """\
text{font:11px 'Helvetica Neue',Helvetica,Arial,'Liberation Sans',sans-serif;fill:#22303c}
.head{font-size:17px;font-weight:600}.part{font-size:13px;font-weight:600}
.quiet{fill:#5d6872}.end{text-anchor:end}.mid{text-anchor:middle}
.sts{fill:#3f7f6b}.off{fill:#c2571a}.part-made{fill:none;stroke:#3f7f6b}
.min{fill:#8a93a6}.rule{stroke:#d8d4ca}"""


def log_picture(title: str, parts: Sequence[LoggedPart]) -> str:
    """The picture as SVG: one block a part, the parts from top to bottom."""
    worked = [part for part in parts if not part.making_up]
    every = [one for part in worked for one in part.rounds]
    most = max((one.stitches or 0 for one in every), default=0) or 1
    longest = max((one.seconds for one in every), default=0) or 1
    body: list[str] = []
    y = 62
    for part in worked:
        height = len(part.rounds) * PITCH
        body.append(_text(12, y, part.name, "part"))
        y += 10
        body.append(_line(LABELS + SHAPE / 2, y - 2, y + height))
        for at, one in enumerate(reversed(part.rounds)):
            body += _row(one, y + at * PITCH, most, longest)
        y += height + 30
    total = spoken_time(sum(one.seconds for part in parts for one in part.rounds))
    head = [
        _text(12, 28, title, "head"),
        _text(LABELS + SHAPE / 2, 46, "stitches", "quiet mid"),
        _text(LABELS + SHAPE + GAP, 46, f"time worked: {total}", "quiet"),
    ]
    legend = _text(12, y, LEGEND, "quiet")
    return _svg(title, y + 16, (*head, *body, legend))


def _row(one: Logged, y: float, most: int, longest: int) -> Iterator[str]:
    """A round: its label, its stitches about the middle, its time, what is said of it."""
    wide = SHAPE * (one.stitches or 0) / most
    left = LABELS + (SHAPE - wide) / 2
    kind = "sts" if one.whole else "part-made"
    long = TIME * one.seconds / longest
    base = y + ROW - 0.5
    at = LABELS + SHAPE + GAP
    yield _text(LABELS - 10, base, one.label, "quiet end")
    yield _box(left, y, wide, f"{'off' if one.changes else kind}", f"{one.stitches} sts")
    yield _text(LABELS + SHAPE + 6, base, f"{one.stitches}{' ≠' * bool(one.changes)}", "quiet")
    yield _box(at, y, long, "min", spoken_time(one.seconds))
    yield _text(at + long + 5, base, minutes(one.seconds), "quiet")
    said = "; ".join((*one.changes, *one.weighed, *one.notes))
    yield _text(at + TIME + GAP + 12, base, cut(said, MOST_SAID), "")


def _svg(title: str, height: float, body: Sequence[str]) -> str:
    size = f'viewBox="0 0 {WIDTH} {height:g}" width="{WIDTH}" height="{height:g}"'
    lines = (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" {size}>',
        f"<title>{_safe(title)}: stitches and time of every round</title>",
        f"<style>{STYLE}</style>",
        f'<rect width="{WIDTH}" height="{height:g}" fill="#fdfcf9"/>',
        *(one for one in body if one),
        "</svg>",
    )
    return "\n".join(lines) + "\n"


def _text(x: float, y: float, words: str, kind: str) -> str:
    return f'<text x="{x:g}" y="{y:g}" class="{kind}">{_safe(words)}</text>' if words else ""


def _box(x: float, y: float, width: float, kind: str, told: str) -> str:
    if not width:
        return ""
    size = f'x="{x:.1f}" y="{y:g}" width="{width:.1f}" height="{ROW}" rx="1.5"'
    return f'<rect {size} class="{kind}"><title>{_safe(told)}</title></rect>'


def _line(x: float, top: float, bottom: float) -> str:
    return f'<line x1="{x:g}" x2="{x:g}" y1="{top:g}" y2="{bottom:g}" class="rule"/>'


def _safe(words: str) -> str:
    return escape(visible(words))
