"""Which cautions apply to a pattern, and at which words: by patterns invented for it."""

import pytest

from tracker.pattern.care import Care
from tracker.pattern.foreword import warnings
from tracker.pattern.load import load_text

BONNET = """
title = "Snail bonnet"
sizes = ["3 months", "2 years", "adult"]
[[part]]
name = "Bonnet"
rounds = "Rnd 1: 6 (7, 8) sc in magic ring; join. (6, 7, 8)"
[[part]]
name = "Making up"
steps = ["Work a cord of 60 ch and draw it through Rnd 9.", "Sew a button on.", "Add a pompom.",
  "Take the markers out.", "Weave in both ends."]
"""

ROUND = """
[[part]]
name = "Body"
rounds = "Rnd 1: 6 sc in magic ring; join. (6)"
"""


def ids(found):
    return [one.id for one in found]


def test_a_size_for_a_baby_brings_the_cautions_of_what_it_wears():
    found = ids(Care(load_text(BONNET), "3 months").cautions)
    assert set(found) == {
        *("infant-hat-sleep", "no-neck-cords", "eu-cords", "hat-ties", "small-parts"),
        *("cap-button", "pompoms", "markers-left-in"),
    }


def test_the_same_for_a_grown_up_needs_none_of_them():
    assert ids(Care(load_text(BONNET), "adult").cautions) == []


def test_without_a_size_all_of_them_are_meant():
    pattern = load_text(BONNET)
    assert ids(Care(pattern).cautions) == ids(Care(pattern, "3 months").cautions)
    assert warnings(pattern)[-1].startswith("General information only: local law")


def test_a_hat_for_a_newborn_is_the_hospitals_to_decide():
    pattern = load_text('title = "Newborn hat"' + ROUND)
    assert ids(Care(pattern).cautions) == ["infant-hat-sleep", "premature-hats"]


def test_a_toy_must_not_lose_its_parts():
    pattern = load_text('title = "Stuffed newt"\nabout = "With bead eyes."' + ROUND)
    assert ids(Care(pattern).cautions) == ["small-parts"]


def test_what_a_pattern_names_comes_first_and_once():
    named = 'title = "Newborn hat"\ncautions = ["fibre-skin", "premature-hats"]' + ROUND
    assert ids(Care(load_text(named)).cautions) == [
        *("fibre-skin", "premature-hats", "infant-hat-sleep"),
    ]


@pytest.mark.parametrize("title", ["Pot holder", "Table runner in five years", "Shawl with lace"])
def test_a_piece_for_no_child_needs_no_caution(title):
    assert Care(load_text(f'title = "{title}"' + ROUND)).cautions == ()


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("Work a cord of 60 ch and draw it through Rnd 9.", "no-neck-cords"),
        ("Sew a button on.", "small-parts"),
        ("Add a pompom.", "pompoms"),
        ("Take the markers out.", "markers-left-in"),
        ("sc in each st around", None),
        ("Weave in both ends.", None),
    ],
)
def test_a_caution_matters_where_its_words_are(words, first):
    found = ids(Care(load_text(BONNET), "3 months").at(words))
    assert (found[0] if found else None) == first


def test_a_cord_on_a_hat_is_a_matter_of_both():
    found = ids(Care(load_text(BONNET), "2 years").at("Ties (make 2)"))
    assert found == ["no-neck-cords", "eu-cords", "hat-ties"]


def test_when_the_piece_is_done_the_markers_are_counted():
    assert ids(Care(load_text(BONNET), "3 months").at_the_end) == ["markers-left-in"]
    assert ids(Care(load_text(BONNET), "adult").at_the_end) == []
