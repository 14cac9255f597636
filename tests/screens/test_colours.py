"""Contrast of the themes, which theme is taken, and drawing without any colour."""

from datetime import timedelta

import pytest
from textual.color import Color

from tests.screens.stage import begin, on_stage, text
from tracker.screens.card import CardScreen
from tracker.screens.inks import DARK, LIGHT, PLAIN_INKS, inks_of
from tracker.screens.settings import Settings
from tracker.screens.shelf_app import ShelfApp
from tracker.screens.theme import palette_for
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings, now


def luminance(colour):
    """Relative luminance: https://www.w3.org/TR/WCAG22/#dfn-relative-luminance."""
    parts = (part / 255 for part in (colour.r, colour.g, colour.b))
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio: https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_measure_agrees_with_its_ends():
    assert contrast(Color(0, 0, 0), Color(255, 255, 255)) == pytest.approx(21)


LEAST = {
    "text": 7,
    "place": 12,
    "strong": 7,
    "quiet": 7,
    "done": 7,
    "warn": 7,
    "mark": 7,
    "grow": 7,
    "close": 7,
    "now": 12,
}


@pytest.mark.parametrize("palette", [DARK, LIGHT], ids=lambda palette: palette.name)
@pytest.mark.parametrize("name", LEAST)
def test_every_ink_stands_out_from_what_is_behind_it(palette, name):
    ink = getattr(inks_of(palette), name)
    behind = ink.background or Color.parse(palette.page)
    assert contrast(ink.foreground, behind) >= LEAST[name]


def painted(app):
    """What is to be seen on the screen: words or marks, their colour and what is behind."""
    for strip in app.screen._compositor.render_strips(app.size):
        for segment in strip:
            if segment.text.strip():
                style = segment.style
                ink, behind = Color(*style.color.triplet), Color(*style.bgcolor.triplet)
                yield segment.text, *((behind, ink) if style.reverse else (ink, behind))


def faint(app):
    """What cannot be seen well: words under 7:1, marks under 3:1."""
    return [
        (words, round(contrast(ink, behind), 2))
        for words, ink, behind in painted(app)
        if contrast(ink, behind) < (7 if any(map(str.isalnum, words)) else 3)
    ]


SCREENS = {
    "work": ("space",),
    "loops": ("g", "9", "enter", "o", "space", "space"),
    "how to": ("h",),
    "entry": ("g", "5"),
    "guard": ("x",),
    "before": ("i",),
    "parts": ("t", "down"),
    "a trim not chosen": ("t", "down", "down", "enter"),
    "learn": ("l",),
    "learned": ("l", "f18"),
    "help": ("question_mark",),
    "note": ("n", "a"),
    "find": ("slash", "u", "n"),
    "wrong": ("p", "p", "space", "5", "4", "enter", "w"),
    "making up": ("t", "end", "enter", "space"),
}


@pytest.mark.parametrize("palette", [DARK, LIGHT], ids=lambda palette: palette.name)
@pytest.mark.parametrize("keys", SCREENS.values(), ids=SCREENS)
async def test_nothing_that_is_painted_is_faint(tmp_path, palette, keys):
    session = begin(tmp_path)
    session.go_to_round(7)
    async with on_stage(session, (100, 30), palette=palette) as (app, pilot):
        await pilot.press(*keys)
        await pilot.pause()
        assert faint(app) == []


@pytest.mark.parametrize("palette", [DARK, LIGHT], ids=lambda palette: palette.name)
async def test_neither_the_card_nor_the_shelf_is_faint(own_home, palette):
    folder = own_home / "pieces"
    begin(folder).close()
    around = Surroundings(clock=lambda: now() + timedelta(days=4))
    session = Session.open(next(folder.glob("*.toml")), around=around)
    async with on_stage(session, palette=palette) as (app, _):
        assert isinstance(app.screen, CardScreen)
        assert faint(app) == []
    app = ShelfApp(None, folder, Settings(), palette)
    async with app.run_test() as pilot:
        await pilot.pause()
        assert "hedgerow-tea-cosy" in text(app)
        assert faint(app) == []


def test_without_colour_the_inks_that_matter_differ_by_weight_or_reverse():
    lit = {PLAIN_INKS.text, PLAIN_INKS.done, PLAIN_INKS.now, PLAIN_INKS.warn, PLAIN_INKS.place}
    assert len(lit) == 5
    assert all(ink.foreground is None and ink.background is None for ink in lit)


@pytest.mark.parametrize(
    ("setting", "environ", "palette"),
    [
        ("", {}, DARK),
        ("light", {}, LIGHT),
        ("", {"COLORFGBG": "0;15"}, LIGHT),
        ("", {"COLORFGBG": "15;default;0"}, DARK),
        ("", {"COLORFGBG": "nonsense"}, DARK),
        ("dark", {"COLORFGBG": "0;15"}, DARK),
        ("dark", {"HOOKSIDE_THEME": "light"}, LIGHT),
        ("dark", {"HOOKSIDE_THEME": "mauve"}, DARK),
        ("light", {"NO_COLOR": "1"}, None),
        ("light", {"NO_COLOR": ""}, LIGHT),
    ],
)
def test_which_theme_is_taken(setting, environ, palette):
    assert palette_for(setting, environ) is palette


async def test_without_colour_the_lit_line_of_a_list_is_underlined(tmp_path):
    session = begin(tmp_path)
    async with on_stage(session, palette=None) as (app, pilot):
        await pilot.press("t", "down")
        lit = [
            strip.text.strip()
            for strip in app.screen._compositor.render_strips(app.size)
            if any(segment.style.underline for segment in strip if segment.text.strip())
        ]
        assert len(lit) == 1
        assert lit[0].startswith("Scalloped trim")
