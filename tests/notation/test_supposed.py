"""A round that sits on one of which only the number of stitches is known.

Counted by hand from the words: what is printed, or how often all is worked, must settle
how many spaces there are. Where it does not, the round stays unread.
"""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

SETTLED = [
    (48, "Rnd 5: Ch 1, sc in each st around, 3 sc in each corner ch-2 sp; join. (60 sc)", 60),
    (48, "Rnd 5: Ch 3, dc in each dc around, (2 dc, ch 2, 2 dc) in each corner; join. (64 dc)", 64),
    (54, "Rnd 4: Ch 1, sc in each dc and 2 sc in each ch-1 sp around; join. 66 sc", 66),
    (36, ("Rnd 4: Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in corner sp, *dc in next 9 dc, (2 dc, "
     "ch 2, 2 dc) in corner sp; rep from * twice more, dc in last 6 dc; join."), 52),
    (8, "Rnd 3: *(sc, hdc, 2 dc, hdc, sc) in next ch-3 sp; rep from * around. (8 petals)", 48),
    (30, "Rnd 4: *(Sc, 3 dc, sc) in next ch sp, sl st in next sc; rep from * 5 more times.", 30),
    (25, ("Rnd 3: Working behind petals, *sc around the post of next sc, ch 4; rep from * 4 more "
     "times and sl st to first sc."), 5),
    (72, ("Rnd 6: Sl st to ch-1 sp, ch 3, (3 dc, ch 1, 4 dc) in same sp, *(4 dc, ch 1, 4 dc) in "
     "next ch-1 sp; rep from * around; join. [96 dc]"), 96),
]  # fmt: skip

OPEN = [
    (48, "Rnd 5: Ch 1, sc in each st around, 3 sc in each corner ch-2 sp; join."),
    (48, "Rnd 5: Ch 3, dc in each dc around, (2 dc, ch 2, 2 dc) in each corner; join. (65 dc)"),
    (12, "Rnd 4: *3 dc in next ch-1 sp; rep from * around; join."),
    (25, "Rnd 3: Working behind petals, *sc around the post of next sc, ch 4; rep from * around."),
    (25, "Rnd 4: *Sc around next sc of Rnd 2, ch 4; rep from * around; join."),
]


@pytest.mark.parametrize(("below", "words", "makes"), SETTLED)
def test_what_the_words_settle_is_counted(below: int, words: str, makes: int) -> None:
    found = check_text(words, below=below).parts[0].rounds[-1]
    assert found.verdict in (Verdict.AGREES, Verdict.UNSTATED), found.messages
    assert found.makes == (makes,)


@pytest.mark.parametrize(("below", "words"), OPEN)
def test_what_they_leave_open_stays_unread(below: int, words: str) -> None:
    assert check_text(words, below=below).parts[0].rounds[-1].verdict is Verdict.UNREAD


def test_a_round_on_a_supposed_one_is_never_called_wrong() -> None:
    """The corners may stand elsewhere than was supposed."""
    words = (
        "Rnd 5: Ch 1, sc in each st around, 3 sc in each corner ch-2 sp; join. (60 sc)\n"
        "Rnd 6: Ch 1, *sc in next 6 sc, 3 sc in center sc of corner, sc in next 8 sc; rep from * "
        "around; join. (68 sc)"
    )
    rounds = check_text(words, below=48).parts[0].rounds
    assert rounds[0].makes == (60,)
    assert rounds[1].verdict is not Verdict.DIFFERS
