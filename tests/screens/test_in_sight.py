"""What must always be in sight is, at every size, and keeps its spot."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.screens.stage import SIZES, begin, begin_text, inked, on_stage, shown, text
from tracker.screens.glyphs import block
from tracker.screens.inks import DARK, inks_of
from tracker.screens.layout import Mode, Shape, lay_out, shape_for
from tracker.session.place import Asking

DOUBTFUL = """
title = "Sampler"
terms = "US"
[[part]]
name = "Square"
worked = "rows"
rounds = '''
Foundation: ch 6.
Row 1: sc in 2nd ch from hook and in each ch across; turn. (5)
Row 2: ch 1, sc in each st across; turn. (7)
Row 3: ch 1, frobnicate the next 2 sts; turn. (5)
'''
"""


def has_blocks(lines, figure, scale=1):
    """Whether the figure stands in the lines in block figures."""
    rows = block(figure, scale)
    return any(
        all(row.rstrip() in line for row, line in zip(rows, lines[top:], strict=False))
        for top in range(len(lines) - len(rows) + 1)
    )


@pytest.mark.parametrize("size", SIZES)
async def test_the_place_is_in_sight_at_every_size(tmp_path, size):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(17)
    async with on_stage(session, size) as (app, _):
        page = text(app)
        for words in ("Rnd 7 of 19", "Body", "4 cups", "A, moss", "hook 5 mm"):
            assert words in page
        for words in ("hdc in the next st", "then hdc", "repeat 3 of 8", "step 4 of 7"):
            assert words in page
        for words in ("hdc in next 5 sts", "Rnd 8", "to 17 stitches made"):
            assert words in page


async def test_the_count_stands_in_plain_figures_where_there_is_little_room(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(17)
    async with on_stage(session, (40, 12)) as (app, _):
        assert "17 made · must end on 56" in text(app)


@pytest.mark.parametrize(("size", "scale"), [((80, 24), 1), ((100, 30), 1), ((200, 60), 2)])
async def test_the_count_and_the_step_stand_in_block_letters(tmp_path, size, scale):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(17)
    async with on_stage(session, size) as (app, _):
        lines = shown(app)
        for words in ("17", "56", "hdc"):
            assert has_blocks(lines, words, scale)


@pytest.mark.parametrize("size", SIZES)
async def test_nothing_jumps_between_presses(tmp_path, size):
    session = begin(tmp_path)
    session.go_to_round(8)
    async with on_stage(session, size) as (app, pilot):
        spots = set()
        for _ in range(6):
            await pilot.press("space")
            lines = shown(app)
            spots.add(
                tuple(
                    next(
                        (row, line.index(words)) for row, line in enumerate(lines) if words in line
                    )
                    for words in ("Rnd 8 of 19", "must end on", "Rnd 9", "last press", "space next")
                )
            )
        assert len(spots) == 1


async def test_the_current_words_are_lit_and_those_before_them_dimmed(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(7)
    session.go_to_stitch(17)
    async with on_stage(session) as (app, _):
        inks = inks_of(DARK)
        assert "hdc in next 5 sts" in inked(app, inks.now)
        assert "ch 1, *" in inked(app, inks.done)


async def test_a_long_instruction_pages_so_that_the_current_words_are_in_sight(tmp_path):
    session = begin(tmp_path, "lattice-mat", "")
    session.go_to_round(6)
    async with on_stage(session, (40, 12)) as (app, _):
        pages = set()
        for made in range(0, 68, 3):
            session.go_to_stitch(made)
            app.screen.show()
            assert inked(app, inks_of(DARK).now).strip()
            pages.add("\n".join(shown(app)[6:8]))
        assert len(pages) > 2


async def test_a_count_that_differs_and_words_not_understood_are_said_in_words(tmp_path):
    session = begin_text(tmp_path, DOUBTFUL)
    session.go_to_round(3)
    async with on_stage(session) as (app, pilot):
        assert "count differs" in text(app)
        assert "7" in session.glance().warning
        assert session.glance().warning in text(app)
        await pilot.press("down")
        assert "not fully read" in text(app)


async def test_the_first_of_a_special_stitch_is_said_to_differ(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(9)
    session.next()
    async with on_stage(session, (100, 30)) as (app, pilot):
        assert "the first one is worked differently" in text(app)
        await pilot.press("o", "space")
        assert "loop 2 of 5" in text(app)


async def test_a_wide_screen_shows_the_parts_and_the_how_to(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session, (200, 60)) as (app, _):
        page = text(app)
        assert "Scalloped trim" in page
        assert "Berry trim" in page
        assert "not chosen" in page
        assert "how to" in page


@pytest.mark.parametrize("size", SIZES)
async def test_making_up_is_a_list_of_sentences_with_ticks(tmp_path, size):
    session = begin(tmp_path)
    session.go_to_part(3, 0)
    async with on_stage(session, size) as (app, pilot):
        assert "▸ Draw the ring" in text(app)
        await pilot.press("space")
        assert "✓ Draw the ring" in text(app)
        assert "▸ Steam the body" in text(app)


@pytest.mark.parametrize(
    ("size", "shape"),
    [
        ((40, 12), Shape.SMALL),
        ((200, 12), Shape.SMALL),
        ((71, 60), Shape.SMALL),
        ((80, 24), Shape.BIG),
        ((100, 30), Shape.ROOMY),
        ((200, 60), Shape.HUGE),
    ],
)
def test_the_layout_follows_the_size(size, shape):
    assert shape_for(*size) is shape


@pytest.mark.parametrize("mode", Mode)
@given(width=st.integers(1, 250), height=st.integers(1, 90))
def test_no_two_things_share_a_spot_and_none_leaves_the_screen(mode, width, height):
    taken = set()
    for box in lay_out(width, height, mode).values():
        assert box.x >= 0
        assert box.x + box.width <= width
        assert box.y + box.height <= height
        cells = {
            (x, y)
            for x in range(box.x, box.x + box.width)
            for y in range(box.y, box.y + box.height)
        }
        assert not cells & taken
        taken |= cells


@pytest.mark.parametrize("size", [(1, 1), (10, 3), (40, 12), (300, 100), (72, 24)])
async def test_any_size_of_terminal_is_borne(tmp_path, size):
    session = begin(tmp_path)
    async with on_stage(session, (80, 24)) as (app, pilot):
        await pilot.resize_terminal(*size)
        await pilot.press("space", "space")
        assert session.glance().place.step == 2
        assert app.is_running


@pytest.mark.parametrize(
    ("number", "made", "words"), [(1, 0, "yarn A"), (15, 15, "yarn B"), (26, 6, "fasten")]
)
async def test_what_the_hands_do_between_stitches_stands_in_block_letters_too(
    tmp_path, number, made, words
):
    session = begin(tmp_path, "dusk-moth", "")
    session.go_to_round(number)
    session.go_to_stitch(made)
    async with on_stage(session) as (app, _):
        assert has_blocks(shown(app), words)


@pytest.mark.parametrize("size", SIZES)
async def test_what_has_no_room_to_be_told_is_cut_with_the_key_to_all_of_it(tmp_path, size):
    session = begin(tmp_path)
    session.go_to_round(7)
    long = " ".join(f"word{number}" for number in range(27))
    session.note(long)
    async with on_stage(session, size) as (app, pilot):
        told = " ".join(text(app).split())
        assert "note: word0 word1" in told
        assert ("…  i more" in text(app)) is (long not in told)
        await pilot.press("i")
        assert f"Here: note: {long}" in " ".join(text(app).split())


ROUNDS = {
    "tea-cosy": ("4 cups", 6),
    "dusk-moth": ("", 14),
    "lattice-mat": ("", 3),
    "headband": ("adult", 3),
}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ROUNDS)
async def test_over_many_presses_each_thing_keeps_its_row(tmp_path, name, size):
    of, number = ROUNDS[name]
    session = begin(tmp_path, name, of)
    session.set_asking(Asking.INCREASES)
    session.go_to_round(number)
    rows = {}
    async with on_stage(session, size) as (app, _):
        for _ in range(100):
            session.next()
            app.screen.show()
            lines, seen = shown(app), session.glance()
            step = " ".join(word for word in (seen.step_text, seen.step_where) if word)
            marks = {
                "head": seen.round_label,
                "count": "made",
                "step": step[:20],
                "pace": "a stitch" if size[0] > 40 else "by stitch",
                "keys": "? help",
            }
            for mark, words in marks.items():
                if not seen.at_end:
                    at = next(n for n, line in enumerate(lines) if words in line)
                    rows.setdefault(mark, set()).add(at)
    assert {mark for mark, at in rows.items() if len(at) > 1} == set()
    assert len(rows) == 5
