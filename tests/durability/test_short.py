"""The short versions of what ``python -m tests.durability`` runs at length."""

import errno

from tests.durability.choosing import (
    fail_while_choosing,
    kill_while_choosing,
    lose_power_while_choosing,
)
from tests.durability.crashes import crash_everywhere
from tests.durability.damage import damage_all
from tests.durability.failing import fail_at_every
from tests.durability.kills import kill_in_storms
from tests.durability.takeovers import take_over_in_storms


def test_no_acknowledged_press_is_lost_to_a_kill_and_no_lock_is_left(tmp_path):
    counts = kill_in_storms(tmp_path, 50)
    assert counts["presses acknowledged"] > 50


def test_no_acknowledged_press_is_lost_when_another_window_takes_over(tmp_path):
    counts = take_over_in_storms(tmp_path, 15)
    assert counts["presses acknowledged"] > 15
    assert counts["unsaved work kept beside"] > 0


def test_whichever_operation_fails_nothing_is_lost(tmp_path):
    counts = fail_at_every(tmp_path, presses=24, step=17)
    assert counts["of those in recovery"] > 10


def test_a_loss_of_power_after_any_operation_leaves_a_place_that_once_was(tmp_path):
    counts = crash_everywhere(tmp_path, presses=40, every=17, real_every=29)
    assert counts["crash states"] > 1000


def test_damage_anywhere_is_told_and_never_a_silently_wrong_place(tmp_path):
    counts = damage_all(tmp_path, presses=30, every=7, values=2)
    assert counts["opened and told"] > 500


def test_whichever_operation_of_a_choice_fails_both_versions_are_kept_and_it_can_be_made_again(
    tmp_path,
):
    counts = fail_while_choosing(tmp_path, codes=(errno.EIO,))
    assert counts["chosen again"] > 50


def test_a_kill_in_the_middle_of_a_choice_leaves_both_versions(tmp_path):
    assert kill_while_choosing(tmp_path)["kills"] > 40


def test_a_loss_of_power_in_the_middle_of_a_choice_leaves_both_versions(tmp_path):
    assert lose_power_while_choosing(tmp_path)["crash states"] > 60
