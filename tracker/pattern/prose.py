"""Instructions as people publish them -> a drafted pattern.

No line is lost: what is no round, heading or fact stands in the pattern's "about", in a
part's note, or in comments of the file; what was not understood stands in the rounds, word
for word, and is worked as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from tracker.notation.lexicon import Lexicon
from tracker.notation.problems import Message
from tracker.notation.remarks import remarks
from tracker.notation.sizes import may_be_two, sizes_in
from tracker.pattern.cautions import cautions_in
from tracker.pattern.draft import Draft
from tracker.pattern.load import LONGEST_ROUND, MOST_PARTS, MOST_STEPS, MOST_STITCHES
from tracker.pattern.model import Part, Pattern
from tracker.pattern.prose_alike import written_out
from tracker.pattern.prose_begun import begun
from tracker.pattern.prose_defined import as_stitches, defined_in
from tracker.pattern.prose_facts import (
    aside_of,
    copies_of,
    fit_of,
    gauge_of,
    hook_of,
    name_of,
    sizes_of,
    terms_of,
    yarns_of,
)
from tracker.pattern.prose_headings import Kind, known_heading
from tracker.pattern.prose_lines import Said, label_of, said_lines
from tracker.pattern.prose_parts import has_work, made_part, rounds_of, steps_of
from tracker.pattern.prose_sections import Section, sections
from tracker.pattern.prose_title import title_of
from tracker.pattern.source import PatternError
from tracker.pattern.tables import LINE, TEXT

MOST_LINES = 5_000
"""Lines of a text; a hundred full pages have fewer."""

MOST_ROUNDS = 10_000
"""Rounds that the labels of a text stand for."""

_CHAINS = re.compile(r"\bch(?:ain)?s?\b|\bch\d", re.IGNORECASE)
#: Sections that are told about the piece, in this order.
_FACTS = (Kind.FRONT, Kind.NOTES, Kind.MATERIALS, Kind.SIZES, Kind.GAUGE, Kind.ABBREVIATIONS)


def read_prose(text: str, file: str = "text", title: str = "Untitled", terms: str = "") -> Draft:
    """Draft a pattern from a text.

    Args:
        text: the words, Markdown or plain, already without any file's encoding.
        file: the name that messages go by.
        title: the title, where the text has none.
        terms: "US" or "UK"; "" lets the text decide.

    Raises:
        PatternError: a line is too long, or there is no round in it.
    """
    number = text.count("\n")
    if number > MOST_LINES:
        what, hint = f"a text of {number:,} lines", f"The most is {MOST_LINES:,}."
        raise PatternError(file, [Message(0, 0, 0, what, hint=hint)])
    lines = said_lines(text)
    for said in lines:
        if len(said.text) > LONGEST_ROUND:
            what = f"a line of {len(said.text):,} characters"
            hint = f"The most is {LONGEST_ROUND:,}: one round a line."
            raise PatternError(file, [Message(said.line, 1, 0, what, hint=hint)])
    found, lines = title_of(lines)
    return _Drafting(text, lines, file, found or title[:LINE], terms).draft()


class _Drafting:
    """One text on its way to a draft."""

    def __init__(self, text: str, lines: list[Said], file: str, title: str, terms: str) -> None:
        self.file, self.title = file, title
        self.warnings: list[str] = []
        self.terms = terms or terms_of(text, text)[0]
        self.sections = sections(lines, self.terms)
        if not terms:
            self._settle_terms(text)
        defined = defined_in(self._said(Kind.ABBREVIATIONS), self.terms)
        self.rings = defined.rings
        self.stitches = tuple(as_stitches(defined, self.terms))[:MOST_STITCHES]
        self.lexicon = Lexicon(self.terms, self.stitches)
        self.lexicon.rings.update(ring.lower() for ring in self.rings)
        self.hook = hook_of(self._said(*_FACTS))
        self.gauge = gauge_of(self._said(Kind.GAUGE, Kind.NOTES), self.hook, self.lexicon)
        self.parts: list[Part] = []
        self.lines: list[tuple[int, ...]] = []
        self.about: list[str] = []
        self.notes = [s for s in self.sections if s.kind in _FACTS]

    def _settle_terms(self, text: str) -> None:
        self.terms, warning = terms_of(text, "\n".join(self._said(Kind.PART)))
        if warning:
            self.warnings.append(warning)

    def _said(self, *kinds: Kind) -> list[str]:
        """The lines of all sections of some kinds, in the order of the kinds."""
        return [
            said.text
            for kind in kinds
            for section in self.sections
            if section.kind is kind
            for said in section.lines
        ]

    def draft(self) -> Draft:
        """The whole. Raises `PatternError`."""
        for section in self._joined():
            self._section(section)
        self._refuse()
        self.parts = named_apart(self.parts)
        self._tell_of_chains()
        self.about += [
            _paragraph(section)
            for kind in _FACTS
            for section in self.sections
            if section.kind is kind and (section.lines or section.heading)
        ]
        about, kept = _within(self.about)
        pattern = Pattern(
            title=self.title,
            terms=self.terms,
            parts=tuple(self.parts),
            sizes=self._sizes(),
            cautions=self._cautions(),
            about=about,
            gauge=self.gauge,
            fit=fit_of(self._said(Kind.GAUGE), [part.name for part in self.parts]),
            yarns=yarns_of(self._said(Kind.MATERIALS)),
            stitches=self.stitches,
            rings=self.rings,
        )
        pattern = pattern._replace(parts=tuple(begun(pattern, self.warnings)))
        return Draft(pattern, tuple(kept), tuple(self.warnings), tuple(self.lines))

    def _refuse(self) -> None:
        """Raise `PatternError` where there is too little or too much to work."""
        what = hint = ""
        if not any(part.rounds for part in self.parts):
            what, hint = "no round was found in it", 'A round begins like "Rnd 1:" or "Row 1:".'
        elif (rounds := sum(map(_round_count, self.parts))) > MOST_ROUNDS:
            what, hint = f"it has {rounds:,} rounds", f"The most is {MOST_ROUNDS:,}."
        elif len(self.parts) > MOST_PARTS:
            what = f"it has {len(self.parts):,} parts"
            hint = f"The most is {MOST_PARTS}: cut it into several texts."
        if what:
            raise PatternError(self.file, [Message(0, 0, 0, what, hint=hint)])

    # --- parts -------------------------------------------------------------------------

    def _joined(self) -> Iterator[Section]:
        """Parts and making up; a part whose numbers go on from the last is more of it."""
        found: list[Section] = []
        for section in self.sections:
            if section.kind not in (Kind.PART, Kind.MAKING_UP):
                continue
            before = found[-1] if found and found[-1].kind is Kind.PART else None
            if before is not None and section.kind is Kind.PART and _goes_on(before, section):
                aside = [Said(section.heading, 0, rank=1)] if section.heading else []
                found[-1] = replace(before, lines=[*before.lines, *aside, *section.lines])
            else:
                found.append(section)
        yield from found

    def _section(self, section: Section) -> None:
        """Add the part or parts of one section; one without a round is more about the piece."""
        sewn = _SEWING.search(section.heading) and not has_work(section.lines, self.lexicon)
        if section.kind is Kind.MAKING_UP or sewn:
            self._making_up(section)
            return
        found = rounds_of(section.lines, self.lexicon)
        if not has_work(section.lines, self.lexicon) and all(map(remarks, found.texts)):
            self.about.append(_paragraph(section))
            self.notes.append(section)
            return
        aside = aside_of(section.heading)
        if aside and known_heading(section.heading) is None:
            found.notes.insert(0, f"{aside[0].upper()}{aside[1:]}.")
        written_out(found, self.parts)
        copies = copies_of(section.heading, heading=True)
        hook = "" if self.gauge is not None else self.hook
        part, rest = made_part(self._name(section), found, copies, hook)
        self.parts.append(part)
        self.lines.append(tuple(found.lines))
        self.about += rest

    def _tell_of_chains(self) -> None:
        """Put what the text says once of all beginning chains before each part's rounds."""
        told = {
            said.text[one.start : one.end].strip(" *"): said.line
            for section in self.notes
            if section.kind is not Kind.ABBREVIATIONS
            for said in section.lines
            for one in remarks(said.text)
        }
        words = "".join(f"{one}.\n" for one in told)
        for index, part in enumerate(self.parts):
            if _CHAINS.search(part.rounds):
                self.parts[index] = part._replace(rounds=words + part.rounds)
                self.lines[index] = (*told.values(), *self.lines[index])

    def _name(self, section: Section) -> str:
        heading = known_heading(section.heading)
        name = "" if heading is not None else name_of(section.heading)
        if name:
            return name
        return f"Part {len(self.parts) + 1}" if self.parts else "Main part"

    def _making_up(self, section: Section) -> None:
        lines = section.lines
        if section.inline:
            known = known_heading(lines[0].text)
            rest = known[1] if known is not None else lines[0].text
            lines = [replace(lines[0], text=rest), *lines[1:]]
        steps = steps_of(lines)
        name = name_of(section.heading) or "Making up"
        for begin in range(0, len(steps), MOST_STEPS):
            self.parts.append(Part(name, steps=tuple(steps[begin : begin + MOST_STEPS])))
            self.lines.append(())

    # --- facts -------------------------------------------------------------------------

    def _cautions(self) -> tuple[str, ...]:
        """The cautions that stand in it word for word."""
        return cautions_in("\n".join(said.text for s in self.sections for said in s.lines))

    def _sizes(self) -> tuple[str, ...]:
        """As many sizes as the figures of the rounds show, with the names the text gives."""
        rounds = "\n".join(part.rounds for part in self.parts)
        count = sizes_in(rounds)
        if count == 1 and not (may_be_two(rounds) and sizes_of(self._said(Kind.SIZES), 2)):
            return ()
        count = max(2, count)
        named = sizes_of(self._said(Kind.SIZES, Kind.FRONT, Kind.NOTES), count)
        if not named:
            self.warnings.append(
                f"its rounds have figures for {count} sizes, but no line names so many sizes"
            )
        return named or tuple(f"size {n}" for n in range(1, count + 1))


_SEWING = re.compile(r"\b(?:join|sew|seam|assembl|finish|mak(?:e|ing) up|put)", re.IGNORECASE)


def _goes_on(before: Section, section: Section) -> bool:
    """Whether the numbers of a part go on where the part before it stopped."""
    first = next((n for n in map(_numbers, section.lines) if n), None)
    last = next((n for n in map(_numbers, reversed(before.lines)) if n), None)
    if first is None or last is None or copies_of(section.heading, heading=True) > 1:
        return False
    return first[0] == last[1] + 1


def _numbers(said: Said) -> tuple[int, int] | None:
    label = label_of(said.text)
    return (label.first, label.last) if label is not None and label.first else None


def _round_count(part: Part) -> int:
    """How many rounds the labels of a part stand for."""
    labels = map(label_of, part.rounds.splitlines())
    return sum(label.count for label in labels if label is not None)


def named_apart(parts: Sequence[Part]) -> list[Part]:
    """The parts, each with a name of its own: "Ear", "Ear 2"."""
    taken: set[str] = set()
    found = []
    for part in parts:
        name, n = part.name, 1
        while name in taken:
            n += 1
            name = f"{part.name[: LINE - 8]} {n}"
        taken.add(name)
        found.append(part._replace(name=name))
    return found


def _paragraph(section: Section) -> str:
    """A section's words, line by line, led by its heading."""
    words = [said.text for said in section.lines]
    return "\n".join([section.heading, *words] if section.heading else words)


def _within(paragraphs: Sequence[str]) -> tuple[str, list[str]]:
    """``(about, kept)``: what "about" has room for, and the rest."""
    about = ""
    kept: list[str] = []
    for paragraph in paragraphs:
        if len(about) + len(paragraph) + 4 <= TEXT and not kept:
            about += f"\n\n{paragraph}" if about else paragraph
        else:
            kept.append(paragraph)
    return about, kept
