"""The shelf: every piece, how far it is, and what can be done with it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import Input, OptionList, Static

from tracker.screens.actions import bindings
from tracker.screens.flow import Line, Piece, content, cut_line, length, paragraph, spread
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST
from tracker.session import moving
from tracker.session.about import STANDING, About, about, spoken_time
from tracker.session.access import StoreError
from tracker.session.session import Session
from tracker.session.shelf import Standing, pieces

if TYPE_CHECKING:
    from textual.app import ComposeResult

KEYS = (
    ("enter", "open"),
    ("n", "new"),
    ("e", "rename"),
    ("s", "aside"),
    ("f", "finish"),
    ("d", "bin"),
    ("q", "leave"),
)

BAR = 10
"""Squares of the bar that shows the share done."""

ORDER = tuple(Standing)


class ShelfScreen(Screen[None]):
    """Lists the pieces; hands the one that is opened on to ``opened``."""

    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(("next", "quit")),
        Binding("n", "new", "New", show=False),
        Binding("e", "rename", "Rename", show=False),
        Binding("s", "stand('set-aside')", "Set aside", show=False),
        Binding("f", "stand('finished')", "Finish", show=False),
        Binding("d", "throw_away", "To the bin", show=False),
        Binding("escape", "drop", "Drop", show=False),
    ]
    DEFAULT_CSS = """
    ShelfScreen { padding: 0 2; }
    ShelfScreen Static { height: auto; }
    ShelfScreen OptionList { height: 1fr; padding: 0; background: $background; }
    ShelfScreen OptionList { scrollbar-size-vertical: 1; }
    ShelfScreen OptionList, ShelfScreen OptionList:focus {
        border: none; background-tint: $background 0%;
    }
    ShelfScreen Input { border: none; padding: 0; height: 1; display: none; }
    ShelfScreen Input:focus { border: none; background-tint: $background 0%; }
    """

    def __init__(
        self,
        folder: Path,
        inks: Inks,
        clock: Callable[[], datetime],
        opened: Callable[[Session], None],
    ) -> None:
        super().__init__()
        self._folder = folder
        self._inks = inks
        self._clock = clock
        self._opened = opened
        self._told = ""
        self._abouts: Sequence[About] = ()
        self._sure: Path | None = None

    def compose(self) -> ComposeResult:
        """Heading, list, a line for a new name, what was done, the keys."""
        yield Static(id="head")
        yield OptionList(markup=False)
        yield Input()
        yield Static(id="foot")

    def on_mount(self) -> None:
        """Look at every piece once."""
        self._look()

    def on_resize(self) -> None:
        """Lay the lines out anew."""
        self._show()

    def on_option_list_option_selected(self, _event: OptionList.OptionSelected) -> None:
        """Open the piece."""
        self.action_act("next")

    def on_option_list_option_highlighted(self, _event: OptionList.OptionHighlighted) -> None:
        """Another piece: nothing is asked of the one before any more."""
        here = self._here
        if self._sure is not None and (here is None or here.piece.path != self._sure):
            self.action_drop()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """The new name."""
        here, name = self._here, event.value
        self.action_drop()
        if here is not None and name.strip():
            self._do(lambda: moving.rename(here.piece, name), "Its name is {name} now.")

    def action_act(self, name: str) -> None:
        """Open the piece, or leave."""
        here = self._here
        if name == "quit":
            self.app.exit()
        elif here is None:
            self.action_new()
        else:
            self._open(here.piece.path)

    def action_new(self) -> None:
        """Choose a pattern to begin."""
        from tracker.screens.choose import Chooser

        Chooser(self.app, self._folder, self._inks, self._opened, from_shelf=True).ask()

    def action_rename(self) -> None:
        """Type a new name."""
        here = self._here
        if here is not None:
            line = self.query_one(Input)
            line.value, line.display = here.piece.name, True
            line.focus()
            self._tell("Type its name, then enter; esc drops it.")

    def action_stand(self, value: str) -> None:
        """Set aside or finish; a piece that is so already is taken to those in work."""
        here, standing = self._here, Standing(value)
        if here is None:
            return
        back = here.piece.standing is standing
        to = Standing.IN_WORK if back else standing
        words = "{name} is in work again." if back else "{name} is " + STANDING[standing] + "."
        self._do(lambda: moving.stand(here.piece, to, self._folder), words)

    def action_throw_away(self) -> None:
        """Into the bin, when it is asked for twice."""
        here = self._here
        if here is None:
            return
        if self._sure != here.piece.path:
            self._sure = here.piece.path
            self._tell(f"Press d again to put {here.piece.name} into the bin; esc keeps it.")
            return
        words = "{name} is in the bin; it can be moved back from {folder}."
        self._do(lambda: moving.throw_away(here.piece, self._folder), words)

    def action_drop(self) -> None:
        """Drop what is asked."""
        self._sure = None
        self.query_one(Input).display = False
        self.query_one(OptionList).focus()
        self._tell("")

    @property
    def _here(self) -> About | None:
        at = self.query_one(OptionList).highlighted
        return None if at is None or at >= len(self._abouts) else self._abouts[at]

    def _open(self, path: Path) -> None:
        try:
            session = Session.open(moving.taken_up(path, self._folder))
        except StoreError as error:
            self._look()
            self._tell(str(error))
            return
        self._opened(session)

    def _do(self, deed: Callable[[], Path], words: str) -> None:
        """Move a piece, and say so."""
        try:
            path = deed()
        except StoreError as error:
            self._tell(str(error))
            return
        self._sure = None
        self._look(path)
        name = path.name.removesuffix(".piece.toml")
        self._tell(words.format(name=name, folder=path.parent))

    def _look(self, at: Path | None = None) -> None:
        """Read the pieces anew, and stand at one of them."""
        now = self._clock()
        found = sorted(pieces(self._folder), key=lambda piece: ORDER.index(piece.standing))
        every = [about(piece, now) for piece in found]
        self._abouts = sorted(every, key=lambda one: bool(one.trouble))
        paths = [one.piece.path for one in self._abouts]
        before = self.query_one(OptionList).highlighted or 0
        self._show(paths.index(at) if at in paths else min(before, max(0, len(paths) - 1)))

    def _show(self, at: int | None = None) -> None:
        width = self.app.size.width - 6
        options = self.query_one(OptionList)
        stand = options.highlighted if at is None else at
        options.clear_options()
        options.add_options(content(piece_lines(one, width)) for one in self._abouts)
        options.highlighted = stand if self._abouts else None
        count = len(self._abouts)
        many = "nothing on it yet: n begins a piece" if not count else f"{count} on it"
        head: Line = [("The shelf", self._inks.place), (f"  {many}", self._inks.quiet)]
        self.query_one("#head", Static).update(content([head, []]))
        self._tell(self._told)

    def _tell(self, words: str) -> None:
        """What was done or is asked, above the keys."""
        self._told = words
        width = self.app.size.width - 4
        told: list[Line] = [[(row, self._inks.strong)] for row in paragraph(words, width)]
        self.query_one("#foot", Static).update(content([*told, *key_lines(width, self._inks)]))


def key_lines(width: int, inks: Inks) -> list[Line]:
    """The keys of the shelf: in one row, or in two where room is short."""
    for gap in ("   ", "  "):
        line = _keys(KEYS, gap, inks)
        if length(line) - len(gap) <= width:
            return [line]
    half = len(KEYS) // 2
    return [cut_line(_keys(keys, "  ", inks), width) for keys in (KEYS[:half], KEYS[half:])]


def _keys(keys: Sequence[tuple[str, str]], gap: str, inks: Inks) -> list[Piece]:
    return [
        piece for key, word in keys for piece in ((key, inks.strong), (f" {word}{gap}", inks.quiet))
    ]


def piece_lines(one: About, width: int) -> list[Line]:
    """Two lines: its name and how far it is; where it is, and what comes next."""
    name = [(one.piece.name, LIST.strong)]
    if one.trouble:
        return [name, cut_line([(f"  {one.trouble}", LIST.text)], width)]
    tag = STANDING[one.piece.standing] or ("done" if one.done else "")
    far = f"{one.share:3} %"
    if width >= 60:
        filled = one.share * BAR // 100
        far = f"{'■' * filled}{'□' * (BAR - filled)}  {far}"
    first = spread(name, [(f"{tag}  ".lstrip(" "), LIST.quiet), (far, LIST.text)], width)
    return [first, cut_line([(f"  {details(one, width)}", LIST.quiet)], width)]


def details(one: About, width: int) -> str:
    """Where a piece is, what comes next, when it was put down, how long it took."""
    lay = one.touched and f"put down {one.touched}"
    took = f"{spoken_time(one.worked)} worked" if one.worked >= 60 else ""
    step = "" if one.done else f"next {one.step}"
    if width < 60:
        return " · ".join(word for word in (one.where, one.touched) if word)
    if width < 90:
        return " · ".join(word for word in (one.where, one.touched, took, step) if word)
    return " · ".join(word for word in (one.size, one.where, lay, took, step) if word)
