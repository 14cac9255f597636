"""A pattern's TOML file -> `Pattern`, or every fault in it with its place.

Strict on purpose: a key that is not known is a slip of the pen, and a slip that is passed
over in silence is found in the fortieth round. Nothing here counts a stitch; that is
`tracker.pattern.check`.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from pathlib import Path

from tracker.measure.gauge import read_ease
from tracker.notation.dictionary import find
from tracker.notation.problems import visible
from tracker.notation.stitches import Stitch, Variant
from tracker.pattern.finder import Finder
from tracker.pattern.model import Fit, Gauge, Part, Pattern, Worked, Yarn
from tracker.pattern.source import LARGEST, PatternError, parse, read_source
from tracker.pattern.tables import TEXT, Faults, Table, nearest, short

__all__ = ["PatternError", "load_pattern", "load_text"]

MOST_PARTS = 100
MOST_YARNS = 26
MOST_STITCHES = 100
MOST_RINGS = 20
MOST_SPACES = 20
LONGEST_SPACE = 100
MOST_SIZES = 30
MOST_STEPS = 200
MOST_LOOPS = 40
MOST_COPIES = 1_000
MOST_PLACES = 1_000_000
LONGEST_ROUND = 5_000
"""Characters of one line of the rounds."""

_PATTERN_KEYS = (
    "title",
    "terms",
    "sizes",
    "about",
    "cautions",
    "rings",
    "gauge",
    "fit",
    "yarn",
    "stitch",
    "part",
)
_GAUGE_KEYS = ("stitch", "stitches", "rounds", "over", "hook")
_FIT_KEYS = ("part", "on", "ease", "around")
_YARN_KEYS = ("letter", "name", "colour")
_VARIANT_KEYS = ("takes", "makes", "how", "loops")
_STITCH_KEYS = ("abbr", "name", "means", *_VARIANT_KEYS, "spaces", "first", "last")
_PART_KEYS = ("name", "make", "worked", "rounds", "steps", "choose", "below", "note", "hook")


def load_pattern(path: Path | str) -> Pattern:
    """The pattern in a file.

    Raises `PatternError`: no such file, a folder, a pipe or device, too large, not text in
    UTF-8, not TOML, or not a pattern.
    """
    return load_text(read_source(path), os.fspath(path))


def load_text(source: str, file: str = "pattern") -> Pattern:
    """The pattern in a TOML text; ``file`` is the name that messages go by.

    Raises `PatternError`.
    """
    data = parse(file, source)
    faults = Faults(Finder(source))
    pattern = _pattern(Table(data, (), faults), source)
    if faults.messages:
        raise PatternError(file, sorted(faults.messages, key=lambda m: (m.line, m.column)))
    return pattern


def _pattern(table: Table, source: str) -> Pattern:
    table.known(_PATTERN_KEYS)
    sizes = table.texts("sizes", MOST_SIZES)
    _all_different(table, "sizes", sizes)
    parts = [_part(part, len(sizes)) for part in table.tables("part", MOST_PARTS)]
    if "part" not in table:
        table.fault("part", "there is no part", "Begin one with [[part]].")
    terms = table.choice("terms", ("US", "UK"), "US")
    found = Pattern(
        title=table.text("title", needed=True),
        terms=terms,
        parts=tuple(parts),
        sizes=sizes,
        about=table.text("about", most=TEXT).strip(),
        gauge=_gauge(table.table("gauge")),
        fit=_fit(table.table("fit"), [part.name for part in parts]),
        yarns=tuple(_yarn(yarn) for yarn in table.tables("yarn", MOST_YARNS)),
        stitches=tuple(_stitch(each, terms) for each in table.tables("stitch", MOST_STITCHES)),
        cautions=_cautions(table),
        rings=table.texts("rings", MOST_RINGS),
        source=source,
    )
    _no_name_twice(table, found)
    return found


def _no_name_twice(table: Table, found: Pattern) -> None:
    names = {
        "part": ("name", [part.name for part in found.parts]),
        "yarn": ("letter", [yarn.letter for yarn in found.yarns]),
        "stitch": ("abbr", [stitch.abbr.lower() for stitch in found.stitches]),
    }
    for kind, (key, given) in names.items():
        for index in _repeated(given):
            text = f'a second {kind} with the {key} "{short(given[index])}"'
            table.faults.add((kind, index, key), text, "Give each a name of its own.")


def _repeated(names: Sequence[str]) -> list[int]:
    """Where a name stands that stood before; empty names are other faults."""
    return [i for i, name in enumerate(names) if name and name in names[:i]]


def _all_different(table: Table, key: str, names: Sequence[str]) -> None:
    for index in _repeated(names):
        table.fault(key, f'"{short(names[index])}" stands twice in "{key}"')


def _cautions(table: Table) -> tuple[str, ...]:
    names = table.texts("cautions", 30)
    _all_different(table, "cautions", names)
    if not names:
        return ()
    from tracker.pattern.cautions import cautions  # a file of its own, seldom needed

    known = cautions()
    for name in names:
        if name not in known:
            table.fault("cautions", f'no caution is called "{short(name)}"', nearest(name, known))
    return names


def _gauge(table: Table | None) -> Gauge | None:
    if table is None:
        return None
    table.known(_GAUGE_KEYS)
    return Gauge(
        stitch=table.text("stitch", needed=True),
        stitches=table.fraction("stitches"),
        rounds=table.fraction("rounds"),
        over=table.text("over", needed=True),
        hook=table.text("hook"),
    )


def _fit(table: Table | None, parts: Sequence[str]) -> Fit | None:
    if table is None:
        return None
    table.known(_FIT_KEYS)
    name, ease = table.text("part") or (parts or [""])[0], table.text("ease")
    if name not in parts:
        table.fault("part", f'no part is called "{short(name)}"', nearest(name, parts))
    if ease:
        try:
            read_ease(ease)
        except ValueError as error:
            table.fault("ease", visible(str(error)))
    around = table.choice("around", ("stitches", "rows"), "stitches")
    return Fit(name, table.text("on"), ease, around)


def _yarn(table: Table) -> Yarn:
    table.known(_YARN_KEYS)
    return Yarn(
        letter=table.text("letter", needed=True, most=3),
        name=table.text("name"),
        colour=table.text("colour"),
    )


def _stitch(table: Table, terms: str) -> Stitch:
    table.known(_STITCH_KEYS)
    abbr = table.text("abbr", needed=True, most=20)
    if "means" in table:
        return _same_stitch(table, abbr, terms)
    return Stitch(
        abbr=abbr,
        name=table.text("name") or abbr,
        takes=table.needed_integer("takes", 0, MOST_COPIES),
        makes=table.needed_integer("makes", 0, MOST_COPIES),
        how=table.text("how", most=TEXT),
        loops=table.lines("loops", MOST_LOOPS),
        first=_variant(table.table("first")),
        last=_variant(table.table("last")),
        spaces=table.whole_numbers("spaces", MOST_SPACES, LONGEST_SPACE),
    )


def _same_stitch(table: Table, abbr: str, terms: str) -> Stitch:
    """The pattern's own abbreviation of a stitch that the dictionary has."""
    for key in ("takes", "makes", "loops", "spaces", "first", "last"):
        if key in table:
            table.fault(key, f'a stitch with "means" has no "{key}": it is the stitch it means')
    meant = table.text("means", needed=True)
    known = find(meant, terms)
    if known is None:
        hint = "Give it takes and makes instead."
        table.fault("means", f'no stitch is called "{short(meant)}" in {terms} terms', hint)
        return Stitch(abbr, abbr)
    return known._replace(abbr=abbr, name=table.text("name") or abbr)


def _variant(table: Table | None) -> Variant | None:
    if table is None:
        return None
    table.known(_VARIANT_KEYS)
    return Variant(
        takes=table.integer("takes", 0, MOST_COPIES),
        makes=table.integer("makes", 0, MOST_COPIES),
        how=table.text("how", most=TEXT),
        loops=table.lines("loops", MOST_LOOPS),
    )


def _part(table: Table, sizes: int) -> Part:
    table.known(_PART_KEYS)
    rounds = table.text("rounds", most=LARGEST)
    steps = table.texts("steps", MOST_STEPS, TEXT)
    _rounds_or_steps(table, rounds, steps)
    line = table.faults.finder.spot((*table.path, "rounds")).value_line if rounds else 1
    _no_endless_line(table, rounds.splitlines())
    return Part(
        name=table.text("name", needed=True),
        make=table.integer("make", 1, MOST_COPIES, 1) or 1,
        worked=Worked(table.choice("worked", tuple(Worked), Worked.JOINED)),
        rounds=rounds,
        rounds_line=line,
        steps=steps,
        choose=table.text("choose"),
        below=table.figures("below", sizes, MOST_PLACES),
        note=table.text("note", most=TEXT),
        hook=table.text("hook"),
    )


def _rounds_or_steps(table: Table, rounds: str, steps: Sequence[str]) -> None:
    if rounds.strip() and steps:
        table.fault("steps", 'a part has "rounds" or "steps", not both')
    if not rounds.strip() and not steps:
        key = "rounds" if "rounds" in table else "steps"
        hint = 'Give it "rounds" to work, or "steps" to tick off.'
        table.fault(key, "the part is empty", hint)


def _no_endless_line(table: Table, lines: Iterable[str]) -> None:
    for number, line in enumerate(lines, start=1):
        if len(line) > LONGEST_ROUND:
            text = f'line {number} of "rounds" has {len(line):,} characters'
            table.fault("rounds", text, f"The most is {LONGEST_ROUND:,}: one round a line.")
            return
