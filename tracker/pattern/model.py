"""A pattern as data: what its TOML file says, checked for shape but not yet counted."""

from __future__ import annotations

from enum import StrEnum

from tracker.lean import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from fractions import Fraction

    from tracker.notation.stitches import Stitch


class Worked(StrEnum):
    """How a part grows."""

    JOINED = "joined rounds"
    SPIRAL = "spiral"
    ROWS = "rows"


class Gauge(NamedTuple):
    """Stitches and rounds over a measured length of the fabric.

    Attributes:
        stitch: abbreviation of the stitch the swatch is worked in.
        stitches, rounds: counted over ``over``; exact.
        over: the length, with its unit, as written ("10 cm").
        hook: hook size as written ("5 mm").
    """

    stitch: str
    stitches: Fraction
    rounds: Fraction
    over: str
    hook: str


class Fit(NamedTuple):
    """What the piece goes round, and how closely.

    Attributes:
        part: the name of the part that goes round it.
        on: what that is, in a word or two ("head"); may be empty.
        ease: what the part is larger by, as written ("-2 cm", "-5 %"); "" for nothing.
        around: "stitches" where they lie around it, "rows" where rows do.
    """

    part: str
    on: str = ""
    ease: str = ""
    around: str = "stitches"


class Yarn(NamedTuple):
    """One yarn of the pattern: the letter used in the rounds, a name, a colour word."""

    letter: str
    name: str
    colour: str


class Part(NamedTuple):
    """One part of a piece.

    Attributes:
        name: as the maker calls it.
        make: how many copies.
        worked: how it grows.
        rounds: the instructions, one round a line, as a maker reads them.
        rounds_line: line of the file on which ``rounds`` begins (for messages).
        steps: plain sentences to tick off, for making up; then ``rounds`` is empty.
        choose: name of a group of parts of which the maker works one ("trim"), or "".
        below: places that the first round is worked into, one figure or one a size, or
            empty where the part begins from nothing.
        note: one sentence shown when the part begins; may be empty.
        hook: hook size where it differs from the gauge's; "" otherwise.
    """

    name: str
    make: int = 1
    worked: Worked = Worked.JOINED
    rounds: str = ""
    rounds_line: int = 1
    steps: tuple[str, ...] = ()
    choose: str = ""
    below: tuple[int, ...] = ()
    note: str = ""
    hook: str = ""


class Pattern(NamedTuple):
    """A whole pattern.

    ``sizes`` is empty for a piece in one size. ``cautions`` are ids of the cautions that
    apply. ``rings`` are the pattern's own words for an adjustable ring. ``source`` is the
    TOML text it was read from, kept so that a piece can carry it.
    """

    title: str
    terms: str
    parts: tuple[Part, ...]
    sizes: tuple[str, ...] = ()
    about: str = ""
    gauge: Gauge | None = None
    fit: Fit | None = None
    yarns: tuple[Yarn, ...] = ()
    stitches: tuple[Stitch, ...] = ()
    cautions: tuple[str, ...] = ()
    rings: tuple[str, ...] = ()
    source: str = ""
