"""Reading lists of things whose place stands behind the last: "3 dc, ch 2, 3 dc in next sp"."""

from __future__ import annotations

from dataclasses import replace

from tracker.notation.brackets import Brackets
from tracker.notation.tree import At, Chain, Group, Make, Node

#: The shortest list with a place behind it: "dc, ch 2, dc in next st".
_SHORTEST = 2


class Gathers(Brackets):
    """Rules for several things in one place that no bracket holds together."""

    def _all_into(self, before: list[Node]) -> list[Node] | None:
        """``make {"," make} "," target``: all that stands before it goes into that place."""
        mark = self.at
        loose: list[Node] = []
        while before and isinstance(before[-1], Make | Chain):
            last = before[-1]
            if isinstance(last, Make) and last.target is not None:
                break
            loose.insert(0, before.pop())
        if self.here.text in ("in", "into", "on") and any(isinstance(n, Make) for n in loose):
            target = self.target()
            if target is not None and self._clause_is_over():
                return [Group(tuple(loose), target, loose[0].start, self.last_end)]
        before.extend(loose)
        self.at = mark
        return None

    def _listed(self, before: list[Node], made: list[Node]) -> list[Node]:
        """``make {"," (make | chain)} "," make target``: all of it in that place, perhaps

        With a chain among them, things listed before a single place share it: a shell
        written without its brackets. ``Reading.apart`` tells whether they do after all not.
        """
        last = made[0]
        if len(made) != 1 or not isinstance(last, Make) or not _single(last):
            return made
        loose = _placeless(before)
        if not any(isinstance(n, Chain) or n.stitch.us == "sl st" for n in (*loose, last)):
            return made
        if len(loose) + 1 < _SHORTEST or last.target is None:
            return made
        del before[len(before) - len(loose) :]
        body = (*loose, replace(last, target=None))
        return [Group(body, last.target, loose[0].start, self.last_end, listed=True)]


def _single(node: Make) -> bool:
    """Whether a stitch goes into one place that is named."""
    target = node.target
    return target is not None and target.at in (At.NEXT, At.SAME) and target.count is None


def _placeless(before: list[Node]) -> list[Make | Chain]:
    """What stands last in ``before`` without a place of its own, from a stitch on."""
    found: list[Make | Chain] = []
    for node in reversed(before):
        if not isinstance(node, Make | Chain) or (isinstance(node, Make) and node.target):
            break
        found.insert(0, node)
    while found and isinstance(found[0], Chain):
        del found[0]
    return found
