"""Common ways to write a round: what each makes, worked out by hand from its words."""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

#: The stitches below (0: none), the lines, the stitches the last of them makes.
FORMS: tuple[tuple[int, str, int], ...] = (
    (
        0,
        ("Ch 16\nRow 1: Sc in 2nd ch from hook and to end."),
        15,
    ),
    (
        0,
        ("Ch 16\nRow 1: Sc in second ch from hook and each ch across."),
        15,
    ),
    (
        0,
        ("Ch 16\nRow 1: Starting in 2nd ch from hook, sc across."),
        15,
    ),
    (
        0,
        (
            "Ch 16\n"
            "Row 1: Sc in 2nd ch from hook, sc across to last ch, 3 sc in last ch; going "
            "across other side of chain, sc across to last ch, 2 sc in last ch."
        ),
        32,
    ),
    (
        0,
        (
            "Ch 16\n"
            "Rnd 1: Sc in 2nd ch from hook, sc in next 13 ch, 3 sc in last ch; rotate "
            "work, sc in next 13 ch along other side, 2 sc in last ch. Join."
        ),
        32,
    ),
    (
        0,
        (
            "Ch 16\n"
            "Rnd 1: 2 sc in 2nd ch from hook, sc in next 13, 4 sc in last, working on "
            "the opposite side of the foundation chain sc in next 13, 2 sc in the last."
        ),
        34,
    ),
    (
        0,
        (
            "Ch 16\n"
            "Rnd 1: inc in 2nd ch from hook, 13 sc, 4 sc in last ch, on other side: 13 "
            "sc, inc in last."
        ),
        34,
    ),
    (
        12,
        "Rnd 2: sc around to last st, inc.",
        13,
    ),
    (
        12,
        "Rnd 2: inc, sc around to last 2 sts, inc x2.",
        15,
    ),
    (
        12,
        "Rnd 2: sc in first st, sc to last 2, sc2tog.",
        11,
    ),
    (
        12,
        "Rnd 2: [1 sc, inc] around.",
        18,
    ),
    (
        12,
        "Rnd 2: *1 sc in next st, 2 sc in following st* all the way round.",
        18,
    ),
    (
        12,
        "Rnd 2: (sc, inc) rep 6 times",
        18,
    ),
    (
        12,
        "Rnd 2: 2 sc in first st, 1 sc in next st. Repeat to end of round.",
        18,
    ),
    (
        12,
        "Rnd 2: Sc 1, inc 1, repeat to end.",
        18,
    ),
    (
        12,
        "Rnd 2: 1 sc, inc. Rep. 6 times.",
        18,
    ),
    (
        12,
        "Rnd 2: sc in next, inc in next, repeat 6x",
        18,
    ),
    (
        12,
        "Rnd 2: SC 2, INC; repeat around",
        16,
    ),
    (
        12,
        "Rnd 2: {sc 1, dec} x 4",
        8,
    ),
    (
        12,
        "Rnd 2: dec around",
        6,
    ),
    (
        12,
        "Rnd 2: dec 6 times",
        6,
    ),
    (
        12,
        "Rnd 2: *sc2tog; rep from * around",
        6,
    ),
    (
        12,
        "Rnd 2: 5 sc, inc, 5 sc, inc (14)",
        14,
    ),
    (
        12,
        (
            "Rnd 2: ch 3 (counts as dc), dc in same st, *dc in next st, 2 dc in next st; "
            "rep from * to last st, dc in last st; sl st in top of ch 3"
        ),
        18,
    ),
    (
        12,
        ("Rnd 2: ch 3, 1 dc in base of ch, 2 dc in each st around, sl st to top of ch 3"),
        24,
    ),
    (
        12,
        (
            "Rnd 2: Ch 2, dc in first st, 2 dc in next st, *dc in next st, 2 dc in next "
            "st*, repeat between *s, join to first dc"
        ),
        18,
    ),
    (
        12,
        "Row 2: Ch 1, turn. Sc in first sc and in each sc across.",
        12,
    ),
    (
        12,
        "Row 2: Turn, ch 1, sc in each sc across row.",
        12,
    ),
    (
        12,
        "Row 2: Ch 1, sc2tog over first 2 sts, sc in each st to last 2 sts, sc2tog.",
        10,
    ),
    (
        12,
        "Row 2: Ch 1, skip first st, sc across to end",
        11,
    ),
    (
        12,
        "Row 2: Ch 3, dc in next st and in each st across",
        12,
    ),
    (
        12,
        "Rnd 2: sl st in next 3 sts, sc in next 9 sts",
        12,
    ),
    (
        12,
        (
            "Rnd 2: sc in each of the first 4 sts, 2 sc in each of the next 4 sts, sc in "
            "each of the last 4 sts"
        ),
        16,
    ),
    (
        12,
        "Rnd 2: 4 sc, 4 inc, 4 sc",
        16,
    ),
    (
        12,
        "Rnd 2: sc4, inc4, sc4",
        16,
    ),
    (
        12,
        "Rnd 2: In BLO, sc in each st around",
        12,
    ),
    (
        12,
        "Rnd 2: BLO sc around",
        12,
    ),
    (
        12,
        (
            "Rnd 2: Working in back loops only, *sc in next 3 sts, 2 sc in next st, rep "
            "from * 2 more times"
        ),
        15,
    ),
    (
        12,
        (
            "Rnd 2: hdc in next 2 sts, (2 hdc in next st, hdc in next 3 sts) 2 times, 2 "
            "hdc in next st, hdc in last st"
        ),
        15,
    ),
    (
        12,
        "Rnd 2: 2 hdc in next st, hdc in next 3 sts; rep from beg to end",
        15,
    ),
    (
        12,
        "Rnd 2: Increase in every 3rd stitch",
        16,
    ),
    (
        12,
        "Rnd 2: Inc in every other st around.",
        18,
    ),
    (
        12,
        "Rnd 2: Inc every 2nd st",
        18,
    ),
    (
        12,
        "Rnd 2: 1 sc in next 2 sc, decrease over next 2 sc; repeat 3 times total",
        9,
    ),
    (
        12,
        "Rnd 2: work 3 sc then 1 inc, repeat 3 times",
        15,
    ),
    (
        24,
        "Rnd 5: *sc in next 2 sts, sc2tog* 6 times. [18 sts]",
        18,
    ),
    (
        24,
        "R5: (2 sc, dec) x6 = 18",
        18,
    ),
    (
        24,
        "R5 - [2, dec] *6 (18)",
        18,
    ),
    (
        24,
        (
            "Round five: Single crochet in next two stitches, single crochet two "
            "together; repeat six times. 18 stitches."
        ),
        18,
    ),
    (
        24,
        "5) 2sc, dec, rep around — 18 sts",
        18,
    ),
    (
        24,
        "Rnd 5: sc in next 10, dec, sc in next 10, dec (22)",
        22,
    ),
    (
        24,
        ("Rnd 5: Dec over next 2 sts, sc in next 10 sts, dec over next 2 sts, sc in last 10 sts."),
        22,
    ),
    (
        24,
        "Rnd 5: sc in the next 11 sts, skip the next st, sc in the next 12 sts",
        23,
    ),
    (
        24,
        "Rnd 5: sc 7, hdc 2, dc 2, 2 dc in next st, dc 2, hdc 2, sc to end",
        25,
    ),
    (
        24,
        ("Rnd 5: sc in each of next 8 sts, (2 sc in next st) 8 times, sc in each of next 8 sts"),
        32,
    ),
    (
        24,
        "Rnd 5: 8 sc, 2 sc in each of next 8 sts, 8 sc",
        32,
    ),
    (
        24,
        "Rnd 5: Sc around, increasing 6 times evenly",
        30,
    ),
    (
        24,
        "Rnd 5: Sc around, inc 6 sts evenly spaced",
        30,
    ),
    (
        24,
        "Rnd 5: Sc around, decreasing 4 sts evenly.",
        20,
    ),
    (
        24,
        "Rnd 5: Work even in sc.",
        24,
    ),
    (
        24,
        "Rnds 5-8: Sc in each st around. (24 sts each rnd)",
        24,
    ),
    (
        24,
        "Rnds 5 through 8: Sc around (24)",
        24,
    ),
    (
        24,
        "Rnds 5, 6 & 7: sc around (24)",
        24,
    ),
    (
        24,
        "Rnd 5-8: 24 sc",
        24,
    ),
    (
        24,
        "R5-R8: sc in all sts",
        24,
    ),
    (
        24,
        "R5: sc in all 24 sts",
        24,
    ),
    (
        24,
        "R5: sc x 24",
        24,
    ),
    (
        24,
        "Rnd 5: 1 hdc in each st, join with sl st in first hdc, ch 2.",
        24,
    ),
    (
        24,
        (
            "Rnd 5: Ch 3 (counts as first dc now and throughout), dc in next st, 2 dc in "
            "next st, *dc in next 2 sts, 2 dc in next st; repeat from * around. Join. "
            "(32 dc)"
        ),
        32,
    ),
    (
        24,
        "Rnd 5: Ch 2, *fpdc around next st, bpdc around next st; rep from * around",
        24,
    ),
    (
        24,
        ("Rnd 5: *FPdc in next st, dc in next st. Rep from * around, sl st to top of first FPdc"),
        24,
    ),
    (
        24,
        ("Rnd 5: *skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * around"),
        24,
    ),
    (
        24,
        (
            "Rnd 5: (sc, hdc, dc, hdc, sc) in first st, sk 2 sts; *(sc, hdc, dc, hdc, "
            "sc) in next st, sk 2 sts; rep from * around"
        ),
        40,
    ),
    (
        24,
        "Rnd 5: *Sk next 2 sts, (2 dc, ch 1, 2 dc) in next st, rep from * around",
        32,
    ),
    (
        24,
        "Rnd 5: *V-st in next st, skip 2 sts* around",
        16,
    ),
    (
        24,
        (
            "Rnd 5: *ch 5, skip 2 sts, sc in next st; rep from * around, ending with sl "
            "st in first sc"
        ),
        8,
    ),
    (
        24,
        (
            "Rnd 5: sc in first st, *ch 3, sk next 2 sts, sc in next st; rep from * to "
            "last 2 sts, ch 3, sk last 2 sts, join with sl st to first sc"
        ),
        8,
    ),
    (
        24,
        "Row 5: ch 1, turn, sc2tog, sc in each st across to last 2 sts, sc2tog",
        22,
    ),
    (
        24,
        "Row 5: Ch 1, turn, sk first st, sc in each rem st across",
        23,
    ),
    (
        24,
        ("Row 5: Ch 1. Turn. 2 sc in first st. 1 sc in each st to last st. 2 sc in last st."),
        26,
    ),
    (
        24,
        "Row 5: Ch 3, turn, sk first dc, dc in next 22 sts, dc in top of tch",
        24,
    ),
    (
        24,
        (
            "Row 5: Ch 4 (counts as dc and ch-1), turn, sk next st, dc in next st, *ch "
            "1, sk next st, dc in next st; rep from * to last st, dc in last st"
        ),
        13,
    ),
    (
        24,
        "Row 5: Ch 1, sc in first 6 sts, turn, leaving remaining sts unworked",
        6,
    ),
    (
        24,
        "Rnd 5: *sc in next 3 sts, ch 1, sk 1 st; rep from * around",
        18,
    ),
    (
        24,
        "Rnd 5: hdc2tog around.",
        12,
    ),
    (
        24,
        "Rnd 5: [sc in next st, invdec] 8 times",
        16,
    ),
    (
        24,
        "Rnd 5: inv dec x 12",
        12,
    ),
    (
        24,
        "Rnd 5: 3 sc, (inv dec, 4 sc) 3 times, inv dec, 1 sc",
        20,
    ),
    (
        24,
        "Rnd 5: 3 sc, (dec, 4 sc) x 3, dec, 1 sc – 20 sts",
        20,
    ),
    (
        24,
        "Rnd 5: Sc in next 6 sts, ch 4, skip 4 sts, sc in next 14 sts",
        20,
    ),
    (
        24,
        (
            "Rnd 5: 2 sc in each of first 6 sts, sc in each of next 12 sts, 2 sc in each "
            "of last 6 sts"
        ),
        36,
    ),
    (
        24,
        "Rnd 5: Change to yarn B. sc in each st around. Fasten off, weave in ends.",
        24,
    ),
    (
        24,
        "Rnd 5: with B, join with sc in any st, sc in each st around, join",
        24,
    ),
    (
        24,
        (
            "Rnd 5: Join B with sl st in any st, ch 1, sc in same st and in each st "
            "around, join with sl st in first sc"
        ),
        24,
    ),
    (
        24,
        "Rnd 5: Reverse sc in each st around. Fasten off.",
        24,
    ),
    (
        24,
        "Rnd 5: *sc in next 2 sts, picot; rep from * around",
        24,
    ),
    (
        24,
        "Rnd 5: *sc in next 7 sts, 2 sc in next st; rep from * twice more",
        27,
    ),
    (
        24,
        "Rnd 5: *sc in next 7 sts, 2 sc in next st; rep from * two more times",
        27,
    ),
    (
        24,
        ("Rnd 5: *sc in next 7 sts, 2 sc in next st** repeat from * to ** 2 times more."),
        27,
    ),
    (
        0,
        (
            "Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 "
            "dc in ring, ch 2; rep from * 2 more times, join to top of ch 3."
        ),
        12,
    ),
    (
        0,
        (
            "Ch 5, join with sl st to form a ring.\n"
            "Rnd 1: Ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join in top "
            "of ch-3."
        ),
        12,
    ),
    (
        0,
        (
            "Rnd 1: Ch 4, sl st to form ring, ch 3, 11 dc in ring, join. (12 dc)\n"
            "Rnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (24 dc)"
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: Magic ring, ch 3, 2 dc, ch 2, [3 dc, ch 2] x 3, sl st in 3rd ch of "
            "ch 3.\n"
            "Rnd 2: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 "
            "dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 times, ch 1, join."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: Magic ring, ch 3, 2 dc, ch 2, [3 dc, ch 2] x 3, sl st in 3rd ch of "
            "ch 3.\n"
            "Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same "
            "sp, (3 dc, ch 2, 3 dc) in each ch-2 sp around, join."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring, join.\n"
            "Rnd 2: Ch 3, dc in same st, ch 1, *2 dc in next st, ch 1; rep from * "
            "around, join. (16 dc, 8 ch-1 sps)\n"
            "Rnd 3: Sl st in next ch-1 sp, ch 3, 2 dc in same sp, 3 dc in each ch-1 sp "
            "around, join."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring, join.\n"
            "Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next st, ch 1; rep from * "
            "around, join in 3rd ch of ch-4.\n"
            "Rnd 3: Ch 1, 2 sc in each ch-1 sp around, join."
        ),
        16,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring, join.\n"
            "Rnd 2: Ch 4, (dc in next st, ch 1) 7 times, join to 3rd ch.\n"
            "Rnd 3: sl st into first sp, ch 1, 3 sc in same sp, 3 sc in each sp around."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring.\n"
            "Rnd 2: *ch 3, sc in next st; rep from * around.\n"
            "Rnd 3: (sc, hdc, dc, hdc, sc) in each ch-3 sp around."
        ),
        40,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring.\n"
            "Rnd 2: *ch 3, sk 1 st, sc in next st; rep from * around.\n"
            "Rnd 3: *5 dc in ch-3 sp, sc in next sc; rep from * around."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring.\n"
            "Rnd 2: *ch 3, sk 1 st, sc in next st; rep from * around.\n"
            "Rnd 3: 4 sc in each loop around."
        ),
        16,
    ),
    (
        0,
        (
            "Rnd 1: 8 sc in ring.\n"
            "Rnd 2: *ch 5, sk next st, sl st in next st; rep from * 3 more times.\n"
            "Rnd 3: [sc, hdc, 3 dc, hdc, sc] in each ch-5 loop."
        ),
        28,
    ),
    (
        0,
        (
            "Row 1: ch 21, dc in 4th ch from hook and in each ch across. (19 dc)\n"
            "Row 2: Ch 3, turn, dc in each dc across."
        ),
        19,
    ),
    (
        0,
        (
            "Ch 21.\n"
            "Row 1: Dc in 4th ch from hook, dc in each ch across. Turn.\n"
            "Row 2: Ch 3 (counts as first dc), skip first st, dc in each st across, dc "
            "in top of turning ch."
        ),
        19,
    ),
    (
        0,
        (
            "Ch 21.\n"
            "Row 1: Hdc in 3rd ch from hook and in each ch across, turn.\n"
            "Row 2: Ch 2, hdc in each st across."
        ),
        19,
    ),
    (
        0,
        (
            "Ch 21.\n"
            "Row 1: Hdc in 3rd ch from hook (skipped ch 2 counts as hdc), hdc in each ch "
            "across."
        ),
        20,
    ),
    (
        0,
        (
            "Ch 20.\n"
            "Row 1: Sc in 2nd ch from hook and in each remaining ch.\n"
            "Row 2: Ch 1, turn, *sc in next st, dc in next st; rep from * to last st, sc "
            "in last st."
        ),
        19,
    ),
    (
        0,
        (
            "Ch 22.\n"
            "Row 1: Sc in 2nd ch from hook, *ch 3, sk 3 chs, sc in next ch; rep from * "
            "across."
        ),
        6,
    ),
    (
        0,
        (
            "Ch 22.\n"
            "Row 1: Sc in 2nd ch from hook, *ch 3, sk next 3 ch, sc in next ch; rep from "
            "* to end.\n"
            "Row 2: Ch 1, turn, sc in first sc, *3 sc in next ch-3 sp, sc in next sc; "
            "rep from * across."
        ),
        21,
    ),
    (
        0,
        (
            "Ch 6, join into a ring with a sl st.\n"
            "Rnd 1: Ch 1, 12 sc into ring, sl st to first sc.\n"
            "Rnd 2: Ch 1, sc in same st, *ch 3, sk 1, sc in next; rep from * 4 more "
            "times, ch 3, sl st in first sc."
        ),
        6,
    ),
    (
        0,
        (
            "Rnd 1: 6 sc in MR.\n"
            "Rnd 2: inc in each st.\n"
            "Rnd 3: *sc, inc* x6.\n"
            "Rnd 4: *2 sc, inc* x6.\n"
            "Rnds 5-7: sc in each st.\n"
            "Rnd 8: *2 sc, dec* x6."
        ),
        18,
    ),
    (
        0,
        ("1. MR 6\n2. inc x6 (12)\n3. (1, inc) x6 (18)\n4. (2, inc) x6 (24)"),
        24,
    ),
    (
        0,
        (
            "Round 1: Start with magic circle, 6 sc into it.\n"
            "Round 2: 2 sc in every st (12).\n"
            "Round 3: 1 sc, 2 sc in next; repeat around (18)."
        ),
        18,
    ),
    (
        0,
        ("Rnd 1: Ch 2, 6 sc in 2nd ch from hook.\nRnd 2: 2 sc in each sc around."),
        12,
    ),
    (
        0,
        "Rnd 1: ch 2, work 8 sc into 2nd chain from hook, join with slip stitch.",
        8,
    ),
    (
        0,
        ("Rnd 1: 10 hdc in magic ring; do not join.\nRnd 2: Hdc inc around."),
        20,
    ),
    (
        0,
        (
            "Rnd 1: 12 dc in ring.\n"
            "Rnd 2: *2 dc in next st, ch 1; rep from * around.\n"
            "Rnd 3: *dc in next 2 dc, 2 dc in ch-1 sp; rep from * around."
        ),
        48,
    ),
    (
        0,
        (
            "Rnd 1: 12 sc in ring.\n"
            "Rnd 2: *sc in next 2 sts, (sc, ch 2, sc) in next st; rep from * around.\n"
            "Rnd 3: sc in each st and (sc, ch 2, sc) in each ch-2 sp around."
        ),
        24,
    ),
    (
        0,
        (
            "Rnd 1: 12 sc in ring.\n"
            "Rnd 2: *sc in next 2 sts, (sc, ch 2, sc) in next st; rep from * around.\n"
            "Rnd 3: Sc in each sc around, working 3 sc in each corner ch-2 sp."
        ),
        28,
    ),
    (
        0,
        (
            "Ch 10.\n"
            "Row 1: sc in 2nd ch from hook, sc in each ch across, turn. (9)\n"
            "Row 2: ch 1, inc, sc 7, inc. (11)\n"
            "Row 3: Ch 1, turn, sc in each st. (11)\n"
            "Row 4: Ch 1, turn, dec, sc 7, dec. (9)"
        ),
        9,
    ),
    (
        32,
        ("Round 5: Continue to increase 8 sts evenly in each round. (40)"),
        40,
    ),
    (
        32,
        ("Round 5: sc around, increasing 8 sts evenly. (40)"),
        40,
    ),
    (
        32,
        ("Rnd 5: Ch 1, sc around increasing 8 sts evenly spaced, join."),
        40,
    ),
    (
        32,
        ("Rnd 5: Inc 8 sts evenly around."),
        40,
    ),
    (
        32,
        ("Rnd 5: Work 1 round of sc, increasing 6 stitches evenly spaced around. 38 sts"),
        38,
    ),
    (
        32,
        ("Rnd 5: hdc around, decreasing evenly to 24 sts. (24)"),
        24,
    ),
    (
        32,
        ("Rnd 5: Sc in each st around, evenly increasing 8 sts."),
        40,
    ),
    (
        32,
        ("Rnd 5: Inc evenly to 40 sts."),
        40,
    ),
    (
        32,
        ("Rnd 5: sc around, inc 8 times evenly spaced. (40)"),
        40,
    ),
    (
        32,
        ("Rnd 5: sc in each sc around, dec 5 sc evenly spaced. 27 sc"),
        27,
    ),
    (
        32,
        ("Rnd 5: Increase 8 sc in this rnd. (40)"),
        40,
    ),
    (
        32,
        ("Rnd 5: Work in sc, increasing 8 sts in the round. (40)"),
        40,
    ),
    (
        32,
        ("Rnd 5: work even."),
        32,
    ),
    (
        32,
        ("Rnd 5: work even in sc."),
        32,
    ),
    (
        32,
        ("Rnd 5: sc even. (32)"),
        32,
    ),
    (
        32,
        ("Rnd 5: Work 1 rnd even."),
        32,
    ),
    (
        32,
        ("Rnd 5: Continue even in sc. (32)"),
        32,
    ),
    (
        32,
        (
            "Rnd 13 (handles): Ch 1, sc in next 8 sts, ch 10, skip next 8 sts, sc in each of "
            "last 16 sts. (24 sc, 1 ch-10 loop)"
        ),
        24,
    ),
    (
        32,
        (
            "Rnd 5: ch 1, inc in first st, sc in next 15 sts, inc in next st, sc in last 15 sts; "
            "join. (34)"
        ),
        34,
    ),
    (
        32,
        (
            "Rnd 5: Ch 1. Work 2 sc into the first st, 1 sc into each of the next 7 sts. Repeat "
            "from the beginning three more times. Join. (36 sts)"
        ),
        36,
    ),
    (
        32,
        (
            "Rnd 5: ch 1, 2 sc in same st as join, *sc in next 7 sts, 2 sc in next st, repeat "
            "from * to last 7 sts, sc in last 7 sts, join (36)"
        ),
        36,
    ),
    (
        0,
        ("1 rnd: 6 sc in MR (6)"),
        6,
    ),
    (
        6,
        ("2 rnd: 6 inc (12)"),
        12,
    ),
    (
        12,
        ("3 rnd: (1 sc, inc)*6 (18)"),
        18,
    ),
    (
        18,
        ("4 row: (2 sc, inc) * 6 = 24 sc"),
        24,
    ),
    (
        24,
        ("5-8 rnd: 24 sc (4 rnds)"),
        24,
    ),
    (
        24,
        ("9 rnd: 6 sc, 6 inc, 12 sc (30)"),
        30,
    ),
    (
        30,
        ("10 rnd: 6 sc, (1 sc, inc)x6, 12 sc (36)"),
        36,
    ),
    (
        36,
        ("11 rnd: 8 sc, 10 dec, 8 sc (26)"),
        26,
    ),
    (
        26,
        ("R12: 3sc, dec, 3sc, dec, 16sc (24)"),
        24,
    ),
    (
        24,
        ("Rnd 13: [2sc, dec]*6 [18]"),
        18,
    ),
    (
        18,
        ("Rnd 14. (sc, dec) x 6 (12 st)"),
        12,
    ),
    (
        12,
        ("15: 6 dec (6). Fasten off, leaving a long tail for sewing"),
        6,
    ),
    (
        24,
        ("R9) 5 sc, BLO 14 sc, 5 sc (24)"),
        24,
    ),
    (
        24,
        ("R9: in FLO: 24 sc (24)"),
        24,
    ),
    (
        24,
        ("R9: BLO (3 sc, inc) x 6 (30)"),
        30,
    ),
    (
        24,
        ("R9: [3 sc, 1 inc] repeat 6 times (30)"),
        30,
    ),
    (
        24,
        ("Rnd 9: 1 sc in the next 3 st, inc in the next st. Repeat 6 times. (30 sts)"),
        30,
    ),
    (
        24,
        ("Rnd 9: *1sc in each of next 3st, 2sc in next st* 6 times [30]"),
        30,
    ),
    (
        24,
        ("Rnd 9: 3 sc, inc in next stitch - repeat all the way around (30)"),
        30,
    ),
    (
        24,
        ("Rnd 9: sc in next 11 sts, inc, sc in next 11 sts, inc. <26>"),
        26,
    ),
    (
        24,
        ("Rnd 9: sc 7, (hdc, dc) in next st, (dc, hdc) in next st, sc 15 (26)"),
        26,
    ),
    (
        24,
        ("Rnd 9: sc 4, bobble, sc 7, bobble, sc 11 (24)"),
        24,
    ),
    (
        24,
        ("Rnd 9: sk first st, sc in next 10 sts, dec, sc in next 11 (22)"),
        22,
    ),
    (
        24,
        ("Rnd 9: sc in next 4 st, sl st in next 8 st, sc in next 12 st (24)"),
        24,
    ),
    (
        24,
        ("Rnd 9: inc in first 3 sts, sc in next 9 sts, inc in next 3 sts, sc in last 9 sts (30)"),
        30,
    ),
    (
        24,
        ("Rnd 9: work 3 sc, 3 inc, 9 sc, 3 inc, 6 sc (30 sc)"),
        30,
    ),
    (
        24,
        ("Rnd 9 sc4, dec, repeat around (20)"),
        20,
    ),
    (
        24,
        ("Rnd 9 - sc in each of next four stitches, decrease once; repeat four times (20)"),
        20,
    ),
    (
        24,
        ("Rnd 9: inv dec 12 times (12)"),
        12,
    ),
    (
        24,
        ("Rnd 9: dec all around. (12)"),
        12,
    ),
    (
        24,
        ("Rnd 9: *dec*, repeat * to * around (12 sc)"),
        12,
    ),
    (
        24,
        ("Rnds 9 & 10: sc around (24)"),
        24,
    ),
    (
        24,
        ("Rnd 9, 10, 11: sc around (24)"),
        24,
    ),
    (
        24,
        ("Rnd. 9 to Rnd. 14: sc in each st (24)"),
        24,
    ),
    (
        24,
        ("Rnd 9-14 (6 rounds): sc in each st (24)"),
        24,
    ),
    (
        24,
        ("Round 9 through 14: sc in each st. (24 stitches)"),
        24,
    ),
    (
        24,
        ("For the next 6 rounds: sc in each st around (24)"),
        24,
    ),
    (
        0,
        ("Rnd 1: Ch 4, 11 dc in 4th ch from hook, join with sl st in top of beg ch-4: 12 dc."),
        12,
    ),
    (
        0,
        ("Rnd 1: Ch 3 (counts as dc), 11 dc in ring, sl st to top of ch-3. 12 sts."),
        12,
    ),
    (
        12,
        ("Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. 24 dc"),
        24,
    ),
    (
        24,
        (
            "Rnd 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st* around, join to top "
            "of ch-3. (36)"
        ),
        36,
    ),
    (
        24,
        ("Rnd 3: Ch 2, *FPdc around next st, 2 dc in next st; rep from * around; join. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 4: Ch 2, *FPdc around FPdc, dc in next 2 dc; rep from * around; join."),
        36,
    ),
    (
        36,
        ("Rnd 4: Ch 2, hdc in 3rd loop of each st around, join. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 4: Ch 1, (sc, dc) in next st, sk next st; rep around, join. (36)"),
        36,
    ),
    (
        36,
        (
            "Rnd 4: Ch 1, *sc in next st, dc in next st; rep from * around, join with sl st to "
            "first sc."
        ),
        36,
    ),
    (
        36,
        (
            "Rnd 4: Ch 1, *sc, sk next st, 3 dc in next st, sk 1; rep from * around; join. 9 "
            "shells, 9 sc"
        ),
        36,
    ),
    (
        36,
        (
            "Rnd 4: Ch 3, puff st in next st, *dc, puff; rep from * around, sl st to top of ch "
            "3. (18 puffs)"
        ),
        36,
    ),
    (
        36,
        (
            "Rnd 4: Ch 4 (counts as dc, ch 1), sk 1 st, *dc in next st, ch 1, sk 1 st; rep from "
            "* around, sl st in 3rd ch of beg ch-4. (18 dc, 18 ch-1 sps)"
        ),
        18,
    ),
    (
        0,
        (
            "Ch 61. Join in a ring, being careful not to twist.\nRnd 1: Ch 1, sc in each ch "
            "around; join. (61)"
        ),
        61,
    ),
    (
        0,
        ("FSC 60, join to form a ring.\nRnd 1: Ch 1, sc in each fsc around; join. (60)"),
        60,
    ),
    (
        0,
        (
            "Ch 8.\nRow 1: sc in 2nd ch from hook and across. (7)\nRow 2: Ch 1, turn, sc BLO "
            "across. (7)\nRows 3-60: Rep row 2."
        ),
        7,
    ),
    (
        60,
        ("Rnd 1: Ch 1, work 60 sc evenly along edge of ribbing, join. (60)"),
        60,
    ),
    (
        60,
        ("Rnd 1: Working along row ends, ch 1, sc in end of each row around, join. (60)"),
        60,
    ),
    (
        60,
        ("Rnd 1: Ch 1, work 60 sc evenly along edge of ribbing, join. (60)"),
        60,
    ),
    (
        48,
        (
            "Rnd 1: Join yarn at any seam, ch 1, work 72 sc evenly around opening, join with sl "
            "st to first sc. (72 sc)"
        ),
        72,
    ),
    (
        0,
        ("Row 1: Sc 34 evenly across the lower edge."),
        34,
    ),
    (
        0,
        ("Row 1: Work 25 hdc evenly along row ends of band, turn. (25)"),
        25,
    ),
    (
        0,
        (
            "Rnd 1: ch 1, 16 sc evenly along side edge, 3 sc in corner, 20 sc evenly across "
            "lower edge, join. (39)"
        ),
        39,
    ),
    (
        44,
        ("Rnd 2: Crab st (rev sc) around; join."),
        44,
    ),
    (
        44,
        ("Rnd 2: Ch 1, reverse sc in each sc around, join. Fasten off."),
        44,
    ),
    (
        44,
        ("Rnd 2: sl st loosely in each st around."),
        44,
    ),
    (
        44,
        ("Rnd 2: *sl st in next st, ch 1; rep from * around."),
        44,
    ),
    (
        44,
        (
            "Rnd 2: ch 1, sc in first st, *ch 3, sl st in 3rd ch from hook (picot), sc in next 2 "
            "sts; rep from * around ending sc in last st; join."
        ),
        44,
    ),
    (
        44,
        (
            "Rnd 2: *5 dc in next st, skip 1 st, sl st in next st, skip 1 st; repeat from * "
            "around. (11 shells)"
        ),
        66,
    ),
    (
        44,
        ("Rnd 2: Ch 1, sc in next 10 sts, 3 sc in next st, repeat around; join. (52)"),
        52,
    ),
    (
        0,
        ("Foundation: Ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)"),
        40,
    ),
    (
        0,
        (
            "Chain 41. Row 1: Starting in the second chain from the hook, sc in each chain "
            "across. 40 sc"
        ),
        40,
    ),
    (
        0,
        (
            "Make a chain of 41 sts.\n1st row: 1 sc in 2nd ch from hook, 1 sc in each ch to end. "
            "Turn. 40 sc."
        ),
        40,
    ),
    (
        0,
        (
            "ch 42\nRow 1: dc in 4th ch from hook (skipped ch count as dc), dc in each ch "
            "across, turn. (40)"
        ),
        40,
    ),
    (
        0,
        ("ch 42\nRow 1: dc in 3rd ch from hook and each ch across. (40 dc)"),
        40,
    ),
    (
        40,
        ("Row 2: Ch 1, turn. Sc in each sc across. (40)"),
        40,
    ),
    (
        40,
        ("Row 2: Ch 2 (does not count as a stitch), turn. Hdc in each st across."),
        40,
    ),
    (
        40,
        ("Row 2: Ch 3 (counts as first dc), turn. Sk first st, dc in each st across."),
        40,
    ),
    (
        40,
        ("Row 2: Ch 3, turn, dc in each st across, dc in top of turning ch."),
        40,
    ),
    (
        40,
        (
            "Row 2: Ch 1, sc in first sc, dc in next sc, *sc in next sc, dc in next sc; rep from "
            "* across, turn."
        ),
        40,
    ),
    (
        40,
        ("Row 2: Ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog. (38)"),
        38,
    ),
    (
        40,
        ("Row 2: Ch 1, turn, 2 sc in first st, sc to last st, 2 sc in last st. (42)"),
        42,
    ),
    (
        40,
        ("Row 2: Ch 1, inc, sc across to last st, inc, turn. [42]"),
        42,
    ),
    (
        40,
        ("Row 2: Ch 1, sc2tog over first 2 sts, sc across, turn. 39 sc"),
        39,
    ),
    (
        40,
        (
            "Row 2: Sl st across first 5 sts, ch 1, sc in next 30 sts, leave last 5 sts "
            "unworked, turn. (30)"
        ),
        30,
    ),
    (
        40,
        (
            "Row 2: Sl st in first 5 sts, ch 2, hdc to last 5 sts, turn leaving remaining sts "
            "unworked. (30)"
        ),
        30,
    ),
    (
        40,
        ("Row 2: Ch 1, sc in first 18 sts, turn, leaving rem sts unworked for neck. (18)"),
        18,
    ),
    (
        40,
        ("Row 2: Ch 1, dec 1 st at each end of row. (38)"),
        38,
    ),
    (
        40,
        ("Row 2: Inc 1 st at each end of row. (42)"),
        42,
    ),
    (
        40,
        ("Row 2: Ch 1, sc across, inc 1 st at beginning and end of row. 42 sts"),
        42,
    ),
    (
        40,
        ("Row 2: Ch 1, *FPdc around next st, BPdc around next st; rep from * across, turn."),
        40,
    ),
    (
        40,
        (
            "Row 2: Ch 2, hdc in first st, *fphdc around next st, bphdc around next st; rep from "
            "* to last st, hdc in last st, turn. (40)"
        ),
        40,
    ),
    (
        40,
        ("Row 2: ch 1, turn. In BLO, sc across. (40)"),
        40,
    ),
    (
        40,
        ("Row 2: Ch 1, working in back loops only, sc in each sc across, turn."),
        40,
    ),
    (
        40,
        ("Row 2: Ch 1, turn. Working in 3rd loop, hdc across."),
        40,
    ),
    (
        41,
        (
            "Row 2: Ch 4 (counts as dc and ch-1), sk next dc, dc in next dc, *ch 1, sk next dc, "
            "dc in next dc; rep from * across. Turn. (21 dc, 20 ch-1 sps)"
        ),
        21,
    ),
    (
        24,
        ("Row 2: ch 1, *sc, hdc, dc, tr, dc, hdc; repeat from * across. 24 sts"),
        24,
    ),
    (
        24,
        ("Row 2: ch 1, (sc in next st, tr in next st) across, turn. (12 sc, 12 tr)"),
        24,
    ),
    (
        25,
        ("Row 2: ch 1, sc in next st, (tr in next st, sc in next st) across. (13 sc, 12 tr)"),
        25,
    ),
    (
        24,
        ("Row 2: Sc in each st across to last 2 sts, dec. (23)"),
        23,
    ),
    (
        24,
        ("Row 2: sc 22, dec, ch 1, turn. (23)"),
        23,
    ),
    (
        23,
        ("Row 3: dec, sc 21. Ch 1, turn (22)"),
        22,
    ),
    (
        24,
        ("Rows 2-10: ch 1, turn, sc in each st across (24 sc)"),
        24,
    ),
    (
        24,
        ("Rows 2 and 3: ch 1, turn, dec, sc to last 2 sts, dec. (22, 20)"),
        20,
    ),
    (
        24,
        (
            "Row 2: Ch 1, sc in first 3 sts, *5-dc popcorn in next st, sc in next 3 sts; rep "
            "from * 4 more times, sc in last st. Turn. (24 sts)"
        ),
        24,
    ),
    (
        24,
        (
            "Row 2: ch 1, sc in first 2 sts, (bobble in next st, sc in next 3 sts) 5 times, "
            "bobble, sc in last st. (24)"
        ),
        24,
    ),
    (
        24,
        (
            "Row 2: ch 1, turn, sc in first st, hdc in next st, dc in next 20, hdc in next, sc "
            "in last. (24)"
        ),
        24,
    ),
    (
        24,
        ("Row 2: sc in next 6, hdc in next 6, dc in next 6, tr in last 6; ch 4, turn. (24)"),
        24,
    ),
    (
        24,
        ("Row 2: Ch 1, sc in first st; dc in next st; repeat across row. (24)"),
        24,
    ),
    (
        24,
        ("Row 2: Ch 1 and turn. 1 sc into each stitch along the row. (24)"),
        24,
    ),
    (
        24,
        ("Row 2: Ch 1. Turn your work. Work 1 sc in each of the stitches across. (24 sc)"),
        24,
    ),
    (
        24,
        (
            "Row 2: Turn. Ch 1. Single crochet in the first stitch and in each stitch across the "
            "row. (24 single crochet)"
        ),
        24,
    ),
    (
        24,
        ("Row 2: Chain 2, turn, half double crochet in each stitch across [24 hdc]"),
        24,
    ),
    (
        24,
        (
            "Row 2: Chain 3 (counts as a double crochet), turn, skip the first stitch, double "
            "crochet in each remaining stitch. (24)"
        ),
        24,
    ),
    (
        24,
        ("R2: ch1, sc x 24, turn (24)"),
        24,
    ),
    (
        24,
        ("R2: 24 x sc, ch 1, turn"),
        24,
    ),
    (
        24,
        ("R2: ch 1, turn, 24 sc"),
        24,
    ),
    (
        24,
        ("R2: ch 1, turn; sc into next 24 sc."),
        24,
    ),
    (
        24,
        ("R2: sc across until last 4 sts, turn. (20)"),
        20,
    ),
    (
        24,
        ("Row 2: Ch 1, sc in next 4 sts; turn, leave remaining 20 sts unworked. - 4 sts"),
        4,
    ),
    (
        40,
        ("Row 2: Ch 1, turn, sc across, dec 1 st each end. (38)"),
        38,
    ),
    (
        40,
        ("Row 2: Sc across, decreasing 1 sc at each side. (38)"),
        38,
    ),
    (
        40,
        ("Row 2: Decrease 1 st at both ends of this row. (38)"),
        38,
    ),
    (
        40,
        ("Row 2: Sc across, increasing one st at each end of row. (42)"),
        42,
    ),
    (
        40,
        ("Row 2: Ch 1, dec 1 st at beg of row, sc to end. (39)"),
        39,
    ),
    (
        40,
        ("Row 2: Ch 1, sc across, dec 1 st at end of row. (39)"),
        39,
    ),
    (
        40,
        ("Rows 2-4: Ch 1, dec 1 st at each end of row. (38, 36, 34)"),
        34,
    ),
    (
        40,
        ("Rows 5-8: Dec 1 st at each end of every row. (32)"),
        32,
    ),
    (
        40,
        ("Row 5: Dec 1 st at the beg of the row and at the end of the row"),
        38,
    ),
    (
        0,
        (
            "Rnd 1: Ch 9, sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, working on "
            "other side of chain sc in next 6 ch, 2 sc in last ch. (18)"
        ),
        18,
    ),
    (
        0,
        (
            "Rnd 1: Ch 11, start in second ch from hook, 9 sc, 3 sc in last ch, turn to other "
            "side, 8 sc, 2 sc in last ch (22)"
        ),
        22,
    ),
    (
        0,
        (
            "Ch 7\nRnd 1: Starting in 2nd ch, inc, 4 sc, 4 sc in last ch, on the other side 4 "
            "sc, inc (16)"
        ),
        16,
    ),
    (
        0,
        (
            "Ch 10. Rnd 1: From 2nd chain from hook: inc in the 1st ch, sc 7, 4 sc in the last "
            "ch. Continue on the other side of the foundation chain: sc 7, inc in last st [22]"
        ),
        22,
    ),
    (
        0,
        ("R1: ch 6, 4 sc from 2nd ch from hook, 3 sc in last ch; other side of ch: 3 sc, inc (12)"),
        12,
    ),
    (
        18,
        ("Rnd 2: inc, sc 6, inc in next 3 sts, sc 6, inc in next 2 sts. (24)"),
        24,
    ),
    (
        18,
        (
            "Rnd 2: 2 sc in first st, sc in next 6 sts, 2 sc in each of next 3 sts, sc in next 6 "
            "sts, 2 sc in each of last 2 sts. (24 sc)"
        ),
        24,
    ),
    (
        32,
        ("Rnd 10: sc in next 2 sts, ch 4, sk next 6 sts, sc in each st around. (26 sc, 1 ch-4 sp)"),
        26,
    ),
    (
        32,
        ("Rnd 10: sc 15, place marker, 2 sc in next st, place marker, sc 16. (33)"),
        33,
    ),
    (
        32,
        (
            "Rnd 10: sc in next 14 sts, 2 sc in next st, sc in next 2 sts, 2 sc in next st, sc "
            "in last 14 sts; do not join. (34)"
        ),
        34,
    ),
    (
        34,
        (
            "Rnd 14 (thumb opening): Sc in next 14 sts, ch 2, skip next 6 sts, sc in next 14 "
            "sts. (28 sc, ch-2 sp)"
        ),
        28,
    ),
    (
        32,
        (
            "Rnd 1: Ch 1, sc in same st as joining and in each st around; join with sl st to beg "
            "sc. (32)"
        ),
        32,
    ),
    (
        32,
        (
            "Rnd 1: ch 1, beginning in same st as join, [sc in next 6 sts, sc2tog] 4 times, "
            "join. (28)"
        ),
        28,
    ),
    (
        72,
        ("Rnd 12: *Sc in next 10 sts, sc2tog; rep from * 5 more times. (66)"),
        66,
    ),
    (
        72,
        ("Rnd 12: (Sc in next 10 sts, sc2tog) around, join. 66 sts remain."),
        66,
    ),
    (
        72,
        ("Rnd 12: [sc 10, sc2tog] 6 times - 66 sts"),
        66,
    ),
    (
        72,
        ("Rnd 12: (sc2tog, sc in next 10 sts) repeat to end - 66 sts."),
        66,
    ),
    (
        72,
        (
            "Rnd 12: Ch 3 (counts as first dc here and throughout), FPdc around next dc, *dc in "
            "next dc, FPdc around next dc; rep from * around; join with sl st in top of beg "
            "ch-3. (72 sts)"
        ),
        72,
    ),
    (
        72,
        (
            "Rnd 12: Ch 2 (not a st), *2 FPdc, 2 BPdc; rep from * around, sl st to top of first "
            "FPdc."
        ),
        72,
    ),
    (
        72,
        (
            "Rnd 12: ch 2, *fpdc around each of next 2 sts, bpdc around each of next 2 sts, "
            "repeat from * around. Join with slip stitch."
        ),
        72,
    ),
    (
        72,
        ("Rnd 12: Ch 2, *Fpdc2tog, bpdc around next; rep around; join. (48)"),
        48,
    ),
    (
        72,
        ("Rnd 12: Ch 1. Sc in each st around. Join to 1st st w/ sl st. Ch 1, turn. (72)"),
        72,
    ),
    (
        72,
        ("Rnd 12: Ch 1, *hdc in next 2 sts, sk 1 st; rep from * around; join. (48 hdc)"),
        48,
    ),
    (
        72,
        (
            "Rnd 12: ch 3, dc in next 2 sts, ch 1, sk 1 st, *dc in next 3 sts, ch 1, sk next st; "
            "rep from * around; join. (54 dc, 18 ch-1 sps)"
        ),
        54,
    ),
    (
        72,
        (
            "Rnd 12: Ch 1, sc in first st, ch 5, sk 5 sts, *sc in next st, ch 5, sk 5 sts; rep "
            "from * around, join in first sc. (12 sc, 12 ch-5 sps)"
        ),
        12,
    ),
    (
        60,
        ("Rnd 5: *Ch 5, sk 2 sts, sc in next st; rep from * around. (20 ch-5 loops)"),
        20,
    ),
    (
        60,
        ("Rnd 5: (ch 5, skip 2, sc in next) around (20 loops)"),
        20,
    ),
    (
        40,
        ("Row 1: sc in next 20 sts, turn, leave remaining sts unworked for instep. (20)"),
        20,
    ),
    (
        40,
        ("Rnd 20: *sc in next 8 sts, sc2tog* 4 times. (36)"),
        36,
    ),
    (
        40,
        ("Rnd 20: sc2tog, sc in next 16 sts, (sc2tog) twice, sc in next 16 sts, sc2tog. (36)"),
        36,
    ),
    (
        40,
        ("Rnd 20: [sc2tog, sc 16, sc2tog] twice. (36)"),
        36,
    ),
    (
        48,
        (
            "Rnd 6: Ch 2, *sk 2 sts, FPtr around next 2 sts, working in front FPtr around 2 "
            "skipped sts, BPdc around next 2 sts; rep from * around; join. (48)"
        ),
        48,
    ),
    (
        48,
        (
            "Rnd 6: Ch 1, *sk next 2 sts, dc in next 2 sts, dc in first skipped st, dc in second "
            "skipped st; rep from * around; join. (48)"
        ),
        48,
    ),
    (
        36,
        ("Rnd 7: With B, *sc in next 5 sts, with A sc in next st; rep from * around. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 7: *2 sc in A, 1 sc in B; rep from * around. (36 sc)"),
        36,
    ),
    (
        36,
        ("Rnd 7: (A) sc 3, (B) sc 3, repeat around. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 7: Drop A, join B. Ch 1, sc in each st around, join. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 7: Change to B; ch 1, sc around. Join."),
        36,
    ),
    (
        36,
        ("Rnd 7: Ch 1, sc in each st around, changing to B in last st; join. (36)"),
        36,
    ),
    (
        36,
        ("Rnd 7: [B] sc in each st around [36]"),
        36,
    ),
    (
        36,
        ("Rnd 7: With B: sc 36 (36)"),
        36,
    ),
    (
        48,
        (
            "Rnd 6: Ch 2, *sk 2 sts, FPtr around next 2 sts, working behind the FPtr just made, "
            "dc in each of 2 skipped sts; rep from * around; join. (48)"
        ),
        48,
    ),
    (
        48,
        (
            "Rnd 6: ch 3, *skip next st, dc in next st, dc in skipped st; rep from * around; "
            "join. (48)"
        ),
        48,
    ),
    (
        24,
        (
            "Row 2: Ch 3, turn. *Skip next 2 sts, tr in next 2 sts, working in front, tr in 2 "
            "skipped sts; rep from * across."
        ),
        24,
    ),
    (
        24,
        (
            "Row 2: ch 1, *skip 3 sts, tr in next 3 sts, working in front of sts just made, tr "
            "in each of the 3 skipped sts; rep from * across."
        ),
        24,
    ),
    (
        24,
        ("Row 2: *skip 1, tr in next 2, tr in skipped st; rep from * across."),
        24,
    ),
    (
        0,
        (
            "Rnd 1: Ch 5, 4 sc starting from 2nd ch from hook, turn to work along other side, 4 "
            "sc. (8)"
        ),
        8,
    ),
    (
        0,
        ("Row 1: ch 11, 10 sc from second ch from hook."),
        10,
    ),
    (
        0,
        ("Row 1: ch 11, sc from second ch from hook to end (10)"),
        10,
    ),
    (
        0,
        ("Row 1: Ch 11, beginning in the 2nd ch from hook, sc in each ch across (10)"),
        10,
    ),
    (
        30,
        ("Rnd 12: *FPdc2tog, BPdc around next st; rep from * around; join. (20)"),
        20,
    ),
    (
        30,
        ("Rnd 12: fpdc2tog around, join. (15)"),
        15,
    ),
    (
        0,
        (
            "Ch 16. Rnd 1: Sc in 2nd ch from hook and in each ch across, working along opposite "
            "side of ch, sc in each ch across. (30)"
        ),
        30,
    ),
    (
        0,
        (
            "Ch 16.\nRnd 1: Sc in 2nd ch from hook and each ch across; working in opposite side "
            "of foundation ch, sc in each ch across; join. (30 sc)"
        ),
        30,
    ),
    (
        0,
        (
            "Ch 16.\nRnd 1: Sc in 2nd ch from hook and each ch across; working in opposite side "
            "of foundation ch, sc in each ch across; join."
        ),
        30,
    ),
    (
        0,
        (
            "Rnd 1: Ch 6, sc in 2nd ch from hook, sc in next 4 ch, continue on other side of "
            "chain, sc in next 5 ch. (10)"
        ),
        10,
    ),
    (
        0,
        (
            "Rnd 1: Ch 6, sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch, continue on "
            "other side of chain, sc in next 3 ch, 2 sc in last ch. (12)"
        ),
        12,
    ),
    (
        0,
        (
            "Rnd 1: Ch 6, 2 sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch; on other "
            "side, sc in next 3 ch, sc in next ch. (12)"
        ),
        12,
    ),
    (
        0,
        (
            "Rnd 1: Ch 6, 2 sc in 2nd ch from hook, sc in next 3 ch, 4 sc in last ch; on other "
            "side, sc in next 3 ch, 2 sc in last ch. (14)"
        ),
        14,
    ),
    (
        0,
        (
            "Ch 21\nRnd 1: 2 hdc in 3rd ch from hook, hdc in next 17 ch, 4 hdc in last ch. "
            "Working on the opposite side of the chain: hdc in next 17 ch, 2 hdc in last ch. "
            "Join. (42)"
        ),
        42,
    ),
    (
        12,
        (
            "row 2, chain 2 (counts as first dc), 1 dc into same place, 2 dc into each dc "
            "around, slip stitch to join. (24)"
        ),
        24,
    ),
    (
        24,
        (
            "round 3: ch3 - counts as first dc here and throughout - dc in next, 2dc in next, "
            "*dc in next 2, 2dc in next* repeat around, ss in top of ch3. 32 dc"
        ),
        32,
    ),
    (
        24,
        (
            "Rnd 3. ch 1, now work *1 sc in the first st and 2 sc in the 2nd st*. Repeat this "
            "all the way round. SS. (36)"
        ),
        36,
    ),
    (
        24,
        ("Rd 3: DC, 2DC in next around; join (36)"),
        36,
    ),
    (
        24,
        ("Rnd 3: *2 Hdc in next st, Hdc in next st* , *repeat around, sl st to join & ch 2 (36)"),
        36,
    ),
    (
        24,
        ("Rnd 3: Hdc in next, 2 Hdc in next, repeat until end, join & ch 2 - 36 sts"),
        36,
    ),
    (
        24,
        ("R3: ch 2, [dc, dcinc] x 12, sl st to first dc. (36)"),
        36,
    ),
    (
        24,
        ("R3: ch2. dc inc, dc. Repeat from beg. to end. Join (36 dc)"),
        36,
    ),
    (
        24,
        (
            "Rnd 3 (increase round): ch 3, dc in same st as ch, *dc in next st, 2 dc in next st; "
            "repeat from * ending with dc in last st. Join. 36 dc"
        ),
        36,
    ),
    (
        24,
        ("Rnd 3 - sc 2, inc 1, repeat 8x = 32"),
        32,
    ),
    (
        24,
        ("Rnd 3 (2 sc, inc)x8=32"),
        32,
    ),
    (
        24,
        ("Rnd 3: 2sc, inc 8x (32)"),
        32,
    ),
    (
        24,
        ("Rnd 3: increase every third stitch (32)"),
        32,
    ),
    (
        24,
        ("Rnd 3: inc every 3rd st (32 sts)"),
        32,
    ),
    (
        24,
        ("Rnd 3: inc in every other stitch (36)"),
        36,
    ),
    (
        24,
        ("Rnd 3: *1 dc, skip 1 st, ch 1* around (12 dc, 12 ch)"),
        12,
    ),
    (
        24,
        ("Rnd 3: (dc, ch 1, skip next st) around. 12 dc and 12 ch-1 spaces."),
        12,
    ),
    (
        24,
        (
            "Rnd 3: ch 4, *skip 1, dc, ch 1* repeat until you get to the beg, sl st to 3rd ch of "
            "ch 4. (12 dc, 12 ch 1)"
        ),
        12,
    ),
    (
        24,
        ("Rnd 3: in every st: 2 sc (48)"),
        48,
    ),
    (
        24,
        ("Rnd 3: sl st to next st, ch 1, sc in same st. sc in next 23 sts. join."),
        24,
    ),
    (
        24,
        (
            "Rnd 3: ch 1, sc in same stitch as join and next 10 sts, 3 sc in next, sc in next "
            "11, 3 sc in last. join (28)"
        ),
        28,
    ),
    (
        24,
        (
            "Rnd 3: ch 3, 4 dc in same st, *sk 2 sts, sc in next, sk 2 sts, 5 dc in next*, "
            "repeat *to* around, ending sk 2, sc, sk 2, join to top of ch 3. (4 shells, 4 sc)"
        ),
        24,
    ),
    (
        24,
        ("Rnd 3: ch 1, *sc, ch 2, sk 1. Rep from * around. Sl st to first sc. 12 sc, 12 ch-2 sp."),
        12,
    ),
    (
        24,
        ("Rnd 3: (sc in next sc, ch 3, sk next sc) 12 times; join in beg sc. 12 ch lps"),
        12,
    ),
    (
        24,
        (
            "Rnd 3: 2 dc cluster in first st, ch 2, *2 dc cluster in next st, ch 2, rep from * "
            "around. (24 clusters)"
        ),
        24,
    ),
)


@pytest.mark.parametrize(("below", "text", "makes"), FORMS)
def test_a_common_form_is_read_and_counted(below: int, text: str, makes: int) -> None:
    rounds = check_text(text, below=below or None).parts[0].rounds
    assert rounds[-1].makes == (makes,)
    assert all(found.verdict in (Verdict.AGREES, Verdict.UNSTATED) for found in rounds)


@pytest.mark.parametrize("words", ["Shape as drawn. (80)", "Stuff the base. (80)"])
def test_a_numbered_round_with_a_count_but_no_stitches_is_not_passed_over(words):
    text = f"Rnd 8: sc in each st around. (80)\nRnds 9 and 10: {words}\nRnd 11: sc around."
    rounds = check_text(text, terms="US", below=80).parts[0].rounds
    assert [found.verdict for found in rounds] == ["agrees", "unread", "unstated"]
    assert rounds[1].messages[0].text == "does not say what is worked in this round"
    assert rounds[2].makes == (80,)


@pytest.mark.parametrize(
    "words",
    [
        "*fpdcxtog, sc in next st; rep from * around",
        "*scw, sc in next st; rep from * around",
        "(knobble, sc) 12 times",
        "*zigzag, sc in next st; rep from * around",
        "sc in next 11 sts, hddc, sc in next 12 sts",
        "sc in next 11 sts, corner, sc in next 13 sts",
    ],
)
def test_a_word_that_stands_for_a_stitch_is_not_passed_over(words):
    [found] = check_text(f"Rnd 2: {words}.", terms="US", below=24).parts[0].rounds
    assert found.verdict is Verdict.UNREAD


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st, doubling up at the marker",
        "sc around, ending one stitch short of the marker",
        "sc in each st around, dec at the side seams",
        "sc even, but work last 2 sts together",
        "sc in each st around, plus an extra one at the join",
        "sc in each st around, 3 sc in each corner",
        "dc in each dc and 2 dc in each ch-2 sp around",
        "sc in each st around except the last",
        "sc around, omit last st",
    ],
)
def test_words_that_change_a_count_are_not_passed_over(words):
    [found] = check_text(f"Rnd 5: {words}.", terms="US", below=24).parts[0].rounds
    assert found.verdict is Verdict.UNREAD
