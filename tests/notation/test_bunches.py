"""A printed number of petals, shells or groups: a fault in it is found, a right one never.

All counted by hand from the words; the ways of counting are the trade's (common practice,
no source).
"""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

_LOOPS = "Rnd 1: Ch 5, join; *ch 4, sc in ring; rep from * 5 more times.\n"
_RING = "Rnd 1: Ch 3, 23 dc in ring, join. (24 dc)\n"
_SHELL = "Special stitches:\nShell: (2 dc, ch 2, 2 dc) in place indicated.\n\n" + _RING
_BEGUN = "Rnd 2: Ch 3, (dc, ch 2, 2 dc) in same st, sk next 2 dc, *shell in next dc, sk next 2 dc; "

#: text, the number of things that its last line makes
COUNTED = (
    (_LOOPS + "Rnd 2: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 loop around. ({} petals)", 6),
    (_LOOPS + "Rnd 2: *(Sc, 5 dc, sc) in next loop; rep from * around, join. {} petals made.", 6),
    (_SHELL + _BEGUN + "rep from * around; join. ({} shells)", 8),
    (
        _RING + "Rnd 2: Ch 3, 2 dc in same st, ch 1, sk 2 dc, *3 dc in next dc, ch 1, sk 2 dc; rep "
        "from * around; join. ({} groups)",
        8,
    ),
    (
        "Rnd 1: Ch 4, join, ch 3, 2 dc in it, (ch 2, 3 dc in ring) 3 times, ch 2, join. {} groups",
        4,
    ),
    (
        _RING
        + "Rnd 2: Ch 1, sc in same st, *sk 2 dc, 5 dc in next dc, sk 2 dc, sc in next dc; rep "
        "from * around, omitting last sc; join. ({} scallops)",
        4,
    ),
    (
        _LOOPS
        + "Rnd 2: Sl st in loop, ch 2, 4 dc in same loop, ch 2, sl st in same loop, *(sl st, "
        "ch 2, 4 dc, ch 2, sl st) in next loop; rep from * around. ({} petals)",
        6,
    ),
)


@pytest.mark.parametrize(("words", "number"), COUNTED)
def test_a_right_number_is_never_called_wrong(words: str, number: int) -> None:
    found = check_text(words.format(number)).parts[0].rounds[-1]
    assert found.verdict in (Verdict.AGREES, Verdict.UNSTATED), found.messages


@pytest.mark.parametrize(("words", "number"), COUNTED)
def test_a_number_that_is_far_off_is_found(words: str, number: int) -> None:
    assert check_text(words.format(number + 3)).parts[0].rounds[-1].verdict is Verdict.DIFFERS


@pytest.mark.parametrize("number", [5, 7])
def test_a_number_that_is_one_off_is_found_where_all_petals_are_alike(number: int) -> None:
    words, _ = COUNTED[0]
    assert check_text(words.format(number)).parts[0].rounds[-1].verdict is Verdict.DIFFERS


@pytest.mark.parametrize("thing", ["points", "sides", "pattern repeats", "pairs", "half shells"])
def test_what_is_not_sure_to_be_one_thing_is_not_counted(thing: str) -> None:
    words, _ = COUNTED[0]
    found = check_text(words.format(40).replace("petals", thing)).parts[0].rounds[-1]
    assert found.verdict is Verdict.UNSTATED, found.messages
