"""What is written is read back as the same pattern."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.read.texts import COWL, NEWT, SQUARE
from tracker.notation.lines import split_lines
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern
from tracker.pattern.model import Part, Pattern
from tracker.pattern.reading import read_pattern
from tracker.pattern.translate import translate
from tracker.writing.compose import compose
from tracker.writing.markdown import escaped, markdown
from tracker.writing.plain import plain_text

FORMS = {"text": plain_text, "markdown": markdown}
WHOLE = ("title", "terms", "sizes", "gauge", "fit", "yarns", "cautions")


def read(text):
    return read_pattern(text, "text.txt", "Untitled")


def facts(part):
    note = " ".join(part.note.split())
    return (
        *(part.name, part.make, part.worked, part.choose, part.below, part.hook),
        *(note, part.rounds, part.steps),
    )


def worked(part):
    return part.name, part.make, [(line.label, line.body) for line in split_lines(part.rounds)]


def counts(checked):
    return [
        (r.label, r.verdict, r.below, r.takes, r.makes, r.made, r.stated, r.until)
        for part in checked.parts
        for r in part.rounds
    ]


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("name", library.demo_patterns())
def test_a_demo_pattern_is_the_same_when_read_back(name, terms, form):
    pattern = translate(load_pattern(library.find(name)), terms)
    checked = check_pattern(pattern)
    back = read(FORMS[form](compose(pattern, checked)))
    for key in WHOLE:
        assert getattr(back.pattern, key) == getattr(pattern, key)
    assert list(map(facts, back.pattern.parts)) == list(map(facts, pattern.parts))
    assert counts(back.checked) == counts(checked)
    own = {s.abbr: (s.name, s.takes, s.makes) for s in pattern.stitches}
    found = {s.abbr: (s.name, s.takes, s.makes) for s in back.pattern.stitches}
    assert own.keys() <= found.keys()
    assert [found[abbr][1:] for abbr in own] == [told[1:] for told in own.values()]


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("text", [NEWT, COWL, SQUARE], ids=["newt", "cowl", "square"])
def test_a_text_that_was_read_is_written_and_read_again(text, form):
    first = read(text)
    again = read(FORMS[form](compose(first.pattern, first.checked)))
    assert counts(again.checked) == counts(first.checked)
    assert again.pattern.sizes == first.pattern.sizes
    assert list(map(worked, again.pattern.parts)) == list(map(worked, first.pattern.parts))


@pytest.mark.parametrize(
    "words",
    [
        "*sc in next st, 2 sc in next st; rep from * around. (18)",
        "[sc 2, inc] x 6. (18)",
        "_sc_ in each st around; **join** with sl st.",
        "sc in each st (see #3) around | <b>turn</b> ~~not~~ `so`.",
    ],
)
def test_marks_in_a_round_stay_what_they_are(words):
    part = Part("Mat", rounds=f"Rnd 1: 12 sc in magic ring. (12)\nRnd 2: {words}\n")
    pattern = Pattern("Mat of *stars*", "US", (part,))
    checked = check_pattern(pattern)
    for form in FORMS.values():
        back = read(form(compose(pattern, checked)))
        assert back.pattern.title == pattern.title
        assert back.pattern.parts[0].rounds == part.rounds


@settings(max_examples=60, deadline=None)
@given(st.text("ab *_[]()<>#|~`\\+-1.", min_size=1, max_size=30))
def test_no_mark_survives_the_escaping(text):
    """Each mark of CommonMark has a backslash before it: https://spec.commonmark.org/0.31.2/."""
    bare = escaped(text)
    marks = [at for at, char in enumerate(bare) if char in "*_[]<>#|~`"]
    assert all(bare[at - 1] == "\\" for at in marks)
    assert bare.replace("\\", "") == text.replace("\\", "")
