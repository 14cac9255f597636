"""Text from elsewhere is shown so that nothing in it can act on a terminal."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tracker.notation.problems import Message, visible


@given(st.text())
def test_visible_text_is_printable_and_as_long_as_before(text: str) -> None:
    assert visible(text).isprintable()
    assert len(visible(text)) == len(text)


@given(st.text())
def test_visible_text_stays_as_it_is(text: str) -> None:
    assert visible(visible(text)) == visible(text)


def test_control_characters_are_shown_and_carets_stand_below_the_words() -> None:
    message = Message(3, 6, 2, "is not understood", "sc,\t\x1b[31m sc")
    shown = str(message).split("\n")
    assert shown[1] == "    sc, \u241b[31m sc"
    assert shown[2] == "    " + " " * 5 + "^^"
