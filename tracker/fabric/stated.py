"""Comparing what a round makes with the count printed beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tracker.fabric.bunches import bunches
from tracker.fabric.edge import made, stitches
from tracker.fabric.outcome import Outcome
from tracker.fabric.sides import has_each_side, sides
from tracker.notation.dictionary import STITCHES, UK_BY_US, base_of
from tracker.notation.round_text import Stated
from tracker.notation.tree import Figure

#: Ways to count that take in no chains: "(54 dc)" does not mean dc and chains.
STITCHES_ALONE = ("stitches", "stitches without slip stitches")
#: Chain spaces of a round that are thumb holes, handles or buttonholes, and no lace.
MOST_OPENINGS = 2


#: Said of a figure that only counts petals or the like: they are as many, in one way or another.
BUNCHES = "bunches"
#: Stitches by whose name groups of others may be called.
_GROUPS = ("shell", "v-st", "cl")
#: Stitches that a maker may call clusters.
_CLOSED = ("puff", "bobble", "popcorn")


def totals(outcome: Outcome) -> dict[str, int]:
    """The totals a printed figure may mean, the likeliest first.

    Writers count the stitches; or the stitches and the chain spaces; or every chain of
    those spaces; or the spaces alone; or leave slip stitches out.
    """
    edge = outcome.edge
    plain = stitches(edge)
    spaces = sum(s.count for s in edge if s.chains)
    chains = sum(s.count * s.chains for s in edge)
    slips = sum(s.count for s in edge if s.name == "sl st")
    found = {"stitches": plain}
    if spaces:
        found["stitches and spaces"] = plain + spaces
        found["stitches and chains"] = plain + chains
        found["spaces"] = spaces
    if slips:
        found["stitches without slip stitches"] = plain - slips
    return found


def counting(stated: Stated, outcomes: Sequence[Outcome]) -> str | None:
    """How the printed figure counts, where it agrees with every size; else None.

    The empty string stands for a figure that counts something not followed here, so that
    nothing is proved either way.
    """
    if stated.sides:
        sided = _sides(stated, outcomes)
        whole = replace(stated, sides=())
        if sided is None or not (stated.total or stated.parts):
            return sided
        found = counting(whole, outcomes)
        return found or (sided if found == "" else None)
    if stated.total is not None and len(stated.parts) <= 1:
        for way in totals(outcomes[0]):
            if way not in STITCHES_ALONE and _names_stitch(stated) and not _bridged(outcomes[0]):
                continue
            if all(
                totals(o).get(way) == figure_of(stated.total, i) for i, o in enumerate(outcomes)
            ):
                return way
        return _named(stated, outcomes)
    return _parts(stated, outcomes)


def _sides(stated: Stated, outcomes: Sequence[Outcome]) -> str | None:
    """Whether each side has as many as is printed: "sides", "" where that is not followed."""
    proved = [
        has_each_side(outcome.edge, name, figure_of(figure, i))
        for name, figure in stated.sides
        for i, outcome in enumerate(outcomes)
    ]
    if False in proved:
        return None
    return "sides" if any(proved) else ""


def off_sides(stated: Stated, outcome: Outcome) -> tuple[tuple[int, ...], str, int] | None:
    """The first figure for each side that is not so: the sides as made, its name, the figure."""
    for name, figure in stated.sides:
        if has_each_side(outcome.edge, name, figure[0]) is False:
            return sides(outcome.edge, name)[0], name, figure[0]
    return None


def _bridged(outcome: Outcome) -> bool:
    """Whether the only spaces are an opening or two, whose chains may be called stitches."""
    return sum(s.count for s in outcome.edge if s.chains) <= MOST_OPENINGS


def _names_stitch(stated: Stated) -> bool:
    """Whether the printed figure is called by the name of a stitch."""
    name = stated.parts[0][0] if stated.parts else ""
    return name not in ("", "ch", "loop", "group", "bunch", "corner") and not name.endswith("sp")


def figure_of(figure: Figure, index: int) -> int:
    """The figure of one size."""
    return figure[index] if index < len(figure) else figure[0]


def _named(stated: Stated, outcomes: Sequence[Outcome]) -> str | None:
    """One figure with a name of its own ("7 shells", "16 tr"), counted under that name."""
    (name, figure) = stated.parts[0] if stated.parts else ("", ())
    if not name:
        return None
    counts = [counted(name, o) for o in outcomes]
    if _is_grouping(name) and not any(name in (*o.counted, *made(o.edge)) for o in outcomes):
        # clusters and shells that the words do not call so
        ways = [bunches(o) for o in outcomes]
        if name == "cl":
            ways = [w | ({_closed_as_one(o)} - {0}) for w, o in zip(ways, outcomes, strict=True)]
        fits = all(not w or figure_of(figure, i) in w for i, w in enumerate(ways))
        return BUNCHES if fits and all(ways) else "" if fits else None
    if all(count == figure_of(figure, i) for i, count in enumerate(counts)):
        return "named"
    # "(15 picots)" of a round that does not call anything so: what they are is not known
    return None if any(counts) or base_of(name) in UK_BY_US else ""


def _is_grouping(name: str) -> bool:
    """Whether a name is one for several stitches: a shell, or one that a text defines itself."""
    apart = ("group", "bunch", "corner", "loop", "sp", "ch", "")
    own = base_of(name) not in STITCHES and name not in apart and not name.endswith("sp")
    return name in _GROUPS or own


def _parts(stated: Stated, outcomes: Sequence[Outcome]) -> str | None:
    """Several figures, each with what it counts."""
    wanted: dict[str, list[int]] = {}
    for name, figure in stated.parts:
        sums = wanted.setdefault(name, [0] * len(outcomes))
        for i in range(len(outcomes)):
            sums[i] += figure_of(figure, i)
    proved = bunched = False
    spaced = any(name in ("ch", "loop") or name.endswith("sp") for name in wanted)
    for name, figures in wanted.items():
        for i, outcome in enumerate(outcomes):
            if name == "bunch":
                ways = bunches(outcome)
                if ways and figures[i] not in ways:
                    return None
                bunched = bool(ways)
            possible = _possible(name, outcome, spaced)
            if possible is None:
                continue
            if figures[i] not in possible:
                known = all(not n or counted(n, outcome) for n in wanted)
                return None if known else _total_of_parts(stated, outcomes)
            proved = True
    if proved:
        return "parts"
    return BUNCHES if bunched else ""


def off_part(stated: Stated, outcome: Outcome) -> tuple[str, int, int] | None:
    """The first of several figures that is not what is made: its name, it, what is made."""
    if len(stated.parts) < 2:
        return None
    spaced = any(name in ("ch", "loop") or name.endswith("sp") for name, _ in stated.parts)
    for name, figure in stated.parts:
        ways = bunches(outcome) if name == "bunch" else _possible(name, outcome, spaced)
        if name and ways and figure[0] not in ways:
            return name, figure[0], counted(name, outcome) or min(ways)
    return None


def _total_of_parts(stated: Stated, outcomes: Sequence[Outcome]) -> str | None:
    """Parts that do not fit one by one may still add up ("5 back loop hdc, 25 fpdc …")."""
    total = stated.total
    if total is None or any(n.endswith("sp") or n in ("ch", "corner") for n, _ in stated.parts):
        return None
    if all(stitches(o.edge) == figure_of(total, i) for i, o in enumerate(outcomes)):
        return "stitches"
    return None


def _possible(name: str, outcome: Outcome, spaced: bool) -> set[int] | None:
    """The numbers that a figure called ``name`` may be; None where that is not followed.

    ``spaced``: the spaces have a figure of their own, so that "sts" does not count them.
    """
    counts = made(outcome.edge)
    if name in ("group", "corner", "bunch"):
        return None
    if name == "":
        ways = totals(outcome).items()
        return {count for way, count in ways if not spaced or way in STITCHES_ALONE}
    if name in ("sp", "ch", "loop"):
        spaces = [s for s in outcome.edge if s.chains]
        if not spaces:
            return None
        return {sum(s.count for s in spaces), sum(s.count * s.chains for s in spaces)}
    if name.endswith("sp"):
        return {counts.get(name, 0)}
    found = counted(name, outcome)
    if name == "cl" and not found:
        found = _closed_as_one(outcome)
    if not found and name not in _GROUPS and _is_grouping(name):
        return bunches(outcome) or None  # "(49 gc)" of groups that are written out
    if name == "picot" and not found:
        return None  # what they are is not known in a round that calls nothing so
    single = [s for s in outcome.edge if not s.group and s.each == 1]
    alone = sum(s.count for s in single if base_of(s.name) == base_of(name))
    same_base = sum(n for key, n in counts.items() if base_of(key) == base_of(name))
    begun = {found + 1} if name in outcome.counted and _begun_apart(outcome, found) else set()
    return {found, same_base, alone, counts.get(name, 0), *begun}


def _begun_apart(outcome: Outcome, groups: int) -> bool:
    """Whether one group more than ``groups`` was begun with a chain, spelt out at the start."""
    first = next((i for i, s in enumerate(outcome.edge) if s.group and s.opens), 0)
    spelt = any(s.chains for s in outcome.edge[:first])
    opened = sum(1 for s in outcome.edge if s.group and s.opens)
    return spelt or (opened != groups and any(s.chains for s in outcome.edge))


def _closed_as_one(outcome: Outcome) -> int:
    """Clusters by other names: several stitches that are closed as one, such as dc3tog."""
    return sum(
        count
        for name, count in made(outcome.edge).items()
        if name in _CLOSED or re.fullmatch(r"[a-z]+\dtog", name)
    )


def counted(name: str, outcome: Outcome) -> int:
    """How many of the stitch or group called ``name`` the round made."""
    found = outcome.counted.get(name, made(outcome.edge).get(name, 0))
    if not found and name in _GROUPS:
        return sum(1 for spot in outcome.edge if spot.group and spot.opens)
    return found
