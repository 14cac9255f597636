"""Plans kept as text, so that a piece opens without counting its pattern anew."""

from __future__ import annotations

import json
from zlib import crc32

from tracker.lean import TYPE_CHECKING
from tracker.session.flat import flat, raised
from tracker.session.kept import keep, kept

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan


def kept_plan(source: str, size: str) -> Plan | None:
    """The plan kept for a pattern's TOML text in a size, or None."""
    body = kept(_name(source, size))
    if body is None:
        return None
    try:
        of_size, plan = json.loads(body)
        found = raised(plan)
    except (ValueError, TypeError, IndexError, RecursionError):
        return None
    # Imported only now: what was kept has imported it already.
    from tracker.pattern.plan import Plan

    if not isinstance(found, Plan) or of_size != size or found.pattern.source != source:
        return None
    return found


def keep_plan(plan: Plan, source: str, size: str) -> None:
    """Keep a plan for the next time."""
    body = json.dumps([size, flat(plan)], separators=(",", ":"))
    keep(_name(source, size), body.encode())


def _name(source: str, size: str) -> str:
    return f"{crc32(source.encode(), crc32(size.encode())):08x}.plan"
