"""What a maker should have read before the first stitch: the pattern on itself, the cautions."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from tracker.pattern.care import Care
from tracker.pattern.cautions import DEFER
from tracker.pattern.model import Fit, Gauge, Part, Pattern, Worked

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan


def foreword(plan: Plan, part: Part) -> tuple[str, ...]:
    """One paragraph each: what it is, gauge and hooks, how large the part comes out, its note,
    the cautions.

    The cautions come word for word, what they defer to last.
    """
    # Imported here so that what is written of a pattern can be had without its plan.
    from tracker.pattern.sizing import comes_out

    pattern, said = plan.pattern, " ".join(part.note.split())
    size = [words] if (words := comes_out(plan, part)) else []
    note = [f"{part.name}: {said}"] if said else []
    return (
        *paragraphs(pattern.about),
        *_gauge(pattern),
        *size,
        *note,
        *warnings(pattern, plan.size),
    )


def warnings(pattern: Pattern, size: str | None = None) -> tuple[str, ...]:
    """The sentence of each caution that applies, then what they all defer to; or nothing."""
    found = [one.sentence for one in Care(pattern, size).cautions]
    return (*found, DEFER) if found else ()


def paragraphs(words: str) -> Iterator[str]:
    """The paragraphs of a text, set apart by empty lines, each as one line."""
    paragraph: list[str] = []
    for line in [*words.splitlines(), ""]:
        if line.strip():
            paragraph.append(line.strip())
        elif paragraph:
            yield " ".join(paragraph)
            paragraph = []


def _gauge(pattern: Pattern) -> Iterator[str]:
    hooks = _hooks(pattern)
    if pattern.gauge is None:
        yield from [hooks] if hooks else []
        return
    yield " ".join(word for word in (f"Gauge: {swatch(pattern, pattern.gauge)}.", hooks) if word)
    if pattern.fit is not None:
        yield f"Fit: {fit_words(pattern.fit)}."


def swatch(pattern: Pattern, gauge: Gauge) -> str:
    """The gauge as makers say it: "14 hdc and 11 rounds over 10 cm"."""
    rows = all(part.worked is Worked.ROWS for part in pattern.parts[:1])
    stitches = f"{_number(gauge.stitches)} {gauge.stitch}"
    rounds = f"{_number(gauge.rounds)} {'rows' if rows else 'rounds'}"
    return f"{stitches} and {rounds} over {gauge.over}"


def fit_words(fit: Fit) -> str:
    """What goes round what: "the stitches of Band go round the head with -2 cm of ease"."""
    ease = f"{fit.ease} of ease" if fit.ease else "no ease"
    return f"the {fit.around} of {fit.part} go round {_the(fit.on)} with {ease}"


def _the(on: str) -> str:
    return f"the {on}" if on else "it"


def _hooks(pattern: Pattern) -> str:
    """The hook of the gauge, and where another is wanted: "Hook: 4 mm; Edging: 3.5 mm."."""
    first = pattern.gauge.hook if pattern.gauge else ""
    named = [f"Hook: {first}"] if first else []
    named += [f"{part.name}: {part.hook}" for part in pattern.parts if part.hook not in ("", first)]
    return f"{'; '.join(named)}." if named else ""


def _number(number: Fraction) -> str:
    """A whole number, or a mixed one as makers write it: "17 1/2"."""
    whole, rest = divmod(number, 1)
    return " ".join(str(one) for one in (whole, rest) if one)
