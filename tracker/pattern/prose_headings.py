"""Headings that the trade has names for, and what a line looks like that is one."""

from __future__ import annotations

import re
from enum import StrEnum


class Kind(StrEnum):
    """What a section is about."""

    FRONT = "front"
    MATERIALS = "materials"
    GAUGE = "gauge"
    SIZES = "sizes"
    ABBREVIATIONS = "abbreviations"
    NOTES = "notes"
    MAKING_UP = "making up"
    PART = "part"


_PIECES = r"(?:squares|motifs|pieces|parts|panels|seams?|hexagons|blocks)(?: (?:up|together))?"

#: Headings of the trade; common practice, no source.
_HEADINGS = {
    Kind.MATERIALS: (
        r"materials?(?: (?:needed|and tools|& tools|list))?",
        r"you(?:['’]| wi)ll need",
        r"what you need",
        r"supplies|tools|notions|colou?rs?",
        r"(?:crochet )?hooks?(?: size)?",
        r"yarns?(?: used)?",
    ),
    Kind.GAUGE: (r"gauge|tension",),
    Kind.SIZES: (
        r"(?:finished )?(?:sizes?|measurements?|dimensions)",
        r"to fit(?: \w+)?|sizing",
    ),
    Kind.ABBREVIATIONS: (
        r"(?:special |stitch )?abbreviations?(?: used| key)?",
        r"special st(?:itche)?s?",
        r"special stitch",
        r"st(?:itch)?(?:es)? (?:guide|key|used)",
        r"key|glossary",
    ),
    Kind.NOTES: (
        r"(?:pattern |general |special )?notes?",
        r"about(?: this pattern)?",
        r"before you (?:begin|start)|as worked",
        r"tips?|(?:skill )?level|difficulty|terms|terminology|copyright",
    ),
    Kind.MAKING_UP: (
        r"(?:final )?(?:assembly|assembling|making[ -]up)",
        r"finishing(?: up| off)?|to make up|to finish",
        r"sewing (?:up|together)|putting (?:it |everything )?together",
        r"(?:to )?(?:join|sew)(?:ing)? (?:(?:up|together|the|your|all) )*" + _PIECES,
    ),
    Kind.PART: (r"(?:the )?(?:pattern|instructions|directions|method)",),
}
_KNOWN = {
    kind: re.compile(
        rf"(?:{'|'.join(words)})(?: *\([^()]*\))? *(?:[:–—-] *(?P<rest>.*))?", re.IGNORECASE
    )
    for kind, words in _HEADINGS.items()
}


def known_heading(text: str) -> tuple[Kind, str] | None:
    """The kind of section a line opens, and the words behind its colon."""
    bare = text.strip(" *_:")
    for kind, pattern in _KNOWN.items():
        match = pattern.fullmatch(text.strip(" *_")) or pattern.fullmatch(bare)
        if match is not None:
            return kind, match["rest"] or ""
    return None


def text_of_heading(text: str) -> bool:
    """Whether a line is written like a heading: closed by a colon, or all in capitals."""
    return text.endswith(":") or text.isupper()


def is_end(text: str) -> bool:
    """Whether words end a round: "FASTEN OFF"."""
    return re.search(r"\b(?:off|turn|join|cut|repeat|rep|end)\b", text, re.IGNORECASE) is not None
