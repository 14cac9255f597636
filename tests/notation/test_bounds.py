"""Words that nobody would work get a message, however long or deep they are."""

from __future__ import annotations

import pytest

from tracker import check_text
from tracker.fabric.effort import (
    MOST_FOR_CAUSE,
    MOST_IN_LONG_ROUND,
    MOST_IN_PATTERN,
    MOST_IN_ROUND,
    TO_BEGIN,
    Effort,
)
from tracker.fabric.verdicts import Verdict
from tracker.notation.lexicon import Lexicon
from tracker.notation.reader import DEEPEST, MOST_LETTERS
from tracker.pattern.part_checker import PartChecker


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Rnd 1: " + "(" * 10_000 + "sc" + ")" * 10_000, "more words"),
        ("Rnd 1: " + "(" * (DEEPEST + 1) + "sc" + ")" * (DEEPEST + 1), "in one another"),
        ("Rnd 1: [sc] x 1000000000000", "more stitches"),
        ("Rnd 1: " + "sc, " * 250_000, "more words"),
        ("Rnd 1: " + "*" * 1_000_000, "more words"),
        ("Rnd 1: " + "(" * 1_000_000, "more words"),
        ("Rnd 1: " + "(" * (MOST_LETTERS - 100), "not understood"),
    ],
)
def test_what_cannot_be_worked_is_said_and_nothing_breaks(text: str, says: str) -> None:
    (found,) = check_text(text).parts[0].rounds
    assert found.verdict is Verdict.UNREAD
    assert says in found.messages[0].text


def test_stars_with_nothing_between_them_ask_for_nothing() -> None:
    assert check_text("Rnd 1: " + "* ** " * (MOST_LETTERS // 6)).parts[0].rounds == ()


def test_a_row_of_signs_is_no_label_and_is_told_from_one_at_once() -> None:
    """Tried in every way to part the signs, this would take longer than anybody lives."""
    (found,) = check_text("*" * 400 + ", (c", below=4).parts[0].rounds
    assert found.verdict is Verdict.UNREAD


def test_brackets_as_deep_as_allowed_are_worked() -> None:
    text = "Rnd 1: 6 sc in ring\nRnd 2: " + "(" * 6 + "sc" + ") x 1" * 5 + ") x 6"
    assert [r.makes for r in check_text(text).parts[0].rounds] == [(6,), (6,)]


def test_a_hundred_thousand_stitches_are_counted() -> None:
    text = "Rnd 2: *sc in next 4 sts, 2 sc in next st; rep from * around"
    (found,) = check_text(text, below=100_000).parts[0].rounds
    assert found.makes == (120_000,)


def test_lines_that_stand_for_too_many_rounds_are_named_not_worked() -> None:
    ranges = [f"Rnds {first}-{first + 9_989}: sc in each st around" for first in (2, 9_992, 19_982)]
    rounds = check_text("Rnd 1: 6 sc in magic ring\n" + "\n".join(ranges)).parts[0].rounds
    assert len(rounds) == 1 + 2 * 9_990 + 1
    assert rounds[-2].makes == (6,)
    assert rounds[-1].verdict is Verdict.UNREAD
    assert "makes more than 20000 rounds" in rounds[-1].messages[0].text


@pytest.mark.parametrize("along", [1, 3, 4, 9])
def test_more_stitches_along_a_chain_than_it_has_are_told(along: int) -> None:
    text = (
        "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: inc x 6. (12)\nRnd 3: ch 3, join to the first leg "
        f"with a sc, 11 sc around the leg, 3 sc along the chain, {along} sc along the chain. (40)"
    )
    assert check_text(text).parts[0].rounds[-1].verdict is Verdict.DIFFERS


#: What would be worked for minutes, and in the last case for years, if nothing bounded it.
HEAVY = (
    "Rnd 2: *((sc, inc) around, *sc 2, inc; rep from * around) around",
    "Rnd 2: *sc in next 2 sts, sc; rep from * to last st, inc (20)",
    "Rnd 2: ch 1, (sc, ch 1, sk 1, 2 sc in next st, (dc, ch 2, dc)) around, join (7)",
    "Rnd 2: *sc 1, *sc 1, *sc 1, *sc 1, inc around* around* around* around* (3)",
)


@pytest.mark.parametrize("text", HEAVY)
def test_no_round_costs_more_than_its_share(text: str) -> None:
    """Each instruction worked is counted, so that the bound holds on any machine."""
    spent = Effort(whole=20_000)
    (found,) = PartChecker(Lexicon("US"), 1, (100_000,), effort=spent).check(text)
    assert found.verdict is not Verdict.AGREES
    assert spent.whole >= -TO_BEGIN


#: Words that ask for spaces where there are none, and for more beside them.
BROKEN = (
    "Rnd 3: *2 dc in next 3 sts, ch 1*, repeat 5 times, sc in each ch-2 sp around, sc around, dec.",
    "Rnd 3: (sc, inc) around, dc in corner, sc in each ch-2 sp around, 3 sc in next, sc in last 4",
    "Rnd 3: sc around, (2 sc, inc) x 6, sc in each ch-2 sp around, sc around, 3 sc inc, ch 3 (136)",
)


@pytest.mark.parametrize("text", BROKEN)
@pytest.mark.parametrize("below", [18, 60, 240])
def test_a_broken_round_costs_little(text: str, below: int) -> None:
    """Steps are bounded like instructions: none is made again and again where none is taken."""
    spent = Effort()
    (found,) = PartChecker(Lexicon("US"), 1, (below,), effort=spent).check(text)
    assert found.verdict in (Verdict.DIFFERS, Verdict.UNREAD)
    assert MOST_IN_PATTERN - spent.whole <= MOST_IN_ROUND + below + 3 * (MOST_FOR_CAUSE + TO_BEGIN)
    if found.judged is not None:
        assert all(len(outcome.runs) < 5 * below for outcome in found.judged.outcomes)


def test_a_round_is_given_up_before_the_part_is() -> None:
    spent = Effort()
    PartChecker(Lexicon("US"), 1, (30_000,), effort=spent).check(HEAVY[0])
    assert MOST_IN_PATTERN - spent.whole <= MOST_IN_LONG_ROUND + MOST_FOR_CAUSE + 2 * TO_BEGIN


def test_a_part_of_many_heavy_rounds_is_given_up_and_said() -> None:
    heavy = "\n".join(
        f"Rnd {n}: *sc in next {n % 7 + 1} sts, ch 1, sk 1; rep from * around" for n in range(2, 40)
    )
    spent = Effort(whole=20_000)
    rounds = PartChecker(Lexicon("US"), 1, (9_000,), effort=spent).check(heavy)
    assert spent.whole >= -TO_BEGIN
    assert rounds[-1].verdict is Verdict.UNREAD


@pytest.mark.parametrize(
    "words", ["work", "make a", "sc around (10)\nWork 4 more", "2 sc, then make"]
)
def test_words_that_break_off_are_read_without_a_fault(words: str) -> None:
    assert check_text(f"Rnd 3: {words}", below=10).parts
