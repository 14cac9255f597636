"""A round improvised: the piece's own version of the pattern, its place, its file."""

import re

import pytest

from tests.screens.stage import begin, begin_text
from tracker.fabric.verdicts import Verdict
from tracker.pattern import library
from tracker.pattern.changes import Change
from tracker.pattern.load import load_pattern
from tracker.pattern.own import own_version
from tracker.pattern.plan import make_plan
from tracker.session.about import share
from tracker.session.looking import glance_at
from tracker.session.place import Asking, Place
from tracker.session.session import Session
from tracker.session.worksheet import here

RING = """
title = "Sampler"
terms = "US"
[[part]]
name = "Disc"
make = {make}
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: inc in each st around. (12)
Rnd 3: [sc, inc] x 6. (18)
Rnds 4-6: sc in each st around. (18)
Rnd 7: sc in each st around until piece measures 6 cm.
Rnd 8: [sc, sc2tog] x 6. (12) Fasten off.
'''
"""


@pytest.fixture
def disc(tmp_path):
    """A disc of which two are made; the first stands before round 3."""
    session = begin_text(tmp_path, RING.format(make=2))
    session.go_to_round(3)
    yield session
    session.close()


def choice(session, title):
    """The choice with this title."""
    choices = session.improvising().choices
    return next(one for one in choices if one.title == title)


def improvise(session, title, words=""):
    session.improvise(choice(session, title), words)


def tried(session, title, words):
    return session.improvising().tried(choice(session, title), words)


def labels(session, copy=0):
    return [planned.label for planned in session.plan.parts[0].of(copy).rounds]


def taken_up(session):
    """The piece, closed and opened again."""
    session.close()
    return Session.open(session.path)


def shown(planned):
    """All of a round but where its words stand."""
    facts = (planned.label, planned.verdict, planned.below, planned.ends_on, planned.until)
    return *facts, planned.walk


SIZES = [
    pytest.param(name, size, id=f"{name} {size}")
    for name, path in library.demo_patterns().items()
    for size in load_pattern(path).sizes or ("",)
]


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_a_first_round_typed_as_printed_leaves_every_round_as_it_was(name, size):
    plan = make_plan(load_pattern(library.demo_patterns()[name]), size)
    for index, part in enumerate(plan.parts):
        if not part.making_up:
            own = own_version(plan, index, [Change(0, part.rounds[0].text)]).part
            assert list(map(shown, own.rounds)) == list(map(shown, part.rounds))


def test_the_verdict_is_told_while_the_line_is_typed(disc):
    well = tried(disc, "Rnd 3 otherwise", "*sc 2, inc; rep")
    assert well.below == "Rnd 2 below leaves 12 stitches."
    assert well.says == "Takes 12, makes 16: comes out even."
    assert well.follows == "Then Rnd 4 gets 16 stitches instead of 18 and makes 16."
    assert (well.well, well.doubt, well.refused) == (True, "", "")


@pytest.mark.parametrize(
    ("words", "says", "at"),
    [
        ("sc 10", "Leaves 2 of the 12 stitches below unworked.", "sc 10"),
        ("sc 14 (14)", "Wants 14 more where 12 of the 12 stitches below are left.", "sc 14"),
        ("Rnd 3: [sc, inc] x 6 (17)", "Makes 18, but 17 is printed.", "(17)"),
        ("*sc 2, icn; rep", "'icn' is not understood.", "icn"),
        ("sc 4, 3 wobbles, sc 5", "'3 wobbles' is not understood.", "3 wobbles"),
    ],
)
def test_what_does_not_come_out_is_told_with_its_words(disc, words, says, at):
    found = tried(disc, "Rnd 3 otherwise", words)
    assert found.says.startswith(says)
    assert words[slice(*found.fault)] == at
    assert not found.well
    assert found.doubt or found.refused


def test_words_taken_for_a_remark_are_shown(disc):
    words = "*sc 2, inc; rep, keeping it loose"
    found = tried(disc, "Rnd 3 otherwise", words)
    assert words[slice(*found.fault)] == "keeping it loose"
    assert "Taken for a remark: “keeping it loose”." in found.hint
    assert found.doubt


def test_words_left_as_they_were_change_nothing(disc):
    words = choice(disc, "Rnd 3 otherwise").words
    assert tried(disc, "Rnd 3 otherwise", words).refused.startswith("So it is worked now")
    improvise(disc, "Rnd 3 otherwise", words)
    assert disc.state.changes == {}


def test_more_than_one_round_at_a_time_is_refused(disc):
    for words in ("Rnds 3-5: sc around", "rep rnds 1 and 2", "sc around for 3 rounds"):
        assert tried(disc, "Rnd 3 otherwise", words).refused == "Type one round at a time."
        improvise(disc, "Rnd 3 otherwise", words)
        assert disc.state.changes == {}


def test_a_round_is_worked_otherwise_and_the_next_gets_its_count(disc, tmp_path):
    improvise(disc, "Rnd 3 otherwise", "Rnd 3: *sc 2, inc; rep")
    seen = disc.glance()
    assert (seen.instruction, seen.ends_on, seen.own) == ("*sc 2, inc; rep", 16, "changed")
    assert seen.place == Place(0, 0, 2, 0)
    assert [one.ends_on for one in seen.coming[:3]] == [16, 16, 18]
    assert "Rnd 3 of 8, changed · 0 of 16 stitches made" in (disc.retry() or "") + _line(disc)
    assert "[sc, inc] x 6. (18)" in disc.plan.pattern.source


def _line(session):
    from tracker.session.glance import line

    return line(session.glance())


def test_an_added_round_has_a_label_of_its_own_and_the_others_keep_theirs(disc):
    improvise(disc, "a round of yours before Rnd 3", "sc around")
    improvise(disc, "a round of yours before Rnd 2a", "inc in next st, sc 11")
    assert labels(disc)[:5] == ["Rnd 1", "Rnd 2", "Rnd 2a", "Rnd 2b", "Rnd 3"]
    seen = disc.glance()
    assert (seen.round_label, seen.round, seen.rounds) == ("Rnd 2a", 3, 10)
    assert seen.place == Place(0, 0, 2, 0)
    assert (seen.ends_on, seen.own) == (13, "added")


def test_with_own_rounds_a_number_means_the_label(disc):
    improvise(disc, "a round of yours before Rnd 3", "sc around")
    disc.go_to_round(3)
    assert disc.glance().round_label == "Rnd 3"
    assert disc.glance().place.round == 3


def test_once_more_begins_with_the_words_of_the_round_below(disc):
    once = choice(disc, "Rnd 2 once more before Rnd 3")
    assert once.words == "inc in each st around."
    assert tried(disc, once.title, once.words).says == "Takes 12, makes 24: comes out even."
    assert tried(disc, once.title, "rep rnd 2") == tried(disc, once.title, once.words)
    disc.improvise(once, once.words)
    assert (disc.glance().round_label, disc.glance().ends_on) == ("Rnd 2a", 24)


def test_a_round_left_out_is_passed_over_and_can_be_brought_back(disc):
    improvise(disc, "Rnd 3 left out")
    assert (disc.glance().round_label, disc.glance().rounds) == ("Rnd 4", 7)
    assert disc.glance().place == Place(0, 0, 2, 0)
    disc.previous_round()
    assert disc.glance().round_label == "Rnd 2"
    disc.next_round()
    improvise(disc, "Rnd 3 after all, as printed")
    assert (disc.glance().round_label, disc.glance().ends_on) == ("Rnd 3", 18)
    assert labels(disc) == [f"Rnd {n}" for n in range(1, 9)]


def test_the_last_round_is_left_out_and_the_part_ends_before_it(disc):
    disc.go_to_round(8)
    improvise(disc, "Rnd 8 left out")
    assert (disc.glance().round_label, disc.glance().at_end) == ("Rnd 7", True)
    disc.length_reached()
    assert disc.glance().part_done
    improvise(disc, "a round of yours after Rnd 7", "[sc, sc2tog] x 6")
    assert not disc.glance().part_done
    assert (disc.glance().round_label, disc.glance().ends_on) == ("Rnd 7a", 12)


def test_a_round_not_understood_is_kept_with_the_count_it_states(disc):
    assert tried(disc, "Rnd 3 otherwise", "go wild all over").refused
    improvise(disc, "Rnd 3 otherwise", "go wild all over")
    assert disc.state.changes == {}
    improvise(disc, "Rnd 3 otherwise", "go wild all over (20)")
    seen = disc.glance()
    assert (seen.verdict, seen.ends_on, seen.step_text) == (Verdict.UNREAD, 20, "as written")
    assert seen.coming[0].ends_on == 20
    disc.next()
    disc.next()
    assert disc.glance().round_label == "Rnd 4"


def test_a_round_in_work_goes_on_with_as_many_stitches_made(disc):
    for _ in range(7):
        disc.next()
    made = disc.glance().made
    improvise(disc, "Rnd 3 otherwise, of which you have begun", "sc around")
    assert (disc.glance().made, disc.glance().ends_on) == (made, 12)


def test_printed_words_come_back(disc):
    improvise(disc, "Rnd 3 otherwise", "sc around")
    improvise(disc, "Rnd 3 as printed again")
    assert (disc.glance().own, disc.glance().ends_on) == ("", 18)


def test_undo_brings_the_old_version_back_and_redo_the_new(disc):
    before = disc.glance()
    improvise(disc, "a round of yours before Rnd 3", "sc around")
    after = disc.glance()
    for _ in range(5):
        disc.next()
    for _ in range(6):
        disc.undo()
    assert disc.glance().place == before.place
    assert disc.glance().instruction == before.instruction
    assert labels(disc) == [f"Rnd {n}" for n in range(1, 9)]
    disc.redo()
    assert disc.glance().instruction == after.instruction


def test_notes_counts_and_the_mark_stay_with_their_round(disc):
    disc.note("here it narrows")
    disc.mark()
    improvise(disc, "a round of yours before Rnd 3", "sc around")
    assert disc.note_here() == ""
    disc.return_to_mark()
    assert disc.glance().round_label == "Rnd 3"
    assert disc.note_here() == "here it narrows"
    assert disc.glance().place == Place(0, 0, 3, 0)


@pytest.mark.parametrize(("presses", "made"), [(6, 6), (3, 3)])
def test_where_a_round_is_read_otherwise_for_a_later_one_one_stands_in_it_as_far_as_can_be(
    tmp_path, presses, made
):
    session = begin_text(tmp_path, RING.format(make=1))
    improvise(session, "Rnd 1 otherwise", "sc around")
    session.set_asking(Asking.EVERY)
    for _ in range(presses):
        session.next()
    assert session.glance().made == made
    improvise(session, "Rnd 2 otherwise", "go wild all over (9)")
    assert here(session.plan, session.state) == session.state.spot
    assert session.glance().at_end == (presses == 6)
    session.undo()
    assert session.glance().made == made
    session.close()


def test_a_round_of_open_length_is_counted_on_beside_an_added_one(disc):
    disc.go_to_round(7)
    improvise(disc, "a round of yours before Rnd 7", "sc around")
    for _ in range(18 + 1 + 3 * (18 + 1)):
        disc.next()
    seen = disc.glance()
    assert (seen.round_label, seen.place.round, seen.at_end) == ("Rnd 7", 10, False)


def test_the_second_copy_gets_it_too(disc):
    improvise(disc, "Rnd 3 otherwise", "*sc 2, inc; rep")
    disc.go_to_part(0, 1)
    disc.go_to_round(3)
    assert (disc.glance().copy, disc.glance().ends_on, disc.glance().own) == (2, 16, "changed")


def test_a_change_in_the_second_copy_leaves_the_first_alone(disc):
    disc.go_to_part(0, 1)
    disc.go_to_round(3)
    improvise(disc, "Rnd 3 left out")
    assert (labels(disc, 0)[2], labels(disc, 1)[2]) == ("Rnd 3", "Rnd 4")
    disc.go_to_part(0, 0)
    assert disc.glance().rounds == 8


def test_a_copy_that_has_got_further_stays_as_it_is_and_is_told(disc):
    disc.go_to_part(0, 1)
    disc.go_to_round(5)
    disc.go_to_part(0, 0)
    improvise(disc, "Rnd 3 left out")
    improvise(disc, "Rnd 4 otherwise", "sc 12 (12)")
    disc.go_to_part(0, 1)
    assert (disc.glance().round_label, disc.glance().place.round) == ("Rnd 5", 4)
    disc.go_to_round(3)
    assert disc.glance().memo == "copy 1: this round was left out"
    disc.go_to_round(4)
    assert disc.glance().memo.startswith("copy 1: worked so: sc 12 (12)")


def test_it_is_one_readable_sealed_line_and_outlives_closing(disc):
    improvise(disc, "a round of yours before Rnd 3", 'sc "tight" \\ 5, inc; rep (14)')
    line = disc.path.read_text(encoding="utf-8").splitlines()[-1]
    assert re.fullmatch(
        r'2 = \{ when = \S+, round = \[1, 1, 9, 1\], steps = "0", add = \[1, 1, 9\], after = 2, '
        r'words = "sc ”tight” / 5, inc; rep \(14\)", seal = "[0-9a-f]{8}" \}',
        line,
    )
    again = taken_up(disc)
    assert (again.notices, again.glance().round_label) == ((), "Rnd 2a")
    assert glance_at(disc.path).round_label == "Rnd 2a"
    again.close()


def test_a_line_written_by_hand_works_a_round_otherwise(disc):
    disc.close()
    with disc.path.open("a", encoding="utf-8") as file:
        file.write('3 = { change = [1, 1, 3], words = "sc 12 (12)" }\n4 = { omit = [1, 2, 1] }\n')
    again = Session.open(disc.path)
    assert "by hand" in again.notices[0]
    assert again.glance().instruction == "sc 12 (12)"
    assert (labels(again, 0)[0], labels(again, 1)[0]) == ("Rnd 1", "Rnd 2")
    again.close()


@pytest.mark.parametrize(
    "line",
    [
        "change = [1, 1, 3]",
        'add = [1, 1, 9], words = "sc 6"',
        'omit = [1, 1, 3], words = "sc 6"',
        'change = [1, 1], words = "sc 6"',
        'change = [1, 1, 3], omit = [1, 1, 4], words = "sc 6"',
        'add = [1, 1, 9], after = true, words = "sc 6"',
        'words = "sc 6"',
    ],
)
def test_a_line_that_makes_no_sense_is_damage(disc, line):
    disc.close()
    with disc.path.open("a", encoding="utf-8") as file:
        file.write(f"3 = {{ {line} }}\n")
    again = Session.open(disc.path)
    assert again.state.changes == {}
    assert "is damaged after entry 2" in again.notices[0]
    again.close()


@pytest.mark.parametrize(
    "lines",
    [
        [f"omit = [1, 1, {n}]" for n in range(1, 9)],
        ['add = [1, 1, 900000000], after = 700, words = "sc 12"'],
        ['add = [1, 1, 3], after = 1, words = "sc 12"'],
        ['change = [7, 1, 3], words = "sc 12"'],
        ['change = [1, 900000000, 3], words = "sc 12"'],
        ['change = [1, 1, 77], words = "sc 12"'],
        ["restore = [1, 1, 77]"],
        ['add = [1, 1, 9], after = 0, words = "sc around"', "omit = [1, 1, 9]"],
    ],
)
def test_whatever_is_written_by_hand_leaves_a_piece_that_can_be_worked(disc, lines):
    disc.close()
    with disc.path.open("a", encoding="utf-8") as file:
        file.writelines(f"{n} = {{ {line} }}\n" for n, line in enumerate(lines, start=3))
    again = Session.open(disc.path)
    for _ in range(30):
        again.next()
    assert again.glance().rounds >= 8
    assert 0 <= share(again.plan, again.state) <= 100
    again.close()


def test_folding_keeps_it(tmp_path):
    from tracker.session.surroundings import Surroundings

    session = begin_text(tmp_path, RING.format(make=1))
    session.close()
    session = Session.open(session.path, around=Surroundings(fold_at=200))
    session.go_to_round(3)
    improvise(session, "Rnd 3 otherwise", "*sc 2, inc; rep")
    for _ in range(20):
        session.next()
    place, number = session.glance().place, session.can_undo
    for _ in range(3):
        session.retry()
    text = session.path.read_text(encoding="utf-8")
    assert text.count(" = { when") < number
    assert 'change = [1, 1, 3], words = "*sc 2, inc; rep"' in text
    session = taken_up(session)
    assert (session.glance().place, session.can_undo) == (place, number)
    session.close()


def test_the_share_done_counts_own_rounds(disc):
    disc.go_to_part(0, 1)
    disc.go_to_round(8)
    before = share(disc.plan, disc.state)
    improvise(disc, "a round of yours before Rnd 8", "sc around")
    # 18 more stitches to do of what were 2 times 108.
    assert share(disc.plan, disc.state) < before
    disc.next_round()
    assert share(disc.plan, disc.state) > before


def test_the_size_that_is_worked_counts(tmp_path):
    session = begin(tmp_path, "tea-cosy", "8 cups")
    session.go_to_round(5)
    found = choice(session, "Rnd 5 otherwise")
    assert found.words.startswith("ch 1, *hdc in next 3 sts, 2 hdc in next st; rep from *")
    assert found.words.endswith("first hdc.")
    assert tried(session, found.title, "*hdc 9, inc; rep").says.startswith("Takes 40, makes 44")
    assert tried(session, found.title, "hdc 28 (32, 36, 40) [28 (32, 36, 40) sts]").well
    session.close()


def test_making_up_has_no_round_to_improvise(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    session.go_to_part(4, 0)
    assert session.improvising().choices == ()
    session.close()


@pytest.mark.parametrize(
    ("asked", "words", "makes"),
    [
        ("evenly to 18", "[sc, inc] x 6", 18),
        ("Evenly to 16 sts", "[2 sc, inc] x 4", 16),
        ("evenly to 9", "[2 sc, dec] x 3", 9),
        ("evenly to 12", "12 sc", 12),
        ("evenly to 24", "2 sc in each st", 24),
    ],
)
def test_a_round_asked_for_by_its_count_is_spread_evenly(disc, asked, words, makes):
    found = tried(disc, "Rnd 3 otherwise", asked)
    assert (found.well, found.refused, found.hint) == (True, "", words)
    assert f"makes {makes}" in found.says
    improvise(disc, "Rnd 3 otherwise", asked)
    assert disc.glance().instruction == words
    assert disc.glance().ends_on == makes


def test_a_count_that_one_round_cannot_reach_is_not_spread(disc):
    found = tried(disc, "Rnd 3 otherwise", "evenly to 40")
    assert not found.well
