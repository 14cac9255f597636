"""Rounds worked as an earlier one, with words behind that change them: never taken as they are."""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

FIRST = "Rnd 1: sc in each st around. (24)\n"


def second(words):
    return check_text(f"{FIRST}Rnd 2: {words}", below=24).parts[0].rounds[-1]


@pytest.mark.parametrize(
    ("words", "named"),
    [
        ("As Rnd 1, but 2 sc in each st.", "2 sc in each st"),
        ("Rep Rnd 1, decreasing 1 st at each end.", "decreasing 1 st at each end"),
        ("Rep Rnd 1, omitting the last st.", "omitting the last st"),
        ("Rep Rnd 1 with 2 sc in the first st.", "2 sc in the first st"),
        ("As Rnd 1, ending with 2 sc in last st.", "2 sc in last st"),
        ("Rep Rnd 1, then sc 2 more.", "sc 2 more"),
        ("Rep Rnd 1, increasing 6 sts evenly.", "increasing 6 sts evenly"),
        ("Rep Rnd 1 except inc in last st.", "except inc in last st"),
        ("As Rnd 1, dec twice.", "dec twice"),
        ("Rep Rnd 1, leave 6 sts unworked.", "leave 6 sts unworked"),
        ("As Rnd 1, then ch 5, skip 5 sts.", "ch 5"),
    ],
)
def test_what_changes_it_is_named_and_the_round_is_not_counted(words, named):
    found = second(words)
    assert (found.verdict, found.makes) == (Verdict.UNREAD, None)
    message = found.messages[0]
    assert message.text == f"'{named}' changes the round that this is worked as"
    assert message.source[message.column - 1 :].startswith(named)


@pytest.mark.parametrize(
    "words",
    [
        "Rep Rnd 1, working in back loops only.",
        "As Rnd 1, changing to B.",
        "Rep Rnd 1, stuffing as you go.",
        "As Rnd 1. Fasten off.",
        "Rep Rnd 1, ch 1, turn.",
        "as rnd 1 but working into back loops",
        "As Rnd 1; insert eyes between rnds 1 and 2 with 5 sts between.",
        "Rep Rnd 1, sl st to join.",
    ],
)
def test_what_changes_no_stitch_is_no_change(words):
    assert (second(words).verdict, second(words).makes) == (Verdict.UNSTATED, (24,))


def test_a_printed_count_bears_it_out():
    found = second("As Rnd 1, working hdc instead of sc. (24)")
    assert (found.verdict, found.makes) == (Verdict.AGREES, (24,))
    assert second("As Rnd 1, working 2 sc in each. (48)").verdict is Verdict.UNREAD


@pytest.mark.parametrize("layers", ["soles", "layers", "thicknesses"])
def test_both_layers_at_once_are_one_place(layers):
    text = f"Rnd 4: Ch 1, sc through both {layers} in each st around, join."
    assert check_text(text, below=54).parts[0].rounds[0].makes == (54,)


def test_along_the_sides_of_a_square_is_round_it():
    text = (
        "Rnd 1: Ch 1, *sc in next 5 sts, ch 2; rep from * around, join. (20 sc, 4 ch-2 sps)\n"
        "Rnd 2: Ch 1, sc in each st along each side, working (2 sc, ch 2, 2 sc) in each corner."
    )
    assert check_text(text, below=20).parts[0].rounds[-1].makes == (36,)


@pytest.mark.parametrize(
    "words",
    [
        "Work even for 4 rounds but inc 2 in 3rd.",
        "Rnds 2-4: work even in colour B, 2 sts fewer.",
        "Rnd 2: sc in all sts apart from the first.",
        "Rnd 2: sc in each st other than the last 2.",
    ],
)
def test_what_is_worked_beside_an_even_stretch_is_not_passed_over(words):
    rounds = check_text(FIRST + words, below=24).parts[0].rounds[1:]
    assert {found.verdict for found in rounds} <= {Verdict.UNREAD, Verdict.DIFFERS}


def test_a_length_may_be_told_with_more_words():
    for words in ("ending with a right side row", "about 24 sts wide", "or as long as you like"):
        text = f"{FIRST}Rnd 2: sc around until piece measures 10 cm from the start, {words}."
        assert check_text(text, below=24).parts[0].rounds[-1].verdict is Verdict.OPEN
