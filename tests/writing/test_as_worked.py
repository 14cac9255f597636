"""The pattern as a piece was really worked: its size, its own rounds, its lengths, its notes."""

import re

import pytest

from tests.screens.stage import begin_text
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern, load_text
from tracker.pattern.model import Part
from tracker.pattern.plan import make_plan
from tracker.pattern.reading import read_pattern
from tracker.session.looking import look, plan_at
from tracker.session.session import Session
from tracker.session.state import State
from tracker.writing.as_worked import as_worked, without_until
from tracker.writing.compose import compose
from tracker.writing.markdown import markdown
from tracker.writing.plain import plain_text
from tracker.writing.record import record

from .test_command import hookside

DISCS = """
title = "Sampler"
terms = "US"
[[yarn]]
letter = "A"
name = "cotton"
colour = "plum"
[[part]]
name = "Disc"
make = 2
worked = "spiral"
note = "Stuff it before Rnd 8. The wall is Rnds 4-7."
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: inc in each st around. (12)
Rnd 3: [sc, inc] x 6. (18)
Rnds 4-6: sc in each st around. (18)
Rnd 7: sc in each st around until piece measures 6 cm.
Rnd 8: [sc, sc2tog] x 6. (12) Fasten off.
'''
[[part]]
name = "Making up"
steps = ["Sew both together along Rnd 8."]
"""


@pytest.fixture
def disc(tmp_path):
    session = begin_text(tmp_path, DISCS)
    yield session
    session.close()


def improvise(session, title, words=""):
    choices = session.improvising().choices
    session.improvise(next(one for one in choices if one.title == title), words)


def written(session):
    """The pattern as worked and the lines of its record, from the file."""
    found = look(session.path)
    plan = plan_at(session.path, found)
    told = record(plan, found.history.state, found.head.started, 0)
    return as_worked(plan, found.history.state), told.blocks[0].items


def rounds(pattern, part=0):
    return pattern.parts[part].rounds.splitlines()


def counts(pattern):
    return [
        (r.label, str(r.verdict), r.makes)
        for part in check_pattern(pattern).parts
        for r in part.rounds
    ]


@pytest.mark.parametrize("name", library.demo_patterns())
def test_a_piece_just_begun_gives_its_pattern_in_its_size(name):
    pattern = load_pattern(library.find(name))
    sizes = pattern.sizes or ("",)
    for index in sorted({0, len(sizes) - 1}):
        size = sizes[index]
        plan = make_plan(pattern, size)
        mine = as_worked(plan, State())
        assert mine.sizes == ((size,) if size else ())
        designed = {part.name: part for part in check_pattern(pattern).parts}
        for part, checked in zip(mine.parts, check_pattern(mine).parts, strict=True):
            before = [(r.label, r.makes[index]) for r in designed[part.name].rounds]
            assert [(r.label, r.makes[0]) for r in checked.rounds] == before
        for form in (plain_text, markdown)[index > 0 :]:
            back = read_pattern(form(compose(mine, check_pattern(mine))), "t", "t")
            assert counts(back.pattern) == counts(mine)
            assert [p.rounds for p in back.pattern.parts] == [p.rounds for p in mine.parts]


def test_a_stitch_count_after_a_chain_is_no_figure_for_two_sizes(tmp_path):
    source = """
title = "Pot"
terms = "US"
sizes = ["small", "large"]
[[part]]
name = "Base"
rounds = '''
Rnd 1: Ch 1, 8 (9) sc in magic ring, join. [8 (9) sts]
Rnd 2: Ch 1, 2 sc in each st around, join. [16 (18) sts]
'''
"""
    mine = as_worked(make_plan(load_text(source), "large"), State())
    assert rounds(mine) == [
        "Rnd 1: Ch 1, 9 sc in magic ring, join. [9 sts]",
        "Rnd 2: Ch 1, 2 sc in each st around, join. [18 sts]",
    ]


def test_rounds_changed_added_and_left_out_are_numbered_in_one_row(disc):
    disc.go_to_round(3)
    improvise(disc, "Rnd 3 otherwise", "[sc, inc] x 6. (18)")
    improvise(disc, "a round of yours before Rnd 3", "sc in each st around. (12)")
    disc.go_to_round(4)
    improvise(disc, "Rnd 4 left out")
    pattern, told = written(disc)
    assert rounds(pattern) == [
        "Rnd 1: 6 sc in magic ring. (6)",
        "Rnd 2: inc in each st around. (12)",
        "Rnd 3: sc in each st around. (12)",
        "Rnd 4: [sc, inc] x 6. (18)",
        "Rnds 5-6: sc in each st around. (18)",
        "Rnd 7: sc in each st around until piece measures 6 cm.",
        "Rnd 8: [sc, sc2tog] x 6. (12) Fasten off.",
    ]
    assert pattern.parts[0].make == 2
    assert any("numbered as they were worked" in line for line in told)
    assert not {verdict for _, verdict, _ in counts(pattern)} & {"differs", "unread"}


def test_a_length_that_was_reached_stands_as_often_as_it_was_worked(disc):
    disc.go_to_round(7)
    disc.turn_pace()
    disc.turn_pace()
    for _ in range(3):
        disc.next()
        disc.next()
    assert "until piece measures" in rounds(written(disc)[0])[-2]
    disc.length_reached()
    pattern, _ = written(disc)
    last = disc.state.times(0, 0, 6)
    assert last >= 3
    assert rounds(pattern)[-2:] == [
        f"Rnds 4-{6 + last}: sc in each st around. (18)",
        f"Rnd {7 + last}: [sc, sc2tog] x 6. (12) Fasten off.",
    ]
    assert pattern.parts[0].note == f"Stuff it before Rnd {7 + last}. The wall is Rnds 4-7."
    assert counts(pattern)[-1] == (f"Rnd {7 + last}", "agrees", (12,))


def test_copies_that_differ_are_parts_of_their_own(disc):
    disc.go_to_part(0, 1)
    disc.go_to_round(3)
    improvise(disc, "Rnd 3 otherwise", "[sc 2, inc] x 4. (16)")
    improvise(disc, "Rnd 3 as printed again")
    assert [part.name for part in written(disc)[0].parts] == ["Disc", "Making up"]
    improvise(disc, "Rnd 3 otherwise", "sc in each st around. (12)")
    disc.go_to_part(0, 0)
    pattern, _ = written(disc)
    named = [(part.name, part.make) for part in pattern.parts]
    assert named == [("Disc, copy 1", 1), ("Disc, copy 2", 1), ("Making up", 1)]
    assert rounds(pattern, 0)[2] == "Rnd 3: [sc, inc] x 6. (18)"
    assert rounds(pattern, 1)[2] == "Rnd 3: sc in each st around. (12)"


def test_of_alternatives_only_the_one_chosen_is_there(tmp_path):
    pattern = load_pattern(library.find("tea-cosy"))
    session = Session.start(pattern, "4 cups", tmp_path)
    session.choose(2)
    mine, _ = written(session)
    session.close()
    assert [part.name for part in mine.parts] == ["Body", "Berry trim", "Making up"]
    assert mine.parts[1].choose == ""
    assert "46 cm" in mine.about
    assert "40 (46" not in mine.about


def test_notes_counts_lengths_and_yarn_are_told_by_the_names_that_are_written(disc):
    disc.go_to_round(2)
    improvise(disc, "a round of yours before Rnd 2", "sc in each st around. (6)")
    disc.go_to_round(4)
    disc.go_to_stitch(5)
    disc.note("tighter *here* [sic]")
    disc.measure("4 cm")
    disc.weigh("50 g")
    disc.go_to_stitch(18)
    disc.enter_count(17)
    disc.weigh("43 g")
    pattern, told = written(disc)
    text = "\n".join(told)
    assert re.search(r"Begun on \d{1,2} \w+ \d{4}, not finished\.", text)
    assert "Used of A, plum: 7.0 g between weighings." in text
    assert "Counted 17 in place of 18 at the end of Disc, copy 1 of 2, Rnd 5." in text
    assert "Noted: tighter *here* [sic] (Disc, copy 1 of 2, Rnd 5, 5 made)" in text
    assert "Measured: 4 cm (Disc, copy 1 of 2, Rnd 5, 5 made)" in text
    found = look(disc.path)
    plan = plan_at(disc.path, found)
    section = record(plan, found.history.state, found.head.started, 0)
    for form in (plain_text, markdown):
        back = read_pattern(form(compose(pattern, check_pattern(pattern), (), [section])), "t", "t")
        assert counts(back.pattern) == counts(pattern)
        assert [part.name for part in back.pattern.parts] == ["Disc", "Making up"]


@pytest.mark.parametrize(
    ("words", "until", "left"),
    [
        (
            "ch 1, hdc in each st around; join. Rep this rnd until piece measures 15 cm.",
            "until piece measures 15 cm",
            "ch 1, hdc in each st around; join.",
        ),
        (
            "Sc in each st around until piece measures 9.5 cm. Fasten off.",
            "until piece measures 9.5 cm",
            "Sc in each st around. Fasten off.",
        ),
        (
            "hdc in each st; repeat until it is 4 cm high",
            "until it is 4 cm high",
            "hdc in each st",
        ),
        ("sc around", "until it fits", "sc around"),
    ],
)
def test_the_words_that_end_an_open_length_go(words, until, left):
    assert without_until(words, until) == left


def test_the_command_writes_a_piece_as_worked_and_as_designed(own_home):
    pattern = load_pattern(library.find("headband"))
    Session.start(pattern, "1 year", own_home / "pieces", "For Ida").close()
    status, out, err = hookside("write", "for-ida")
    assert (status, err) == (0, "")
    assert "In the size 1 year, begun on " in out
    assert "Foundation: With A, ch 72.\n" in out
    assert "\nSize: 1 year\n" in out
    assert "Take a baby's hat off indoors" in out
    assert hookside("write", "for-ida", "--designed") == hookside("write", "headband")


def test_it_is_pure():
    pattern = load_pattern(library.find("dusk-moth"))
    plan = make_plan(pattern)
    assert as_worked(plan, State()) == as_worked(plan, State())
    assert plan.pattern is pattern
    assert all(isinstance(part, Part) for part in as_worked(plan, State()).parts)


def test_lines_that_only_change_colour_stay_between_their_rounds(tmp_path):
    source = """
title = "Ring"
terms = "US"
[[part]]
name = "Disc"
worked = "spiral"
rounds = '''
Rnd 1: With A, 6 sc in magic ring. (6)
Change to B.
Rnd 2: inc in each st around. (12)
'''
"""
    session = begin_text(tmp_path, source)
    found = as_worked(session.plan, session.state).parts[0].rounds.splitlines()
    assert found == [
        "Rnd 1: With A, 6 sc in magic ring. (6)",
        "Change to B.",
        "Rnd 2: inc in each st around. (12)",
    ]
    session.close()
