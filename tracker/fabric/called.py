"""What the places of the round below are called: stitches, chain spaces, corners, groups."""

from __future__ import annotations

from tracker.fabric.edge import GROUPED, POSTED, Edge, Spot
from tracker.notation.dictionary import base_of


class Called:
    """An edge whose places are asked for by what the instructions call them.

    ``loose``: a stitch named in the instructions means any stitch. ``singly``: each chain
    of a chain space is a place like a stitch.
    """

    def __init__(self, edge: Edge, *, loose: bool, singly: bool) -> None:
        self.edge = edge
        self.loose = loose
        self.singly = singly
        self._names = {s.name for s in edge} | {base_of(s.name) for s in edge}
        self._groups = {s.group for s in edge if s.group}
        self._longest = max((s.chains for s in edge), default=0)
        # The first corner may be told without brackets; several such spaces are no corners.
        longest = [bool(s.group) for s in edge if s.chains == self._longest > 0]
        self._in_groups = any(longest) and longest.count(False) > 1

    def matches(self, kind: str, spot: Spot) -> bool:
        """Whether ``spot`` is a place of ``kind`` (as `Target.kind` names it)."""
        if spot.chains or kind == "middle":
            return spot.middle or self._is_space(kind, spot)
        if spot.name in ("tch", "gap") or kind in ("tch", "gap"):
            return kind == spot.name
        if spot.name == "anchor":
            return kind in ("sl st", "post")
        if kind in ("sp", "corner") or kind.endswith(" sp"):
            return kind == spot.group == "corner"
        if kind in ("post", "lone"):
            return not spot.group
        if (
            kind in ("st", "st+ch", "st+sp")
            or spot.name == "st"
            or self.loose
            or not self.knows(kind)
        ):
            return True
        if kind in POSTED:
            return spot.name.startswith(kind)
        return spot.name == kind or base_of(spot.name) == base_of(kind)

    def _is_space(self, kind: str, spot: Spot) -> bool:
        if kind == "corner":
            return spot.chains == self._longest and (bool(spot.group) or not self._in_groups)
        if self.singly and spot.chains == 1 and kind in ("st", "ch"):
            return True
        return kind in ("sp", "st+ch", "st+sp", spot.name)

    def knows(self, kind: str) -> bool:
        """Whether the edge has stitches of that name."""
        if kind == "sl st" and "anchor" in self._names:
            return True
        if kind in POSTED:
            return any(name.startswith(kind) for name in self._names)
        return kind in self._names or base_of(kind) in self._names

    def has_group(self, kind: str) -> bool:
        """Whether the edge has groups (fans, V stitches) of that key."""
        if kind in self._groups or (kind == "group" and bool(self._groups)):
            return True
        return kind in GROUPED and "group" in self._groups

    def has_space(self) -> bool:
        """Whether the edge has any chain space."""
        return self._longest > 0

    def has_gap(self) -> bool:
        """Whether the edge has gaps between groups."""
        return "gap" in self._names

    def _group_end(self, start: int) -> int:
        """Index just past the group that opens at ``start``."""
        name, end = self.edge[start].group, start + 1
        while end < len(self.edge) and self.edge[end].group == name and not self.edge[end].opens:
            end += 1
        return end

    def _is_group(self, key: str, start: int) -> bool:
        """Whether the group that opens at ``start`` may be called ``key``.

        A group written out in brackets has no name of its own: it is called a shell where
        no other is, or where it looks like those that are.
        """
        name = self.edge[start].group
        if key in (name, "group"):
            return True
        if name != "group" or key not in GROUPED:
            return False
        shapes = self._shapes_of(key)
        return not shapes or self._shape(start) in shapes

    def _shape(self, start: int) -> tuple[int, ...]:
        """The chain spaces of the group that opens at ``start``."""
        spots = self.edge[start : self._group_end(start)]
        return tuple(s.chains for s in spots if s.chains)

    def _shapes_of(self, key: str) -> set[tuple[int, ...]]:
        """What the groups called ``key`` look like; else those with a space, if any has."""
        opening = [i for i, s in enumerate(self.edge) if s.opens and s.group]
        named = {self._shape(i) for i in opening if self.edge[i].group == key}
        return named or {shape for i in opening if (shape := self._shape(i))}


def spacey(kind: str) -> bool:
    """Whether a kind of place is a chain space, or a gap between groups."""
    return kind in ("sp", "gap", "corner") or kind.endswith(" sp")
