"""What is told line by line of a press and of the place it led to."""

from __future__ import annotations

from collections.abc import Iterable

from tracker.screens.actions import Keys
from tracker.screens.keys import shown
from tracker.screens.passes import which
from tracker.screens.tell import asked
from tracker.session.glance import Glance, numbered

QUIET = ("next stitch", "next loop", "next repeat")
"""What a press on says that needs no telling."""


def told(seen: Glance, before: Glance, keys: Keys) -> str:
    """One line: what the press did if that is news, the count, the step, the repeat."""
    words = [] if seen.last_press in QUIET else [seen.last_press]
    if (seen.round_label, seen.round, seen.part) != (before.round_label, before.round, before.part):
        words.append(f"{seen.part}, {numbered(seen)}: {seen.instruction}")
        off = f"{shown(keys['wrong'][0])}: {seen.off}" if seen.off else ""
        words += [off, seen.right, seen.warning, seen.note]
    if seen.memo != before.memo:
        words.append(seen.memo)
    if seen.left != before.left:
        words.append(seen.left)
    words += [asked(seen, keys)] if seen.at_end or seen.part_done else list(_step(seen))
    if seen.trouble != before.trouble:
        words.append(seen.trouble)
    return " · ".join(word for word in words if word)


def _step(seen: Glance) -> Iterable[str]:
    yield f"next {seen.step_text} {seen.step_where}".rstrip()
    if seen.loops_shown and seen.loops:
        yield f"loop {seen.loop + 1} of {len(seen.loops)}: {seen.loops[seen.loop]}"
    if not seen.making_up:
        of = "" if seen.ends_on is None else f" of {seen.ends_on}"
        yield f"{seen.made}{of} made"
    yield from (f"repeat {which(repeat)}" for repeat in seen.repeats)
