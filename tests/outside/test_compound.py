"""What compound stitches take of the round below and what they leave for the next.

Sources, named per case: https://thewoobles.com/pages/happea-6 (increase),
https://trantor.is/content/rINLxlqbfRSKxBh1/Glossary.html (sc2tog, sc3tog),
https://squishyandco.com/bobble-puff-popcorn-crochet (popcorn, bobble),
https://daisyfarmcrafts.com/puff-stitch/ (puff),
https://geocities.datacellar.net/Heartland/Ranch/4054/sstitches.htm (cluster in one place),
https://wendyteaches-mrsscubafish.blogspot.com/2018/03/crochet-popcorn-bobbles-clusters.html
(cluster as a decrease),
https://nessiesnotions.com/blogs/stitch-guide/crossed-double-crochet-stitch,
https://ravenscrochet.com/star-stitch/ (star),
https://theloopholefox.com/slip-stitches-in-joined-rounds/ (the join), and a yarn
company's leaflets (the others).
"""

from __future__ import annotations

import pytest

from tracker.notation.howto import how_to

from .case import Case, hold

INCREASE = "https://thewoobles.com/pages/happea-6"
GLOSSARY = "https://trantor.is/content/rINLxlqbfRSKxBh1/Glossary.html"
LEAFLETS = "https://cdn.shopify.com/s/files/1/0711/5132/1403/files/"
HDC2TOG = LEAFLETS + "CAC0129-028772M.pdf"
CHEVRON = LEAFLETS + "BRC0125-003704M.pdf"
V_STITCH = LEAFLETS + "BRC0502-029618M.pdf"
OVER_3 = LEAFLETS + "PAC0116-031552M.pdf"
BOBBLES = "https://squishyandco.com/bobble-puff-popcorn-crochet"
PUFFS = "https://daisyfarmcrafts.com/puff-stitch/"
CLUSTER = "https://geocities.datacellar.net/Heartland/Ranch/4054/sstitches.htm"
SPREAD_CLUSTER = (
    "https://wendyteaches-mrsscubafish.blogspot.com/2018/03/crochet-popcorn-bobbles-clusters.html"
)
CROSSED = "https://nessiesnotions.com/blogs/stitch-guide/crossed-double-crochet-stitch"
#: Said alike wherever the stitch is shown.
NO_SOURCE = "common practice, no source"
JOIN = "https://theloopholefox.com/slip-stitches-in-joined-rounds/"

CASES = [
    Case("inc", "Rnd 2: inc x 7", 14, INCREASE, below=7, takes=7),
    Case("dec", "Rnd 9: dec x 7", 7, GLOSSARY, below=14, takes=14),
    Case("sc2tog", "Rnd 2: [sc2tog] x 6", 6, GLOSSARY, below=12, takes=12),
    Case("invisible dec", "Rnd 12: [sc in next st, invdec] x 5", 10, GLOSSARY, below=15, takes=15),
    Case("sc3tog", "Rnd 8: [sc3tog] x 5", 5, GLOSSARY, below=15, takes=15),
    # 5 x (3 + 2) taken, 5 x (1 + 2) made
    Case(
        "sc2tog over 3",
        "Rnd 5: *Sc2tog over next 3 sts, sc in next 2 sts; rep from * around.",
        15,
        OVER_3,
        below=25,
        takes=25,
    ),
    # 4 x (2 + 2) taken, 4 x (2 + 1) made
    Case(
        "hdc2tog",
        "Rnd 6: *Hdc in next 2 sts, hdc2tog; rep from * around.",
        12,
        HDC2TOG,
        below=16,
        takes=16,
        made={"hdc2tog": 4, "hdc": 8},
    ),
    Case("dc2tog", "Rnd 7: (dc, dc2tog) 6 times", 12, CHEVRON, below=18, takes=18),
    Case("dc3tog", "Row 5: Dc in next 2 sts, dc3tog, dc in next 5 sts; turn.", 8, CHEVRON, 10, 10),
    Case("dc5tog", "Rnd 4: [dc in next 5 sts, dc5tog] twice", 12, CHEVRON, 20, 20),
    Case("tr2tog", "Rnd 5: *Tr2tog, tr in next 4 sts; rep from * around.", 15, GLOSSARY, 18, 18),
    # 3 x (2 + 1 + 2 + 1) taken, 3 x (5 + 1) made
    Case(
        "5 dc in one",
        "Rnd 3: *Skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st; "
        "rep from * around.",
        18,
        CHEVRON,
        below=18,
        takes=18,
        made={"dc": 15, "sc": 3},
    ),
    Case(
        "shell",
        "Rnd 3: *Shell in next st, skip 2 sts, sc in next st, skip 2 sts; rep from * around.",
        24,
        CHEVRON,
        below=24,
        takes=24,
    ),
    Case(
        "V spelt out",
        "Rnd 3: *(Dc, ch 2, dc) in next st, skip next 2 sts; rep from * around.",
        14,
        V_STITCH,
        below=21,
        takes=21,
        made={"dc": 14, "ch-2 sp": 7},
    ),
    Case(
        "V-st",
        "Rnd 3: *V-st in next st, skip next st; rep from * around.",
        18,
        V_STITCH,
        below=18,
        takes=18,
        made={"ch-1 sp": 9},
    ),
    Case(
        "V in V",
        "Rnd 3: *(Dc, ch 2, dc) in next st, skip next 2 sts; rep from * around.\n"
        "Rnd 4: *(Dc, ch 2, dc) in next ch-2 sp; rep from * around.",
        14,
        V_STITCH,
        below=21,
        made={"dc": 14, "ch-2 sp": 7},
    ),
    Case(
        "popcorn",
        "Rnd 4: *Popcorn in next st, sc in next 3 sts; rep from * around.",
        16,
        BOBBLES,
        below=16,
        takes=16,
        made={"popcorn": 4, "sc": 12},
    ),
    Case(
        "bobble",
        "Row 6: *Bobble in next st, sc in next 4 sts; rep from * across; turn.",
        15,
        BOBBLES,
        below=15,
        takes=15,
        made={"bobble": 3, "sc": 12},
    ),
    Case(
        "puff",
        "Rnd 2: (puff in next st, ch 1, skip next st) 6 times",
        6,
        PUFFS,
        below=12,
        takes=12,
        made={"puff": 6, "ch-1 sp": 6},
    ),
    Case(
        "cluster in one place",
        "Rnd 3: *Cl in next st, ch 2, skip next st; rep from * around.",
        7,
        CLUSTER,
        below=14,
        takes=14,
        made={"cl": 7, "ch-2 sp": 7},
    ),
    Case(
        "cluster as a decrease",
        "Rnd 4: *Cl over next 3 sts, ch 2; rep from * around.",
        6,
        SPREAD_CLUSTER,
        below=18,
        takes=18,
        made={"cl": 6, "ch-2 sp": 6},
    ),
    Case(
        "crossed pair spelt out",
        "Rnd 5: *Skip next st, dc in next st, dc in skipped st; rep from * around.",
        20,
        CROSSED,
        below=20,
        takes=20,
        made={"dc": 20},
    ),
    Case("herringbone", "Row 2: Hhdc in each st across", 17, NO_SOURCE, below=17, takes=17),
    Case("waistcoat", "Rnd 3: Waistcoat st in each st around", 18, NO_SOURCE, below=18, takes=18),
    Case("crossed pair", "Rnd 5: [crossed dc] 11 times", 22, CROSSED, below=22, takes=22),
    Case(
        "join",
        "Rnd 2: Sc in each st around; join with sl st in first sc.",
        13,
        JOIN,
        below=13,
        takes=13,
        made={"sc": 13},
    ),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_takes_and_makes(case: Case) -> None:
    hold(case)


@pytest.mark.parametrize(
    ("stitch", "loops", "source"),
    [
        ("bobble", 6, BOBBLES),
        ("sc2tog", 3, GLOSSARY),
        ("sc3tog", 4, GLOSSARY),
        ("star", 6, "https://ravenscrochet.com/star-stitch/"),
    ],
)
def test_how_to_closes_as_many_loops_as_the_source(stitch: str, loops: int, source: str) -> None:
    said = how_to(stitch)
    assert f" {loops} loops" in said or f"until {loops} are" in said, source
