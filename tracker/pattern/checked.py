"""What a check finds: rounds, parts, the whole."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tracker.fabric.judge import Judged
from tracker.fabric.verdicts import Verdict
from tracker.notation.problems import Message
from tracker.notation.tree import Figure


@dataclass(frozen=True, slots=True)
class CheckedRound:
    """One round as worked, with what the check says of it.

    Attributes:
        line: line of the text it comes from, from 1. A line that stands for several
            rounds gives one `CheckedRound` for each.
        label: as a maker says it ("Rnd 7").
        text: the words, without label; plain text.
        verdict: see `Verdict`.
        below, takes, makes: stitches, one figure a size; None where they are not known.
        made: US stitch name or "ch-N sp" -> one figure a size.
        stated: the printed count, one figure or one a size; None where none is printed.
        messages: what is wrong, and where words were taken otherwise than by habit.
        until: the words that end a round of open length, or "".
        only: the sizes (from 0) that work it; empty where all do. The others keep their count.
        judged: the walks themselves; None for a round that was not understood.
    """

    line: int
    label: str
    text: str
    verdict: Verdict
    below: Figure | None
    takes: Figure | None
    makes: Figure | None
    made: Mapping[str, Figure]
    stated: Figure | None
    messages: tuple[Message, ...] = ()
    until: str = ""
    only: tuple[int, ...] = ()
    judged: Judged | None = None

    def is_for(self, size: int) -> bool:
        """Whether a size works it."""
        return not self.only or size in self.only


@dataclass(frozen=True, slots=True)
class CheckedPart:
    """One part: its name ("" in a plain text) and its rounds in order of work."""

    name: str
    rounds: tuple[CheckedRound, ...]


@dataclass(frozen=True, slots=True)
class Check:
    """What a check found. ``sizes`` is how many sizes were worked out."""

    parts: tuple[CheckedPart, ...]
    sizes: int = 1

    @property
    def well(self) -> bool:
        """Whether no round differs and none is unread."""
        bad = (Verdict.DIFFERS, Verdict.UNREAD)
        return not any(r.verdict in bad for part in self.parts for r in part.rounds)
