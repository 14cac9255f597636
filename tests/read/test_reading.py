"""A text for people becomes a pattern: what is found in it, and that nothing is lost."""

import re
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tracker import check_text
from tracker.notation.lexicon import Lexicon
from tracker.notation.lines import split_lines
from tracker.notation.reader import read_round
from tracker.pattern.draft import to_toml
from tracker.pattern.load import load_text
from tracker.pattern.model import Gauge, Part, Pattern, Worked, Yarn
from tracker.pattern.reading import read_pattern
from tracker.pattern.source import PatternError

from .texts import COWL, NEWT, SQUARE


def read(text, terms=""):
    return read_pattern(text, "text.txt", "Untitled", terms)


def parts(reading):
    return {part.name: part for part in reading.pattern.parts}


def test_a_toy_in_a_spiral_with_parts():
    found = read(NEWT)
    pattern = found.pattern
    assert (pattern.title, pattern.terms, pattern.sizes) == ("Pocket Newt", "UK", ())
    assert pattern.gauge == Gauge("dc", Fraction(22), Fraction(24), "10 cm", "3 mm")
    assert [(yarn.letter, yarn.colour) for yarn in pattern.yarns] == [("A", "olive"), ("B", "clay")]
    assert [(s.abbr, s.takes, s.makes, s.how) for s in pattern.stitches] == [
        ("inc", 1, 2, "2 dc in the same st")
    ]
    assert {name: part.make for name, part in parts(found).items()} == {
        "Body": 1,
        "Legs": 4,
        "Part 3": 1,
        "Making up": 1,
    }
    assert parts(found)["Body"].worked is Worked.SPIRAL
    assert found.checked.well


def test_what_is_said_between_rounds_stands_where_it_is_to_be_done():
    body = parts(read(NEWT))["Body"]
    assert body.note == "With yarn A, from the nose back. After Rnds 4-8: Stuff the body firmly."
    assert body.rounds.splitlines()[4:] == [
        "Rnd 9: [dc, dc2tog] x 6. (12) Stuff the rest.",
        "Rnd 10: dc2tog x 6. (6) Fasten off, leaving a long tail.",
    ]


def test_making_up_becomes_sentences_to_tick():
    assert parts(read(NEWT))["Making up"].steps == (
        "Sew the legs to the body between Rnds 4 and 8.",
        "Sew the tail to the back.",
        "Weave in all ends.",
    )


def test_a_cowl_in_three_sizes():
    found = read(COWL)
    assert found.pattern.sizes == ("child", "teen", "adult")
    assert found.pattern.terms == "US"
    assert found.pattern.gauge == Gauge("hdc", Fraction(25, 2), Fraction(8), "10 cm", "5.5 mm")
    assert found.pattern.yarns == (Yarn("A", "80 (100, 120) g of aran wool", "slate"),)
    assert parts(found)["Tube"].worked is Worked.JOINED
    assert parts(found)["Making up"].steps == ("Weave in the ends.", "Block lightly.")
    tube = found.checked.parts[0].rounds
    assert [r.makes for r in tube] == [(54, 60, 66)] * 3 + [(45, 50, 55)]


def test_a_part_worked_onto_the_one_before_says_so():
    found = read(COWL)
    assert parts(found)["Edging"].below == (45, 50, 55)
    assert found.draft.warnings == (
        '"Edging" was taken to begin on the last round of the part before it',
    )


def test_a_square_in_markdown():
    found = read(SQUARE)
    assert (found.pattern.title, found.pattern.terms) == ("Bramble patch", "UK")
    square = parts(found)["Square"]
    assert (square.make, square.hook) == (6, "4 mm")
    assert square.rounds.startswith("Rnd 1: ch 4, ss to first ch to form a ring, ch 3 (counts")
    assert "[3 tr in ring, ch 2] 3 times; ss to top of ch 3. (12)\n" in square.rounds
    assert "*ch 1, (3 tr, ch 2, 3 tr) in next ch-2 sp; rep from * 2 more" in square.rounds
    assert [r.makes for r in found.checked.parts[0].rounds] == [(12,), (24,)]
    assert parts(found)["Joining"].steps == (
        "Lay the squares in two rows of three.",
        "Whip stitch them together.",
    )
    assert "Washing\nBy hand, in cool water." in found.pattern.about


def words(text):
    """All words and figures, without layout and numbering of list items."""
    text = re.sub(r"(?m)^#+ |\\(?=[\[\]*])|^\d\. (?=[A-Z])|^[-*] ", "", text)
    return sorted(re.findall(r"[\w']+", text.lower()))


@pytest.mark.parametrize("text", [NEWT, COWL, SQUARE])
def test_no_word_is_lost(text):
    kept = words(read(text).toml)
    for word in words(text):
        if word in kept:
            kept.remove(word)
        else:
            # Copies and a making-up heading are said by keys of their own.
            assert word in ("make", "4", "6", "finishing"), word


@pytest.mark.parametrize(
    ("text", "terms", "warning"),
    [
        ("Written in British terminology.\n\nRnd 1: 6 tr in ring. (6)", "UK", ""),
        ("Terms: US\n\nRnd 1: 6 dc in ring. (6)", "US", ""),
        ("Mat\n\nRnd 1: 6 htr in ring. (6)", "UK", ""),
        ("Mat\n\nRnd 1: 6 hdc in ring. (6)", "US", ""),
        (
            "Mat\n\nRnd 1: 6 dc in ring. (6)",
            "US",
            "nothing says whether its terms are US or UK, and the words fit both: taken as US",
        ),
        (
            "UK terms\n\nRnd 1: 6 sc in ring. (6)",
            "UK",
            "it says UK terms, but its rounds have words of US terms",
        ),
        (
            "Mat\n\nRnd 1: 6 sc in ring. (6)\nRnd 2: 2 htr in each st around. (12)",
            "US",
            "its rounds have words of US and of UK terms: taken as US",
        ),
    ],
)
def test_terms_are_declared_or_shown_by_the_words(text, terms, warning):
    found = read(text)
    assert found.pattern.terms == terms
    assert found.draft.warnings == ((warning,) if warning else ())


def test_terms_can_be_given():
    found = read("Mat\n\nRnd 1: 6 dc in ring. (6)", "UK")
    assert (found.pattern.terms, found.draft.warnings) == ("UK", ())


@pytest.mark.parametrize(
    ("heading", "name", "make"),
    [
        ("Ear (make 2)", "Ear", 2),
        ("Sole (make 2 for each slipper, 4 in total)", "Sole", 2),
        ("SQUARE (make 30: 10 each with A, B, C in the centre)", "Square", 30),
        ("Ears: make 2 (pink)", "Ears (pink)", 2),
        ("Arms – make two – grey", "Arms – grey", 2),
        ("ARMS - make two", "Arms", 2),
        ("Fin x3:", "Fin", 3),
        ("Petal (\u00d7 5)", "Petal", 5),
        ("Tail", "Tail", 1),
    ],
)
def test_headings_say_how_many(heading, name, make):
    found = read(f"Toy\n\n{heading}\nRnd 1: 6 sc in magic ring. (6)\n")
    assert [(p.name, p.make) for p in found.pattern.parts] == [(name, make)]


@pytest.mark.parametrize(
    ("heading", "name", "note"),
    [
        ("CUFF (worked sideways in rows)", "Cuff", "Worked sideways in rows."),
        ("Hand (larger hook)", "Hand", "Larger hook."),
        ("Sole (make 2 for each shoe, 4 in all)", "Sole", "For each shoe, 4 in all."),
        ("Ear (pink)", "Ear (pink)", ""),
    ],
)
def test_how_a_part_is_worked_is_no_part_of_its_name(heading, name, note):
    found = read(f"Toy\n\n{heading}\nRnd 1: 6 sc in magic ring. (6)\n")
    assert [(p.name, p.note) for p in found.pattern.parts] == [(name, note)]


def test_a_sentence_on_sizes_names_none():
    text = (
        "Mitts\n\nSizes\nS (M, L) to fit a hand of 17 (19, 21) cm.\n\nNotes\n"
        "The pattern is written for size S, with changes for M and L in brackets.\n\n"
        "Rnd 1: 20 (22, 24) sc in ring. (20, 22, 24)\n"
    )
    assert read(text).pattern.sizes == ("S", "M", "L")


def test_a_special_stitch_is_known_by_its_name_and_by_its_abbreviation():
    text = (
        "Mat\n\n**Knob (kb):** Yarn over, insert hook in next st and pull up a loop, yarn over"
        " and pull through all loops.\n\nRnd 1: 8 sc in ring.\nRnd 2: kb in each st around. (8)\n"
        "Rnd 3: knob in each st around. (8)\n"
    ).replace("\n\n**", "\n\n## Special stitches\n\n**", 1)
    found = read(text)
    assert [(s.abbr, s.name) for s in found.pattern.stitches] == [("kb", "Knob")]
    assert [r.verdict for r in found.checked.parts[0].rounds] == ["unstated", "agrees", "agrees"]


def test_a_word_in_bold_is_that_word():
    notes = "Notes\nCh 3 does **not** count as a st.\n\n"
    text = f"Mat\n\n{notes}Rnd 1: ch 3, 12 dc in ring, join. (12)\n"
    found = read(text)
    assert "does not count" in found.pattern.about + found.pattern.parts[0].rounds
    assert found.checked.parts[0].rounds[-1].verdict == "agrees"


@pytest.mark.parametrize(
    ("lead", "make"),
    [
        ("(start with blue)", 1),
        ("With blue", 1),
        ("Colour: blue", 1),
        ("Hook: 3 mm", 1),
        ("Main colour", 1),
        ("worked in the round", 1),
        ("Yarn A", 1),
        ("Make 2", 2),
        ("x3", 3),
    ],
)
def test_a_line_between_a_heading_and_its_rounds_is_no_heading(lead, make):
    text = f"Heron\n\nBODY\n{lead}\nRnd 1: 6 sc in MR (6)\n\nWing\n{lead}\nRnd 1: 4 sc in MR (4)"
    found = parts(read(text))
    assert {name: (part.make, part.note) for name, part in found.items()} == {
        "Body": (make, lead),
        "Wing": (make, lead),
    }


def test_work_after_the_abbreviations_begins_a_part_without_a_heading():
    text = (
        "Heron\n\nSpecial stitches:\nTwin: 2 dc in one st.\n\nCh 6, sl st to form a ring.\n"
        "Rnd 1: Ch 1, 8 sc in ring. (8)\nRnd 2: Ch 3, twin in each st. (16)\n\n"
        "To join the squares\nSew them along their sides."
    )
    found = parts(read(text))
    assert found["Main part"].rounds.startswith("Ch 6, sl st to form a ring.\nRnd 1:")
    assert found["To join the squares"].steps == ("Sew them along their sides.",)


def test_two_sizes_by_the_brackets_of_their_names():
    found = read(
        "Slippers\n\nSizes: Women's S/M (L)\n\nSole (make 2, both alike, of one yarn)\n"
        "Foundation: Ch 20 (23).\nRnd 1: sc in 2nd ch from hook and in each ch. [19 (22) sc]\n"
    )
    assert found.pattern.sizes == ("Women's S/M", "L")
    assert [one.makes for one in found.checked.parts[0].rounds] == [(20, 23), (19, 22)]


def test_rounds_as_in_another_part_are_written_out_there():
    found = read(
        "Heron Pot\n\nBase\nR1 – 8 sc in MR (8)\nR2 – 2 sc in each st (16)\n"
        "R3 – (sc, 2 sc in next) x 8 (24)\n\n"
        "Lid\nWork R1 – R2 as for the base.\nR3 – sc in each st (16)\n\n"
        "Foot\nWork as for lid.\n\nKnob\nWork as for the spout.\n"
    )
    named = parts(found)
    first = "R1 – 8 sc in MR (8)\nR2 – 2 sc in each st (16)\n"
    assert named["Lid"].rounds == named["Foot"].rounds == f"{first}R3 – sc in each st (16)\n"
    assert named["Lid"].note == "Work R1 – R2 as for the base."
    assert named["Knob"].rounds == "Work as for the spout.\n"
    assert [one.verdict for one in found.checked.parts[1].rounds] == ["agrees"] * 3


def test_a_table_of_rounds_is_read_round_by_round():
    found = read(
        "Pattern: Leaf Bunting\n\n| **Row** | What to do | Sts |\n|:---:|:---|---:|\n"
        "| 1 | Ch 4, 2 dc in 4th ch from hook | 3 |\n"
        "| 2 | Ch 3, dc in same st, dc in next st, 2 dc in last st. Turn. | (5) |\n"
        "| 3–6 | Ch 3, dc in same st, dc across to last st, 2 dc in last st. Turn. | |\n\n"
        "| Colour | Grams |\n|---|---|\n| green | 20 |\n"
    )
    part = parts(found)["Main part"]
    assert found.pattern.title == "Leaf Bunting"
    assert part.rounds.splitlines() == [
        "Row 1: Ch 4, 2 dc in 4th ch from hook (3)",
        "Row 2: Ch 3, dc in same st, dc in next st, 2 dc in last st. Turn (5)",
        "Row 3–6: Ch 3, dc in same st, dc across to last st, 2 dc in last st. Turn",
    ]
    assert [one.makes for one in found.checked.parts[0].rounds] == [(n,) for n in range(3, 14, 2)]
    assert "green" in part.note


def test_a_makers_own_notes():
    first = "R1 sc in 2nd ch, 13 sc, 3 sc in last, other side: 13 sc, 2 sc in last (32)."
    found = read(
        "the snail\n\nshell: R1 6sc mr, R2 inc x6 (12), R3-5 12sc\n"
        f"body: ch 16; {first} R2: 32 sc\neyes x2: 5 sc in MR, sl st\n"
    )
    assert {name: (part.make, part.rounds) for name, part in parts(found).items()} == {
        "shell": (1, "R1 6sc mr\nR2 inc x6 (12)\nR3-5 12sc\n"),
        "body": (1, f"ch 16\n{first}\nR2: 32 sc\n"),
        "eyes": (2, "5 sc in MR, sl st\n"),
    }
    assert found.checked.well


def test_what_stands_between_and_behind_the_rounds_is_part_of_none():
    found = read(
        "Heron Cap\n\nSIZES: S (M, L) – to fit 50 (54, 58) cm\n\nBRIM\nRow 1: Ch 9, sc in 2nd ch "
        "from hook and in each ch across. (8 sc)\nRows 2-40 (44, 48): Ch 1, sc in each st, turn.\n"
        "Sl st the short ends together to make a ring.\n\n"
        "CROWN\nRnd 1: 12 (14, 16) sc in MR. (12 (14, 16) sc)\nPetals\n"
        "Rnd 2: (Ch 3, 2 dc, sl st) in each st around.\n\n"
        "POM POM (optional)\nWrap yarn 80 times around your hand, tie and trim.\n"
    )
    named = parts(found)
    assert found.pattern.sizes == ("S", "M", "L")
    assert len(named["Brim"].rounds.splitlines()) == 2
    assert "the short ends together" in named["Brim"].note
    assert named["Crown"].rounds.endswith("in each st around.\n")
    assert named["Crown"].note == "After Rnd 1: Petals"
    assert named["POM POM (optional)"].steps == (
        "Wrap yarn 80 times around your hand, tie and trim.",
    )


def test_a_shouted_line_between_rounds_stays_between_them():
    found = read(
        "Heron\n\nRnd 1: 6 sc in MR (6)\n\nCHANGE TO BLUE\nRnd 2: 2 sc in each st (12)\n\n"
        "FASTEN OFF\n"
    )
    assert list(parts(found)) == ["Main part"]


def test_a_small_piece_on_one_line_is_a_part_and_abbreviations_may_stand_behind():
    found = read(
        "Heron\n\nBody\nRnd 1: 6 dc in MR (6)\nRnd 2: inc in each st (12)\n\n"
        "Beak (orange): ch 12, ss back along the chain.\n\n"
        "Inc = 2 dc in same st. Dec = 2 dc together. Uses UK terms.\n"
    )
    assert parts(found)["Beak (orange)"].rounds == "ch 12, ss back along the chain.\n"
    assert [(one.abbr, one.how) for one in found.pattern.stitches] == [
        ("Inc", "2 dc in same st."),
        ("Dec", "2 dc together. Uses UK terms."),
    ]


def test_a_loop_of_chains_over_an_opening_is_no_piece_of_its_own():
    found = read(
        "Heron Bag\n\nRnd 1: 30 sc in MR (30)\n\nHandle: ch 10, skip 5 sts, sc in each st to end.\n"
    )
    assert list(parts(found)) == ["Main part"]


def test_what_the_notes_say_of_chains_goes_before_the_rounds():
    text = (
        "Heron Cap\n\nNotes\nThe ch 3 at the start of a round does not count as a stitch.\n\n"
        "Special stitches\nPuff: 5 hdc drawn together in one st, ch 1. The ch 1 does not count.\n\n"
        "Crown\nRnd 1: Ch 3, 12 dc in MR, join.\nRnd 2: Ch 3, 2 dc in each st, join.\n\n"
        "Cord\nRow 1: 4 sc in MR (4)"
    )
    found = read(text)
    said = "The ch 3 at the start of a round does not count as a stitch.\n"
    assert parts(found)["Crown"].rounds.startswith(f"{said}Rnd 1:")
    assert parts(found)["Cord"].rounds == "Row 1: 4 sc in MR (4)\n"
    assert [one.makes for one in found.checked.parts[0].rounds] == [(12,), (24,)]


def test_numbers_of_pages_are_no_words_of_the_text():
    text = (
        "Heron          page 1\n\nRnd 1: 6 sc in MR (6)\nPage 2 of 3\nRnd 2: 2 sc in each st (12)"
    )
    found = read(text).pattern
    assert (found.title, found.about, [part.note for part in found.parts]) == ("Heron", "", [""])


def test_numbers_that_begin_again_begin_a_part():
    one = "1. 6 sc in magic ring (6)\n2. inc in each st around (12)\n"
    found = read(f"Toy\n\n{one}{one}")
    assert [p.name for p in found.pattern.parts] == ["Main part", "Part 2"]
    assert [len(p.rounds) for p in found.checked.parts] == [2, 2]


def test_numbers_that_go_on_after_a_heading_are_the_same_part():
    found = read(
        "Toy\n\nHead\nRnd 1: 6 sc in magic ring. (6)\n\nNeck\n\nRnd 2: sc in each st around. (6)\n"
    )
    assert [(p.name, p.note) for p in found.pattern.parts] == [("Head", "After Rnd 1: Neck")]
    assert found.checked.well


def test_what_is_not_understood_is_kept_word_for_word_and_named():
    odd = "Rnd 2: glimmer the sc sideways thrice. (12)"
    found = read(f"Toy\n\nRnd 1: 6 sc in magic ring. (6)\n{odd}\nRnd 3: sc in each st around. (12)")
    assert odd in found.pattern.parts[0].rounds
    verdicts = [str(r.verdict) for r in found.checked.parts[0].rounds]
    assert verdicts[:2] == ["agrees", "unread"]
    assert found.checked.parts[0].rounds[2].below == (12,)
    message = found.checked.parts[0].rounds[1].messages[0]
    assert (message.line, message.source) == (4, odd)


POT = """Pot

Sizes: small, large

Special stitches
Tuft stitch (tf): takes 1, makes 1.

Base
Rnd 1: Ch 1, 8 sc in magic ring, join. (8 sts)
Rnd 2: Ch 1, *sc in next 3 (1) sts, 2 sc in next st; rep from * around, join. 10 (12) sts
Rnd 3: Ch 1, *sc in next st, tf in next st; rep from * around, join. 10 (12) sts
"""


def test_a_stitch_named_with_its_abbreviation_behind_it_is_called_by_that():
    (stitch,) = read(POT).pattern.stitches
    assert (stitch.abbr, stitch.name) == ("tf", "Tuft stitch")


def test_two_sizes_are_taken_for_two_where_a_line_names_them():
    found = read(POT)
    assert found.pattern.sizes == ("small", "large")
    assert [(r.verdict, r.makes) for r in found.checked.parts[0].rounds] == [
        ("agrees", (8, 8)),
        ("agrees", (10, 12)),
        ("agrees", (10, 12)),
    ]
    assert read(POT.replace("Sizes: small, large\n", "")).pattern.sizes == ()


def test_words_for_a_stitch_of_the_dictionary_and_chain_spaces_of_a_special_one():
    found = read(
        "Mat in US terms\n\nSpecial stitches\nknurl = dc, ch 2, dc in the same st\n"
        "tc = treble crochet\n\nRnd 1: 6 sc in ring. (6)\nRnd 2: tc in each st around. (6)\n"
    )
    stitches = {s.abbr: s for s in found.pattern.stitches}
    assert stitches["tc"].us == "tr"
    assert 'means = "tr"' in found.toml
    assert (stitches["knurl"].makes, stitches["knurl"].spaces) == (2, (2,))
    assert found.checked.parts[0].rounds[1].made == {"tr": (6,)}


def test_a_round_broken_by_a_narrow_page_is_one_round():
    found = read(
        "Mat\n\nRnd 1: 6 sc in magic ring. (6)\n"
        "Rnd 2: working loosely, *2 sc in next st; repeat the\n"
        "Same from * around. (12)\n"
    )
    assert len(found.checked.parts[0].rounds) == 2
    assert "repeat the Same from * around. (12)" in found.pattern.parts[0].rounds


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_line_ends_marks_and_ligatures_make_no_difference(ending):
    text = ending.join(["\ufeffCu\ufb03n mat", "", "Rnd 1:\u00a06 sc in magic\u00adring. (6)"])
    found = read(text)
    assert found.pattern.title == "Cuffin mat"
    assert found.pattern.parts[0].rounds == "Rnd 1: 6 sc in magicring. (6)\n"


def test_control_characters_become_visible():
    found = read("Mat\x1b[31m\n\nRnd 1: 6 sc in magic ring. (6) \x07Stuff it.")
    assert found.pattern.title == "Mat\u241b[31m"
    assert "\u2407" in found.pattern.parts[0].rounds


def test_three_quotes_in_a_round_come_out_right():
    text = "Mat\n\nRnd 1: 6 sc in magic ring. (6) Say '''oh \\ \"no\"'''."
    found = read(text)
    assert found.pattern.parts[0].rounds == text.split("\n")[2] + "\n"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no round was found in it"),
        ("A list of things to buy", "no round was found in it"),
        ("Rnd 1: " + "sc, " * 2_000, "text.txt: line 1, column 1: a line of 8,006 characters"),
        ("Rnd 1: 6 sc in magic ring. (6)\n" * 101, "it has 101 parts"),
        ("\n" * 5_001, "a text of 5,001 lines"),
        ("Rnds 1-9999: sc around\nRnds 10000-10002: sc around", "it has 10,002 rounds"),
    ],
)
def test_what_cannot_be_a_pattern_is_refused(text, said):
    with pytest.raises(PatternError) as caught:
        read(text)
    assert said in str(caught.value)


def test_what_about_has_no_room_for_stays_in_the_file():
    notes = [f"Thought number {n}, on nothing much." for n in range(150)]
    found = read("Mat\n\nNotes\n" + "\n".join(notes) + "\n\nRnd 1: 6 sc in magic ring. (6)")
    assert all(note in found.toml for note in notes)


# --- properties ----------------------------------------------------------------------------

SMALL = st.integers(1, 4)
GROWING = st.lists(SMALL, min_size=1, max_size=5)


def rounds_text(plains, label):
    """Rounds of a disc: each repeat has one plain stitch more, by figures that fit."""
    lines = [f"{label(1)}6 sc in magic ring. (6)", f"{label(2)}inc in each st around. (12)"]
    for number, _ in enumerate(plains, start=3):
        n = number - 2
        lines.append(f"{label(number)}[sc in next {n} sts, inc] x 6. ({6 * number})")
    return lines


LABELS = st.sampled_from(
    [lambda n: f"Rnd {n}: ", lambda n: f"Round {n} - ", lambda n: f"R{n}: ", lambda n: f"{n}. "]
)


def trees(rounds, lexicon):
    return [(line.label, read_round(line.body, lexicon)) for line in split_lines("\n".join(rounds))]


@settings(deadline=None)
@given(GROWING, LABELS)
def test_a_draft_keeps_trees_and_counts(plains, label):
    lines = rounds_text(plains, label)
    found = read("Disc\n\n" + "\n".join(lines) + "\n")
    loaded = load_text(found.toml)
    lexicon = Lexicon("US")
    assert trees(loaded.parts[0].rounds.splitlines(), lexicon) == trees(lines, lexicon)
    text = check_text("\n".join(lines)).parts[0].rounds
    draft = found.checked.parts[0].rounds
    assert [(r.label, r.verdict, r.makes) for r in draft] == [
        (r.label, r.verdict, r.makes) for r in text
    ]
    assert [r.line for r in draft] == [r.line + 2 for r in text]


@settings(deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_a_pattern_or_refused(text):
    try:
        found = read(text)
    except PatternError:
        return
    again = load_text(to_toml(found.pattern))
    assert [p.rounds for p in again.parts] == [p.rounds for p in found.pattern.parts]


LINE = st.text(st.characters(codec="utf-8", exclude_characters="\r"), min_size=1, max_size=80)


@settings(deadline=None)
@given(LINE, LINE, LINE)
def test_any_words_survive_the_file(title, about, rounds):
    title, about = title.strip() or "x", about.strip()
    part = Part("Part", rounds=f"x{rounds}\n", note=about)
    found = load_text(to_toml(Pattern(title, "US", (part,), about=about)))
    assert (found.title, found.about) == (title, about)
    assert (found.parts[0].rounds, found.parts[0].note) == (f"x{rounds}\n", about)
