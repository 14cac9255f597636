"""Changes of a text, and offsets of the changed text told as those of the text as written."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from tracker.lean import NamedTuple
from tracker.notation.round_text import RoundText, Stated
from tracker.notation.tree import Along, Group, Make, Node, Repeat


class Edit(NamedTuple):
    """The words from ``start`` to ``end`` of a text are exchanged for ``new``."""

    start: int
    end: int
    new: str


class Edited:
    """A text with changes. Equal ones count once.

    Raises:
        ValueError: two changes are about the same letters.
    """

    def __init__(self, text: str, edits: Iterable[Edit]) -> None:
        self._edits = sorted(set(edits))
        parts, at = [], 0
        for start, end, new in self._edits:
            if start < at:
                raise ValueError("two changes are about the same letters")
            parts += [text[at:start], new]
            at = end
        self.text = "".join((*parts, text[at:]))

    def before(self, offset: int) -> int:
        """Where a letter of the changed text stands in the text as written."""
        shift = 0
        for start, end, new in self._edits:
            begin = start + shift
            if offset < begin:
                break
            if offset <= begin + len(new):
                return start if offset == begin else end
            shift += len(new) - (end - start)
        return offset - shift


def as_written(read: RoundText, text: str, edited: Edited) -> RoundText:
    """A round read from the changed text, told as one of the ``text`` as written."""
    stated = read.stated
    if stated is not None:
        stated = _moved_count(stated, edited)
    last = None if read.last is None else as_written(read.last, text, edited)
    again = read.again
    if again is not None:
        altered = edited.before(again.altered[0]), edited.before(again.altered[1])
        start, end = edited.before(again.start), edited.before(again.end)
        again = replace(again, start=start, end=end, altered=altered if any(altered) else (0, 0))
    nodes = _moved(read.nodes, edited)
    return replace(read, text=text, nodes=nodes, stated=stated, again=again, last=last)


def _moved_count(stated: Stated, edited: Edited) -> Stated:
    return replace(stated, start=edited.before(stated.start), end=edited.before(stated.end))


def _moved(nodes: Sequence[Node], edited: Edited) -> tuple[Node, ...]:
    """Nodes with the offsets they have in the text as written."""
    return tuple(_moved_node(node, edited) for node in nodes)


def _moved_node(node: Node, edited: Edited) -> Node:
    if isinstance(node, Group | Repeat):
        node = replace(node, body=_moved(node.body, edited))
    elif isinstance(node, Along):
        parts = [n for n in _moved(node.body, edited) if isinstance(n, Make | Group)]
        node = replace(node, body=tuple(parts))
    return replace(node, start=edited.before(node.start), end=edited.before(node.end))
