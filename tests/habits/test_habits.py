"""Whole patterns of our own that show the habits of real ones, each line counted by hand.

Every file is one pattern: its lines with the stitches they are worked into (``before``),
what they make (``makes``) and whether they are right as written. Lines whose counts follow
on are read as one text. A line with a ``gap`` is not read rightly yet, and the key says how;
once it is, the key must go.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

HERE = Path(__file__).parent
FILES = sorted(HERE.glob("*/*.toml"))


def figures(value: Any) -> tuple[int, ...]:
    return tuple(value) if isinstance(value, list) else (value,)


def runs(lines: list[dict[str, Any]]) -> list[list[dict[str, Any]]]:
    """The lines, cut where a count does not follow on, a part begins or a line is wrong."""
    found: list[list[dict[str, Any]]] = []
    for line in lines:
        last = found[-1][-1] if found else None
        follows = (
            last is not None
            and last.get("right", True)
            and last.get("part") == line.get("part")
            and line.get("before") not in (None, 0)
            and last.get("makes") == line.get("before")
        )
        if follows:
            found[-1].append(line)
        else:
            found.append([line])
    return found


def counts(found: Any) -> set[int]:
    """What may be counted of a round, in its first size: stitches, spaces, chains, or both."""
    spaces = {k: v[0] for k, v in found.made.items() if k.endswith(" sp")}
    chains = sum(int(name[3:-3]) * n for name, n in spaces.items())
    stitches, between = found.makes[0], sum(spaces.values())
    return {stitches, stitches + between, stitches + chains, between}


def read(pattern: dict[str, Any]) -> Iterator[tuple[dict[str, Any], Any]]:
    """Each line with the round that was made of it last, or None."""
    for run in runs(pattern["line"]):
        head = (
            f"Special stitches:\n{pattern['special'].strip()}\n\n" if "special" in pattern else ""
        )
        text, starts = head, []
        for line in run:
            starts.append(text.count("\n") + 1)
            text += line["text"].rstrip() + "\n"
        below = run[0].get("before") or None
        found = check_text(
            text, terms=pattern.get("terms", "US"), below=below if below is None else figures(below)
        )
        ends = [*starts[1:], text.count("\n") + 1]
        for line, start, end in zip(run, starts, ends, strict=True):
            inside = [r for r in found.parts[0].rounds if start <= r.line < end]
            yield line, inside[-1] if inside else None


def is_right(line: dict[str, Any], found: Any) -> bool:
    """Whether a line is counted as by hand, or its slip is found."""
    if found is None or found.verdict is Verdict.UNREAD:
        return False
    if not line.get("right", True):
        return found.verdict is Verdict.DIFFERS
    return found.verdict is not Verdict.DIFFERS and figures(line["makes"])[0] in counts(found)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_line_of_a_pattern_is_counted_as_by_hand(path: Path) -> None:
    pattern = tomllib.loads(path.read_text("utf-8"))
    for line, found in read(pattern):
        if "makes" not in line and line.get("right", True):
            continue
        said = found and (found.verdict, found.makes, [str(m) for m in found.messages])
        assert is_right(line, found) is ("gap" not in line), (line["text"], said)
