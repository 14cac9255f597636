"""Words that slips may have made of others: taken only where the round then comes out, and told."""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict
from tracker.notation.edits import Edit, Edited
from tracker.notation.keys import FAR, LIKELY, POSSIBLE, slip
from tracker.notation.reader import read_round


def the_round(text: str, below: int | None = None):
    return check_text(text, below=below).parts[0].rounds[-1]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("(1 sc, 1nc) x 9 (27)", "'1nc' is taken for 'inc'"),
        ("sc in ech st around (18)", "'ech' is taken for 'each'"),
        ("(1 sc, inc x 9 (27)", "')' is supplied here"),
        ("[1 sc, inc) x 9 (27)", "')' is taken for ']'"),
        ("sc in each each st around", "'each each' is taken for 'each'"),
        ("scc around (18)", "'scc' is taken for 'sc'"),
    ],
)
def test_what_was_taken_for_another_word_is_told(words, told):
    found = the_round(f"Rnd 3: {words}", 18)
    assert [m.text for m in found.messages] == [f"{told}, so that it comes out"]
    assert not any(m.serious for m in found.messages)


def test_it_is_told_where_the_words_stand_that_were_written():
    found = the_round("Rnd 3: 5 sc, (sc in nxet st, imc) x 6 (23)", 17)
    assert (found.verdict, found.makes) == (Verdict.AGREES, (23,))
    assert [(m.column, m.length) for m in found.messages] == [(21, 4), (30, 3)]
    assert found.text == "5 sc, (sc in nxet st, imc) x 6 (23)"


def test_steps_point_to_the_words_as_written():
    """Glued words become longer by a blank; all that stands behind them keeps its place."""
    words = "scin next 3 sts, (2 sc, inc) x 5 (23)"
    found = the_round(f"Rnd 3: {words}", 18)
    assert found.judged is not None
    runs = found.judged.outcomes[0].runs
    assert {words[run.start : run.end] for run in runs} == {"scin next 3 sts", "2 sc", "inc"}


def test_a_count_that_the_mended_words_do_not_make_leaves_the_round_unread():
    found = the_round("Rnd 3: (sc, imc) x 6 (20)", 12)
    assert found.verdict is Verdict.UNREAD
    assert "'imc' is not understood" in found.messages[0].text


def test_where_two_other_words_fit_with_different_counts_none_is_taken():
    """ "2 ix" could be two increases or two stitches, if nothing tells the count."""
    assert the_round("Rnd 2: 8 nc", 8).verdict is Verdict.UNREAD
    assert the_round("Rnd 2: 8 nc (16)", 8).makes == (16,)


def test_a_round_that_is_worked_again_is_mended_again():
    text = "Rnd 4: sc in ech st arund\nRnds 5-6: Rep Rnd 4."
    found = check_text(text, below=18).parts[0].rounds
    assert [r.makes for r in found] == [(18,)] * 3


def test_an_invisible_hyphen_takes_no_column():
    found = the_round("Rnd 3: sc in each st\u00adit\u00adch around, inc (18)", 18)
    assert found.verdict is Verdict.DIFFERS
    read = read_round("ch 1, st\u00aditch in next dc, Rep Rnd 4 (18)")
    assert read.text[read.stated.start : read.stated.end] == "(18)"


def test_a_long_text_of_nothing_but_slips_is_done_with_at_once():
    lines = [f"Rnd {n}: (sc, imc, dce, scin nxet arund) x {n} (99)" for n in range(1, 60)]
    found = check_text("\n".join(lines), below=6).parts[0].rounds
    assert {r.verdict for r in found} == {Verdict.UNREAD}


@pytest.mark.parametrize(
    ("word", "meant", "far"),
    [
        ("icn", "inc", LIKELY),  # exchanged
        ("imc", "inc", LIKELY),  # the key beside it
        ("nc", "inc", LIKELY),  # lost
        ("incc", "inc", LIKELY),  # doubled
        ("tum", "turn", LIKELY),  # printed close
        ("seek", "sk", POSSIBLE),  # made a word of
        ("arqund", "around", POSSIBLE),
        ("ixc", "inc", FAR),
        ("frob", "inc", 0),
        ("inc", "inc", 0),
    ],
)
def test_how_far_a_slip_goes(word, meant, far):
    assert slip(word, meant) == far


def test_offsets_of_a_changed_text_are_told_in_the_first():
    edited = Edited("sc ineach st", [Edit(3, 9, "in each"), Edit(12, 12, " around")])
    assert edited.text == "sc in each st around"
    assert [edited.before(n) for n in (0, 3, 10, 11, 13, 20)] == [0, 3, 9, 10, 12, 12]
    with pytest.raises(ValueError, match="two changes"):
        Edited("sc", [Edit(0, 2, "dc"), Edit(1, 2, "t")])
