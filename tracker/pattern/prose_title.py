"""The title of a text for people, among the lines it begins with."""

from __future__ import annotations

import re

from tracker.pattern.prose_headings import known_heading
from tracker.pattern.prose_lines import Said, label_of
from tracker.pattern.tables import LINE

_LONGEST_TITLE = 80


def title_of(lines: list[Said]) -> tuple[str, list[Said]]:
    """``(title, the other lines)``: the first heading, or a first line that may be one."""
    for index, said in enumerate(lines[:3]):
        called = _CALLED.match(said.text)
        if called is not None:
            return called[1][:LINE], lines[:index] + lines[index + 1 :]
        if said.rank == 1 and known_heading(said.text) is None:
            return said.text[:LINE], lines[:index] + lines[index + 1 :]
    index = next((i for i, said in enumerate(lines[:6]) if not _IMPRINT.search(said.text)), 0)
    first = lines[index] if lines else None
    if first is not None and len(first.text) <= _LONGEST_TITLE and label_of(first.text) is None:
        known = known_heading(first.text)
        if known is None and not first.bullet and first.text[-1] not in ".,;":
            return _unspaced(first.text.removesuffix(":")), lines[:index] + lines[index + 1 :]
    return "", lines


def _unspaced(text: str) -> str:
    """A title that is set letter by letter, "O L D  H A T", as words."""
    letters = text.split()
    if len(letters) < 4 or any(len(letter) > 1 for letter in letters):
        return text
    return " ".join("".join(word.split()) for word in re.split(r"\s{2,}", text.strip()))


#: "Pattern: Rose", "Name – Rose"
_CALLED = re.compile(r"(?:pattern(?: name)?|title|name)\s*[:–—-]\s*(\S.{1,79})$", re.IGNORECASE)

#: Lines over a title that are none: whose it is, where it is from, the number of the page.
_IMPRINT = re.compile(
    r"copyright|\u00a9|\(c\)|all rights|personal use|www\.|https?:|^\s*(?:page )?\d+\s*$",
    re.IGNORECASE,
)
