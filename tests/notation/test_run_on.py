"""Several rounds run on in one line, as makers jot them down."""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict


def found(text, below=None):
    rounds = check_text(text, below=below).parts[0].rounds
    return [(one.label, one.makes and one.makes[0]) for one in rounds]


@pytest.mark.parametrize(
    "text",
    [
        "R1 6sc mr, R2 inc x6 (12), R3 (1sc, inc)x6 (18) R4 18sc",
        "Rnd 1: 6 sc in MR. Rnd 2: inc x 6 (12). Rnd 3: (sc, inc) x 6 (18). Rnd 4: sc around (18)",
        "R1. 6 sc in MR (6) R2. inc x6 (12) R3. (sc, inc) x 6 R4. same as R3, no increases (18)",
        "1st rnd: 6 sc in ring. 2nd rnd: 2 sc in each st. 3rd rnd: (sc, inc) x 6. 4th rnd: sc.",
    ],
)
def test_every_round_of_the_line_is_one_of_its_own(text):
    assert [makes for _, makes in found(text)][:3] == [6, 12, 18]
    assert len(found(text)) == 4


def test_a_name_before_them_is_no_round():
    assert found("shell: R1 6sc mr, R2-4 6sc") == [
        ("R1", 6), ("Rnd 2", 6), ("Rnd 3", 6), ("Rnd 4", 6),
    ]  # fmt: skip


@pytest.mark.parametrize(
    "text",
    [
        "Rnd 10: sc around (30). Insert eyes between Rnd 11 and Rnd 12.",
        "Rnd 10: sc around (30) (rnd 11 follows)",
        "Rnd 10: sc around (30); see rnd 11 for the ears",
        "Rnd 10: sc around (30), place marker in row 11 and row 12",
    ],
)
def test_a_round_that_is_only_spoken_of_is_not_begun(text):
    assert found(text, 30) == [("Rnd 10", 30)]


@pytest.mark.parametrize("loop", ["loop", "st", "stitch", "ch", "lp"])
def test_the_loops_of_a_chain_are_counted_from_the_hook(loop):
    text = f"Row 1: ch 7, sc in second {loop} from hook, sc in next 5 ch. (6)"
    [row] = check_text(text).parts[0].rounds
    assert (row.verdict, row.makes) == (Verdict.AGREES, (6,))


def test_a_last_slip_stitch_on_the_other_side_of_a_chain_is_a_stitch():
    [row] = check_text("Other side: hdc, dc, hdc, sc, sl st.", below=5).parts[0].rounds
    assert row.makes == (5,)
    [row] = check_text("Rnd 1: 5 sc in MR, sl st. leave a tail").parts[0].rounds
    assert row.makes == (5,)
