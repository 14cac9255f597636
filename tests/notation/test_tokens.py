"""Tokens know their columns, whatever signs a page was printed with."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from tracker.notation.tokens import MOST, Type, plain, tokenize

#: What instructions are made of, and signs that typesetting puts for the plain ones.
PIECES = st.sampled_from(
    [
        "sc",
        "dc2tog",
        "2nd",
        "ch-3",
        "12",
        "*",
        "**",
        "(",
        "]",
        "\u201d",
        "\u2013",
        "\u00d7",
        "İ",
        "\u0130",
        "\u00a0",
        "'s",
        ",",
    ]
)
TEXTS = st.one_of(st.text(max_size=60), st.lists(PIECES, max_size=20).map(" ".join))


@given(TEXTS)
def test_a_token_is_the_slice_of_the_plain_text_it_came_from(text: str) -> None:
    low = plain(text)
    assert all(t.text == low[t.start : t.end] for t in tokenize(text))


@given(TEXTS)
def test_making_a_text_plain_keeps_its_columns(text: str) -> None:
    assert len(plain(text)) == len(text)


@given(TEXTS)
def test_tokens_stand_in_order_and_end_with_the_end(text: str) -> None:
    tokens = tokenize(text)
    assert all(a.end <= b.start for a, b in pairwise(tokens))
    assert [t for t in tokens if t.type is Type.END] == tokens[-1:]


@given(st.integers(min_value=0, max_value=10**30))
def test_a_number_too_long_for_a_count_is_read_as_one_past_the_most(n: int) -> None:
    assert tokenize(str(n))[0].value == min(n, MOST + 1)
