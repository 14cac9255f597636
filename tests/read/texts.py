"""Instructions invented for these tests, laid out as people lay them out."""

NEWT = """\
Pocket Newt
A small newt in UK terms.

Materials:
Yarn A: DK cotton in olive, 40 g
Yarn B: DK cotton in clay, a little
3 mm hook, stuffing, needle

Gauge: 22 dc and 24 rounds = 10 cm

Abbreviations
dc = double crochet
inc = 2 dc in the same st

Body
With yarn A, from the nose back.
Rnd 1: 6 dc in magic ring. (6)
Rnd 2: inc in each st around. (12)
Rnd 3: [dc, inc] x 6. (18)
Rnds 4-8: dc in each st around. (18)
Stuff the body firmly.
Rnd 9: [dc, dc2tog] x 6. (12)
Stuff the rest.
Rnd 10: dc2tog x 6. (6)
Fasten off, leaving a long tail.

LEGS (make 4)
1. 5 dc in magic ring (5)
2. dc in each st around (5)
Fasten off.

Rnd 1: 4 dc in magic ring (4)
Rnd 2: dc, inc, dc, inc (6)

Making up
1. Sew the legs to the body between Rnds 4 and 8. Sew the tail
to the back.
2. Weave in all ends.
"""

COWL = """\
Fogbank cowl

Sizes: child (teen, adult)

You will need:
- 80 (100, 120) g of aran wool in slate
- a 5.5 mm hook

Tension: 12 1/2 sts and 8 rounds = 10 cm in hdc

Tube
Rnd 1: ch 1, 54 (60, 66) hdc in magic ring; join. (54, 60, 66)
Rnds 2-3: ch 1, hdc in each st around; join. (54, 60, 66)
Rnd 4: ch 1, *hdc in next 4 sts, hdc2tog; rep from * around;
join. (45, 50, 55)

Edging
Rnd 1: sc in each st around; join. (45, 50, 55)
Rnd 2: sc in each st around; join. (45, 50, 55)

Finishing: Weave in the ends. Block lightly.
"""

SQUARE = """\
# Bramble patch

A small square in UK terms.

## Materials

* DK cotton in plum (A)
* DK cotton in cream (B)
* 4 mm hook

## Square (make 6)

**Rnd 1:** ch 4, ss to first ch to form a ring, ch 3 (counts as tr), 2 tr in ring, ch 2,
\\[3 tr in ring, ch 2\\] 3 times; ss to top of ch 3. **(12)**

**Rnd 2:** Ss to corner sp, ch 3, (2 tr, ch 2, 3 tr) in same sp, \\*ch 1,
(3 tr, ch 2, 3 tr) in next ch-2 sp; rep from \\* 2 more times, ch 1; ss to top of ch 3. (24)

## Joining

1. Lay the squares in two rows of three.
2. Whip stitch them together.

---

## Washing

By hand, in cool water.
"""
