"""A round worked otherwise: chosen, typed, and its verdict told while it is typed."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding
from textual.screen import Screen
from textual.widgets import Input, Static

from tracker.screens.flow import Line, content, cut, paragraph, spread
from tracker.screens.inks import Inks
from tracker.screens.typed_line import TypedLine
from tracker.session.improvise import LONGEST, Choice, Improvising
from tracker.session.session import Session
from tracker.session.trial import Tried

if TYPE_CHECKING:
    from textual import events
    from textual.app import App, ComposeResult
    from textual.binding import BindingType

LISTED = 18
"""Rows from which on all choices are listed."""

TOLD = "↑ ↓ what else  ⏎ accepts  esc leaves all as it was"
TOLD_SHORT = "⏎ accepts  esc drops"

BEHIND = 8
"""Columns shown behind words at fault."""

NOTHING = "There is no round to improvise here."

Answer = tuple[Choice, str]


def improvise(app: App[None], session: Session, inks: Inks, done: Callable[[], None]) -> None:
    """Let the maker improvise from the place, then call ``done``."""

    def answered(answer: Answer | None) -> None:
        if answer is not None:
            session.improvise(*answer)
        done()

    app.push_screen(Improvise(session.improvising(), inks), answered)


class Improvise(Screen[Answer | None]):
    """Answers with what is to be done and the words typed for it, or None."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "drop", "Drop", show=False),
        Binding("enter", "accept", "Accept", show=False),
        Binding("up", "turn(-1)", show=False),
        Binding("down", "turn(1)", show=False),
    ]
    DEFAULT_CSS = """
    Improvise { padding: 0 2; }
    Improvise Static { height: auto; }
    Improvise Input { border: none; padding: 0; height: 1; }
    Improvise Input:focus { border: none; background-tint: $background 0%; }
    """

    def __init__(self, improvising: Improvising, inks: Inks) -> None:
        super().__init__()
        self._improvising = improvising
        self._inks = inks
        self._at = 0
        self._asked = ""

    def compose(self) -> ComposeResult:
        """The choices, the line to type on, and what comes of it."""
        yield Static(id="choices")
        yield TypedLine(max_length=LONGEST)
        yield Static(id="tried")

    def on_mount(self) -> None:
        """Begin with the first choice."""
        self._choose()

    def on_resize(self, _event: events.Resize) -> None:
        """Lay it out anew."""
        self._show()

    def on_input_changed(self, _event: Input.Changed) -> None:
        """Tell what comes of it now."""
        self._asked = ""
        self._show()

    def on_input_submitted(self, _event: Input.Submitted) -> None:
        """Accept it."""
        self.action_accept()

    def action_turn(self, by: int) -> None:
        """To the next thing that can be done, or the one before."""
        if self._choices:
            self._at = (self._at + by) % len(self._choices)
            self._choose()

    def action_accept(self) -> None:
        """Answer; where something is doubtful, only when it is said twice."""
        if not self._choices:
            self.dismiss(None)
            return
        found = self._tried()
        if not found.refused and (not found.doubt or self._asked):
            self.dismiss((self._choice, self._words))
            return
        self._asked = found.refused or found.doubt
        self._show()

    def action_drop(self) -> None:
        """Leave everything as it was."""
        self.dismiss(None)

    @property
    def _choices(self) -> tuple[Choice, ...]:
        return self._improvising.choices

    @property
    def _choice(self) -> Choice:
        return self._choices[self._at]

    @property
    def _words(self) -> str:
        return self.query_one(Input).value if self._choice.typed else ""

    def _choose(self) -> None:
        """Begin with the words of the choice, all of them selected: typing replaces them."""
        line = self.query_one(TypedLine)
        self._asked = ""
        line.display = bool(self._choices) and self._choice.typed
        if line.display:
            line.value = self._choice.words
            line.focus()
            line.select_from_end()
        self._show()

    def _tried(self) -> Tried:
        return self._improvising.tried(self._choice, self._words)

    def _show(self) -> None:
        width = self.app.size.width - 4
        found = self._tried() if self._choices else Tried(below=NOTHING)
        head = [*self._head(width), [(cut(found.below, width), self._inks.quiet)]]
        self.query_one("#choices", Static).update(content(head))
        self.query_one("#tried", Static).update(content(self._verdict(found, width)))

    def _head(self, width: int) -> list[Line]:
        """What is done here, and what else could be."""
        inks = self._inks
        told = TOLD if width > len(TOLD) + 12 else TOLD_SHORT
        head = spread([("Improvise", inks.place)], [(told, inks.quiet)], width)
        if not self._choices:
            return [head]
        if self.app.size.height < LISTED:
            of = f"{self._at + 1} of {len(self._choices)} ↑ ↓"
            title = cut(self._choice.title, width - 4 - len(of))
            return [head, [("▸ ", inks.place), (title + "  ", inks.strong), (of, inks.quiet)]]
        rows = [self._row(number, one, width) for number, one in enumerate(self._choices)]
        return [head, [], *rows, []]

    def _row(self, number: int, one: Choice, width: int) -> Line:
        inks, here = self._inks, number == self._at
        ink = inks.strong if here else inks.quiet
        return [("▸ " if here else "  ", inks.place), (cut(one.title, width - 2), ink)]

    def _verdict(self, found: Tried, width: int) -> list[Line]:
        """What the line comes to; the words at fault with a caret beneath."""
        inks = self._inks
        lines = self._at_fault(found, width)
        said = ((found.says, inks.strong if found.well else inks.warn), (found.hint, inks.text))
        asked = self._asked or found.refused
        # What is asked comes first, since a small screen has no room for all.
        for words, ink in ((asked, inks.place), *said, (found.follows, inks.text)):
            lines += [[(row, ink)] for row in paragraph(words, width) if row]
        return lines

    def _at_fault(self, found: Tried, width: int) -> list[Line]:
        """A caret beneath the words at fault; they are shown once more where the line is long."""
        start, end = found.fault
        if end <= start:
            return []
        long = len(self._words) >= width
        first = max(0, min(start, end + BEHIND - width)) if long else 0
        again: list[Line] = [[(cut(self._words[first:], width), self._inks.quiet)]] if long else []
        caret = "^" * min(end - start, width - (start - first))
        return [*again, [(" " * (start - first), self._inks.text), (caret, self._inks.warn)]]
