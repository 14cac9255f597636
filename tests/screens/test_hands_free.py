"""Held keys, one switch, the guard, and a presenter's other keys."""

from itertools import pairwise
from math import ceil

import pytest

from tests.screens.stage import SIZES, begin, on_stage, text
from tracker.screens.held import BURST, FIRST, LAST, QUICK, Fate, Held, Twice
from tracker.screens.settings import Settings
from tracker.session.looking import look


def counted(times, key="space"):
    """How many presses of a key at these times count, each wait played to its end."""
    held, count, waiting = Held(), 0, 0
    for time, then in pairwise([*times, None]):
        earlier, this = held.press(key, time)
        if earlier is not Fate.WAITS:
            count, waiting = count + waiting * (earlier is Fate.COUNTS), 0
        count, waiting = count + (this is Fate.COUNTS), waiting + (this is Fate.WAITS)
        if held.patience and (then is None or then - time > held.patience):
            earlier = held.settle()
            if earlier is not Fate.WAITS:
                count, waiting = count + waiting * (earlier is Fate.COUNTS), 0
        count -= held.wrongly()
    return count


def repeats(start, count, first=0.5, every=0.033):
    """The times at which a held key comes."""
    return [start, *(start + first + every * n for n in range(count))]


@pytest.mark.parametrize("count", [1, 2, 3, 10, 1000])
@pytest.mark.parametrize(
    ("first", "every"), [(0.5, 0.033), (0.25, 0.03), (0.4, 0.09), (0.66, 0.04), (1.0, 0.05)]
)
def test_a_held_key_counts_once_however_long(count, first, every):
    long_before = repeats(1, 20, first, every)
    assert counted([*long_before, *repeats(10, count, first, every)]) == 2


def test_a_key_let_go_after_its_first_repeat_at_the_usual_wait_counts_once():
    assert counted(repeats(10, 1)) == 1
    assert counted([*repeats(10, 1), 12, 14]) == 3


@pytest.mark.parametrize("late", [-0.01, -0.005, 0.005, 0.01])
def test_repeats_that_come_a_little_early_or_late_are_still_a_held_key(late):
    times = [10, 10.5 + late, *(10.533 + 0.033 * n + late * (n % 2) for n in range(30))]
    assert counted(times) == 1
    assert counted(times[:2]) == 1


def bursts(times, every):
    """The times at which a line that hands on only now and then brings the keys."""
    return sorted(ceil(time / every) * every + 0.0001 * n for n, time in enumerate(times))


@pytest.mark.parametrize("every", [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35])
@pytest.mark.parametrize(("first", "apart"), [(0.5, 0.033), (0.5, 0.02), (0.66, 0.04)])
def test_a_held_key_over_a_slow_line_comes_in_bursts_and_counts_once(every, first, apart):
    for begun in range(50):
        assert counted(bursts(repeats(10 + begun / 50, 30, first, apart), every)) == 1


@pytest.mark.parametrize("gap", [0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1.05])
@pytest.mark.parametrize("count", [2, 3])
def test_a_few_presses_in_one_burst_after_another_are_no_held_key(count, gap):
    assert counted([10, *(10 + gap + 0.0001 * n for n in range(count))]) == 1 + count


@pytest.mark.parametrize("gap", [0.2, 0.5, 1, 5])
def test_more_presses_in_one_burst_than_a_keyboard_sends_all_count(gap):
    assert counted([10, *(10 + gap + 0.0001 * n for n in range(200))]) == 201


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
        assert held.press(key, 10 + time * 0.3).this is Fate.COUNTS


def test_the_figures_leave_room_between_repeats_and_taps():
    assert 0.09 < QUICK < 0.12 < FIRST < 0.25
    assert LAST > 1
    assert BURST < 0.02


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
        assert look(session.path).history.undone == 0
        assert text(app) == before
