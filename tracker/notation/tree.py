"""The instruction tree: what the words of one round ask for, before it is worked.

Every node has ``start`` and ``end``, offsets into the round's text. A `Figure` is one
number or one for each size.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from tracker.notation.stitches import Stitch

Figure = tuple[int, ...]


class At(StrEnum):
    """Which places of the round below an instruction works into."""

    NEXT = "next"  #: the next one, or the next ``count`` ones
    EACH = "each"  #: each of them, to the end or until ``leave`` are left
    SAME = "same"  #: the one last worked into (or the first, when nothing is worked)
    FIRST = "first"
    LAST = "last"
    ANY = "any"  #: wherever the maker likes: the round starts there
    RING = "ring"
    HOOK = "hook"  #: the ``nth`` chain from the hook
    BELOW = "below"  #: a stitch further down, or between stitches: takes none
    EDGE = "edge"  #: along an edge, wherever they fit: takes none
    SKIPPED = "skipped"  #: the one just passed over


@dataclass(frozen=True, slots=True)
class Target:
    """Where stitches go.

    Attributes:
        at: which places.
        kind: "st" (any stitch), "sp" (any chain space), "ch" (single chains), "ch-N sp",
            "corner", "tch" (the turning chain), "lone" (a stitch outside any group), or a
            stitch's US name.
        count: how many places; None for one, or for all of them with `At.EACH`, where a number
            says how many there are.
        leave: how many places of ``kind`` are left at the end, with `At.EACH`.
        nth: for `At.HOOK`, which chain; for `At.BELOW`, which round (0: not said); for
            `At.SAME`, 1 for the place that the round's first stitch went into; where
            ``kind`` is a group, which of its stitches (-1 the last, 0 not said).
        until: with `At.EACH`, the kind of place it stops before ("to next ch-2 sp"); with
            ``leave``, before the last so many of those.
        counts: for `At.HOOK`, whether the chains passed over count as a stitch, where the
            words say so; ``plus``: chains of theirs that make a space behind that stitch.
        short: with ``until``, how many places before that it stops.
        group: name of the group the places are counted in ("ch-2 sp of next V-st").
        of: for `At.BELOW`, which places of that round.
        said_each: of a number of places the words say "each".
        rows: whether the places are the ends of rows.
    """

    at: At
    kind: str = "st"
    count: Figure | None = None
    leave: Figure | None = None
    nth: int = 0
    until: str = ""
    short: Figure | None = None
    group: str = ""
    counts: bool | None = None
    plus: int = 0
    of: At = At.NEXT
    rows: bool = False
    said_each: bool = False


@dataclass(frozen=True, slots=True)
class Make:
    """``count`` of a stitch, in a place; without a target, each in the next place.

    ``numbered``: the words give the count; ``behind``: it stands behind the stitch ("sc 3").
    ``apart``: for an increase or a decrease written "2 sc dec", the number before it, which
    may also be one of plain stitches that come before.
    """

    stitch: Stitch
    count: Figure
    target: Target | None
    start: int
    end: int
    loop: str = ""
    numbered: bool = True
    behind: bool = False
    apart: Figure | None = None


@dataclass(frozen=True, slots=True)
class Chain:
    """``count`` chains. ``stands_for`` says what they count as, where the words say so.

    ``counts`` is True or False where the words say so, else None; with ``stands_for``
    "dc" and ``plus`` 2, "ch 5 counts as dc and ch 2". ``lasting``: said for later rounds
    too. ``part``: it is part of a shell made next, not a stitch beside it.
    """

    count: Figure
    start: int
    end: int
    counts: bool | None = None
    stands_for: str = ""
    plus: int = 0
    lasting: bool = False
    part: bool = False


@dataclass(frozen=True, slots=True)
class Skip:
    """Pass over places. ``at`` is NEXT, FIRST or LAST.

    ``counts``: chains passed over count as a stitch, as the words say.
    """

    count: Figure
    kind: str
    start: int
    end: int
    at: At = At.NEXT
    counts: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """Several things made in one place, or, with `At.EACH`, in each of several.

    ``listed``: the place stands behind the last of them, without a bracket round all, so
    that it may belong to that one alone.
    """

    body: tuple[Node, ...]
    target: Target
    start: int
    end: int
    listed: bool = False


class More(StrEnum):
    """Whether the times a repeat is asked for include the pass already written out."""

    TOTAL = "in all"
    MORE = "more"
    UNSAID = "not said"


@dataclass(frozen=True, slots=True)
class Upto:
    """A number that says how far a repeat goes: "until you have 6 groups of 4 dc".

    Attributes:
        count: how many.
        kind: what is counted, as `Target.kind` names it; "bunch" for petals and the like.
        size: of how many stitches each is; 0 where that is not said.
    """

    count: Figure
    kind: str
    size: int = 0


@dataclass(frozen=True, slots=True)
class Repeat:
    """The body again and again.

    Attributes:
        body: what is repeated.
        times: how often, or None: until the round below is used up (or ``leave`` left).
        more: whether ``times`` counts the pass already made.
        leave, kind: how many places of which kind are left when it stops.
        until: the kind of place it stops before ("to next ch-2 sp"), or "".
        stop: index in ``body`` at which the last pass stops, or -1.
        starred: written with stars (its end may be left unsaid).
        implied: nothing in the words says that it is repeated.
        partial: the words say that the last pass ends otherwise.
        omit: how many stitches at the end of the last pass are left out, or 0.
        paced: a decrease told by how often it comes, "every 4th st", so that there may be
            one stitch less before each; the printed count shows which.
        upto: what there is to be of something when it stops; None where that is not said.
    """

    body: tuple[Node, ...]
    start: int
    end: int
    times: Figure | None = None
    more: More = More.TOTAL
    leave: Figure | None = None
    kind: str = "st"
    stop: int = -1
    starred: bool = False
    implied: bool = False
    omit: int = 0
    partial: bool = False
    until: str = ""
    paced: bool = False
    upto: Upto | None = None


class Deed(StrEnum):
    """What the hands do that makes no stitch."""

    JOIN = "join"
    TURN = "turn"
    COLOUR = "colour"
    MARKER = "marker"
    RING = "ring"
    FASTEN = "fasten off"
    START = "rounds start here"  #: the stitches just made only moved the start of the rounds


@dataclass(frozen=True, slots=True)
class Act:
    """One deed. ``colour`` for a change of colour; ``target`` for what is joined to.

    ``onto`` for a join: "stitch" or "chain", what the words say it closes to ("" unsaid);
    ``length`` the length of that chain, where it is named whole (0 otherwise); ``named``
    the key of the stitch ("" otherwise). ``bare``: it is a slip stitch of which no more is
    said, so that it may be the round's last stitch.
    """

    deed: Deed
    start: int
    end: int
    colour: str = ""
    target: Target | None = None
    onto: str = ""
    length: int = 0
    named: str = ""
    bare: bool = False


@dataclass(frozen=True, slots=True)
class Loops:
    """From here on stitches go into these loops ("back loop", "front loop", "").

    ``of``: the round whose loops they are, where the words name it; else 0.
    """

    loop: str
    start: int
    end: int
    of: int = 0


@dataclass(frozen=True, slots=True)
class Evenly:
    """``count`` increases (``change`` 1) or decreases (-1), spread evenly round.

    With ``change`` 0 the round is worked even: one stitch in each place, of ``stitch``
    where the words name one, else of the kind the round below is made of. ``to``: the count
    is how many stitches the round is to have, not how many it gains or loses. ``ends``: where
    the changes stand if not spread: ``count`` of them at the "first" end, the "last", "both", or
    at "one" of them that is not told.
    """

    count: Figure
    change: int
    start: int
    end: int
    stitch: Stitch | None = None
    to: bool = False
    ends: str = ""


@dataclass(frozen=True, slots=True)
class Along:
    """Several kinds of place met in turn: "dc in each dc and 3 dc in each ch-2 sp around".

    Each part of ``body`` has a target with `At.EACH`; one pass along the round below
    works whichever part the place that comes next asks for.
    """

    body: tuple[Make | Group, ...]
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class OtherSide:
    """Go on along the other side of the foundation chain."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Note:
    """Words that ask for nothing that could be counted."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Unread:
    """Words that were not understood. ``why`` completes a sentence about them."""

    words: str
    start: int
    end: int
    why: str = "is not understood"


Node = (
    Make | Chain | Skip | Group | Repeat | Along | Act | Loops | Evenly | OtherSide | Note | Unread
)
