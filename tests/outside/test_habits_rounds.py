"""Ways of writing a round: own lines and numbers that show the habits of the sources.

Sources, named per case: how-to-read guides (https://thewoobles.com,
https://www.amigurumino.com/tutorials/how-to-read-the-patterns/,
https://amysamigurumiadventure.com/?p=1204,
https://www.mooglyblog.com/crochet-pattern-symbols/,
https://www.anniescatalog.com/stitches/crochet/tips/symbols.html,
https://thecrochetbag.blogspot.com/2013/05/all-things-round.html), a page of a printed book
(https://zanotowane.pl/837/653), a UK magazine and a yarn company's leaflets.
"""

from __future__ import annotations

import pytest

from .case import Case, hold, rounds

TOYS = "https://thewoobles.com/pages/happea-6"
BARE = "https://thewoobles.com/en-ca/pages/rainbow-billy-6"
ROWS = "https://thewoobles.com/en-ca/pages/party-animal-8"
OWN_WORDS = "https://www.amigurumino.com/tutorials/how-to-read-the-patterns/"
ADVENTURE = "https://amysamigurumiadventure.com/?p=1204"
SYMBOLS = "https://www.mooglyblog.com/crochet-pattern-symbols/"
CATALOGUE = "https://www.anniescatalog.com/stitches/crochet/tips/symbols.html"
BOOK = "https://zanotowane.pl/837/653"
MAGAZINE = "https://pressreader.com/australia/simply-crochet/20201022/282909502999467"
ROUND_THINGS = "https://thecrochetbag.blogspot.com/2013/05/all-things-round.html"
LEAFLETS = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/"

# the comment above each case: taken | made
TOY_HABITS = [
    # 5 x (3 + 1) | 5 x (3 + 2)
    Case("bracket-x", "Rnd 5: [3 sc, inc] x 5", 25, TOYS, 20, 20),
    # 1 + 5 + 3 + 5 + 1 | 2 + 5 + 6 + 5 + 2; the x belongs to the inc alone
    Case("bare-x", "Rnd 3: inc, 5 sc, inc x 3, 5 sc, inc", 20, BARE, 15, 15),
    # 1 + 3 + 1 | 2 + 3 + 2
    Case("row-turn", "Row 4: inc, 3 sc, inc, ch 1 & turn", 7, ROWS, 5, 5),
    # 6 x (2 + 1) | 6 x (2 + 2)
    Case("own-words-inc", "R4: [2sc, 2in1] x6", 24, OWN_WORDS, 18, 18),
    # 4 x (3 + 2) | 4 x (3 + 1)
    Case("own-words-dec", "R8: [3sc, 2to1] x4", 16, OWN_WORDS, 20, 20),
    Case("round-range", "R6-8: sc around, three rounds", 24, OWN_WORDS, 24, 24),
    Case("ring-start", "MR SC 8", 8, ADVENTURE),
    Case("all-inc", "INC X 8", 16, ADVENTURE, 8, 8),
    # 4 x 5 + 1 + 2 + 1 = 24 of 25 | 4 x 6 + 2 + 2 + 2 = 30, as printed
    Case(
        "count-right-takes-wrong",
        "Rnd 6: (SC 4, INC) X 4, INC, SC 2, INC (30)",
        30,
        ADVENTURE,
        below=25,
        takes=24,
        verdict="differs",
    ),
    # the same with one sc more: 25 | 31
    Case(
        "count-and-takes-right",
        "Rnd 6: (SC 4, INC) X 4, INC, SC 3, INC (31)",
        31,
        ADVENTURE,
        below=25,
        takes=25,
        verdict="agrees",
    ),
    Case(
        "spiral",
        "2nd rnd: 2 sc in each sc around. Move marker up.",
        14,
        LEAFLETS + "PAC0116-030195M.pdf",
        7,
        7,
    ),
]

GUIDE_HABITS = [
    # 4 + 1 + 5 | 4 + 2 + 5
    Case(
        "in-one-place",
        "Rnd 3: Ch 1, dc in next 4 sts, (dc, ch 2, dc) in next st, dc 5; join.",
        11,
        SYMBOLS,
        below=10,
        takes=10,
        made={"dc": 11, "ch-2 sp": 1},
    ),
    # 9 + 2 + 3, 11 + 2 + 3, 14 + 2 + 3 | one fewer each
    Case(
        "sizes",
        "Row 7: Ch 1, sc 9 (11, 14), sc2tog, sc 3; turn. (13 (15, 18) sts)",
        (13, 15, 18),
        SYMBOLS,
        below=(14, 16, 19),
        takes=(14, 16, 19),
        verdict="agrees",
    ),
    Case(
        "times-group",
        "Rnd 1: *Sc in next st, ch 4, skip next 2 sts; rep from * around.\n"
        "Rnd 2: [Ch 4, sc in next ch-4 sp] 5 times.",
        5,
        CATALOGUE,
        below=15,
        made={"sc": 5, "ch-4 sp": 5},
    ),
    # 4 x 8 | 4 x 9
    Case(
        "star-around",
        "Rnd 7: *Sc in each of next 7 sc, 2 sc in next sc, rep from * around, "
        "join with sl st in beg sc.",
        36,
        CATALOGUE,
        below=32,
        takes=32,
    ),
    # 9 x 3 | 9 x 4
    Case(
        "skip-and-fan",
        "Rnd 3: *Sk 2 sc, [2 dc, ch 2, 2 dc] in next st, rep from * around",
        36,
        CATALOGUE,
        below=27,
        takes=27,
        made={"dc": 36, "ch-2 sp": 9},
    ),
    # 3 x (2 x 2 + 3) | 3 x (2 x 3 + 3)
    Case(
        "nested-braces",
        "Rnd 5: [{sc in next st, 2 sc in next st} twice, sc in next 3 sts] 3 times",
        27,
        CATALOGUE,
        below=21,
        takes=21,
    ),
    # once and five more: 6 x 3 | 6
    Case(
        "more-times",
        "Rnd 2: *Sc in next st, ch 2, skip next 2 sts; repeat from * five more times.",
        6,
        BOOK,
        below=18,
        takes=18,
        made={"sc": 6, "ch-2 sp": 6},
    ),
    # 3 x (3 + 1) + 3 | 3 x (3 + 2) + 3
    Case(
        "end-last-repeat",
        "Rnd 6: *Sc in next 3 sts, ch 2**, 2 sc in next st; repeat from * around, "
        "ending last repeat at **, join.",
        18,
        BOOK,
        below=15,
        takes=15,
        made={"sc": 18, "ch-2 sp": 4},
    ),
    # 2 + 6 x 4 + 2 | 3 + 6 x 5 + 2
    Case(
        "start-mid-repeat",
        "6th rnd: Ch 1, 1 sc in same spot, 2 sc in next sc, *[1 sc in each of next 3 sc, "
        "2 sc in next sc]. Rep from * around with 1 sc in each of last 2 sc. Join.",
        35,
        ROUND_THINGS,
        below=28,
        takes=28,
    ),
]

BEGINNINGS = [
    Case(
        "chain-counts",
        "1st rnd: Ch 2 (counts as hdc throughout), 9 hdc in ring. Join with sl st to top of ch 2.",
        10,
        ROUND_THINGS,
        made={"hdc": 10},
    ),
    # the chain is one too long for a tr: what the words say counts
    Case(
        "chain-counts-tr",
        "Round 1: Ch 5 (counts as tr), 15 tr in first ch, slip st to top of beg ch",
        16,
        LEAFLETS + "RHC0101-021719M.pdf",
        made={"tr": 16},
    ),
    Case(
        "leaflet-ring",
        "1st rnd: Ch 3 (counts as dc). 13 dc in ring. Join. 14 dc.",
        14,
        LEAFLETS + "BRC0502-031867M.pdf",
        verdict="agrees",
    ),
    # the chain stands for the first dc: ch 3 and 1, then 13 x 2
    Case(
        "leaflet-same-place",
        "1st rnd: Ch 3 (counts as dc). 13 dc in ring. Join.\n"
        "2nd rnd: Ch 3. 1 dc in same sp. 2 dc in each dc around. Join.",
        28,
        LEAFLETS + "BRC0502-031867M.pdf",
        takes=14,
    ),
    # 6 x 8 | 6 x 9
    Case(
        "leaflet-inc-6",
        "9th rnd: Ch 1. *1 sc in each of next 7 sc. 2 sc in next sc. Rep from * around. Join.",
        54,
        LEAFLETS + "BRC0234-030779M.pdf",
        below=48,
        takes=48,
    ),
    # 1 + 20 x 2 + 1 | 2 + 20 x 2; ch 4 is a dc and one chain
    Case(
        "leaflet-vst-round",
        "2nd rnd: Ch 4 (counts as dc and ch 1), dc in same st. *Sk 1 sc, (dc, ch 1, dc) in next "
        "sc. Rep from * to last sc. Sk last sc. Join to 3rd ch of beg ch 4.",
        42,
        LEAFLETS + "CAC0116-029868M.pdf",
        below=42,
        takes=42,
        made={"dc": 42, "ch-1 sp": 21},
    ),
]

UK_HABITS = [
    Case(
        "uk-all-inc",
        "Round 2: Ch1, 2htr in each htr around, ss to beg htr",
        18,
        MAGAZINE,
        below=9,
        takes=9,
        made={"hdc": 18},
        terms="UK",
    ),
    # 3 + 6 x 3 | 4 + 6 x 4
    Case(
        "uk-pair-then-repeat",
        "Round 4: Ch1, dc into first dc, dc into next dc, 2dc in next dc, *dc into each of next "
        "2 dc, 2dc in next dc; repeat from * 5 times more, ss to beg dc",
        28,
        MAGAZINE,
        below=21,
        takes=21,
        made={"sc": 28},
        terms="UK",
    ),
    # 7 x 4 | 7 x 5
    Case(
        "uk-staggered",
        "Round 5: Ch1, 2dc into first dc, dc into each of next 3 dc, *2dc in next dc, dc into "
        "each of next 3 dc; repeat from * around, ss to beg dc",
        35,
        MAGAZINE,
        below=28,
        takes=28,
        made={"sc": 35},
        terms="UK",
    ),
]


@pytest.mark.parametrize("case", TOY_HABITS + GUIDE_HABITS + BEGINNINGS + UK_HABITS, ids=str)
def test_habit(case: Case) -> None:
    hold(case)


def test_a_range_is_as_many_rounds_as_it_names() -> None:
    found = rounds("R5: [3sc, inc] x6\nR6-8: sc around", below=24)
    assert [r.makes for r in found][-3:] == [(30,)] * 3, OWN_WORDS
