"""A pattern file that is changed while its piece is worked: told, and the place carried over."""

import pytest

from tests.screens.stage import on_stage, text
from tests.screens.test_plain import plain
from tests.session.test_improvise import RING, improvise
from tracker.pattern.load import load_text
from tracker.screens.work import WorkScreen
from tracker.session.looking import look
from tracker.session.place import Place
from tracker.session.session import Session

PATTERN = (
    RING.format(make=2)
    + '''
[[part]]
name = "Stalk"
worked = "spiral"
rounds = """
Rnd 1: 5 sc in magic ring. (5)
Rnd 2: sc in each st around. (5)
"""
'''
)


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "sampler.toml"
    path.write_text(PATTERN, encoding="utf-8")
    return path


@pytest.fixture
def session(file, own_home):
    """A piece of that file, 7 steps into round 3 of its first disc."""
    begun = Session.start(load_text(PATTERN), "", own_home / "pieces", file=file)
    begun.go_to_round(3)
    begun.note("loose here")
    for _ in range(7):
        begun.next()
    yield begun
    begun.close()


def change(file, *pairs):
    words = file.read_text(encoding="utf-8")
    for old, new in pairs:
        assert old in words
        words = words.replace(old, new)
    file.write_text(words, encoding="utf-8")


def test_a_file_that_says_the_same_is_no_news(session, file):
    assert session.changed_file() is None
    file.write_text(PATTERN.replace("\n", "\r\n"), encoding="utf-8", newline="")
    assert session.changed_file() is None


def test_what_is_different_is_told_before_anything_is_done(session, file):
    change(file, ("Rnd 2: inc in each st around. (12)", "Rnd 2: [sc, inc] x 3. (9)"))
    change(file, ("Rnds 4-6", "Rnds 4-5"), ("Rnd 7", "Rnd 6"), ("Rnd 8", "Rnd 7"))
    before = session.path.read_bytes()
    found = session.changed_file()
    assert found.words.startswith("Disc has 1 round fewer; Disc, Rnd 2 reads otherwise; ")
    assert found.place == "Disc, copy 1 of 2, Rnd 3, 10 stitches made"
    assert session.path.read_bytes() == before


def test_the_place_is_carried_over_by_part_and_round(session, file):
    stalk = PATTERN[PATTERN.index('[[part]]\nname = "Stalk"') :]
    other = stalk.replace("Stalk", "Root")
    change(file, ('[[part]]\nname = "Disc"', f'{other}\n[[part]]\nname = "Disc"'))
    session.carry_over(session.changed_file())
    seen = session.glance()
    assert (seen.part, seen.round_label, seen.place) == ("Disc", "Rnd 3", Place(1, 0, 2, 7))
    assert seen.parts[0].name == "Root"
    session.go_to_stitch(0)
    assert session.note_here() == "loose here"
    assert session.changed_file() is None


def test_in_a_round_that_reads_otherwise_as_many_stitches_are_made(session, file):
    made = session.glance().made
    change(file, ("Rnd 3: [sc, inc] x 6. (18)", "Rnd 3: sc in next 6 sts, inc x 6. (18)"))
    session.carry_over(session.changed_file())
    assert (session.glance().round_label, session.glance().made) == ("Rnd 3", made)


def test_every_press_can_still_be_taken_back_and_done_again(session, file):
    change(file, ("Rnd 3: [sc, inc] x 6. (18)", "Rnd 3: sc in next 6 sts, inc x 6. (18)"))
    session.undo()
    done = session.can_undo
    session.carry_over(session.changed_file())
    assert (session.can_undo, look(session.path).history.undone) == (done, 1)
    made = session.glance().made
    session.redo()
    assert (look(session.path).history.undone, session.glance().made >= made) == (0, True)
    while session.can_undo:
        session.undo()
    assert session.glance().place == Place(0, 0, 0, 0)


def test_improvised_rounds_are_carried_over(session, file):
    improvise(session, "a round of yours before Rnd 4", "sc around (18)")
    session.go_to_round(2)
    session.next_round()
    session.next_round()
    change(file, ("Rnds 4-6", "Rnds 4-9"), ("Rnd 7", "Rnd 10"), ("Rnd 8", "Rnd 11"))
    session.carry_over(session.changed_file())
    assert session.glance().round_label == "Rnd 3a"
    labels = [one.label for one in session.plan.parts[0].of(0).rounds]
    assert labels[2:5] == ["Rnd 3", "Rnd 3a", "Rnd 4"]


def test_a_part_that_is_gone_leaves_the_maker_where_they_were_before(session, file):
    session.go_to_part(1, 0)
    session.next()
    change(file, (PATTERN[PATTERN.index('[[part]]\nname = "Stalk"') :], ""))
    found = session.changed_file()
    assert found.differences == ("there is no Stalk any more",)
    session.carry_over(found)
    assert session.glance().place == Place(0, 0, 2, 7)


def test_it_is_in_the_file_and_the_piece_as_it_was_is_kept(session, file):
    change(file, ("(18)", "(18)  "))
    before = session.path.read_bytes()
    session.carry_over(session.changed_file())
    kept = next(session.path.parent.glob("*.before-*"))
    assert kept.read_bytes() == before
    assert kept.name in session.notices[-1]
    place = session.glance().place
    session.close()
    again = Session.open(session.path)
    assert (again.notices, again.glance().place) == ((), place)
    assert again.changed_file() is None
    again.close()


def test_what_is_passed_over_is_not_told_again_until_it_changes(session, file):
    change(file, ("Rnd 2: inc in each st around.", "Rnd 2: 2 sc in each st around."))
    session.pass_over(session.changed_file())
    session.close()
    again = Session.open(session.path)
    assert again.changed_file() is None
    change(file, ("Rnd 2: 2 sc in each st around.", "Rnd 2: inc x 6."))
    assert again.changed_file() is not None
    again.close()


@pytest.mark.parametrize(
    "words", ["", "title = 3", 'title = "Other"\n' + PATTERN.split("\n", 2)[2], "\0"]
)
def test_a_file_that_is_no_such_pattern_any_more_is_passed_over(session, file, words):
    file.write_text(words, encoding="utf-8")
    assert session.changed_file() is None


def test_a_file_that_is_gone_or_a_folder_is_passed_over(session, file):
    file.unlink()
    assert session.changed_file() is None
    file.mkdir()
    assert session.changed_file() is None


async def test_on_the_screen_it_is_asked_first(session, file):
    change(file, ("Rnds 4-6", "Rnds 4-5"), ("Rnd 7", "Rnd 6"), ("Rnd 8", "Rnd 7"))
    async with on_stage(session) as (app, pilot):
        seen = " ".join(text(app).split())
        assert "The pattern file has changed" in seen
        assert "Disc has 1 round fewer" in seen
        assert "You then stand at Disc, copy 1 of 2, Rnd 3, 10 stitches made." in seen
        await pilot.press("space")
        await pilot.pause()
        while not isinstance(app.screen, WorkScreen):
            await pilot.press("space")
            await pilot.pause()
        assert session.glance().rounds == 7
        assert "Rnd 3 of 7" in text(app)


async def test_escape_leaves_it_for_now(session, file):
    change(file, ("Rnds 4-6", "Rnds 4-5"), ("Rnd 7", "Rnd 6"), ("Rnd 8", "Rnd 7"))
    async with on_stage(session) as (app, pilot):
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
        assert session.glance().rounds == 8
    assert not list(session.path.parent.glob("*.before-*"))


def test_line_by_line_it_is_a_number(session, file):
    session.close()
    change(file, ("Rnds 4-6", "Rnds 4-5"), ("Rnd 7", "Rnd 6"), ("Rnd 8", "Rnd 7"))
    lines = plain(b"1 ", str(file))
    assert any(line.startswith("The pattern file has changed: Disc has") for line in lines)
    assert "1: Go on with the changed pattern. " in "\n".join(lines)
    assert "carried over to Disc, copy 1 of 2, Rnd 3" in lines[-1]
    assert not any("has changed" in line for line in plain(b"", str(file)))


def test_a_piece_whose_pattern_file_moved_is_found_by_the_file_that_is_named(session, file):
    session.close()
    moved = file.with_name("elsewhere.toml")
    file.rename(moved)
    change(moved, ("Rnd 2: inc in each st around.", "Rnd 2: 2 sc in each st around."))
    lines = plain(b"", str(moved))
    assert any("Disc, Rnd 2 reads otherwise" in line for line in lines)


def test_a_pattern_file_that_was_moved_is_in_the_piece_at_once(session, file):
    moved = file.rename(file.with_name("moved.toml"))
    session.follow(moved)
    assert look(session.path).head.file == str(moved)
    assert look(session.path).history.done == session.can_undo
    change(moved, ("Rnd 2: inc in each st around. (12)", "Rnd 2: [sc, inc] x 3. (9)"))
    assert session.changed_file() is not None
