"""Motifs, lace and rows as people write them: what each round makes, counted by hand.

`lace_forms.txt` holds patterns of our own, parted by blank lines: a title, which may end
with the terms and the stitches below (`terms=UK below=40`); special stitches behind `!`;
then each line of the pattern behind the stitches that it makes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

_FILE = Path(__file__).with_name("lace_forms.txt")


@dataclass(frozen=True)
class Form:
    """One pattern: its lines, each with what it makes."""

    title: str
    terms: str
    below: int | None
    special: str
    lines: tuple[tuple[int, str], ...]


def _forms() -> Iterator[Form]:
    for block in _FILE.read_text(encoding="utf-8").strip().split("\n\n"):
        head, *rest = block.strip().split("\n")
        below = re.search(r"below=(\d+)", head)
        lines = [line.split(" | ", 1) for line in rest if not line.startswith("!")]
        yield Form(
            title=head.removeprefix("# "),
            terms="UK" if "terms=UK" in head else "US",
            below=None if below is None else int(below[1]),
            special="\n".join(line[2:] for line in rest if line.startswith("!")),
            lines=tuple((int(made), words) for made, words in lines),
        )


@pytest.mark.parametrize("form", list(_forms()), ids=lambda form: form.title)
def test_every_line_is_counted_and_none_is_called_wrong(form: Form) -> None:
    head = f"Special stitches:\n{form.special}\n\n" if form.special else ""
    text = head + "\n".join(words for _, words in form.lines)
    rounds = check_text(text, terms=form.terms, below=form.below).parts[0].rounds
    first = head.count("\n") + 1
    last = {found.line - first: found for found in rounds}
    for at, (makes, words) in enumerate(form.lines):
        found = last[at]
        assert found.verdict in (Verdict.AGREES, Verdict.UNSTATED), (words, found.messages)
        assert found.makes == (makes,), (words, found.makes, dict(found.made))
