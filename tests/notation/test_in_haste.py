"""Rounds written in haste: one bare stitch for a whole round, a bare slip stitch at the end."""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict


@pytest.mark.parametrize(
    ("words", "below", "makes"),
    [("sc (18)", 18, 18), ("hdc. 27 sts", 27, 27), ("inc [24]", 12, 24), ("dec = 6", 12, 6)],
)
def test_a_bare_stitch_goes_all_round_where_the_printed_count_says_so(words, below, makes):
    [found] = check_text(f"Rnd 5: {words}", terms="US", below=below).parts[0].rounds
    assert (found.verdict, found.makes) == (Verdict.AGREES, (makes,))
    assert "worked all round, though nothing says so" in found.messages[0].text


@pytest.mark.parametrize("words", ["sc (17)", "sc", "2 sc (18)", "inc (18)", "dec (12)"])
def test_a_bare_stitch_that_the_count_does_not_bear_out_is_one_stitch(words):
    [found] = check_text(f"Rnd 5: {words}", terms="US", below=18).parts[0].rounds
    assert found.verdict is Verdict.DIFFERS


def test_a_bare_slip_stitch_may_be_the_last_stitch_of_a_row_along_a_chain():
    # 10 chains to work into: 1 + 1 + 1 + 2 in one + 3 + 1 + 1 + 1 = 11 stitches
    text = (
        "Ch 11\nRow 1: from 2nd ch from hook: sl st, sc, hdc, 2 dc in next, 3 dc, hdc, sc, sl st."
    )
    for printed in ("", " (11)"):
        row = check_text(text + printed, terms="US").parts[0].rounds[-1]
        assert row.makes == (11,)
        assert row.verdict is (Verdict.AGREES if printed else Verdict.UNSTATED)
    assert check_text(text + " (12)", terms="US").parts[0].rounds[-1].verdict is Verdict.DIFFERS


def test_elsewhere_it_joins():
    for below, verdict in ((18, Verdict.AGREES), (19, Verdict.DIFFERS)):
        text = "Rnd 4: (2 sc, inc) x 6, sl st (24)"
        [found] = check_text(text, terms="US", below=below).parts[0].rounds
        assert (found.verdict, found.makes) == (verdict, (24,))
