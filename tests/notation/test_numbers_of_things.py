"""Repeats that go as far as a number of things says: "until you have 6 groups of 4 dc"."""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.reached import MOST_THINGS
from tracker.fabric.verdicts import Verdict
from tracker.pattern.checked import CheckedRound


def _last(text: str, below: int | None = None) -> CheckedRound:
    return check_text(text, below=below).parts[0].rounds[-1]


def test_what_is_below_need_not_be_known_and_that_is_said() -> None:
    found = _last("R2: *5 dc in next ch-3 sp, sc in next sc; rep from * until there are 7 shells.")
    assert (found.verdict, found.below) == (Verdict.UNSTATED, None)
    assert [m.text for m in found.messages] == [
        "what is below is not known; worked as far as its number says"
    ]


@pytest.mark.parametrize(
    ("below", "number", "fits"), [(24, 6, True), (24, 7, False), (24, 5, False), (28, 6, False)]
)
def test_on_stitches_that_are_known_the_number_has_to_fit(
    below: int, number: int, fits: bool
) -> None:
    text = "Rnd 3: *5 dc in next st, sk 1, sc in next st, sk 1; rep from * until there are"
    found = _last(f"{text} {number} shells; join.", below)
    assert (found.verdict is not Verdict.DIFFERS) == fits
    if below == 24 and not fits:
        assert found.messages[0].text == f"the repeats come to 6, but {number} are asked for"


def test_a_row_may_stop_before_its_last_stitch_where_the_number_says_so() -> None:
    found = _last(
        "Row 2: Ch 3, dc in next 4 sts, *ch 3, sk 3, dc in next 5 sts; rep from * until there are"
        " 5 groups of 5 dc.\n"
        "Row 3: Ch 3, *sk 1 dc, dc in next 3 dc, ch 1, 3 dc in next ch-3 sp, ch 1; rep from *"
        " until you have 9 groups of 3 dc."
    )
    assert found.makes == (28,)
    assert any("stops where its number says" in m.text for m in found.messages)


@pytest.mark.parametrize(
    "text",
    [
        # whether the first is one of them is not said
        (
            "Rnd 2: Ch 3, dc in next st, ch 3, sl st in next st. *Ch 3, dc in next st, ch 3, sl st"
            " in next st; rep from * until you have 8 petals."
        ),
        # what is counted is never made
        "Row 2: *sc in next st, ch 4, sk 2 sts; repeat from * until there are 10 ch-3 spaces.",
        f"Row 2: *sc in next sp, ch 4; repeat from * until there are {MOST_THINGS + 1} loops.",
    ],
)
def test_a_number_that_does_not_tell_is_not_taken(text: str) -> None:
    assert _last(text).verdict is Verdict.UNREAD
