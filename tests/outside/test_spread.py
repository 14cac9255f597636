"""Even spacing: published rounds, and every pair of counts read back by the reader.

Sources of the figures beside each case; the rules are in `tracker.measure.spread`.
"""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.outside.case import last
from tracker.measure.spread import (
    MOST,
    counts_of_multiple,
    even_round,
    even_rounds,
    even_words,
)

SHOP = "http://woolpackyarn.com/calculating-where-to-place-the-increases.html"
LESSON = "a yarn maker's lesson, read on a copying site; sums worked again here"
GAPS = "https://wilmade.com/calculate-evenly-spaced-increases-decreases/"


@pytest.mark.parametrize(
    ("have", "want", "gaps", "source"),
    [
        (51, 55, {13: 3, 12: 1}, SHOP),
        (112, 128, {7: 16}, SHOP),
        (48, 60, {4: 12}, LESSON),
        (140, 161, {7: 14, 6: 7}, "140 = 14 x 7 + 7 x 6, the same sum as " + GAPS),
        (186, 194, {23: 6, 24: 2}, GAPS),
        (186, 178, {23: 6, 24: 2}, GAPS),
    ],
)
def test_the_published_stretches(have, want, gaps, source):
    uses = 1 if want > have else 2
    stretches = even_round(have, want).stretches
    assert Counter(one.before + uses + one.after for one in stretches) == gaps, source


@pytest.mark.parametrize(
    ("have", "want", "turned", "words", "source"),
    [
        (48, 60, False, "[3 sc, inc] x 12", LESSON),  # in the round every 4
        (48, 60, True, "[sc, inc, 2 sc] x 12", LESSON),  # in rows 2, then every 4, 2 left
        (112, 128, False, "[6 sc, inc] x 16", SHOP),  # every 7
        (51, 55, False, "[12 sc, inc] x 3, 11 sc, inc", SHOP),  # at 13, 26, 39, 51
    ],
)
def test_the_published_lines(have, want, turned, words, source):
    (found,) = even_rounds(have, want, turned=turned)
    assert even_words(found) == words, source


@pytest.mark.parametrize("number", range(2, 11))
@pytest.mark.parametrize("first", [6, 8, 12])
def test_a_flat_circle_is_evenly_spread(first, number):
    # https://garturstitchfarmshop.com/blogs/blog/crocheting-a-flat-circle: round r is
    # r-2 plain, then 2 in one, as often as round 1 has stitches.
    found = even_words(even_round(first * (number - 1), first * number))
    plain = {2: "", 3: "sc, "}.get(number, f"{number - 2} sc, ")
    assert found == (f"[{plain}inc] x {first}" if plain else "2 sc in each st")


counts = st.integers(1, 400).flatmap(
    lambda have: st.tuples(st.just(have), st.integers(-(-have // 2), 2 * have))
)


@given(counts, st.sampled_from([("sc", "US"), ("hdc", "US"), ("dc", "US"), ("dc", "UK")]))
def test_every_line_read_back_takes_and_makes_what_it_should(pair, worked):
    (have, want), (stitch, terms) = pair, worked
    basic = "sc" if terms == "US" else "dc"
    words = even_words(even_round(have, want), stitch, basic)
    found = last(f"Rnd 5: {words}. ({want})", below=have, terms=terms)
    assert (found.verdict, found.takes, found.makes) == ("agrees", (have,), (want,)), words


@given(counts, st.integers(1, 6), st.booleans())
def test_several_rounds_follow_on_one_another(pair, rounds, turned):
    have, want = pair
    found = even_rounds(have, want, rounds, turned=turned)
    text = "\n".join(
        f"Row {n}: {even_words(one)}; turn. ({one.makes})"
        if turned
        else f"Rnd {n}: {even_words(one)}. ({one.makes})"
        for n, one in enumerate(found, start=2)
    )
    read = last(text, below=have)
    assert (read.verdict, read.makes) == ("agrees", (want,)), text
    assert [one.below for one in found] == [have, *(one.makes for one in found[:-1])]
    changes = {abs(one.changes) for one in found}
    assert max(changes) - min(changes) <= 1


@given(counts)
def test_the_stretches_are_balanced(pair):
    """Any so many stretches in a row, anywhere, are of one length or of two next ones."""
    have, want = pair
    uses = 1 if want > have else 2
    lengths = [one.before + uses + one.after for one in even_round(have, want).stretches]
    assert sum(lengths) == (have if have != want else 0)
    for window in {1, 2, 3, len(lengths) // 2} & set(range(1, len(lengths) + 1)):
        around = lengths + lengths[: window - 1]
        sums = {sum(around[at : at + window]) for at in range(len(lengths))}
        assert max(sums) - min(sums) <= 1, (window, lengths)


@given(st.integers(1, 30), st.integers(4, 30), st.integers(0, 29), st.booleans(), st.booleans())
def test_changes_do_not_stand_on_those_of_the_round_below(changes, each, more, turned, less):
    rounds = 5
    have = changes * each + min(more, changes - 1)
    if less:
        have += rounds * changes
    want = have + (-changes if less else changes) * rounds
    found = even_rounds(have, want, rounds, turned=turned)
    for lower, upper in pairwise(found):
        assert not lower.made(turned=turned).intersection(upper.used), (lower, upper)


@pytest.mark.parametrize(
    ("have", "want", "rounds", "said"),
    [
        (6, 13, 1, "6 stitches become 3 to 12 in one round, not 13"),
        (7, 3, 1, "7 stitches become 4 to 14 in one round, not 3"),
        (0, 3, 1, "from 1 to 10,000"),
        (3, MOST + 1, 1, "from 1 to 10,000"),
        (3, 3, 0, "the number of rounds"),
    ],
)
def test_what_cannot_be_worked_is_told(have, want, rounds, said):
    with pytest.raises(ValueError, match=said):
        even_rounds(have, want, rounds)


@pytest.mark.parametrize(
    ("of", "plus", "times", "count", "source"),
    [
        (6, 2, 11, 68, "https://oombawkadesigncrochet.com/using-stitch-pattern-multiples/"),
        (12, 2, 9, 110, "http://made-by-fabi.blogspot.com/2015/11/crochet-multiples.html"),
        (5, 1, 2, 11, "https://www.stitchwhisperdesigns.com/2021/03/multiples.html?m=1"),
        (5, 1, 11, 56, "https://www.stitchwhisperdesigns.com/2021/03/multiples.html?m=1"),
        (5, 1, 20, 101, "https://www.stitchwhisperdesigns.com/2021/03/multiples.html?m=1"),
        (5, 2 + 2, 2, 14, "http://ninasatmyhouse.blogspot.com/2015_10_25_archive.html?m=1"),
        (3, 2, 1, 5, "https://adstoob.com/how-to-figure-out-multiples-in-crochet-ripple-afghan/"),
        (3, 2, 2, 8, "https://adstoob.com/how-to-figure-out-multiples-in-crochet-ripple-afghan/"),
        (
            4,
            5,
            42,
            173,
            "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/BRC0502-029618M.pdf",
        ),
    ],
)
def test_published_multiples(of, plus, times, count, source):
    assert counts_of_multiple(count, of, plus) == (count, count), source
    assert counts_of_multiple(count + 1, of, plus) == (count, count + of)
    below = count - of if times > 1 else None
    assert counts_of_multiple(count - 1, of, plus) == (below, count)


@given(st.integers(0, 10_000), st.integers(1, 60), st.integers(0, 60))
def test_the_counts_next_to_a_count_are_the_nearest_of_the_multiple(count, of, plus):
    down, up = counts_of_multiple(count, of, plus)
    assert up == min(n for n in range(of + plus, count + of + plus + 1, of) if n >= count)
    fitting = list(range(of + plus, count + 1, of))
    assert down == (fitting[-1] if fitting else None)
