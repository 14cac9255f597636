"""A pattern file that has changed since its piece was begun: noticed, told, gone over to."""

from __future__ import annotations

import stat
from collections.abc import Iterator
from pathlib import Path
from zlib import crc32

from tracker.lean import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from tracker.pattern.model import Pattern
    from tracker.pattern.plan import Plan, PlannedPart
    from tracker.session.head import Head
    from tracker.session.history import History

MOST_TOLD = 6
"""Differences that are told one by one."""

LARGEST = 8 * 1024 * 1024
"""Bytes; a larger file is no pattern."""


class ChangedFile(NamedTuple):
    """A pattern file that no longer says what the piece carries.

    Attributes:
        plan: the changed pattern in the piece's size.
        history: the piece's history in that pattern.
        differences: what is different, a few words each.
        place: where the maker then stands.
        seal: by which the file is known again, if it is passed over.
    """

    plan: Plan
    history: History
    differences: tuple[str, ...]
    place: str
    seal: str

    @property
    def words(self) -> str:
        """The differences in one sentence."""
        told = "; ".join(self.differences[:MOST_TOLD])
        more = len(self.differences) - MOST_TOLD
        return f"{told}; and {more} more." if more > 0 else f"{told}."


def changed_file(head: Head, printed: Plan, history: History) -> ChangedFile | None:
    """What has changed in the file of a piece's pattern.

    None where nothing has, where that was told before and passed over, or where the file is
    gone, cannot be read, or is another pattern or has not the piece's size.
    """
    source = _text(head.file)
    if source is None or source == head.pattern.replace("\r\n", "\n") or _seal(source) == head.over:
        return None
    # Imported here, since a pattern file seldom changes while its piece is worked.
    from tracker.session.naming import spot_words
    from tracker.session.own import in_own_version
    from tracker.session.route import Route

    plan = _plan(source, printed.pattern, head.size)
    if plan is None:
        return None
    carried = Route(printed, plan).carried(history)
    state = carried.state
    place = spot_words(in_own_version(plan, state), state, state.spot)
    found = tuple(_differences(printed, plan)) or ("some words are others",)
    return ChangedFile(plan, carried, found, place, _seal(source))


def _text(file: str) -> str | None:
    """The text of a pattern file; None where there is no such plain file of a fair size."""
    try:
        found = Path(file).lstat() if file else None
        if found is None or not stat.S_ISREG(found.st_mode) or found.st_size > LARGEST:
            return None
        return Path(file).read_bytes().decode("utf-8").replace("\r\n", "\n")
    except (OSError, ValueError):
        return None


def _seal(source: str) -> str:
    return f"{crc32(source.encode()):08x}"


def _plan(source: str, pattern: Pattern, size: str) -> Plan | None:
    """The changed pattern in a size; None where it is none of this title and size."""
    from tracker.session.reading import read_plan

    try:
        plan = read_plan(source, size)
    except ValueError:
        return None
    same = plan.pattern.title == pattern.title and bool(plan.pattern.sizes) == bool(pattern.sizes)
    return plan if same else None


def _differences(old: Plan, new: Plan) -> Iterator[str]:
    before = {part.name: part for part in old.parts}
    after = {part.name: part for part in new.parts}
    for name, part in before.items():
        if name not in after:
            yield f"there is no {name} any more"
        else:
            yield from _rounds(part, after[name])
    yield from (f"{name} is new" for name in after if name not in before)


def _rounds(old: PlannedPart, new: PlannedPart) -> Iterator[str]:
    more = len(new.rounds) - len(old.rounds)
    if more:
        many = f"{abs(more)} round{'' if abs(more) == 1 else 's'}"
        yield f"{new.name} has {many} {'more' if more > 0 else 'fewer'}"
    words = {planned.label: planned.text for planned in old.rounds}
    for planned in new.rounds:
        if words.get(planned.label, planned.text) != planned.text:
            yield f"{new.name}, {planned.label} reads otherwise"
