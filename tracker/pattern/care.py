"""Which cautions apply to a pattern, and at which of its words each of them matters.

A pattern names its cautions; those that follow from its own words (a size for a baby, a
button, a cord) apply as well. The words are looked for in English, and more is said rather
than less: a caution costs a line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from tracker.pattern.cautions import Caution, cautions

if TYPE_CHECKING:
    from tracker.pattern.model import Pattern


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)


CHILD = _words(
    r"bab(?:y|ies)|infants?|newborns?|preemies?|premature|toddlers?|child(?:ren)?(?:'s|’s)?|kids?"
)
AGE = _words(r"\d+ ?(?:months?|mos?|years?|yrs?)")
INFANT = _words(r"bab(?:y|ies)|infants?|newborns?|preemies?|premature|\d+ ?(?:months?|mos?)|1 year")
NEW = _words(r"newborns?|preemies?|premature")
TOY = _words(r"toys?|dolls?|stuff(?:ed|ing)?|rattles?|teethers?|amigurumi")
HEAD = _words(r"hats?|beanies?|bonnets?|caps?|headbands?|hoods?|helmets?")
SMALL = _words(
    r"buttons?|beads?|sequins?|toggles?|charms?|bells?|snaps?"
    r"|(?:safety|plastic|glass|toy|googly) (?:eyes?|noses?)"
)
POMPOM = _words(r"pom-?\s?poms?")
CORD = _words(r"i-cords?|cords?|drawstrings?|ties|(?:chin|neck) (?:ties?|straps?)")
LOOPS = _words(r"fringes?|tassels?|lace")
APPLIED = _words(r"appliqu\w+")
SHARP = _words(r"scissors|needles?|pins?|sew|sewing|sewn|weave in|steel hooks?")
MARKERS = _words(r"markers?|pins?|clips?")
LOOSE = _words(r"eyes?|nose|come (?:away|off|loose)")

MOMENTS = {
    "small-parts": (SMALL, LOOSE),
    "cap-button": (SMALL,),
    "pompoms": (POMPOM,),
    "applique": (APPLIED,),
    "no-neck-cords": (CORD,),
    "waist-cords": (CORD,),
    "eu-cords": (CORD,),
    "hat-ties": (CORD,),
    "long-loops": (LOOPS,),
    "markers-left-in": (MARKERS,),
    "sharp-tools": (SHARP,),
}
"""The words at which a caution matters; one that is not here matters before and after."""

AT_THE_END = ("markers-left-in", "infant-hat-sleep", "toys-eu-uk")
"""What matters when a piece is done, the first of them that applies."""


class Care:
    """The cautions that apply to a pattern; ``size`` None for all of its sizes."""

    def __init__(self, pattern: Pattern, size: str | None = None) -> None:
        known = cautions()
        found = set(_found(pattern, size)) - set(pattern.cautions)
        names = (*pattern.cautions, *(name for name in known if name in found))
        self.cautions: tuple[Caution, ...] = tuple(known[name] for name in names if name in known)

    def at(self, text: str) -> tuple[Caution, ...]:
        """Those that matter where a text is worked: a round, a sentence, a part's name."""
        return tuple(
            one
            for one in self.cautions
            if any(words.search(text) for words in MOMENTS.get(one.id, ()))
        )

    @property
    def at_the_end(self) -> tuple[Caution, ...]:
        """What matters when the piece is done."""
        by_name = {one.id: one for one in self.cautions}
        return tuple(by_name[name] for name in AT_THE_END if name in by_name)[:1]


def _found(pattern: Pattern, size: str | None) -> Iterator[str]:
    """The cautions that follow from the pattern's own words."""
    told = f"{pattern.title}\n{pattern.about}"
    sizes = "\n".join(pattern.sizes if size is None else (size,))
    young = CHILD.search(f"{told}\n{sizes}") or AGE.search(sizes)
    toy = TOY.search(f"{told}\n{_instructions(pattern)}")
    every = f"{told}\n{_instructions(pattern)}"
    if young and HEAD.search(told):
        yield from _on_the_head(f"{told}\n{sizes}", every)
    if young:
        yield from _on_a_child(every)
    if young or toy:
        yield from _to_be_mouthed(every)


def _on_the_head(told: str, every: str) -> Iterator[str]:
    if INFANT.search(told):
        yield "infant-hat-sleep"
    if NEW.search(told):
        yield "premature-hats"
    if CORD.search(every):
        yield "hat-ties"
    if SMALL.search(every):
        yield "cap-button"


def _on_a_child(every: str) -> Iterator[str]:
    if CORD.search(every):
        yield from ("no-neck-cords", "eu-cords")
    if LOOPS.search(every):
        yield "long-loops"
    if APPLIED.search(every):
        yield "applique"


def _to_be_mouthed(every: str) -> Iterator[str]:
    if SMALL.search(every):
        yield "small-parts"
    if POMPOM.search(every):
        yield "pompoms"
    if MARKERS.search(every):
        yield "markers-left-in"


def _instructions(pattern: Pattern) -> str:
    return "\n".join(
        text for part in pattern.parts for text in (part.name, part.note, part.rounds, *part.steps)
    )
