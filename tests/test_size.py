"""``hookside size`` and ``hookside tables``: what they print, and how they end."""

import json
from contextlib import redirect_stderr, redirect_stdout
from io import StringIO
from types import SimpleNamespace

import pytest

from tests.screens.stage import begin
from tests.test_cli import PATTERNS
from tests.test_cli import hookside as process
from tracker.cli import main
from tracker.measure.heads import NOT_A_CHECK
from tracker.pattern.cautions import DEFER, caution
from tracker.pattern.load import load_pattern

DISC = """\
title = "Pebble rug"
sizes = ["hall", "porch"]

[gauge]
stitch = "sc"
stitches = 20
rounds = 20
over = "10 cm"

[[part]]
name = "Rug"
worked = "spiral"
rounds = '''
Rnd 1: 6 (12) sc in magic ring. (6, 12)
Rnd 2: 2 sc in each st around. (12, 24)
Rnd 3: [sc, inc] x 6 (12). (18, 36)
'''
"""
HAT = """\
title = "Acorn cap"
[gauge]
stitch = "sc"
stitches = 10
rounds = 10
over = "5 cm"
hook = "4 mm"
[[part]]
name = "Cap"
worked = "spiral"
rounds = '''
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: [sc, inc] x 6. (18)
Rnd 4: [2 sc, inc] x 6. (24)
Rnds 5-12: sc in each st around. (24)
'''
"""


@pytest.fixture
def rug(tmp_path):
    path = tmp_path / "rug.toml"
    path.write_text(DISC, encoding="utf-8")
    return path


@pytest.fixture
def cap(tmp_path):
    path = tmp_path / "cap.toml"
    path.write_text(HAT, encoding="utf-8")
    return path


def hookside(*words):
    """The command without a process of its own, which is most of what it would cost."""
    with redirect_stdout(StringIO()) as out, redirect_stderr(StringIO()) as err:
        try:
            status = main([str(word) for word in words])
        except SystemExit as ended:
            status = ended.code
    return SimpleNamespace(returncode=status, stdout=out.getvalue(), stderr=err.getvalue())


@pytest.mark.parametrize(
    "words",
    [("size", "headband", "--for", "44cm", "--ease", "-5%"), ("tables", "hooks", "H"), ("size",)],
)
def test_a_process_of_its_own_says_the_same(words):
    apart, here = process(*words), hookside(*words)
    assert (apart.returncode, apart.stdout) == (here.returncode, here.stdout)
    assert apart.stderr.replace("python -m tracker", "hookside") == here.stderr


def sized(*words):
    done = hookside("size", *words)
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


def data(*words):
    return json.loads(sized(*words, "--json"))


def test_a_cap_by_its_own_gauge(cap):
    # 20 sts and 20 rounds in 10 cm: 24 sts are 12 cm, 12 rounds 6 cm, a crown of 4 rounds 4 cm
    assert sized(cap) == (
        "Acorn cap\n"
        "Gauge: 10 sc and 10 rounds over 5 cm.\n"
        "\n"
        "Cap\n"
        "  12 cm round, 6 cm deep\n"
        "  crown: 4 rounds, 4 cm across; 6 more a round, flat is 6.3: lies flat\n"
        "\n"
        "Cap, if the swatch is off by one stitch in 10 cm\n"
        "  11.4 cm with one more, 12.6 cm with one fewer\n"
    )


def test_a_swatch_of_ones_own_stands_beside_the_gauge(cap):
    said = sized(cap, "--swatch", "16 sts 20 rounds 10 cm")
    assert "Your swatch: 16 sts and 20 rounds over 10 cm." in said
    assert "a thinner hook makes more." in said
    assert "  15 cm [12 cm] round, 6 cm deep\n" in said
    assert "flat is 5: lies flat" in said
    tight = sized(cap, "--swatch", "24 sts 20 rounds 10 cm")
    assert "a thicker hook makes fewer." in tight
    assert "  10 cm [12 cm] round" in tight


def test_what_cups_and_what_ruffles_is_told_for_each_size(rug):
    said = sized(rug)
    assert "    hall   3 rounds, 3 cm across; 6 more a round, flat is 6.3: lies flat\n" in said
    assert "    porch  3 rounds, 3 cm across; 12 more a round, flat is 6.3: ruffles\n" in said
    low = sized(rug, "--size", "hall", "--swatch", "20 dc 8 rounds 10 cm")
    assert "flat is 15.7: cups" in low


def test_the_size_that_fits_a_length_with_the_patterns_ease():
    # bands of 31.9, 41.9, 44.4, 46.9 and 54.4 cm; 44 cm less 2 cm of ease are wanted
    said = sized("headband", "--for", "44cm")
    assert "For 44 cm round, so 42 cm wanted\n" in said
    (best,) = (line for line in said.splitlines() if line.endswith(", fits best"))
    assert best == "  6 months      41.9 cm, 2.1 cm smaller than the head, fits best"


def test_no_size_is_said_to_fit_what_it_is_far_too_small_for():
    said = sized("headband", "--for", "90 cm")
    assert "fits best" not in said
    assert "54.4 cm, 35.6 cm smaller than the head, nearest, but fits none\n" in said


@pytest.mark.parametrize(
    ("ease", "wanted"), [("-5%", 41.8), ("-2 cm", 42.0), ("0 cm", 44.0), ("1 in", 46.54)]
)
def test_an_ease_of_ones_own(ease, wanted):
    (fit,) = data("headband", "--for", "44 cm", "--ease", ease)["fits"]
    assert fit["wanted_cm"] == wanted
    assert (
        fit["sizes"][0]["size"]
        == min(fit["sizes"], key=lambda one: abs(one["around_cm"] - wanted))["size"]
    )


def test_the_size_that_fits_an_age_comes_with_source_and_cautions():
    said = sized("headband", "--for", "6 months")
    # WHO: boys 43.3 cm, girls 42.2 cm at 6 months (see tests/outside/test_heads.py)
    assert "boys: 43.3 cm (most 40.9 cm to 45.8 cm) round, so 41.3 cm wanted" in said
    assert "girls: 42.2 cm (most 39.6 cm to 44.8 cm) round, so 40.2 cm wanted" in said
    assert said.count("Source: WHO Child Growth Standards") == 1
    for words in (NOT_A_CHECK, DEFER, caution("infant-hat-sleep").sentence):
        assert words in said
    assert caution("infant-hat-sleep").sentence not in sized("headband", "--for", "woman")


def test_where_no_ease_is_stated_none_is_taken_and_it_is_said(cap):
    said = sized(cap, "--for", "newborn")
    assert "boys: 34.5 cm" in said
    assert "so 34.5 cm wanted" in said
    assert "Nobody says with how much ease, so none is taken.\nMakers work hats\n" in said
    # 34.46 cm / pi, and 4/10 of it
    assert "  a flat crown for that is 11 cm across\n" in said
    assert "  makers' rule for the depth of a hat: 13.8 cm\n" in said
    assert "Makers work hats" not in sized("tea-cosy", "--for", "50 cm")


def test_a_hook_is_told_with_its_names_and_their_conflicts(cap):
    said = sized(cap, "--hook", "B-1")
    assert "2.25 mm: US B-1, UK 13\n" in said
    assert "2 mm: US B-1 by some" in said
    assert "Only a swatch tells what another hook does" in said


def test_inches_are_told_where_inches_were_asked_for(cap):
    said = sized(cap, "--swatch", "5 sts 5 rounds 1 in")
    # 24 sts at 5 to the inch are 4.8 in, shown to the quarter
    assert "  4 3/4 in round, 2 1/2 in [2 1/4 in] deep\n" in said
    assert "12.2 cm [12 cm] round" in sized(cap, "--swatch", "5 sts 5 rounds 1 in", "--unit", "cm")


def test_all_of_it_comes_as_json(rug):
    found = data(rug, "--swatch", "10 sts 10 rounds 10 cm")
    assert found["swatch"] == {
        "stitches_in_10_cm": 10.0, "rounds_in_10_cm": 10.0, "flat_increases": 6.283, "own": False,
    }  # fmt: skip
    (part,) = found["sizes"][0]["parts"]
    assert (part["stitches"], part["wide_cm"], part["rounds"], part["long_cm"]) == (18, 18, 3, 3)
    assert part["crown"] == {
        "rounds": 3, "stitches": 18, "across_cm": 6.0, "increases": 6.0, "lies": "lies flat",
        "since": 1,
    }  # fmt: skip
    assert found["by_own_gauge"][0]["around_cm"] == 9.0


def test_a_piece_tells_its_size_and_the_rounds_left(own_home):
    session = begin(own_home / "pieces", "tea-cosy", "4 cups")
    session.go_to_round(17)
    session.close()
    said = sized("hedgerow-tea-cosy")
    assert "  4 cups  45.7 cm round" in said
    assert "2 cups" not in said
    assert said.endswith(
        "\nBody, Rnd 17: to 19 cm about 4 more rounds with this one, by the gauge\n"
    )


def test_a_piece_is_sized_as_it_is_really_worked(own_home):
    session = begin(own_home / "pieces", "tea-cosy", "4 cups")
    session.go_to_round(16)
    added = next(one for one in session.improvising().choices if one.title.startswith("a round of"))
    session.improvise(added, "evenly to 64")
    session.close()
    ((mine,),) = (one["parts"][:1] for one in data("hedgerow-tea-cosy")["sizes"])
    ((printed,),) = (one["parts"][:1] for one in data("tea-cosy", "--size", "4")["sizes"])
    assert (mine["rounds"], printed["rounds"]) == (20, 19)
    assert len(data("hedgerow-tea-cosy", "--size", "8")["sizes"]) == 1


def test_instructions_for_people_are_sized_too(tmp_path):
    path = tmp_path / "cap.txt"
    rounds = HAT[HAT.index("Rnd 1") : HAT.rindex("'''")]
    path.write_text(f"Acorn cap\n\nGauge: 20 sc and 20 rounds = 10 cm.\n\nCap\n{rounds}", "utf-8")
    assert "  12 cm round, 6 cm deep\n" in sized(path)
    path.write_text("nothing here", encoding="utf-8")
    assert hookside("size", path).returncode == 2


def test_a_piece_is_measured_where_it_stands(own_home):
    session = begin(own_home / "pieces", "tea-cosy", "4 cups")
    session.go_to_round(17)
    session.close()
    done = hookside("measure", "hedgerow-tea-cosy", "12.5", "cm")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == (
        "12.5 cm measured in Rnd 17\nto 19 cm about 8 more rounds with this one, as measured\n"
    )
    again = json.loads(hookside("measure", "5 1/2 in", "--json").stdout)
    assert again["measured"] == "5.5 in"
    assert again["left"] == "to 19 cm about 6 more rounds with this one, as measured"


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        (("long",), 2, "say a length, such as: hookside measure 14.5 cm"),
        (("hedgerow", "14 g"), 2, "14 g is no length"),
        (("14 wombles",), 2, "is not a number with a unit"),
        (("bonnet", "14 cm"), 1, 'no piece is called "bonnet"'),
    ],
)
def test_what_is_no_measure_of_a_piece_is_one_sentence(own_home, words, status, said):
    begin(own_home / "pieces", "tea-cosy", "4 cups").close()
    done = hookside("measure", *words)
    assert (done.returncode, done.stdout) == (status, "")
    assert said in done.stderr
    assert done.stderr.count("\n") == 1


def test_chain_spaces_keep_a_width_from_being_told_by_counts():
    said = sized("lattice-mat", "--for", "90 cm")
    assert "Tile\n  width not told by its counts, 6.3 cm deep\n" in said
    assert "how long around Tile comes out is not told by its counts" in said


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--swatch", "many"), '"many" is no swatch, such as "16 sts 18 rounds 10 cm"'),
        (("--swatch", "16 wombles 18 rounds 10 cm"), '"wombles" is no stitch'),
        (("--swatch", "0 sts 18 rounds 10 cm"), "must all be above 0"),
        (("--for", "giant"), 'no head is known of "giant"'),
        (("--for", "44 g"), 'no head is known of "44 g"'),
        (("--ease", "tight"), '"tight" is no ease, such as "-2 cm" or "-5 %"'),
        (("--ease", "1/0 %"), '"1/0 %" is no ease, such as "-2 cm" or "-5 %"'),
        (("--for", "0 cm"), 'nothing is "0 cm" round: give a length such as 44 cm'),
        (("--hook", "\x1b[2J"), 'no hook is called "␛[2J"'),
        (("--size", "hall"), "comes in one size"),
        (("--unit", "ell"), "argument --unit"),
    ],
)
def test_what_cannot_be_sized_is_one_sentence(cap, words, said):
    done = hookside("size", cap, *words)
    assert (done.returncode, done.stdout) == (2, "")
    assert said in done.stderr
    assert done.stderr.count("\n") == 1
    assert "\x1b" not in done.stderr


def test_a_round_that_is_not_understood_counts_as_tall_as_the_swatch_and_is_named(cap):
    cap.write_text(
        HAT.replace("Rnds 5-12: sc", "Rnd 5: 2 wombles in each st around. (24)\nRnds 6-12: sc"),
        "utf-8",
    )
    said = sized(cap)
    assert "  12 cm round, 6 cm deep\n" in said
    assert "  Counted as tall as the swatch: Rnd 5.\n" in said


def test_a_pattern_without_a_gauge_asks_for_a_swatch(tmp_path):
    path = tmp_path / "bare.toml"
    path.write_text(HAT[: HAT.index("[gauge]")] + HAT[HAT.index("[[part]]") :], encoding="utf-8")
    done = hookside("size", path)
    assert done.returncode == 2
    assert 'states no gauge over a length: give one, such as --swatch "16 sts' in done.stderr
    assert "  12 cm round, 6 cm deep" in sized(path, "--swatch", "20 sc 20 rounds 10 cm")


def test_a_gauge_over_no_length_is_no_gauge(tmp_path):
    path = tmp_path / "odd.toml"
    path.write_text(HAT.replace('"5 cm"', '"a hand"'), encoding="utf-8")
    assert hookside("size", path).returncode == 2


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("hooks", "H-8"), "5 mm: US H-8, UK 6\n"),
        (("hooks", "P-16"), "go by the millimetres"),
        (("yarns", "14"), "4 Medium (worsted, afghan, aran): 11 to 14 sc, hook 5.5 to 6.5 mm"),
        (("yarns", "dk"), "3 Light"),
        (("yarns",), "7 Jumbo (roving): 5 and fewer sc, hook 16 mm and larger"),
        (("heads", "6 months"), "6 months, boys: 43.3 cm, most 40.9 cm to 45.8 cm\n"),
        (("heads", "woman", "--unit", "in"), "woman: 22 1/4 in, most 21 in to 23 1/2 in\n"),
        (("heads",), NOT_A_CHECK),
    ],
)
def test_tables_are_told_with_their_sources(words, said):
    done = hookside("tables", *words)
    assert (done.returncode, done.stderr) == (0, "")
    assert said in done.stdout
    assert "http" in done.stdout


def test_tables_come_as_json():
    hooks = json.loads(hookside("tables", "hooks", "7", "--json").stdout)
    assert [one["mm"] for one in hooks] == [4.5, 1.65, 7.0]
    (yarn,) = json.loads(hookside("tables", "yarns", "Bulky", "--json").stdout)
    assert (yarn["sc_in_10_cm"], yarn["hook_mm"]) == ([8, 11], [6.5, 9.0])
    boys, girls = json.loads(hookside("tables", "heads", "newborn", "--json").stdout)
    assert (boys["middle_cm"], girls["middle_cm"]) == (34.46, 33.88)


@pytest.mark.parametrize("words", [("hooks", "zz"), ("yarns", "zz"), ("heads", "zz"), ("shoes",)])
def test_a_word_that_no_table_has_is_one_sentence(words):
    done = hookside("tables", *words)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.count("\n") == 1


def test_the_demo_patterns_come_out_as_they_say():
    """What they say of their size in words, by their gauge and counts; to the half centimetre."""
    for name, said in (
        ("tea-cosy", (40, 46, 51, 57)),
        ("headband", (32, 42, 44.5, 47, 54.5)),
    ):
        found = [one["around_cm"] for one in data(name)["sizes"]]
        assert found == pytest.approx(said, abs=0.5), name
        about = load_pattern(PATTERNS / f"{name}.toml").about
        assert f"{said[0]:g} ({', '.join(f'{one:g}' for one in said[1:])}) cm" in about


def test_what_is_handed_on_says_how_large_it_comes_out(cap):
    done = hookside("write", "headband")
    wide = "Band 31.9 (41.9, 44.4, 46.9, 54.4) cm wide, 7.5 cm long"
    assert f"Finished by this gauge: {wide}; Edging 32.5 (" in done.stdout
    assert "Finished by this gauge: Cap 12 cm round, 6 cm deep." in hookside("write", cap).stdout
    cap.write_text(HAT.replace('"5 cm"', '"a hand"'), encoding="utf-8")
    assert "Finished by" not in hookside("write", cap).stdout
