"""What a maker works otherwise than the pattern has it, round by round."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.lean import NamedTuple


class Change(NamedTuple):
    """One round of a part, worked otherwise, added or left out.

    Attributes:
        round: its number in the part, from 0: first the pattern's own rounds in order of
            work, then those that were added, in the order in which they were.
        words: what is worked, as typed; "" leaves the round out; None: as printed again.
        after: for a round that is added, the number of the one it follows, -1 where it
            comes before the first; None for a round that is there already.
    """

    round: int
    words: str | None
    after: int | None = None


def in_order(rounds: int, changes: Sequence[Change]) -> list[int]:
    """The numbers of all rounds in order of work, those left out too.

    ``rounds``: how many the pattern has.
    """
    order = list(range(rounds))
    for change in changes:
        if change.after is None or change.round in order or change.round < rounds:
            continue
        order.insert(_behind(change.after, order), change.round)
    return order


def _behind(number: int, order: list[int]) -> int:
    """Where in the order the round behind this one comes."""
    if number < 0:
        return 0
    return order.index(number) + 1 if number in order else len(order)


def words_by_round(changes: Sequence[Change]) -> dict[int, str]:
    """What is worked in place of what is printed, by the number of the round; "" left out."""
    last = {change.round: change.words for change in changes}
    return {number: words for number, words in last.items() if words is not None}
