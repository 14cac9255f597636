"""Which theme: what the maker set, else what the terminal says of itself."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from rich.segment import Segment
from textual.filter import LineFilter

from tracker.screens.inks import DARK, LIGHT, PALETTES, Palette

if TYPE_CHECKING:
    from textual.color import Color


def palette_for(setting: str, environ: Mapping[str, str]) -> Palette | None:
    """The palette; None where no colour is wanted (https://no-color.org)."""
    if environ.get("NO_COLOR"):
        return None
    wanted = PALETTES.get(environ.get("HOOKSIDE_THEME", "")) or PALETTES.get(setting)
    return wanted or (LIGHT if _light(environ.get("COLORFGBG", "")) else DARK)


def _light(colours: str) -> bool:
    """COLORFGBG is "text;page" in the 16 colours; 7 and from 9 on are light pages."""
    page = colours.rpartition(";")[2]
    return page.isascii() and page.isdecimal() and int(page) in (7, *range(9, 16))


class Colourless(LineFilter):
    """Lets weight, underline and reverse through, and no colour code at all."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:  # noqa: ARG002
        """The same segments without colours."""
        return [
            Segment(text, style.without_color if style else None, control)
            for text, style, control in segments
        ]
