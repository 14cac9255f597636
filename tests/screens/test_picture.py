"""The round as a picture: what stands in it, and that it costs by what is in sight."""

import pytest

from tests.screens.stage import DISC, begin, begin_text, inked, on_stage, shown, text
from tracker.fabric.steps import Kind, Pass, Run, Walk
from tracker.screens.inks import DARK, inks_of
from tracker.screens.picture_shapes import LETTERS, LINES, marks_for
from tracker.screens.picture_strip import Size, Strip

ALL_KINDS = f"""{DISC}
rounds = '''
Rnd 1: With A, 6 sc in ring. (6)
Rnd 2: inc in each st around. (12)
Rnd 3: [sc, 3 sc in next st] x 6. (24)
Rnd 4: [sc in next 2 sts, sc2tog] x 6. (18)
Rnd 5: sc in next 5 sts, change to B, ch 4, sc3tog, bobble in next st, fpdc around next st.
Rnd 6: frobnicate the next 2 sts. (9)
'''
"""


def picture(app):
    """The rows of the picture: the edge of the round below, and those above it."""
    lines = shown(app)
    ground = next(
        number for number, line in enumerate(lines) if line.strip() and set(line) <= set(" ─━┴┻╰╯")
    )
    return lines[ground - 1], lines[ground]


async def at_round(folder, number, made=0):
    session = begin_text(folder, ALL_KINDS)
    session.go_to_round(number)
    if made:
        session.go_to_stitch(made)
    return session


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (60, 20)])
async def test_increases_open_upward_from_one_foot(tmp_path, size):
    session = await at_round(tmp_path, 3)
    async with on_stage(session, size) as (app, _):
        stitches, ground = picture(app)
        assert "╲ │ ╱" in stitches
        at = stitches.index("╲ │ ╱")
        assert ground[at : at + 5] == "──┴──"


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (60, 20)])
async def test_decreases_stand_on_two_feet(tmp_path, size):
    session = await at_round(tmp_path, 4)
    async with on_stage(session, size) as (app, _):
        stitches, ground = picture(app)
        at = stitches.index("╱╲")
        assert ground[at : at + 2] == "┴┴"


async def test_increases_and_decreases_have_colours_of_their_own(tmp_path):
    session = await at_round(tmp_path, 3)
    async with on_stage(session, (100, 30)) as (app, pilot):
        assert "╲ │ ╱" in inked(app, inks_of(DARK).grow)
        assert "╱╲" not in inked(app, inks_of(DARK).close)
        await pilot.press("down")
        assert "╱╲" in inked(app, inks_of(DARK).close)


async def test_chains_colours_and_other_stitches_have_marks_of_their_own(tmp_path):
    session = await at_round(tmp_path, 5)
    async with on_stage(session, (100, 30)) as (app, _):
        stitches, ground = picture(app)
        for mark in ("»B", "╭4╮", "╱3╲", "◇", "├"):
            assert mark in stitches
        at = stitches.index("╭4╮")
        assert ground[at : at + 3] == "───"


async def test_worked_and_to_come_differ_by_form(tmp_path):
    session = await at_round(tmp_path, 5, made=3)
    async with on_stage(session, (100, 30)) as (app, _):
        stitches, ground = picture(app)
        assert stitches.split()[:4] == ["┃", "┃", "┃", "│"]
        assert ground.strip().startswith("┻━┻━┻━┴─")


async def test_repeats_stand_apart_and_are_numbered(tmp_path):
    session = await at_round(tmp_path, 4)
    async with on_stage(session, (100, 30)) as (app, _):
        lines = shown(app)
        row = lines.index(picture(app)[0])
        assert lines[row - 1].split() == ["▼", "2", "3", "4", "5", "6"]
        assert lines[row].count("╱╲    │") == 5


async def test_in_a_long_round_the_current_stitch_keeps_its_spot(tmp_path):
    session = begin(tmp_path)
    session.go_to_round(8)
    async with on_stage(session, (100, 30)) as (app, pilot):
        spots = set()
        for _ in range(20):
            await pilot.press("space")
            spots.add(next(line.index("▼") for line in shown(app) if "▼" in line))
        assert len(spots) == 1


async def test_a_round_that_fits_stays_and_the_pointer_moves(tmp_path):
    session = await at_round(tmp_path, 4)
    async with on_stage(session, (100, 30)) as (app, pilot):
        before = picture(app)[0].translate(str.maketrans("┃", "│"))
        first = next(line.index("▼") for line in shown(app) if "▼" in line)
        await pilot.press("space")
        assert picture(app)[0].translate(str.maketrans("┃", "│")) == before
        assert next(line.index("▼") for line in shown(app) if "▼" in line) == first + 2


async def test_the_picture_is_left_out_on_the_smallest_screen(tmp_path):
    session = await at_round(tmp_path, 4)
    async with on_stage(session, (40, 12)) as (app, _):
        assert "╱╲" not in text(app)


async def test_the_tall_picture_names_the_stitches(tmp_path):
    session = await at_round(tmp_path, 4)
    async with on_stage(session, (200, 60)) as (app, _):
        lines = shown(app)
        ground = next(n for n, line in enumerate(lines) if "┴" in line)
        assert lines[ground + 1].split()[:4] == ["sc", "sc2tog", "sc", "sc2tog"]
        assert lines[ground - 3].count("╱╲") == 6


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 60)])
async def test_a_round_that_is_not_understood_has_words_for_a_picture(tmp_path, size):
    session = await at_round(tmp_path, 6)
    async with on_stage(session, size) as (app, _):
        assert "no picture" in text(app)


@pytest.mark.parametrize("term", ["linux", "vt100"])
async def test_letters_stand_for_shapes_where_the_font_has_none(tmp_path, monkeypatch, term):
    monkeypatch.setenv("TERM", term)
    session = await at_round(tmp_path, 3)
    async with on_stage(session, (100, 30)) as (app, _):
        assert "\\ : /" in text(app)


def test_which_characters_are_taken():
    assert marks_for({"TERM": "xterm-256color"}) is LINES
    assert marks_for({"TERM": "linux"}) is LETTERS
    assert marks_for({}) is LINES


class Watched(tuple):
    """Runs that count how often one of them is looked at."""

    __slots__ = ()
    looks = 0

    def __getitem__(self, at):
        Watched.looks += 1
        return super().__getitem__(at)


@pytest.mark.parametrize("pitch", [1, 2, 4])
@pytest.mark.parametrize("step", [0, 50_000, 99_999, 100_000])
def test_a_press_looks_only_at_what_is_in_sight(pitch, step):
    runs = Watched(
        Run(Kind.STITCH, "sc", "single crochet", "sc", "in the next st", 0, 2,
            takes=1, makes=1, inside=at // 2)
        for at in range(100_000)
    )  # fmt: skip
    walk = Walk(runs, tuple(Pass(0, at + 1, -1) for at in range(50_000)), (50_000,), ((0, 2),))
    Watched.looks = 0
    stood = Strip(walk, step, Size(120, pitch, pitch), "US", LINES).stood()
    assert 0 < len(stood) <= 120
    assert Watched.looks < 120 * 40
    assert [one.here for one in stood].count(True) == (step < 100_000)


async def test_without_repeats_every_tenth_stitch_has_its_number(tmp_path):
    session = begin(tmp_path, "dusk-moth", "")
    session.go_to_round(6)
    session.go_to_stitch(3)
    async with on_stage(session, (100, 30)) as (app, _):
        numbers = next(line for line in shown(app) if "▼" in line)
        assert numbers.split() == ["▼", "10", "20", "30"]
        bars = shown(app)[shown(app).index(numbers) + 1]
        assert len(bars[: numbers.index("20") + 1].split()) == 20


@pytest.mark.parametrize("columns", [99, 100, 101])
async def test_no_number_is_cut_at_the_edge(tmp_path, columns):
    session = begin(tmp_path)
    session.go_to_round(9)
    tens = {str(number) for number in range(10, 70, 10)}
    async with on_stage(session, (columns, 30)) as (app, _):
        for made in range(32):
            session.go_to_stitch(made)
            app.screen.show()
            numbers = next(line for line in shown(app) if "▼" in line)
            assert set(numbers.split()) <= {"▼", *tens}
