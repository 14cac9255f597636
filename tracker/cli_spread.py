"""``hookside spread``: increases and decreases spread evenly, and the nearest multiple."""

from __future__ import annotations

import json
import re
from typing import Any

from tracker.cli import Complaint
from tracker.measure.spread import (
    EvenRound,
    counts_of_multiple,
    even_rounds,
    even_words,
)
from tracker.notation.dictionary import find
from tracker.notation.problems import visible
from tracker.pattern.check import check_text
from tracker.pattern.checked import CheckedRound

_COUNTS = re.compile(r"(\d{1,9})(?:\s*(?:to|→)\s*(\d{1,9}))?(?:\s*(?:sts?|stitches))?")
_MULTIPLE = re.compile(r"(?:multiple of\s*)?(\d{1,6})((?:\s*(?:\+|plus)\s*\d{1,6}){0,4})")


def spread(
    words: list[str],
    rounds: int,
    multiple: str | None,
    stitch: str | None,
    terms: str,
    *,
    rows: bool,
    as_json: bool,
) -> int:
    """Print the rounds; 0 where the count check agrees with all, which it must.

    Raises `Complaint`: the words are no counts, or such rounds cannot be worked.
    """
    have, want = _counts(" ".join(words))
    told: dict[str, Any] = {"have": have}
    if multiple is not None:
        told |= _nearest(have if want is None else want, multiple)
        want = told["nearest"]
    if want is None:
        raise Complaint('say to how many as well, such as "hookside spread 48 to 60"')
    basic = "sc" if terms == "US" else "dc"
    made = _rounds(have, want, rounds, rows=rows)
    lines = _lines(made, _stitch(stitch or basic, terms), basic, rows=rows)
    checked = _checked(lines, have, terms)
    told |= {"want": want, "rounds": _data(lines, checked)}
    print(json.dumps(told, indent=2) if as_json else "\n".join(_report(told, made)))
    return 0 if all(one.verdict == "agrees" for one in checked) else 1


def _counts(text: str) -> tuple[int, int | None]:
    found = _COUNTS.fullmatch(text.strip().lower())
    if found is None:
        raise Complaint(f'"{visible(text)}" is not such as "48 to 60"')
    return int(found[1]), int(found[2]) if found[2] else None


def _nearest(count: int, text: str) -> dict[str, Any]:
    """The counts of a multiple next to ``count``. Of two that are as near, the larger."""
    found = _MULTIPLE.fullmatch(text.strip().lower())
    if found is None or not int(found[1]):
        raise Complaint(f'"{visible(text)}" is no multiple, such as "6 + 2"')
    of, plus = int(found[1]), sum(int(more) for more in re.findall(r"\d+", found[2]))
    down, up = counts_of_multiple(count, of, plus)
    nearest = down if down is not None and count - down < up - count else up
    return {"multiple": of, "plus": plus, "under": down, "over": up, "nearest": nearest}


def _stitch(word: str, terms: str) -> str:
    known = find(word, terms)
    if known is None or (known.takes, known.makes) != (1, 1):
        raise Complaint(f'"{visible(word)}" is no stitch that is worked one into each stitch')
    return known.abbr


def _rounds(have: int, want: int, rounds: int, *, rows: bool) -> list[EvenRound]:
    try:
        return even_rounds(have, want, rounds, turned=rows)
    except ValueError as error:
        more = "; take more rounds" if "become" in str(error) else ""
        raise Complaint(f"{error}{more}") from None


def _lines(made: list[EvenRound], stitch: str, basic: str, *, rows: bool) -> list[str]:
    label, end = ("Row", "; turn") if rows else ("Rnd", "")
    return [
        f"{label} {number}: {even_words(one, stitch, basic)}{end}. ({one.makes})"
        for number, one in enumerate(made, start=1)
    ]


def _checked(lines: list[str], have: int, terms: str) -> tuple[CheckedRound, ...]:
    """Each line read and counted anew, as if it stood in a pattern."""
    return check_text("\n".join(lines), terms=terms, below=have).parts[0].rounds


def _data(lines: list[str], checked: tuple[CheckedRound, ...]) -> list[dict[str, Any]]:
    return [
        {
            "text": line,
            "takes": one.takes and one.takes[0],
            "makes": one.makes and one.makes[0],
            "verdict": str(one.verdict),
        }
        for line, one in zip(lines, checked, strict=True)
    ]


def _report(told: dict[str, Any], made: list[EvenRound]) -> list[str]:
    lines = [one["text"] for one in told["rounds"]]
    makes = " → ".join(str(one["makes"]) for one in told["rounds"])
    verdicts = {one["verdict"] for one in told["rounds"]}
    proof = f"Counted: {told['have']} → {makes}, {' and '.join(sorted(verdicts))}."
    return [*_multiple_words(told), _change(told["have"], told["want"], len(made)), *lines, proof]


def _multiple_words(told: dict[str, Any]) -> list[str]:
    if "multiple" not in told:
        return []
    of, plus = told["multiple"], told["plus"]
    written = f"{of} + {plus}" if plus else str(of)
    next_to = dict.fromkeys(n for n in (told["under"], told["over"]) if n is not None)
    sums = [f"{n} = {(n - plus) // of} x {of}{f' + {plus}' if plus else ''}" for n in next_to]
    return [f"Multiple of {written}: {', '.join(sums)}. Nearest: {told['nearest']}."]


def _change(have: int, want: int, rounds: int) -> str:
    change = f"{abs(want - have)} {'more' if want > have else 'fewer'}" if want != have else "none"
    return f"{have} to {want}: {change}, in {rounds} {'round' if rounds == 1 else 'rounds'}."
