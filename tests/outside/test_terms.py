"""US and UK terms: the same line in both gives the same stitches.

Sources, which agree on every pair up to double treble:
https://cdn.shopify.com/s/files/1/1218/2756/files/Crochet_hook_yarn_and_stitch_conversions_metres_PDF_2.pdf
and http://funcrochetdesigns.com/crochet/tuesday-crochet-tip-crochet-terms-by-country/.
"miss" and "skip": common practice, no source.
"""

from __future__ import annotations

import pytest

from .case import last

#: US, UK, US name of the stitch that is made.
PAIRS = [
    ("sc", "dc", "sc"),
    ("single crochet", "double crochet", "sc"),
    ("hdc", "htr", "hdc"),
    ("half double crochet", "half treble", "hdc"),
    ("dc", "tr", "dc"),
    ("double crochet", "treble", "dc"),
    ("tr", "dtr", "tr"),
    ("treble", "double treble", "tr"),
    ("dtr", "trtr", "dtr"),
    ("dtr", "ttr", "dtr"),
    ("double treble", "triple treble", "dtr"),
]

LINES = [
    ("Rnd 4: *{us} in next 2 sts, 2 {us} in next st; rep from * around; join.", 16),
    ("Rnd 4: (2 {us}, ch 2, 2 {us}) in next st, skip 2 sts, [{us} in next 3 sts] 3 times", 13),
]


@pytest.mark.parametrize(("us", "uk", "name"), PAIRS)
@pytest.mark.parametrize(("line", "count"), LINES)
def test_the_same_line_in_both_terms(us: str, uk: str, name: str, line: str, count: int) -> None:
    in_us = last(line.format(us=us), terms="US", below=12)
    in_uk = last(line.format(us=uk).replace("skip", "miss"), terms="UK", below=12)
    assert in_us.made[name] == (count,)
    assert in_uk.made == in_us.made
    assert in_uk.takes == in_us.takes == (12,)


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        ("sl st in next 4 sts, sc in next 8 sts", "ss in next 4 sts, dc in next 8 sts"),
        ("sl st in next 4 sts, sc in next 8 sts", "sl st in next 4 sts, dc in next 8 sts"),
        ("[dc in next st, ch 3, skip 2 sts] 4 times", "[tr in next st, ch 3, miss 2 sts] 4 times"),
        ("[sc2tog, sc in next 2 sts] 3 times", "[dc2tog, dc in next 2 sts] 3 times"),
        ("[hdc2tog, hdc in next st] 4 times", "[htr2tog, htr in next st] 4 times"),
        ("[dc3tog, ch 3] 4 times", "[tr3tog, ch 3] 4 times"),
        (
            "[FPdc in next st, BPdc in next st] 6 times",
            "[FPtr in next st, BPtr in next st] 6 times",
        ),
    ],
)
def test_other_stitches_in_both_terms(us: str, uk: str) -> None:
    in_us = last(f"Row 3: {us}; turn.", terms="US", below=12)
    in_uk = last(f"Row 3: {uk}; turn.", terms="UK", below=12)
    assert in_us.verdict == in_uk.verdict == "unstated"
    assert in_us.makes == in_uk.makes
    assert in_us.made == in_uk.made


@pytest.mark.parametrize(
    ("word", "us", "uk"),
    [("dc", "dc", "sc"), ("tr", "tr", "dc"), ("dtr", "dtr", "tr"), ("trtr", "trtr", "dtr")],
)
def test_a_word_that_clashes_is_read_by_the_terms(word: str, us: str, uk: str) -> None:
    line = f"Rnd 3: {word} in each st around."
    assert last(line, terms="US", below=9).made == {us: (9,)}
    assert last(line, terms="UK", below=9).made == {uk: (9,)}
