"""A disk that fails: work goes on, the maker is told, and in the end nothing is lost."""

import errno

import pytest
import scene
from faults import FaultyDisk

from tracker.session.access import StoreError
from tracker.session.looking import look
from tracker.session.place import Asking, Pace


def tidy(session):
    """A while without a press: the file may be folded."""
    session.retry()
    session.retry()


def work(session):
    """Some forty actions of all kinds, with a pause now and then."""
    scene.press(session, 8)
    session.undo()
    session.enter_count(5)
    session.set_pace(Pace.REPEAT)
    scene.press(session, 5)
    tidy(session)
    session.set_asking(Asking.NEVER)
    session.mark()
    session.go_to_part(1, 1)
    scene.press(session, 3)
    session.return_to_mark()
    session.undo()
    session.undo()
    session.redo()
    scene.press(session, 6)
    tidy(session)
    scene.press(session, 1)


def kept(session):
    return session.state, session.can_undo


def undisturbed(folder):
    disk = FaultyDisk()
    session = scene.start(folder, disk=disk, fold_at=300)
    work(session)
    assert disk.names.count("replace") >= 3
    session.close()
    return kept(session), look(session.path).history.undone, disk.count


@pytest.mark.parametrize(
    ("code", "lasting"),
    [(errno.ENOSPC, False), (errno.EIO, False), (errno.EROFS, True), (errno.EACCES, True)],
)
def test_whichever_operation_fails_nothing_is_lost(tmp_path, code, lasting):
    wanted, undone, operations = undisturbed(tmp_path / "calm")
    assert operations > 60
    for nth in range(1, operations + 1):
        disk = FaultyDisk(nth, code, lasting=lasting, short=nth % 2 == 0)
        session = scene.start(tmp_path / f"{nth}", disk=disk, fold_at=300)
        work(session)
        assert kept(session) == wanted
        disk.heal()
        session.retry()
        assert session.glance().trouble == ""
        session.close()
        again = scene.reopen(session.path)
        assert (kept(again), again.notices) == (wanted, ())
        assert look(session.path).history.undone == undone
        again.close()


@pytest.mark.parametrize(
    ("code", "why"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EIO, "the disk reports a fault"),
        (errno.EROFS, "the disk can only be read"),
        (errno.EACCES, "writing there is not allowed"),
    ],
)
def test_the_maker_is_told_at_once_and_the_next_press_saves_all(tmp_path, code, why):
    disk = FaultyDisk()
    session = scene.start(tmp_path, disk=disk)
    disk.short = True
    disk.break_next(code, lasting=True)
    scene.press(session, 3)
    trouble = session.glance().trouble
    assert trouble == f"Not saved: {why}. Go on; it is saved as soon as that is over."
    disk.heal()
    session.next()
    assert session.glance().trouble == ""
    session.close()
    again = scene.reopen(session.path)
    assert again.can_undo == 4
    again.close()


def test_a_failed_sync_is_made_good_by_writing_the_file_anew(tmp_path):
    disk = FaultyDisk()
    session = scene.start(tmp_path, disk=disk)
    session.next()
    before = session.path.stat().st_ino
    disk.break_next(errno.EIO, kinds=("fsync",))
    session.next()
    assert session.glance().trouble.startswith("Not saved: the disk reports a fault.")
    session.retry()
    assert session.glance().trouble == ""
    assert session.path.stat().st_ino != before
    session.close()


def test_a_damaged_file_is_not_replaced_until_the_damaged_bytes_are_kept(tmp_path):
    session = scene.start(tmp_path)
    scene.press(session, 9)
    session.close()
    whole = session.path.read_bytes()
    torn = whole[:-90]
    session.path.write_bytes(torn)
    opened_at_all = 0
    for nth in range(1, 24):
        disk = FaultyDisk(nth, lasting=True)
        try:
            opened = scene.reopen(session.path, disk=disk)
        except StoreError:
            assert session.path.read_bytes() == torn
            continue
        opened_at_all += 1
        beside = sorted(tmp_path.glob("[!.]*.damaged-*"))
        now = session.path.read_bytes()
        assert now == torn or any(torn.endswith(kept.read_bytes()) for kept in beside)
        state = opened.state
        disk.heal()
        opened.retry()
        opened.close()
        again = scene.reopen(session.path)
        assert (again.state, again.notices) == (state, ())
        again.close()
        for kept in beside:
            kept.unlink()
        session.path.write_bytes(torn)
    assert opened_at_all > 15


def test_a_file_is_synced_before_it_takes_the_old_ones_place_and_its_name_after(tmp_path):
    disk = FaultyDisk()
    session = scene.start(tmp_path, disk=disk, fold_at=300)
    disk.names.clear()
    scene.press(session, 9)
    assert "replace" not in disk.names
    tidy(session)
    at = disk.names.index("replace")
    assert disk.names[at - 2 : at + 1] == ["write", "fsync", "replace"]
    assert "fsync_folder" in disk.names[at:]
    session.close()


def test_a_folder_that_is_a_file_is_trouble_not_a_traceback(tmp_path):
    (tmp_path / "pieces").write_text("no folder")
    session = scene.start(tmp_path / "pieces")
    session.next()
    assert session.glance().trouble.startswith("Not saved: ")
    (tmp_path / "pieces").unlink()
    session.retry()
    assert session.glance().trouble == ""
    session.close()


def test_a_piece_that_cannot_be_read_says_so(tmp_path):
    with pytest.raises(StoreError, match=r"^There is no piece hat\.piece\.toml\.$"):
        scene.reopen(tmp_path / "hat.piece.toml")
