"""The folder of pieces: names, the latest, finding one; and what it costs to import."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
import scene

from tracker.session import shelf
from tracker.session.about import titled


def put(folder, name, when=0):
    folder.mkdir(exist_ok=True)
    path = folder / f"{name}.piece.toml"
    path.write_text("")
    os.utime(path, (when, when))
    return path


def test_the_folder_is_where_the_environment_says(own_home):
    assert shelf.pieces_folder() == own_home / "pieces"


def test_the_folder_is_the_users_data_folder_otherwise(monkeypatch, tmp_path):
    monkeypatch.delenv("HOOKSIDE_HOME")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    folder = shelf.pieces_folder()
    assert folder.name == "pieces"
    assert "hookside" in folder.parts
    assert folder.is_relative_to(tmp_path)


def test_the_latest_is_the_one_written_last(tmp_path):
    put(tmp_path, "hat", 20)
    put(tmp_path, "cosy", 30)
    put(tmp_path, "band", 10)
    assert [piece.name for piece in shelf.pieces(tmp_path)] == ["cosy", "hat", "band"]
    assert shelf.latest(tmp_path).name == "cosy"


def test_without_a_folder_there_are_no_pieces(tmp_path):
    assert shelf.pieces(tmp_path / "none") == ()
    assert shelf.latest(tmp_path / "none") is None


def test_only_plain_piece_files_are_on_the_shelf(tmp_path):
    put(tmp_path, "hat")
    (tmp_path / "notes.toml").write_text("")
    (tmp_path / ".hat.piece.toml.new").write_text("")
    (tmp_path / ".old.piece.toml").write_text("")
    (tmp_path / "folder.piece.toml").mkdir()
    (tmp_path / "link.piece.toml").symlink_to(tmp_path / "hat.piece.toml")
    os.mkfifo(tmp_path / "pipe.piece.toml")
    assert [piece.name for piece in shelf.pieces(tmp_path)] == ["hat"]


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("hat", "hat"),
        ("Hat", "hat"),
        ("hat.piece.toml", "hat"),
        ("tea cosy", "tea-cosy"),
        ("te", "tea-cosy"),
        ("ha", None),
        ("", None),
        ("sock", None),
        ("../hat", "hat"),
    ],
)
def test_a_piece_is_found_by_its_name_or_a_beginning_of_it(tmp_path, name, found):
    for existing in ("hat", "hat-2", "tea-cosy"):
        put(tmp_path, existing)
    piece = shelf.find(tmp_path, name)
    assert (piece and piece.name) == found


COPY = "pot-hat-trial (conflicted copy 2026-03-02)"
LATER = 2**40


def with_copy(folder):
    """A piece, and beside it a copy that was written later."""
    session = scene.start(folder)
    scene.press(session, 3)
    session.close()
    copy = session.path.with_name(f"{COPY}.piece.toml")
    copy.write_bytes(session.path.read_bytes())
    os.utime(copy, (LATER, LATER))
    return session.path, copy


def test_another_version_of_a_piece_is_not_taken_for_the_piece(tmp_path):
    path, copy = with_copy(tmp_path)
    assert [piece.path for piece in shelf.pieces(tmp_path)] == [copy, path]
    assert shelf.latest(tmp_path).path == path
    assert shelf.find(tmp_path, "pot-h").path == path
    assert titled(tmp_path, "Pot hat [trial]").path == path


def test_a_second_piece_whose_name_goes_on_from_the_first_is_one_of_its_own(tmp_path):
    path, copy = with_copy(tmp_path)
    copy.write_bytes(path.read_bytes().replace(b"started = 2", b"started = 1", 1))
    os.utime(copy, (LATER, LATER))
    assert shelf.latest(tmp_path).path == copy
    assert shelf.find(tmp_path, "pot-h") is None


def test_a_version_alone_in_its_folder_is_taken(tmp_path):
    path, copy = with_copy(tmp_path)
    (tmp_path / "mine").mkdir()
    path.rename(tmp_path / "mine" / path.name)
    assert shelf.latest(tmp_path).path == copy


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Tea cosy", "tea-cosy"),
        ("  Hat [trial] / no. 2 ", "hat-trial-no-2"),
        ("../../etc/passwd", "etc-passwd"),
        ("Šálek ÿ", "šálek-ÿ"),
        ("\x1b[31m\n", "31m"),
        ("***", "piece"),
        ("x" * 300, "x" * 60),
    ],
)
def test_a_new_piece_is_named_after_its_title(tmp_path, title, name):
    assert shelf.new_path(tmp_path, title) == tmp_path / f"{name}.piece.toml"


def test_a_piece_can_be_given_a_name_of_its_own(tmp_path):
    session = scene.Session.start(
        scene.pattern(), "", tmp_path, "For the fair", reading=scene.reading
    )
    assert session.path.name == "for-the-fair.piece.toml"
    session.close()


def test_listing_and_reading_pieces_loads_no_screen_and_no_pattern_reader():
    program = (
        "import sys, tracker.session.shelf, tracker.session.store\n"
        "heavy = {'textual', 'rich', 'platformdirs', 'filelock', 'tomli_w', 'asyncio',"
        " 'tracker.pattern.check', 'tracker.notation.reader'}\n"
        "print(sorted(heavy & set(sys.modules)))"
    )
    root = Path(__file__).parents[2]
    command = [sys.executable, "-c", program]
    ran = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True)
    assert ran.stdout == "[]\n"
