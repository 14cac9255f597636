"""Tables in a text -> lines, one round each: "| 3 | sc, inc x 6 | 18 |" is "Rnd 3: … (18)"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

_RULE = re.compile(r"[\s|:=+-]*[-=][\s|:=+-]*")
_LABELS = re.compile(
    r"(?:rounds?|rnds?|rows?|r|no\.?|#|nr\.?)(?: ?(?:no\.?|number|#))?", re.IGNORECASE
)
_COUNTS = re.compile(
    r"(?:(?:st(?:itch)?|total|no\. of|number of) ?)?(?:sts|stitches|count|total)", re.IGNORECASE
)
_NUMBERS = re.compile(r"\d{1,4}(?: ?[–-] ?\d{1,4})?")
_FEWEST = 2


def without_grids(lines: Sequence[str]) -> Iterator[str]:
    """The lines, those of a table of rounds as a round each; no line is added or taken away.

    A table whose first column is not headed as rounds or rows stays as it is.
    """
    heads: list[str] = []
    for line in lines:
        cells = _cells(line)
        if len(cells) < _FEWEST:
            heads = []
            yield line
        elif _RULE.fullmatch(line):
            yield "" if heads else line
        elif heads and len(cells) == len(heads):
            yield _round(heads, cells)
        else:
            heads = cells if _LABELS.fullmatch(cells[0]) else []
            yield "" if heads else line


def _cells(line: str) -> list[str]:
    bare = line.strip()
    if not bare.startswith("|"):
        return []
    return [cell.strip(" *") for cell in bare.strip("|").split("|")]


def _round(heads: Sequence[str], cells: Sequence[str]) -> str:
    """One row as it would be told: label, words, count."""
    kind = "Row" if "row" in heads[0].lower() else "Rnd"
    label = f"{kind} {cells[0]}" if _NUMBERS.fullmatch(cells[0]) else cells[0]
    pairs = list(zip(heads[1:], cells[1:], strict=True))
    words = ". ".join(
        cell.rstrip(".") for head, cell in pairs if cell and not _COUNTS.fullmatch(head)
    )
    counts = [cell for head, cell in pairs if cell and _COUNTS.fullmatch(head)]
    return f"{label}: {words}" + "".join(f" ({cell.strip('()[]')})" for cell in counts)
