"""``hookside write`` as a maker runs it: a process of its own."""

import subprocess
import sys
from pathlib import Path

import pytest

from tracker.pattern import library
from tracker.pattern.cautions import DEFER, caution
from tracker.pattern.load import load_pattern
from tracker.session.session import Session

ROOT = Path(__file__).parents[2]


def hookside(*words):
    done = subprocess.run(
        [sys.executable, "-m", "tracker", *map(str, words)],
        cwd=ROOT,
        capture_output=True,
        timeout=60,
        check=False,
    )
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def test_a_demo_goes_to_the_screen_as_text():
    status, out, err = hookside("write", "headband")
    assert (status, err) == (0, "")
    assert out.startswith("Furrow headband\n===============\n")
    assert "Sizes: newborn (6 months, 1 year, 2 to 5 years, adult)\n" in out
    assert "\nEdging (make 2)\n" in out
    for name in load_pattern(library.find("headband")).cautions:
        assert caution(name).sentence in out
    assert DEFER in out
    assert "fpdc: front post double crochet\n" in out
    assert "dtr" not in out, "only the abbreviations that occur"


def test_in_uk_terms():
    out = hookside("write", "headband", "--terms", "UK")[1]
    assert "Written in UK crochet terms." in out
    assert "\nTension\n" in out
    assert "fptr: front post treble\n" in out
    assert "hdc" not in out


@pytest.mark.parametrize(("name", "begins"), [("m.md", "# Lattice"), ("m.txt", "Lattice table")])
def test_the_name_of_the_file_says_the_form(tmp_path, name, begins):
    path = tmp_path / name
    assert hookside("write", "lattice-mat", "-o", path) == (0, "", "")
    assert path.read_text().startswith(begins)


def test_no_file_is_written_over_unasked(tmp_path):
    path = tmp_path / "mat.txt"
    path.write_text("mine")
    status, out, err = hookside("write", "lattice-mat", "-o", path)
    assert (status, out) == (2, "")
    assert "is there already" in err
    assert path.read_text() == "mine"
    assert hookside("write", "lattice-mat", "-o", path, "--force")[0] == 0
    assert path.read_text().startswith("Lattice table mat")


def test_a_name_that_says_no_form_is_asked_about(tmp_path):
    status, out, err = hookside("write", "lattice-mat", "-o", tmp_path / "mat.doc")
    assert (status, out) == (2, "")
    assert "does not say its form" in err
    assert not list(tmp_path.glob("mat*"))


def test_a_piece_hands_on_the_pattern_it_carries(own_home):
    pattern = load_pattern(library.find("lattice-mat"))
    Session.start(pattern, "", own_home / "pieces", "Mat for Ida").close()
    assert hookside("write", "mat-for-ida", "--designed") == hookside("write", "lattice-mat")


def test_what_is_not_there_is_said():
    status, out, err = hookside("write", "no-such-thing")
    assert (status, out) == (2, "")
    assert err.startswith("hookside: ")
    assert "no-such-thing" in err


def test_control_characters_of_a_pattern_do_not_reach_the_terminal(tmp_path):
    path = tmp_path / "evil.toml"
    path.write_text(
        'title = "Mat \\u001b[31m"\nterms = "US"\n[[part]]\nname = "Mat"\n'
        "rounds = '''\nRnd 1: 6 sc in ring. (6)\n'''\n"
    )
    status, out, _ = hookside("write", path)
    assert status == 0
    assert "\x1b" not in out
    assert out.startswith("Mat ␛[31m")


def test_the_chart_of_a_part_in_a_size(tmp_path):
    path = tmp_path / "trim.svg"
    words = ("write", "tea-cosy", "-o", path, "--part", "berry", "--size", "6 cups")
    assert hookside(*words) == (0, "", "")
    svg = path.read_text()
    assert "<title>Hedgerow tea cosy: Berry trim, 6 cups</title>" in svg
    assert svg.count('data-sign="bobble"') == 18


def test_a_chart_without_a_part_named_says_which_others_there_are():
    status, out, err = hookside("write", "lattice-mat", "--as", "chart")
    assert status == 0
    assert out.startswith("<svg ")
    assert err == "hookside: Tile is drawn; --part names another: Tile, Border\n"


def test_a_part_that_is_not_there_is_said():
    status, out, err = hookside("write", "lattice-mat", "--as", "chart", "--part", "Sleeve")
    assert (status, out) == (2, "")
    assert 'has no part "Sleeve" to draw: it has Tile, Border' in err
