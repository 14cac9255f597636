"""A part's chart as SVG: bands, stitches, round numbers and a legend."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from tracker.pattern.model import Pattern, Worked, Yarn
from tracker.writing.chart.frames import Lines, Point
from tracker.writing.chart.knots import Knots, seen
from tracker.writing.chart.laid import Base, Laid, Placed, mirrored
from tracker.writing.chart.legend import Entry, legend
from tracker.writing.chart.measures import half_of, number_of
from tracker.writing.chart.setting import lay_out
from tracker.writing.chart.signs import Stroke, strokes

#: Inks for yarns, by their order in the pattern; dark enough for paper, and apart in grey.
INKS = ("#16202e", "#b0341c", "#1f6f8b", "#6b7a12", "#7a3b8f", "#8a5a00")
_BAND = "#f3efe6"
_FAINT = "#8f8a80"
_MARGIN = 1.6
_NARROWEST = 30
"""Units that a chart is wide at least, so that its legend has room."""

_UNIT, _PAGE = 4.0, 180.0
"""Millimetres of a unit, if the whole is not wider than a page has room for."""

_LEGEND = 2.8
"""Millimetres of a unit of the legend."""

_STYLE = (
    "text{font-family:'Helvetica Neue',Helvetica,Arial,'Liberation Sans',sans-serif;fill:#16202e}"
    ".st{fill:none;stroke-width:.11;stroke-linecap:round;stroke-linejoin:round}"
    ".st .full{stroke:none}.number{fill:#fff}"
)


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart.

    Attributes:
        svg: the drawing.
        words: what is to be said of it.
        rest: why it is not whole; "" if it is.
    """

    svg: str
    words: str
    rest: str = ""


def chart(knots: Knots, pattern: Pattern, title: str, *, left: bool = False) -> Chart:
    """The chart of a part. There is at least one round.

    ``left``: for a left-handed maker, who works the other way round.
    """
    base, rounds = lay_out(knots)
    if left:
        base, rounds = mirrored(base, rounds)
    return _Drawing(knots, pattern, title, base, rounds, left=left).chart()


class _Drawing:
    def __init__(
        self,
        knots: Knots,
        pattern: Pattern,
        title: str,
        base: Base,
        rounds: Sequence[Laid],
        *,
        left: bool,
    ) -> None:
        self.left = left
        self.knots = knots
        self.pattern = pattern
        self.title = title
        self.base = base
        self.rounds = rounds
        self.inks = {yarn.letter: INKS[n % len(INKS)] for n, yarn in enumerate(pattern.yarns)}
        self.own = {abbr: n for n, abbr in enumerate(knots.own)}
        self.closed = knots.worked is not Worked.ROWS

    def chart(self) -> Chart:
        left, top, right, bottom = self._bounds()
        entries = legend(self.knots, self.rounds, self.pattern)
        below, high = self._legend(entries, left, right, bottom + 1.4)
        width, height = right - left, bottom + 1.4 + high - top
        words = self._words()
        unit = min(_UNIT, _PAGE / width)
        box = f"{left:.2f} {top:.2f} {width:.2f} {height:.2f}"
        size = f'width="{width * unit:.1f}mm" height="{height * unit:.1f}mm"'
        body = [
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="{box}" {size}>',
            f"<title>{escape(self.title)}</title><desc>{escape(words)}</desc>",
            f"<style>{_STYLE}</style>",
            f'<path d="M{left:.2f} {top:.2f}h{width:.2f}v{height:.2f}h{-width:.2f}Z" fill="#fff"/>',
            *self._bands(),
            *self._base(),
            *self._rounds(),
            *below,
            "</svg>",
        ]
        return Chart("\n".join(body) + "\n", words, self.knots.rest)

    def _bounds(self) -> tuple[float, float, float, float]:
        points = [p for laid in self.rounds for p in (*laid.edge, laid.number, *laid.seam)]
        points += [p for laid in self.rounds for one in laid.placed for p in one.line]
        points += [*self.base.edge, Point(0, 0), *(_around(self.rounds[-1]) if self.closed else ())]
        xs, ys = [p.x for p in points], [p.y for p in points]
        more = max(0.0, _NARROWEST - (max(xs) - min(xs))) / 2 + _MARGIN
        return min(xs) - more, min(ys) - _MARGIN, max(xs) + more, max(ys) + _MARGIN

    def _words(self) -> str:
        clock = "with the clock, for left-handed makers" if self.left else "against the clock"
        hand = ", for left-handed makers" if self.left else ""
        way = {
            Worked.JOINED: f"Joined rounds, from the middle outward, {clock}.",
            Worked.SPIRAL: f"A spiral, {clock}: each round begins where the one before it ends.",
            Worked.ROWS: f"Rows, read upward; each begins at its number{hand}.",
        }[self.knots.worked]
        again = [laid.round.label for laid in self.rounds if laid.round.again]
        said = [way, "Drawn as seen from the right side."]
        if any(laid.wrong and seen(k) != k for laid in self.rounds for k in laid.round.knots):
            said.append("So what is worked in front on the wrong side is drawn as behind.")
        said += [f"{label} is drawn once; work it to its length." for label in again]
        return " ".join([*said, self.knots.rest]).strip()

    # --- what lies behind ---------------------------------------------------------------

    def _bands(self) -> Iterator[str]:
        """Every other round on a pale ground."""
        ground: list[str] = []
        for nth, laid in enumerate(self.rounds):
            if nth % 2 == 0 or laid.round.knots[0].sign == "ch":
                continue
            below = self.rounds[nth - 1]
            ground.append(self._band(below, laid))
        if ground:
            yield f'<path d="{"".join(ground)}" fill="{_BAND}" fill-rule="evenodd"/>'

    def _band(self, below: Laid, laid: Laid) -> str:
        if isinstance(laid.frame, Lines):
            xs = [p.x for p in (*below.edge, *laid.edge)]
            left, right = min(xs) - 0.7, max(xs) + 0.7
            return f"M{left:.2f} {-below.out:.2f}H{right:.2f}V{-laid.out:.2f}H{left:.2f}Z"
        return _outline(below) + _outline(laid)

    def _base(self) -> Iterator[str]:
        if self.base.ring:
            radius = self.base.ring * 0.72
            yield f'<circle r="{radius:.2f}" fill="none" stroke="#16202e" stroke-width=".11"/>'
        if self.base.edge:
            dots = "".join(f"M{p.x:.2f} {p.y:.2f}h0" for p in self.base.edge)
            yield (
                f'<path class="base" d="{dots}" stroke="{_FAINT}" stroke-width=".26" '
                'stroke-linecap="round"/>'
            )

    # --- rounds -------------------------------------------------------------------------

    def _rounds(self) -> Iterator[str]:
        for nth, laid in enumerate(self.rounds):
            yield f'<g class="round" data-round="{nth}" data-label="{escape(laid.round.label)}">'
            for placed in laid.placed:
                if placed.knot.sign == "fasten" and nth + 1 < len(self.rounds):
                    continue
                yield self._knot(placed, wrong=laid.wrong)
            yield from self._number(laid)
            yield "</g>"

    def _knot(self, placed: Placed, *, wrong: bool) -> str:
        knot = seen(placed.knot) if wrong else placed.knot
        ink = self.inks.get(knot.colour, INKS[0])
        own = self.own.get(knot.own, 0)
        drawn = list(strokes(knot, placed.feet, placed.heads, placed.line, own))
        made = f' data-made="{knot.made}"' if knot.made else ""
        about = f'class="st" data-sign="{escape(knot.sign)}"{made} stroke="{ink}"'
        return f"<g {about}>{paths(drawn, ink)}</g>"

    def _number(self, laid: Laid) -> Iterator[str]:
        words = number_of(laid.round.label)
        if not words:
            return
        ink = self.inks.get(next((k.colour for k in laid.round.knots if k.made), ""), INKS[0])
        x, y = laid.number
        half = half_of(words)
        yield (
            f'<rect x="{x - half:.2f}" y="{y - 0.52:.2f}" width="{2 * half:.2f}" height="1.04" '
            f'rx=".52" fill="{ink}"/><text class="number" x="{x:.2f}" y="{y + 0.29:.2f}" '
            f'text-anchor="middle" font-size=".8" font-weight="700">{escape(words)}</text>'
        )

    # --- legend -------------------------------------------------------------------------

    def _legend(
        self, entries: Sequence[Entry], left: float, right: float, top: float
    ) -> tuple[list[str], float]:
        """The legend's lines of SVG, and how high it is."""
        size = _LEGEND / min(_UNIT, _PAGE / (right - left))
        column = 19 * size
        columns = max(1, int((right - left - 2 * size) / column))
        rows = -(-(len(entries) + len(self._yarns())) // columns)
        found = ['<g class="legend">']
        items: list[Entry | Yarn] = [*entries, *self._yarns()]
        for nth, item in enumerate(items):
            x = left + _MARGIN * 0.6 + (nth // rows) * column
            y = top + (nth % rows) * 2.3 * size
            found.append(self._item(item, x, y, size))
        found.append("</g>")
        return found, rows * 2.3 * size + 0.4

    def _yarns(self) -> list[Yarn]:
        used = {k.colour for laid in self.rounds for k in laid.round.knots}
        yarns = [yarn for yarn in self.pattern.yarns if yarn.letter in used]
        return yarns if len(yarns) > 1 else []

    def _item(self, item: Entry | Yarn, x: float, y: float, size: float) -> str:
        if isinstance(item, Yarn):
            ink = self.inks[item.letter]
            sign = (
                f'<path d="M.1 .55h1.5" stroke="{ink}" stroke-width=".32" stroke-linecap="round"/>'
            )
            words = f"{item.letter}: {item.colour or item.name}"
        else:
            knot = item.knot
            own = self.own.get(knot.own, 0)
            drawn = list(strokes(knot, item.feet, item.heads, item.line, own))
            sign = f'<g class="st" stroke="{INKS[0]}">{paths(drawn, INKS[0])}</g>'
            words = item.words
        return (
            f'<g transform="translate({x:.2f} {y:.2f}) scale({size:.2f})">{sign}'
            f'<text x="2.3" y=".9" font-size=".92">{escape(words)}</text></g>'
        )


def paths(drawn: Sequence[Stroke], ink: str) -> str:
    """Strokes as one path, and areas as another."""
    lines = "".join(s.path for s in drawn if not s.filled)
    areas = "".join(s.path for s in drawn if s.filled)
    found = f'<path d="{lines}"/>' if lines else ""
    return found + (f'<path class="full" fill="{ink}" d="{areas}"/>' if areas else "")


def _around(laid: Laid) -> list[Point]:
    """Points all along the heads of a round."""
    steps = 96
    return [laid.frame.point(n * math.tau / steps, laid.out) for n in range(steps)]


def _outline(laid: Laid) -> str:
    return "M" + "L".join(f"{p.x:.2f} {p.y:.2f}" for p in _around(laid)) + "Z"
