"""What a text says once of all beginning chains holds for every round after it.

The counts: a chain that counts stands on the first stitch, so that "2 dc in each st around"
over 13 stitches makes 1 + 2 x 12.
"""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

THREE = "Rnd 1: Ch 3, 12 dc in MR, join.\nRnd 2: Ch 3, 2 dc in each st around, join."
TWO = THREE.replace("Ch 3", "Ch 2")


def ends(text):
    rounds = [found for part in check_text(text).parts for found in part.rounds]
    assert len(rounds) == 2
    assert {found.verdict for found in rounds} == {Verdict.UNSTATED}
    return [found.makes for found in rounds]


@pytest.mark.parametrize("gap", ["\n", "\n\n"])
@pytest.mark.parametrize(
    "words",
    [
        "The ch-3 at the beginning of a round does not count as a stitch.",
        "Ch 3 at start of rounds does not count as a dc.",
        "Beginning ch 3 does not count as a st.",
        "The starting chain 3 is never counted as a stitch.",
        "Beginning chains do not count as stitches.",
        "NOTE: The beginning ch 3 of each round does not count as a stitch throughout.",
        "Ch 1 at beginning of a round does not count as a st, ch 3 does not count as a dc.",
        "Note that chains at the start of rounds do not count as stitches unless stated.",
        "ch 3 at beg of rnd doesn't count as a dc",
        "The first chain 3 of every round does NOT count as a stitch.",
        "* The initial ch-3 is not included in the stitch count.",
        "Stitch counts do not include the beginning chain.",
        "Join each round with a sl st to the first st; the ch 3 does not count as a stitch.",
        "You will ch 3 at the start of each round; this does not count as a stitch.",
        "At the beginning of every round, ch 3. It doesn't count as a stitch.",
    ],
)
def test_a_chain_that_is_said_not_to_count_does_not(words, gap):
    assert ends(f"{words}{gap}{THREE}") == [(12,), (24,)]


@pytest.mark.parametrize(
    "words",
    [
        "The beginning ch-2 counts as the first dc.",
        "Ch 2 at the start of the round counts as a dc throughout the pattern.",
        "Turning chain counts as a stitch throughout.",
        "Ch 2 counts as first dc throughout.",
        "The ch 2 at the beginning of each round counts as 1 dc.",
        "All beginning ch-2s count as a dc.",
        "The beginning chain is included in the stitch count.",
    ],
)
def test_a_chain_that_is_said_to_count_does(words):
    assert ends(f"{words}\n{TWO}") == [(13,), (25,)]


def test_without_a_word_the_habit_of_the_trade_holds():
    assert (ends(THREE), ends(TWO)) == ([(13,), (25,)], [(12,), (24,)])


def test_what_is_said_of_one_round_or_one_length_is_of_no_other():
    assert ends(f"The ch 2 at the beginning of rounds does not count.\n{THREE}") == [(13,), (25,)]
    rounds = check_text(
        "Rnd 1: Ch 2 counts as a dc, 11 dc in MR, join.\nRnd 2: Ch 3, the ch 3 counts as a dc of "
        "this round, dc in same st, 2 dc in each st around, join."
    )
    assert rounds.parts[0].rounds[0].makes == (12,)


def test_a_longer_chain_stands_for_a_stitch_and_a_space_like_those_of_its_row():
    text = (
        "The turning chain counts as a stitch throughout.\n"
        "Row 1: Ch 4, dc in first st, dc in next 13 sts, ch 1, dc in last st, turn.\n"
        "Row 2: Ch 3, dc in first ch-1 sp, dc in each dc across to last ch-1 sp, dc in last ch-1 "
        "sp, dc in 3rd ch of tch, turn.\n"
    )
    rounds = check_text(text, below=15).parts[0].rounds
    # 1 + 1 + 13 + 1 dc; then one on the first, 14 others, 2 in spaces, 1 on the chain
    assert [(found.verdict, found.makes) for found in rounds] == [
        (Verdict.UNSTATED, (16,)),
        (Verdict.UNSTATED, (18,)),
    ]


@pytest.mark.parametrize("words", ["up to the last ch-1 space", "until last sp", "to the last sp"])
def test_stitches_go_to_the_last_space_not_to_the_next(words):
    text = (
        "Row 1: Ch 1, *sc in next 3 sts, ch 1, skip 1 st; rep from * across to last 3 sts, sc in "
        "last 3 sts, turn. (12 sc, 3 ch-1 sps)\n"
        f"Row 2: Ch 1, sc in each sc across {words}, 2 sc in last sp, sc in last 3 sts, turn."
    )
    # three groups of 3, then 2 in the last of the 3 spaces, then the last 3
    assert check_text(text, below=15).parts[0].rounds[-1].makes == (14,)
