"""Looking at a piece without taking it up: it may be open elsewhere meanwhile."""

from __future__ import annotations

from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError, inside, read_piece
from tracker.session.files import RealDisk
from tracker.session.glance import Glance, glance
from tracker.session.own import in_own_version
from tracker.session.reading import Reading, read_plan

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.head import Head
    from tracker.session.paper import Found
    from tracker.session.returning import Card


def look(path: Path) -> Found:
    """What a piece's file holds. Raises `StoreError` where there is no such piece."""
    return read_piece(inside(path), RealDisk())[1]


def glance_at(path: Path, *, reading: Reading | None = None) -> Glance:
    """A glance at a piece that may be open elsewhere. Raises `StoreError`."""
    found = look(path)
    return glance(plan_at(path, found, reading), found.history.state)


def card_at(path: Path) -> Card:
    """What to look at before going on with a piece. Raises `StoreError`."""
    from tracker.session.returning import card
    from tracker.session.store import now

    found = look(path)
    return card(plan_at(path, found), found.history.state, found.when, now())


def plan_at(path: Path, found: Found, reading: Reading | None = None) -> Plan:
    """The plan of a piece that was read, in the maker's own version. Raises `StoreError`."""
    return in_own_version(plan_found(path, found.head, reading), found.history.state)


def plan_found(path: Path, head: Head, reading: Reading | None = None) -> Plan:
    """The plan of a piece whose head was read, as printed. Raises `StoreError`."""
    try:
        return (reading or read_plan)(head.pattern, head.size)
    except ValueError as error:
        raise StoreError(f"The pattern in {path.name} cannot be read: {error}") from None
