"""Pattern files: what is read, and what is said of a file that is not a pattern."""

import os
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tracker.pattern import library
from tracker.pattern.load import PatternError, load_pattern, load_text
from tracker.pattern.model import Fit, Worked

PATTERN = """\
title = "Ditch cowl"
terms = "US"
sizes = ["small", "large"]
cautions = ["hand-strain"]

[gauge]
stitch = "hdc"
stitches = 14.5
rounds = "11 1/2"
over = "10 cm"
hook = "5 mm"

[[yarn]]
letter = "A"
colour = "rust"

[[stitch]]
abbr = "brk"
name = "bracken stitch"
takes = 2
makes = 1
loops = '''
Draw up a loop.
Close both.
'''
first.how = "Begin at the chain."

[stitch.last]
takes = 3

[[part]]
name = "Tube"
make = 2
worked = "spiral"
below = [40, 48]
rounds = '''
Rnd 1: sc in each st around. (40, 48)
Rnd 2: sc in each st around. (40, 48)
'''

[[part]]
name = "Making up"
steps = ["Weave in the ends."]

[fit]
part = "Tube"
on = "neck"
ease = "-5 %"
"""


def refused(text):
    with pytest.raises(PatternError) as caught:
        load_text(text, "cowl.toml")
    return caught.value


def only(text):
    """The one fault of a text, as (line, column, text)."""
    error = refused(text)
    assert len(error.faults) == 1, str(error)
    fault = error.faults[0]
    return fault.line, fault.column, fault.text


def test_all_that_a_pattern_says_is_read():
    found = load_text(PATTERN)
    assert (found.title, found.terms, found.sizes) == ("Ditch cowl", "US", ("small", "large"))
    assert found.source == PATTERN
    assert found.gauge.stitches == Fraction(29, 2)
    assert found.gauge.rounds == Fraction(23, 2)
    assert found.yarns[0].colour == "rust"
    assert found.fit == Fit("Tube", "neck", "-5 %", "stitches")
    tube, making_up = found.parts
    assert (tube.make, tube.worked, tube.below) == (2, Worked.SPIRAL, (40, 48))
    assert making_up.steps == ("Weave in the ends.",)


def test_a_special_stitch_has_its_loops_and_its_variants():
    stitch = load_text(PATTERN).stitches[0]
    assert (stitch.takes, stitch.makes) == (2, 1)
    assert stitch.loops == ("Draw up a loop.", "Close both.")
    assert stitch.first.how == "Begin at the chain."
    assert (stitch.last.takes, stitch.last.makes) == (3, None)


def test_rounds_know_the_line_they_stand_on():
    part = load_text(PATTERN).parts[0]
    first = PATTERN.split("\n")[part.rounds_line - 1]
    assert first == "Rnd 1: sc in each st around. (40, 48)"


def test_rounds_that_begin_behind_the_quotes_stand_on_that_line():
    text = PATTERN.replace("rounds = '''\nRnd 1", "rounds = '''Rnd 1")
    part = load_text(text).parts[0]
    assert text.split("\n")[part.rounds_line - 1].startswith("rounds = '''Rnd 1")


@pytest.mark.parametrize(
    ("old", "new", "place", "said"),
    [
        ('title = "Ditch cowl"\n', "", (1, 1), '"title" is missing'),
        ('title = "Ditch cowl"', 'title = " "', (1, 1), '"title" is empty'),
        ('title = "Ditch cowl"', "title = 7", (1, 1), '"title" must be a text in quotes, not 7'),
        (
            'title = "Ditch cowl"',
            "title = 7.5",
            (1, 1),
            '"title" must be a text in quotes, not 7.5',
        ),
        ('terms = "US"', 'terms = "AU"', (2, 1), '"terms" cannot be "AU"'),
        ('["small", "large"]', '["small", "small"]', (3, 1), '"small" stands twice in "sizes"'),
        ('["small", "large"]', '["small", ""]', (3, 1), '"sizes" has an empty entry'),
        ('["hand-strain"]', '["rain"]', (4, 1), 'no caution is called "rain"'),
        ("stitches = 14.5", "stitches = 0", (8, 1), '"stitches" must be a number above 0, not 0'),
        (
            "stitches = 14.5",
            "stitches = 1e999999999",
            (8, 1),
            '"stitches" must be a number above 0, not 1e999999999',
        ),
        ("stitches = 14.5\n", "", (6, 1), '"stitches" must be a number above 0, but it is missing'),
        ('colour = "rust"', 'color = "rust"', (15, 1), 'unknown key "color"'),
        ("takes = 2\n", "", (17, 1), '"takes" is missing'),
        ("takes = 3", "takes = -3", (29, 1), '"takes" must be from 0 to 1,000'),
        ("first.how", "first.why", (26, 1), 'unknown key "why"'),
        ('part = "Tube"', 'part = "Tub"', (46, 1), 'no part is called "Tub"'),
        ('"-5 %"', '"tight"', (48, 1), '"tight" is no ease, such as "-2 cm" or "-5 %"'),
        ('ease = "-5 %"', 'around = "hooks"', (48, 1), '"around" cannot be "hooks"'),
        ("make = 2", "make = 0", (33, 1), '"make" must be from 1 to 1,000'),
        ("make = 2", "make = true", (33, 1), '"make" must be a whole number, not true'),
        ('worked = "spiral"', 'worked = "spirals"', (34, 1), '"worked" cannot be "spirals"'),
        ("[40, 48]", "[40, 48, 56]", (35, 1), '"below" has 3 figures where it needs 1 or 2'),
        ("[40, 48]", '["40"]', (35, 1), '"below" must be a whole number, or a list'),
        ('name = "Making up"', 'name = "Tube"', (42, 1), 'a second part with the name "Tube"'),
        ('["Weave in the ends."]', "[]", (43, 1), "the part is empty"),
        ('["Weave in the ends."]', "7", (43, 1), '"steps" must be a list of texts'),
        ('steps = ["Weave in the ends."]', "", (41, 1), "the part is empty"),
    ],
)
def test_a_fault_is_named_where_it_stands(old, new, place, said):
    assert old in PATTERN
    error = refused(PATTERN.replace(old, new, 1))
    fault = error.faults[0]
    assert (fault.line, fault.column) == place, str(error)
    assert fault.text.startswith(said)


def test_a_pattern_needs_a_part():
    assert only('title = "x"\n')[2] == "there is no part"


def test_rounds_and_steps_do_not_go_together():
    text = PATTERN.replace("make = 2", 'steps = ["x"]', 1)
    assert only(text) == (33, 1, 'a part has "rounds" or "steps", not both')


def test_a_slip_of_the_pen_brings_the_word_that_was_meant():
    text = str(refused(PATTERN.replace("worked =", "wroked =")))
    assert text == (
        'cowl.toml: line 34, column 1: unknown key "wroked"\n'
        '    wroked = "spiral"\n'
        "    ^^^^^^\n"
        '    Did you mean "worked"?'
    )


def test_several_faults_are_told_at_once_in_their_order():
    text = PATTERN.replace("make = 2", "make = 0").replace('"US"', '"AU"').replace("title", "tilte")
    assert [fault.line for fault in refused(text).faults] == [1, 1, 2, 33]


def test_of_very_many_faults_the_first_dozen_is_shown():
    text = "".join(f"key{n} = 1\n" for n in range(500)) + PATTERN
    lines = str(refused(text)).split("\n")
    assert len(lines) < 60
    assert lines[-1] == "cowl.toml: and 488 more like these"


def test_what_is_not_toml_is_said_with_its_line():
    assert only('title = "x"\nsizes = [\n"a" "b"]\n') == (
        3,
        5,
        "not TOML: unclosed array",
    )


def test_a_text_that_ends_too_early_is_said_to():
    line, _, said = only("title = '''x\n")
    assert (line, said[:8]) == (2, "not TOML")


def test_control_characters_are_shown_and_never_sent():
    error = refused(PATTERN.replace('"US"', '"\\u001b[31m"'))
    assert "\x1b" not in str(error)
    assert '"␛[31m"' in str(error)


def test_square_brackets_are_plain_text():
    assert load_text(PATTERN.replace("Ditch cowl", "[bold]Ditch[/bold]")).title == (
        "[bold]Ditch[/bold]"
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("a = " + "[" * 10_000, "nested too deep"),
        ("a = " + "{a=" * 10_000, "nested too deep"),
        (".".join(["a"] * 400_000) + " = 1", "a key of more than 20 names"),
        (".".join(['"a"'] * 200_000) + " = 1", "a key of more than 20 names"),
        ("[" + ".".join(["a"] * 10_000) + "]", "a key of more than 20 names"),
        ("a = " + "9" * 100_000, "cannot be read"),
        ("x" * (2 * 1024 * 1024), "too large"),
        ("\n".join(f"[[part]]\nname='{n}'\nrounds='x'" for n in range(20_000)), "most is 100"),
        ("title = '" + "x" * 500_000 + "'", "500,000 characters"),
        ("title = 1979-05-27", "not a date or time"),
    ],
)
def test_whatever_is_in_it_the_answer_is_one_short_message(text, said):
    error = str(refused(text))
    assert said in error
    assert len(error) < 6_000


def test_a_line_of_rounds_has_a_longest_length():
    text = PATTERN.replace("Rnd 2:", "Rnd 2:" + " sc," * 2_000)
    assert only(text)[2].startswith('line 2 of "rounds" has 8,')


@pytest.mark.parametrize(
    ("name", "make", "said"),
    [
        ("gone.toml", str, "no such file"),
        ("folder.toml", Path.mkdir, "is a folder"),
        ("pipe.toml", os.mkfifo, "is not a plain file"),
        ("big.toml", lambda path: path.write_bytes(b"#" * 10_000_000), "too large"),
        ("latin.toml", lambda path: path.write_bytes(b"a = 1\ntitle = '\xe9'"), "column 10"),
        ("nul\0.toml", str, "cannot be opened"),
        ("loop.toml", lambda path: path.symlink_to(path), "is a link to"),
    ],
)
def test_what_is_no_file_of_text_is_said_to_be_none(tmp_path, name, make, said):
    path = tmp_path / name
    make(path)
    with pytest.raises(PatternError, match=said):
        load_pattern(path)


def test_a_device_is_not_read():
    with pytest.raises(PatternError, match="is not a plain file"):
        load_pattern("/dev/zero")


def test_the_mark_that_some_editors_put_first_is_no_fault(tmp_path):
    path = tmp_path / "cowl.toml"
    path.write_bytes(b"\xef\xbb\xbf" + PATTERN.replace("\n", "\r\n").encode())
    assert load_pattern(path).parts[0].rounds_line == 37


@given(st.text(max_size=300))
def test_any_text_is_a_pattern_or_an_error_with_words(text):
    with pytest.raises(PatternError) as caught:
        load_text(text)
    assert str(caught.value)


@given(st.data())
def test_any_pattern_with_something_cut_out_is_a_pattern_or_an_error(data):
    begin = data.draw(st.integers(0, len(PATTERN)))
    end = data.draw(st.integers(begin, len(PATTERN)))
    text = PATTERN[:begin] + PATTERN[end:]
    try:
        faults = load_text(text) and ()
    except PatternError as error:
        faults = error.faults or (None,)
    assert all(0 <= fault.line <= text.count("\n") + 1 for fault in faults)


@given(
    st.lists(
        st.sampled_from(['"', "'", '"""', "'''", "#", "[", "]", "{", "}", "=", "\\\\", ",", "x"]),
        max_size=12,
    )
)
def test_a_key_is_found_past_any_value_before_it(pieces):
    """The finder must agree with the TOML reader on where a value ends."""
    noise = "".join(pieces)
    text = f"title = 'x'\nabout = '''{noise.replace(chr(39), '')}'''\nwrong = 1\n"
    fault = next(f for f in refused(text).faults if f.text.startswith("unknown"))
    assert (fault.line, fault.column, fault.length) == (3, 1, 5)


def test_the_demo_patterns_are_all_there():
    assert list(library.demo_patterns()) == ["dusk-moth", "headband", "lattice-mat", "tea-cosy"]
    for path in library.demo_patterns().values():
        assert load_pattern(path).parts
