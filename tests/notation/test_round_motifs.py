"""Motifs worked in the round, whole: squares, hexagons, coasters, doilies, flowers.

`round_motifs.txt` holds patterns of our own, parted by blank lines, in the ways in which
makers write them (common practice, no source): a title, which may end with the terms and
the stitches below (`terms=UK below=40`); then each line behind the stitches that it makes,
counted by hand before it was read. Behind `differs` stands what must be said of a line that
does not work out as it is printed, up to the stroke.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

_FILE = Path(__file__).with_name("round_motifs.txt")


@dataclass(frozen=True)
class Motif:
    """One pattern: its lines, each with what is expected of it."""

    title: str
    terms: str
    below: int | None
    lines: tuple[tuple[str, str], ...]


def _motifs() -> Iterator[Motif]:
    for block in _FILE.read_text(encoding="utf-8").strip().split("\n\n"):
        head, *rest = block.strip().split("\n")
        below = re.search(r"below=(\d+)", head)
        parted = (line.split(" | ", 1) for line in rest)
        yield Motif(
            title=head.removeprefix("# "),
            terms="UK" if "terms=UK" in head else "US",
            below=None if below is None else int(below[1]),
            lines=tuple((wanted, words) for wanted, words in parted),
        )


@pytest.mark.parametrize("motif", list(_motifs()), ids=lambda motif: motif.title)
def test_a_motif_is_counted_and_its_faults_are_told(motif: Motif) -> None:
    text = "\n".join(words for _, words in motif.lines)
    parts = check_text(text, terms=motif.terms, below=motif.below).parts
    last = {found.line: found for part in parts for found in part.rounds}
    for at, (wanted, words) in enumerate(motif.lines, start=1):
        found = last[at]
        if wanted.startswith("differs"):
            assert found.verdict is Verdict.DIFFERS, (words, found.makes)
            told = [message.text for message in found.messages]
            assert any(wanted.removeprefix("differs ") in text for text in told), (words, told)
        elif wanted == "unread":
            assert found.verdict is Verdict.UNREAD, (words, found.makes)
        else:
            assert found.verdict in (Verdict.AGREES, Verdict.UNSTATED), (words, found.messages)
            assert found.makes == (int(wanted),), (words, found.makes, dict(found.made))
