"""Words on pages, for what does not fit on the work screen: the help, news of the file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import Static

from tracker.screens.actions import bindings
from tracker.screens.flow import Line, content, paragraph, spread
from tracker.screens.inks import Inks

if TYPE_CHECKING:
    from textual import events
    from textual.app import ComposeResult


class Pages(Screen[None]):
    """Paragraphs laid out on as many pages as the screen needs; next goes on, then closes.

    What stands before a tab in a paragraph is set in front of the rest. ``hint`` is for those
    who may not know how to go on.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(("next", "back", "next-round", "previous-round", "help", "quit")),
        Binding("escape", "act('quit')", "Close", show=False),
    ]
    DEFAULT_CSS = """
    Pages { padding: 0 2; }
    Pages Static { height: 1fr; text-wrap: nowrap; }
    """

    def __init__(self, heading: str, paragraphs: Sequence[str], inks: Inks, hint: str = "") -> None:
        super().__init__()
        self._heading = heading
        self._paragraphs = tuple(paragraphs)
        self._inks = inks
        self._hint = hint
        self._page = 0

    def compose(self) -> ComposeResult:
        """The page."""
        yield Static()

    def on_resize(self, _event: events.Resize) -> None:
        """Lay the pages out anew."""
        self._show()

    def action_act(self, name: str) -> None:
        """Turn the page or close."""
        step = {"next": 1, "next-round": 1, "back": -1, "previous-round": -1}.get(name, 0)
        if step == 0 or self._page + step >= len(self._pages()):
            self.dismiss()
            return
        self._page = max(0, self._page + step)
        self._show()

    def _show(self) -> None:
        pages = self._pages()
        self._page = min(self._page, len(pages) - 1)
        of = f"  {self._page + 1} of {len(pages)}" if len(pages) > 1 else ""
        quiet = self._inks.quiet
        named: Line = [(self._heading, self._inks.place), (of, quiet)]
        head = spread(named, [(self._hint, quiet)], self.app.size.width - 4)
        self.query_one(Static).update(content([head, [], *pages[self._page]]))

    def _pages(self) -> list[list[Line]]:
        """The paragraphs, never broken over a page where they fit on one."""
        width, height = self.app.size.width - 4, max(1, self.app.size.height - 2)
        pages: list[list[Line]] = [[]]
        for words in self._paragraphs:
            rows = self._rows(words, width)
            if pages[-1] and len(pages[-1]) + len(rows) - (not rows[-1]) > height:
                pages.append([])
            for row in rows:
                if row and len(pages[-1]) >= height:
                    pages.append([])
                pages[-1].append(row)
        return pages

    def _rows(self, words: str, width: int) -> list[Line]:
        key, tab, rest = words.partition("\t")
        if not tab:
            return [*([(row, self._inks.text)] for row in paragraph(words, width)), []]
        key = f"{key}  " if width < 60 else key.ljust(22)
        rows = paragraph(rest, width - 24 if width >= 60 else width - 2)
        if width < 60:
            return [[(key, self._inks.strong)], *([(f"  {r}", self._inks.text)] for r in rows)]
        first: Line = [(key, self._inks.strong), (rows[0], self._inks.text)]
        return [first, *([(" " * 22 + row, self._inks.text)] for row in rows[1:])]
