"""Increases and decreases spread evenly, and counts that fit a stitch's multiple.

With ``c`` stitches and ``k`` changes the stretches between them are ``c // k`` and one more
stitches long, ``c % k`` of them the longer: 186 = 6 x 23 + 2 x 24
(https://wilmade.com/calculate-evenly-spaced-increases-decreases/). The two lengths are mixed
as evenly as whole stitches allow, by Euclid's division.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

MOST = 10_000
"""Stitches of the longest round that is worked out."""

MOST_ROUNDS = 200

ROUND_PHASES = tuple(Fraction(n, 4) for n in (0, 2, 1, 3))
"""Where in its stretch a change stands, round after round, as a share from its end."""

ROW_PHASES = tuple(Fraction(n, 8) for n in (4, 2, 6, 3, 5))
"""The same in turned rows, seen from one side: never at an edge."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """One change with the plain stitches before and after it."""

    before: int
    after: int


@dataclass(frozen=True, slots=True)
class Repeat:
    """Stretches, or repeats of them, worked ``times`` times."""

    parts: tuple[Stretch | Repeat, ...]
    times: int


@dataclass(frozen=True, slots=True)
class EvenRound:
    """A round or row with evenly spread changes.

    Attributes:
        below: stitches of the round below; it takes them all.
        makes: stitches it makes.
        parts: the stretches in order; empty where nothing changes.
    """

    below: int
    makes: int
    parts: tuple[Repeat, ...]

    @property
    def stretches(self) -> Iterator[Stretch]:
        """Every stretch in order, repeats worked out."""
        for part in self.parts:
            yield from _unrolled(part)

    @property
    def changes(self) -> int:
        """Stitches more than below, or fewer: a negative number."""
        return self.makes - self.below

    @property
    def used(self) -> Iterator[int]:
        """The stitches of the round below, from 0, that its changes are worked into."""
        uses, at = 1 if self.changes > 0 else 2, 0
        for stretch in self.stretches:
            at += stretch.before
            yield from range(at, at + uses)
            at += uses + stretch.after

    def made(self, *, turned: bool = False) -> frozenset[int]:
        """The stitches that its changes make, from 0 as the next round (or row) meets them."""
        made, at = 2 if self.changes > 0 else 1, 0
        found: list[int] = []
        for stretch in self.stretches:
            at += stretch.before
            found += range(at, at + made)
            at += made + stretch.after
        return frozenset(self.makes - 1 - index if turned else index for index in found)


def even_rounds(have: int, want: int, rounds: int = 1, *, turned: bool = False) -> list[EvenRound]:
    """The rounds that bring ``have`` stitches to ``want``, the change shared among them.

    The changes are set off from round to round: none is worked into the stitches of a change
    of the round below where that can be helped. ``turned``: they are rows, worked to and
    fro, and the changes keep off the edges where there is room.

    Raises:
        ValueError: that cannot be worked; the message says why.
    """
    if not 1 <= rounds <= MOST_ROUNDS:
        raise ValueError(f"the number of rounds must be from 1 to {MOST_ROUNDS}")
    for count in (have, want):
        if not 1 <= count <= MOST:
            raise ValueError(f"a count of stitches must be from 1 to {MOST:,}")
    counts = [have + (want - have) * done // rounds for done in range(rounds + 1)]
    found: list[EvenRound] = []
    for below, makes in pairwise(counts):
        found.append(_set_off(below, makes, found, turned=turned))
    return found


def even_round(below: int, makes: int, after: int = 0) -> EvenRound:
    """One such round; ``after``: plain stitches behind each change, before the next stretch.

    Raises:
        ValueError: ``makes`` is more than twice ``below``, or less than half of it, or the
            stretches are too short for ``after``.
    """
    least, most = -(-below // 2), 2 * below
    if not least <= makes <= most:
        raise ValueError(f"{below} stitches become {least} to {most} in one round, not {makes}")
    changes = abs(makes - below)
    if not changes:
        return EvenRound(below, makes, ())
    uses = 1 if makes > below else 2
    short, longer = divmod(below, changes)
    before = short - uses - after
    if before < 0 or after < 0:
        raise ValueError(f"no room for {after} stitches after each change")
    parts = (Stretch(before + 1, after), longer), (Stretch(before, after), changes - longer)
    return EvenRound(below, makes, _mixed(*parts[0], *parts[1]))


def _mixed(
    one: Stretch | Repeat, ones: int, other: Stretch | Repeat, others: int
) -> tuple[Repeat, ...]:
    """So many of two things in an order as even as can be, as nested repeats."""
    if ones < others:
        one, ones, other, others = other, others, one, ones
    if not others:
        return (Repeat((one,), ones),)
    times, left = divmod(ones, others)
    several = one if times == 1 else Repeat((one,), times)
    group = Repeat((several, other), 1)
    if not left:
        return (Repeat(group.parts, others),)
    return _mixed(group, others, one, left)


def _set_off(below: int, makes: int, before: list[EvenRound], *, turned: bool) -> EvenRound:
    """The round whose changes meet the fewest changes of the round before."""
    changes = abs(makes - below)
    if not changes:
        return EvenRound(below, makes, ())
    room = below // changes - (1 if makes > below else 2)
    if room < 0:
        even_round(below, makes)
    phases = ROW_PHASES if turned else ROUND_PHASES
    share = phases[len(before) % len(phases)]
    wished = round(share * room) if not turned or len(before) % 2 else round((1 - share) * room)
    taken = before[-1].made(turned=turned) if before else frozenset()
    after = sorted(range(room + 1), key=lambda after: abs(after - wished))
    found = (even_round(below, makes, one) for one in after)
    return _first_clear(found, taken)


def _first_clear(rounds: Iterator[EvenRound], taken: frozenset[int]) -> EvenRound:
    """The first whose changes use none of these stitches; else the one that uses fewest."""
    best = next(rounds)
    least = len(taken.intersection(best.used))
    for one in rounds:
        if not least:
            break
        meets = len(taken.intersection(one.used))
        if meets < least:
            best, least = one, meets
    return best


def _unrolled(part: Stretch | Repeat) -> Iterator[Stretch]:
    if isinstance(part, Stretch):
        yield part
        return
    for _ in range(part.times):
        for inner in part.parts:
            yield from _unrolled(inner)


def even_words(one: EvenRound, stitch: str = "sc", basic: str = "sc") -> str:
    """The round as a maker writes it: "[3 sc, inc] x 12".

    ``inc`` is two of the stitch in one place, ``dec`` one over two places; the name of the
    stitch stands before it unless it is ``basic``, which those words mean by themselves.
    """
    if not one.changes:
        return f"{one.below} {stitch}"
    if one.makes == 2 * one.below:
        return f"2 {stitch} in each st"
    deed = "inc" if one.changes > 0 else "dec"
    said = deed if stitch == basic else f"{stitch} {deed}"
    return ", ".join(_words(part, stitch, said) for part in one.parts)


def _words(part: Stretch | Repeat, stitch: str, deed: str) -> str:
    if isinstance(part, Stretch):
        plain = (_plain(part.before, stitch), deed, _plain(part.after, stitch))
        return ", ".join(word for word in plain if word)
    inner = ", ".join(_words(one, stitch, deed) for one in part.parts)
    return inner if part.times == 1 else f"[{inner}] x {part.times}"


def _plain(count: int, stitch: str) -> str:
    return "" if not count else stitch if count == 1 else f"{count} {stitch}"


def counts_of_multiple(count: int, of: int, plus: int = 0) -> tuple[int | None, int]:
    """The counts next to ``count`` that are a multiple of ``of`` with ``plus`` more.

    The first is at most ``count`` (None where that would be less than one multiple), the
    second at least. "Multiple of 6 + 2" is 6 x n + 2, multiplied first
    (https://oombawkadesigncrochet.com/using-stitch-pattern-multiples/: 68 is 11 x 6 + 2).

    Raises:
        ValueError: ``of`` is below 1, or ``plus`` or ``count`` is negative.
    """
    if of < 1 or plus < 0 or count < 0:
        raise ValueError("a multiple is of 1 or more, with 0 or more added")
    times = (count - plus) // of
    down = times * of + plus if times >= 1 else None
    if down == count:
        return count, count
    return down, max(1, times + 1) * of + plus
