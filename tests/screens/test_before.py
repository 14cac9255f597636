"""The page before a new piece, and the note of each part."""

import pytest
from textual.widgets import OptionList

from tests.screens.stage import begin, begin_text, on_stage, text
from tests.screens.terminal import BEFORE, Terminal
from tracker.pattern import library
from tracker.pattern.cautions import DEFER, caution
from tracker.pattern.load import load_pattern
from tracker.screens.app import HooksideApp
from tracker.screens.inks import DARK
from tracker.screens.keys import learn
from tracker.screens.pages import Pages
from tracker.screens.settings import Settings
from tracker.screens.shelf_app import ShelfApp
from tracker.screens.work import WorkScreen
from tracker.session.session import Session

SIZES = ((40, 12), (80, 24), (100, 30), (200, 60))

PLAIN = """\
title = "Cup mat"
terms = "US"
[[part]]
name = "Mat"
worked = "spiral"
rounds = "Rnd 1: 6 sc in magic ring. (6)"
"""

LONG = " ".join(f"word{number}" for number in range(200))


async def paged(app, pilot):
    """All words of the pages, read to their end by next alone."""
    words = []
    while isinstance(app.screen, Pages):
        words += text(app).split()
        await pilot.press("pagedown")
    return " ".join(words)


def flat(words):
    """The words in one line."""
    return " ".join(words.split())


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["dusk-moth", "headband"])
async def test_a_new_piece_begins_with_what_to_take_care_of(tmp_path, name, size):
    pattern = load_pattern(library.demo_patterns()[name])
    session = begin(tmp_path, name, next(iter(pattern.sizes), ""))
    app = HooksideApp(session, tmp_path, Settings(), DARK)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert text(app).strip().startswith(BEFORE)
        assert text(app).splitlines()[0].endswith("space: on")
        seen = await paged(app, pilot)
        for words in (*(caution(one).sentence for one in pattern.cautions), DEFER):
            assert all(word in seen for word in words.split())
        assert isinstance(app.screen, WorkScreen)
        assert session.glance().place.step == 0
    session.close()


async def test_the_page_has_the_pattern_its_gauge_hooks_and_cautions_in_order(tmp_path):
    session = begin(tmp_path, "headband", "adult")
    app = HooksideApp(session, tmp_path, Settings(), DARK)
    async with app.run_test(size=(200, 60)) as pilot:
        await pilot.pause()
        seen = flat(text(app))
        parts = (
            "Turned rows along the length of the band",
            "Gauge: 16 hdc and 12 rows over 10 cm. Hook: 4 mm; Edging: 3.5 mm.",
            "Band: The ch 1 at the start of a row is not a stitch",
            caution("infant-hat-sleep").sentence,
            caution("fibre-skin").sentence,
            DEFER,
        )
        places = [seen.index(words) for words in parts]
        assert places == sorted(places)
    session.close()


@pytest.mark.parametrize("key", ["pagedown", "space", "enter", "right", "escape", "q"])
async def test_any_key_that_closes_pages_goes_on_to_the_work(tmp_path, key):
    session = begin(tmp_path)
    app = HooksideApp(session, tmp_path, Settings(), DARK)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        await pilot.press(key)
        assert isinstance(app.screen, WorkScreen)
        assert "Rnd 1 of 19" in text(app)
    session.close()


async def test_a_pedal_that_was_learned_closes_it(tmp_path):
    session = begin(tmp_path)
    settings = Settings(keys=learn({"next": ["f18"]}))
    app = HooksideApp(session, tmp_path, settings, DARK)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        await pilot.press("f18")
        assert isinstance(app.screen, WorkScreen)
    session.close()


@pytest.mark.parametrize("presses", [0, 1])
async def test_it_is_not_shown_when_a_piece_is_gone_on_with(tmp_path, presses):
    session = begin(tmp_path)
    for _ in range(presses):
        session.next()
    session.close()
    again = Session.open(session.path)
    app = HooksideApp(again, tmp_path, Settings(), DARK)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        assert isinstance(app.screen, WorkScreen)
    again.close()


async def test_it_is_shown_for_a_piece_begun_from_the_shelf(tmp_path):
    app = ShelfApp(None, tmp_path, Settings(), DARK)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        await pilot.press("n")
        await pilot.pause()
        titles = [load_pattern(path).title for path in library.demo_patterns().values()]
        app.screen.query_one(OptionList).highlighted = titles.index("Dusk moth")
        await pilot.press("enter")
        await pilot.pause()
        assert caution("small-parts").sentence.split(",")[0] in flat(text(app))
        await pilot.press("space")
        assert isinstance(app.screen, WorkScreen)
        app.session.close()


async def test_it_is_shown_again_at_any_time_and_the_place_stays(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    async with on_stage(session, (100, 30)) as (app, pilot):
        await pilot.press("space", "space", "space", "i")
        assert caution("toys-eu-uk").sentence.split(",")[0] in flat(text(app))
        await pilot.press("space")
        assert isinstance(app.screen, WorkScreen)
        assert session.glance().place.step == 3


async def test_a_pattern_that_says_nothing_has_no_cautions_to_show(tmp_path):
    session = begin_text(tmp_path, PLAIN)
    async with on_stage(session) as (app, pilot):
        await pilot.press("i")
        assert "The pattern says nothing of itself." in text(app)
        assert DEFER not in flat(text(app))


async def test_words_of_a_file_are_plain_and_longer_ones_than_a_page_are_all_shown(tmp_path):
    session = begin_text(tmp_path, f'about = "[red]x\\u001b[2J {LONG} end"\n{PLAIN}')
    async with on_stage(session, (40, 12)) as (app, pilot):
        await pilot.press("i")
        seen = await paged(app, pilot)
        assert "[red]x␛[2J word0" in seen
        assert all(f"word{number}" in seen.split() for number in range(200))
        assert "end" in seen.split()


@pytest.mark.parametrize("size", SIZES)
async def test_the_note_stands_there_through_the_first_round_of_a_part_only(tmp_path, size):
    session = begin(tmp_path, "dusk-moth", "")
    async with on_stage(session, size) as (app, pilot):
        session.go_to_part(1, 0)
        await pilot.press("m")
        assert "A flat disc with a point; it" in text(app)
        await pilot.press("space")
        assert "A flat disc with a point; it" in text(app)
        await pilot.press("down")
        assert "A flat disc" not in text(app)
        session.go_to_part(1, 1)
        await pilot.press("m")
        assert "A flat disc with a point; it" in text(app)


async def test_a_note_that_is_cut_names_the_key_to_all_of_it(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    async with on_stage(session, (40, 12)) as (app, pilot):
        assert "From the top of the head down…  i more" in text(app)
        await pilot.press("i")
        assert "the rest before Rnd 25." in await paged(app, pilot)


async def test_what_is_asked_comes_before_the_note(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    async with on_stage(session) as (app, pilot):
        await pilot.press("p", "p", "space")
        assert "space: it is 6, or type your count" in text(app)
        assert text(app).index("or type your count") < text(app).index("From the top")


def test_the_real_command_shows_it_once(own_home):
    with Terminal(100, 30) as terminal:
        terminal.until(BEFORE)
        terminal.send(b"\x1b[6~")
        terminal.until("must end on")
        terminal.send(b"q")
        assert terminal.left() == 0
    with Terminal(100, 30) as terminal:
        terminal.until("must end on")
        assert BEFORE.encode() not in terminal.raw
