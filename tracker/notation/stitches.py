"""What is known of a stitch: takes, makes, loops, how it is made."""

from __future__ import annotations

from tracker.lean import NamedTuple


class Variant(NamedTuple):
    """How the first or the last of a special stitch in a round differs.

    ``takes`` and ``makes`` are None where they are those of the stitch itself.
    """

    takes: int | None = None
    makes: int | None = None
    how: str = ""
    loops: tuple[str, ...] = ()


class Stitch(NamedTuple):
    """One stitch of the dictionary, or a special stitch that a pattern defines.

    Attributes:
        abbr: abbreviation in the terms it was read in.
        name: spelt out, in the same terms.
        takes, makes: places of the round below it uses; stitches it leaves.
        us: its abbreviation in US terms: the name under which it is counted.
        how: a short how-to in our own words; may be empty.
        loops: what the hook does loop by loop, one sentence each; may be empty.
        first, last: how it differs at the first and the last place of a round.
        spaces: lengths of the chain spaces it leaves, in order ("(dc, ch 2, dc)": (2,)).
        height: chains a beginning chain needs to stand for it; 0 where none does.
    """

    abbr: str
    name: str
    takes: int = 1
    makes: int = 1
    us: str = ""
    how: str = ""
    loops: tuple[str, ...] = ()
    first: Variant | None = None
    last: Variant | None = None
    spaces: tuple[int, ...] = ()
    height: int = 0
