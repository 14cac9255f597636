"""Keys do what they say."""

import errno
from zlib import crc32

import pytest

from tests.screens.stage import begin, begin_text, on_stage, shown, text
from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.screens.keys import learn
from tracker.screens.pages import Pages
from tracker.screens.settings import Settings
from tracker.session import told
from tracker.session.files import RealDisk
from tracker.session.glance import line
from tracker.session.place import Asking, Pace
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings


@pytest.mark.parametrize("key", ["space", "enter", "right", "pagedown"])
async def test_each_key_for_next_makes_one_step(tmp_path, key):
    session = begin(tmp_path)
    async with on_stage(session) as (_, pilot):
        await pilot.press(key)
        assert session.glance().place.step == 1


@pytest.mark.parametrize("key", ["backspace", "left", "pageup"])
async def test_each_key_for_back_takes_one_step_back(tmp_path, key):
    session = begin(tmp_path)
    async with on_stage(session) as (_, pilot):
        await pilot.press("space", "space", key)
        assert session.glance().place.step == 1


async def test_undo_and_redo(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (_, pilot):
        await pilot.press("space", "space", "u")
        assert session.glance().place.step == 1
        await pilot.press("r")
        assert session.glance().place.step == 2


async def test_the_pace_turns_and_the_place_stays(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("space", "p")
        assert session.glance().pace is Pace.REPEAT
        assert session.glance().place.step == 1
        assert "a press is a repeat" in text(app)


async def test_rounds_go_forth_and_back(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (_, pilot):
        await pilot.press("down", "down", "up")
        assert session.glance().round == 2


async def test_a_round_and_a_stitch_are_gone_to_by_number(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("g", "1", "2")
        assert "Go to round: 12_" in text(app)
        await pilot.press("backspace", "0", "enter")
        assert session.glance().round == 10
        await pilot.press("s", "7", "space")
        assert session.glance().made == 7
        assert "Go to" not in text(app)


async def test_the_number_being_typed_hides_neither_step_nor_count(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session, (40, 12)) as (app, pilot):
        before = shown(app)[:7]
        await pilot.press("g", "3")
        assert shown(app)[:7] == before


async def test_escape_drops_the_number(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("g", "3", "escape")
        assert "Go to" not in text(app)
        assert session.glance().round == 1


async def test_a_mark_is_set_and_returned_to(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("space", "m", "space", "space", "j")
        assert session.glance().place.step == 1
        assert "mark" in text(app)


def at_round_end(folder):
    session = begin(folder)
    session.go_to_round(7)
    session.go_to_stitch(56)
    session.next()
    assert session.glance().asking
    return session


async def test_at_a_rounds_end_next_confirms_the_count(tmp_path):
    session = at_round_end(tmp_path)
    async with on_stage(session) as (app, pilot):
        assert "space: it is 56, or type your count" in text(app)
        await pilot.press("space")
        assert session.glance().last_press == "56 counted; on to Rnd 8"


async def test_at_a_rounds_end_digits_are_the_count(tmp_path):
    session = at_round_end(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("5", "4", "backspace", "5")
        assert "Counted: 55_" in text(app)
        await pilot.press("space")
        assert session.glance().last_press == "55 counted; on to Rnd 8"


async def test_digits_elsewhere_do_nothing(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        before = text(app)
        await pilot.press("5", "5")
        assert text(app) == before


async def test_when_the_count_is_asked_for_is_chosen(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (_, pilot):
        await pilot.press("a")
        assert session.glance().count_asking is Asking.INCREASES
        await pilot.press("a")
        assert session.glance().count_asking is Asking.NEVER


async def test_a_length_is_reached(tmp_path):
    session = begin(tmp_path)
    session.set_asking(Asking.NEVER)
    session.set_pace(Pace.ROUND)
    session.go_to_round(17)
    async with on_stage(session) as (app, pilot):
        await pilot.press("space")
        assert "space: one more  e: enough  d: measure" in text(app)
        await pilot.press("space", "space", "e")
        assert session.glance().round_label == "Rnd 18"


async def test_how_a_chain_is_made_is_told_too(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(2)
    async with on_stage(session) as (app, pilot):
        await pilot.press("h")
        assert "ch 1: Yarn over and draw it through the loop on the hook." in text(app)


async def test_the_how_to_comes_and_goes(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(5)
    session.go_to_stitch(3)
    for size in ((40, 12), (80, 24)):
        async with on_stage(session, size) as (app, pilot):
            before = text(app)
            await pilot.press("h")
            assert "hdc: Yarn over, hook into the st" in text(app)
            await pilot.press("h")
            assert text(app) == before


async def test_a_trim_is_chosen_by_going_to_it(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("t")
        assert "Berry trim" in text(app)
        await pilot.press("down", "down", "space")
        assert session.glance().part == "Berry trim"
        assert [part.chosen for part in session.glance().parts] == [True, False, True, True]


async def test_the_list_of_parts_can_be_left(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("t", "down", "escape")
        assert session.glance().part == "Body"
        assert "Rnd 1 of 19" in text(app)


async def test_a_press_on_the_help_does_not_move_the_place(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session) as (app, pilot):
        await pilot.press("question_mark", "space")
        assert isinstance(app.screen, Pages)
        assert session.glance().place.step == 0
        await pilot.press("escape", "space")
        assert session.glance().place.step == 1


async def test_a_learnt_key_takes_the_place_of_the_usual_ones(tmp_path):
    session = begin(tmp_path)
    settings = Settings(keys=learn({"next": ["f18", "1"], "undo": ["space"]}))
    async with on_stage(session, settings=settings) as (app, pilot):
        await pilot.press("f18", "1", "enter")
        assert session.glance().place.step == 2
        await pilot.press("space")
        assert session.glance().place.step == 1
        assert "f18 next" in text(app)


BRACKETS = r"""
title = "[bold]Cosy[/bold] \u001b[31m"
terms = "US"
[[part]]
name = "Cap [/]"
rounds = '''
Rnd 1: 6 sc in ring. (6)
Rnd 2: [2 sc in next st] 6 times. (12)
'''
"""


@pytest.mark.parametrize("size", [(80, 24), (200, 60)])
async def test_brackets_and_control_characters_are_shown_as_they_are(tmp_path, size):
    session = begin_text(tmp_path, BRACKETS)
    session.go_to_round(2)
    async with on_stage(session, size) as (app, pilot):
        assert "[bold]Cosy[/bold] ␛[31m" in text(app)
        assert "Cap [/]" in text(app)
        assert "[2 sc in next st] 6 times" in text(app)
        await pilot.press("t")
        assert "Cap [/]" in text(app)


class FullDisk(RealDisk):
    """A disk that can be filled."""

    full = False

    def write(self, handle, data):
        if self.full:
            raise OSError(errno.ENOSPC, "No space left on device")
        return super().write(handle, data)


async def test_trouble_with_saving_is_said_and_goes_away(tmp_path):
    disk = FullDisk()
    pattern = load_pattern(library.demo_patterns()["tea-cosy"])
    around = Surroundings(disk=disk)
    session = Session.start(pattern, "4 cups", tmp_path, around=around)
    async with on_stage(session) as (app, pilot):
        disk.full = True
        await pilot.press("space")
        assert "Not saved" in text(app)
        disk.full = False
        await pilot.press("space")
        assert "Not saved" not in text(app)
        assert session.glance().place.step == 2


def kept_line(path):
    """The line kept for a piece's file as it is now, or None."""
    data = path.read_bytes()
    return told._kept(path, told._sign(len(data), crc32(data)))


async def test_soon_after_a_press_the_place_is_kept_for_who_asks_elsewhere(tmp_path):
    async with on_stage(begin(tmp_path)) as (app, pilot):
        session = app.session
        await pilot.press("space")
        for _ in range(200):
            if kept_line(session.path):
                break
            await pilot.pause(0.02)
        assert kept_line(session.path) == line(session.glance())


async def test_an_open_length_asks_in_whole_words_on_a_small_screen_too(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(17)
    async with on_stage(session, (40, 12)) as (app, pilot):
        await pilot.press("p", "p", "space")
        assert "space: one more  e: enough" in text(app)
