"""Rows on a foundation chain: stitch multiples, turning chains, crossed dc, stars.

A foundation row takes the whole chain, skipped chains included. Multiples: pages named
per row; "multiple of a + b" is a times n, plus b. Turning chains:
http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html (chains a stitch needs,
and whether they count as one).
"""

from __future__ import annotations

import pytest

from .case import Case, hold, last

SHELLS = (
    "Row 1: Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, "
    "sc in next ch; rep from * across; turn."
)
POINTS = (
    "Row 1: Sc in 2nd ch from hook, *sc in next 5 ch, skip next 2 ch, sc in next 4 ch, "
    "3 sc in next ch; rep from * across; turn."
)
LEANING = "Row 1: Skip first ch, *2 sc in next ch, sc in next 2 ch, sc2tog; rep from * across."
FANS = (
    "Row 1: Hdc in 3rd ch from hook (skipped ch do not count as a st), "
    "*skip next 2 ch, 5 dc in next ch, skip next 2 ch; rep from * to last ch, hdc in last ch."
)
ARCHES = "Row 1: Sc in 2nd ch from hook, *ch 2, skip next 2 ch, sc in next ch; rep from * across."
PAIRS = (
    "Row 1: Dc in 4th ch from hook (skipped ch count as dc), dc in next ch, "
    "*ch 2, skip next 2 ch, dc in next 2 ch; rep from * across; turn."
)

SHELLS_PAGE = "https://oombawkadesigncrochet.com/using-stitch-pattern-multiples/"
POINTS_PAGE = "http://made-by-fabi.blogspot.com/2015/11/crochet-multiples.html"
LEANING_PAGE = "https://www.stitchwhisperdesigns.com/2021/03/multiples.html?m=1"
FANS_PAGE = "http://ninasatmyhouse.blogspot.com/2015_10_25_archive.html?m=1"
ARCHES_PAGE = "https://adstoob.com/how-to-figure-out-multiples-in-crochet-ripple-afghan/"
PAIRS_PAGE = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/BRC0502-029618M.pdf"


def on(chains: int, row: str) -> str:
    """The row below its foundation chain."""
    return f"Ch {chains}.\n{row}"


# the comment above each case: chains taken | stitches made
MULTIPLES = [
    # 1 + 1 + 11 x 6 | 1 + 11 x 6
    Case("6 + 2, 11 times", on(68, SHELLS), 67, SHELLS_PAGE, takes=68, made={"dc": 55, "sc": 12}),
    # 1 + 1 + 9 x 12 | 1 + 9 x 12
    Case("12 + 2, 9 times", on(110, POINTS), 109, POINTS_PAGE, takes=110),
    # 1 + n x 5 | n x 5
    Case("5 + 1, twice", on(11, LEANING), 10, LEANING_PAGE, takes=11),
    Case("5 + 1, 11 times", on(56, LEANING), 55, LEANING_PAGE, takes=56),
    Case("5 + 1, 20 times", on(101, LEANING), 100, LEANING_PAGE, takes=101),
    # 2 + 1 + 2 x 5 + 1 | 1 + 2 x 5 + 1
    Case("5 + 2 + 2, twice", on(14, FANS), 12, FANS_PAGE, takes=14, made={"hdc": 2, "dc": 10}),
    # 1 + 1 + n x 3 | 1 + n
    Case("3 + 2, once", on(5, ARCHES), 2, ARCHES_PAGE, takes=5, made={"sc": 2, "ch-2 sp": 1}),
    Case("3 + 2, twice", on(8, ARCHES), 3, ARCHES_PAGE, takes=8, made={"sc": 3, "ch-2 sp": 2}),
    # 3 + 1 + 1 + 42 x 4 | 1 + 1 + 1 + 42 x 2
    Case(
        "4 + 5, 42 times", on(173, PAIRS), 87, PAIRS_PAGE, takes=173, made={"dc": 87, "ch-2 sp": 42}
    ),
]

WRONG_CHAINS = [
    Case("6 + 2, one chain over", on(69, SHELLS) + " (67)", None, SHELLS_PAGE, verdict="differs"),
    Case(
        "12 + 2, one chain short", on(109, POINTS) + " (109)", None, POINTS_PAGE, verdict="differs"
    ),
    Case(
        "5 + 1, two chains over", on(13, LEANING) + " (10)", None, LEANING_PAGE, verdict="differs"
    ),
    Case("3 + 2, one chain over", on(9, ARCHES) + " (3 sc)", None, ARCHES_PAGE, verdict="differs"),
]

CROSSED = "https://nessiesnotions.com/blogs/stitch-guide/crossed-double-crochet-stitch"


def crossed(pairs: int) -> str:
    """A row of crossed pairs with an hdc at both ends."""
    return (
        f"Row 1: Hdc in 2nd ch from hook, [skip next ch, dc in next ch, dc in skipped ch] "
        f"{pairs} times, hdc in last ch; turn."
    )


PAIRED = [
    # 1 + 1 + n x 2 + 1 | 1 + n x 2 + 1
    Case("4 pairs", on(11, crossed(4)), 10, CROSSED, takes=11, made={"dc": 8, "hdc": 2}),
    Case("7 pairs", on(17, crossed(7)), 16, CROSSED, takes=17, made={"dc": 14, "hdc": 2}),
]

STARS = "https://pottpro.wordpress.com/2019/03/12/learning-to-crochet-lesson-5-star-stitch/"
EYES = "https://ravenscrochet.com/star-stitch/"
STAR_ROW = (
    "Special stitches:\n"
    "Star: draw up a loop in each place named, draw through all loops, ch 1; makes 1 st.\n\n"
    "Ch {chains}.\n"
    "Row 1: Skip first ch, star over next 5 ch, *star over next 2 ch; rep from * to last ch, "
    "hdc in last ch; turn."
)
EYE_ROW = "\nRow 2: Ch 1, hdc in first hdc, 2 hdc in each star across; turn."

STARRED = [
    # stars = (chains - 5) / 2, then one hdc
    Case("11 chains", STAR_ROW.format(chains=11), 3 + 1, STARS, takes=11),
    Case("25 chains", STAR_ROW.format(chains=25), 10 + 1, STARS, takes=25),
    Case("153 chains", STAR_ROW.format(chains=153), 74 + 1, STARS, takes=153),
    # 2 in each eye, 1 in the hdc
    Case("row of eyes", STAR_ROW.format(chains=25) + EYE_ROW, 21, EYES, takes=11),
]


@pytest.mark.parametrize("case", MULTIPLES, ids=str)
def test_multiples(case: Case) -> None:
    hold(case)


@pytest.mark.parametrize("case", WRONG_CHAINS, ids=str)
def test_a_chain_of_the_wrong_multiple_is_told(case: Case) -> None:
    hold(case)


@pytest.mark.parametrize("case", PAIRED, ids=str)
def test_crossed_dc(case: Case) -> None:
    hold(case)


@pytest.mark.parametrize("case", STARRED, ids=str)
def test_stars(case: Case) -> None:
    hold(case)


TURNING = "http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html"
WIDTH = 16
NTH = {3: "3rd", 4: "4th", 5: "5th", 6: "6th"}


@pytest.mark.parametrize(("stitch", "chains"), [("hdc", 2), ("dc", 3), ("tr", 4), ("dtr", 5)])
def test_a_turning_chain_that_counts_keeps_the_width(stitch: str, chains: int) -> None:
    text = (
        f"Ch {WIDTH - 1 + chains}.\n"
        f"Row 1: {stitch} in {NTH[chains + 1]} ch from hook (skipped ch count as {stitch}) "
        "and in each ch across; turn.\n"
        f"Row 2: Ch {chains} (counts as {stitch}), skip first st, "
        f"{stitch} in each st across; turn.\n"
        f"Row 3: Ch {chains} (counts as {stitch}), skip first st, {stitch} in each {stitch} "
        "across, "
        f"{stitch} in top of turning ch; turn."
    )
    for rows in (2, 3, 4):
        found = last("\n".join(text.splitlines()[:rows]))
        assert found.makes == (WIDTH,), f"row {rows - 1}: {TURNING}"
        assert found.verdict == "unstated"


@pytest.mark.parametrize(("stitch", "chains"), [("sc", 1), ("hdc", 1)])
def test_a_turning_chain_that_does_not_count_keeps_the_width(stitch: str, chains: int) -> None:
    text = (
        f"Ch {WIDTH + 1}.\n"
        f"Row 1: {stitch} in 2nd ch from hook and in each ch across; turn.\n"
        f"Row 2: Ch {chains} (does not count as a st), {stitch} in each st across; turn.\n"
        f"Row 3: Ch {chains}, {stitch} in each st across; turn."
    )
    for rows in (2, 3, 4):
        found = last("\n".join(text.splitlines()[:rows]))
        assert found.makes == (WIDTH,), f"row {rows - 1}: {TURNING}"
        assert found.verdict == "unstated"


def test_slip_stitches_need_no_turning_chain() -> None:
    found = last(f"Row 2: Sl st in each st across; turn. ({WIDTH})", below=WIDTH)
    assert found.takes == (WIDTH,), TURNING
    assert found.verdict == "agrees"
