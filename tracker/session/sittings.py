"""What was worked between presses, and what it took, sitting by sitting."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from tracker.lean import TYPE_CHECKING
from tracker.session import worksheet
from tracker.session.items import Did, Item
from tracker.session.state import START, Spot
from tracker.session.worked import PAUSE

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan


@dataclass(frozen=True, slots=True)
class Done:
    """What one item of the history did.

    Attributes:
        spot: where the maker stood after it.
        spans: the steps worked, as a spot and the step one past the last.
        when: the time of its last press, in seconds since 1970; 0 if not known.
        took: seconds it took, pauses left out.
    """

    spot: Spot
    spans: tuple[tuple[Spot, int], ...]
    when: int
    took: int


def done(plan: Plan, items: Iterable[Item]) -> Iterator[Done]:
    """Each item of a history that is a press.

    A press on counts as work; a move to elsewhere does not, nor one back.
    """
    at = START
    for item in items:
        if not item.presses:
            continue
        spans: list[tuple[Spot, int]] = []
        for led, presses in _moves(item):
            to = _standing(plan, led)
            _join(spans, _worked(plan, at, to))
            at = to._replace(step=to.step + presses - 1)
            if presses > 1 and _inside(plan, at):
                _join(spans, [(to, at.step)])
        yield Done(at, tuple(spans), item.when, item.took)


def steps_between(plan: Plan, at: Spot, to: Spot) -> int:
    """How many steps a press worked that led from one spot to another."""
    return sum(stop - start.step for start, stop in _worked(plan, at, to))


def _join(spans: list[tuple[Spot, int]], more: Iterable[tuple[Spot, int]]) -> None:
    """Add spans, each to the one before where it goes on from there."""
    for start, stop in more:
        if spans and spans[-1][0].key == start.key and spans[-1][1] == start.step:
            spans[-1] = spans[-1][0], stop
        else:
            spans.append((start, stop))


def sittings(items: Sequence[Done]) -> list[list[Done]]:
    """The same, parted where the piece was put down or lay."""
    found: list[list[Done]] = []
    last = 0
    for one in items:
        if not found or (one.when and last and one.when - one.took - last > PAUSE):
            found.append([])
        found[-1].append(one)
        last = one.when or last
    return found


def _moves(item: Item) -> Iterator[tuple[Spot, int]]:
    """Where an item leads, and how many presses from there each went one step on."""
    if isinstance(item, Did):
        if item.done.spot is not None:
            yield item.done.spot._replace(loop=0), 1
        return
    for stretch in item.stretches:
        steps = 1 if stretch.by_loop else stretch.presses
        yield Spot(*item.key, stretch.step), steps


def _worked(plan: Plan, at: Spot, to: Spot) -> Iterator[tuple[Spot, int]]:
    """The steps that a move from one spot to another worked; none where it only went there."""
    if not (_inside(plan, at) and _inside(plan, to)):
        return
    stop = at.step
    if at.key == to.key:
        stop = to.step
    elif to.step == 0 and _follows(plan, at, to):
        stop = len(worksheet.round_at(plan, at).walk)
    if at.step < stop and _one_press(plan, at, stop):
        yield at, stop


def _follows(plan: Plan, at: Spot, to: Spot) -> bool:
    """Whether the one round comes after the other."""
    start, once_more = worksheet.start_of(to), worksheet.start_of(at)._replace(nth=at.nth + 1)
    return start in (worksheet.following_line(plan, at), once_more)


def _one_press(plan: Plan, at: Spot, stop: int) -> bool:
    """Whether a press by stitch, repeat or round leads there."""
    walk = worksheet.round_at(plan, at).walk
    by_round = at.step == 0 and stop == len(walk)
    return stop == at.step + 1 or by_round or stop == worksheet.unit(walk, at.step)[1]


def _standing(plan: Plan, spot: Spot) -> Spot:
    """The spot; at the start of a round that was left out since, the start of the next."""
    if spot.step or spot.part >= len(plan.parts) or worksheet.is_worked(plan, spot):
        return spot
    part = worksheet.part_at(plan, spot)
    at = dict(part.gone).get(spot.round, len(part.rounds))
    return spot if at >= len(part.rounds) else Spot(*spot.of, part.number(at))


def _inside(plan: Plan, spot: Spot) -> bool:
    """Whether the pattern has this spot; a file may say otherwise."""
    if spot.part >= len(plan.parts) or not worksheet.is_worked(plan, spot):
        return False
    return spot.step <= len(worksheet.round_at(plan, spot).walk)
