"""``hookside size``: how large a pattern comes out by a swatch, and which size fits."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from tracker.cli import Complaint
from tracker.cli_check import PROSE
from tracker.cli_pattern import choose_size, is_path, load, pattern_path
from tracker.cli_piece import opened, piece_called
from tracker.cli_size_report import report
from tracker.cli_size_told import Told, as_data
from tracker.measure.gauge import Ease, read_ease, read_swatch
from tracker.measure.heads import heads_of
from tracker.measure.hooks import hooks_called
from tracker.measure.units import first_length, read_length
from tracker.notation.problems import visible
from tracker.pattern.plan import make_plans
from tracker.pattern.ruler import Ruler, ruler_of, tall_as
from tracker.pattern.sizing import Body, choices, ease_of, sized
from tracker.session.files import ENDING

if TYPE_CHECKING:
    from argparse import Namespace
    from collections.abc import Callable
    from pathlib import Path

    from tracker.measure.heads import Head
    from tracker.measure.hooks import Hook
    from tracker.measure.units import Amount
    from tracker.pattern.model import Pattern
    from tracker.pattern.plan import Plan

Read = TypeVar("Read")


@dataclass(frozen=True, slots=True)
class Source:
    """What is sized: a pattern; for a piece its own plan, and what is left to a length."""

    pattern: Pattern
    plan: Plan | None = None
    left: str = ""


def size(arguments: Namespace) -> int:
    """Print it, for the pattern or piece and the options of the command line.

    Raises `Complaint`: there is no such pattern, size, swatch, ease, head or hook.
    """
    told = _told(_source(arguments.name), arguments)
    if arguments.json:
        print(json.dumps(as_data(told), indent=2))
    else:
        print("\n".join(map(visible, report(told))))
    return 0


def _source(name: str) -> Source:
    """What a word means: a piece, else a pattern file, or instructions for people."""
    piece = piece_called(name) if name.endswith(ENDING) or not is_path(name) else None
    if piece is not None:
        return _piece(piece)
    path = pattern_path(name)
    if path.suffix.lower() not in PROSE:
        return Source(load(path))
    from tracker.cli_read import read_file  # only for files that are no pattern files
    from tracker.pattern.source import PatternError

    try:
        return Source(read_file(str(path)).pattern)
    except PatternError as error:
        raise Complaint(str(error)) from None


def _piece(path: Path) -> Source:
    from tracker.session.glance import glance
    from tracker.session.looking import look, plan_at

    found = opened(lambda: look(path))
    plan = opened(lambda: plan_at(path, found))
    seen = glance(plan, found.history.state)
    left = f"{seen.part}, {seen.round_label}: {seen.left}" if seen.left else ""
    return Source(plan.pattern, plan, left)


def _plans(source: Source, size: str | None) -> tuple[Plan, ...]:
    """The plans of the sizes asked for; of a piece the one that is worked, unless said."""
    wanted = choose_size(source.pattern, size) if size else ""
    if source.plan is not None and wanted in ("", source.plan.size):
        return (source.plan,)
    return tuple(plan for plan in make_plans(source.pattern) if wanted in ("", plan.size))


def _told(source: Source, arguments: Namespace) -> Told:
    pattern = source.pattern
    plans = _plans(source, arguments.size)
    own = ruler_of(pattern)
    ruler = _ruler(pattern, own, arguments.swatch)
    sizes = sized(plans, ruler)
    ease = _ease(pattern, arguments.ease)
    heads, bodies = _bodies(arguments.body)
    return Told(
        pattern=pattern,
        ruler=ruler,
        own=own,
        sizes=sizes,
        planned=sized(plans, own) if own is not None and own != ruler else (),
        ease=ease,
        heads=heads,
        fits=tuple((body, choices(sizes, body, ease or Ease())) for body in bodies),
        hooks=_hooks(arguments.hook),
        unit=arguments.unit or _unit(pattern, arguments),
        left=source.left,
    )


def _ruler(pattern: Pattern, own: Ruler | None, words: str | None) -> Ruler:
    if words is None:
        if own is None:
            raise Complaint(
                f'"{pattern.title}" states no gauge over a length: give one, such as '
                '--swatch "16 sts 18 rounds 10 cm"'
            )
        return own
    swatch, stitch = _read(read_swatch, words)
    named = tall_as(pattern, stitch) if stitch else own.stitch if own else ""
    if stitch and not named:
        raise Complaint(f'"{stitch}" is no stitch to make a swatch of')
    return Ruler(pattern, swatch, named)


def _ease(pattern: Pattern, words: str | None) -> Ease | None:
    return ease_of(pattern) if words is None else _read(read_ease, words)


def _bodies(words: str | None) -> tuple[tuple[Head, ...], tuple[Body, ...]]:
    """What a word means that the piece shall go round: a length, or the heads of an age."""
    if words is None:
        return (), ()
    length = _length(words)
    if length is not None:
        if length.cm <= 0:
            raise Complaint(f'nothing is "{words}" round: give a length such as 44 cm')
        return (), (Body("", length.cm, length.cm, length.cm),)
    heads = _read(heads_of, words)
    return heads, tuple(Body(head.who, head.low, head.middle, head.high) for head in heads)


def _length(words: str) -> Amount | None:
    """The length that words state; None where they are no length but may be an age."""
    try:
        return read_length(words)
    except ValueError:
        if first_length(words) is None:
            return None
        raise


def _hooks(word: str | None) -> tuple[Hook, ...]:
    if word is None:
        return ()
    found = hooks_called(word)
    if not found:
        raise Complaint(f'no hook is called "{word}": hookside tables hooks lists them')
    return found


def _unit(pattern: Pattern, arguments: Namespace) -> str:
    """Inches where what was asked, or else the pattern's gauge, is in inches."""
    said = (arguments.body, arguments.swatch, pattern.gauge.over if pattern.gauge else None)
    lengths = [first_length(words) for words in said if words]
    return next((one.unit for one in lengths if one and one.unit in ("cm", "in")), "cm")


def _read(read: Callable[[str], Read], words: str) -> Read:
    """What is read from words; a `Complaint` where they are not such."""
    try:
        return read(words)
    except ValueError as error:
        raise Complaint(str(error)) from None
