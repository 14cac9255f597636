"""Other words that a round which is not understood may have been meant to have.

They are only offered: whoever asks has to see whether the round then works out.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from itertools import islice, product

from tracker.lean import NamedTuple
from tracker.notation.edits import Edit, Edited, as_written
from tracker.notation.keys import FAR
from tracker.notation.lexicon import Lexicon
from tracker.notation.reader import read_round
from tracker.notation.round_text import RoundText
from tracker.notation.slipped import STEP, Mend, Places
from tracker.notation.tokens import tokenize
from tracker.notation.tree import Group, Node, Repeat, Unread
from tracker.notation.unclosed import bracketings

#: So many texts are tried for one round, and so many of them offered.
_MOST_TRIED = 40
#: So many letters are read for one round in all, but one text in any case.
_MOST_READ = 1_000
_MOST_OFFERED = 8
#: With more words in doubt than these a round is not one with a slip in it.
_MOST_WORDS = 5
#: So many ways to mend each, or as many as `_FEW` where there are more of them than those.
_MOST_WAYS, _FEW = 6, 3
#: A longer round is not looked through for slips.
_MOST_LETTERS = 1_000
#: A place that is left as it is.
_NONE = Mend((), 0)


class Offer(NamedTuple):
    """A round in other words, and how far these are from those written.

    ``too_far``: it is not to be taken, but shows that another may not be meant either.
    ``bold``: only a printed count bears it out.
    """

    read: RoundText
    far: int
    too_far: bool
    bold: bool


def mended_rounds(
    read: RoundText,
    lexicon: Lexicon,
    sizes: int,
    used: Collection[str] = (),
    may_read: Callable[[int], bool] = lambda _: True,
) -> list[Offer]:
    """A round in other words that are all understood, the likeliest first.

    Args:
        read: the round, with words that are not understood.
        lexicon: the words for stitches.
        sizes: how many figures a figure for all sizes has.
        used: words of the text that the round is from, which are likelier than others.
        may_read: whether one more text of so many letters may be read.

    Offsets are those of the round as written; `RoundText.mended` tells what was changed.
    """
    if len(read.text) > _MOST_LETTERS:
        return []
    spans = [(n.start, n.end) for n in _unread(read.nodes)]
    places = Places(read.text, spans, lexicon, used)
    found: list[Offer] = []
    most = min(_MOST_TRIED, 1 + _MOST_READ // max(1, len(read.text)))
    for mends in islice(_combined(read, places), most):
        if len(found) == _MOST_OFFERED or not may_read(len(read.text)):
            break
        if found and any(mend.bold and mend.far >= 2 * STEP for mend in mends):
            break
        with suppress(ValueError):
            edited = Edited(read.text, [edit for mend in mends for edit in mend.edits])
            other = read_round(edited.text, lexicon, sizes=sizes)
            if _alike(read, other) and not _unread(other.nodes):
                found.append(_offer(as_written(other, read.text, edited), mends))
    return found


def _offer(read: RoundText, mends: Sequence[Mend]) -> Offer:
    told = tuple((mend.told, *mend.where) for mend in mends)
    far = sum(mend.far for mend in mends)
    too_far = any(mend.far >= STEP * FAR for mend in mends)
    return Offer(replace(read, mended=told), far, too_far, any(mend.bold for mend in mends))


def _combined(read: RoundText, places: Places) -> Iterator[tuple[Mend, ...]]:
    """Changes that may be made together, the likeliest first.

    Known words are only taken for others where a printed count can bear that out.
    """
    text = read.text
    needed, beside = places.unknown(within=True), places.unknown(within=False)
    if len(needed) > _MOST_WORDS:
        return
    groups = [places.mends(word) for word in needed]
    if len(beside) + len(groups) <= _MOST_WORDS:
        groups += [[*places.mends(word), _NONE] for word in beside]
    groups += [[mend, _NONE] for mend in places.doubled()[:2]]
    brackets = [_bracketed(edit, text) for edit in bracketings(text, tokenize(text))]
    groups += [[*brackets, _NONE]]
    groups = [ways for ways in groups if ways]
    most = _MOST_WAYS if len(groups) <= _FEW else _FEW
    together = [_real(mends) for mends in product(*(ways[:most] for ways in groups))]
    together.sort(key=lambda mends: sum(mend.far for mend in mends))
    yield from (mends for mends in together if mends)
    for one in places.misplaced() if read.stated is not None else ():
        yield (*together[0], one)


def _real(mends: Sequence[Mend]) -> tuple[Mend, ...]:
    return tuple(mend for mend in mends if mend.edits)


def _bracketed(edit: Edit, text: str) -> Mend:
    """A bracket supplied, exchanged or left out."""
    was = text[edit.start : edit.end]
    bold = not (was and edit.new)
    if was and edit.new:
        told = f"{was!r} is taken for {edit.new!r}"
    elif was:
        told = f"{was!r} is passed over"
    else:
        told = f"{edit.new!r} is supplied here"
    return Mend((edit,), STEP, told, bold)


def _unread(nodes: Sequence[Node]) -> list[Unread]:
    """The words that were not understood, in repeats and groups too."""
    found: list[Unread] = []
    for node in nodes:
        if isinstance(node, Unread):
            found.append(node)
        elif isinstance(node, Group | Repeat):
            found += _unread(node.body)
    return found


def _alike(read: RoundText, other: RoundText) -> bool:
    """Whether the other words still tell one round as the first did, but for its stitches."""
    plainly = replace(read, nodes=(), stated=None, last=None)
    told = other.last is None or not _unread(other.last.nodes)
    return told and plainly == replace(other, text=read.text, nodes=(), stated=None, last=None)
