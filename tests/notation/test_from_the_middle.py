"""Rounds from the middle of a pattern: what is worked into is told by later rounds, or not.

All counts were worked out by hand from the words.
"""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict
from tracker.pattern.checked import CheckedRound


def _rounds(text: str, below: int | None = None) -> tuple[CheckedRound, ...]:
    return check_text(text, below=below).parts[0].rounds


def _counts(text: str, below: int | None = None) -> list[int | str]:
    """What each round makes; "?" where it is not read, "differs" where it does not come out."""
    found: list[int | str] = []
    for one in _rounds(text, below):
        doubtful = {Verdict.UNREAD: "?", Verdict.DIFFERS: "differs"}.get(one.verdict)
        found.append(doubtful or (one.makes or (0,))[0])
    return found


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # the round that tells takes a fixed number
        (
            (
                "Rnd 14: sc in each st around.\nRnd 15: sc in each st around.\n"
                "Rnd 16: sc in next 12 sts, ch 6, sk next 6 sts, sc in next 18 sts, ch 6, sk 6 sts,"
                " sc in next 12 sts."
            ),
            [54, 54, 42],
        ),
        ("R20: BLO sc around\nR21-23: sc around\nR24: 10 sc, 8 hdc, 10 sc", [28] * 5),
        (
            (
                "Round 4: Ch 1, hdc in each st around, join with sl st to first hdc.\n"
                "Rounds 5-6: Repeat Round 4.\n"
                "Round 7: Ch 1, sc in next 9 sts, ch 12, skip 8 sts, sc in next 18 sts, ch 12,"
                " skip 8 sts, sc in last 9 sts, join."
            ),
            [52, 52, 52, 36],
        ),
        (
            (
                "Row 8: Ch 1, turn, sc in each st across.\n"
                "Row 9: Ch 1, turn, sc2tog, sc in next 16 sts, sc2tog. (18 sts)"
            ),
            [20, 18],
        ),
        (
            (
                "Row 3: Ch 3, dc in next st and each st across. Turn.\nRow 4: Repeat Row 3.\n"
                "Row 5: Ch 3, dc in next 6 sts, ch 2, sk 2, dc in next 14 sts, ch 2, sk 2,"
                " dc in last 7 sts. Turn."
            ),
            [32, 32, 28],
        ),
        ("Rnd 7: sc in each st around\nRnd 8: [sc in next 7 sts, inc] x 6", [48, 54]),
        (
            (
                "Rnd 15: sc in each st around\n"
                "Rnd 16: sc in next 5, inc in next 6, sc in next 12, inc in next 6, sc in next 7"
            ),
            [36, 48],
        ),
        ("Rnds 18-20: sc in each st around.\nRnd 21: (dec) x 12. Fasten off.", [24, 24, 24, 12]),
        ("Rnd 10: Work even.\nRnd 11: *sc 10, inc* 4 times", [44, 48]),
        # or prints its count
        ("Rnd 5: sc around\nRnd 6: sc around\nRnd 7: (sc 6, dec) around (42)", [48, 48, 42]),
        ("Rnd 18: sc around.\nRnd 19: sc around. 24 sts.", [24, 24]),
        ("7th round: sc around\n8th round: dec 6 times evenly (30)", [36, 30]),
        ("Rnd 22: sc in every stitch.\nRnd 23: 6x (4 sc, 1 dec) = 30", [36, 30]),
        # rounds that change the count on the way
        ("Rnd 6: inc around\nRnd 7: sc around\nRnd 8: (2 sc, inc) x 10", [30, 30, 40]),
        ("Rnd 6: (sc, inc) around\nRnd 7: (3 sc, dec) x 6", [30, 24]),
        # a single stitch many times, from which the next goes on
        ("Rnd 5: sc around.\nRnd 6: sc in next 36 sts.\nRnd 7: (4 sc, dec) x 6", [36, 36, 30]),
    ],
)
def test_a_later_round_tells_what_the_first_is_worked_into(text: str, counts: list[int]) -> None:
    assert _counts(text) == counts


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # nothing tells
        ("Rnd 30: hdc in each st around.\nRnd 31: hdc in each st around.", ["?", "?"]),
        # the row stops before its end, or may do so
        (
            (
                "Row 13: hdc across, ch 1, turn.\nRow 14: hdc in first 15 sts, turn, leaving rest"
                " unworked."
            ),
            ["?", 15],
        ),
        ("Row 19: sc across, turn.\nRow 20: sc in next 12 sts, sc2tog, turn.", ["?", 13]),
        ("Rnd 20: sc around.\nRnd 21: sc in next 5 sts, sl st in next st, fasten off.", ["?", 6]),
        ("Rnd 20: sc around.\nRnd 21: sl st in next 4 sts.", ["?", 4]),
        ("Rnd 20: sc around.\nRnd 21: sc in next 5 sts.", ["?", 5]),
        ("Rnd 20: sc around.\nRnd 21: sc in next 5 sts, hdc in next 2, ch 30.", ["?", 7]),
        (
            (
                "Rnd 8: dc around, join.\n"
                "Rnd 9: ch 1, sc in next 14 sts, ch 10, sl st in 2nd ch from hook and next 8 ch."
            ),
            ["?", 23],
        ),
        # eleven times may be twelve
        (
            "Rnd 3: dc around.\nRnd 4: *dc in next 5 sts, 2 dc in next; rep from * 11 times",
            ["?", 84],
        ),
        # the round that would tell is wrong itself
        ("Rnd 7: sc around\nRnd 8: [sc in next 7 sts, inc] x 6 (52)", ["?", "differs"]),
        # no number comes out
        ("Rnd 7: (sc 3, inc) around\nRnd 8: [sc in next 2 sts, inc] x 6", ["?", 24]),
        # another part has begun
        ("Rnd 20: sc around.\n\nSleeve\nRnd 1: sc in next 9 sts, inc in next 3", ["?", 15]),
    ],
)
def test_what_no_later_round_tells_for_certain_is_not_taken(
    text: str, counts: list[int | str]
) -> None:
    assert _counts(text) == counts


def test_what_is_taken_is_said_and_proves_nothing() -> None:
    first, second, third = _rounds(
        "Rnd 5: sc around\nRnd 6: sc around\nRnd 7: (6 sc, dec) x 6 (42)"
    )
    assert [m.text for m in first.messages] == [
        "taken to be worked into 48 stitches, which is what Rnd 7 takes"
    ]
    assert not first.messages[0].serious
    assert first.below == (48,)
    assert (first.verdict, second.verdict) == (Verdict.UNSTATED, Verdict.UNSTATED)
    assert third.verdict is Verdict.AGREES  # by its own words it makes what is printed

    first, last = _rounds("Rnd 18: sc around.\nRnd 19: sc around. (24)")
    assert [m.text for m in first.messages] == [
        "taken to be worked into 24 stitches, from the count of Rnd 19"
    ]
    assert last.verdict is Verdict.UNSTATED  # its count was taken, so it proves nothing


def test_a_single_round_says_that_its_count_was_taken() -> None:
    (found,) = _rounds("Rnd 19: sc around. (24)")
    assert found.verdict is Verdict.UNSTATED
    assert [m.text for m in found.messages] == [
        "taken to be worked into 24 stitches, from its count"
    ]


def test_each_size_is_told_for_itself() -> None:
    first, second = (
        check_text(
            "Rnd 7: sc around.\nRnd 8: (sc in next 5 sts, inc) 6 (7, 8) times. 42 (49, 56) sts"
        )
        .parts[0]
        .rounds
    )
    assert first.makes == (36, 42, 48)
    assert second.makes == (42, 49, 56)


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # the last of the rounds is known by what it leaves, those before it are not
        (
            "Next rnd: *sc 2, dec; rep from * around. Repeat last rnd until 12 sts remain.",
            ["?", 12],
        ),
        (
            (
                "Rnd 30: Dec 6 sts evenly around. Repeat this round until 18 sts remain.\n"
                "Rnd 31: sc around."
            ),
            ["?", 18, 18],
        ),
        (
            "Next rnd: Dec 7 sts evenly around. Repeat last rnd until only 28 sts are left.",
            ["?", 28],
        ),
        ("Continue decreasing 6 sts each round until 6 sts remain. Fasten off.", [6]),
        ("Keep dec 5 sts every rnd until there are 15 sts left.", [15]),
        # how it is shaped is left to the maker
        ("Dec evenly around until 10 sts remain.\nNext rnd: sc around.", [10, 10]),
        ("Sc2tog around until 8 sts rem.\nWork 2 rnds even.", [8, 8, 8]),
        ("Continue to decrease in every round until you have 12 sts left, then fasten off.", [12]),
        ("Inv dec until you are down to 6 sts. Fasten off, leaving a tail.", [6]),
        # rounds of a part, or earlier rounds, that are not in the text
        (
            "With A, ch 2. Work as for Head until there are 36 sts on rnd.\nWork 2 rnds even.",
            [36] * 3,
        ),
        (
            "Work same as for first ball until you have 24 sts.\nNext rnd: dec 6 sts evenly.",
            [24, 18],
        ),
        ("Rep Rnds 3 and 4 until 20 sts remain.\nRnd 15: (sc 3, dec) around.", [20, 16]),
        # how often they are worked, or what they leave, is not said
        ("With A, ch 2. Work as for Head.\nWork 2 rnds even.", ["?", "?", "?"]),
        ("Ch 2. 6 sc in 2nd ch from hook. Continue as for head until there are 30 sts.", ["?"]),
        # no round of these words leaves so many
        (
            "Next rnd: *sc 4, dec; rep from * around. Repeat last rnd until 12 sts remain.",
            ["?", "?"],
        ),
    ],
)
def test_rounds_that_say_what_they_leave_are_gone_on_from(
    text: str, counts: list[int | str]
) -> None:
    assert _counts(text) == counts


def test_what_is_left_is_open_and_said() -> None:
    (found,) = _rounds("Dec evenly around until 10 sts remain.")
    assert (found.verdict, found.until) == (Verdict.OPEN, "until 10 sts remain")
    assert found.messages[0].text == (
        "how these rounds are worked is not told; taken to leave 10 stitches"
    )
    *_, last = _rounds(
        "Next rnd: *sc 2, dec; rep from * around. Repeat last rnd until 12 sts remain."
    )
    assert last.verdict is Verdict.OPEN
    assert last.messages[0].text == (
        "the last of these rounds is taken to be worked into 16 stitches, to leave what it says"
    )


def test_fewer_stitches_are_not_come_to_from_fewer_still() -> None:
    assert _counts("Dec evenly around until 10 sts remain.", below=24) == [10]
    assert _counts("Dec evenly around until 10 sts remain.", below=8) == ["?"]


def test_how_a_decrease_is_made_is_no_stitch_more() -> None:
    for how in (
        "—to dec, work off 2 sc as 1 sc.",
        ". To decrease: insert hook in next st, yo.",
        " (to dec, sc 2 tog)",
    ):
        assert _counts("Rnd 9: Dec 7 sts evenly around" + how, below=35) == [28]
    assert _counts("Rnd 9: sc 5 to inc, 2 sc in inc, sc in last 5", below=12) != [10]


_LOOPS = "Rnd 5: *sc in next st, ch 4, sk next st; rep from * around."


@pytest.mark.parametrize(
    ("before", "after", "fits"),
    [
        # the round below makes spaces of one length only, however many
        (_LOOPS, "Rnd 6: 6 sc in each ch-3 sp.", False),
        (_LOOPS, "Rnd 6: 6 sc in each ch-4 sp.", True),
        (_LOOPS, "Rnd 6: 6 sc in each ch sp.", True),
        (_LOOPS, "Rnd 6: (4 sc in next ch-3 sp) 9 times.", False),
        (
            (
                "Rnd 4: *sc, ch 3, sk 2; rep from * around.\n"
                "Rnd 5: *sc in next ch-3 sp, ch 5; rep from * around."
            ),
            "Rnd 6: 7 sc in each ch-3 sp around.",
            False,
        ),
        (
            "Row 3: *dc in next dc, ch 2, sk 2 sts; rep from * across, dc in last st, turn.",
            "Row 4: *dc in dc, 2 dc in next ch-3 sp; rep from * across.",
            False,
        ),
        # the first chain stands for a stitch and a space
        (
            "Rnd 5: Ch 6, *sk 1, dc, ch 2; rep from * around.",
            "Rnd 6: 3 dc in next ch-3 sp, *4 dc in ch-2 sp; rep from * around.",
            True,
        ),
        # two chains with a picot between them
        (
            "Rnd 5: *sc in next sp, ch 3, sl st in 3rd ch from hook, ch 2; rep from * around.",
            "Rnd 6: *5 sc in next ch-5 sp; rep from * around.",
            True,
        ),
        # loops left open by the round below, and those of another round
        (
            "Rnd 5: *sc in next st, ch 4, sk next ch-3 sp; rep from * around.",
            "Rnd 6: *5 dc in next ch-3 sp; rep from * around.",
            True,
        ),
        (_LOOPS, "Rnd 6: Working in ch-3 sps of Rnd 4, *5 dc in next ch-3 sp; rep around.", True),
        # rounds that do not follow one another
        (_LOOPS, "Rnd 9: 6 sc in each ch-3 sp.", True),
    ],
)
def test_a_space_that_cannot_be_below_is_missed_whatever_the_count(
    before: str, after: str, fits: bool
) -> None:
    last = _rounds(f"{before}\n{after}")[-1]
    assert (last.verdict is not Verdict.DIFFERS) == fits


def test_it_is_said_which_spaces_there_are() -> None:
    text = (
        "Round 3: *sc around the post, ch 5; rep from * around.\n"
        "Round 4: *7 dc in 3-ch sp, sl st in sc; rep from * around."
    )
    last = _rounds(text, below=25)[-1]
    assert last.messages[0].text == "no ch-3 space is below; Round 3 makes ch-5 spaces"
    assert last.messages[0].serious
