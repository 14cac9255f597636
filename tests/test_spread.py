"""``hookside spread``, run as a maker runs it."""

import json

import pytest

from tests.test_cli import hookside


def test_the_rounds_are_written_and_counted():
    done = hookside("spread", "48", "to", "60", "--rounds", "3")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (
        "48 to 60: 12 more, in 3 rounds.\n"
        "Rnd 1: [11 sc, inc] x 4. (52)\n"
        "Rnd 2: [6 sc, inc, 6 sc] x 4. (56)\n"
        "Rnd 3: [10 sc, inc, 3 sc] x 4. (60)\n"
        "Counted: 48 → 52 → 56 → 60, agrees.\n"
    )


def test_what_it_writes_is_a_pattern_that_checks(tmp_path):
    lines = hookside("spread", "90 to 72", "--rows", "--stitch", "hdc").stdout.splitlines()
    text = f"Foundation: ch 91.\nRow 1: hdc in 2nd ch and in each ch across; turn. (90)\n{lines[1]}"
    path = tmp_path / "rows.txt"
    path.write_text(text.replace("\nRow 1: [", "\nRow 2: ["), encoding="utf-8")
    done = hookside("check", path)
    assert done.returncode == 0, done.stdout
    assert "Row 2       agrees    90 → 72" in done.stdout


def test_the_nearest_count_of_a_multiple_is_found_and_worked_to():
    done = hookside("spread", "70", "--multiple", "6 + 2")
    assert done.returncode == 0
    assert done.stdout.splitlines()[:2] == [
        "Multiple of 6 + 2: 68 = 11 x 6 + 2, 74 = 12 x 6 + 2. Nearest: 68.",
        "70 to 68: 2 fewer, in 1 round.",
    ]


def test_all_of_it_comes_as_json_in_uk_terms_too():
    words = ("spread", "24", "to", "36", "--stitch", "htr", "--terms", "UK", "--json")
    found = json.loads(hookside(*words).stdout)
    assert (found["have"], found["want"]) == (24, 36)
    assert found["rounds"] == [
        {"text": "Rnd 1: [htr, htr inc] x 12. (36)", "takes": 24, "makes": 36, "verdict": "agrees"}
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("6", "to", "13"), "6 stitches become 3 to 12 in one round, not 13; take more rounds"),
        (("many",), '"many" is not such as "48 to 60"'),
        (("48",), "say to how many as well"),
        (("48", "to", "0"), "from 1 to 10,000"),
        (("48", "--multiple", "0 + 2"), '"0 + 2" is no multiple'),
        (("48", "to", "60", "--stitch", "x\x1b[2J"), '"x␛[2J" is no stitch'),
        (("48", "to", "60", "--rounds", "-1"), "from 1 to 200"),
        (("48", "to", "60", "--rounds", "x"), "argument --rounds"),
    ],
)
def test_what_cannot_be_spread_is_one_sentence(words, said):
    done = hookside("spread", *words)
    assert (done.returncode, done.stdout) == (2, "")
    assert said in done.stderr
    assert done.stderr.count("\n") == 1
    assert "\x1b" not in done.stderr
