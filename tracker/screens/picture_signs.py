"""What each step of a round looks like, before any size or ink: a post, a fan, an arch."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from functools import lru_cache

from tracker.fabric.steps import Kind, Run, Walk
from tracker.lean import NamedTuple


class Look(StrEnum):
    """The shapes that a step can have."""

    POST = "post"
    FRONT = "front"
    BACK = "back"
    TEXTURE = "texture"
    LOW = "low"
    LINK = "link"
    GROW = "grow"
    CLOSE = "close"
    SPACE = "space"
    JOIN = "join"
    TURN = "turn"
    FASTEN = "fasten"
    MARKER = "marker"
    COLOUR = "colour"
    SENTENCE = "sentence"


class Sign(NamedTuple):
    """One step's shape.

    Attributes:
        look: which shape.
        nth, of: for what grows: which of how many stitches from one foot (from 0).
            ``of`` 0: the foot is another step's, and the stitch leans by ``nth``:
            0 to the left, 1 upright, 2 to the right.
        number: stitches closed together; chains of a space; stitches of one step that grows.
        words: the letter of a yarn; "" for all else.
        rooted: a chain space within a group that stands in one place.
    """

    look: Look
    nth: int = 0
    of: int = 1
    number: int = 1
    words: str = ""
    rooted: bool = False


ACTS: Mapping[Kind, Look] = {
    Kind.JOIN: Look.JOIN,
    Kind.RING: Look.JOIN,
    Kind.TURN: Look.TURN,
    Kind.FASTEN: Look.FASTEN,
    Kind.MARKER: Look.MARKER,
    Kind.SENTENCE: Look.SENTENCE,
}

BASIC = frozenset(("sc", "hdc", "dc", "tr", "dtr", "esc"))
"""Stitches that are a plain post, in US terms; in UK terms the same and htr, trtr."""

BASIC_UK = frozenset(("dc", "htr", "tr", "dtr", "trtr", "edc"))


def sign_of(walk: Walk, which: int, within: int) -> Sign:
    """The shape of step ``within`` of run ``which``; looks at no more than the runs beside it."""
    run = walk.runs[which]
    if run.kind is Kind.STITCH:
        return _stitch(walk, which, within)
    if run.kind is Kind.CHAIN:
        return _chain(walk, which)
    if run.kind is Kind.COLOUR:
        return Sign(Look.COLOUR, words=run.colour[:3])
    return Sign(ACTS[run.kind])


def _chain(walk: Walk, which: int) -> Sign:
    run = walk.runs[which]
    length = run.text.rpartition(" ")[2]
    if not length.isdecimal():
        return Sign(Look.LINK)
    inside = _same(walk, which - 1) and _same(walk, which + 1)
    return Sign(Look.SPACE, number=int(length[:4]), rooted=inside)


def _stitch(walk: Walk, which: int, within: int) -> Sign:
    run = walk.runs[which]
    if run.makes > run.takes > 0:
        return Sign(Look.GROW, number=run.makes)
    if run.per_place > 1:
        return Sign(Look.GROW, nth=within % run.per_place, of=run.per_place)
    if run.takes > 1 and "over " in run.where:
        return Sign(Look.CLOSE, number=run.takes)
    before, after = _beside(walk, which, -1), _beside(walk, which, 1)
    if run.takes == 0:
        if before or after:
            return Sign(Look.GROW, nth=1 if before and after else 2 if before else 0, of=0)
        return Sign(Look.GROW, nth=within, of=run.count) if run.count > 1 else Sign(_plain(run))
    return Sign(Look.GROW, nth=0, of=0) if after and run.count == 1 else Sign(_plain(run))


def _beside(walk: Walk, which: int, step: int) -> bool:
    """Whether the next run that way, past one chain, goes into the same place as this one."""
    if _same(walk, which + step):
        return step > 0 or walk.runs[which].takes == 0
    chain = 0 <= which + step < len(walk.runs) and walk.runs[which + step].kind is Kind.CHAIN
    return chain and _same(walk, which + 2 * step)


def _same(walk: Walk, which: int) -> bool:
    """Whether the run is of stitches that go where one went before them."""
    if not 0 <= which < len(walk.runs):
        return False
    run = walk.runs[which]
    return run.kind is Kind.STITCH and run.takes == 0


def _plain(run: Run) -> Look:
    name = run.stitch
    if name.startswith(("fp", "bp")):
        return Look.FRONT if name[0] == "f" else Look.BACK
    if name in BASIC or name in BASIC_UK:
        return Look.POST
    return Look.LOW if name in ("sl st", "slst", "ss") else Look.TEXTURE


@lru_cache(maxsize=256)
def height_of(stitch: str, terms: str) -> int:
    """Rows of a stitch in the tall picture, from 2 to 5: the chains that stand for it, and one.

    Special stitches, whose height nobody states, have three.
    """
    from tracker.notation.dictionary import find

    known = find(stitch, terms)
    return min(max(known.height, 1), 4) + 1 if known and known.height else 3
