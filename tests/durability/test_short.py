"""The short versions of what ``python -m tests.durability`` runs at length."""

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
