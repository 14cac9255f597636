"""What the hands do in one round: steps, kept as runs of equal ones.

A round of 600 stitches is a few dozen runs, so that walking a round and standing at any
step of it costs by the instruction, not by the stitch.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from enum import StrEnum

from tracker.lean import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from typing import overload


class Kind(StrEnum):
    """What a step is: one stitch, or one thing the hands do that makes none."""

    STITCH = "stitch"
    CHAIN = "chain"
    JOIN = "join"
    TURN = "turn"
    COLOUR = "colour"
    MARKER = "marker"
    RING = "ring"
    FASTEN = "fasten off"
    SENTENCE = "sentence"


class Pass(NamedTuple):
    """One pass through a repeat: the ``k``-th (from 1) of repeat ``repeat``.

    ``outer`` is the index of the enclosing pass in `Walk.passes`, or -1.
    """

    repeat: int
    k: int
    outer: int


class Run(NamedTuple):
    """``count`` equal steps in a row.

    Attributes:
        kind: what each step is.
        stitch: abbreviation of the stitch, in the pattern's own terms; "" for actions.
        name: how the step is called in a sentence ("half double crochet", "join").
        text: what to do, as short as a maker would say it ("hdc", "ch 2", "hdc2tog").
        where: where it goes ("in the next st", "in the ring"); may be empty.
        start, end: offsets of the words it comes from, into the round's text.
        count: how many steps.
        per_place: how many of them go into one place (2 for "2 dc in each st").
        takes: places of the round below used by the group of ``per_place`` steps.
        makes: what each step adds to the count of the round (0 or more).
        inside: index in `Walk.passes` of the innermost pass it belongs to, or -1.
        colour: letter of the yarn in hand; "" where the pattern names none.
        variant: "" or "first" or "last": which way of working a special stitch applies.
    """

    kind: Kind
    stitch: str
    name: str
    text: str
    where: str
    start: int
    end: int
    count: int = 1  # type: ignore[assignment]  # instead of how often a tuple has a value
    per_place: int = 1
    takes: int = 0
    makes: int = 0
    inside: int = -1
    colour: str = ""
    variant: str = ""


class InRepeat(NamedTuple):
    """Where a step is in one repeat: pass ``k`` of ``of``, step ``step`` of ``steps``.

    ``of`` is 0 where the number of passes is not known. All counted from 1.
    """

    k: int
    of: int
    step: int
    steps: int
    start: int
    end: int


class Step(NamedTuple):
    """One step of a round, as the maker meets it.

    Attributes:
        run: the run it belongs to: kind, stitch, words, place.
        nth: which of the steps that go into the same place (from 1, of ``run.per_place``).
        within: its number in its run, from 0.
        made_before: stitches of the round made before this step.
        repeats: the repeats it stands in, outermost first.
    """

    run: Run
    nth: int
    within: int
    made_before: int
    repeats: tuple[InRepeat, ...]


class Walk(Sequence[Step]):
    """All the steps of one round in one size, in order.

    ``passes`` lists every pass through every repeat; ``times`` gives, by repeat number,
    how many passes it had; ``spans`` the words of each repeat in the round's text.
    """

    __slots__ = ("_made", "_starts", "passes", "runs", "spans", "times")
    __match_args__ = ("runs", "passes", "times", "spans")

    def __init__(
        self,
        runs: tuple[Run, ...],
        passes: tuple[Pass, ...] = (),
        times: tuple[int, ...] = (),
        spans: tuple[tuple[int, int], ...] = (),
    ) -> None:
        self.runs = runs
        self.passes = passes
        self.times = times
        self.spans = spans
        starts, made, steps, count = [], [], 0, 0
        for run in self.runs:
            starts.append(steps)
            made.append(count)
            steps += run.count
            count += run.count * run.makes
        self._starts = (*starts, steps)
        self._made = (*made, count)

    def _all(self) -> tuple[object, ...]:
        return self.runs, self.passes, self.times, self.spans

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Walk) and self._all() == other._all()

    def __hash__(self) -> int:
        return hash(self._all())

    def __len__(self) -> int:
        return self._starts[-1]

    @property
    def makes(self) -> int:
        """The count of the round when all its steps are done."""
        return self._made[-1]

    if TYPE_CHECKING:

        @overload
        def __getitem__(self, index: int) -> Step: ...
        @overload
        def __getitem__(self, index: slice) -> Sequence[Step]: ...

    def __getitem__(self, index: int | slice) -> Step | Sequence[Step]:
        if isinstance(index, slice):
            return [self[i] for i in range(*index.indices(len(self)))]
        if index < 0:
            index += len(self)
        if not 0 <= index < len(self):
            raise IndexError(index)
        which = bisect_right(self._starts, index) - 1
        run = self.runs[which]
        within = index - self._starts[which]
        before = self._made[which] + within * run.makes
        return Step(
            run=run,
            nth=within % run.per_place + 1,
            within=within,
            made_before=before,
            repeats=self._repeats(index, run),
        )

    def __iter__(self) -> Iterator[Step]:
        return (self[i] for i in range(len(self)))

    def made_before(self, index: int) -> int:
        """Stitches made before step ``index``; ``len(self)`` asks for the whole round."""
        if index >= len(self):
            return self.makes
        return self[index].made_before

    def run_of(self, index: int) -> int:
        """Which run the step ``index`` belongs to."""
        return bisect_right(self._starts, index) - 1

    def run_start(self, which: int) -> int:
        """Index of the first step of run ``which`` (or the end, for ``len(runs)``)."""
        return self._starts[which]

    def pass_bounds(self, index: int, depth: int = 0) -> tuple[int, int] | None:
        """First step and one past the last of the pass round step ``index``.

        ``depth`` 0 is the outermost repeat. None where the step is in no such repeat.
        """
        which = self.run_of(index)
        chain = self._chain(self.runs[which])
        if depth >= len(chain):
            return None
        wanted = chain[depth]
        low, high = which, which
        while low > 0 and wanted in self._chain(self.runs[low - 1]):
            low -= 1
        while high + 1 < len(self.runs) and wanted in self._chain(self.runs[high + 1]):
            high += 1
        return self._starts[low], self._starts[high + 1]

    def _chain(self, run: Run) -> tuple[int, ...]:
        """Indices of the passes that enclose ``run``, outermost first."""
        chain: list[int] = []
        at = run.inside
        while at >= 0:
            chain.append(at)
            at = self.passes[at].outer
        return tuple(reversed(chain))

    def _repeats(self, index: int, run: Run) -> tuple[InRepeat, ...]:
        found = []
        for depth, which in enumerate(self._chain(run)):
            bounds = self.pass_bounds(index, depth)
            assert bounds is not None
            here = self.passes[which]
            start, end = self.spans[here.repeat]
            found.append(
                InRepeat(
                    k=here.k,
                    of=self.times[here.repeat],
                    step=index - bounds[0] + 1,
                    steps=bounds[1] - bounds[0],
                    start=start,
                    end=end,
                )
            )
        return tuple(found)
