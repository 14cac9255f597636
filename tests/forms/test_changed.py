"""The printed count of each form changed by one: no such line may be said to agree."""

from __future__ import annotations

import re

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

from .test_forms import HERE, LINE


def _lines() -> list[str]:
    """Lines worked into a known number of stitches, without chains that could be counted too."""
    lines = [line for path in sorted(HERE.glob("*.txt")) for line in path.read_text().splitlines()]
    return [line for line in lines if line[:1].isdigit() and not re.search(r"\bch\b", line.lower())]


@pytest.mark.parametrize("change", [1, -1])
def test_no_changed_count_is_agreed_to(change: int) -> None:
    tried = 0
    for line in _lines():
        match = LINE.fullmatch(line)
        assert match is not None
        count = match["count"].split(",")[0]
        text = match["text"].replace("\\n", "\n")
        places = [m.start() for m in re.finditer(rf"(?<!\d){count}(?!\d)", text)]
        if not count.isdigit() or not places or "\n" in text[places[-1] :]:
            continue
        changed = text[: places[-1]] + str(int(count) + change) + text[places[-1] + len(count) :]
        below = tuple(map(int, re.findall(r"\d+", match["below"])))
        rounds = check_text(changed, below=below).parts[0].rounds
        tried += 1
        by_size = [r for r in rounds if r.only and r.line == rounds[-1].line]
        told = any(r.verdict is Verdict.DIFFERS for r in by_size)
        assert told or rounds[-1].verdict is not Verdict.AGREES, changed
    assert tried > 300
