"""Figures for several sizes, in the ways in which they are printed."""

import pytest

from tracker import check_text

PRINTED = (
    "(20, 25, 30)",
    "[20, 25, 30 sts]",
    "20[25:30] sts.",
    "(20)(25)(30)",
    "(20) (25) (30)",
    "{20, 25, 30}",
    "<20/25/30>",
    "20 (25, 30) sts",
)

WORKED = (
    ((20, 25, 30), "*sc in next 3 (4, 5) sts, 2 sc in next st; rep from * around", (25, 30, 35)),
    ((20, 25, 30), "[sc2tog] 2 (3, 4) times, sc in each rem st", (18, 22, 26)),
    ((20, 25, 30), "sc in first 10 (12, 15) sts, 2 sc in next st, sc to end", (21, 26, 31)),
    (
        (20, 25, 30),
        "sc in next 8 (10, 12) sts, ch 4 (5, 6), sk next 4 (5, 6), sc to end",
        (16, 20, 24),
    ),
    ((16, 8), "*3 (1) sc, 2 sc in next st; rep from * around", (20, 12)),
    ((24, 28, 32), "*sc 2, sc2tog; rep from * 6/7/8 times total", (18, 21, 24)),
    ((24, 28, 32), "(2 sc, inc) 8 (9, 10) times, sc in last 0 (1, 2)", (32, 37, 42)),
)


def only(text, below):
    [found] = check_text(text, terms="US", below=below).parts[0].rounds
    return found


@pytest.mark.parametrize("count", PRINTED)
def test_a_count_for_each_size_is_read(count):
    found = only(f"Rnd 5: sc in each st around. {count}", (20, 25, 30))
    assert (str(found.verdict), found.stated) == ("agrees", (20, 25, 30))


@pytest.mark.parametrize(("below", "words", "makes"), WORKED)
def test_each_size_is_worked_by_its_own_figures(below, words, makes):
    printed = f"{makes[0]} ({', '.join(map(str, makes[1:]))})"
    found = only(f"Rnd 5: {words}. {printed} sts", below)
    assert (str(found.verdict), found.makes) == ("agrees", makes)


def test_a_round_for_one_size_alone_is_not_held_against_the_others():
    found = only("Size M: Rnd 5: 2 sc in first st, sc in each st around. (26)", (20, 25, 30))
    assert (str(found.verdict), found.makes) == ("agrees", (20, 26, 30))


@pytest.mark.parametrize(
    "text",
    [
        "Size toddler: Rnd 5: sc in each st around. (25)",
        "Rnd 5 (size 4 only): sc in each st around. (25)",
        "Rnd 5: sc in each st, 2 sc in last st for size L only.",
    ],
)
def test_a_round_for_a_size_that_is_not_known_is_asked_about(text):
    found = only(text, (20, 25, 30))
    assert str(found.verdict) == "unread"
    assert found.messages[0].text == "is worked in some sizes only, which is not followed here"


def test_sizes_told_apart_are_worked_each_by_its_own_words():
    text = "Rnd 5: Small: sc2tog, sc around. Medium and large: sc around. 19 (25, 30)"
    rounds = check_text(text, below=(20, 25, 30)).parts[0].rounds
    assert [found.only for found in rounds] == [(0,), (1, 2)]
    assert rounds[-1].makes == (19, 25, 30)


def test_a_range_for_some_sizes_is_judged_apart_from_that_of_all() -> None:
    """What is known of a round in all sizes is not taken for it in the longer ones alone."""
    text = (
        "Row 1: Ch 9, sc in 2nd ch from hook and in each ch across, turn. (8)\n"
        "Row 2: Ch 1, sc in each st across, turn. (8)\n"
        "Rows 3-20 (24, 28): working along the other side of the ch, dc in next 5 ch, "
        "2 dc in last ch. (16)"
    )
    rounds = check_text(text, below=(8, 8, 8)).parts[0].rounds
    assert len(rounds) > 20
    assert {len(r.makes) for r in rounds if r.makes} <= {1, 3}
