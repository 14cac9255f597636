"""Stitches are found, and named, in the terms they are asked for in.

The pairs of terms are those in the dictionary's own sources; the names are checked
against https://danceswithwools.net/2022/09/16/understanding-crochet-abbreviations/
"""

from __future__ import annotations

import pytest

from tracker.notation.dictionary import STITCHES, find, in_terms


@pytest.mark.parametrize(
    ("abbr", "name", "us"),
    [
        ("dc", "double crochet", "sc"),
        ("htr", "half treble", "hdc"),
        ("tr", "treble", "dc"),
        ("dtr", "double treble", "tr"),
        ("fptr", "front post treble", "fpdc"),
        ("dc2tog", "double crochet 2 together", "sc2tog"),
        ("ss", "slip stitch", "sl st"),
    ],
)
def test_a_stitch_found_in_uk_terms_has_its_uk_name(abbr: str, name: str, us: str) -> None:
    found = find(abbr, "UK")
    assert found is not None
    assert (found.name, found.us) == (name, us)


@pytest.mark.parametrize("us", sorted(STITCHES))
def test_every_stitch_is_found_under_its_abbreviation_in_both_terms(us: str) -> None:
    for terms in ("US", "UK"):
        found = find(in_terms(us, terms), terms)
        assert found is not None
        assert found.us == us


def test_a_step_is_called_by_its_name_in_the_terms_of_the_text() -> None:
    from tracker import check_text

    (found,) = check_text("Rnd 1: dc in each st around", terms="UK", below=6).parts[0].rounds
    assert found.judged is not None
    assert {run.name for run in found.judged.outcomes[0].runs} == {"double crochet"}
