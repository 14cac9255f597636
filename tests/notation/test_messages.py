"""What a designer is told of a round that does not work out: whole messages.

Each has the place, what the round below leaves, what the words make, what is printed, the
line with its words marked, and the likeliest slip.
"""

import subprocess
import sys

import pytest

from tracker import check_text

SLIPS = {
    "one repeat too few": (
        18,
        "Rnd 4: *sc in next 2 sts, inc; rep from * 4 times more. (24)",
        """\
line 1, column 9: leaves 3 of the 18 stitches below unworked; it makes 20, and 24 is printed
    Rnd 4: *sc in next 2 sts, inc; rep from * 4 times more. (24)
            ^^^^^^^^^^^^^^^^^^^^^
    one repeat too few: with 5 times it would fit""",
    ),
    "one repeat too many": (
        21,
        "Rnd 4: (sc in next 5 sts, dec) 4 times. (18)",
        """\
line 1, column 9: wants 5 more where none of the 21 stitches below are left; it makes 24, and 18 \
is printed
    Rnd 4: (sc in next 5 sts, dec) 4 times. (18)
            ^^^^^^^^^^^^^^^^
    one repeat too many: with 3 times it would fit""",
    ),
    "in next for in each": (
        27,
        "Rnd 6: ch 1, sc in next st; join. (27)",
        """\
line 1, column 8: leaves 26 of the 27 stitches below unworked; it makes 1, and 27 is printed
    Rnd 6: ch 1, sc in next st; join. (27)
           ^^^^^^^^^^^^^^^^^^^^^^^^^
    'in next' where 'in each' was meant""",
    ),
    "in each doubled": (
        14,
        "Rnd 3: 2 sc in each st around. (14)",
        """\
line 1, column 32: makes 28, but 14 is printed
    Rnd 3: 2 sc in each st around. (14)
                                   ^^^^
    one stitch too many in each place: 1 instead of 2 would fit""",
    ),
    "a decrease for an increase": (
        15,
        "Rnd 4: *sc in next 2 sts, dec; rep from * 4 times more. (20)",
        """\
line 1, column 27: wants 2 more where 1 of the 15 stitches below is left; it makes 15, and 20 is \
printed
    Rnd 4: *sc in next 2 sts, dec; rep from * 4 times more. (20)
                              ^^^
    a decrease where an increase was meant""",
    ),
    "an increase for a decrease": (
        20,
        "Rnd 9: *sc in next 2 sts, inc; rep from * around. (15)",
        """\
line 1, column 9: leaves 2 of the 20 stitches below unworked; it makes 24, and 15 is printed
    Rnd 9: *sc in next 2 sts, inc; rep from * around. (15)
            ^^^^^^^^^^^^^^^^^^^^^
    an increase where a decrease was meant""",
    ),
    "one stitch more between the decreases": (
        30,
        "Rnd 8: *sc in next 5 sts, dec; rep from * around. (25)",
        """\
line 1, column 9: leaves 2 of the 30 stitches below unworked; it makes 24, and 25 is printed
    Rnd 8: *sc in next 5 sts, dec; rep from * around. (25)
            ^^^^^^^^^^^^^^^^^^^^^
    one stitch too many: 4 instead of 5 would fit""",
    ),
    "the total takes in the chain": (
        32,
        "Rnd 5: ch 1, sc in each st around; join to first sc. (33)",
        """\
line 1, column 54: makes 32, but 33 is printed
    Rnd 5: ch 1, sc in each st around; join to first sc. (33)
                                                         ^^^^
    the printed count may take in the beginning chain""",
    ),
    "one size": (
        (12, 14, 16),
        "Rnd 3: *sc, inc; rep from * around. (18, 21, 22)",
        """\
line 1, column 37: makes 18 (21, 24), but 18 (21, 22) is printed (only size 3 is off)
    Rnd 3: *sc, inc; rep from * around. (18, 21, 22)
                                        ^^^^^^^^^^^^""",
    ),
    "digits that changed places": (
        35,
        "Rnd 6: sc in each st around. (53)",
        """\
line 1, column 30: makes 35, but 53 is printed
    Rnd 6: sc in each st around. (53)
                                 ^^^^
    the digits of 35 may have changed places""",
    ),
    "the count of the round below": (
        15,
        "Rnd 7: (1 sc, dec) x 5 (15)",
        """\
line 1, column 24: makes 10, but 15 is printed
    Rnd 7: (1 sc, dec) x 5 (15)
                           ^^^^
    15 is the count of the round below""",
    ),
    "a round left out before": (
        14,
        "Rnd 5: (2 sc, inc) to end (28)",
        """\
line 1, column 9: leaves 2 of the 14 stitches below unworked; it makes 16, and 28 is printed
    Rnd 5: (2 sc, inc) to end (28)
            ^^^^^^^^^
    it would fit 21 stitches: a round before it may be missing or off""",
    ),
    "one kind of several": (
        20,
        "Rnd 3: ch 1, *sc in next st, ch 2, sk 1; rep from * around; join. (10 sc, 11 ch-2 sps)",
        """\
line 1, column 67: makes 10 ch-2 sp, but 11 is printed
    Rnd 3: ch 1, *sc in next st, ch 2, sk 1; rep from * around; join. (10 sc, 11 ch-2 sps)
                                                                      ^^^^^^^^^^^^^^^^^^^^""",
    ),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_the_likeliest_slip_is_named(slip):
    below, text, message = SLIPS[slip]
    [found] = check_text(text, terms="US", below=below).parts[0].rounds
    assert found.verdict == "differs"
    assert str(found.messages[0]) == message


PAGE = """\
title = "Fern pot cover"
terms = "US"
sizes = ["small", "tall"]
[[part]]
name = "Side"
worked = "spiral"
rounds = '''
Rnd 1: 8 (10) sc in magic ring. (8, 10)
Rnd 2: inc in each st around. (16, 21)
Rnd 3: *sc, inc; rep from * around. (24, 30)
Rnd 4: sc in each flurb around. (24, 30)
Rnd 6: *sc 2, dec; rep from * around. (18, 24)
Rnd 7: *sc, dec; rep from * around. (12, 16)
'''
"""

REPORT = """\
Fern pot cover · small, tall

Side
  Rnd 1  agrees            → 8 (10)
  Rnd 2  differs    8 (10) → 16 (20)
      page.toml, line 9, column 31: makes 16 (20), but 16 (21) is printed (only size 'tall' is off)
          Rnd 2: inc in each st around. (16, 21)
                                        ^^^^^^^^
  Rnd 3  agrees    16 (20) → 24 (30)
  Rnd 4  unread    24 (30) → ?
      page.toml, line 11, column 11: 'in each flurb around' is not understood
          Rnd 4: sc in each flurb around. (24, 30)
                    ^^^^^^^^^^^^^^^^^^^^
  Rnd 6  differs   24 (30) → 18 (21)
      page.toml, line 12, column 9: leaves 0 (2) of the 24 (30) stitches below unworked; it \
makes 18 (21), and 18 (24) is printed (only size 'tall' is off)
          Rnd 6: *sc 2, dec; rep from * around. (18, 24)
                  ^^^^^^^^^
      page.toml, line 12, column 8: is numbered 6, but would be number 5 of this part
          Rnd 6: *sc 2, dec; rep from * around. (18, 24)
                 ^
  Rnd 7  agrees    18 (24) → 12 (16)

Not all well: 3 agree, 2 differ, 1 unread.

"""


def report_on(pattern, folder):
    """What the command says of a pattern file that is not all well."""
    page = folder / "page.toml"
    page.write_text(pattern, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "check", page.name],
        cwd=folder,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 1
    return done.stdout


def test_several_faults_are_told_in_one_run(tmp_path):
    assert report_on(PAGE, tmp_path) == REPORT


RANGE = """\
title = "Fern pot cover"
terms = "US"
[[part]]
name = "Base"
worked = "spiral"
rounds = '''
Rnd 1: 7 sc in magic ring. (7)
Rnd 2: *sc in next 6 sts, inc; rep from * around. (8)
Rnds 3-6: rep Rnd 2.
Rnds 7-8: sc in next 9 sts. (9)
'''
"""

RANGE_REPORT = """\
Fern pot cover

Base
  Rnd 1  agrees      → 7
  Rnd 2  agrees    7 → 8
  Rnd 3  differs   8 → 8
      page.toml, line 8, column 9: leaves 1 of the 8 stitches below unworked
          Rnd 2: *sc in next 6 sts, inc; rep from * around. (8)
                  ^^^^^^^^^^^^^^^^^^^^^
          Rnd 2, whose words these are, was worked into 7 stitches
  Rnd 4  differs   8 → 8
  Rnd 5  differs   8 → 8
  Rnd 6  differs   8 → 8
  Rnd 7  agrees      → 9
  Rnd 8  agrees    9 → 9

Not all well: 4 agree, 4 differ.

"""


def test_a_fault_of_a_range_is_told_once(tmp_path):
    assert report_on(RANGE, tmp_path) == RANGE_REPORT
