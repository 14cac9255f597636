"""A piece that something else changed while it was open: told, and the maker chooses."""

import pytest

from tests.screens.stage import begin, on_stage, text
from tracker.screens.actions import DEFAULT_KEYS
from tracker.screens.plain import PlainWork
from tracker.screens.versions import TOLD
from tracker.session.looking import look
from tracker.session.session import Session


def changed_meanwhile(folder):
    """A piece with 5 presses of which a synced folder brings back a version with 3."""
    session = begin(folder)
    for _ in range(3):
        session.next()
    older = session.path.read_bytes()
    session.next()
    beside = session.path.with_name("arriving")
    beside.write_bytes(older)
    beside.replace(session.path)
    session.next()
    return session


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30)])
@pytest.mark.parametrize(
    ("keys", "kept", "aside"), [(["space"], 5, 3), (["down", "space"], 3, 5), (["escape"], 5, None)]
)
async def test_the_maker_chooses_and_the_other_version_is_kept(tmp_path, size, keys, kept, aside):
    session = changed_meanwhile(tmp_path)
    where = session.path.with_name("hedgerow-tea-cosy.piece.toml")
    async with on_stage(session, size) as (app, pilot):
        seen = " ".join(text(app).split())
        assert "There are two versions of your piece" in seen
        assert "Body, Rnd 1, 3 stitches made" in seen
        assert "Body, Rnd 1, 1 stitch made" in seen
        await pilot.press(*keys)
        await pilot.pause()
        assert session.can_undo == kept
        if aside is None:
            assert look(where).history.done == 3
        else:
            assert session.path == where
            (other,) = tmp_path.glob("*.aside-1")
            assert look(other).history.done == aside


def test_line_by_line_it_is_told_and_a_number_chooses(tmp_path):
    session = changed_meanwhile(tmp_path)
    work = PlainWork(session, DEFAULT_KEYS)
    said = [*work.retry()]
    assert "There are two versions of your piece." in said
    assert TOLD in said
    assert any(line.startswith("2: Go on with the other one. Body, Rnd 1, 1") for line in said)
    for key in ("2", "space"):
        said = [*work.press(key)]
    assert session.can_undo == 3
    assert any("kept in" in line for line in work.retry())
    session.close()


OLD = '{} = {{ when = 2020-03-02T10:15:00+00:00, round = [1, 1, 1, 1], steps = "9" }}\n'
"""A line by hand, with a number."""

COPIES = [
    "hedgerow-tea-cosy (conflicted copy 2026-03-02).piece.toml",
    "hedgerow-tea-cosy.piece (another machine's copy).toml",
    "hedgerow-tea-cosy.piece.conflict-20260302-101504.toml",
    "hedgerow-tea-cosy-2.piece.toml",
]


def with_copy(folder, name):
    """A piece with 5 presses, beside which lies a version with 3 under another name."""
    session = begin(folder)
    for _ in range(3):
        session.next()
    session.path.with_name(name).write_bytes(session.path.read_bytes())
    session.next()
    session.next()
    return session


@pytest.mark.parametrize("name", COPIES)
@pytest.mark.parametrize(("keys", "kept", "aside"), [(["space"], 5, 3), (["down", "space"], 3, 5)])
async def test_a_copy_that_a_synced_folder_leaves_is_told_and_chosen(
    tmp_path, name, keys, kept, aside
):
    session = with_copy(tmp_path, name)
    where = session.path
    async with on_stage(session) as (app, pilot):
        await pilot.pause()
        assert "There are two versions of your piece" in text(app)
        assert "as a synced folder leaves one" in " ".join(text(app).split())
        await pilot.press(*keys)
        await pilot.pause()
        assert (session.path, session.can_undo) == (where, kept)
        session.next()
    assert look(where).history.done == kept + 1
    (other,) = tmp_path.glob("*.aside-1")
    assert look(other).history.done == aside
    assert not where.with_name(name).exists()


@pytest.mark.parametrize("name", [COPIES[0], COPIES[3]])
@pytest.mark.parametrize(("keys", "kept", "aside"), [(["space"], 3, 5), (["down", "space"], 5, 3)])
async def test_whichever_was_opened_the_piece_keeps_its_name(tmp_path, name, keys, kept, aside):
    session = with_copy(tmp_path, name)
    where = session.path
    session.close()
    copy = Session.open(where.with_name(name))
    async with on_stage(copy) as (app, pilot):
        await pilot.pause()
        assert f"{name} is another version of {where.name}" in " ".join(text(app).split())
        await pilot.press(*keys)
        await pilot.pause()
        assert (copy.path, copy.can_undo) == (where, kept)
        copy.next()
    assert look(where).history.done == kept + 1
    (other,) = tmp_path.glob("*.aside-1")
    assert (other.name, look(other).history.done) == (f"{where.name}.aside-1", aside)
    assert not where.with_name(name).exists()


@pytest.mark.parametrize("size", [(40, 12), (80, 24)])
async def test_esc_decides_nothing_which_is_said_and_asked_again_next_time(tmp_path, size):
    path = with_copy(tmp_path, COPIES[0]).path
    async with on_stage(Session.open(path, take_over=True), size) as (app, pilot):
        await pilot.pause()
        assert "asks again next time" in " ".join(text(app).split())
        await pilot.press("escape", "space")
    assert look(path).history.done == 6
    async with on_stage(Session.open(path), size) as (app, pilot):
        await pilot.pause()
        assert "There are two versions of your piece" in text(app)


async def test_where_each_version_was_worked_last_is_told(tmp_path):
    session = with_copy(tmp_path, COPIES[0])
    session.path.with_name(COPIES[0]).write_text(
        session.path.with_name(COPIES[0]).read_text() + OLD.format(4), encoding="utf-8"
    )
    async with on_stage(session) as (app, pilot):
        await pilot.pause()
        seen = " ".join(text(app).split())
    assert f"3 stitches made, last worked {look(session.path).when[:10]}" in seen
    assert "7 stitches made, last worked 2020-03-02 10:15." in seen


async def test_a_version_that_follows_the_pattern_elsewhere_is_known_too(tmp_path):
    session = with_copy(tmp_path, COPIES[0])
    session.follow(tmp_path / "patterns" / "cosy.toml")
    async with on_stage(session) as (app, pilot):
        await pilot.pause()
        assert "There are two versions of your piece" in text(app)


async def test_a_second_piece_of_the_same_pattern_is_no_version(tmp_path):
    first = begin(tmp_path)
    first.next()
    first.close()
    older = first.path.read_bytes().replace(b"started = 2", b"started = 1", 1)
    first.path.with_name("hedgerow-tea-cosy-2.piece.toml").write_bytes(older)
    again = Session.open(first.path)
    async with on_stage(again) as (app, pilot):
        await pilot.pause()
        assert "two versions" not in text(app)
        assert again.versions() == ()
