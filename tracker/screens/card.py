"""The card before the work: where a piece was put down, and how to find the place on it."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.screen import Screen
from textual.widgets import Static

from tracker.screens.actions import Keys, bindings
from tracker.screens.entry import Asked, Entry, typed_on
from tracker.screens.flow import Line, Piece, content, cut_line, length, paragraph, spread
from tracker.screens.inks import Inks
from tracker.screens.keys import shown
from tracker.screens.tell import prompt
from tracker.session.returning import Card, Fact
from tracker.session.session import Session

if TYPE_CHECKING:
    from textual import events
    from textual.app import ComposeResult
    from textual.binding import BindingType

LABEL = 13
"""Columns of the labels."""

WIDE = 74
"""Columns from which on the keys are explained in full."""


class CardScreen(Screen[None]):
    """Shows the card; typed figures put the place right; next goes on to the work."""

    BINDINGS: ClassVar[list[BindingType]] = bindings(("next", "back", "go-round", "parts", "quit"))
    DEFAULT_CSS = """
    CardScreen { padding: 0 2; }
    CardScreen Static { height: 1fr; text-wrap: nowrap; }
    """

    def __init__(self, session: Session, inks: Inks, keys: Keys) -> None:
        super().__init__()
        self._session = session
        self._inks = inks
        self._keys = keys
        self._entry: Entry | None = None
        self._told = ""
        self._taken = frozenset(key for learnt in keys.values() for key in learnt)

    def compose(self) -> ComposeResult:
        """The one text."""
        yield Static()

    def on_resize(self, _event: events.Resize) -> None:
        """Lay it out anew."""
        self._show()

    def on_key(self, event: events.Key) -> None:
        """Figures are where the maker says they are; escape drops them."""
        if event.key in self._taken:
            return
        if event.key == "escape" and self._entry is not None:
            event.stop()
            self._entry = None
            self._show()
        elif event.key.isdecimal() and event.key.isascii() and len(event.key) == 1:
            event.stop()
            self._entry = (self._entry or Entry(Asked.STITCH)).typed(event.key)
            self._show()

    def action_act(self, name: str) -> None:
        """Take or correct what is typed, ask for another round or part, or go on."""
        if name == "quit":
            self.app.exit()
        elif name == "parts":
            self._parts()
        elif name == "go-round":
            self._entry = Entry(Asked.ROUND)
        elif self._entry is not None:
            self._entry = typed_on(self._entry, name, self._session)
            if self._entry is None:
                self._told = self._session.glance().last_press
        elif name == "next":
            self.dismiss()
            return
        self._show()

    def _parts(self) -> None:
        from tracker.screens.parts import choose_part

        choose_part(self.app, self._session.glance(), self._inks, self._go_to_part)

    def _go_to_part(self, part: int, copy: int) -> None:
        self._session.go_to_part(part, copy)
        self._show()

    def _show(self) -> None:
        width, height = self.app.size.width - 4, self.app.size.height
        body = card_lines(self._session.card(), width, height - 2, self._inks)
        told: Line = cut_line([(self._told, self._inks.strong)], width)
        gap: list[Line] = [[]] * max(0, height - len(body) - 2)
        self.query_one(Static).update(content([*body, *gap, told, self._foot(width)]))

    def _foot(self, width: int) -> Line:
        if self._entry is not None:
            return [(prompt(self._entry, self._keys, width), self._inks.place)]
        inks, keys = self._inks, self._keys
        i_am = "I am at " if width >= WIDE else ""
        pairs = (
            (shown(keys["next"][0]), "go on"),
            ("0-9", f"{i_am}stitch"),
            (shown(keys["go-round"][0]), f"{i_am}round"),
            (shown(keys["parts"][0]), "parts"),
        )
        line: list[Piece] = []
        for key, word in pairs:
            pair = [(key, inks.strong), (f" {word}  ", inks.quiet)]
            if length([*line, *pair]) - 2 <= width:
                line += pair
        return cut_line(line, width)


def card_lines(card: Card, width: int, height: int, inks: Inks) -> list[Line]:
    """The card in so many rows: with air where there is room, the least needed left out."""
    lay = f"Put down {card.ago}" if card.ago else "Put down"
    head: list[Line] = [
        spread([(card.where, inks.place)], [(card.piece, inks.quiet)], width),
        cut_line([(lay, inks.text), (f"  {card.when}", inks.quiet)], width),
    ]
    facts = _rows(card.facts, width, inks)
    find: list[Line] = [[("Find it on the work", inks.mark)], *_rows(card.find, width, inks)]
    advice: list[Line] = [[(row, inks.text)] for row in paragraph(card.advice, width) if row]
    blocks = [block for block in (head, facts, find if card.find else [], advice) if block]
    gaps: tuple[list[Line], ...] = ([[], []], [[]], [])
    for gap in gaps:
        lines = [line for block in blocks for line in (*block, *gap)]
        if len(lines) - len(gap) + bool(gap) <= height:
            return [[], *lines] if gap else lines
    return _tightest(head, facts, find, height)


def _tightest(head: list[Line], facts: list[Line], find: list[Line], height: int) -> list[Line]:
    """Where it all has no room: no advice, and as many facts as fit above how to find it."""
    room = max(2, height - len(head) - len(find))
    return [*head, *facts[:room], *find][:height]


def _rows(facts: tuple[Fact, ...], width: int, inks: Inks) -> list[Line]:
    lines: list[Line] = []
    for name, words in facts:
        ink = inks.place if name == "next" else inks.text
        first, *rest = paragraph(words, width - LABEL)
        lines.append([(name.ljust(LABEL), inks.quiet), (first, ink)])
        lines += [[(" " * LABEL, inks.quiet), (row, ink)] for row in rest]
    return lines
