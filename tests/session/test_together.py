"""More than one at the same file: a second window, an editor, a synced folder, a kill."""

import os
import random
import shutil
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest
import scene

from tracker.session.access import InUse, StoreError
from tracker.session.looking import glance_at, look

HERE = Path(__file__).parent
ROOT = HERE.parents[1]


@pytest.fixture
def piece(tmp_path):
    session = scene.start(tmp_path)
    scene.press(session, 3)
    yield session
    session.close()


def test_a_second_window_is_told_and_the_first_goes_on(piece):
    with pytest.raises(InUse, match=r"^pot-hat-trial\.piece\.toml is open in another window"):
        scene.reopen(piece.path)
    piece.next()
    assert piece.glance().trouble == ""


def test_looking_needs_no_lock_and_changes_nothing(piece):
    before = piece.path.read_bytes()
    seen = glance_at(piece.path, reading=scene.reading)
    assert (seen.made, seen.trouble) == (3, "")
    assert piece.path.read_bytes() == before


def test_once_closed_it_can_be_opened_again(piece):
    piece.close()
    again = scene.reopen(piece.path)
    assert again.can_undo == 3
    again.close()


def edit(path):
    path.write_bytes(path.read_bytes().replace(b'steps = "3"', b'steps = "2"'))


def test_a_file_changed_meanwhile_is_left_and_ours_is_kept_beside(piece):
    theirs = piece.path
    edit(theirs)
    changed = theirs.read_bytes()
    scene.press(piece, 2)
    assert theirs.read_bytes() == changed
    ours = theirs.with_name("pot-hat-trial.ours-1.piece.toml")
    assert piece.path == ours
    (notice,) = piece.notices
    assert notice == (
        "pot-hat-trial.piece.toml was changed by something else meanwhile: it is left as it is. "
        "Your own work goes on in pot-hat-trial.ours-1.piece.toml."
    )
    assert piece.glance().trouble == ""
    piece.close()
    again = scene.reopen(ours)
    assert again.can_undo == 5
    again.close()


def test_a_file_put_in_its_place_is_noticed_too(piece, tmp_path):
    other = tmp_path / "other"
    shutil.copy(piece.path, other)
    edit(other)
    other.replace(piece.path)
    piece.next()
    assert piece.path.name == "pot-hat-trial.ours-1.piece.toml"


@pytest.mark.parametrize("replaced", [False, True])
def test_a_file_only_touched_or_copied_back_is_still_ours(piece, tmp_path, replaced):
    path = piece.path
    if replaced:
        shutil.copy(path, tmp_path / "other")
        (tmp_path / "other").replace(path)
    else:
        os.utime(path, (1, 1))
    scene.press(piece, 2)
    assert (piece.path, piece.notices) == (path, ())
    assert look(path).history.done == 5


def copied(piece, size=None):
    """A copy of the piece beside it, perhaps cut off."""
    copy = piece.path.with_name("pot-hat-trial (copy).piece.toml")
    copy.write_bytes(piece.path.read_bytes()[:size])
    return copy


def test_a_copy_that_appears_while_at_work_disturbs_nothing_and_is_told_at_the_next_opening(piece):
    copy = copied(piece)
    older = copy.read_bytes()
    scene.press(piece, 2)
    piece.retry()
    assert (piece.notices, piece.versions(), piece.glance().trouble) == ((), (), "")
    piece.close()
    again = scene.reopen(piece.path)
    again.look_beside()
    assert [version.words[-20:] for version in again.versions()] == [
        "Rnd 1, 5 stitches made"[-20:],
        "Rnd 1, 3 stitches made"[-20:],
    ]
    assert copy.read_bytes() == older
    again.close()


def test_a_copy_that_has_arrived_in_part_can_be_put_aside_but_not_gone_on_with(piece):
    for size in range(200, piece.path.stat().st_size, 60):
        copied(piece, size)
        piece.look_beside()
        if not piece.versions():
            continue
        whole = "made" in piece.versions()[1].words
        if not whole:
            piece.keep("theirs")
            assert piece.glance().last_press.startswith("cannot be done: ")
            assert piece.can_undo == 3
        piece.keep("ours")
        assert piece.glance().last_press == "this version kept"
    assert len(list(piece.path.parent.glob("*.aside-*"))) > 3
    assert look(piece.path).history.done == 3


def test_a_copy_that_is_gone_by_the_time_of_the_choice_is_no_trouble(piece):
    copy = copied(piece)
    piece.look_beside()
    copy.unlink()
    piece.keep("theirs")
    assert piece.glance().last_press == f"cannot be done: There is no piece {copy.name}."
    piece.keep("ours")
    assert (piece.versions(), piece.glance().last_press) == ((), "this version kept")
    piece.next()
    assert look(piece.path).history.done == 4


def test_a_file_removed_meanwhile_is_written_again(piece):
    piece.path.unlink()
    piece.next()
    assert look(piece.path).history.done == 4
    assert piece.notices == (
        "pot-hat-trial.piece.toml was removed meanwhile; it is written again.",
    )


def test_a_new_piece_never_takes_the_place_of_a_file_that_came_first(tmp_path):
    session = scene.start(tmp_path / "pieces")
    first = session.path
    session.close()
    second = scene.start(tmp_path / "pieces")
    assert second.path.name == "pot-hat-trial-2.piece.toml"
    assert first.exists()
    second.close()


def test_a_piece_lies_in_a_folder_that_is_a_link(piece, tmp_path):
    piece.close()
    linked = tmp_path.with_name("linked")
    linked.symlink_to(tmp_path)
    again = scene.reopen(linked / piece.path.name)
    assert again.path == piece.path
    again.next()
    assert look(linked / piece.path.name).history.done == again.can_undo


@pytest.mark.parametrize("make", [os.mkfifo, Path.mkdir, lambda path: path.symlink_to("/dev/zero")])
def test_what_is_not_a_plain_file_is_refused_at_once(tmp_path, make):
    path = tmp_path / "odd.piece.toml"
    make(path)
    with pytest.raises(StoreError, match=r"^[^\n]+\.$"):
        look(path)


def test_a_huge_file_is_refused_unread(tmp_path):
    path = tmp_path / "huge.piece.toml"
    with path.open("wb") as file:
        file.truncate(1 << 40)
    with pytest.raises(StoreError, match="cannot be read: it is larger than 64 MiB"):
        look(path)


STORM = textwrap.dedent("""
    import sys
    from pathlib import Path
    sys.path[:0] = sys.argv[2:]
    import scene
    from tracker.session.files import RealDisk
    session = scene.reopen(Path(sys.argv[1]), disk=RealDisk(), background=True, fold_at=4000)
    while True:
        for _ in range(5):
            session.next()
            print(session.can_undo, flush=True)
        session.back()
        print(session.can_undo, flush=True)
        if session.glance().part_done:
            session.go_to_round(1)
            print(session.can_undo, flush=True)
""")


def kill_in_a_storm(path, presses):
    """Let another process press until so many are acknowledged, kill it; the last one."""
    command = [sys.executable, "-c", STORM, str(path), str(HERE), str(ROOT)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as storm:
        acknowledged = 0
        for _ in range(presses):
            acknowledged = int(storm.stdout.readline())
        storm.kill()
        rest = storm.stdout.read().splitlines(keepends=True)
    whole = [line for line in rest if line.endswith("\n")]
    return int(whole[-1]) if whole else acknowledged


def test_no_acknowledged_press_is_lost_to_a_kill_and_no_lock_is_left(tmp_path):
    session = scene.start(tmp_path)
    session.close()
    rng = random.Random(11)
    for _ in range(20):
        acknowledged = kill_in_a_storm(session.path, rng.randrange(1, 200))
        again = scene.reopen(session.path)
        assert acknowledged <= again.can_undo <= acknowledged + 1
        assert again.notices[0].startswith("pot-hat-trial.piece.toml ")
        again.close()
