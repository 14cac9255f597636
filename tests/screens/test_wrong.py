"""A wrong count on the screen: told, explained, put right."""

import pytest

from tests.screens.stage import begin, on_stage, text
from tests.screens.test_plain import plain
from tracker.screens.work import WorkScreen
from tracker.screens.wrong import Remedies


def miscounted(folder):
    """A cosy whose round 7 of 56 was counted as 54."""
    session = begin(folder)
    session.go_to_round(7)
    session.go_to_stitch(56)
    session.next()
    session.enter_count(54)
    return session


async def pick(pilot, app, words):
    """Pick the remedy whose title begins so."""
    titles = [one.title for one in app.screen._offered]
    at = next(n for n, title in enumerate(titles) if title.startswith(words))
    await pilot.press(*["down"] * at, "space")
    await pilot.pause()


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_a_wrong_count_is_told_and_explained_at_every_size(tmp_path, size):
    async with on_stage(miscounted(tmp_path), size) as (app, pilot):
        assert "w: 54 in Rnd 7, not 56: 2 too few" in text(app)
        await pilot.press("w")
        await pilot.pause()
        assert isinstance(app.screen, Remedies)
        seen = " ".join(text(app).split())
        assert "54 in Rnd 7, not 56: 2 too few" in seen
        assert "A right repeat: 5 hdc, 2 hdc from one foot: 7 stitches." in seen
        assert "You missed the increase in 2 of the 8 repeats." in seen


@pytest.mark.parametrize(
    ("counted", "much"), [(5, "3 stitches too few"), (9, "one stitch too many")]
)
async def test_a_ring_has_no_round_below_to_look_at(tmp_path, counted, much):
    session = begin(tmp_path)
    session.go_to_stitch(8)
    session.next()
    session.enter_count(counted)
    async with on_stage(session) as (app, pilot):
        await pilot.press("w")
        await pilot.pause()
        seen = " ".join(text(app).split())
        assert f"You made {much} into the ring." in seen
        assert "round below" not in seen


async def test_the_next_round_is_shown_before_it_is_accepted_and_then_told(tmp_path):
    session = miscounted(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("w")
        await pilot.pause()
        seen = " ".join(text(app).split())
        assert "Rnd 8: work stitches 17 and 49 into the same st as the one before" in seen
        assert session.glance().right == ""
        await pick(pilot, app, "Go on, and come right")
        assert isinstance(app.screen, WorkScreen)
        assert "work stitches 17 and 49" in text(app)
        session.go_to_stitch(16)
        await pilot.press("p")
        assert "in the same st once more" in text(app)


async def test_rounds_are_ripped_back_by_number(tmp_path):
    session = miscounted(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("w")
        await pilot.pause()
        await pick(pilot, app, "Rip back several")
        assert "Rip back rounds: _" in text(app)
        await pilot.press("3", "space")
        assert session.glance().round_label == "Rnd 5"


async def test_a_guess_goes_back_there_and_escape_changes_nothing(tmp_path):
    session = miscounted(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("w", "escape")
        await pilot.pause()
        assert session.glance().round_label == "Rnd 8"
        await pilot.press("w")
        await pilot.pause()
        await pick(pilot, app, "You missed")
        assert (session.glance().round_label, session.glance().made) == ("Rnd 7", 5)


async def test_it_can_still_be_put_right_from_within_the_next_round(tmp_path):
    session = miscounted(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("space", "space", "space", "w")
        await pilot.pause()
        seen = " ".join(text(app).split())
        assert "54 in Rnd 7, not 56: 2 too few" in seen
        assert "come right" not in seen
        await pick(pilot, app, "Rip back the whole")
        assert (session.glance().round_label, session.glance().made) == ("Rnd 7", 0)


async def test_a_round_that_puts_it_right_is_not_asked_about_again(tmp_path):
    session = miscounted(tmp_path)
    session.come_right()
    session.next()
    async with on_stage(session) as (app, pilot):
        await pilot.press("w")
        assert isinstance(app.screen, WorkScreen)
        assert "a count is entered at a round's end" in text(app)


async def test_without_a_wrong_count_one_is_asked_for(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(2)
    async with on_stage(session) as (app, pilot):
        await pilot.press("w")
        assert "Counted: _" in text(app)


@pytest.mark.parametrize("key", ["c", "w"])
async def test_within_a_round_no_number_is_typed_in_vain(tmp_path, key):
    async with on_stage(begin(tmp_path)) as (app, pilot):
        await pilot.press("space", key)
        assert "Counted" not in text(app)
        assert "a count is entered at a round's end" in text(app)


def test_within_a_round_no_number_is_asked_line_by_line(own_home):
    begin(own_home / "pieces").close()
    lines = plain(b" c")
    assert lines[-1].startswith("a count is entered at a round's end")


def test_line_by_line_the_remedies_are_numbered(own_home):
    miscounted(own_home / "pieces").close()
    lines = plain(b"w4 ")
    told = "54 in Rnd 7, not 56: 2 too few. A right repeat: 5 hdc, 2 hdc from one foot: 7 stitches."
    assert told in lines
    assert any(line.startswith("4: Go on, and come right") for line in lines)
    assert "work stitches 17 and 49" in lines[-1]
    assert plain(b"u")[-1].startswith("undone")
