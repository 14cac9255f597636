"""A piece -> the pattern as it was really worked: in its one size, with its own rounds."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import groupby

from tracker.pattern.care import Care
from tracker.pattern.model import Part, Pattern
from tracker.pattern.own import Bench
from tracker.pattern.plan import Plan, PlannedPart, PlannedRound, for_size
from tracker.session import worksheet
from tracker.session.state import Copy, State

_NUMBERED = re.compile(r"(.*?)\s*(\d+)[a-z]*$")
_REPEATED = re.compile(r"(?:rep|repeat|cont|continue|work)\b", re.IGNORECASE)
_SENTENCE_END = re.compile(r"\.(?=\s|$)")
_NAMED = re.compile(r"\b((?:Rnd|Row|Round)s?) (\d+)((?:-| to | and )(\d+))?")


@dataclass(frozen=True, slots=True)
class Worked:
    """One round as it was worked, once or several times in a row.

    ``kind`` and ``number`` make its label; a label without number is ``kind`` alone. A line
    that is no round ("Change to B.") has neither.
    """

    kind: str
    number: int
    words: str
    times: int = 1

    @property
    def line(self) -> str:
        """The round as a pattern has it."""
        if not self.kind:
            return self.words
        if not self.number:
            return f"{self.kind}: {self.words}"
        if self.times == 1:
            return f"{self.kind} {self.number}: {self.words}"
        return f"{self.kind}s {self.number}-{self.number + self.times - 1}: {self.words}"


@dataclass(frozen=True, slots=True)
class Version:
    """One part as it was worked in one copy, or in several.

    Attributes:
        rounds: in order.
        copies: which copies (from 0) were worked so.
        numbers: what became of the numbers of the printed rounds.
        labels: the label of each round, by its number in the part (see `Change.round`) and
            which time it was worked, from 0.
    """

    rounds: tuple[Worked, ...]
    copies: tuple[int, ...] = ()
    numbers: dict[int, int] = field(default_factory=dict)
    labels: dict[tuple[int, int], str] = field(default_factory=dict)

    @property
    def renumbered(self) -> bool:
        """Whether any round has another number than the pattern gave it."""
        return any(old != new for old, new in self.numbers.items())


def as_worked(plan: Plan, state: State) -> Pattern:
    """The pattern of a piece as it was really worked.

    Rounds of open length that are finished stand as often as they were worked; of
    alternatives only the one chosen is there; copies that differ are parts of their own.

    Args:
        plan: the plan with the maker's own changes.
        state: the piece's.
    """
    pattern = plan.pattern
    index = pattern.sizes.index(plan.size) if plan.size else 0
    count = len(pattern.sizes)
    chosen = worksheet.chosen_parts(plan, state)
    parts: list[Part] = []
    for at, planned in enumerate(plan.parts):
        if chosen[at]:
            parts += _parts(planned, versions(plan, state, at), index, count)
    size = plan.size or None
    return pattern._replace(
        parts=tuple(parts),
        sizes=(plan.size,) if plan.size else (),
        about=for_size(pattern.about, index, count),
        cautions=tuple(one.id for one in Care(pattern, size).cautions),
        source="",
    )


def versions(plan: Plan, state: State, part: int) -> tuple[Version, ...]:
    """How the copies of a part were worked: those that are alike together, in order."""
    planned = plan.parts[part]
    if planned.making_up:
        return ()
    index = plan.pattern.sizes.index(plan.size) if plan.size else 0
    found: list[Version] = []
    bench = Bench(plan, planned.part)
    for copy in range(planned.part.make):
        made = _version(planned.of(copy), state, (part, copy), index, bench)
        if found and (made.rounds == found[-1].rounds or not _begun(state, (part, copy))):
            made = found.pop()
        found.append(replace(made, copies=(*made.copies, copy)))
    return tuple(found)


def _begun(state: State, of: Copy) -> bool:
    return of == state.spot.of or of in state.left or of in state.finished


def _parts(
    planned: PlannedPart, found: Sequence[Version], index: int, sizes: int
) -> Iterator[Part]:
    part = planned.part._replace(choose="", note=for_size(planned.part.note, index, sizes))
    if planned.making_up:
        yield part._replace(steps=tuple(for_size(step, index, sizes) for step in part.steps))
        return
    if len(part.below) > 1:
        part = part._replace(below=(part.below[index],))
    for version in found:
        yield part._replace(
            name=part.name if len(found) == 1 else f"{part.name}, {_copies(version.copies)}",
            make=len(version.copies),
            rounds="".join(f"{one.line}\n" for one in version.rounds),
            rounds_line=1,
            note=renamed(part.note, version),
        )


def _copies(copies: Sequence[int]) -> str:
    numbers = [str(copy + 1) for copy in copies]
    return f"copy {numbers[0]}" if len(numbers) == 1 else f"copies {' and '.join(numbers)}"


def renamed(words: str, version: Version) -> str:
    """Words that name rounds by the numbers they had, with those they have now."""

    def one(match: re.Match[str]) -> str:
        first = version.numbers.get(int(match[2]), int(match[2]))
        if match[3] is None:
            return f"{match[1]} {first}"
        last = version.numbers.get(int(match[4]), int(match[4]))
        return f"{match[1]} {first}{match[3].removesuffix(match[4])}{last}"

    return _NAMED.sub(one, words) if version.renumbered else words


def _version(planned: PlannedPart, state: State, of: Copy, index: int, bench: Bench) -> Version:
    """One copy's rounds, numbered anew where rounds came in or were left out."""
    sizes = bench.sizes
    found: list[Worked] = []
    numbers: dict[int, int] = {}
    labels: dict[tuple[int, int], str] = {}
    number = _first_number(planned.rounds) - 1
    for at, one in enumerate(planned.rounds):
        words, times = _worked(planned, state, of, at, one, index, sizes)
        deeds = bench.deeds(planned.number(at))
        found += [Worked("", 0, for_size(deed, index, sizes)) for deed in deeds]
        match = _NUMBERED.fullmatch(one.label)
        if match is None:
            labels[planned.number(at), 0] = one.label
            found.append(Worked(one.label, 0, words))
            continue
        if not one.own or one.own == "changed":
            numbers[int(match[2])] = number + 1
        for nth in range(times):
            number += 1
            labels[planned.number(at), nth] = f"{match[1]} {number}"
            found.append(Worked(match[1], number, words))
    return Version(tuple(_together(found)), (), numbers, labels)


def _first_number(rounds: Sequence[PlannedRound]) -> int:
    matches = (_NUMBERED.fullmatch(one.label) for one in rounds if one.own != "added")
    return next((int(match[2]) for match in matches if match), 1)


def _together(rounds: Sequence[Worked]) -> Iterator[Worked]:
    """Rounds that are worked alike in a row, as one line."""
    for (kind, words, plain), same in groupby(
        rounds, key=lambda one: (one.kind, one.words, not one.number)
    ):
        alike = list(same)
        if plain:
            yield from alike
        else:
            yield Worked(kind, alike[0].number, words, len(alike))


def _worked(
    planned: PlannedPart,
    state: State,
    of: Copy,
    at: int,
    one: PlannedRound,
    index: int,
    sizes: int,
) -> tuple[str, int]:
    """The words of a round in the one size, and how often it was worked."""
    words = for_size(one.text, index, sizes).strip()
    if not one.until or not _past(planned, state, of, at):
        return words, 1
    count = "" if one.ends_on is None else f" ({one.ends_on})"
    return without_until(words, one.until) + count, state.times(*of, planned.number(at))


def _past(planned: PlannedPart, state: State, of: Copy, at: int) -> bool:
    """Whether a round of a copy is behind the maker."""
    return of in state.finished or planned.place(state.left_at(*of).round) > at


def without_until(words: str, until: str) -> str:
    """The words of a round of open length without what ends it.

    A sentence that only asks for it again goes as a whole.
    """
    at = words.find(until)
    if at < 0:
        return words
    begin = max(words.rfind(". ", 0, at), words.rfind("; ", 0, at))
    begin = 0 if begin < 0 else begin + 2
    end = _SENTENCE_END.search(words, at)
    stop = len(words) if end is None else end.end()
    if _REPEATED.match(words[begin:]) and begin:
        return f"{words[:begin].rstrip(' ;')}{words[stop:]}".strip()
    return f"{words[:at].rstrip(' ,;')}{words[at + len(until) :]}".strip()
