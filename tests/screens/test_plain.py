"""The work line by line: the real command, on a pipe and on a terminal."""

import subprocess
import sys
import termios
import time
import tomllib
from pathlib import Path

from tests.screens.stage import begin
from tests.screens.terminal import COMMAND, Terminal
from tracker.pattern.foreword import warnings
from tracker.pattern.load import load_pattern
from tracker.session.looking import glance_at

ROOT = Path(__file__).parents[2]


def plain(keys, *words):
    """What is answered to these bytes, as lines; the exit status must be 0."""
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "work", *words, "--plain"],
        cwd=ROOT,
        input=keys,
        capture_output=True,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"\x1b" not in done.stdout
    return done.stdout.decode().splitlines()


def any_begins(lines, words):
    return any(line.startswith(words) for line in lines)


def piece(own_home):
    return next((own_home / "pieces").glob("*.piece.toml"))


def test_a_press_is_a_line(own_home):
    lines = plain(b"   ", "tea-cosy", "--size", "4 cups")
    place = next(n for n, words in enumerate(lines) if words.startswith("Hedgerow tea cosy, "))
    assert "4 cups · Body · Rnd 1 of 19 · 0 of 8" in lines[place]
    assert lines[place + 2 :] == [
        "take yarn A: done · next ch 1 · 0 of 8 made",
        "ch 1: done · next hdc in the ring · 0 of 8 made",
        "next hdc in the ring · 1 of 8 made",
    ]
    assert glance_at(piece(own_home)).made == 1


def test_without_a_name_it_goes_on_with_the_latest_piece(own_home):
    plain(b"   ", "tea-cosy", "--size", "4 cups")
    assert plain(b" ")[-1] == "next hdc in the ring · 2 of 8 made"


def test_a_piece_that_is_open_elsewhere_can_be_looked_at_or_taken_over(own_home):
    session = begin(own_home / "pieces")
    session.next()
    name = session.path.name.removesuffix(".piece.toml")
    command = [sys.executable, "-m", "tracker", "work", name, "--plain"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert done.stderr == (
        f"hookside: {session.path.name} is open in another window already. hookside where "
        "looks at it; hookside work NAME --take-over goes on with it here.\n"
    )
    before = session.glance().place.step
    plain(b" ", name, "--take-over")
    assert glance_at(session.path).place.step == before + 1
    session.next()
    assert "taken over" in session.notices[0]
    session.close()
    assert glance_at(session.path).place.step == before + 1


def test_without_a_piece_it_says_how_to_begin(own_home):
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "work", "--plain"],
        cwd=ROOT,
        input=b" ",
        capture_output=True,
        check=False,
    )
    assert done.returncode == 2
    assert b"no piece is begun yet: hookside patterns" in done.stderr


def test_the_same_keys_do_the_same(own_home):
    lines = plain(b" s7 \x7f\x1b[6~\x1b[D\x1b[Auurg3\x7f5\rmj", "tea-cosy", "--size", "4 cups")
    seen = glance_at(piece(own_home))
    assert (seen.round, seen.made) == (5, 0)
    assert "Go to stitch: 7" in lines
    assert "to 7 stitches made · next hdc in the ring · 7 of 8 made" in lines
    assert "back one · next hdc in the ring · 6 of 8 made" in lines
    assert lines[-1].startswith("this is the marked place")


def test_at_a_rounds_end_figures_are_the_count_and_a_new_round_is_read_out(own_home):
    lines = plain(b"pp 8\r ", "tea-cosy", "--size", "4 cups")
    assert "to the round's end · space: it is 8, or type your count" in lines[-4]
    assert lines[-1] == "to the round's end · space: it is 16, or type your count"
    lines = plain(b"15\r")
    assert lines[-1].startswith("15 counted; on to Rnd 3 · Body, Rnd 3 of 19: ")


def test_parts_are_listed_and_gone_to(own_home):
    lines = plain(b"t2 t9 ", "tea-cosy", "--size", "4 cups")
    assert "1: Body, 0 of 19" in lines
    assert any(line.startswith("to Scalloped trim · Scalloped trim, Foundation") for line in lines)
    assert lines[-1] == "there is no part 9"


def test_learnt_keys_are_heard(own_home):
    own_home.mkdir()
    (own_home / "settings.toml").write_text('[keys]\nnext = ["f18", "z"]\n')
    lines = plain(b" z\x1b[32~", "tea-cosy", "--size", "4 cups")
    asked = next(n for n, words in enumerate(lines) if words.endswith("lists the keys."))
    assert len(lines[asked + 1 :]) == 2
    assert lines[-1].startswith("ch 1: done")


def test_what_a_file_says_is_no_control_code(own_home, tmp_path):
    path = tmp_path / "odd.toml"
    path.write_text(
        'title = "Odd \\u001b[31m [red]"\nterms = "US"\n[[part]]\nname = "Mat"\n'
        "rounds = '''\nRnd 1: 6 sc in magic ring. (6)\n'''\n",
        encoding="utf-8",
    )
    assert tomllib.loads(path.read_text())["title"].startswith("Odd \x1b")
    assert any_begins(plain(b" ", str(path)), "Odd ␛[31m [red] · Mat")


def test_after_a_while_the_card_comes_first_and_is_put_right(own_home):
    session = begin(own_home / "pieces")
    session.go_to_round(7)
    session.close()
    text = session.path.read_text()
    session.path.write_text(age(text))
    lines = plain(b"31 ")
    assert "rounds: 6 whole, Rnd 7 not begun" in lines
    assert lines[-1].startswith("to 31 stitches made · ")


def age(text):
    """The log written by hand, long ago."""
    head, _, _ = text.partition("[log]\n")
    line = '1 = { when = 2020-03-02T10:15:00+00:00, round = [1, 1, 7, 1], steps = "0" }\n'
    return f"{head}[log]\n{line}"


def test_on_a_terminal_it_answers_at_once_and_leaves_it_as_it_was(own_home):
    with Terminal(command=(*COMMAND, "--plain")) as terminal:
        terminal.until("lists the keys")
        terminal.send(b" ")
        terminal.until("take yarn A: done")
        terminal.send(b"q")
        assert terminal.left() == 0
        assert b"\x1b" not in terminal.raw
        assert termios.tcgetattr(terminal.inner) == terminal.before
    assert glance_at(piece(own_home)).place.step == 1


def test_ctrl_c_puts_down(own_home):
    with Terminal(command=(*COMMAND, "--plain")) as terminal:
        terminal.until("lists the keys")
        terminal.send(b" ")
        terminal.until("take yarn A: done")
        terminal.send(b"\x03")
        assert terminal.left() == 0
    assert glance_at(piece(own_home)).place.step == 1


def test_what_to_take_care_of_is_said_when_a_piece_is_begun_and_on_demand():
    said = [*warnings(load_pattern(ROOT / "patterns" / "dusk-moth.toml"))]
    begun = plain(b"", "dusk-moth")
    assert [line for line in begun if line in said] == said
    assert not set(said) & set(plain(b""))
    assert [line for line in plain(b"i") if line in said] == said


def test_a_note_is_typed_kept_and_told_where_it_belongs(own_home):
    lines = plain(b"  nred [bead]\x7f\x7f]]\x7f\r ", "tea-cosy", "--size", "4 cups")
    assert "no note here so far" in lines
    assert "note: red [bea]" in lines[-2]
    assert not any_begins(plain(b"n\x1b"), "so far: ")
    assert "so far: red [bea]" in plain(b"\x7fn\x1b")


def test_the_guard_lets_only_next_and_back_through(own_home):
    lines = plain(b"x  tg5p\x7fxx", "tea-cosy", "--size", "4 cups")
    assert lines[-6:] == [
        "x x ends it",
        "take yarn A: done · next ch 1 · 0 of 8 made",
        "ch 1: done · next hdc in the ring · 0 of 8 made",
        "back one · next ch 1 · 0 of 8 made",
        "x once more ends it",
        "the guard is off",
    ]


def test_a_key_held_down_counts_once_line_by_line_too(own_home):
    with Terminal(command=(*COMMAND, "--plain")) as terminal:
        terminal.until("lists the keys")
        terminal.send(b" ")
        terminal.until("take yarn A: done")
        time.sleep(0.45)
        for _ in range(20):
            terminal.send(b" ")
            terminal.read(0.033)
        terminal.until("a key held down: it counts once")
        terminal.send(b"q")
        assert terminal.left() == 0
    assert glance_at(piece(own_home)).place.step == 1


def test_one_switch_goes_on_and_two_quick_presses_go_back_line_by_line_too(own_home):
    own_home.mkdir()
    (own_home / "settings.toml").write_text("one-switch = true\n")
    with Terminal(command=(*COMMAND, "--plain")) as terminal:
        terminal.until("lists the keys")
        for words in ("take yarn A: done", "ch 1: done"):
            terminal.send(b" ")
            terminal.until(words)
            time.sleep(0.5)
        terminal.send(b"  ")
        terminal.until("back one")
        terminal.send(b"q")
        assert terminal.left() == 0
    assert glance_at(piece(own_home)).place.step == 1
