"""Lines that tell the sizes apart: "Size L only: …", "Small: … Medium: …"."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from tracker.notation.lines import Line
from tracker.notation.one_size import stated_in_sizes
from tracker.notation.round_text import Stated
from tracker.notation.size_names import Heads
from tracker.pattern.tasks import ReadLine

UNKNOWN = "is worked in some sizes only, which is not followed here"


class SizeLines:
    """Takes the lines of a part apart by size.

    Args:
        read: reads a line with figures for so many sizes.
        names: of the sizes, in order; empty where they are not known.
        sizes: how many.
    """

    def __init__(
        self, read: Callable[[Line, int], ReadLine], names: Sequence[str], sizes: int
    ) -> None:
        self._read, self._names, self._sizes = read, names, sizes
        self._lasting: tuple[int, ...] = ()

    def of(self, line: Line) -> list[ReadLine]:
        """A line as it is worked: once for all sizes, or for each that it tells apart."""
        if self._sizes == 1:
            return [self._read(line, 1)]
        label = Heads(_as_head(line.label), self._names, self._sizes)
        heads = Heads(line.body, self._names, self._sizes)
        if label.unknown or heads.unknown:
            item = self._one(line, self._all())
            all_told = label.unknown and len(_total(item)) == self._sizes
            known = item.only or all_told
            return [item if known else replace(item, read=replace(item.read, apart=UNKNOWN))]
        if self._is_heading(line, heads):
            return []
        given = label.found[0][2] if label.found else self._lasting
        if given == self._all() or not given:
            given = ()
        found = self._apart(line, heads, given or self._all())
        return self._counted(found)

    def _all(self) -> tuple[int, ...]:
        return tuple(range(self._sizes))

    def _is_heading(self, line: Line, heads: Heads) -> bool:
        """Whether a line only says for which sizes the lines after it are."""
        if line.label or len(heads.found) != 1:
            return False
        _, end, which = heads.found[0]
        if line.body[end:].strip(" .:\n"):
            return False
        self._lasting = () if which == self._all() else which
        return True

    def _apart(self, line: Line, heads: Heads, given: tuple[int, ...]) -> list[ReadLine]:
        """The line for each group of sizes whose words are the same."""
        groups: dict[str, list[int]] = {}
        for size in given:
            groups.setdefault(_for_size(line.body, heads, size), []).append(size)
        return [
            self._one(replace(line, body=body), tuple(which))
            for body, which in groups.items()
            if body.strip(" .,;:")
        ]

    def _one(self, line: Line, which: tuple[int, ...]) -> ReadLine:
        item = self._read(line, self._sizes)
        if 1 < len(which) < self._sizes and len(_total(item)) != self._sizes:
            # "Sizes M and L only: … (53, 57)": figures for those sizes alone
            other = self._read(line, len(which))
            item = other if len(_total(other)) == len(which) else item
        total = _total(item)
        if len(total) == self._sizes and not all(total):
            # "- (-, 48) sts": sizes without a count skip the round
            which = tuple(i for i in which if total[i])
        return replace(item, only=() if which == self._all() else which)

    def _counted(self, found: list[ReadLine]) -> list[ReadLine]:
        """The last one's count for each size is that of the others, too, each in its own sizes."""
        if not found or len(_total(found[-1])) != self._sizes:
            return found
        *others, last = found
        return [*(_with_count(item, last.read.stated) for item in others), last]


def _with_count(item: ReadLine, stated: Stated | None) -> ReadLine:
    """A line for some sizes with their figures of a count for all, where it prints none itself."""
    if item.read.stated is not None:
        return item
    return replace(item, read=replace(item.read, stated=stated_in_sizes(stated, item.only)))


def _total(item: ReadLine) -> tuple[int, ...]:
    """The printed count of a line; () where it prints none."""
    return () if item.read.stated is None else item.read.stated.total or ()


def _as_head(label: str) -> str:
    """The words on sizes of a label, as they would stand before a colon."""
    for opening, closing in ("()", "[]"):
        inside = label.partition(opening)[2].partition(closing)[0]
        if inside:
            return f"{inside}:"
    return label


def _for_size(body: str, heads: Heads, size: int) -> str:
    """The words with those for other sizes alone blanked out, so that columns keep."""
    letters = list(body)
    ends = [*(begin for begin, _, _ in heads.found), len(body)][1:]
    for (begin, words, which), end in zip(heads.found, ends, strict=bool(heads.found)):
        for at in range(begin, words if size in which else end):
            letters[at] = letters[at] if letters[at] == "\n" else " "
    return "".join(letters)
