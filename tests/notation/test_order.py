"""The order of work: lists, ranges and repeats of rounds, worked out by hand line by line."""

import pytest

from tracker import check_text

#: The stitches below, the lines, and what each round makes in the order of work.
TEXTS = (
    (
        24,
        ("Rnds 4, 6, 8: sc in each st around. (24)"),
        (24, 24, 24),
    ),
    (
        20,
        (
            "Row 2: Ch 1, turn, sc across. (20)\n"
            "Row 3: Ch 1, turn, inc, sc to last st, inc. (22)\n"
            "Row 4: Rep Row 2. (22)\n"
            "Row 5: Rep Row 3. (24)\n"
            "Rows 6-9: Rep Rows 4-5 twice. (28)"
        ),
        (20, 22, 22, 24, 24, 26, 26, 28),
    ),
    (
        20,
        (
            "Row 2: sc across. (20)\n"
            "Row 3: hdc across. (20)\n"
            "Rows 4 - 11: Repeat Rows 2 and 3 four times. (20)"
        ),
        (20, 20, 20, 20, 20, 20, 20, 20, 20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRow 3: hdc across. (20)\nRows 4-11: Repeat Rows 2 & 3. (20)"),
        (20, 20, 20, 20, 20, 20, 20, 20, 20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRow 3: hdc across. (20)\nRep last 2 rows 3 more times. (20)"),
        (20, 20, 20, 20, 20, 20, 20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRow 3: hdc across. (20)\nRow 4: as Row 2.\nRow 5: as row 3."),
        (20, 20, 20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRow 3: Same as row 2."),
        (20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRow 3: Work as for row 2."),
        (20, 20),
    ),
    (
        20,
        ("Row 2: sc across. (20)\nRows 3-6: as row 2 (20)"),
        (20, 20, 20, 20, 20),
    ),
    (
        20,
        ("2nd row: 1 ch, 1 sc in each st to end. 20 sts.\nRep 2nd row 5 times more."),
        (20, 20, 20, 20, 20, 20),
    ),
    (
        20,
        ("2nd row: 1 ch, 1 sc in each st to end. 20 sts.\n3rd to 8th rows: As 2nd row."),
        (20, 20, 20, 20, 20, 20, 20),
    ),
    (
        6,
        (
            "R2: inc x 6 (12)\n"
            "R3: (sc, inc) x 6 (18)\n"
            "R4: (2 sc, inc) x 6 (24)\n"
            "R5-R8: sc in each (24)\n"
            "R9: (2 sc, dec) x 6 (18)\n"
            "R10: (sc, dec) x 6 (12)\n"
            "R11: dec x 6 (6)"
        ),
        (12, 18, 24, 24, 24, 24, 24, 18, 12, 6),
    ),
    (
        6,
        (
            "2. 2sc in each sc (12)\n"
            "3. *1sc, 2sc in next* 6x (18)\n"
            "4.-6. sc in each sc (18)\n"
            "7. *1sc, sc2tog* 6x (12)"
        ),
        (12, 18, 18, 18, 18, 12),
    ),
    (
        6,
        ("2) inc 6 [12]\n3) (sc 1, inc) 6 [18]\n4) (sc 2, inc) 6 [24]"),
        (12, 18, 24),
    ),
    (
        6,
        ("Rnd 2. 6 inc (12).\nRnd 3. *1 sc, 1 inc* x6 (18).\nRnd 4. *1 sc, 1 inc, 1 sc* x6 (24)."),
        (12, 18, 24),
    ),
    (
        6,
        (
            "Rnd 2 inc in each st (12)\n"
            "Rnd 3 sc 1, inc in next st, repeat (18)\n"
            "Rnd 4 sc 2, inc in next st, repeat (24)"
        ),
        (12, 18, 24),
    ),
    (
        6,
        (
            "Round 2: Two sc in each sc around - 12 sc.\n"
            "Round 3: *Sc in next sc, two sc in next; rep from * around - 18 sc.\n"
            "Round 4: *Sc in each of next two sc, two sc in next; rep from * around - 24 sc."
        ),
        (12, 18, 24),
    ),
    (
        6,
        (
            "Rnd 2: Inc in each sc around: 12 sc\n"
            "Rnd 3: [1 sc, inc] around: 18 sc\n"
            "Rnd 4: [2 sc, inc] around: 24 sc"
        ),
        (12, 18, 24),
    ),
    (
        36,
        ("Rnd 7: sc around (36)\nRnds 8-15: Repeat Rnd 7.\nRnd 16: (4 sc, dec) rep around (30)"),
        (36, 36, 36, 36, 36, 36, 36, 36, 36, 30),
    ),
    (
        36,
        ("Rnd 7: sc around (36)\nRnds 8-15: (8 rounds) sc around (36)"),
        (36, 36, 36, 36, 36, 36, 36, 36, 36),
    ),
    (
        36,
        ("Rnd 7: BLO sc around (36)\nRnd 8-15: sc around\nRnd 16: (4 sc, dec) * 6"),
        (36, 36, 36, 36, 36, 36, 36, 36, 36, 30),
    ),
    (
        36,
        (
            "Rnd 7: sc around (36)\n"
            "Work 5 more rounds even.\n"
            "Next rnd: (4 sc, dec) around (30)\n"
            "Next rnd: (3 sc, dec) around (24)"
        ),
        (36, 36, 36, 36, 36, 36, 30, 24),
    ),
    (
        36,
        ("Rnd 7: sc around (36)\nWork even for 5 rnds. (36)\nDec rnd: (4 sc, dec) around (30)"),
        (36, 36, 36, 36, 36, 36, 30),
    ),
    (
        36,
        (
            "Rnd 7: sc around (36)\n"
            "\n"
            "Stuff firmly.\n"
            "\n"
            "Rnd 8: (4 sc, dec) x 6 (30)\n"
            "\n"
            "Insert eyes between rnds 4 and 5, 6 sts apart.\n"
            "\n"
            "Rnd 9: (3 sc, dec) x 6 (24)"
        ),
        (36, 30, 24),
    ),
    (
        36,
        (
            "Rnd 7: sc around (36)\n"
            "Rnd 8: (4 sc, dec) x 6 (30) - stuff the head\n"
            "Rnd 9: (3 sc, dec) x 6 (24) *add more stuffing*"
        ),
        (36, 30, 24),
    ),
    (
        36,
        ("Rnd 7: sc around (36) Place a marker in the last st.\nRnd 8: (4 sc, dec) x 6. Total: 30"),
        (36, 30),
    ),
    (
        36,
        ("Rnd 7 (color change to white): sc around (36)\nRnd 8 (white): (4 sc, dec) x 6 (30)"),
        (36, 30),
    ),
    (
        36,
        ("Rnd 7, white: sc around (36)\nRnd 8, black: (4 sc, dec) x 6 (30)"),
        (36, 30),
    ),
    (
        24,
        ("Rnd 4: (sc 3, inc) x6 (30)\nRnds 5, 7: sc around\nRnd 6: (sc 4, inc) x6 (36)"),
        (30, 30, 36, 36),
    ),
    (
        20,
        (
            "Row 2: ch 1, sc across (20).\n"
            "Row 3: ch 1, dec, sc to end (19)\n"
            "Row 4: ch 1, sc to last 2, dec (18)\n"
            "Repeat rows 3 and 4 until 10 sts remain."
        ),
        (20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10),
    ),
)


@pytest.mark.parametrize(("below", "text", "makes"), TEXTS)
def test_rounds_are_worked_in_the_order_the_lines_ask_for(below, text, makes):
    rounds = check_text(text, terms="US", below=below).parts[0].rounds
    said = [(found.label, str(found.verdict), [str(m) for m in found.messages]) for found in rounds]
    assert tuple(found.makes and found.makes[0] for found in rounds) == makes, said
    assert not {found.verdict for found in rounds} & {"differs", "unread"}, said
