"""A pattern -> the sheet that is handed on: everything another maker needs, in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from tracker.fabric.verdicts import Verdict
from tracker.notation.lines import split_lines
from tracker.notation.stitches import Stitch, Variant
from tracker.notation.tree import Figure
from tracker.pattern.check import Check, CheckedPart, CheckedRound
from tracker.pattern.foreword import fit_words, paragraphs, swatch, warnings
from tracker.pattern.model import Part, Pattern, Worked
from tracker.pattern.sizing import finished_sizes
from tracker.writing.glossary import abbreviations, told_stitches
from tracker.writing.sheet import (
    Block,
    Drawing,
    Items,
    Loops,
    Meanings,
    RoundLine,
    Rounds,
    Section,
    Sheet,
    Steps,
    Words,
)

_WORKED = {Worked.JOINED: "joined rounds", Worked.SPIRAL: "a spiral", Worked.ROWS: "rows"}


def compose(
    pattern: Pattern,
    checked: Check,
    drawings: Sequence[Drawing | Words] = (),
    more: Sequence[Section] = (),
) -> Sheet:
    """The sheet of a pattern and its check.

    Args:
        pattern: in the terms it is to be written in.
        checked: the check of that pattern.
        drawings: charts, to stand at the end.
        more: sections to stand after the parts.
    """
    parts = zip(pattern.parts, checked.parts, strict=True)
    sections = (
        *_materials(pattern),
        *_gauge(pattern, checked),
        *_abbreviations(pattern),
        *_special(pattern),
        *(_part(pattern, part, found) for part, found in parts),
        *more,
        *([Section("Charts", tuple(drawings))] if drawings else []),
    )
    return Sheet(pattern.title, tuple(_front(pattern, checked)), sections)


def _front(pattern: Pattern, checked: Check) -> Iterator[Block]:
    yield from map(Words, paragraphs(pattern.about))
    if pattern.sizes:
        many = "s" if len(pattern.sizes) > 1 else ""
        yield Words(f"Size{many}: {in_sizes(pattern.sizes)}")
    yield Words(f"Written in {pattern.terms} crochet terms. {proof_of(checked)}", quiet=True)
    sentences = warnings(pattern)
    if sentences:
        yield Items(sentences, lead="Cautions", care=True)


def proof_of(checked: Check) -> str:
    """How far the counts are proved, in a sentence or two."""
    counts = Counter(r.verdict for part in checked.parts for r in part.rounds)
    lead = "in every size" if checked.sizes > 1 else "stitch by stitch"
    said = []
    for verdict, words in (
        (Verdict.AGREES, "as printed"),
        (Verdict.OPEN, "worked to a length"),
        (Verdict.UNSTATED, "without a printed count"),
        (Verdict.DIFFERS, "NOT as printed"),
        (Verdict.UNREAD, "NOT understood"),
    ):
        if counts[verdict]:
            said.append(f"{counts[verdict]} {words}")
    return f"{sum(counts.values())} rounds counted {lead}: {', '.join(said)}."


def in_sizes(figures: Sequence[object]) -> str:
    """One figure, or one a size as patterns print them: "6 (8, 10)"."""
    first, *others = map(str, figures)
    return f"{first} ({', '.join(others)})" if others else first


def figures(counted: Figure) -> str:
    """A figure as patterns print it: once, where all sizes have the same."""
    return in_sizes(counted if len(set(counted)) > 1 else counted[:1])


def _materials(pattern: Pattern) -> Iterator[Section]:
    items = [_yarn(yarn.letter, yarn.name, yarn.colour) for yarn in pattern.yarns]
    first = pattern.gauge.hook if pattern.gauge else ""
    if first:
        items.append(f"Hook: {first}")
    others = dict.fromkeys(part.hook for part in pattern.parts if part.hook not in ("", first))
    for hook in others:
        names = [part.name for part in pattern.parts if part.hook == hook]
        items.append(f"Hook: {hook}, for {' and '.join(names)}")
    if items:
        yield Section("Materials", (Items(tuple(items)),))


def _yarn(letter: str, name: str, colour: str) -> str:
    told = " in ".join(word for word in (name, colour) if word)
    return f"{letter}: {told}" if told else letter


def _gauge(pattern: Pattern, checked: Check) -> Iterator[Section]:
    gauge, blocks = pattern.gauge, []
    if gauge is not None:
        hook = f", with a {gauge.hook} hook" if gauge.hook else ""
        blocks.append(Words(f"{swatch(pattern, gauge)}{hook}."))
    if pattern.fit is not None:
        blocks.append(Words(f"Fit: {fit_words(pattern.fit)}."))
    sizes = finished_sizes(pattern, checked)
    if sizes:
        blocks.append(Words(f"Finished by this gauge: {'; '.join(sizes)}."))
    if blocks:
        yield Section("Tension" if pattern.terms == "UK" else "Gauge", tuple(blocks))


def _abbreviations(pattern: Pattern) -> Iterator[Section]:
    entries = abbreviations(pattern)
    if entries:
        yield Section("Abbreviations", (Meanings(entries),))


def _special(pattern: Pattern) -> Iterator[Section]:
    blocks: list[Block] = []
    for stitch in pattern.stitches:
        blocks.append(Meanings(((_called(stitch), _meaning(stitch)),)))
        blocks += _loops(stitch)
    told = [
        (f"{short} ({name})" if short != name else short, how)
        for short, name, how in told_stitches(pattern)
    ]
    if told:
        blocks.append(Meanings(tuple(told)))
    if blocks:
        yield Section("Special stitches", tuple(blocks))


def _called(stitch: Stitch) -> str:
    return stitch.abbr if stitch.name == stitch.abbr else f"{stitch.abbr} ({stitch.name})"


def _meaning(stitch: Stitch) -> str:
    spaces = [f"1 ch-{length} space" for length in stitch.spaces]
    makes = ", ".join([f"makes {stitch.makes}", *spaces])
    return f"takes {stitch.takes}, {makes}. {stitch.how}".strip()


def _loops(stitch: Stitch) -> Iterator[Block]:
    ways: tuple[tuple[str, Stitch | Variant | None], ...] = (
        ("Loop by loop.", stitch),
        ("The first of a round.", stitch.first),
        ("The last of a round.", stitch.last),
    )
    for lead, way in ways:
        if way is None:
            continue
        how = "" if way is stitch else way.how
        if how or way.loops:
            yield Loops(f"{lead} {how}".strip(), way.loops)


def _part(pattern: Pattern, part: Part, found: CheckedPart) -> Section:
    heading = f"{part.name} (make {part.make})" if part.make > 1 else part.name
    if part.steps:
        return Section(heading, (Steps(part.steps),), part=True)
    blocks: list[Block] = [Words(" ".join(_facts(pattern, part)))]
    if part.note:
        blocks.append(Words(" ".join(part.note.split())))
    blocks.append(Rounds(tuple(_lines(part, found))))
    return Section(heading, tuple(blocks), part=True)


def _facts(pattern: Pattern, part: Part) -> Iterator[str]:
    """What a part is worked with, in sentences that `hookside read` takes as facts."""
    yield f"Worked in {_WORKED[part.worked]}."
    if part.below:
        yield f"Worked into {figures(part.below)} sts."
    if part.hook:
        yield f"Hook: {part.hook}."
    if part.choose:
        names = [other.name for other in pattern.parts if other.choose == part.choose]
        yield f"Choose one {part.choose}: {' or '.join(names)}."


def _lines(part: Part, found: CheckedPart) -> Iterator[RoundLine]:
    proofs: dict[int, list[CheckedRound]] = {}
    for worked in found.rounds:
        proofs.setdefault(worked.line - part.rounds_line + 1, []).append(worked)
    for line in split_lines(part.rounds):
        words = " ".join(line.body.split("\n"))
        mine = proofs.get(line.line, [])
        yield RoundLine(line.label, words, _proof(mine), _agree(mine))


def _agree(rounds: Sequence[CheckedRound]) -> bool:
    return bool(rounds) and all(r.verdict is Verdict.AGREES for r in rounds)


def _proof(rounds: Sequence[CheckedRound]) -> str:
    """From what is below the first round of a line to what its last one leaves."""
    if not rounds or rounds[-1].makes is None:
        return ""
    below = rounds[0].below
    made = figures(rounds[-1].makes)
    return f"{figures(below)} → {made}" if below and any(below) else f"→ {made}"
