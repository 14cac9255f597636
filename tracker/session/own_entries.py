"""What the file says of a round that is worked otherwise.

    8 = { when = …, change = [1, 1, 9], words = "*sc 4, inc; rep", seal = "…" }
    9 = { when = …, add = [1, 1, 27], after = 9, words = "sc around (36)", seal = "…" }

in part 1, from copy 1 on: round 9 as typed, then a further round behind it, which is given
the next number that the part has left. ``omit`` leaves a round out, ``restore`` brings it
back as printed; ``spared`` lists later copies that stay as they are.
"""

from __future__ import annotations

from collections.abc import Mapping

from tracker.pattern.changes import Change
from tracker.session.events import Changing
from tracker.session.fields import EntryError, Value, down, up


def changing_fields(changing: Changing | None) -> dict[str, Value]:
    """One of "change", "add", "omit" and "restore", and what goes with it."""
    if changing is None:
        return {}
    change, fields = changing.change, dict[str, Value]()
    fields[_deed(change)] = up((changing.part, changing.copy, change.round))
    if change.after is not None:
        fields["after"] = change.after + 1
    if change.words:
        fields["words"] = change.words
    if changing.spared:
        fields["spared"] = up(changing.spared)
    return fields


def _deed(change: Change) -> str:
    if change.words is None:
        return "restore"
    if change.after is not None:
        return "add"
    return "change" if change.words else "omit"


def changing_of(fields: Mapping[str, Value]) -> Changing | None:
    """What the fields say is worked otherwise. Raises `EntryError`."""
    deeds = fields.keys() & {"change", "add", "omit", "restore"}
    more = fields.keys() & {"after", "words", "spared"}
    if not deeds and not more:
        return None
    deed = next(iter(deeds), "")
    words = {"change": {"words"}, "add": {"words", "after"}}.get(deed, set())
    if len(deeds) != 1 or more - {"spared"} != words:
        raise EntryError("not a changed round")
    part, copy, line = down(fields[deed], 3)
    typed = {"omit": "", "restore": None}.get(deed, fields.get("words"))
    after = fields.get("after")
    if (words and not typed) or not isinstance(typed, str | None):
        raise EntryError("not the words of a round")
    if after is not None and (isinstance(after, bool) or not isinstance(after, int)):
        raise EntryError("not the number of a round")
    change = Change(line, typed, None if after is None else after - 1)
    return Changing(part, copy, change, _spared(fields.get("spared", ())))


def _spared(value: Value) -> tuple[int, ...]:
    if not isinstance(value, tuple) or not all(value):
        raise EntryError("not a list of copies")
    return tuple(one - 1 for one in value)
