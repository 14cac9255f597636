"""Piece files made in bad faith, through the real command: one sentence, exit status 2."""

import os
import re
import subprocess
import sys
from pathlib import Path
from zlib import crc32

import pytest

from tracker.session.session import Session

ROOT = Path(__file__).parents[2]
LOG = b'\nsealed = "%08x"\n\n[log]\n'
PATTERN = '''title = "Mat"
terms = "US"
[[part]]
name = "%s"
worked = "spiral"
rounds = """
Rnd 1: 6 sc in ring. (6)
"""
'''
#: All of C0 but tab and line end, DEL, and C1: ECMA-48.
CONTROLS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]")


def hookside(*words):
    return subprocess.run(
        [sys.executable, "-m", "tracker", *map(str, words)],
        cwd=ROOT,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


def sealed(title='"Mat"', size='""', started="2026-01-01T10:00:00+00:00", pattern=None):
    """A whole piece file with these values, written as TOML, and a seal that fits."""
    text = pattern if pattern is not None else "'''" + PATTERN % "Mat" + "'''"
    head = f"[piece]\ntitle = {title}\nsize = {size}\nstarted = {started}\npattern = {text}"
    return head.encode() + LOG % crc32(head.encode())


def link_to(target):
    return lambda path: path.symlink_to(target)


def bytes_of(data):
    return lambda path: path.write_bytes(data)


def sparse(path):
    with path.open("wb") as file:
        file.truncate(1 << 40)


MADE = {
    "a pipe": os.mkfifo,
    "a folder": Path.mkdir,
    "a link to a device": link_to("/dev/zero"),
    "a link out of its folder": link_to("/etc/passwd"),
    "a link up by two dots": link_to("../elsewhere"),
    "a link to itself": lambda path: path.symlink_to(path.name),
    "a huge file": sparse,
    "nothing": bytes_of(b""),
    "zeros": bytes_of(bytes(5000)),
    "not text": bytes_of(b"\xff\xfe\x80" * 400),
    "deep nesting": bytes_of(b"a = " + b"[" * 200_000),
    "deep tables": bytes_of(b"[" + b"a." * 100_000 + b"a]\n"),
    "deep nesting, sealed": bytes_of(sealed(title="[" * 100_000)),
    "a title of the wrong kind": bytes_of(sealed(title="7")),
    "a size of the wrong kind": bytes_of(sealed(size="[]")),
    "a size that is not there": bytes_of(sealed(size='"../../large"')),
    "a time that is none": bytes_of(sealed(started='"yesterday"')),
    "a pattern that is none": bytes_of(sealed(pattern='"[[part]]"')),
    "a pattern of the wrong kind": bytes_of(sealed(pattern="{}")),
    "a pattern nested deep": bytes_of(sealed(pattern='"a = ' + "[" * 50_000 + '"')),
    "escapes in the head": bytes_of(sealed(title='"\\u001b]0;x\\u0007" x')),
}


@pytest.mark.parametrize("command", ["where", "work"])
@pytest.mark.parametrize("kind", MADE)
def test_what_is_no_piece_is_refused_in_one_message(own_home, kind, command):
    path = own_home / "pieces" / "odd.piece.toml"
    path.parent.mkdir(parents=True)
    MADE[kind](path)
    done = hookside(command, path)
    assert done.stdout == ""
    assert done.returncode == 2
    assert done.stderr.startswith("hookside: ")
    assert "Traceback" not in done.stderr
    assert "went wrong inside" not in done.stderr
    assert len(done.stderr) < 4000
    assert not CONTROLS.search(done.stderr.replace("\n", ""))


LINKS = [
    (["where"], "cannot be read: it is a link to {real}; name that file itself.", "mat.piece.toml"),
    (
        ["work", "--plain"],
        "cannot be read: it is a link to {real}; name that file itself.",
        "mat.piece.toml",
    ),
    (["chapters", "--began", "10:15"], "it is a link to {real}; name that", "mat.piece.toml"),
    (["check"], "link.toml: is a link to {real}. Name that file itself.", "mat.toml"),
    (["work"], "link.toml: is a link to {real}. Name that file itself.", "mat.toml"),
    (["write"], "link.toml: is a link to {real}. Name that file itself.", "mat.toml"),
    (["read"], "link.txt: is a link to {real}. Name that file itself.", "mat.txt"),
]


@pytest.mark.parametrize(("command", "said", "name"), LINKS)
def test_a_link_is_refused_and_what_it_leads_to_is_named(own_home, command, said, name):
    worked(own_home, "Mat")
    (own_home / "mat.toml").write_text(PATTERN % "Mat")
    (own_home / "mat.txt").write_text("Rnd 1: 6 sc in ring. (6)\n")
    before = {path: path.read_bytes() for path in own_home.glob("mat.*")}
    (own_home / "bag").mkdir()
    link = own_home / "bag" / f"link{name.removeprefix('mat')}"
    link.symlink_to(f"../{name}")
    done = hookside(command[0], link, *command[1:])
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 1)
    assert said.format(real=own_home / name) in done.stderr
    assert before == {path: path.read_bytes() for path in own_home.glob("mat.*")}
    assert [*link.parent.iterdir()] == [link]


def test_folders_may_be_links(own_home):
    path = worked(own_home / "pieces", "Mat")
    (own_home / "mat.toml").write_text(PATTERN % "Mat")
    linked = own_home.with_name(f"{own_home.name}-linked")
    linked.symlink_to(own_home)
    assert hookside("where", linked / "pieces" / path.name).returncode == 0
    assert hookside("check", linked / "mat.toml").returncode == 0


def worked(folder, title, part="Mat"):
    """A sound piece with this title and name of its part."""
    from tracker.pattern.load import load_text

    source = PATTERN.replace('"Mat"', f'"{title}"') % part
    session = Session.start(load_text(source), "", folder)
    session.next()
    session.close()
    return session.path


@pytest.mark.parametrize(
    "title",
    [
        "\\u001b[2J\\u001b]0;gone\\u0007",
        "[bold red]x[/]",
        "\\u009b31m",
        "a\\u202eb",
        "../../../etc/passwd",
        "/dev/null",
        "\\u0000",
        "x" * 200,
        ".",
        "a\\nb",
        "CON",
    ],
)
def test_a_title_is_shown_as_plain_text_and_stays_in_the_folder(own_home, title):
    folder = own_home / "pieces"
    path = worked(folder, title, part=title)
    assert path.parent == folder
    assert path.name.isprintable()
    done = hookside("where")
    assert (done.returncode, done.stderr) == (0, "")
    assert len(done.stdout.splitlines()) == 1
    assert done.stdout.rstrip("\n").isprintable()
    plain = title if "\\" not in title else ""
    assert plain in done.stdout


@pytest.mark.parametrize("name", ["\x1b[2J", "../../etc/passwd", "/etc/passwd", "x" * 5000, "[b]"])
@pytest.mark.parametrize("command", ["where", "work"])
def test_a_name_on_the_command_line_is_shown_as_plain_text(own_home, command, name):
    done = hookside(command, name)
    assert done.returncode in (1, 2)
    assert done.stdout == ""
    assert done.stderr.startswith("hookside: ")
    assert "Traceback" not in done.stderr
    assert not CONTROLS.search(done.stderr.replace("\n", ""))


def test_odd_files_on_the_shelf_are_passed_over(own_home):
    path = worked(own_home / "pieces", "Mat")
    for number, kind in enumerate(("a pipe", "a folder", "a link to a device", "a link to itself")):
        MADE[kind](path.parent / f"later-{number}.piece.toml")
    done = hookside("where")
    assert done.stdout.startswith("Mat · Mat · Rnd 1")


def test_a_lock_or_a_new_file_that_is_a_link_changes_nothing_outside(own_home):
    path = worked(own_home / "pieces", "Mat")
    outside = own_home / "outside"
    outside.write_text("as it was")
    lock = path.with_name(f"{path.name}.lock")
    lock.unlink()
    lock.symlink_to(outside)
    path.with_name(f".{path.name}.new").symlink_to(outside)
    session = Session.open(path)
    session.next()
    session.close()
    assert outside.read_text() == "as it was"
