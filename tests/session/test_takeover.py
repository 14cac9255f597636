"""Two windows at one piece; a piece changed from outside, and the maker's choice."""

import errno

import pytest
import scene
from faults import FaultyDisk

from tracker.session.access import InUse
from tracker.session.looking import look

NAME = "pot-hat-trial.piece.toml"
TAKEN = f"{NAME} was taken over in another window: this one only looks on now."


@pytest.fixture
def piece(tmp_path):
    session = scene.start(tmp_path)
    scene.press(session, 3)
    yield session
    session.close()


def test_a_piece_is_taken_over_with_all_that_was_pressed(piece):
    mine = scene.reopen(piece.path, take_over=True)
    assert (mine.state, mine.can_undo) == (piece.state, 3)
    mine.next()
    assert mine.glance().trouble == ""
    mine.close()
    assert look(piece.path).history.done == 4


def test_the_first_window_notices_between_presses_and_only_looks_on(piece):
    mine = scene.reopen(piece.path, take_over=True)
    piece.retry()
    assert piece.notices == (TAKEN,)
    before = piece.state
    for action in (piece.next, piece.back, piece.undo, piece.redo, piece.mark):
        action()
        assert piece.state == before
        assert "taken over in another window" in piece.glance().last_press
    piece.close()
    assert not list(piece.path.parent.glob("*.ours-*"))
    mine.close()
    assert look(piece.path).history.done == 3


def test_the_press_that_notices_is_kept_in_a_copy_beside(piece):
    mine = scene.reopen(piece.path, take_over=True)
    mine.back()
    piece.next()
    assert piece.glance().trouble == ""
    assert piece.notices == (
        TAKEN,
        "What it had not saved is kept in pot-hat-trial.ours-1.piece.toml.",
    )
    kept = scene.reopen(piece.path.with_name("pot-hat-trial.ours-1.piece.toml"))
    assert (kept.state, kept.can_undo) == (piece.state, 4)
    kept.close()
    mine.next()
    assert (mine.notices, mine.can_undo) == ((), 5)
    mine.close()


def test_a_disk_that_is_full_just_then_loses_nothing(piece):
    disk = FaultyDisk()
    piece.close()
    first = scene.reopen(piece.path, disk=disk)
    mine = scene.reopen(piece.path, take_over=True)
    disk.break_next(errno.ENOSPC, lasting=True)
    first.next()
    assert first.glance().trouble.startswith("Not saved: the disk is full.")
    disk.heal()
    first.retry()
    assert first.notices[0] == TAKEN
    assert first.glance().trouble == ""
    kept = scene.reopen(piece.path.with_name("pot-hat-trial.ours-1.piece.toml"))
    assert kept.can_undo == 4
    kept.close()
    first.close()
    mine.close()


def test_after_a_take_over_a_third_window_is_told_and_can_take_over_too(piece):
    second = scene.reopen(piece.path, take_over=True)
    with pytest.raises(InUse):
        scene.reopen(piece.path)
    piece.close()
    with pytest.raises(InUse):
        scene.reopen(piece.path)
    third = scene.reopen(piece.path, take_over=True)
    third.next()
    second.retry()
    assert second.notices == (TAKEN,)
    second.close()
    third.close()
    assert look(piece.path).history.done == 4


def test_taking_over_what_nobody_has_is_opening_it(piece):
    piece.close()
    mine = scene.reopen(piece.path, take_over=True)
    assert mine.can_undo == 3
    mine.close()


@pytest.fixture
def split(piece):
    """A piece that something else changed while it was open: theirs has 2 steps, ours 5."""
    path = piece.path
    path.write_bytes(path.read_bytes().replace(b'steps = "3"', b'steps = "2"'))
    scene.press(piece, 2)
    return piece, path


def test_where_nothing_was_changed_there_is_nothing_to_choose(piece):
    assert piece.versions() == ()
    piece.keep("theirs")
    assert piece.glance().last_press == "there is only one version"
    assert piece.can_undo == 3


def test_both_versions_are_shown_with_where_they_stand(split):
    piece, path = split
    ours, theirs = piece.versions()
    assert (ours.which, ours.path) == ("ours", piece.path)
    assert (theirs.which, theirs.path) == ("theirs", path)
    assert ours.words == "Body, Rnd 1, 5 stitches made"
    assert theirs.words == "Body, Rnd 1, 2 stitches made"
    assert ours.when


def test_keeping_ours_puts_it_back_and_theirs_aside(split):
    piece, path = split
    theirs = path.read_bytes()
    piece.keep("ours")
    assert (piece.path, piece.versions(), piece.can_undo) == (path, (), 5)
    assert path.with_name(f"{NAME}.aside-1").read_bytes() == theirs
    assert not list(path.parent.glob("*.ours-*.toml"))
    piece.next()
    piece.close()
    assert look(path).history.done == 6


def test_keeping_theirs_goes_on_there_and_puts_ours_aside(split):
    piece, path = split
    piece.keep("theirs")
    assert (piece.path, piece.versions()) == (path, ())
    assert piece.glance().made == 2
    assert not list(path.parent.glob("*.ours-*.toml"))
    assert look(path.with_name(f"{NAME}.aside-1")).history.done == 5
    piece.next()
    assert piece.glance().trouble == ""
    piece.close()
    again = scene.reopen(path)
    assert (again.glance().made, again.notices) == (3, ())
    again.close()


def test_a_changed_file_that_is_no_piece_cannot_be_kept(piece):
    path = piece.path
    path.write_text("not a piece")
    scene.press(piece, 1)
    ours, theirs = piece.versions()
    assert "cannot be opened" in theirs.words
    piece.keep("theirs")
    assert "cannot be opened" in piece.glance().last_press
    assert piece.versions() == (ours, theirs)
    piece.keep("ours")
    assert piece.path == path
    assert piece.can_undo == 4
