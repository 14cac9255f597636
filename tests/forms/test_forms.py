"""Lines as people write them: what each makes, counted by hand before it was ever read.

The lines stand in the text files beside this one, one habit under each heading::

    terms below | line, or several joined by "\n" => count, or counts of all sizes

``terms`` is left out for US; ``below`` is empty where the line begins from nothing. A count
of "differs" marks a line that does not work out as it is written, and of "unread" one that
a person would ask about.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

HERE = Path(__file__).parent
LINE = re.compile(r"(?P<uk>UK )?\s*(?P<below>[\d, ]*)\| (?P<text>.*) => (?P<count>.*)")


def _forms() -> Iterator[tuple[str, str]]:
    """Each line with where it stands."""
    for path in sorted(HERE.glob("*.txt")):
        for number, line in enumerate(path.read_text("utf-8").splitlines(), start=1):
            if line and not line.startswith("#"):
                yield f"{path.stem}:{number}", line


@pytest.mark.parametrize(("where", "line"), list(_forms()))
def test_a_form_is_read_and_counted(where: str, line: str) -> None:
    match = LINE.fullmatch(line)
    assert match is not None, f"{where} is not a line of this table"
    below = tuple(map(int, re.findall(r"\d+", match["below"])))
    text = match["text"].replace("\\n", "\n")
    found = check_text(text, terms="UK" if match["uk"] else "US", below=below or None)
    rounds = found.parts[0].rounds
    if match["count"] in ("differs", "unread"):
        assert rounds[-1].verdict.value == match["count"]
        return
    assert {r.verdict for r in rounds} <= {Verdict.AGREES, Verdict.UNSTATED, Verdict.OPEN}
    wanted = tuple(map(int, match["count"].split(",")))
    makes = rounds[-1].makes or ()
    assert makes == wanted or (set(makes) == set(wanted) and len(wanted) == 1)
