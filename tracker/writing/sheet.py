"""What is handed on, before it has a form: a title, sections, and blocks of a few kinds.

A form (plain text, Markdown, a page) knows how each block looks and nothing of patterns.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Words:
    """One paragraph; ``quiet`` for what may be read last."""

    text: str
    quiet: bool = False


@dataclass(frozen=True, slots=True)
class Items:
    """A list, each item a line, under a lead if it has one. ``care``: they are cautions."""

    items: tuple[str, ...]
    lead: str = ""
    care: bool = False


@dataclass(frozen=True, slots=True)
class Steps:
    """Sentences in their order, numbered from 1."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Meanings:
    """Short words and what they mean."""

    entries: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Loops:
    """What the hook does, one loop after the other, under a lead ("The first one")."""

    lead: str
    loops: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RoundLine:
    """One line of a part's rounds.

    Attributes:
        label: as written ("Rnds 6-10"); "" for a line without.
        words: all behind it.
        proof: what the check found ("18 → 24"), or "".
        proved: whether that is what the pattern prints.
    """

    label: str
    words: str
    proof: str = ""
    proved: bool = False


@dataclass(frozen=True, slots=True)
class Rounds:
    """The rounds of a part."""

    lines: tuple[RoundLine, ...]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture as SVG, its name and a sentence on it; only a page can show it."""

    svg: str
    name: str
    caption: str


Block = Words | Items | Steps | Meanings | Loops | Rounds | Drawing


@dataclass(frozen=True, slots=True)
class Section:
    """Blocks under a heading; ``part`` where it is one of the piece's parts."""

    heading: str
    blocks: tuple[Block, ...]
    part: bool = False


@dataclass(frozen=True, slots=True)
class Sheet:
    """A whole: what stands under the title, then the sections."""

    title: str
    front: tuple[Block, ...]
    sections: tuple[Section, ...]
