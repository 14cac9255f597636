"""Held keys, one switch, the guard, and a presenter's other keys."""

import pytest

from tests.screens.stage import SIZES, begin, on_stage, text
from tracker.screens.held import FIRST, LAST, QUICK, Held, Press, Twice
from tracker.screens.settings import Settings


def counted(times, key="space"):
    """How many presses of a key at these times count, each wait played to its end."""
    held = Held()
    worth = [held.press(key, time) for time in times]
    return sum(
        one is Press.COUNTS
        or (one is Press.WAITS and (at + 1 == len(worth) or worth[at + 1] is not Press.HELD))
        for at, one in enumerate(worth)
    )


def repeats(start, count, first=0.5, every=0.033):
    """The times at which a held key comes."""
    return [start, *(start + first + every * n for n in range(count))]


@pytest.mark.parametrize("count", [2, 3, 10, 1000])
@pytest.mark.parametrize(
    ("first", "every"), [(0.5, 0.033), (0.25, 0.03), (0.4, 0.09), (0.66, 0.04), (1.0, 0.05)]
)
def test_a_held_key_counts_once_however_long(count, first, every):
    assert counted(repeats(10, count, first, every)) == 1


def test_a_held_key_over_a_slow_line_comes_in_bursts_and_counts_once():
    times = [10.0]
    for burst in range(8):
        times += [10.6 + burst * 0.3 + n * 0.0001 for n in range(9)]
    assert counted(times) == 1


@pytest.mark.parametrize("apart", [0.12, 0.15, 0.2, 0.3, 0.5, 0.51, 1, 2.5])
def test_taps_all_count(apart):
    assert counted([10 + apart * n for n in range(50)]) == 50


def test_a_tap_after_a_held_key_counts():
    assert counted([*repeats(10, 30), 12, 12.15, 14]) == 4


def test_a_burst_without_a_first_wait_is_no_held_key():
    assert counted([10 + 0.001 * n for n in range(200)]) == 200


def test_another_key_between_makes_a_new_press():
    held = Held()
    for time, key in enumerate(("space", "left", "space", "left")):
        assert held.press(key, 10 + time * 0.3) is Press.COUNTS


def test_the_figures_leave_room_between_repeats_and_taps():
    assert 0.09 < QUICK < 0.12 < FIRST < 0.25
    assert LAST > 1


def test_two_quick_presses_are_found_in_pairs():
    twice = Twice()
    assert [twice.second(time) for time in (1, 1.2, 1.4, 1.6, 3)] == [
        False, True, False, True, False,
    ]  # fmt: skip


async def test_one_switch_goes_on_and_two_quick_presses_go_back(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(17)
    async with on_stage(session, settings=Settings(one_switch=True)) as (_, pilot):
        await pilot.press("space")
        assert session.glance().made == 18
        await pilot.pause(0.5)
        await pilot.press("space", "space")
        assert session.glance().made == 17


async def test_one_switch_takes_back_the_count_that_its_first_press_confirmed(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(56)
    session.next()
    async with on_stage(session, settings=Settings(one_switch=True)) as (_, pilot):
        await pilot.press("space", "space")
        assert session.glance().round == 7
        assert not session.glance().asking


@pytest.mark.parametrize("size", SIZES)
async def test_the_guard_lets_only_next_and_back_through_and_says_how_it_ends(tmp_path, size):
    session = begin(tmp_path)
    async with on_stage(session, size) as (app, pilot):
        await pilot.press("x")
        assert "guard on: x x ends it" in text(app)
        place = session.glance().place
        await pilot.press("p", "down", "u", "t", "q", "g", "5", "question_mark", "slash", "c")
        assert session.glance().place == place
        assert app.is_running
        assert "guard on: x x ends it" in text(app)
        await pilot.press("space", "space", "backspace")
        assert session.glance().place.step == 1
        await pilot.press("x")
        assert "guard on: x once more ends it" in text(app)
        await pilot.press("t", "x", "x")
        assert "guard on" not in text(app)
        await pilot.press("down")
        assert session.glance().round == 2


@pytest.mark.parametrize("key", ["escape", "f5", "full_stop", "b"])
async def test_the_other_keys_of_a_presenter_change_nothing(tmp_path, key):
    session = begin(tmp_path)
    session.go_to_round(7)
    async with on_stage(session) as (app, pilot):
        before = text(app)
        await pilot.press(key, key)
        assert session.can_redo == 0
        assert text(app) == before
