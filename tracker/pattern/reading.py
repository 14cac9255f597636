"""A text read, drafted, loaded as the pattern file it will be, and checked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tracker.pattern.check import Check, CheckedPart, CheckedRound, check_pattern
from tracker.pattern.draft import Draft, to_toml
from tracker.pattern.load import load_text
from tracker.pattern.model import Part, Pattern
from tracker.pattern.prose import read_prose


@dataclass(frozen=True, slots=True)
class Reading:
    """What became of a text.

    Attributes:
        draft: what was found in it.
        toml: the pattern file.
        pattern: what the loader makes of ``toml``.
        checked: its check; lines are those of the text, not of ``toml``.
    """

    draft: Draft
    toml: str
    pattern: Pattern
    checked: Check


def read_pattern(text: str, file: str, title: str, terms: str = "") -> Reading:
    """Read a text as a pattern file.

    Args:
        text: the words.
        file: the name that messages go by.
        title: the title, where the text has none.
        terms: "US" or "UK"; "" lets the text decide.

    Raises:
        PatternError: there is no round in it, or more of something than a pattern has.
    """
    draft = read_prose(text, file, title, terms)
    toml = to_toml(draft.pattern, draft.kept)
    pattern = load_text(toml, file)
    found = check_pattern(pattern)
    parts = [
        CheckedPart(checked.name, tuple(_placed(r, part, lines) for r in checked.rounds))
        for checked, part, lines in zip(found.parts, pattern.parts, draft.lines, strict=True)
    ]
    return Reading(draft, toml, pattern, Check(tuple(parts), found.sizes))


def _placed(found: CheckedRound, part: Part, lines: Sequence[int]) -> CheckedRound:
    """A round with the places its words have in the text it was read from."""

    def line(number: int) -> int:
        return lines[number - part.rounds_line]

    messages = [message._replace(line=line(message.line)) for message in found.messages]
    return replace(found, line=line(found.line), messages=tuple(messages))
