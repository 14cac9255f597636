"""Stitches at the beginning of a round that a text explains: "Beg shell: ch 3, 2 dc …"."""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict


def last_of(special, rounds):
    text = f"Special stitches:\n{special}\n\n{rounds}"
    return check_text(text, terms="US").parts[0].rounds[-1]


@pytest.mark.parametrize(
    ("special", "name", "makes"),
    [
        # the chain in front is the first leg of what is drawn together
        ("Beg cl: Ch 2, dc2tog in same place.\nCl: dc3tog in same place.", "cl", 8),
        ("Cl: dc3tog in same sp.\nBeg-cl: Ch 3 (counts as first leg), dc2tog in same sp.", "cl", 8),
        # or the first stitch of a group: 8 groups of 5
        ("Shell: 5 dc in one place.\nBeg shell: Ch 3, 4 dc in same place.", "shell", 40),
        ("First shell: Ch 3, (dc, ch 1, 2 dc) in same st.\nShell: (2 dc, ch 1, 2 dc) in one st.",
         "shell", 32),
    ],
)  # fmt: skip
def test_a_beginning_stitch_counts_as_the_stitch_it_begins(special, name, makes):
    first = special.partition("First")[1] or "beg"
    rounds = (
        "Rnd 1: Ch 1, 8 sc in ring, join. (8)\n"
        f"Rnd 2: {first} {name} in first sc, ch 1, *{name} in next sc, ch 1; rep from * around, "
        f"join to top of {first} {name}."
    )
    found = last_of(special, rounds)
    assert (found.verdict, found.makes) == (Verdict.UNSTATED, (makes,))


def test_one_that_makes_another_number_of_stitches_is_itself():
    # half a shell at the start: 3 + 3 x 5 stitches
    special = "Shell: 5 dc in one st.\nBeg shell: Ch 3, 2 dc in same st."
    rounds = (
        "Row 1: Ch 1, sc in each of 10 ch. (10)\n"
        "Row 2: Beg shell in first sc, *skip 2 sc, shell in next sc; rep from * across, turn."
    )
    found = last_of(special, rounds.replace("Row 1: Ch 1", "Ch 11\nRow 1: Skip 1 ch"))
    assert found.makes == (18,)


@pytest.mark.parametrize(
    "end",
    [
        "(3 dc, ch 3) in first sp, join.",
        "3 dc in first sp, ch 3, join.",
        "3 dc in same sp as beg ch 3, ch 3, join.",
        "(3 dc, ch 3) in beginning sp, join.",
        "(3 dc, ch 3) in starting corner, join.",
    ],
)
def test_a_round_comes_back_to_the_space_it_began_in(end):
    # 16 spaces: 4 corners of 6, 12 of 3
    found = last_of(
        "",
        "Rnd 1: Ch 1, *sc in ring, ch 3; rep from * 15 more times; join. (16 sc)\n"
        "Rnd 2: Sl st in first sp, ch 3 (counts as dc), 2 dc in same sp, *[3 dc in next sp] 3 "
        "times, (3 dc, ch 3, 3 dc) in next sp; rep from * 2 more times, [3 dc in next sp] 3 "
        f"times, {end}",
    )
    assert (found.verdict, found.makes) == (Verdict.UNSTATED, (60,))


def test_it_does_not_while_other_spaces_are_left():
    found = last_of(
        "",
        "Rnd 1: Ch 1, *sc in ring, ch 3; rep from * 5 more times; join. (6 sc)\n"
        "Rnd 2: Sl st in first sp, ch 1, [3 sc in next sp] 4 times, 3 sc in first sp, join. (15)",
    )
    assert found.verdict is Verdict.DIFFERS
