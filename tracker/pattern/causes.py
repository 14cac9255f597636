"""The likeliest cause of a count that does not work, in words a designer can act on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace

from tracker.fabric.edge import plain_edge, stitches
from tracker.fabric.effort import MOST_FOR_CAUSE, Effort, TooMuchError
from tracker.fabric.judge import Judged, comes_right, is_shaped
from tracker.fabric.numbered import NUMBER
from tracker.fabric.odd_corners import Corner
from tracker.fabric.outcome import Outcome, Start
from tracker.fabric.reading import Reading
from tracker.fabric.retold import with_node
from tracker.fabric.stated import figure_of, off_part, off_sides
from tracker.fabric.trees import every
from tracker.notation.dictionary import STITCHES, UK_BY_US
from tracker.notation.round_text import Stated
from tracker.notation.tree import At, Figure, Make, Node, Repeat, Target
from tracker.pattern.slips import copied_figure, slip_of_figure

#: Tries for a likeliest cause, and instructions worked in all of them together: a round of
#: many words is tried less often.
MOST_TRIES = 30
MOST_WORKED = 10_000
#: It is tried whether a round fits on so many stitches more or fewer.
MOST_OFF = 10
#: Above this many stitches below, only the fault is told: trying would take too long.
MOST_BELOW = 3_000


@dataclass(frozen=True, slots=True)
class Cause:
    """One finding, about the words from ``start`` to ``end`` of a line.

    ``printed``: they are the printed count, which stands on the line itself and not in
    the words of a round it repeats.
    """

    text: str
    start: int
    end: int
    hint: str = ""
    printed: bool = False


def explain(
    nodes: tuple[Node, ...],
    judged: Judged,
    stated: Stated | None,
    starts: Sequence[Start],
    base: Reading,
    below: Figure | None,
    sizes: Sequence[str] = (),
) -> Cause:
    """What does not fit, and the likeliest cause as the hint. ``sizes``: their names."""
    found = _fault(judged, stated, below, starts[0].terms)
    found = replace(found, text=found.text + _which(judged, stated, sizes))
    hint = ""
    if below is None or max(below, default=0) <= MOST_BELOW:
        hint = slip_of_figure(nodes, judged, stated, starts)
        hint = hint or _likeliest(nodes, stated, starts, base)
        hint = hint or copied_figure(judged, stated, starts)
        hint = hint or _other_below(nodes, stated, starts, base)
    return replace(found, hint=hint)


def _fault(judged: Judged, stated: Stated | None, below: Figure | None, terms: str) -> Cause:
    """What does not fit: too few places, places left over, or another count than printed."""
    outcomes = judged.outcomes
    makes = figures(tuple(o.makes for o in outcomes))
    under = f"the {figures(below)} stitches below" if below else "the stitches below"
    printed = "" if stated is None or not stated.total else figures(stated.total)
    tail = f"; it makes {makes}, and {printed} is printed" if printed and printed != makes else ""
    short = next((o.short for o in outcomes if o.short is not None), None)
    if short is not None and isinstance(short.node, Repeat):
        if short.kind == NUMBER:
            text = f"the repeats come to {short.had}, but {short.wanted} are asked for"
            return Cause(text, short.node.start, short.node.end)
        if not short.wanted:
            return Cause(f"not one repeat fits into {under}", short.node.start, short.node.end)
        text = f"whole repeats leave {short.had} of {under}, not {short.wanted}{tail}"
        return Cause(text, short.node.start, short.node.end)
    if short is not None:
        left = f"{short.had or 'none'} of {under} {'is' if short.had == 1 else 'are'} left"
        text = f"wants {short.wanted} more where {left}{tail}"
        return Cause(text, short.node.start, short.node.end)
    over = tuple(o.left for o in outcomes)
    if any(over):
        start, end = _span(outcomes)
        return Cause(f"leaves {figures(over)} of {under} unworked{tail}", start, end)
    start, end = (0, 1) if stated is None else (stated.start, stated.end)
    sides = None if stated is None or len(outcomes) > 1 else off_sides(stated, outcomes[0])
    if sides is not None:
        return Cause(_sides_said(*sides, terms), start, end, printed=True)
    part = None if stated is None or len(outcomes) > 1 else off_part(stated, outcomes[0])
    if part is not None:
        name, wanted, made = part
        name = UK_BY_US.get(name, name) if terms == "UK" else name
        name = "groups" if name == "bunch" else name
        return Cause(f"makes {made} {name}, but {wanted} is printed", start, end, printed=True)
    said = (
        f"{printed} is printed"
        if printed and printed != makes
        else "the figures printed for each kind say otherwise"
    )
    return Cause(f"makes {makes}, but {said}", start, end, printed=True)


def _sides_said(made: tuple[int, ...], name: str, printed: int, terms: str) -> str:
    """What is wrong with a figure printed for each side."""
    name = UK_BY_US.get(name, name) if terms == "UK" else name
    if len(set(made)) == 1:
        return f"makes {made[0]} {name or 'stitches'} a side, but {printed} is printed"
    each = f"{', '.join(map(str, made[:-1]))} and {made[-1]}"
    return f"the sides have {each} {name or 'stitches'}, but {printed} is printed for each"


def corners_said(first: Corner, other: Corner, terms: str) -> Cause:
    """What is said of a corner that is not like the first one of its round."""
    name = UK_BY_US.get(first.stitch, first.stitch) if terms == "UK" else first.stitch
    text = f"one corner is {first.words} ({name}), but another {other.words}"
    return Cause(text, other.node.start, other.node.end, "all corners may be meant to be alike")


def _which(judged: Judged, stated: Stated | None, sizes: Sequence[str]) -> str:
    """The sizes that are off, where others are right: by name, where they have one."""
    printed = () if stated is None else stated.total
    off = [
        f"'{sizes[i]}'" if i < len(sizes) else str(i + 1)
        for i, o in enumerate(judged.outcomes)
        if o.short is not None or o.left or (printed and o.makes != figure_of(printed, i))
    ]
    if not off or len(off) == len(judged.outcomes):
        return ""
    if len(off) == 1:
        return f" (only size {off[0]} is off)"
    return f" (sizes {', '.join(off[:-1])} and {off[-1]} are off)"


def _span(outcomes: Sequence[Outcome]) -> tuple[int, int]:
    runs = outcomes[0].runs
    return (runs[0].start, max(r.end for r in runs)) if runs else (0, 1)


def figures(figure: Figure) -> str:
    """One figure, or one for each size as patterns print them: "8 (9, 10)"."""
    if len(set(figure)) == 1:
        return str(figure[0])
    return f"{figure[0]} ({', '.join(map(str, figure[1:]))})"


def _likeliest(
    nodes: tuple[Node, ...],
    stated: Stated | None,
    starts: Sequence[Start],
    base: Reading,
) -> str:
    """The first small change of the words with which everything fits."""
    tries = min(MOST_TRIES, MOST_WORKED // max(1, len(nodes)))
    effort = starts[0].effort or Effort()
    if effort.enough():
        return ""
    effort.begin(MOST_FOR_CAUSE)
    for tried, (changed, sentence) in enumerate(_changes(nodes)):
        if tried >= tries or effort.tries <= 0:
            return ""
        effort.tries -= 1
        try:
            if comes_right(changed, stated, starts, base):
                return sentence
        except TooMuchError:
            if effort.left < 0:
                return ""
    return ""


def _other_below(
    nodes: tuple[Node, ...], stated: Stated | None, starts: Sequence[Start], base: Reading
) -> str:
    """On how many stitches, where not on those below, all comes out as it is printed."""
    edge = starts[0].edge or ()
    if stated is None or not stated.total or len(starts) > 1 or any(s.chains for s in edge):
        return ""
    below, effort = stitches(edge), starts[0].effort or Effort()
    near = sorted(range(max(1, below - MOST_OFF), below + MOST_OFF), key=lambda n: abs(n - below))
    effort.begin(MOST_FOR_CAUSE)
    for count in near:
        if count == below or effort.tries <= 0:
            continue
        effort.tries -= 1
        start = replace(starts[0], edge=plain_edge(count))
        with suppress(TooMuchError):
            if comes_right(nodes, stated, [start], base):
                return f"it would fit {count} stitches: a round before it may be missing or off"
    return ""


def _changes(nodes: tuple[Node, ...]) -> Iterator[tuple[tuple[Node, ...], str]]:
    """Small changes that writers' slips undo, the likeliest first."""
    yield from _other_times(nodes)
    shaped = any(isinstance(n, Make) and is_shaped(n) for n in every(nodes))
    for node in every(nodes):
        if isinstance(node, Make):
            for other, sentence in _other_makes(node, shaped):
                yield with_node(nodes, node, other), sentence


def _other_times(nodes: tuple[Node, ...]) -> Iterator[tuple[tuple[Node, ...], str]]:
    for node in every(nodes):
        if isinstance(node, Repeat) and node.times is not None and not node.implied:
            for change in (1, -1, 2, -2):
                times = tuple(n + change for n in node.times)
                if min(times) > 0:
                    words = figures(times)
                    sentence = f"{_too(change)}: with {words} times it would fit"
                    yield with_node(nodes, node, replace(node, times=times)), sentence


def _too(change: int) -> str:
    number = "one repeat" if abs(change) == 1 else f"{abs(change)} repeats"
    return f"{number} too {'few' if change > 0 else 'many'}"


def _other_makes(node: Make, shaped: bool) -> Iterator[tuple[Make, str]]:
    """``shaped``: the round has named increases, beside which "2 sc" is hardly one more."""
    us = node.stitch.us
    if us == "inc":
        yield replace(node, stitch=STITCHES["dec"]), "an increase where a decrease was meant"
        yield replace(node, stitch=STITCHES["sc"]), "an increase too many"
    if us in ("dec", "invdec", "sc2tog"):
        yield replace(node, stitch=STITCHES["inc"]), "a decrease where an increase was meant"
    target = node.target
    if target is None and node.count[0] > 1 and not shaped:
        together = Target(At.NEXT)
        yield replace(node, target=together), f"the {node.count[0]} may go into one stitch"
    if target is not None:
        yield from _other_places(node, target)
    yield from _other_counts(node, target)


def _other_places(node: Make, target: Target) -> Iterator[tuple[Make, str]]:
    """Words "in each" written for "in next", and the other way round."""
    if target.at is At.EACH and target.count is None:
        one = replace(target, at=At.NEXT, leave=None, until="")
        yield replace(node, target=one), "'in each' where 'in next' was meant"
    elif target.at is At.NEXT and target.count in (None, (1,)):
        every_one = replace(target, at=At.EACH, count=None)
        yield replace(node, target=every_one), "'in next' where 'in each' was meant"


def _other_counts(node: Make, target: Target | None) -> Iterator[tuple[Make, str]]:
    """One more or one fewer of a stitch, or of the places it goes into."""
    in_each = target is not None and target.count is None
    every_place = target is not None and target.at is At.EACH
    for change in (1, -1):
        old = node.count if target is None or target.count is None else target.count
        if min(old) + change < 1:
            continue
        new = tuple(n + change for n in old)
        more = "one stitch too few" if change > 0 else "one stitch too many"
        place = " in each place" if every_place else ""
        where = f"{more}{place}: {figures(new)} instead of {figures(old)} would fit"
        if target is None or in_each:
            yield replace(node, count=new), where
        else:
            yield replace(node, target=replace(target, count=new)), where
