"""Whole texts in five manners, our own: each word kept, each round right, the file sound."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tracker.pattern.load import load_text
from tracker.pattern.reading import read_pattern

WHOLE = Path(__file__).parent / "whole"

#: File -> title, terms, sizes, parts with their copies, the counts the parts end on.
TEXTS = {
    "blog.md": (
        "Pocket Walrus – a free pattern",
        "US",
        (),
        {"Body": 1, "Flippers": 2, "Tusks (in white)": 2, "Tail": 1, "Assembly": 1},
        [(6,), (3,), (4,), (6,)],
    ),
    "leaflet.txt": (
        "HARBOUR CAP",
        "US",
        ("Child", "Adult Small", "Adult Large"),
        {"Crown": 1, "Brim": 1, "Finishing": 1},
        [(48, 54, 60), (48, 54, 60)],
    ),
    "page.txt": (
        "OLIVE THE OTTER",
        "US",
        (),
        {"HEAD (with Yarn A)": 1, "Arms": 2, "Ears": 2, "Tail": 1, "Assembly": 1},
        [(6,), (6,), (12,), (6,)],
    ),
    "magazine.txt": ("Kitchen Basket", "UK", (), {"Base": 1}, [(44,)]),
    "sizes.txt": (
        "Fernway Mitts (fingerless)",
        "US",
        ("S", "M", "L"),
        {"Cuff": 1, "Hand": 1, "Thumb": 1},
        [(10, 10, 10), (35, 39, 43), (15, 15, 15)],
    ),
}


def reading(name):
    return read_pattern((WHOLE / name).read_text("utf-8"), name, "Untitled", "")


@pytest.mark.parametrize("name", TEXTS)
def test_a_whole_text_becomes_a_pattern_that_works_out(name):
    found = reading(name)
    title, terms, sizes, parts, ends = TEXTS[name]
    pattern = found.pattern
    assert (pattern.title, pattern.terms, pattern.sizes) == (title, terms, sizes)
    assert {part.name: part.make for part in pattern.parts} == parts
    assert [part.rounds[-1].makes for part in found.checked.parts if part.rounds] == ends
    assert found.checked.well
    assert load_text(found.toml, name) == pattern


@pytest.mark.parametrize("name", TEXTS)
def test_no_word_of_a_whole_text_is_lost(name):
    text = (WHOLE / name).read_text("utf-8")
    kept = "".join(re.findall(r"\w", reading(name).toml.lower()))
    for line in text.splitlines():
        for words in re.split(r"[.:;()|,]", line):
            letters = "".join(re.findall(r"\w", words.lower()))
            assert len(letters) < 12 or letters in kept, line
