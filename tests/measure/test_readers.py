"""Whatever is typed, the readers of measures answer or say what is wrong; nothing else."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tracker.measure.gauge import read_ease, read_swatch
from tracker.measure.heads import heads_of
from tracker.measure.hooks import hooks_called
from tracker.measure.length import target_in
from tracker.measure.units import first_length, read_amount, read_length, read_number, read_weight

WORDS = st.lists(
    st.sampled_from(
        [
            *("16", "0", "1/2", "17 1/2", "½", "1/0", "9999999", "-2", "3.5", "3,5", "٣", "²"),
            *("cm", "in", '"', "g", "oz", "sts", "hdc", "rows", "rounds", "over", "x", "=", "to"),
            *("%", "month", "years", "H-8", "/", "(", ")", "from", "until", "more", "\x1b", "\n"),
        ]
    ),
    max_size=9,
).flatmap(lambda words: st.sampled_from([" ".join(words), "".join(words)]))


@pytest.mark.parametrize(
    "read", [read_amount, read_length, read_weight, read_swatch, read_ease, heads_of]
)
@given(words=st.one_of(WORDS, st.text(max_size=40)))
def test_a_reader_answers_or_says_what_is_wrong(read, words):
    try:
        answer = read(words)
    except ValueError as error:
        answer = str(error)
    assert answer


@given(words=st.one_of(WORDS, st.text(max_size=40)))
def test_what_looks_for_something_finds_it_or_nothing(words):
    number, length, target = read_number(words), first_length(words), target_in(words)
    assert number is None or number >= 0
    assert length is None or length.cm > 0
    assert (target is None) == (length is None)
    assert all(one.mm > 0 for one in hooks_called(words))


@given(st.integers(1, 999), st.integers(1, 999), st.integers(1, 999), st.sampled_from(["cm", "in"]))
def test_a_swatch_in_words_is_the_one_in_figures(stitches, rounds, over, unit):
    found, stitch = read_swatch(f"{stitches} sts, {rounds} rounds = {over} {unit}")
    cm = read_amount(f"{over} {unit}").cm
    assert (found.stitch_cm, found.round_cm, stitch) == (
        Fraction(cm, stitches),
        Fraction(cm, rounds),
        "",
    )
