"""What a text says of its own stitches: how many places each takes, what it makes.

Counted by hand from the words of the definition.
"""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.notation.definitions import define
from tracker.notation.lexicon import Lexicon

DEFINED = (
    # several closed together are one
    ("Cl: 3 dc closed together in the same stitch. Counts as 1 stitch.", 1, 1, ()),
    ("Bobble: 5 dc in same st, leaving last loop of each on hook, yo, through all.", 1, 1, ()),
    ("Popcorn: 5 dc in next st, drop loop from hook, draw it through first dc.", 1, 1, ()),
    ("Tuft: 4 dc in one st, take hook from loop, put it in first dc, draw through.", 1, 1, ()),
    ("2-dc cl: *yo, draw up lp in st, yo, through 2 lps; rep once, through 3 lps", 1, 1, ()),
    ("Beg popcorn: ch 3, 4 dc in same st, drop loop, draw it through top of ch 3", 1, 1, ()),
    # over several places
    ("Sc dec: draw up a loop in each of next 2 sts, yo, through all 3 loops", 2, 1, ()),
    ("Dc dec: (draw up a loop in next st, through 2 loops) twice, through all 3 loops.", 2, 1, ()),
    ("Duo: loop in next st, yo, loop in next st, yo, pull through all 5 loops", 2, 1, ()),
    ("Cross st: skip next st, dc in next st, dc in skipped st", 2, 2, ()),
    ("X-st: sk 1 st, tr in next st, ch 1, tr in skipped st", 2, 2, (1,)),
    ("Rope: skip 2 sts, fpdc around each of next 2 sts, fpdc in each of 2 skipped sts", 4, 4, ()),
    # in one place that is told in other words
    ("V-st: (dc, ch 2, dc) in indicated st.", 1, 2, (2,)),
    ("Shell: 7 dc in st indicated.", 1, 7, ()),
    ("Double V: (dc, ch 1, dc, ch 1, dc) all in same st.", 1, 3, (1, 1)),
    # a chain at the start of a row stands for its first stitch
    ("Beg shell: ch 3, 4 dc in same st", 1, 5, ()),
    ("Beg V-st: Ch 4, dc in same st", 1, 2, (1,)),
)


@pytest.mark.parametrize(("words", "takes", "makes", "spaces"), DEFINED)
def test_a_defined_stitch_takes_and_makes_what_its_words_say(
    words: str, takes: int, makes: int, spaces: tuple[int, ...]
) -> None:
    lexicon = Lexicon("US")
    define(words, lexicon)
    (stitch,) = lexicon.special().values()
    assert (stitch.takes, stitch.makes, stitch.spaces) == (takes, makes, spaces)


@pytest.mark.parametrize(
    "words",
    [
        "Star st: draw up a loop in 2nd to 4th ch from hook and in next 2 chs, yo, through 6 loops",
        "Gather: (yo, draw up a loop in next st) 3 times, yo and through all 7 loops",
        "Twirl: turn the hook once all the way round",
    ],
)
def test_a_stitch_whose_places_are_not_clear_is_not_defined(words: str) -> None:
    lexicon = Lexicon("US")
    define(words, lexicon)
    assert not lexicon.special()


def test_a_number_that_is_explained_like_a_stitch_is_read_without_a_fault() -> None:
    text = "R3: (1 sc, 1 inc)*5\nAbbreviations:\n1: *sc 2, inc; rep from * to last st, sc 1. (20)"
    assert check_text(text, below=10).parts[0].rounds
