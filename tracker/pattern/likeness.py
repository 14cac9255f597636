"""The sections of a text that is checked as one part: their names, and the rounds of each."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from tracker.notation.likewise import name_words
from tracker.notation.lines import Line
from tracker.notation.round_text import Again

Body = TypeVar("Body")

#: So many words and fewer may be a heading.
_MOST_WORDS = 6
#: What stands before the label of a part's first round: "Ears (make 2). R1: …".
_LED = re.compile(r"^(?P<name>[A-Za-z][A-Za-z' ]{1,24}?)\s*(?:\([^()]*\))?\s*(?:[:.]|\s-)\s")


@dataclass(slots=True)
class _Section(Generic[Body]):
    """The rounds worked under one heading: the words of each, and the stitches it left."""

    names: frozenset[str]
    rounds: list[tuple[int, Body, int | None]] = field(default_factory=list)


class Sections(Generic[Body]):
    """Which rounds stand under which heading, in the order of the text."""

    def __init__(self) -> None:
        self._done: list[_Section[Body]] = []
        self._heading: frozenset[str] = frozenset()

    def heading(self, line: Line) -> None:
        """A line without work: it may name the part that comes next."""
        if not line.label and len(line.body.split()) <= _MOST_WORDS:
            self._heading |= name_words(line.body)

    def begin(self, line: Line, *, fresh: bool) -> None:
        """Before a line's rounds: they open a section where they begin anew."""
        led = _LED.match(line.label + " ")
        if fresh or line.first == 1 or led is not None or not self._done:
            bare = line.label if not (line.kind or line.first) else ""
            name = led["name"] if led is not None else bare
            names = name_words(name) if name else self._heading
            self._done.append(_Section(names))
        self._heading = frozenset()

    def add(self, number: int, body: Body, makes: int | None) -> None:
        """A round was worked."""
        self._done[-1].rounds.append((number, body, makes))

    def like(self, again: Again) -> list[Body] | None:
        """The rounds that "as for arm up to rnd 6" asks for; None where they are not known."""
        wanted = frozenset(again.part)
        section = next((s for s in reversed(self._done) if s.rounds and wanted <= s.names), None)
        if section is None:
            return None
        rounds = section.rounds
        if again.goal:
            ends = [i for i, (_, _, makes) in enumerate(rounds, start=1) if makes == again.goal]
            return [body for _, body, _ in rounds[: ends[0]]] if ends else None
        first, last = again.first, again.last or again.upto
        if not last:
            return [body for _, body, _ in rounds]
        found = [body for number, body, _ in rounds if max(1, first) <= number <= last]
        return found if len(found) == last - max(1, first) + 1 else None
