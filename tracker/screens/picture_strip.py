"""The steps of a round that are in sight, side by side, the current one in its spot.

Costs by the columns in sight, never by the length of the round.
"""

from __future__ import annotations

from collections.abc import Iterator

from tracker.fabric.steps import Run, Walk
from tracker.lean import NamedTuple
from tracker.screens.picture_shapes import Drawn, Marks, small, tall
from tracker.screens.picture_signs import Sign, height_of, sign_of

BEFORE = 2, 5
"""Where a long round keeps the current step: two fifths from the left."""


TENS = 10


class Size(NamedTuple):
    """Columns in sight, columns from stitch to stitch (4: tall), and between repeats."""

    width: int
    pitch: int
    gap: int


class Stood(NamedTuple):
    """A step in its spot.

    ``x`` is its first column (below 0 where it is cut off), ``gap`` the columns left free
    before it, ``turn`` which pass of the outermost repeat it begins, or 0; ``tenth`` the count
    with it where that is a ten and no repeats divide the round. ``here`` is the current step.
    """

    x: int
    gap: int
    drawn: Drawn
    sign: Sign
    run: Run
    worked: bool
    here: bool
    turn: int
    tenth: int


class Strip(NamedTuple):
    """Draws the steps round a place."""

    walk: Walk
    step: int
    size: Size
    terms: str
    marks: Marks

    def stood(self) -> list[Stood]:
        """All steps in sight from left to right.

        A round that fits as a whole begins at the left and stays; a longer one moves along
        under the current step.
        """
        before = list(self._until_full(self._steps(self.step, -1)))
        after = list(self._until_full(self._steps(self.step, 1)))
        left, right = (sum(one.gap + one.drawn.width for one in side) for side in (before, after))
        whole = len(before) == self.step and len(after) == len(self.walk) - self.step
        if whole and left + right <= self.size.width:
            at = left
        else:
            at = self.size.width * BEFORE[0] // BEFORE[1]
            at -= after[0].gap if after else 0
        return [*self._set(reversed(before), at - left), *self._set(iter(after), at)]

    def _set(self, steps: Iterator[Stood], x: int) -> Iterator[Stood]:
        for one in steps:
            x += one.gap
            if x < self.size.width and x + one.drawn.width > 0:
                yield one._replace(x=x)
            x += one.drawn.width

    def _until_full(self, steps: Iterator[Stood]) -> Iterator[Stood]:
        room = self.size.width
        for one in steps:
            if room <= 0:
                return
            yield one
            room -= one.gap + one.drawn.width

    def _steps(self, start: int, way: int) -> Iterator[Stood]:
        """From the step on, or from the one before it back to the first."""
        at = start if way > 0 else start - 1
        if not 0 <= at < len(self.walk):
            return
        which = self.walk.run_of(at)
        within = at - self.walk.run_start(which)
        while True:
            yield self._one(which, within, at)
            at, within = at + way, within + way
            if not 0 <= within < self.walk.runs[which].count:
                which += way
                if not 0 <= which < len(self.walk.runs):
                    return
                within = 0 if way > 0 else self.walk.runs[which].count - 1

    def _one(self, which: int, within: int, at: int) -> Stood:
        run = self.walk.runs[which]
        sign = sign_of(self.walk, which, within)
        turn = self._turn(which) if within == 0 else 0
        worked, here = at < self.step, at == self.step
        gap = self.size.gap if (turn or self._leaves(which, within)) and at else 0
        drawn = self._draw(sign, worked, run)
        return Stood(0, gap, drawn, sign, run, worked, here, turn, self._tenth(run, at))

    def _tenth(self, run: Run, at: int) -> int:
        """The count with this stitch where it is a ten.

        Makers count so:
        https://thecrochetedmoon.com/post/know-your-crochet-how-to-start-crocheting-part-7-fixing-a-mistake
        """
        if self.walk.times or run.makes != 1:
            return 0
        count = self.walk.made_before(at) + 1
        return 0 if count % TENS else count

    def _draw(self, sign: Sign, worked: bool, run: Run) -> Drawn:
        if self.size.pitch < 4:
            return small(sign, worked, self.size.pitch, self.marks)
        height = height_of(run.stitch, self.terms) if run.stitch else 2
        return tall(sign, worked, height, self.marks)

    def _turn(self, which: int) -> int:
        """Which pass begins with the run, from 1; 0 where none does."""
        mine = self._outermost(which)
        if mine < 0 or (which > 0 and self._outermost(which - 1) == mine):
            return 0
        return self.walk.passes[mine].k

    def _leaves(self, which: int, within: int) -> bool:
        """Whether a repeat ends just before the step."""
        if within or which == 0:
            return False
        return self._outermost(which) < 0 <= self._outermost(which - 1)

    def _outermost(self, which: int) -> int:
        at = self.walk.runs[which].inside
        while at >= 0 and self.walk.passes[at].outer >= 0:
            at = self.walk.passes[at].outer
        return at
