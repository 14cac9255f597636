"""US terms <-> UK terms: letter for letter there and back, with the same counts.

Pairs of names:
https://cdn.shopify.com/s/files/1/1218/2756/files/Crochet_hook_yarn_and_stitch_conversions_metres_PDF_2.pdf
"miss" and "tension": common practice, no source.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tracker import check_text
from tracker.notation.dictionary import phrases
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.draft import to_toml
from tracker.pattern.load import load_pattern, load_text
from tracker.pattern.translate import translate, translate_text

PATTERNS = library.demo_patterns()

PAIRS = [
    ("sc", "dc"),
    ("single crochet", "double crochet"),
    ("hdc", "htr"),
    ("half double crochet", "half treble crochet"),
    ("dc", "tr"),
    ("double crochet", "treble crochet"),
    ("tr", "dtr"),
    ("treble crochet", "double treble crochet"),
    ("dtr", "trtr"),
    ("sc2tog", "dc2tog"),
    ("dc 3 tog", "tr 3 tog"),
    ("FPdc", "FPtr"),
    ("BPHDC", "BPHTR"),
    ("dcs", "trs"),
    ("sl st", "sl st"),
    ("skip", "miss"),
    ("Skip", "Miss"),
    ("Gauge: 14 sc", "Tension: 14 dc"),
    ("gauge swatch", "tension swatch"),
    ("even tension", "even tension"),
    ("US terms", "UK terms"),
    ("sc (UK dc)", "dc (US sc)"),
    ("a double strand", "a double strand"),
    ("ttr", "quad tr"),
    ("dtrc", "ttr"),
    ("scandal, dcx, trim", "scandal, dcx, trim"),
]


@pytest.mark.parametrize(("us", "uk"), PAIRS)
def test_pairs(us, uk):
    assert translate_text(us, "UK") == uk
    assert translate_text(uk, "US") == us


@pytest.mark.parametrize(
    ("us", "uk"),
    [("Sc", "Dc"), ("SC", "DC"), ("Single Crochet", "Double Crochet"), ("Sc2tog", "Dc2tog")],
)
def test_capitals_stay(us, uk):
    assert translate_text(f"  {us}\tin next 3 sts!", "UK") == f"  {uk}\tin next 3 sts!"


def test_everything_else_stays_letter_for_letter():
    odd = "[[*“2sc”…  \u00bd–3]] \t\n"
    assert translate_text(odd, "UK") == odd.replace("sc", "dc")


def test_other_terms_are_refused():
    with pytest.raises(ValueError, match=r"terms must be .* not 'FR'"):
        translate_text("sc", "FR")


US_WORDS = sorted(
    " ".join(words) for words, us in phrases("US").items() if us not in ("ch", "sl st")
)
UK_WORDS = sorted(" ".join(words) for words in phrases("UK"))
#: At home in one system only, and not to be brought back from the other.
FOREIGN = {"US": ("qtr",), "UK": ("sc", "single crochet")}
BETWEEN = st.sampled_from([", ", "; ", ". ", ", 3 ", ", *", " in next st, ", ", skip 2 sts, "])


def foreign(text, terms):
    return any(word in text.lower() for word in FOREIGN[terms])


def texts(words):
    styled = st.builds(
        lambda word, style: style(word),
        st.sampled_from(words),
        st.sampled_from([str.lower, str.upper, str.capitalize]),
    )
    return st.lists(st.tuples(BETWEEN, styled), max_size=12).map(
        lambda pairs: "".join(a + b for a, b in pairs)
    )


@settings(deadline=None)
@given(texts(US_WORDS))
def test_to_uk_and_back_is_the_same_text(text):
    assert translate_text(translate_text(text, "UK"), "US") == text


@settings(deadline=None)
@given(texts([word for word in UK_WORDS if not foreign(word, "UK")]))
def test_to_us_and_back_is_the_same_text(text):
    assert translate_text(translate_text(text, "US"), "UK") == text


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_text_can_be_translated(text):
    assert len(translate_text(text, "UK").split("\n")) == len(text.split("\n"))


STITCHES = st.sampled_from(["sc", "hdc", "dc", "tr", "dtr", "FPdc", "bphdc", "Treble crochet"])
TOGETHER = st.sampled_from(["sc2tog", "hdc2tog", "DC3tog", "single crochet 2 together"])


@settings(deadline=None)
@given(STITCHES, STITCHES, TOGETHER, st.integers(1, 5), st.integers(2, 6))
def test_counts_under_us_names_are_the_same_in_both(first, other, together, plain, times):
    text = (
        f"Rnd 1: [{first} in next {plain} sts, 2 {other} in next st, skip 1 st] {times} times, "
        f"{together}, {other} in each st around"
    )
    below = (plain + 2) * times + 7
    us = check_text(text, terms="US", below=below).parts[0].rounds
    uk = check_text(translate_text(text, "UK"), terms="UK", below=below).parts[0].rounds
    assert [(r.verdict, r.made, r.takes) for r in us] == [(r.verdict, r.made, r.takes) for r in uk]
    assert us[0].takes == (below,)


@pytest.mark.parametrize("name", PATTERNS)
def test_a_whole_pattern_there_and_back(name):
    pattern = load_pattern(PATTERNS[name])
    other = load_text(to_toml(translate(pattern, "UK")))
    assert other.terms == "UK"
    back = load_text(to_toml(translate(other, "US")))
    for key in ("title", "terms", "sizes", "about", "gauge", "yarns", "stitches", "cautions"):
        assert getattr(back, key) == getattr(pattern, key)
    assert [(p.name, p.rounds, p.steps, p.note) for p in back.parts] == [
        (p.name, p.rounds, p.steps, p.note) for p in pattern.parts
    ]
    assert counts(other) == counts(pattern)


def counts(pattern):
    return [
        (r.label, r.verdict, r.made) for part in check_pattern(pattern).parts for r in part.rounds
    ]


def test_a_pattern_in_the_terms_asked_for_is_the_same_pattern():
    pattern = load_pattern(PATTERNS["dusk-moth"])
    assert translate(pattern, pattern.terms) is pattern


def test_names_that_a_pattern_gives_stay():
    pattern = load_text(
        'title = "Mat"\n[[stitch]]\nabbr = "tr"\nname = "truffle"\ntakes = 1\nmakes = 1\n'
        'how = "Sc twice."\n[[part]]\nname = "Mat"\nrounds = "Rnd 1: 6 sc in ring. (6)\\n'
        'Rnd 2: [tr, sc] 3 times. (6)"\n'
    )
    other = translate(pattern, "UK")
    assert other.parts[0].rounds.endswith("[tr, dc] 3 times. (6)")
    assert (other.stitches[0].abbr, other.stitches[0].how) == ("tr", "Dc twice.")
