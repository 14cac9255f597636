"""Ways of writing rows, repeats and counts: own lines that show the habits of the sources.

Sources: a yarn company's leaflets (numbers in the cases), a page on repeats
(http://cnas.ca/rcp/read-crochet-patterns-basics-repeats), and for the ways of writing a
repeat or a count the guides named in `test_habits_rounds`.
"""

from __future__ import annotations

import pytest

from .case import Case, hold, last, rounds

LEAFLETS = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/"
REPEATS = "http://cnas.ca/rcp/read-crochet-patterns-basics-repeats"

MOSS = (
    "Ch 18.\n1st row: 1 sc in 2nd ch from hook. *Ch 1, sk 1 ch, 1 sc in next ch. "
    "Rep from * to end. Turn."
)

# the comment above each case: chains or stitches taken | made
ROW_HABITS = [
    # 1 + 18 | 18
    Case(
        "foundation-sc",
        "1st row: Ch 19. Sc in 2nd ch from hook and in each ch to end.",
        18,
        LEAFLETS + "CAC0116-029868M.pdf",
        takes=19,
    ),
    # 6 + 10 x 4 + 3 | 1 + 11 x 2 + 1
    Case(
        "vst-row-4",
        "Ch 49.\n1st row: (Dc, ch 1, dc) in 6th ch from hook (skipped ch count as dc). "
        "*Sk 3 ch, (dc, ch 1, dc) in next ch. Rep from * to last 3 ch. Sk 2 ch, dc in last ch.",
        24,
        LEAFLETS + "BRC0502-029618M.pdf",
        takes=49,
        made={"dc": 24, "ch-1 sp": 11},
    ),
    # 5 + 16 x 3 + 2 | 1 + 17 x 2 + 1
    Case(
        "vst-row-3",
        "Special stitches:\nV-st: (dc, ch 1, dc) in one st.\n\n"
        "Ch 55.\n1st row: V-st in 5th ch from hook (skipped ch count as dc). "
        "*Sk 2 ch, V-st in next ch. Rep from * to last 2 ch. Sk 1 ch, dc in last ch.",
        36,
        LEAFLETS + "BRC0502-028564M.pdf",
        takes=55,
        made={"ch-1 sp": 17},
    ),
    # 1 + 1 + 23 x 2 | 1 + 23 x 2
    Case(
        "alternate",
        "Ch 48.\n1st row: 1 sc in 2nd ch from hook. *1 dc in next ch, 1 sc in next ch. "
        "Rep from * to end of ch. Turn.",
        47,
        LEAFLETS + "BRC0502-035419M.pdf",
        takes=48,
        made={"sc": 24, "dc": 23},
    ),
    # 1 + 1 + 18 x 2 | 19 sc and 18 chain spaces, counted together as 37
    Case(
        "moss",
        "Ch 38.\n1st row: 1 sc in 2nd ch from hook. *Ch 1, sk 1 ch, 1 sc in next ch. "
        "Rep from * to end. Turn. 37 sts.",
        None,
        LEAFLETS + "BRC0502-027780M.pdf",
        takes=38,
        verdict="agrees",
        made={"sc": 19, "ch-1 sp": 18},
    ),
    # 1 + 6 x 2 + 2 + 2 | 9 sc and 8 chain spaces, counted together as 17
    Case(
        "bias",
        MOSS + "\n2nd row: Ch 1. 1 sc in first sc. Ch 1. *1 sc in next ch-1 sp, ch 1, sk next sc. "
        "Rep from * to last 4 sts. 1 sc in next ch-1 sp, ch 1, sk next sc, "
        "sc2tog over last ch-1 sp and last sc. Turn. 17 sts.",
        None,
        LEAFLETS + "CAC0502-030680M.pdf",
        verdict="agrees",
        made={"ch-1 sp": 8},
    ),
    # 1 + 1 + 2 | 2 + 1 + 1
    Case(
        "inc-dec-row",
        "2nd row: Ch 1. 2 sc in back loop of first st. 1 sc in back loop of next st. "
        "Sc2tog in back loops. Turn.",
        4,
        LEAFLETS + "CAC0125-012177M.pdf",
        below=4,
        takes=4,
    ),
    # 3 + 2 + 1 + 3 + 5 + 3 + 1 + 2 + 3 | 1 + 2 + 5 + 3 + 1 + 3 + 5 + 2 + 1
    Case(
        "chevron",
        "5th row: Ch 3, dc2tog (counts as dc3tog). 1 dc in each of next 2 sts. 5 dc in next st. "
        "1 dc in each of next 3 sts. Dc5tog. 1 dc in each of next 3 sts. 5 dc in next st. "
        "1 dc in each of next 2 sts. Dc3tog. Turn.",
        23,
        LEAFLETS + "BRC0125-003704M.pdf",
        below=23,
        takes=23,
    ),
    # 3 + 9 x 4 + 3 + 1 | 2 + 9 x 3 + 6
    Case(
        "granny-rect",
        "Ch 43.\n1st rnd: 2 dc in 3rd ch from hook (skipped ch do not count as a st). "
        "(Ch 1, sk 3 ch, 3 dc in next ch) 9 times. Ch 1, sk 3 ch, (3 dc, ch 2, 3 dc) in last ch.",
        35,
        LEAFLETS + "CAC0502-001982M.pdf",
        takes=43,
        made={"dc": 35, "ch-1 sp": 10, "ch-2 sp": 1},
    ),
    # 4 + 3 + 7 x 4 + 4 | 2 + 3 + 7 x 3 + 2
    Case(
        "granny-row",
        "Ch 39.\n1st row: 1 dc in 4th ch from hook (skipped 3 ch count as dc). Ch 1, sk 2 ch, "
        "3 dc in next ch. *Ch 1, sk 3 ch, 3 dc in next ch. Rep from * to last 4 ch. "
        "Ch 1, sk 2 ch, dc in each of last 2 ch. Turn.",
        28,
        LEAFLETS + "CAC0135-001742M.pdf",
        takes=39,
        made={"dc": 28, "ch-1 sp": 9},
    ),
]


@pytest.mark.parametrize("case", ROW_HABITS, ids=str)
def test_habit(case: Case) -> None:
    hold(case)


def test_rows_repeated_come_in_order_and_row_1_only_once() -> None:
    text = (
        "Row 1: Ch 13, sc in 2nd ch from hook and in each ch across; turn.\n"
        "Row 2: Ch 1, 2 sc in first st, sc in each st across; turn.\n"
        "Row 3: Ch 1, sc in each st across; turn.\n"
        "Rows 4-9: Rep Rows 2 and 3 three times.\n"
    )
    widths = [12, 13, 13, 14, 14, 15, 15, 16, 16]
    assert [r.makes for r in rounds(text)][-9:] == [(n,) for n in widths], REPEATS


#: From 21 to 28, where the repeat takes 3 and makes 4.
WAYS_OF_REPEATING = [
    "[2 sc, inc] x 7",
    "(2 sc, inc) x 7",
    "(2 SC, INC) X 7",
    "(2 sc, inc) 7 times",
    "[2 sc, inc] 7 times",
    "*sc in next 2 sts, inc; repeat from * around",
    "*sc in next 2 sts, inc; repeat from * six more times",
    "*Sc in next 2 sts, inc. Rep from * to last 3 sts. Sc in next 2 sts, inc.",
    "**sc in next 2 sts, inc** Rep from ** to ** 6 times more",
    "*sc in next st, inc**, sc in next st; rep from * around, ending last rep at **, sc in last st",
    "{sc in next 2 sts, inc} 7 times",
    "2 sc, inc, [2 sc, inc] x 6",
]


@pytest.mark.parametrize("way", WAYS_OF_REPEATING)
def test_ways_of_writing_a_repeat(way: str) -> None:
    found = last(f"Rnd 4: {way}", below=21)
    assert found.takes == (21,)
    assert found.makes == (28,)
    assert found.verdict == "unstated"


#: From 15 to 20, with the figure left open.
WAYS_OF_COUNTING = [
    "({})",
    "[{}]",
    ". {} sc.",
    " - {} sc",
    " ({}st)",
    " ({} sts)",
]


@pytest.mark.parametrize("way", WAYS_OF_COUNTING)
def test_ways_of_writing_a_count(way: str) -> None:
    line = "Rnd 3: *Sc in next 2 sts, 2 sc in next st; rep from * around" + way
    assert last(line.format(20), below=15).verdict == "agrees"
    assert last(line.format(19), below=15).verdict == "differs"
