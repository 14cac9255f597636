"""A round below that is not in the text: what later rounds tell of it.

A maker pastes rounds from the middle of a pattern. Those that only keep or change the count
do not say what it is; a later one does, by the stitches it takes or the count printed with
it. From there the number follows backwards, where exactly one comes out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from tracker.fabric.contained import self_contained
from tracker.fabric.edge import Edge, plain_edge, stitches, turned
from tracker.fabric.effort import Effort, TooMuchError
from tracker.fabric.judge import is_many, is_shaped
from tracker.fabric.outcome import Outcome, Start
from tracker.fabric.reading import Reading
from tracker.fabric.stated import counting, figure_of
from tracker.fabric.trees import every, into_row_ends, names_space, slips
from tracker.fabric.verdicts import Verdict
from tracker.fabric.walker import walk
from tracker.fabric.ways import open_ways
from tracker.notation.tokens import plain
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Deed,
    Evenly,
    Figure,
    Group,
    Make,
    More,
    Node,
    Repeat,
    Skip,
)
from tracker.pattern.causes import figures
from tracker.pattern.checked import CheckedRound
from tracker.pattern.tasks import Task

#: The most stitches that a round below is taken to have.
MOST = 700
#: From two counts it is seen how the number goes through the rounds; so near to where they
#: point must it lie.
_PROBES = (240, 480)
_NEAR = 16
#: Ways of taking the telling round in which it would take another number of stitches.
_DOUBTFUL = ("times_in_all", "bunched", "shared", "same_is_next", "apart")
#: "Leave the rest unworked": the round does not go all round.
_PART_ONLY = re.compile(r"\b(?:leav(?:e|ing)|unworked|rest of|only over)\b")
#: The number a label ends on.
_DIGITS = re.compile(r"\d{1,6}$")
_SIDES = 3


@dataclass(frozen=True, slots=True)
class Seen:
    """A round as it was come to: its tree, and whether nothing was known of the one below.

    ``rowed``: it is turned at its end.
    """

    task: Task
    nodes: tuple[Node, ...]
    unknown: bool
    rowed: bool = False


@dataclass(frozen=True, slots=True)
class Told:
    """What a later round tells: the stitches ``below``, and ``why`` they are taken so many.

    ``proving``: line and label of the round whose printed count was used for it, and so
    proves nothing; or None.
    """

    below: Figure
    why: str
    proving: tuple[int, str] | None
    until: int


#: The habit for a round, with the chain that stands before it.
Habit = Callable[[tuple[Node, ...], Chain | None], Reading]


def told_later(
    found: Sequence[CheckedRound], seen: Sequence[Seen], sizes: int, habit: Habit, effort: Effort
) -> dict[int, Told]:
    """For the first of each run of rounds of unknown number, what the last of them tells."""
    told: dict[int, Told] = {}
    for first, last in _runs(found, seen):
        effort.begin()
        rounds = seen[first : last + 1]
        try:
            starts = [Start(None, index=i, effort=effort) for i in range(sizes)]
            below = [_below(rounds, start, habit) for start in starts]
        except TooMuchError:
            return told
        if all(below):
            told[first] = _told(tuple(n or 0 for n in below), found[last], seen[last])
    return told


def spoiled(found: Sequence[CheckedRound], told: Mapping[int, Told]) -> set[int]:
    """Of those told, the first rounds from which on not all comes out up to the telling one."""
    bad = (Verdict.UNREAD, Verdict.DIFFERS)
    return {
        first
        for first, one in told.items()
        if any(r.verdict in bad for r in found[first:] if r.line <= one.until)
    }


def _told(below: Figure, last: CheckedRound, seen: Seen) -> Told:
    count = f"taken to be worked into {figures(below)} stitches"
    if self_contained(seen.nodes):
        return Told(below, f"{count}, which is what {last.label} takes", None, last.line)
    why = f"{count}, from the count of {last.label}"
    return Told(below, why, (last.line, last.label), last.line)


def _runs(found: Sequence[CheckedRound], seen: Sequence[Seen]) -> Iterator[tuple[int, int]]:
    """First and last of each run: rounds that nothing is known of, and one that tells."""
    first = -1
    for index, (one, how) in enumerate(zip(found, seen, strict=True)):
        led = first >= 0 and follows(seen[index - 1].task, how.task)
        lost = how.unknown and one.verdict is Verdict.UNREAD and bool(how.nodes)
        if lost and not led:
            plainly = not any(names_space(n) for n in every(how.nodes))
            first = index if plainly and not into_row_ends(how.nodes) else -1
        elif not lost:
            agreed = one.verdict in (Verdict.AGREES, Verdict.UNSTATED)
            if led and how.unknown and agreed and _tells(how, found[index + 1 : index + 2]):
                yield first, index
            first = -1


def follows(one: Task, other: Task) -> bool:
    """Whether a round comes after another by their numbers, where both have one."""
    before, after = (_DIGITS.search(task.label) for task in (one, other))
    if before is None or after is None:
        return True
    return int(after.group()) == int(before.group()) + 1


def _tells(seen: Seen, then: Sequence[CheckedRound]) -> bool:
    """Whether a round surely goes into all stitches of the round below, or has a count that tells.

    One that is a single stitch many times may stop anywhere, unless the next goes on from it.
    """
    if not self_contained(seen.nodes):
        return seen.task.stated is not None and bool(seen.task.stated.total)
    nodes, text = seen.nodes, plain(seen.task.body.read.text)
    if _PART_ONLY.search(text):
        return False
    if any(_is_last(n) for n in every(nodes)):
        return True
    work = [n for n in nodes if isinstance(n, Make | Group | Skip | Repeat | Chain | Evenly)]
    repeats = any(isinstance(n, Repeat) and (n.times or (0,))[0] > 1 for n in nodes)
    deeds = {n.deed for n in nodes if isinstance(n, Act)}
    in_row = seen.rowed or Deed.TURN in deeds
    if in_row and work and isinstance(work[-1], Chain):
        work = work[:-1]  # the turning chain
    ends_on_chain = bool(work) and isinstance(work[-1], Chain) and Deed.JOIN not in deeds
    if not work or slips(work[0]) or ends_on_chain or any(map(_goes_aside, every(nodes))):
        return False
    if in_row:
        return repeats or _symmetrical(work)
    if repeats or Deed.JOIN in deeds:
        return True
    several = len([n for n in work if not isinstance(n, Chain) and not slips(n)]) > 1
    goes_on = any(r.verdict in (Verdict.AGREES, Verdict.UNSTATED) and r.below for r in then)
    return Deed.FASTEN not in deeds and (several or goes_on)


def _goes_aside(node: Node) -> bool:
    """Whether a node works back along a chain of the round's own: a strap, a spike."""
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.at is At.HOOK


def _is_last(node: Node) -> bool:
    """Whether a node goes into the last stitches."""
    if isinstance(node, Skip):
        return node.at is At.LAST
    target = node.target if isinstance(node, Make | Group) else None
    return target is not None and target.at is At.LAST


def _symmetrical(work: Sequence[Node]) -> bool:
    """Whether a row is shaped at its end as at its beginning."""
    made = [(n.stitch.us, n.count) for n in work if isinstance(n, Make)]
    return len(made) >= _SIDES and made == made[::-1]


def _below(rounds: Sequence[Seen], start: Start, habit: Habit) -> int | None:
    """The one number of stitches from which all rounds fit; None for none or several."""
    last = rounds[-1]
    found: set[int] = set()
    base = habit(last.nodes, None)
    unsaid = any(isinstance(n, Repeat) and n.starred and n.more is More.UNSAID for n in last.nodes)
    flips = [way for way in open_ways(last.nodes, False, "") if way in _DOUBTFUL]
    if any(isinstance(n, Make) and (is_shaped(n) or is_many(n)) for n in every(last.nodes)):
        flips = [way for way in flips if way != "bunched"]
    if not unsaid:  # "(sc 3, dec) rep 6 times" is six in all
        flips = [way for way in flips if way != "times_in_all"]
    for reading in (base, *(replace(base, **{way: not getattr(base, way)}) for way in flips)):
        found |= set(_fitting(rounds, start, habit, reading))
    return found.pop() if len(found) == 1 else None


def _fitting(rounds: Sequence[Seen], start: Start, habit: Habit, reading: Reading) -> Iterator[int]:
    """The numbers that fit, the last round being read in one way."""
    taken = _taken(rounds[-1].nodes, start, reading)
    wanted = taken or figure_of(_printed(rounds[-1]), start.index)
    counts = []
    for count in _PROBES:
        outcomes = _worked(rounds, count, start, habit, reading)
        counts.append(_told_by(outcomes, taken))
    one, two = counts
    if two <= one or not wanted:
        return
    slope = Fraction(two - one, _PROBES[1] - _PROBES[0])
    near = round(_PROBES[0] + (wanted - one) / slope)
    for count in range(max(1, near - _NEAR), min(near + _NEAR, MOST) + 1):
        outcomes = _worked(rounds, count, start, habit, reading)
        fits = all(o.short is None and not o.left for o in outcomes)
        if fits and _agrees(rounds[-1], outcomes[-1], start.index):
            yield count


def _printed(seen: Seen) -> Figure:
    stated = seen.task.stated
    return (stated.total if stated is not None else None) or (0,)


def _agrees(seen: Seen, outcome: Outcome, index: int) -> bool:
    """Whether the printed count of the last round, if it has one, is what it makes."""
    stated = seen.task.stated
    if stated is None:
        return True
    if stated.total is not None:
        total = (figure_of(stated.total, index),)
        stated = replace(stated, total=total)
    return counting(stated, [outcome]) is not None


def _taken(nodes: tuple[Node, ...], start: Start, reading: Reading) -> int:
    """How many stitches a round takes that says so itself; 0 for others."""
    if not self_contained(nodes):
        return 0
    outcome = walk(nodes, replace(start, edge=plain_edge(MOST)), reading)
    return 0 if outcome.short is not None else outcome.takes


def _told_by(outcomes: Sequence[Outcome], taken: int) -> int:
    """The count that is compared: before the last round, or of it."""
    return stitches(outcomes[-2].edge) if taken else outcomes[-1].makes


def _worked(
    rounds: Sequence[Seen], count: int, start: Start, habit: Habit, reading: Reading
) -> list[Outcome]:
    """All rounds, one after another, the first worked into so many stitches."""
    edge: Edge = plain_edge(count)
    pending: Chain | None = None
    found: list[Outcome] = []
    known: dict[object, Outcome] = {}
    for seen in rounds:
        taken = reading if seen is rounds[-1] else habit(seen.nodes, pending)
        key = (seen.nodes, edge, pending, taken)
        if key not in known:
            begun = replace(start, edge=edge, pending=pending)
            known[key] = walk(seen.nodes, begun, taken)
        found.append(known[key])
        edge, pending = known[key].edge, known[key].pending
        edge = turned(edge) if seen.rowed or known[key].turned else edge
    return found
