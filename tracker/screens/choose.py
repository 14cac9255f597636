"""Choosing what to work on: a piece to go on with, or a pattern and a size to begin."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from rich.cells import cell_len

from tracker.pattern import library
from tracker.pattern.load import load_pattern
from tracker.pattern.model import Pattern
from tracker.screens.flow import Line
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST, Pick, heading
from tracker.session.moving import taken_up
from tracker.session.session import Session
from tracker.session.shelf import OnShelf, pieces
from tracker.session.store import StoreError

if TYPE_CHECKING:
    from textual.app import App


@dataclass(frozen=True, slots=True)
class Choice:
    """One line to choose: what it says, and what it opens (asking for a size if need be).

    ``file`` is where the pattern stands.
    """

    line: Line
    pattern: Pattern | None = None
    file: Path | None = None
    piece: OnShelf | None = None


def choices(folder: Path | None) -> list[Choice]:
    """The pieces in a folder, the latest first, then the patterns that come along."""
    begun = [
        Choice([("go on   ", LIST.quiet), (piece.name, LIST.strong)], piece=piece)
        for piece in (pieces(folder) if folder else ())
    ]
    files = library.demo_patterns().values()
    patterns = [(load_pattern(path), path) for path in files]
    wide = max((cell_len(one.title) for one, _ in patterns), default=0)
    return [*begun, *(Choice(_begin(one, wide), pattern=one, file=path) for one, path in patterns)]


def _begin(pattern: Pattern, wide: int) -> Line:
    sizes = ", ".join(pattern.sizes) or "one size"
    return [
        ("begin   ", LIST.quiet),
        (pattern.title + " " * (wide - cell_len(pattern.title)), LIST.strong),
        (f"   {sizes}", LIST.quiet),
    ]


class Chooser:
    """Asks until something is open, then hands the session on.

    ``from_shelf``: offers patterns only, and goes back to the shelf when it is left.
    """

    def __init__(
        self,
        app: App[None],
        folder: Path,
        inks: Inks,
        opened: Callable[[Session], None],
        *,
        from_shelf: bool = False,
    ) -> None:
        self._app = app
        self._folder = folder
        self._inks = inks
        self._opened = opened
        self._from_shelf = from_shelf
        self._choices: Sequence[Choice] = ()

    def ask(self, told: str = "next or enter takes it") -> None:
        """Show what there is to choose; ``told`` stands under the heading."""
        self._choices = choices(None if self._from_shelf else self._folder)
        head = heading("What will you work on?", told, self._inks)
        lines = [choice.line for choice in self._choices]
        self._app.push_screen(Pick(head, lines), self._chosen)

    def _chosen(self, number: int | None) -> None:
        if number is None:
            if not self._from_shelf:
                self._app.exit()
            return
        choice = self._choices[number]
        if choice.piece is not None:
            path = choice.piece.path
            self._try(lambda: Session.open(taken_up(path, self._folder)))
        elif choice.pattern is not None:
            self._ask_size(choice.pattern, choice.file)

    def _ask_size(self, pattern: Pattern, file: Path | None) -> None:
        if len(pattern.sizes) < 2:
            self._begin(pattern, "".join(pattern.sizes), file)
            return
        head = heading(pattern.title, "which size?", self._inks)
        lines: list[Line] = [[(size, LIST.strong)] for size in pattern.sizes]

        def sized(number: int | None) -> None:
            if number is None:
                self.ask()
            else:
                self._begin(pattern, pattern.sizes[number], file)

        self._app.push_screen(Pick(head, lines), sized)

    def _begin(self, pattern: Pattern, size: str, file: Path | None) -> None:
        self._try(lambda: Session.start(pattern, size, self._folder, file=file))

    def _try(self, open_it: Callable[[], Session]) -> None:
        try:
            session = open_it()
        except StoreError as error:
            self.ask(str(error))
            return
        self._opened(session)
