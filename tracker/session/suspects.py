"""Why a count may be wrong: ranked guesses from the round's own instructions.

Pure functions over the steps of a round. What goes wrong how often is taken from makers'
accounts, linked beside each guess; the order of the guesses is our own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tracker.fabric.steps import Kind, Run, Walk
from tracker.lean import NamedTuple
from tracker.session.corners import in_space, sides_begin

MOST = 5
"""Guesses shown; more would be guessing."""


class Suspect(NamedTuple):
    """One explanation.

    Attributes:
        what: what may have happened, in one sentence.
        look: where to look on the work, and what a right place looks like there.
        step: the first step of the round where it can have happened.
        weight: how likely, against the others.
    """

    what: str
    look: str
    step: int
    weight: int


def suspects(walk: Walk, counted: int, should: int, *, rows: bool) -> tuple[Suspect, ...]:
    """What may have led to a count other than ``should``, the likeliest first.

    ``rows``: the part is worked in turned rows. Empty where the count is right.
    """
    few, many = max(0, should - counted), max(0, counted - should)
    found = _too_few(walk, few, rows) if few else _too_many(walk, many, rows) if many else ()
    ranked = sorted(found, key=lambda one: -one.weight)
    return tuple(ranked[:MOST])


def _too_few(walk: Walk, few: int, rows: bool) -> Iterable[Suspect]:
    yield from _missed_increases(walk, few)
    yield from _short_groups(walk, few)
    yield from _after_corners(walk, few)
    yield from _repeats(walk, few, "left out", "once too few")
    yield from _last_one(walk, few, rows)
    where = "one stitch" if few == 1 else f"{few} stitches"
    if _into_ring(walk):
        yield _ring(
            walk, f"{where} too few", "Count the tops; make what is missing before the end."
        )
        return
    yield Suspect(
        f"You passed over {where} of the round below.",
        "Look along the top for a gap: each stitch below carries one of this round.",
        0,
        10 - min(few, 5),
    )


def _too_many(walk: Walk, many: int, rows: bool) -> Iterable[Suspect]:
    yield from _join_worked(walk, many, rows)
    yield from _missed_decreases(walk, many)
    yield from _repeats(walk, many, "worked", "once too often")
    where = "one stitch" if many == 1 else f"{many} stitches"
    if _into_ring(walk):
        yield _ring(walk, f"{where} too many", "Count the tops; take out the last ones.")
    else:
        yield Suspect(
            f"You worked twice into {where} of the round below.",
            "Look for two tops that rise from one foot where one should.",
            0,
            10 - min(many, 5),
        )
    if many == 1:
        yield Suspect(
            "You counted the loop on the hook.",
            "Count again from the marked stitch and leave the loop out.",
            len(walk),
            15,
        )


def _into_ring(walk: Walk) -> bool:
    """Whether there is no round below: every stitch goes into a ring."""
    runs = [walk.runs[at] for at in _stitch_runs(walk)]
    return bool(runs) and all(run.where == "in the ring" for run in runs)


def _ring(walk: Walk, much: str, look: str) -> Suspect:
    last = max(_stitch_runs(walk))
    return Suspect(f"You made {much} into the ring.", look, walk.run_start(last), 10)


# https://organicbabyfarm.blogspot.com/2005/01/lorenz-manifold-in-progress.html marks each
# increase because they are what is missed.
def _missed_increases(walk: Walk, few: int) -> Iterable[Suspect]:
    groups = [at for at in _stitch_runs(walk) if _gained(walk.runs[at]) > 0]
    groups = [at for at in groups if not in_space(walk.runs[at])]
    if not groups:
        return
    gained = _gained(walk.runs[groups[0]])
    places = sum(walk.runs[at].count // walk.runs[at].per_place for at in groups)
    if few % gained or few // gained > places:
        return
    missed, run = few // gained, walk.runs[groups[0]]
    times = _often(missed, places, "increase", _by_repeat(walk, groups))
    yield Suspect(
        f"You missed {times}.",
        f"At a right one {gained + 1} {'sts' if run.makes > 1 else run.text} rise from one foot.",
        walk.run_start(groups[0]),
        80 // missed if missed < places else 50,
    )


def _short_groups(walk: Walk, few: int) -> Iterable[Suspect]:
    """Groups worked into chain spaces, where a stitch too few is not seen by a gap."""
    groups = [at for at in _stitch_runs(walk) if in_space(walk.runs[at])]
    if not groups or few > len(groups):
        return
    run = walk.runs[groups[0]]
    many = "one of the groups has" if few == 1 else f"{few} of the groups have"
    yield Suspect(
        f"Perhaps {many} one stitch too few.",
        f"Count the stitches {run.where.replace('in next', 'in each')}: {run.count} {run.text}.",
        walk.run_start(groups[0]),
        55 // few,
    )


def _missed_decreases(walk: Walk, many: int) -> Iterable[Suspect]:
    groups = [at for at in _stitch_runs(walk) if _gained(walk.runs[at]) < 0]
    if not groups:
        return
    lost = -_gained(walk.runs[groups[0]])
    places = sum(walk.runs[at].count for at in groups)
    if many % lost or many // lost > places:
        return
    missed, run = many // lost, walk.runs[groups[0]]
    times = _often(missed, places, "decrease", _by_repeat(walk, groups))
    yield Suspect(
        f"You missed {times}.",
        f"At a right {run.text} {run.takes} stitches below lean into one top.",
        walk.run_start(groups[0]),
        80 // missed if missed < places else 50,
    )


def _often(missed: int, places: int, name: str, repeats: int) -> str:
    """Such as "the increase in one of the 8 repeats" or "2 of the 6 increases"."""
    one = "one" if missed == 1 else str(missed)
    if missed == places:
        return f"every {name} ({places})" if places > 1 else f"the {name}"
    if repeats == places:
        return f"the {name} in {one} of the {repeats} repeats"
    return f"{one} of the {places} {name}s"


# https://crochetclassescapetown.co.za/blog/item/15-never-forget-about-this-stitch
def _after_corners(walk: Walk, few: int) -> Iterable[Suspect]:
    after = sides_begin(walk)
    if not after or few > len(after):
        return
    many = "one corner" if few == 1 else f"{few} corners"
    yield Suspect(
        f"You passed over the first stitch of the side after {many} of {len(after)}.",
        "It hides under the corner group: pull the group aside and look for an empty one.",
        walk.run_start(after[0]),
        90 // few if few < len(after) else 85,
    )


def _repeats(walk: Walk, off: int, done: str, much: str) -> Iterable[Suspect]:
    """A whole pass of a repeat, of which there must be several."""
    for number, times in enumerate(walk.times):
        makes = _pass_makes(walk, number)
        if times > 1 and makes and off % makes == 0 and off // makes <= 2:
            passes = off // makes
            which = "One whole repeat was" if passes == 1 else "Two whole repeats were"
            first = next(at for at, run in enumerate(walk.runs) if _in_repeat(walk, run, number))
            yield Suspect(
                f"{which} {done} ({makes} stitches each, {much}).",
                f"Count the repeats: there are {times} of them.",
                walk.run_start(first),
                70 // passes,
            )


def _pass_makes(walk: Walk, number: int) -> int:
    """What one pass of a repeat makes; 0 where its passes differ."""
    first = [i for i, one in enumerate(walk.passes) if one.repeat == number]
    made = {sum(r.count * r.makes for r in walk.runs if _inside(walk, r, at)) for at in first}
    return made.pop() if len(made) == 1 else 0


def _inside(walk: Walk, run: Run, wanted: int) -> bool:
    at = run.inside
    while at >= 0 and at != wanted:
        at = walk.passes[at].outer
    return at == wanted


def _in_repeat(walk: Walk, run: Run, number: int) -> bool:
    return run.inside >= 0 and any(
        _inside(walk, run, at) for at, one in enumerate(walk.passes) if one.repeat == number
    )


# https://crochetncrafts.com/marking-the-first-and-last-stitches-in-the-rounds/ and
# https://gs-crafts-n-things.blogspot.com/2011/07/is-your-square-crochet-slanting.html
def _last_one(walk: Walk, few: int, rows: bool) -> Iterable[Suspect]:
    if few > 2:
        return
    last = max(_stitch_runs(walk), default=0)
    if rows:
        what = "You left out the last stitch of the row, at the turning chain."
        look = "Look at both edges: a slant or a step inwards is a missed end stitch."
    else:
        what = "You left out the last stitch before the end of the round."
        look = "The stitch just before the marked one is the last of the round."
    yield Suspect(what, look, walk.run_start(last + 1) - 1, 60 // few)


# https://theloopholefox.com/slip-stitches-in-joined-rounds/
def _join_worked(walk: Walk, many: int, rows: bool) -> Iterable[Suspect]:
    joined = any(run.kind is Kind.JOIN for run in walk.runs)
    chained = bool(walk.runs) and any(run.kind is Kind.CHAIN for run in walk.runs[:2])
    if many > (2 if joined and chained else 1) or not (joined or rows) or _into_ring(walk):
        return
    if rows:
        what = "You worked into the turning chain, which is not a stitch here."
        look = "Look at the end of the row for a stitch that stands on the chain."
    elif many == 2:
        what = "You worked into the join and into the beginning chain of the round below."
        look = "They look like stitches: the last ones before the marked stitch stand on them."
    else:
        what = "You worked into the join of the round below."
        look = "It looks like a stitch: see whether the last one before the marker stands on it."
    last = max(_stitch_runs(walk), default=0)
    yield Suspect(what, look, walk.run_start(last + 1) - 1, 95 // many)


def _stitch_runs(walk: Walk) -> list[int]:
    return [at for at, run in enumerate(walk.runs) if run.kind is Kind.STITCH]


def _gained(run: Run) -> int:
    """Stitches that a group of the run makes beyond the places it takes."""
    return run.per_place * run.makes - run.takes if run.takes else 0


def _by_repeat(walk: Walk, groups: Sequence[int]) -> int:
    """How many passes the groups lie in, where each lies in one of its own; else 0."""
    passes = {walk.runs[at].inside for at in groups}
    single = all(walk.runs[at].count == walk.runs[at].per_place for at in groups)
    return len(passes) if single and -1 not in passes and len(passes) == len(groups) else 0
