"""The stitches that a text for people explains well enough to count."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tracker.notation.definitions import define
from tracker.notation.dictionary import STITCHES, in_terms
from tracker.notation.lexicon import Lexicon
from tracker.notation.stitches import Stitch
from tracker.pattern.load import LONGEST_SPACE, MOST_RINGS, MOST_SPACES, MOST_STITCHES
from tracker.pattern.tables import TEXT


@dataclass(frozen=True, slots=True)
class Defined:
    """The stitches that a text explains well enough to count.

    ``aliases`` are its own words for stitches of the dictionary: (word, US name);
    ``rings`` its words for an adjustable ring.
    """

    stitches: tuple[Stitch, ...] = ()
    aliases: tuple[tuple[str, str], ...] = ()
    rings: tuple[str, ...] = ()


#: Between two on one line: "Inc = 2 sc in same st. Dec = 2 sc together."
_BESIDE = re.compile(r"(?<=[.;,]) +(?=[A-Z][\w ]{0,12} ?= ?)")
_DASHED = re.compile(r"^(\s*[^\W_][\w/'\" ()-]{0,40}?)\s+[-–—]\s+")


def defined_in(lines: Sequence[str], terms: str) -> Defined:
    """What the lines under "Abbreviations" or "Special stitches" define."""
    lines = [_DASHED.sub(r"\1: ", one) for line in lines for one in _BESIDE.split(line)]
    lexicon = Lexicon(terms)
    before = dict(lexicon.phrases)
    define("\n".join(lines), lexicon)
    special = lexicon.special()
    aliases = [
        (" ".join(words), us)
        for words, us in lexicon.phrases.items()
        if us in STITCHES and us not in special and before.get(words) != us
    ]
    stitches = [s._replace(how=_meaning(s.abbr, lines)) for s in special.values() if _bounded(s)]
    return Defined(
        tuple(stitches[:MOST_STITCHES]),
        tuple((word, us) for word, us in aliases if len(word) <= 20),
        tuple(sorted(lexicon.rings)[:MOST_RINGS]),
    )


def _bounded(stitch: Stitch) -> bool:
    spaces = len(stitch.spaces) <= MOST_SPACES and all(
        1 <= n <= LONGEST_SPACE for n in stitch.spaces
    )
    return len(stitch.abbr) <= 20 and max(stitch.takes, stitch.makes) <= 1_000 and spaces


def _meaning(abbr: str, lines: Sequence[str]) -> str:
    """The words that explain a stitch."""
    for line in lines:
        head, colon, rest = line.partition(":") if ":" in line else line.partition("=")
        if colon and abbr.lower() in head.lower() and rest.strip():
            return rest.strip()[:TEXT]
    return ""


def as_stitches(defined: Defined, terms: str) -> Iterator[Stitch]:
    """All that was defined as stitches of a pattern; an alias carries the US name it means."""
    yield from defined.stitches
    taken = {stitch.abbr.lower() for stitch in defined.stitches}
    for word, us in defined.aliases:
        if word not in taken and in_terms(us, terms):
            yield STITCHES[us]._replace(abbr=word, name=word)
