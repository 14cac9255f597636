"""The commands, run as a maker runs them: a process of their own."""

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from tracker.pattern.cautions import DEFER, caution
from tracker.pattern.load import load_pattern
from tracker.session.session import Session

ROOT = Path(__file__).parent.parent
PATTERNS = ROOT / "patterns"

SMALL = """\
title = "Cup mat"
terms = "US"
[[part]]
name = "Mat"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
'''
"""


def hookside(*words, stdin=subprocess.DEVNULL, timeout=60):
    """Run the command; what it said and its exit status."""
    return subprocess.run(
        [sys.executable, "-m", "tracker", *map(str, words)],
        cwd=ROOT,
        stdin=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=timeout,
        check=False,
    )


@pytest.fixture
def mat(tmp_path):
    path = tmp_path / "mat.toml"
    path.write_text(SMALL, encoding="utf-8")
    return path


def test_a_pattern_that_counts_is_well(mat):
    done = hookside("check", mat)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (
        "Cup mat\n\nMat\n  Rnd 1  agrees      → 6\n  Rnd 2  agrees    6 → 12\n\n"
        "All well: 2 agree.\n\n"
    )


def test_a_round_that_differs_is_named_with_its_line(mat):
    mat.write_text(SMALL.replace("(12)", "(13)"), encoding="utf-8")
    done = hookside("check", mat)
    assert done.returncode == 1
    assert "Rnd 2  differs   6 → 12" in done.stdout
    assert "mat.toml, line 8, column " in done.stdout
    assert "    Rnd 2: 2 sc in each st around. (13)\n" in done.stdout
    assert "^" in done.stdout
    assert "Not all well: 1 agree, 1 differ." in done.stdout


def test_a_round_that_is_not_understood_is_not_well(mat):
    mat.write_text(SMALL.replace("2 sc in each", "2 wombles in each"), encoding="utf-8")
    done = hookside("check", mat)
    assert done.returncode == 1
    assert "Rnd 2  unread" in done.stdout
    assert "wombles" in done.stdout


@pytest.mark.parametrize("path", sorted(PATTERNS.glob("*.toml")), ids=lambda path: path.stem)
def test_every_demo_pattern_is_well(path):
    done = hookside("check", path)
    assert (done.returncode, done.stderr) == (0, "")
    assert " differs " not in done.stdout
    assert " unread " not in done.stdout


def test_one_size_can_be_looked_at_alone():
    done = hookside("check", "tea-cosy", "--size", "4")
    assert done.returncode == 0
    assert "Hedgerow tea cosy · 4 cups\n" in done.stdout
    assert "Rnd 8   agrees    56 → 64\n" in done.stdout


def test_findings_come_as_json(mat):
    mat.write_text(SMALL.replace("(12)", "(13)"), encoding="utf-8")
    done = hookside("check", "--json", mat, "tea-cosy")
    found = json.loads(done.stdout)
    assert done.returncode == 1
    assert found["well"] is False
    small, cosy = found["files"]
    assert (small["well"], cosy["well"]) == (False, True)
    second = small["parts"][0]["rounds"][1]
    assert (second["verdict"], second["makes"], second["stated"]) == ("differs", [12], [13])
    assert second["messages"][0]["line"] == 8
    assert cosy["parts"][0]["rounds"][0]["makes"] == [7, 8, 9, 10]


def test_a_bad_file_does_not_hide_the_good_one_beside_it(mat, tmp_path):
    done = hookside("check", tmp_path / "gone.toml", mat)
    assert done.returncode == 2
    assert "All well: 2 agree." in done.stdout
    assert "no such file" in done.stderr


def test_bad_input_is_told_in_json_too(tmp_path):
    bad = tmp_path / "bad.toml"
    bad.write_text("title = 'x'\nwrong = 1\n", encoding="utf-8")
    done = hookside("check", "--json", bad)
    assert done.returncode == 2
    faults = json.loads(done.stdout)["files"][0]["faults"]
    assert [fault["line"] for fault in faults] == [1, 2]


BAD = {
    "not TOML": ("title = ", "not TOML"),
    "unknown key": (SMALL.replace("worked", "wroked"), 'unknown key "wroked"'),
    "wrong type": (SMALL.replace('"Cup mat"', "[1]"), '"title" must be a text in quotes'),
    "empty part": (SMALL[: SMALL.index("rounds")], "the part is empty"),
    "nesting": ("a = " + "[" * 10_000, "nested too deep"),
    "10 MB": ("#" * 10_000_000, "too large for a pattern"),
    "square brackets": ('title = "x"\n"[red]x" = 1', 'unknown key "[red]x"'),
    "control characters": ('title = "x"\n"\\u001b[2J" = 1', 'unknown key "␛[2J"'),
    "raw control characters": ("title = '\x1b[2J'", "not TOML: found invalid character"),
    "nothing": ("", "there is no part"),
}


@pytest.mark.parametrize(("text", "said"), BAD.values(), ids=BAD)
@pytest.mark.parametrize("command", ["check", "work"])
def test_bad_input_is_one_clear_message(tmp_path, command, text, said):
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    done = hookside(command, path)
    assert done.returncode == 2
    assert done.stdout == ""
    assert said in done.stderr
    assert "\x1b" not in done.stderr
    assert "Traceback" not in done.stderr
    assert len(done.stderr) < 3_000


@pytest.mark.parametrize("command", ["check", "work"])
def test_what_is_no_file_is_said_to_be_none(tmp_path, command):
    os.mkfifo(tmp_path / "pipe.toml")
    for path, said in (
        (tmp_path / "gone.toml", "no such file"),
        (tmp_path, "is a folder"),
        (tmp_path / "pipe.toml", "is not a plain file"),
        ("/dev/zero", "is not a plain file"),
    ):
        done = hookside(command, path)
        assert (done.returncode, done.stdout) == (2, "")
        assert said in done.stderr
        assert done.stderr.startswith("hookside: ")


@pytest.mark.parametrize("command", ["check", "work"])
def test_a_size_that_is_not_there_is_told_with_those_that_are(command):
    done = hookside(command, "tea-cosy", "--size", "3 cups")
    assert done.returncode == 2
    assert done.stderr == (
        'hookside: "Hedgerow tea cosy" has no size "3 cups": it has 2 cups, 4 cups, 6 cups, '
        '8 cups. Say which, such as --size "2 cups"\n'
    )


def test_a_piece_in_one_size_takes_no_size(mat):
    done = hookside("check", mat, "--size", "small")
    assert done.returncode == 2
    assert "comes in one size" in done.stderr


def test_a_repeat_of_a_million_million_is_answered(mat):
    mat.write_text(SMALL.replace("2 sc in each st around", "[sc] x 1000000000000"), "utf-8")
    done = hookside("check", mat)
    assert done.returncode == 1
    assert "Rnd 2" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr


def test_control_characters_of_a_round_do_not_reach_the_terminal(mat):
    text = SMALL.replace("'''", '"""').replace("2 sc in", "\\u001b]0;x\\u0007 2 sc in")
    mat.write_text(text.replace("Cup mat", "Cup\\u009b31m mat"), encoding="utf-8")
    done = hookside("check", mat)
    assert "Traceback" not in done.stderr
    assert not {"\x1b", "\x07", "\x9b"} & set(done.stdout + done.stderr)


def test_a_word_that_names_nothing_brings_what_was_meant():
    done = hookside("work", "tea-cozy")
    assert done.returncode == 2
    assert 'no piece and no pattern is called "tea-cozy". Did you mean "tea-cosy"?' in done.stderr


def test_the_work_screen_is_not_opened_without_a_terminal():
    done = hookside("work", "dusk-moth")
    assert done.returncode == 2
    assert "needs a terminal" in done.stderr


def test_where_without_a_piece_says_how_to_begin_one():
    done = hookside("where")
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr.startswith("hookside: no piece is begun yet")


@pytest.fixture
def cosy():
    """A piece of the tea cosy in 4 cups, two stitches into its first round."""
    from tracker.pattern.load import load_pattern
    from tracker.session import shelf
    from tracker.session.session import Session

    pattern = load_pattern(PATTERNS / "tea-cosy.toml")
    session = Session.start(pattern, "4 cups", shelf.pieces_folder())
    session.go_to_stitch(2)
    session.close()
    return session.path


@pytest.mark.parametrize("words", [(), ("hedgerow-tea-cosy",), ("Hedgerow",)])
def test_where_tells_the_place_as_one_line(cosy, words):
    done = hookside("where", *words)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (
        "Hedgerow tea cosy, 4 cups · Body · Rnd 1 of 19 · 2 of 8 stitches made"
        " · next: hdc in the ring\n"
    )


def test_where_takes_the_file_of_a_piece(cosy):
    assert hookside("where", cosy).stdout == hookside("where").stdout


@pytest.mark.parametrize("command", ["check", "size", "write"])
def test_a_name_that_no_pattern_has_is_no_missing_file(command):
    done = hookside(command, "bonnet")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith('hookside: no pattern is called "bonnet": hookside patterns')


def test_the_pattern_names_the_piece_that_is_worked_of_it(cosy):
    told = hookside("where").stdout
    assert hookside("where", "tea-cosy").stdout == told
    assert hookside("where", PATTERNS / "tea-cosy.toml").stdout == told
    other = hookside("where", "dusk-moth")
    assert (other.returncode, other.stdout) == (1, "")
    assert 'no piece is called "dusk-moth"' in other.stderr


@pytest.mark.parametrize("words", [(), ("hedgerow-tea-cosy",), ("--card",)])
def test_where_tells_the_place_in_the_piece_and_that_there_is_another_version(cosy, words):
    told = hookside("where", *words).stdout
    copy = cosy.with_name("hedgerow-tea-cosy (conflicted copy).piece.toml")
    session = Session.open(cosy)
    session.next()
    session.close()
    cosy.rename(copy)
    cosy.write_bytes(copy.read_bytes().rsplit(b"\n", 3)[0] + b"\n")
    os.utime(cosy, (1, 1))
    done = hookside("where", *words)
    assert (done.returncode, done.stdout) == (0, told)
    assert done.stderr == (
        f"hookside: {copy.name} is another version of {cosy.name}, as a synced folder leaves one."
        " As you take the piece up, you choose which to go on with.\n"
    )


def test_where_of_a_piece_that_is_not_there_is_told(cosy):
    done = hookside("where", "bonnet")
    assert (done.returncode, done.stdout) == (1, "")
    assert 'no piece is called "bonnet"' in done.stderr


def test_where_of_a_file_that_is_no_piece_is_one_sentence(cosy):
    cosy.write_bytes(bytes(range(256)))
    done = hookside("where")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr


def test_a_piece_goes_on_in_its_own_size_only(cosy):
    mother, child = pty.openpty()
    try:
        done = subprocess.run(
            [sys.executable, "-m", "tracker", "work", "tea-cosy", "--size", "8 cups"],
            cwd=ROOT,
            stdin=child,
            stdout=child,
            stderr=subprocess.PIPE,
            text=True,
            timeout=60,
            check=False,
        )
    finally:
        os.close(mother)
        os.close(child)
    assert done.returncode == 2
    assert done.stderr == (
        "hookside: you have a piece of it in size 4 cups; add --new to begin another\n"
    )


def test_demo_patterns_are_listed_with_their_sizes():
    lines = hookside("patterns").stdout.partition("\n\n")[0].splitlines()
    names = [line.split()[0] for line in lines if not line.startswith(" ")]
    assert names == ["dusk-moth", "headband", "lattice-mat", "tea-cosy"]
    cosy = next(line for line in lines if line.startswith("tea-cosy"))
    assert cosy.endswith("2 cups, 4 cups, 6 cups, 8 cups")


def test_demo_patterns_are_listed_with_their_cautions():
    said = hookside("patterns").stdout
    moth, band = said.index("dusk-moth"), said.index("headband")
    assert "caution: buttons, safety eyes, beads, bows, charms\n" in said[moth:band]
    assert "caution: infant hats and sleep\n" in said[band : said.index("lattice-mat")]
    assert said.endswith(f"\n{DEFER}\n")


def test_a_check_writes_out_the_cautions_that_apply(mat):
    mat.write_text(f'cautions = ["small-parts", "selling"]\n{SMALL}', encoding="utf-8")
    done = hookside("check", mat)
    told = [caution("small-parts").sentence, caution("selling").sentence, DEFER]
    assert "\nCautions\n" + "".join(f"  {words}\n" for words in told) in done.stdout
    data = json.loads(hookside("check", "--json", mat).stdout)
    assert data["files"][0]["cautions"] == ["small-parts", "selling"]


@pytest.mark.parametrize(
    ("name", "hint"),
    [("small-part", 'Did you mean "small-parts"?'), ("[red]", "Known here: infant-hat-sleep, ")],
)
def test_a_caution_that_is_not_known_brings_what_was_meant(mat, name, hint):
    mat.write_text(f'cautions = ["{name}"]\n{SMALL}', encoding="utf-8")
    done = hookside("check", mat)
    assert (done.returncode, done.stdout) == (2, "")
    assert f'no caution is called "{name}"' in done.stderr
    assert hint in done.stderr


@pytest.mark.parametrize("words", [(), ("work",), ("check",), ("where",)])
def test_every_command_has_help(words):
    done = hookside(*words, "--help")
    assert done.returncode == 0
    assert done.stdout.startswith("usage: hookside")


def test_the_version_is_told():
    from tracker import __version__

    assert hookside("--version").stdout == f"hookside {__version__}\n"


def test_a_wrong_word_on_the_command_line_is_one_sentence():
    done = hookside("chekc", "x\x1b[2J")
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "\x1b" not in done.stderr


def test_a_reader_that_goes_away_is_not_a_fault():
    with subprocess.Popen(
        [sys.executable, "-m", "tracker", "check", *["tea-cosy"] * 40],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as process:
        process.stdout.read(10)
        process.stdout.close()
        assert process.stderr.read() == b""


def test_a_fault_of_our_own_is_one_sentence_and_can_be_looked_into(monkeypatch):
    code = (
        "import sys; from tracker import cli\n"
        "def broken(arguments): raise RuntimeError('\\x1b[2J')\n"
        "cli._run = broken\n"
        "sys.exit(cli.main(['patterns']))"
    )
    run = [sys.executable, "-c", code]
    done = subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert done.stderr.startswith("hookside: something went wrong inside (RuntimeError: ␛[2J)")
    assert done.stderr.count("\n") == 1
    monkeypatch.setenv("HOOKSIDE_DEBUG", "1")
    done = subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=False)
    assert "Traceback" in done.stderr


def test_where_as_a_card_tells_how_to_find_the_place(own_home):
    session = Session.start(load_pattern(PATTERNS / "tea-cosy.toml"), "4 cups", own_home / "pieces")
    session.go_to_round(7)
    session.go_to_stitch(17)
    session.close()
    done = hookside("where", "--card", "hedgerow-tea-cosy")
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert lines[0] == "Hedgerow tea cosy, 4 cups"
    assert lines[1].startswith("put down just now, 2")
    assert lines[2] == "Rnd 7 of 19 · Body"
    assert "rounds: 6 whole, Rnd 7 begun" in lines
    assert "stitches: 17 since the marker" in lines
    assert hookside("where", "--card", "nothing").returncode == 1


def test_the_shelf_is_listed_in_plain_lines_without_a_terminal(own_home):
    assert "nothing on the shelf yet" in hookside("shelf").stdout
    test_where_as_a_card_tells_how_to_find_the_place(own_home)
    done = hookside("shelf", "--plain")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith(
        "hedgerow-tea-cosy · 4 cups · Body · Rnd 7 of 19 · 15 % done · put down "
    )
