"""The colours: two themes of our own and one without any, and the inks drawn with them.

Contrast (WCAG 2.2, relative luminance) is at least 12:1 for the place, 7:1 for every other
text, 3:1 for marks. No meaning hangs on colour alone:
each ink also differs by weight, underline or reverse, and those are all that is left where
colour is not wanted.
"""

from __future__ import annotations

from collections.abc import Mapping

from textual.color import Color
from textual.style import Style
from textual.theme import Theme

from tracker.lean import NamedTuple


class Palette(NamedTuple):
    """Colours of a theme, as ``#rrggbb``.

    ``page`` is behind everything, ``panel`` behind the chosen line of a list; ``mark`` is
    for the count to end on and the bars of repeats, ``grow`` and ``close`` for increases and
    decreases in the picture.
    """

    name: str
    dark: bool
    page: str
    panel: str
    text: str
    place: str
    quiet: str
    done: str
    warn: str
    mark: str
    grow: str
    close: str


DARK = Palette(
    name="hookside-dark",
    dark=True,
    page="#14181c",
    panel="#27303a",
    text="#e4e2dc",
    place="#ffe7b0",
    quiet="#a9b3bb",
    done="#9aa5af",
    warn="#ffb59c",
    mark="#d9a441",
    grow="#8fd6a2",
    close="#c9b2ff",
)

LIGHT = Palette(
    name="hookside-light",
    dark=False,
    page="#fbf8f1",
    panel="#e6e0d2",
    text="#22272b",
    place="#10233f",
    quiet="#475057",
    done="#4d565d",
    warn="#8a2308",
    mark="#6b4500",
    grow="#0f5132",
    close="#5a2a8c",
)

PALETTES: Mapping[str, Palette] = {"dark": DARK, "light": LIGHT}

PLAIN = "hookside-plain"
"""The theme that leaves all colours to the terminal."""


class Inks(NamedTuple):
    """What each kind of words is drawn with.

    ``place``: the step and the count. ``strong``: what is looked for next. ``now``: the
    current words of the instruction; ``done`` those before them. ``mark``: the count to
    end on, passes done. ``grow`` and ``close``: increases and decreases in the picture.
    """

    text: Style
    place: Style
    strong: Style
    quiet: Style
    done: Style
    now: Style
    warn: Style
    mark: Style
    grow: Style
    close: Style


def inks_of(palette: Palette) -> Inks:
    """The inks of a theme."""
    page = Color.parse(palette.page)
    place = Color.parse(palette.place)
    return Inks(
        text=Style(foreground=Color.parse(palette.text)),
        place=Style(foreground=place, bold=True),
        strong=Style(foreground=Color.parse(palette.text), bold=True),
        quiet=Style(foreground=Color.parse(palette.quiet)),
        done=Style(foreground=Color.parse(palette.done)),
        now=Style(foreground=page, background=place, bold=True),
        warn=Style(foreground=Color.parse(palette.warn), bold=True, underline=True),
        mark=Style(foreground=Color.parse(palette.mark)),
        grow=Style(foreground=Color.parse(palette.grow), bold=True),
        close=Style(foreground=Color.parse(palette.close), bold=True),
    )


PLAIN_INKS = Inks(
    text=Style(),
    place=Style(bold=True),
    strong=Style(bold=True),
    quiet=Style(),
    done=Style(dim=True),
    now=Style(bold=True, reverse=True),
    warn=Style(bold=True, underline=True),
    mark=Style(bold=True),
    grow=Style(bold=True),
    close=Style(bold=True),
)


def theme_of(palette: Palette) -> Theme:
    """The same colours for what Textual draws by itself: lists and the palette."""
    return Theme(
        name=palette.name,
        dark=palette.dark,
        primary=palette.place,
        secondary=palette.mark,
        accent=palette.mark,
        warning=palette.warn,
        error=palette.warn,
        success=palette.mark,
        foreground=palette.text,
        background=palette.page,
        surface=palette.page,
        panel=palette.panel,
        variables=_list_colours(palette),
    )


def _list_colours(palette: Palette) -> dict[str, str]:
    return {
        "text": palette.text,
        "text-muted": palette.quiet,
        "foreground-muted": palette.quiet,
        "block-cursor-background": palette.place,
        "block-cursor-foreground": palette.page,
        "block-cursor-text-style": "bold",
        "block-cursor-blurred-background": palette.panel,
        "block-cursor-blurred-foreground": palette.text,
        "border": palette.quiet,
        "border-blurred": palette.quiet,
        "scrollbar": palette.quiet,
        "scrollbar-hover": palette.text,
        "scrollbar-active": palette.place,
        "scrollbar-background": palette.panel,
        "scrollbar-background-hover": palette.panel,
        "scrollbar-background-active": palette.panel,
    }


def plain_theme() -> Theme:
    """A theme of the terminal's own colours, for where none are wanted."""
    own = "ansi_default"
    return Theme(
        name=PLAIN,
        ansi=True,
        primary=own,
        secondary=own,
        accent=own,
        warning=own,
        error=own,
        success=own,
        foreground=own,
        background=own,
        surface=own,
        panel=own,
        boost=own,
        variables={
            "ansi-background": own,
            "ansi-foreground": own,
            "block-cursor-text-style": "bold underline",
            "input-cursor-text-style": "reverse",
        },
    )
