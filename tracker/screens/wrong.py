"""A wrong count: what may have happened, and ways to put it right, one of them to pick."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.widgets import OptionList, Static

from tracker.screens.entry import Asked, Entry
from tracker.screens.flow import Line, content, paragraph
from tracker.screens.inks import Inks
from tracker.screens.pick import LIST, Pick, heading
from tracker.session.session import Session
from tracker.session.wrong import Wrong

if TYPE_CHECKING:
    from textual.app import App, ComposeResult


TOLD = "Count again; a guess goes back there"


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing to pick: what it is called, what is said with it, and what it does.

    ``deed`` returns a number to ask for, or None where all is done.
    """

    title: str
    more: str
    deed: Callable[[], Entry | None]


def remedies(session: Session, found: Wrong) -> tuple[Remedy, ...]:
    """The guesses, the likeliest first (picking one goes back there), then the ways on."""

    def back_to(step: int) -> Callable[[], None]:
        return lambda: session.back_to(step)

    guesses = [Remedy(s.what, s.look, back_to(s.step)) for s in found.suspects]
    rip = Remedy("Rip back the whole round.", f"To the start of {found.label}.", back_to(0))
    rounds = Remedy("Rip back several rounds.", "Type how many.", lambda: Entry(Asked.RIP))
    right = Remedy(
        "Go on, and come right in the next round.", f"{found.right}.", session.come_right
    )
    on = Remedy("Go on as it is.", f"The count of {found.counted} is kept.", lambda: None)
    return (*guesses, *([right] if found.right else []), rip, rounds, on)


def choose_remedy(
    app: App[None],
    session: Session,
    found: Wrong,
    inks: Inks,
    done: Callable[[Entry | None], None],
) -> None:
    """Show the remedies; do the one picked, then call ``done`` with what it still asks for."""
    offered = remedies(session, found)
    width = app.size.width - 4
    head = heading(found.words, TOLD, inks)
    head += [[(row, inks.text)] for row in paragraph(looks(found), width) if row]

    def picked(number: int | None) -> None:
        done(None if number is None else offered[number].deed())

    app.push_screen(Remedies(head, offered, len(found.suspects)), picked)


def looks(found: Wrong) -> str:
    """What a right repeat looks like, in a sentence; "" without one."""
    return f"A right repeat: {found.repeat}." if found.repeat else ""


class Remedies(Pick):
    """The remedies, each in as many lines as it needs: the guesses, then the ways on."""

    def __init__(self, head: list[Line], offered: tuple[Remedy, ...], guesses: int) -> None:
        super().__init__(head, [])
        self._offered = offered
        self._guesses = guesses

    def compose(self) -> ComposeResult:
        """The heading and the list."""
        width = self.app.size.width - 6
        yield Static(content(self._heading))
        options = [content(_lines(one, width)) for one in self._offered]
        parted = [*options[: self._guesses], None, *options[self._guesses :]]
        yield OptionList(*(parted if self._guesses else options), markup=False)


def _lines(one: Remedy, width: int) -> list[Line]:
    title: list[Line] = [[(row, LIST.strong)] for row in paragraph(one.title, width)]
    return [*title, *([(f"  {row}", LIST.quiet)] for row in paragraph(one.more, width - 2))]
