"""Rounds that a text asks for as in another part: "Work R1 to R5 as for the base"."""

from __future__ import annotations

from collections.abc import Sequence

from tracker.notation.likewise import likewise, name_words
from tracker.notation.round_text import Again
from tracker.pattern.model import Part
from tracker.pattern.prose_lines import label_of
from tracker.pattern.prose_parts import Rounds


def written_out(found: Rounds, parts: Sequence[Part]) -> None:
    """Put the rounds of an earlier part where they are asked for, and the asking in a note.

    Where that part, or just those of its rounds, are not in the text, the words stay as
    they are.
    """
    texts: list[str] = []
    lines: list[int] = []
    for text, line in zip(found.texts, found.lines, strict=True):
        again = likewise(text)
        rounds = None if again is None else _rounds_of(again, parts)
        if rounds is None:
            texts.append(text)
            lines.append(line)
            continue
        found.notes.append(text)
        texts += rounds
        lines += [line] * len(rounds)
    found.texts, found.lines = texts, lines


def _rounds_of(again: Again, parts: Sequence[Part]) -> list[str] | None:
    """The lines of the part that is meant, as far as it is to be worked."""
    wanted = frozenset(again.part)
    part = next((p for p in reversed(parts) if p.rounds and wanted <= name_words(p.name)), None)
    if part is None or again.goal:
        return None
    lines = part.rounds.splitlines()
    first, last = max(1, again.first), again.last or again.upto
    if not last:
        return lines
    numbered = [(label, text) for text in lines if (label := label_of(text)) is not None]
    kept = [(label, text) for label, text in numbered if first <= label.first <= last]
    whole = sum(label.count for label, _ in kept) == last - first + 1
    return [text for _, text in kept] if whole else None
