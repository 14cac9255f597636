"""Looking at a piece without taking it up: it may be open elsewhere meanwhile."""

from __future__ import annotations

import os

from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError
from tracker.session.contents import read_piece
from tracker.session.files import RealDisk
from tracker.session.glance import Glance, glance
from tracker.session.own import in_own_version
from tracker.session.reading import Reading, read_plan

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.files import StrPath
    from tracker.session.head import Head
    from tracker.session.paper import Found
    from tracker.session.returning import Card


def look(path: StrPath) -> Found:
    """What a piece's file holds. Raises `StoreError` where there is no such piece."""
    return read_piece(path, RealDisk())[1]


def glance_at(path: StrPath, *, reading: Reading | None = None) -> Glance:
    """A glance at a piece that may be open elsewhere. Raises `StoreError`."""
    found = look(path)
    return glance(plan_at(path, found, reading), found.history.state)


def card_at(path: StrPath) -> Card:
    """What to look at before going on with a piece. Raises `StoreError`."""
    from tracker.session.returning import card
    from tracker.session.surroundings import now

    found = look(path)
    return card(plan_at(path, found), found.history.state, found.when, now())


def plan_at(path: StrPath, found: Found, reading: Reading | None = None) -> Plan:
    """The plan of a piece that was read, in the maker's own version. Raises `StoreError`."""
    return in_own_version(plan_found(path, found.head, reading), found.history.state)


def plan_found(path: StrPath, head: Head, reading: Reading | None = None) -> Plan:
    """The plan of a piece whose head was read, as printed. Raises `StoreError`."""
    try:
        return (reading or read_plan)(head.pattern, head.size)
    except ValueError as error:
        name = os.path.basename(path)
        raise StoreError(f"The pattern in {name} cannot be read: {error}") from None
