"""Keys of a pattern file that a reading needs: what an abbreviation means, spaces, rings."""

import pytest

from tracker.pattern.draft import to_toml
from tracker.pattern.load import PatternError, load_text

HEAD = 'title = "Mat"\nterms = "UK"\nrings = ["knot ring"]\n'
PART = "[[part]]\nname = \"Mat\"\nrounds = '''\nRnd 1: 6 tc in ring. (6)\n'''\n"


def load(stitch):
    return load_text(f"{HEAD}[[stitch]]\n{stitch}\n{PART}", "mat.toml")


def test_a_word_that_means_a_stitch_of_the_dictionary():
    found = load('abbr = "tc"\nmeans = "tr"')
    assert (found.stitches[0].abbr, found.stitches[0].us, found.stitches[0].takes) == (
        "tc",
        "dc",
        1,
    )
    assert found.rings == ("knot ring",)
    assert load_text(to_toml(found)).stitches == found.stitches


def test_chain_spaces_of_a_special_stitch():
    found = load('abbr = "tc"\ntakes = 1\nmakes = 4\nspaces = [2, 3]')
    assert found.stitches[0].spaces == (2, 3)
    assert load_text(to_toml(found)).stitches == found.stitches


@pytest.mark.parametrize(
    ("stitch", "said"),
    [
        ('abbr = "tc"\nmeans = "sparkle"', 'no stitch is called "sparkle" in UK terms'),
        (
            'abbr = "tc"\nmeans = "tr"\ntakes = 2',
            'a stitch with "means" has no "takes": it is the stitch it means',
        ),
        ('abbr = "tc"\ntakes = 1\nmakes = 1\nspaces = [0]', "each from 1 to 100"),
        ('abbr = "tc"\ntakes = 1\nmakes = 1\nspaces = 2', '"spaces" must be a list of whole'),
    ],
)
def test_what_is_wrong_is_said(stitch, said):
    with pytest.raises(PatternError) as caught:
        load(stitch)
    assert said in str(caught.value)
