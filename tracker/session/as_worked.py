"""The pattern as it was really worked: in the one size, with all that the maker changed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from tracker.fabric.verdicts import Verdict
from tracker.notation.one_size import figure_in
from tracker.pattern.draft import to_toml
from tracker.pattern.own import Bench
from tracker.session import mending
from tracker.session.own import in_own_version
from tracker.session.state import Spot, State

if TYPE_CHECKING:
    from tracker.pattern.model import Part, Pattern
    from tracker.pattern.plan import Plan, PlannedPart, PlannedRound

_NUMBERED = re.compile(r"(rnds?|rounds?|rows?)\s*\d+[a-z]*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Difference:
    """One round that was not worked as printed.

    Attributes:
        part: the name of its part, with the copies where they differ.
        label: of the round in the version that was worked; as printed for one left out.
        how: "changed", "added", "left out" or "came right" (after a wrong count below).
        printed: the words in the pattern; "" for a round that was added.
        worked: the words that were worked, or how it came right; "" for one left out.
    """

    part: str
    label: str
    how: str
    printed: str
    worked: str


@dataclass(frozen=True, slots=True)
class AsWorked:
    """A pattern in one size, its rounds numbered anew, and how it differs from the printed."""

    pattern: Pattern
    differences: tuple[Difference, ...]


def as_worked(printed: Plan, state: State) -> AsWorked:
    """The piece's own version of its pattern. ``printed``: the plan as the pattern has it."""
    parts: list[Part] = []
    differences: list[Difference] = []
    for index, part in enumerate(in_own_version(printed, state).parts):
        scribe = _Scribe(printed, index, state)
        for own, first, copies in _versions(part):
            named = _named(part.part, first, copies)
            parts.append(scribe.part(own, named, copies))
            differences += scribe.differences(own, named, range(first, first + copies))
    return AsWorked(_in_one_size(printed, tuple(parts)), tuple(differences))


def _in_one_size(printed: Plan, parts: tuple[Part, ...]) -> Pattern:
    pattern = printed.pattern._replace(sizes=(), parts=parts)
    if printed.size:
        about = Bench(printed, printed.pattern.parts[0]).for_size(pattern.about)
        pattern = pattern._replace(title=f"{pattern.title}, {printed.size}", about=about)
    return pattern._replace(source=to_toml(pattern))


def _versions(part: PlannedPart) -> Iterator[tuple[PlannedPart, int, int]]:
    """Each version of a part with the first copy worked so (from 0), and how many are."""
    begins = [first for first, _ in part.own if 0 < first < part.part.make]
    bounds = [0, *begins, part.part.make]
    for first, end in pairwise(bounds):
        yield part.of(first), first, end - first


def _named(part: Part, first: int, copies: int) -> str:
    if copies == part.make:
        return part.name
    if copies == 1:
        return f"{part.name}, copy {first + 1}"
    return f"{part.name}, copies {first + 1} to {first + copies}"


class _Scribe:
    """Writes the rounds of one part."""

    def __init__(self, printed: Plan, index: int, state: State) -> None:
        self._plan = printed
        self._index = index
        self._printed = printed.parts[index]
        self._state = state
        self._bench = Bench(printed, self._printed.part)

    def part(self, own: PlannedPart, name: str, copies: int) -> Part:
        """The part as data, its rounds one a line."""
        part, at = self._printed.part, self._plan.pattern.sizes
        below = figure_in(part.below, at.index(self._plan.size) if self._plan.size else 0)
        changed = part._replace(name=name, make=copies, below=below, rounds_line=1)
        if part.steps:
            return changed
        rounds = "\n".join(_joined(list(self._lines(own)))) + "\n"
        return changed._replace(note=self._bench.for_size(part.note), rounds=rounds)

    def differences(self, own: PlannedPart, name: str, copies: range) -> Iterator[Difference]:
        """How a version differs from the printed one: rounds left out first."""
        labels = dict(zip(map(own.number, range(len(own.rounds))), self._labels(own), strict=True))
        printed = self._printed.rounds
        for number, _ in own.gone:
            if number < len(printed):
                one = printed[number]
                yield Difference(name, one.label, "left out", one.text, "")
        for at, planned in enumerate(own.rounds):
            number = own.number(at)
            words = printed[number].text if number < len(printed) else ""
            if planned.own:
                text = self._text(planned)
                yield Difference(name, labels[number], planned.own, words, text)
            for right in self._right(own, number, copies):
                yield Difference(name, labels[number], "came right", words, right)

    def _right(self, own: PlannedPart, number: int, copies: range) -> Iterator[str]:
        """How a round came right after a wrong count, in any of the copies."""
        walk = own.rounds[own.place(number)].walk
        for key, off in self._state.spread.items():
            if key[0] == self._index and key[1] in copies and key[2] == number:
                plan = in_own_version(self._plan, self._state)
                if mending.off_below(plan, self._state, Spot(*key)) == off:
                    yield mending.words(walk, off)

    def _lines(self, own: PlannedPart) -> Iterator[tuple[str, str]]:
        """Label and words of each line; lines that only change colour have no label."""
        labels = self._labels(own)
        for at, planned in enumerate(own.rounds):
            for deed in self._bench.deeds(own.number(at)):
                yield "", self._bench.for_size(deed)
            yield labels[at], self._text(planned)

    def _labels(self, own: PlannedPart) -> Sequence[str]:
        """The labels of a version, numbered on without gaps."""
        found, number = [], 0
        for planned in own.rounds:
            word = _NUMBERED.search(planned.label)
            if word is None:
                found.append("" if planned.label == "Start" else planned.label)
                number += planned.label == "Start"
            else:
                number += 1
                found.append(f"{'Row' if word[1].lower().startswith('row') else 'Rnd'} {number}")
        return found

    def _text(self, planned: PlannedRound) -> str:
        """The words of a round in its size, with the count that it ended on."""
        words = self._bench.for_size(planned.text)
        if planned.verdict in (Verdict.AGREES, Verdict.UNREAD) or planned.until:
            return words
        stated = self._bench.read(words).stated
        if stated is not None and stated.total:
            return f"{words[: stated.start]}({planned.walk.makes}){words[stated.end :]}"
        return f"{words.rstrip('. ')}. ({planned.walk.makes})" if planned.own else words


def _joined(lines: Sequence[tuple[str, str]]) -> Iterator[str]:
    """The lines as text; rounds in a row that are the same are one line."""
    at = 0
    while at < len(lines):
        end = at + 1
        while end < len(lines) and _go_on(lines[at], lines[end]):
            end += 1
        label, words = lines[at]
        if end - at > 1:
            word, first = label.split()
            label = f"{word}s {first}-{int(first) + end - at - 1}"
        yield f"{label}: {words}" if label else words
        at = end


def _go_on(one: tuple[str, str], other: tuple[str, str]) -> bool:
    return one[1] == other[1] and all(_NUMBERED.match(label) for label, _ in (one, other))
