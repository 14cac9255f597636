"""Common ways to write a round: what each makes, worked out by hand from its words."""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict

#: The stitches below, or the line before; the round; the stitches it makes.
FORMS: tuple[tuple[int | str, str, int], ...] = (
    ("Ch 16", "Row 1: Sc in 2nd ch from hook and to end.", 15),
    ("Ch 16", "Row 1: Sc in second ch from hook and each ch across.", 15),
    ("Ch 16", "Row 1: Starting in 2nd ch from hook, sc across.", 15),
    (
        "Ch 16",
        "Row 1: Sc in 2nd ch from hook, sc across to last ch, 3 sc in last ch; going across other side of chain, sc across to last ch, 2 sc in last ch.",
        32,
    ),
    (
        "Ch 16",
        "Rnd 1: Sc in 2nd ch from hook, sc in next 13 ch, 3 sc in last ch; rotate work, sc in next 13 ch along other side, 2 sc in last ch. Join.",
        32,
    ),
    (
        "Ch 16",
        "Rnd 1: 2 sc in 2nd ch from hook, sc in next 13, 4 sc in last, working on the opposite side of the foundation chain sc in next 13, 2 sc in the last.",
        34,
    ),
    (
        "Ch 16",
        "Rnd 1: inc in 2nd ch from hook, 13 sc, 4 sc in last ch, on other side: 13 sc, inc in last.",
        34,
    ),
    (12, "Rnd 2: sc around to last st, inc.", 13),
    (12, "Rnd 2: inc, sc around to last 2 sts, inc x2.", 15),
    (12, "Rnd 2: sc in first st, sc to last 2, sc2tog.", 11),
    (12, "Rnd 2: [1 sc, inc] around.", 18),
    (12, "Rnd 2: *1 sc in next st, 2 sc in following st* all the way round.", 18),
    (12, "Rnd 2: (sc, inc) rep 6 times", 18),
    (12, "Rnd 2: 2 sc in first st, 1 sc in next st. Repeat to end of round.", 18),
    (12, "Rnd 2: Sc 1, inc 1, repeat to end.", 18),
    (12, "Rnd 2: 1 sc, inc. Rep. 6 times.", 18),
    (12, "Rnd 2: sc in next, inc in next, repeat 6x", 18),
    (12, "Rnd 2: SC 2, INC; repeat around", 16),
    (12, "Rnd 2: {sc 1, dec} x 4", 8),
    (12, "Rnd 2: dec around", 6),
    (12, "Rnd 2: dec 6 times", 6),
    (12, "Rnd 2: *sc2tog; rep from * around", 6),
    (12, "Rnd 2: 5 sc, inc, 5 sc, inc (14)", 14),
    (
        12,
        "Rnd 2: ch 3 (counts as dc), dc in same st, *dc in next st, 2 dc in next st; rep from * to last st, dc in last st; sl st in top of ch 3",
        18,
    ),
    (12, "Rnd 2: ch 3, 1 dc in base of ch, 2 dc in each st around, sl st to top of ch 3", 24),
    (
        12,
        "Rnd 2: Ch 2, dc in first st, 2 dc in next st, *dc in next st, 2 dc in next st*, repeat between *s, join to first dc",
        18,
    ),
    (12, "Row 2: Ch 1, turn. Sc in first sc and in each sc across.", 12),
    (12, "Row 2: Turn, ch 1, sc in each sc across row.", 12),
    (12, "Row 2: Ch 1, sc2tog over first 2 sts, sc in each st to last 2 sts, sc2tog.", 10),
    (12, "Row 2: Ch 1, skip first st, sc across to end", 11),
    (12, "Row 2: Ch 3, dc in next st and in each st across", 12),
    (12, "Rnd 2: sl st in next 3 sts, sc in next 9 sts", 12),
    (
        12,
        "Rnd 2: sc in each of the first 4 sts, 2 sc in each of the next 4 sts, sc in each of the last 4 sts",
        16,
    ),
    (12, "Rnd 2: 4 sc, 4 inc, 4 sc", 16),
    (12, "Rnd 2: sc4, inc4, sc4", 16),
    (12, "Rnd 2: In BLO, sc in each st around", 12),
    (12, "Rnd 2: BLO sc around", 12),
    (
        12,
        "Rnd 2: Working in back loops only, *sc in next 3 sts, 2 sc in next st, rep from * 2 more times",
        15,
    ),
    (
        12,
        "Rnd 2: hdc in next 2 sts, (2 hdc in next st, hdc in next 3 sts) 2 times, 2 hdc in next st, hdc in last st",
        15,
    ),
    (12, "Rnd 2: 2 hdc in next st, hdc in next 3 sts; rep from beg to end", 15),
    (12, "Rnd 2: Increase in every 3rd stitch", 16),
    (12, "Rnd 2: Inc in every other st around.", 18),
    (12, "Rnd 2: Inc every 2nd st", 18),
    (12, "Rnd 2: 1 sc in next 2 sc, decrease over next 2 sc; repeat 3 times total", 9),
    (12, "Rnd 2: work 3 sc then 1 inc, repeat 3 times", 15),
    (24, "Rnd 5: *sc in next 2 sts, sc2tog* 6 times. [18 sts]", 18),
    (24, "R5: (2 sc, dec) x6 = 18", 18),
    (
        24,
        "Round five: Single crochet in next two stitches, single crochet two together; repeat six times. 18 stitches.",
        18,
    ),
    (24, "5) 2sc, dec, rep around — 18 sts", 18),
    (24, "Rnd 5: sc in next 10, dec, sc in next 10, dec (22)", 22),
    (
        24,
        "Rnd 5: Dec over next 2 sts, sc in next 10 sts, dec over next 2 sts, sc in last 10 sts.",
        22,
    ),
    (24, "Rnd 5: sc in the next 11 sts, skip the next st, sc in the next 12 sts", 23),
    (24, "Rnd 5: sc 7, hdc 2, dc 2, 2 dc in next st, dc 2, hdc 2, sc to end", 25),
    (
        24,
        "Rnd 5: sc in each of next 8 sts, (2 sc in next st) 8 times, sc in each of next 8 sts",
        32,
    ),
    (24, "Rnd 5: 8 sc, 2 sc in each of next 8 sts, 8 sc", 32),
    (24, "Rnd 5: Sc around, increasing 6 times evenly", 30),
    (24, "Rnd 5: Sc around, inc 6 sts evenly spaced", 30),
    (24, "Rnd 5: Sc around, decreasing 4 sts evenly.", 20),
    (24, "Rnd 5: Work even in sc.", 24),
    (24, "Rnds 5-8: Sc in each st around. (24 sts each rnd)", 24),
    (24, "Rnds 5 through 8: Sc around (24)", 24),
    (24, "Rnds 5, 6 & 7: sc around (24)", 24),
    (24, "Rnd 5-8: 24 sc", 24),
    (24, "R5-R8: sc in all sts", 24),
    (24, "R5: sc in all 24 sts", 24),
    (24, "R5: sc x 24", 24),
    (24, "Rnd 5: 1 hdc in each st, join with sl st in first hdc, ch 2.", 24),
    (
        24,
        "Rnd 5: Ch 3 (counts as first dc now and throughout), dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; repeat from * around. Join. (32 dc)",
        32,
    ),
    (24, "Rnd 5: Ch 2, *fpdc around next st, bpdc around next st; rep from * around", 24),
    (
        24,
        "Rnd 5: *FPdc in next st, dc in next st. Rep from * around, sl st to top of first FPdc",
        24,
    ),
    (24, "Rnd 5: *skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * around", 24),
    (
        24,
        "Rnd 5: (sc, hdc, dc, hdc, sc) in first st, sk 2 sts; *(sc, hdc, dc, hdc, sc) in next st, sk 2 sts; rep from * around",
        40,
    ),
    (24, "Rnd 5: *Sk next 2 sts, (2 dc, ch 1, 2 dc) in next st, rep from * around", 32),
    (24, "Rnd 5: *V-st in next st, skip 2 sts* around", 16),
    (
        24,
        "Rnd 5: *ch 5, skip 2 sts, sc in next st; rep from * around, ending with sl st in first sc",
        8,
    ),
    (
        24,
        "Rnd 5: sc in first st, *ch 3, sk next 2 sts, sc in next st; rep from * to last 2 sts, ch 3, sk last 2 sts, join with sl st to first sc",
        8,
    ),
    (24, "Row 5: ch 1, turn, sc2tog, sc in each st across to last 2 sts, sc2tog", 22),
    (24, "Row 5: Ch 1, turn, sk first st, sc in each rem st across", 23),
    (24, "Row 5: Ch 1. Turn. 2 sc in first st. 1 sc in each st to last st. 2 sc in last st.", 26),
    (24, "Row 5: Ch 3, turn, sk first dc, dc in next 22 sts, dc in top of tch", 24),
    (
        24,
        "Row 5: Ch 4 (counts as dc and ch-1), turn, sk next st, dc in next st, *ch 1, sk next st, dc in next st; rep from * to last st, dc in last st",
        13,
    ),
    (24, "Row 5: Ch 1, sc in first 6 sts, turn, leaving remaining sts unworked", 6),
    (24, "Rnd 5: *sc in next 3 sts, ch 1, sk 1 st; rep from * around", 18),
    (24, "Rnd 5: hdc2tog around.", 12),
    (24, "Rnd 5: [sc in next st, invdec] 8 times", 16),
    (24, "Rnd 5: inv dec x 12", 12),
    (24, "Rnd 5: 3 sc, (inv dec, 4 sc) 3 times, inv dec, 1 sc", 20),
    (24, "Rnd 5: 3 sc, (dec, 4 sc) x 3, dec, 1 sc – 20 sts", 20),
    (24, "Rnd 5: Sc in next 6 sts, ch 4, skip 4 sts, sc in next 14 sts", 20),
    (
        24,
        "Rnd 5: 2 sc in each of first 6 sts, sc in each of next 12 sts, 2 sc in each of last 6 sts",
        36,
    ),
    (24, "Rnd 5: Change to yarn B. sc in each st around. Fasten off, weave in ends.", 24),
    (24, "Rnd 5: with B, join with sc in any st, sc in each st around, join", 24),
    (
        24,
        "Rnd 5: Join B with sl st in any st, ch 1, sc in same st and in each st around, join with sl st in first sc",
        24,
    ),
    (24, "Rnd 5: Reverse sc in each st around. Fasten off.", 24),
    (24, "Rnd 5: *sc in next 2 sts, picot; rep from * around", 24),
    (24, "Rnd 5: *sc in next 7 sts, 2 sc in next st; rep from * twice more", 27),
    (24, "Rnd 5: *sc in next 7 sts, 2 sc in next st; rep from * two more times", 27),
    (24, "Rnd 5: *sc in next 7 sts, 2 sc in next st** repeat from * to ** 2 times more.", 27),
)


@pytest.mark.parametrize(("below", "text", "makes"), FORMS)
def test_a_common_form_is_read_and_counted(below: int | str, text: str, makes: int) -> None:
    before = "" if isinstance(below, int) else f"{below}\n"
    edge = below if isinstance(below, int) else None
    found = check_text(before + text, below=edge).parts[0].rounds[-1]
    assert found.makes == (makes,)
    assert found.verdict in (Verdict.AGREES, Verdict.UNSTATED)
