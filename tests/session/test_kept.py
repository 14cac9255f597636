"""What is kept for speed: plans and lines; never trusted where it does not fit."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from zlib import crc32

import pytest

from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.pattern.plan import make_plan
from tracker.session import kept, plans, told
from tracker.session.access import StoreError
from tracker.session.reading import read_plan
from tracker.session.session import Session

ROOT = Path(__file__).parents[2]
DEMOS = library.demo_patterns()


def cosy():
    return load_pattern(DEMOS["tea-cosy"])


@pytest.fixture
def piece(own_home):
    session = Session.start(cosy(), "4 cups", own_home / "pieces")
    for _ in range(20):
        session.next()
    session.close()
    return session.path


def stored(home, ending):
    (path,) = (home / "cache").glob(f"*.{ending}.kept")
    return path


@pytest.mark.parametrize("name", DEMOS)
def test_a_plan_is_read_back_as_it_was_in_every_size(name):
    pattern = load_pattern(DEMOS[name])
    for size in pattern.sizes or ("",):
        plan = make_plan(pattern, size)
        plans.keep_plan(plan, pattern.source, size)
        assert plans.kept_plan(pattern.source, size) == plan


def test_a_kept_plan_is_for_its_text_and_size_alone():
    read_plan(cosy().source, "4 cups")
    assert plans.kept_plan(cosy().source, "4 cups")
    assert plans.kept_plan(cosy().source + "\n", "4 cups") is None
    assert plans.kept_plan(cosy().source, "2 cups") is None


def damages(data):
    """What may have become of a kept file; each time it is not to be used."""
    seal, made_by, body = data.split(b"\n", 2)
    resealed = b"[0,[0,1]]"
    yield b""
    yield data[:-1]
    yield data.replace(b"hdc", b"xdc", 1)
    yield b"\n".join((seal, b"00000000", body))
    yield b"\n".join((b"%08x" % crc32(resealed), made_by, resealed))
    deep = b"[" * 100_000
    yield b"\n".join((b"%08x" % crc32(deep), made_by, deep))
    odd = json.dumps(["4 cups", [99, "no such class"]]).encode()
    yield b"\n".join((b"%08x" % crc32(odd), made_by, odd))


def test_a_damaged_or_foreign_plan_is_made_anew(own_home):
    plan = read_plan(cosy().source, "4 cups")
    path = stored(own_home, "plan")
    data = path.read_bytes()
    for damaged in damages(data):
        path.write_bytes(damaged)
        assert plans.kept_plan(cosy().source, "4 cups") is None
        assert read_plan(cosy().source, "4 cups") == plan
        assert path.read_bytes() == data


def test_a_folder_that_cannot_be_made_only_costs_time(own_home):
    own_home.mkdir()
    (own_home / "cache").write_text("no folder")
    assert read_plan(cosy().source, "4 cups").size == "4 cups"


def test_what_was_kept_longest_goes_first(own_home):
    for number in range(kept.MOST + 5):
        kept.keep(f"{number}", b"x")
        path = own_home / "cache" / f"{number}.kept"
        os.utime(path, ns=(number, number))
    kept.keep("last", b"x")
    assert len(list((own_home / "cache").iterdir())) == kept.MOST
    assert kept.kept("0") is None
    assert kept.kept("last") == b"x"


def test_the_line_is_kept_when_a_piece_is_put_down(piece, own_home, monkeypatch):
    assert stored(own_home, "told").exists()
    said = told.told(piece)
    shutil.rmtree(own_home / "cache")
    assert told.told(piece) == said


def test_a_kept_line_is_told_only_while_the_file_is_as_it_was(piece):
    before = told.told(piece)
    session = Session.open(piece)
    session.next()
    after = told.told(piece)
    assert after != before
    session.undo()
    assert told.told(piece) == before
    session.close()
    data = piece.read_bytes()
    piece.write_bytes(data[:-20])
    assert told.told(piece)
    piece.write_bytes(b"x" * len(data))
    with pytest.raises(StoreError):
        told.told(piece)


def test_the_line_follows_the_work_while_a_piece_is_open(piece, own_home):
    session = Session.open(piece)
    session.next()
    session.retry()
    kept_now = stored(own_home, "told").read_bytes()
    assert told.told(piece).encode() in kept_now
    session.retry()
    assert stored(own_home, "told").read_bytes() == kept_now
    session.close()


def loaded(*words):
    """The modules of ours, and heavy ones, that the command has loaded at its end."""
    script = (
        "import sys; from tracker.cli import main; status = main(sys.argv[1:])\n"
        "print('--', *sys.modules, sep='\\n'); sys.exit(status)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, *words], cwd=ROOT, capture_output=True, text=True, check=True
    )
    line, _, names = done.stdout.partition("\n--\n")
    return line, set(names.split())


def test_where_loads_nothing_to_count_with(piece, own_home):
    line, names = loaded("where")
    assert line.startswith("Hedgerow tea cosy, 4 cups · Body · ")
    assert not {"argparse", "dataclasses", "tomllib", "tracker.session.glance"} & names
    stored(own_home, "told").unlink()
    again, names = loaded("where")
    assert again == line
    assert not {"argparse", "tracker.pattern.check", "tracker.notation.reader"} & names
