"""The shelf: every piece, how far it is, and what can be done with it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen
from textual.widgets import Input, OptionList, Static

from tracker.screens.actions import bindings
from tracker.screens.flow import Line, content, paragraph
from tracker.screens.inks import Inks
from tracker.screens.shelf_lines import IN_BIN, KEYS, key_lines, piece_lines
from tracker.screens.typed_line import TypedLine
from tracker.session import moving, places
from tracker.session.about import STANDING, About, about, all_about
from tracker.session.access import StoreError
from tracker.session.session import Session
from tracker.session.shelf import Standing, pieces

if TYPE_CHECKING:
    from textual.app import ComposeResult

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
        Binding("b", "turn", "Into the bin and back", show=False),
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
        self._in_bin = False

    def compose(self) -> ComposeResult:
        """Heading, list, a line for a new name, what was done, the keys."""
        yield Static(id="head")
        yield OptionList(markup=False)
        yield TypedLine()
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
        elif self._in_bin:
            self._take_out()
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
        lost = not here.piece.touched
        if self._sure != here.piece.path:
            self._sure = here.piece.path
            to = (
                f"to forget {here.piece.name}" if lost else f"to put {here.piece.name} into the bin"
            )
            self._tell(f"Press d again {to}; esc keeps it.")
            return
        if lost:
            places.forget(here.piece.path, self._folder)
            self.action_drop()
            self._look()
            return
        words = "{name} is in the bin: b looks into it."
        self._do(lambda: moving.throw_away(here.piece, self._folder), words)

    def action_turn(self) -> None:
        """Look into the bin, or back at the shelf."""
        self._in_bin = not self._in_bin
        self._sure, self._told = None, ""
        self._look()

    def _take_out(self) -> None:
        """Back among those in work."""
        here = self._here
        if here is not None:
            put = partial(moving.stand, here.piece, Standing.IN_WORK, self._folder)
            self._do(put, "{name} is on the shelf again.")

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool:  # noqa: ARG002
        """In the bin there is nothing to do but to look, and to take out."""
        return not self._in_bin or action in ("act", "turn", "drop")

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
        places.remember(path, self._folder)
        self._look(path)
        name = path.name.removesuffix(".piece.toml")
        self._tell(words.format(name=name))

    def _look(self, at: Path | None = None) -> None:
        """Read the pieces anew, and stand at one of them."""
        every = self._all()
        every.sort(key=lambda one: (bool(one.trouble), ORDER.index(one.piece.standing)))
        self._abouts = every
        paths = [one.piece.path for one in self._abouts]
        before = self.query_one(OptionList).highlighted or 0
        self._show(paths.index(at) if at in paths else min(before, max(0, len(paths) - 1)))

    def _all(self) -> list[About]:
        now = self._clock()
        if self._in_bin:
            return [about(piece, now) for piece in pieces(self._folder.parent / moving.BIN)]
        return all_about(self._folder, now)

    def _show(self, at: int | None = None) -> None:
        width = self.app.size.width - 6
        options = self.query_one(OptionList)
        stand = options.highlighted if at is None else at
        options.clear_options()
        options.add_options(content(piece_lines(one, width)) for one in self._abouts)
        options.highlighted = stand if self._abouts else None
        head: Line = [(self._title, self._inks.place), (f"  {self._many}", self._inks.quiet)]
        self.query_one("#head", Static).update(content([head, []]))
        self._tell(self._told)

    @property
    def _title(self) -> str:
        return "The bin" if self._in_bin else "The shelf"

    @property
    def _many(self) -> str:
        count = len(self._abouts)
        if self._in_bin:
            return f"{count} in it" if count else "nothing in it"
        return f"{count} on it" if count else "nothing on it yet: n begins a piece"

    def _tell(self, words: str) -> None:
        """What was done or is asked, above the keys."""
        self._told = words
        width = self.app.size.width - 4
        told: list[Line] = [[(row, self._inks.strong)] for row in paragraph(words, width)]
        keys = key_lines(IN_BIN if self._in_bin else KEYS, width, self._inks)
        self.query_one("#foot", Static).update(content([*told, *keys]))
