"""Whole motifs, lace and borders: what each round makes, worked out by hand from its words.

The ways of writing are the trade's (common practice, no source); pieces and numbers are own.
"""

import pytest

from tracker import check_text

MOTIFS = {
    "clustered square": (
        "US",
        """\
Ch 4, join with sl st to form ring.
Rnd 1: Ch 3 (counts as first dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more \
times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in next 2 dc and into next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, \
*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * around; join. (24 dc, 4 ch-2 sps)
Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same corner, ch 1, 3 dc in next ch-1 sp, \
ch 1, *(3 dc, ch 2, 3 dc) in next corner, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * 2 more \
times; join. (36 dc)
Rnd 4: Ch 1, sc in each dc and ch-1 sp around, working 3 sc in each corner ch-2 sp; join.
Rnd 5: Ch 1, sc in each sc around, 3 sc in center sc of each corner; join.""",
        (4, 12, 24, 36, 56, 64),
    ),
    "clustered square in UK terms": (
        "UK",
        """\
1st round: 3 ch, 2 tr into ring, (2 ch, 3 tr into ring) 3 times, 2 ch, ss to 3rd of 3 ch.
2nd round: Ss across to 2-ch sp, 3 ch, 2 tr, 2 ch, 3 tr all into same sp, *1 ch, (3 tr, 2 ch, \
3 tr) into next 2-ch sp; rep from * twice more, 1 ch, ss to top of 3 ch.
3rd round: Ss to corner, (3 ch, 2 tr, 2 ch, 3 tr) in corner sp, *1 ch, 3 tr in 1-ch sp, 1 ch, \
(3 tr, 2 ch, 3 tr) in corner sp; rep from * twice more, 1 ch, 3 tr in 1-ch sp, 1 ch, ss to join.""",
        (12, 24, 36),
    ),
    "solid square": (
        "US",
        """\
Round 1: Magic ring, ch 3 (counts as dc), 3 dc in ring, ch 2, (4 dc in ring, ch 2) 3 times, join.
Round 2: Ch 3, dc in next 3 dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 4 dc; rep from * twice \
more, (2 dc, ch 2, 2 dc) in last ch-2 sp; join.
Round 3: Ch 3, dc in each dc to ch-2 sp, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in each of next 8 dc; \
rep from * around, ending with dc in last 2 dc; join.""",
        (16, 32, 48),
    ),
    "open mesh": (
        "US",
        """\
Ch 38.
Row 1: Dc in 8th ch from hook (counts as dc, ch-2 sp), *ch 2, skip 2 ch, dc in next ch; rep from \
* across. (12 dc, 11 ch-2 sps)
Row 2: Ch 5 (counts as dc, ch 2), turn, sk first dc and ch-2 sp, dc in next dc, *ch 2, dc in next \
dc; rep from * across, ending with dc in 3rd ch of turning ch. (12 dc, 11 ch-2 sps)
Row 3: Ch 3, turn, 2 dc in each ch-2 sp and dc in each dc across.""",
        (38, 12, 12, 34),
    ),
    "sunburst": (
        "US",
        """\
Rnd 1: Ch 4 (counts as dc and ch 1), *dc in ring, ch 1; rep from * 10 more times, sl st in 3rd ch \
of ch-4. (12 dc, 12 ch-1 sps)
Rnd 2: Sl st in first ch-1 sp, ch 3, 2 dc in same sp, ch 1, *3 dc in next ch-1 sp, ch 1; rep from \
* around, sl st in top of ch-3. (36 dc)
Rnd 3: Sl st in next 2 dc, sl st in ch-1 sp, (ch 4, 2 tr, ch 2, 3 tr) in same sp, *(3 dc in next \
ch-1 sp) twice, (3 tr, ch 2, 3 tr) in next ch-1 sp; rep from * 2 more times, (3 dc in next ch-1 \
sp) twice, join. (24 tr, 24 dc)""",
        (12, 36, 48),
    ),
    "shawl from its middle": (
        "US",
        """\
Row 1: Ch 4, (2 dc, ch 2, 3 dc) in 4th ch from hook, turn. (6 dc, ch-2 sp)
Row 2: Ch 3, 2 dc in first st, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in last st, turn.
Row 3: Ch 3, 2 dc in first st, ch 1, 3 dc in ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, \
3 dc in ch-1 sp, ch 1, 3 dc in last st, turn.
Row 4: Ch 3, 2 dc in first st, ch 1, *3 dc in next ch-1 sp, ch 1; rep from * to ch-2 sp, (3 dc, \
ch 2, 3 dc) in ch-2 sp, ch 1, *3 dc in next ch-1 sp, ch 1; rep from * to last st, 3 dc in \
last st.""",
        (6, 12, 18, 24),
    ),
    "arches": (
        "US",
        """\
Rnd 1: Ch 6, sl st to form ring, ch 1, 16 sc in ring, join.
Rnd 2: Ch 1, sc in first sc, *ch 5, sk next sc, sc in next sc; rep from * around, ending with \
ch 2, dc in first sc to form last loop. (8 loops)
Rnd 3: Ch 1, sc in loop just made, *ch 6, sc in next loop; rep from * around, ch 6, join.""",
        (16, 8, 8),
    ),
    "half shells": (
        "US",
        """\
Ch 38.
Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * \
across. (6 shells, 7 sc)
Row 2: Ch 3, turn, 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from \
* across, ending with 3 dc in last sc.
Row 3: Ch 1, turn, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * \
across, working last sc in top of ch-3.""",
        (38, 37, 37, 37),
    ),
}

CORNERS = (
    "Ch 1, sc in each sc around, 3 sc in center sc of each corner; join.",
    "Ch 1, sc in each sc around, working 3 sc in each corner sc; join.",
    "Ch 1, *3 sc in corner sc, sc in next 22 sc; rep from * around; join.",
    (
        "Ch 1, sc in next st, *3 sc in next corner, sc in next 22 sts; rep from * 2 more times, "
        "3 sc in last corner, sc in next 21 sts; join."
    ),
    (
        "Ch 1, sc in each st to corner, *3 sc in corner, sc in each st to next corner; rep from * "
        "around; join."
    ),
)


def rounds(text, terms="US", below=None):
    return check_text(text, terms=terms, below=below).parts[0].rounds


@pytest.mark.parametrize("name", MOTIFS)
def test_every_round_of_a_motif_counts(name):
    terms, text, makes = MOTIFS[name]
    found = rounds(text, terms)
    said = [(r.label, str(r.verdict), [m.text for m in r.messages]) for r in found]
    counted = tuple(r.makes and r.makes[0] for r in found)
    assert counted[-len(makes) + 1 :] == makes[1:], said
    assert not {r.verdict for r in found} & {"differs", "unread"}, said


@pytest.mark.parametrize("words", CORNERS)
def test_three_stitches_in_one_are_the_corner_of_a_border(words):
    text = f"Rnd 1: Ch 1, (3 sc in next st, sc in next 20 sts) 4 times; join.\nRnd 2: {words}"
    found = rounds(text, below=84)
    assert [r.makes for r in found] == [(92,), (100,)], [str(m) for m in found[1].messages]


@pytest.mark.parametrize("over", ["(ch 1, sc, ch 1)", "(ch-1 sp, sc, ch-1 sp)"])
def test_a_list_in_brackets_is_skipped_as_a_whole(over):
    text = (
        "Rnd 1: Ch 1, *sc in next 2 sts, ch 1, sc in next st, ch 1; rep from * around; join.\n"
        f"Rnd 2: Ch 1, *sc in next 2 sc, ch 3, sk next {over}; rep from * around; join."
    )
    found = rounds(text, below=18)[1]
    assert (found.makes, found.made["ch-3 sp"]) == ((12,), (6,))


def test_a_count_of_things_that_no_word_of_the_round_names_proves_nothing():
    text = "Rnd 8: Ch 1, *(sc, ch 3, sc) in next st, sk 2 sts; rep from * around. (14 picots)"
    [found] = rounds(text, below=42)
    assert (str(found.verdict), found.makes) == ("unstated", (28,))


NEAR_MISSES = [
    (12, "Rnd 2: Ch 1, *sc in next blip, ch 3; rep from * around; join."),
    (20, "Rnd 3: *Sc in next dc, skipping each hdc; rep from * around."),
    (100, "Rnd 1: Ch 1, *2 sc in corner, sc in next 20 sts; rep from * around, join."),
]


@pytest.mark.parametrize(("below", "words"), NEAR_MISSES)
def test_what_could_be_meant_otherwise_stays_unread(below, words):
    [found] = rounds(words, below=below)
    assert str(found.verdict) == "unread"


@pytest.mark.parametrize(("spaces", "verdict"), [(20, "agrees"), (19, "differs")])
def test_a_second_chain_at_the_beginning_is_a_space(spaces, verdict):
    text = f"Rnd 3: Ch 3, ch 2, *dc in next dc, ch 2; rep from * around. (20 dc, {spaces} ch-2 sps)"
    [found] = rounds(text, below=20)
    assert (str(found.verdict), found.makes, found.made["ch-2 sp"]) == (verdict, (20,), (20,))
