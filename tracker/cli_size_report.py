"""What ``hookside size`` tells, as lines to read."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tracker.cli_size_told import Told
from tracker.cli_tables import hook_line
from tracker.measure.crown import Crown, Lies
from tracker.measure.gauge import Ease, diameter, stitch_off
from tracker.measure.heads import NOT_A_CHECK, depth_source, ease_habits, hat_depth
from tracker.measure.units import plain, rounded
from tracker.measure.yarn_weights import weights_for_hook
from tracker.pattern.cautions import DEFER, caution
from tracker.pattern.finished import Finished
from tracker.pattern.foreword import swatch
from tracker.pattern.ruler import Ruler
from tracker.pattern.sizing import Body, Choice, round_part


def report(told: Told) -> Iterator[str]:
    """The lines, part after part, one a size."""
    yield told.pattern.title
    yield from _gauge(told)
    for index, part in enumerate(told.sizes[0].parts):
        yield ""
        yield part.name
        yield from _rows([(one.size, _part(told, n, index)) for n, one in enumerate(told.sizes)])
        yield from _crowns(told, index)
        yield from _unsure(part)
    yield from _off(told)
    yield from _fits(told)
    yield from _hooks(told)
    if told.left:
        yield from ("", told.left)


def _rows(rows: list[tuple[str, str]]) -> Iterator[str]:
    """One line a size; a single one where it is the same for all."""
    if len({words for _, words in rows}) == 1:
        rows = [("every size" if len(rows) > 1 else rows[0][0], rows[0][1])]
    wide = max(len(size) for size, _ in rows)
    yield from (f"  {f'{size:{wide}}  ' if wide else ''}{words}" for size, words in rows)


def _gauge(told: Told) -> Iterator[str]:
    gauge = told.pattern.gauge
    if gauge is not None:
        yield f"Gauge: {swatch(told.pattern, gauge)}."
    if not told.planned:
        return
    assert told.own is not None
    mine, theirs = told.ruler.swatch, told.own.swatch
    yield f"Your swatch: {_over(told, told.ruler)}. In brackets: by the pattern's gauge."
    if mine.stitch_cm < theirs.stitch_cm:
        yield "It has more stitches to the length than the pattern's: a thicker hook makes fewer."
    elif mine.stitch_cm > theirs.stitch_cm:
        yield "It has fewer stitches to the length than the pattern's: a thinner hook makes more."


def _over(told: Told, ruler: Ruler) -> str:
    over, length = told.over
    stitches, rounds = over / ruler.swatch.stitch_cm, over / ruler.swatch.round_cm
    return f"{_tenths(stitches)} sts and {_tenths(rounds)} rounds over {length}"


def _tenths(number: Fraction) -> str:
    return plain(rounded(number, Fraction(1, 10)))


def _part(told: Told, at: int, index: int) -> str:
    one = told.sizes[at].parts[index]
    by_gauge = told.planned[at].parts[index] if told.planned else None
    wide, long = one.sides
    sides = (
        (one.wide, by_gauge.wide if by_gauge else None, wide, "width not told by its counts"),
        (one.long, by_gauge.long if by_gauge else None, long, "length left to you"),
    )
    return ", ".join(
        unknown if length is None else f"{_length(told, length, other)} {word}"
        for length, other, word, unknown in sides
    )


def _length(told: Told, length: Fraction, planned: Fraction | None) -> str:
    mine = told.show(length)
    theirs = mine if planned is None else told.show(planned)
    return mine if mine == theirs else f"{mine} [{theirs}]"


def _crowns(told: Told, index: int) -> Iterator[str]:
    """How the crown lies in each size; once where all are the same."""
    rows = [
        (one.size, _crown(told, crown))
        for one in told.sizes
        if (crown := one.parts[index].crown) is not None
    ]
    if not rows:
        return
    if len({words for _, words in rows}) == 1:
        yield f"  crown: {rows[0][1]}"
        return
    yield "  crown:"
    yield from (f"  {row}" for row in _rows(rows))


def _crown(told: Told, crown: Crown) -> str:
    flat = _tenths(told.ruler.swatch.flat_increases)
    since = f" from round {crown.since}" if crown.since > 1 and crown.lies is not Lies.FLAT else ""
    return (
        f"{crown.rounds} rounds, {told.show(crown.across)} across; "
        f"{_tenths(crown.increases)} more a round, flat is {flat}: {crown.lies}{since}"
    )


def _unsure(part: Finished) -> Iterator[str]:
    if part.unsure:
        yield f"  Counted as tall as the swatch: {', '.join(part.unsure)}."


def _off(told: Told) -> Iterator[str]:
    """What one stitch more or fewer in the swatch does to what goes round."""
    over, length = told.over
    name = round_part(told.pattern)
    counts = [
        (one.size, part.stitches)
        for one in told.sizes
        for part in one.parts
        if part.name == name and part.stitches is not None
    ]
    if not counts or told.ruler.swatch.stitches_in(over) <= 1:
        return
    more, fewer = (stitch_off(told.ruler.swatch, by, over) for by in (1, -1))
    yield ""
    yield f"{name}, if the swatch is off by one stitch in {length}"
    ways = [(size, more.width(count), fewer.width(count)) for size, count in counts]
    yield from _rows(
        [
            (size, f"{told.show(a)} with one more, {told.show(b)} with one fewer")
            for size, a, b in ways
        ]
    )


def _fits(told: Told) -> Iterator[str]:
    for body, sizes in told.fits:
        yield ""
        yield from _fit(told, body, sizes)
    if not told.fits:
        return
    yield ""
    if told.ease is None:
        yield "Nobody says with how much ease, so none is taken."
    if told.ease is None and _for_head(told):
        yield "Makers work hats"
        yield from (f"  {words} ({source})" for words, source in ease_habits())
    if _for_head(told) and _crowned(told):
        yield f"Depth of a hat, crown to ear, 4/10 of the head: {depth_source()}"
    yield from dict.fromkeys(f"Source: {head.source}" for head in told.heads)
    yield from (f"But {head.other}" for head in told.heads if head.other)
    if told.heads:
        yield from (NOT_A_CHECK, *_infants(told))


def _fit(told: Told, body: Body, sizes: tuple[Choice, ...]) -> Iterator[str]:
    ease = told.ease or Ease()
    most = f" (most {told.show(body.low)} to {told.show(body.high)})" if body.who else ""
    around = told.show(body.middle)
    who = f"{body.who}: {around}{most} round" if body.who else f"For {around} round"
    yield f"{who}, so {told.show(ease.on(body.middle))} wanted"
    if _crowned(told):
        yield f"  a flat crown for that is {told.show(diameter(ease.on(body.middle)))} across"
        if _for_head(told):
            yield f"  makers' rule for the depth of a hat: {told.show(hat_depth(body.middle))}"
    if not sizes:
        yield f"  how long around {round_part(told.pattern)} comes out is not told by its counts"
    else:
        best, order = sizes[0], [one.size for one in told.sizes]
        named = sorted(sizes, key=lambda one: order.index(one.size))
        yield from _rows([(one.size, _choice(told, one, best)) for one in named])


def _crowned(told: Told) -> bool:
    """Whether the part that goes round something is worked from its centre."""
    name = round_part(told.pattern)
    return any(part.crown for one in told.sizes for part in one.parts if part.name == name)


def _for_head(told: Told) -> bool:
    return _on(told) == "the head"


def _on(told: Told) -> str:
    """What it goes round, in words."""
    if told.heads:
        return "the head"
    return f"the {told.pattern.fit.on}" if told.pattern.fit and told.pattern.fit.on else "that"


def _choice(told: Told, one: Choice, best: Choice) -> str:
    than = _on(told)
    ease = told.show(abs(one.ease))
    said = f"{ease} {'larger' if one.ease > 0 else 'smaller'} than {than}"
    nearest = "fits best" if best.fits else "nearest, but fits none"
    marked = f", {nearest}" if one is best and len(told.sizes) > 1 else ""
    return f"{told.show(one.around)}, {said if one.ease else f'as large as {than}'}{marked}"


def _infants(told: Told) -> Iterator[str]:
    """The cautions for a baby's hat, where an age in the growth standards was asked for."""
    if any(head.infant for head in told.heads):
        known = [caution(name) for name in ("infant-hat-sleep", "small-parts", "no-neck-cords")]
        yield from (one.sentence for one in known if one)
        yield DEFER


def _hooks(told: Told) -> Iterator[str]:
    if not told.hooks:
        return
    yield ""
    yield from (hook_line(one) for one in told.hooks)
    weights = dict.fromkeys(
        weight.name for one in told.hooks for weight in weights_for_hook(one.mm)
    )
    if weights:
        yield f"Advised for yarns of the classes {', '.join(weights)}."
    yield "Only a swatch tells what another hook does to the gauge: give it with --swatch."
