"""Lines that each size works another number of times: the last rounds are for some sizes."""

import pytest

from tracker import check_text
from tracker.fabric.verdicts import Verdict
from tracker.pattern.changes import Change
from tracker.pattern.load import load_text
from tracker.pattern.own import own_version
from tracker.pattern.plan import make_plan

SLEEVE = """
title = "Sleeve"
terms = "US"
sizes = ["small", "large"]
[[part]]
name = "Sleeve"
worked = "joined rounds"
rounds = '''
Rnd 1: Ch 1, 9 (10) sc in ring; join. (9, 10)
Rnds 2-4 (2-6): Ch 1, 2 sc in first st, sc in each st around; join. (12, 15)
Rnd 5 (7): Ch 1, sc in each st around; join. (12, 15)
'''
"""


@pytest.mark.parametrize(
    ("size", "counts", "labels"),
    [
        ("small", [9, 10, 11, 12, 12], ["Rnd 1", "Rnd 2", "Rnd 3", "Rnd 4"]),
        ("large", [10, 11, 12, 13, 14, 15, 15], ["Rnd 1", "Rnd 2", "Rnd 3", "Rnd 4", "Rnd 5"]),
    ],
)
def test_each_size_works_its_own_number_of_rounds(size, counts, labels):
    rounds = make_plan(load_text(SLEEVE), size).parts[0].rounds
    assert [one.ends_on for one in rounds] == counts
    assert [one.label for one in rounds][: len(labels)] == labels
    assert not any(one.warning for one in rounds)


def test_a_round_changed_by_the_maker_is_followed_by_those_of_the_size_worked():
    plan = make_plan(load_text(SLEEVE), "large")
    own = own_version(plan, 0, [Change(1, "Ch 1, 3 sc in first st, sc in each st around; join.")])
    assert [one.ends_on for one in own.part.rounds][:4] == [10, 12, 13, 14]


def test_a_count_that_only_the_size_done_before_misses_is_told():
    text = "Rnds 2-4 (2-6, 2-8): 2 sc in first st, sc around, join. (13, 15, 17)"
    last = check_text(text, below=(9, 10, 10)).parts[0].rounds[-1]
    assert last.verdict is Verdict.DIFFERS
    assert last.makes == (12, 15, 17)
    assert last.messages[-1].text == "leaves 12 in size 1, but 13 is printed"
