"""Which reading of a round fits the round below and the printed count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tracker.fabric.begins import beginning
from tracker.fabric.edge import Edge
from tracker.fabric.effort import TooMuchError
from tracker.fabric.outcome import Outcome, Start
from tracker.fabric.reading import Reading, readings
from tracker.fabric.rewording import reworded, rewordings
from tracker.fabric.stated import BUNCHES, counting
from tracker.fabric.trees import chain_by_chain, every, is_short, stands_over
from tracker.fabric.walker import walk
from tracker.fabric.ways import comes_round, open_ways
from tracker.notation.round_text import Stated
from tracker.notation.tree import At, Chain, Group, Make, Node, Repeat, Skip

#: More stitches go hardly into one place that is not named (common practice, no source).
MOST_BUNCHED = 5
#: A shorter chain hardly stands for a stitch.
_LEAST_STANDING = 2


@dataclass(frozen=True, slots=True)
class Judged:
    """One round in every size, in the reading that fits best.

    Attributes:
        reading: the ways taken.
        outcomes: one a size.
        fits: the round below is used up exactly.
        agrees: the printed count is what the round makes; None where nothing is printed
            or what is printed is not followed.
        counting: what the printed count counts ("stitches", "spaces", …), or "".
    """

    reading: Reading
    outcomes: tuple[Outcome, ...]
    fits: bool
    agrees: bool | None
    counting: str


def judge(
    nodes: tuple[Node, ...], stated: Stated | None, starts: Sequence[Start], base: Reading
) -> Judged:
    """Work a round in its likeliest reading, or in the first other one that fits.

    Raises:
        TooMuchError: the round asks for more steps than any piece has.
    """
    first: Judged | None = None
    edge = starts[0].edge or ()
    base = _likeliest(nodes, edge, base)
    ways = open_ways(nodes, starts[0].pending is not None, _chains_in(edge))
    ways += rewordings(nodes, stated)
    whole: set[Reading] = set()
    # Beside stitches left out "2 sc" may be one increase; beside named increases it is not.
    # So many as "12 sc" in one place are not believed without a count either.
    skips = any(isinstance(n, Skip) or is_many(n) for n in every(nodes))
    if any(isinstance(n, Make) and is_shaped(n) for n in every(nodes)):
        ways = [way for way in ways if way != "bunched"]
    effort = starts[0].effort
    chain = beginning(nodes) or starts[0].pending
    short = is_short(nodes)
    single = chain is not None and chain.count[0] == 1
    for reading in readings(base, ways):
        if first is not None and effort is not None and effort.enough():
            return first
        if reading.cut and (reading.closer or replace(reading, cut=False) in whole):
            continue  # whole repeats fit: there is no reason for one to stop part-way
        found = _judged_or(first, *reworded(nodes, stated, reading), starts, reading)
        if found.fits:
            whole.add(reading)
        counts = single and reading.chain_counts > base.chain_counts
        loose = (_loose(reading, base) and not (reading.early and short)) or counts
        loose = loose or (reading.bunched and skips)
        believed = found.agrees is not False and (found.agrees or not loose)
        if found.fits and believed:
            return _passing_none(nodes, starts, found) or found
        if first is None or (found.agrees and not first.agrees and found.fits >= first.fits):
            first = found
    assert first is not None
    return first


def _chains_in(edge: Edge) -> str:
    """What chains the edge has, as `open_ways` asks for it."""
    if not any(s.chains or s.name == "ch" for s in edge):
        return ""
    return "foundation" if all(s.name == "ch" for s in edge) else "chains"


def is_many(node: Node) -> bool:
    """Whether more stitches stand without a place than go into one that is not named."""
    return isinstance(node, Make) and node.target is None and node.count[0] > MOST_BUNCHED


def is_shaped(node: Make) -> bool:
    """Whether a stitch widens or narrows a round by its name."""
    return node.stitch.us == "inc" or 1 == node.stitch.makes < node.stitch.takes


def _likeliest(nodes: tuple[Node, ...], edge: Edge, base: Reading) -> Reading:
    """``base`` with what the words and the edge below make likelier than the habit."""
    if any(s.chains > 1 for s in edge) and chain_by_chain(nodes):
        base = replace(base, singly=True)
    if stands_over(nodes):
        base = replace(base, covers=True)
    if comes_round(nodes):
        base = replace(base, wraps=True)
    return base


def _judged_or(
    first: Judged | None,
    nodes: tuple[Node, ...],
    stated: Stated | None,
    starts: Sequence[Start],
    reading: Reading,
) -> Judged:
    """A round in one more reading; what was found ``first`` where that is too much work."""
    try:
        return _judged(nodes, stated, starts, reading)
    except TooMuchError:
        if first is None:
            raise
        return first


def comes_right(
    nodes: tuple[Node, ...], stated: Stated | None, starts: Sequence[Start], base: Reading
) -> bool:
    """Whether a round fits and agrees as the part is read, its times on top or in all.

    Raises:
        TooMuchError: the round asks for more steps than any piece has.
    """
    readings = [base]
    if any(isinstance(n, Repeat) and n.times is not None for n in every(nodes)):
        readings.append(replace(base, times_in_all=not base.times_in_all))
    for reading in readings:
        found = _judged(nodes, stated, starts, reading)
        if found.fits and found.agrees is not False:
            return True
    return False


def _passing_none(nodes: tuple[Node, ...], starts: Sequence[Start], found: Judged) -> Judged | None:
    """The same with stitches named loosely, where that passes over none in silence.

    Only for rounds that go stitch by stitch: lace does pass over stitches. Or with the stitch
    passed over first taken for the one under the beginning chain.
    """
    if found.agrees or found.reading.loose or not any(o.passed for o in found.outcomes):
        return None
    ways = open_ways(nodes, starts[0].pending is not None, "")
    standing = _standing(nodes, starts, found) if "chain_counts" in ways else None
    if standing is not None:
        return standing
    for reading in (replace(found.reading, on_first=True), replace(found.reading, under=True)):
        if reading.on_first and "on_first" not in ways:
            continue
        other = _judged(nodes, None, starts, reading)
        most = _passed(found) - 1 if reading.under else 0
        if other.fits and _passed(other) <= most:
            return other
    if (
        any(isinstance(n, Skip | Group) for n in every(nodes))
        or sum(isinstance(n, Chain) for n in every(nodes)) > 1
    ):
        return None
    other = _judged(nodes, None, starts, replace(found.reading, loose=True))
    return other if other.fits and not any(o.passed for o in other.outcomes) else None


def _passed(found: Judged) -> int:
    """How many stitches are passed over in silence, in all sizes."""
    return sum(outcome.passed for outcome in found.outcomes)


def _standing(nodes: tuple[Node, ...], starts: Sequence[Start], found: Judged) -> Judged | None:
    """The same with the beginning chain in place of the first stitch, else passed over unsaid.

    "Ch 2, dc in next ch-1 sp", where a stitch stands before that space.
    """
    chain = beginning(nodes)
    made = next((n for n in every(nodes) if isinstance(n, Make)), None)
    if chain is None or made is None or found.reading.chain_counts:
        return None
    once = made.target is not None and made.target.at is At.NEXT and made.count == (1,)
    if not once or not _LEAST_STANDING <= chain.count[0] <= made.stitch.height:
        return None
    other = _judged(nodes, None, starts, replace(found.reading, chain_counts=True))
    fewer = all(
        o.passed == f.passed - 1 for o, f in zip(other.outcomes, found.outcomes, strict=True)
    )
    return other if other.fits and fewer else None


def _loose(reading: Reading, base: Reading) -> bool:
    """Whether a reading fits so much that only a printed count makes it believable."""
    bold = (
        reading.cut or reading.last_is_count or reading.both_sides or reading.whole or reading.alone
    )
    bold = bold or reading.twin or reading.strung or reading.early or reading.many
    bold = bold or reading.of_so_many or reading.spread or reading.remaining
    return bold or (reading.singly and not base.singly)


def _judged(
    nodes: tuple[Node, ...], stated: Stated | None, starts: Sequence[Start], reading: Reading
) -> Judged:
    outcomes = tuple(walk(nodes, start, reading) for start in starts)
    fits = all(o.short is None and o.left == 0 for o in outcomes)
    way = None if stated is None else counting(stated, outcomes)
    agrees: bool | None = None
    if stated is not None and way not in ("", BUNCHES):
        agrees = way is not None
    return Judged(reading, outcomes, fits, agrees, way or "")
