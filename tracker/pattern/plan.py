"""A pattern in one size, ready to be worked: parts, rounds and their steps."""

from __future__ import annotations

import re
from collections.abc import Sequence

from tracker.fabric.steps import Kind, Run, Walk
from tracker.fabric.verdicts import Verdict
from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.pattern.model import Part, Pattern

if TYPE_CHECKING:
    from tracker.notation.tree import Figure
    from tracker.pattern.checked import Check, CheckedRound

#: Figures of several sizes side by side.
_FIGURE = r"\d+(?:\.\d+|\s?[¼½¾⅓⅔⅛⅜⅝⅞]|\s+\d+/\d+(?!/))?"
_FIGURES = (
    rf"{_FIGURE}(?:(?:\s*[(\[]\s*{_FIGURE}(?:\s*[,;/]\s*{_FIGURE})*\s*[)\]])+"
    rf"|(?:/{_FIGURE})+|(?:,\s*{_FIGURE}){{2,}})"  # "ch 1, 8 sc" is no figure for two sizes
)


class PlannedRound(NamedTuple):
    """One round (or row) to be worked, in one size.

    Attributes:
        label: as the maker says it ("Rnd 7", "Row 12", "Foundation").
        text: the instruction as written, without its label; plain text. Offsets in
            ``walk`` point into it.
        line: line of the pattern file it stands on.
        verdict: what the check says of it.
        below: stitches the round below leaves; None where nothing is below or known.
        ends_on: the count the round must end on: the printed figure where there is one,
            else what was counted; None where neither is known.
        until: "" or, for a round of open length, the words that end it ("until piece
            measures 9 cm"). Such a round is worked again and again until then.
        walk: the steps; never empty.
        warning: what the check found wrong, in one sentence; "" where all is well.
        own: "changed" or "added" by the maker; "" for a round of the pattern.
    """

    label: str
    text: str
    line: int
    verdict: Verdict
    below: int | None
    ends_on: int | None
    until: str
    walk: Walk
    warning: str = ""
    own: str = ""

    @property
    def increase(self) -> bool:
        """Whether the round makes more stitches than the round below left."""
        return self.ends_on is not None and self.below is not None and self.ends_on > self.below


class PlannedPart(NamedTuple):
    """One part in one size. A making-up part has one round a sentence, one step each.

    Attributes:
        part: as the pattern has it.
        rounds: in order of work.
        numbers: the number of each (see `Change.round`); empty where they are 0, 1, 2 …
        gone: rounds left out: the number of each, and where in ``rounds`` the next one stands.
        own: the maker's own versions: each from a copy on (from 0), in order.
    """

    part: Part
    rounds: Sequence[PlannedRound]
    numbers: tuple[int, ...] = ()
    gone: tuple[tuple[int, int], ...] = ()
    own: tuple[tuple[int, PlannedPart], ...] = ()

    @property
    def name(self) -> str:
        """The part's name."""
        return self.part.name

    @property
    def making_up(self) -> bool:
        """Whether its rounds are sentences to tick."""
        return bool(self.part.steps)

    def of(self, copy: int) -> PlannedPart:
        """The part as it is worked in a copy (from 0): a copy is like the one before it."""
        return next((part for first, part in reversed(self.own) if first <= copy), self)

    @property
    def versions(self) -> tuple[PlannedPart, ...]:
        """The part as printed, and each version of the maker's own."""
        return (self, *(part for _, part in self.own))

    def number(self, at: int) -> int:
        """The number of the round at a place in ``rounds``."""
        return self.numbers[at] if self.numbers else at

    def place(self, number: int) -> int:
        """Where in ``rounds`` a round stands; for one left out, where the next one does.

        That is behind the last where none follows. A number that no round has is taken
        for the last.
        """
        if not self.numbers:
            return min(number, len(self.rounds) - 1)
        if number in self.numbers:
            return self.numbers.index(number)
        return dict(self.gone).get(number, len(self.rounds) - 1)


class Plan(NamedTuple):
    """A pattern in one size. ``size`` is "" for a piece in one size."""

    pattern: Pattern
    size: str
    parts: tuple[PlannedPart, ...]


def make_plan(pattern: Pattern, size: str = "") -> Plan:
    """Work out every round of ``pattern`` in ``size``.

    Raises:
        ValueError: the pattern has no such size ("" stands for the first).
    """
    if size and size not in pattern.sizes:
        raise ValueError(f"no size {size!r}; there are {', '.join(pattern.sizes) or 'none'}")
    return _plan(pattern, _checked(pattern), pattern.sizes.index(size) if size else 0)


def make_plans(pattern: Pattern, checked: Check | None = None) -> tuple[Plan, ...]:
    """The plan of each size, in order; of the one there is, where no sizes are named.

    ``checked`` is the check of the pattern, where it is at hand.
    """
    checked = checked or _checked(pattern)
    return tuple(_plan(pattern, checked, index) for index in range(len(pattern.sizes) or 1))


def _checked(pattern: Pattern) -> Check:
    # Imported here so that a plan kept from before is read back without it.
    from tracker.pattern.check import check_pattern

    return check_pattern(pattern)


def _plan(pattern: Pattern, checked: Check, index: int) -> Plan:
    parts = tuple(
        PlannedPart(
            part,
            _sentences(part)
            if part.steps
            else tuple(
                planned_round(r, index, len(pattern.sizes))
                for r in rounds.rounds
                if r.is_for(index)
            ),
        )
        for part, rounds in zip(pattern.parts, checked.parts, strict=True)
    )
    return Plan(pattern, pattern.sizes[index] if pattern.sizes else "", parts)


def _sentences(part: Part) -> tuple[PlannedRound, ...]:
    """Making up: each sentence is a round of one step."""
    return tuple(
        PlannedRound(
            label=f"Step {number}",
            text=text,
            line=part.rounds_line,
            verdict=Verdict.UNSTATED,
            below=None,
            ends_on=None,
            until="",
            walk=_one_step(text, 0),
        )
        for number, text in enumerate(part.steps, start=1)
    )


def _one_step(text: str, makes: int) -> Walk:
    """A whole text as a single step, for words that are worked as they stand."""
    run = Run(Kind.SENTENCE, "", "as written", "as written", "", 0, len(text), makes=makes)
    return Walk((run,))


def planned_round(checked: CheckedRound, index: int, sizes: int) -> PlannedRound:
    """A checked round in the size ``index`` of so many."""
    below = _at(checked.below, index)
    stated = _at(checked.stated, index)
    counted = _at(checked.makes, index)
    walk = _walk(checked, index, stated)
    return PlannedRound(
        label=checked.label,
        text=checked.text,
        line=checked.line,
        verdict=checked.verdict,
        below=below,
        ends_on=stated if stated is not None else counted,
        until=for_size(checked.until, index, sizes),
        walk=walk,
        warning=next((m.text for m in checked.messages if m.serious), ""),
    )


def for_size(words: str, index: int, sizes: int) -> str:
    """The words with the figures of one size: "until 15 (16, 18, 20) cm", "15/16/18/20 cm"."""

    def one(match: re.Match[str]) -> str:
        figures = re.findall(_FIGURE, match.group())
        return str(figures[index]) if len(figures) == sizes else match.group()

    return re.sub(_FIGURES, one, words)


def _at(figure: Figure | None, index: int) -> int | None:
    if not figure:
        return None
    return figure[index] if index < len(figure) else figure[0]


def _walk(checked: CheckedRound, index: int, stated: int | None) -> Walk:
    if checked.judged is None:
        return _one_step(checked.text, stated or 0)
    outcome = checked.judged.outcomes[index]
    runs = tuple(outcome.runs)
    if not runs:
        return _one_step(checked.text, outcome.makes)
    if checked.judged.counting in ("stitches and spaces", "stitches and chains", "spaces"):
        runs = _counting_chains(runs, checked.judged.counting)
    return Walk(runs, tuple(outcome.passes), tuple(outcome.times), tuple(outcome.spans))


def _counting_chains(runs: tuple[Run, ...], counting: str) -> tuple[Run, ...]:
    """The same runs where the printed count takes in chain spaces, or only those."""

    def makes(run: Run) -> int:
        if run.kind is not Kind.CHAIN or run.makes:
            return 0 if counting == "spaces" else run.makes
        length = int(run.text.split()[-1])
        return length if counting == "stitches and chains" else 1

    return tuple(run._replace(makes=makes(run)) for run in runs)
