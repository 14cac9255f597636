"""Rounds that grow or shrink by a rule: spread increases, ripples, hyperbolic planes.

Sources, named per case. Spread increases: how-to pages of a publisher, two yarn shops and
a yarn maker. Ripples: https://crochetistheway.blogspot.com/2014/08/how-to-design-your-own-ripple-pattern.html
(one decrease for each increase), http://www.crochetcabana.com/html/technique_ripple.html
(3 in one for a hill, skip 2 for a valley) and a yarn company's leaflets. Hyperbolic planes:
http://www.ams.org/publicoutreach/math-imagery/taimina and
https://sites.google.com/site/phanyamada/Home/crochet/hyperbolic-model-with-rate-54.
"""

from __future__ import annotations

import pytest

from .case import Case, hold, rounds

PUBLISHER = (
    "http://www.dummies.com/how-to/content/how-to-increase-at-several-points-in-the-same-row.html"
)
SHOP = "http://woolpackyarn.com/calculating-where-to-place-the-increases.html"
LESSON = "a yarn maker's lesson, read on a copying site; sums worked again here"
GAPS = "https://wilmade.com/calculate-evenly-spaced-increases-decreases/"
HILLS = "http://www.crochetcabana.com/html/technique_ripple.html"
RIPPLE = "https://www.freecrochetpatterns.club/ripple-crochet-stitch/"
LEAFLETS = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/"
CHEVRON = LEAFLETS + "BRC0125-003704M.pdf"
WAVE = LEAFLETS + "BRC0202-003788M.pdf"
TAIMINA = "http://www.ams.org/publicoutreach/math-imagery/taimina"
RATE = "https://sites.google.com/site/phanyamada/Home/crochet/hyperbolic-model-with-rate-54"

# the comment above each case: taken | made
SPREAD = [
    # 4 x 8 + 8 | 4 x 9 + 8
    Case(
        "40 and 4",
        "Row 9: *Sc in next 7 sts, 2 sc in next st; rep from * 3 more times, "
        "sc in next 8 sts; turn.",
        44,
        PUBLISHER,
        below=40,
        takes=40,
    ),
    # 3 x 13 + 12 | 3 x 14 + 13
    Case(
        "51 and 4",
        "Rnd 6: [sc in next 12 sts, 2 sc in next st] 3 times, sc in next 11 sts, 2 sc in last st.",
        55,
        SHOP,
        below=51,
        takes=51,
    ),
    # 16 x 7 | 16 x 8
    Case(
        "112 and 16",
        "Rnd 6: *Hdc in next 6 sts, 2 hdc in next st; rep from * around.",
        128,
        SHOP,
        below=112,
        takes=112,
    ),
    # 16 x 6 + 4 | 16 x 7 + 4
    Case(
        "100 and 16",
        "Rnd 6: *Sc in next 5 sts, 2 sc in next st; rep from * to last 4 sts, sc in last 4 sts.",
        116,
        LESSON,
        below=100,
        takes=100,
    ),
    # 10 x (6 + 7) + 6 + 4 | 10 x (7 + 8) + 7 + 4
    Case(
        "140 and 21",
        "Rnd 8: [sc in next 5 sts, 2 sc in next st, sc in next 6 sts, 2 sc in next st] 10 times, "
        "sc in next 5 sts, 2 sc in next st, sc in last 4 sts.",
        161,
        LESSON,
        below=140,
        takes=140,
    ),
    # 12 x 4 | 12 x 5
    Case(
        "48 and 12, round",
        "Rnd 4: *Dc in next 3 sts, 2 dc in next st; rep from * around.",
        60,
        LESSON,
        below=48,
        takes=48,
    ),
    # 2 + 11 x 4 + 2 | 3 + 11 x 5 + 2
    Case(
        "48 and 12, row",
        "Row 4: Sc in first st, 2 sc in next st, [sc in next 3 sts, 2 sc in next st] 11 times, "
        "sc in last 2 sts; turn.",
        60,
        LESSON,
        below=48,
        takes=48,
    ),
    # 6 x 23 + 2 x 24 | 6 x 22 + 2 x 23
    Case(
        "186 less 8",
        "Rnd 30: [sc in next 21 sts, sc2tog] 6 times, [sc in next 22 sts, sc2tog] twice.",
        178,
        GAPS,
        below=186,
        takes=186,
    ),
    # 6 x 23 + 2 x 24 | 6 x 24 + 2 x 25
    Case(
        "186 and 8",
        "Rnd 30: [sc in next 22 sts, 2 sc in next st] 6 times, "
        "[sc in next 23 sts, 2 sc in next st] 2 times.",
        194,
        GAPS,
        below=186,
        takes=186,
    ),
]

WAVE_FIRST = (
    "Ch 105.\n"
    "Row 1: Dc in 4th ch from hook (skipped ch count as dc), 2 dc in each of next 5 ch, "
    "[skip next ch, dc in next ch] 5 times, skip next ch, "
    "*2 dc in each of next 6 ch, [skip next ch, dc in next ch] 5 times, skip next ch; "
    "rep from * across; turn."
)
WAVE_AGAIN = (
    "\nRow 2: Ch 1 (does not count as a st), *2 dc in each of next 6 sts, "
    "[skip next st, dc in next st] 5 times, skip next st; rep from * across; turn."
)
PEAKS = (
    "Rnd 1: *Dc in next 7 sts, (dc, ch 2, dc) in next st, dc in next 7 sts, skip next 2 sts; "
    "rep from * around.\n"
    "Rnd 2: *Skip next dc, dc in next 7 dc, (dc, ch 2, dc) in next ch-2 sp, dc in next 7 dc, "
    "skip next dc; rep from * around."
)
TWO_REPEATS = (
    "Row 1: Dc in 4th ch from hook (skipped ch count as dc), dc in next 5 ch, 3 dc in next ch, "
    "dc in next 7 ch, *skip next 2 ch, dc in next 7 ch, 3 dc in next ch, dc in next 7 ch; "
    "rep from * across. (34)"
)

RIPPLES = [
    # 3 x (1 + 4 + 2 + 4) | 3 x (3 + 4 + 4)
    Case(
        "hill 3 in one, valley skip 2",
        "Rnd 4: *3 dc in next st, dc in next 4 sts, skip next 2 sts, dc in next 4 sts; "
        "rep from * around.",
        33,
        HILLS,
        below=33,
        takes=33,
    ),
    # 3 + 1 + 1 + 2 + 5 + 2 + 1 + 1 + 3 | 1 + 1 + 5 + 2 + 1 + 2 + 5 + 1 + 1
    Case(
        "chevron of 19",
        "Row 4: Dc3tog, dc in next st, 5 dc in next st, dc in next 2 sts, dc5tog, "
        "dc in next 2 sts, 5 dc in next st, dc in next st, dc3tog; turn.",
        19,
        CHEVRON,
        below=19,
        takes=19,
    ),
    # 3 + 2 + 1 + 3 + 5 + 3 + 1 + 2 + 3 | 1 + 2 + 5 + 3 + 1 + 3 + 5 + 2 + 1
    Case(
        "wider chevron",
        "Row 4: Dc3tog, dc in next 2 sts, 5 dc in next st, dc in next 3 sts, dc5tog, "
        "dc in next 3 sts, 5 dc in next st, dc in next 2 sts, dc3tog; turn.",
        23,
        CHEVRON,
        below=23,
        takes=23,
    ),
    # 3 + 2 + 1 + 1 + 2 + 5 + 2 + 1 + 1 + 3 | 1 + 1 + 5 + 2 + 1 + 2 + 5 + 1 + 1
    Case(
        "chevron from 21 chains",
        "Ch 21.\nRow 1: Skip first 3 ch, dc2tog, dc in next ch, 5 dc in next ch, "
        "dc in next 2 ch, dc5tog, dc in next 2 ch, 5 dc in next ch, dc in next ch, dc3tog; turn.",
        19,
        CHEVRON,
        takes=21,
    ),
    # 3 + 1 + 5 + 10 + 1 + 5 x 17 | 1 + 1 + 10 + 5 + 5 x 17
    Case("wave from 105 chains", WAVE_FIRST, 102, WAVE, takes=105),
    Case("wave again", WAVE_FIRST + WAVE_AGAIN, 102, WAVE, takes=102),
    # 4 x (6 + 10 + 1) | 4 x (12 + 5)
    Case(
        "wave repeat",
        "Rnd 3: *(2 dc in next st) 6 times, (skip next st, dc in next st) 5 times, skip next st; "
        "rep from * around.",
        68,
        WAVE,
        below=68,
        takes=68,
    ),
    # dc alone: 3 x (1 + 7 + 7 + 1) | 3 x (7 + 2 + 7)
    Case("peak in a space", PEAKS, 48, RIPPLE, below=51, made={"dc": 48, "ch-2 sp": 3}),
    # 34 chains: 3 + 6 + 1 + 7, then 2 + 7 + 1 + 7 | 1 + 6 + 3 + 7, then 7 + 3 + 7
    Case("two repeats of 17", "Ch 34.\n" + TWO_REPEATS, 34, RIPPLE, takes=34, verdict="agrees"),
    Case("14 + 3 is the wrong multiple", "Ch 31.\n" + TWO_REPEATS, None, RIPPLE, verdict="differs"),
]


@pytest.mark.parametrize("case", SPREAD, ids=str)
def test_spread_increases_and_decreases(case: Case) -> None:
    hold(case)


@pytest.mark.parametrize("case", RIPPLES, ids=str)
def test_ripples(case: Case) -> None:
    hold(case)


def one_more_after_every(plain: int, below: int, number: int) -> str:
    """A round with one increase in every ``plain`` stitches, what is left worked plain."""
    if plain == 1:
        return f"Rnd {number}: 2 sc in each st around."
    left = below % plain
    before = f"next {plain - 1} sts" if plain > 2 else "next st"
    rest = {0: "around.", 1: "to last st, sc in last st."}
    end = rest.get(left, f"to last {left} sts, sc in last {left} sts.")
    return f"Rnd {number}: *Sc in {before}, 2 sc in next st; rep from * {end}"


@pytest.mark.parametrize(
    ("plain", "counts", "source"),
    [
        (1, (6, 12, 24, 48), "http://timaryart.blogspot.com/2009/03"),
        (2, (11, 16, 24, 36), TAIMINA),
        (4, (20, 25, 31, 38), RATE),
        (10, (20, 22, 24, 26), RATE),
        (12, (30, 32, 34, 36), TAIMINA),
    ],
)
def test_hyperbolic_rounds_grow_by_a_ratio_rounded_down(
    plain: int, counts: tuple[int, ...], source: str
) -> None:
    text = "\n".join(one_more_after_every(plain, below, n) for n, below in enumerate(counts[:3], 2))
    found = rounds(text, below=counts[0])
    assert [r.makes for r in found] == [(n,) for n in counts[1:]], source
    assert [r.takes for r in found] == [(n,) for n in counts[:3]], source
