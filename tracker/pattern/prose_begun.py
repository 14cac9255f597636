"""Parts of a plain text that go on from the part before them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tracker.fabric.verdicts import Verdict
from tracker.notation.tree import Figure
from tracker.pattern.check import check_pattern
from tracker.pattern.checked import CheckedRound
from tracker.pattern.model import Part, Pattern

_ENDED = re.compile(
    r"\b(?:fasten|finish|bind|tie) off|\b(?:cut|break) (?:the )?(?:yarn|thread)|\bf\.?o\b\.?",
    re.IGNORECASE,
)


def begun(pattern: Pattern, warnings: list[str]) -> Iterator[Part]:
    """The parts; one that begins on the last round of the part before it says so.

    ``warnings`` gets a sentence for each that was taken to.
    """
    ends: Figure | None = None
    open_ = False
    for part, checked in zip(pattern.parts, check_pattern(pattern).parts, strict=True):
        found, rounds = _onto(pattern, part, checked.rounds, ends, goes_on=open_)
        if found is not part:
            warnings.append(
                f'"{part.name}" was taken to begin on the last round of the part before it'
            )
        yield found
        ends = rounds[-1].makes if rounds else None
        open_ = not _ENDED.search(f"{part.rounds} {part.note}")


def _onto(
    pattern: Pattern,
    part: Part,
    rounds: Sequence[CheckedRound],
    ends: Figure | None,
    *,
    goes_on: bool,
) -> tuple[Part, Sequence[CheckedRound]]:
    """The part begun on ``ends``, if only that makes its first round come out right.

    ``goes_on``: the yarn was not cut after the part before, so that a first round of which
    nothing else is known may go on from there too.
    """
    unsure = rounds and rounds[0].verdict in (Verdict.UNREAD, Verdict.UNSTATED)
    if not unsure or not ends or not all(ends):
        return part, rounds
    other = part._replace(below=ends if len(set(ends)) > 1 else ends[:1])
    again = check_pattern(pattern._replace(parts=(other,))).parts[0].rounds
    follows = goes_on and rounds[0].verdict is Verdict.UNREAD
    enough = (Verdict.AGREES, Verdict.UNSTATED) if follows else (Verdict.AGREES,)
    return (other, again) if again[0].verdict in enough else (part, rounds)
