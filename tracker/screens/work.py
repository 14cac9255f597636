"""The work screen: where the maker is, and the keys that move the place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding
from textual.screen import Screen

from tracker.screens.actions import BY_NAME, Keys, bindings
from tracker.screens.aside import Aside
from tracker.screens.below import Below
from tracker.screens.canvas import Canvas
from tracker.screens.count import Count
from tracker.screens.cues import cues_at
from tracker.screens.doors import Doors
from tracker.screens.entry import Asked, Entry, typed_on
from tracker.screens.guard import Guard
from tracker.screens.head import Head
from tracker.screens.inks import Inks
from tracker.screens.keyline import KeyLine
from tracker.screens.layout import Shape, shape_for
from tracker.screens.passes import Passes
from tracker.screens.picture import Picture
from tracker.screens.side import Side
from tracker.screens.slot import Slot
from tracker.screens.sounds import Sounds
from tracker.screens.step import Aim, Step
from tracker.screens.tell import Last, Notice
from tracker.screens.ticks import Ticks
from tracker.screens.view import View
from tracker.screens.words import Words
from tracker.session.hints import NO_MARKERS, Markers, hint
from tracker.session.session import Session
from tracker.session.worksheet import here, round_at

if TYPE_CHECKING:
    from textual.app import ComposeResult
    from textual.binding import BindingType

    from tracker.session.glance import Glance

AGAIN = 2
"""Seconds between tries to save what could not be saved."""

REST = 0.15
"""Seconds without a press, after which ``hookside where`` is told the place."""

A_WHILE = 10
"""Presses for which it stands there that something could not be told."""

SLOTS: tuple[type[Slot], ...] = (
    Head, Step, Aim, Count, Passes, Picture, Ticks, Words, Below, Side, Notice, Last, KeyLine,
)  # fmt: skip


class WorkScreen(Screen[None], inherit_css=False):
    """Everything of a glance at the work, each thing in its spot."""

    # Digits are bindings, as all else is: Textual hands keys to bindings later than to
    # ``on_key``, so that a number sent in one go with its action would come before it.
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(BY_NAME),
        *(Binding(digit, f"digit('{digit}')", show=False) for digit in "0123456789"),
        Binding("escape", "drop", show=False),
    ]
    ALLOW_SELECT = False
    DEFAULT_CSS = """
    WorkScreen {
        layout: vertical;
        background: $background;
        &:ansi { background: ansi_default; color: ansi_default; }
    }
    """

    def __init__(
        self,
        session: Session,
        inks: Inks,
        keys: Keys,
        sounds: Sounds,
        *,
        rest: int = 0,
        markers: Markers = NO_MARKERS,
    ) -> None:
        super().__init__()
        self._aside = Aside(session, rest)
        self.session = session
        self.inks = inks
        self.keys = keys
        self._seen = session.glance()
        self._entry: Entry | None = None
        self._how = False
        self._guard = Guard()
        self._sounds = sounds
        self._markers = markers
        self._moves = 0
        self._held = False
        self._untold, self._untold_for = "", 0
        self._doors = Doors(self)
        self._own = self._own_actions()
        slots = {slot.__name__.lower(): slot(inks) for slot in SLOTS}
        self._canvas = Canvas(slots)

    def compose(self) -> ComposeResult:
        """The one widget."""
        yield self._canvas

    def on_mount(self) -> None:
        """Show the place; from now on try again what could not be saved."""
        self.set_interval(AGAIN, self._retry)
        self._rest = self.set_interval(REST, self._at_rest, pause=True)
        self._doors.first()
        self.call_after_refresh(self._look_beside)

    def _look_beside(self) -> None:
        self.session.look_beside()
        self._doors.tell()

    def show(self) -> None:
        """Take one glance and show what has changed in it."""
        self._seen = seen = self.session.glance()
        sentences = self._sentences() if seen.making_up else ()
        beside = self._shape() is Shape.HUGE
        plan, guard = self.session.plan, self._guard.words(self.keys)
        walk, terms = round_at(plan, here(plan, self.session.state)).walk, plan.pattern.terms
        cues = {} if seen.making_up else cues_at(walk, seen.place.step)
        worked = plan.parts[seen.place.part].part.worked
        said = "" if seen.making_up else hint(walk, seen.place.step, worked, self._markers)
        cue = "; ".join(filter(None, (*cues.values(), said)))
        self._canvas.show(
            View(
                glance=seen,
                entry=self._entry,
                how=self._how,
                beside=beside,
                sentences=sentences,
                keys=self.keys,
                guard=guard,
                cue=cue,
                walk=walk,
                terms=terms,
                held=self._held,
                untold=self._untold if self._untold_for else "",
                times=self._aside.times,
                care=self._aside.care(seen, self.keys),
                asides=self._aside.words(self.keys),
                ahead=self._aside.lines,
            )
        )
        self._sounds.moved(seen, cues, said)
        self._rest.reset()
        self._doors.tell()

    def action_act(self, name: str) -> None:
        """Do one of the actions, unless the guard keeps it off."""
        self._held = False
        if not self._guard.lets(name):
            self.show()
            return
        moves, self._moves = self._moves, 0
        self._untold_for = max(0, self._untold_for - 1)
        if self._entry is not None and name in ("next", "back"):
            self.ask(typed_on(self._entry, name, self.session))
        elif method := BY_NAME[name].method:
            self._entry = None
            self._how = self._how and self._shape() is not Shape.SMALL
            before = self.session.can_undo
            getattr(self.session, method)()
            self._moves = moves + 1 if self.session.can_undo > before else 0
            self.show()
        else:
            self._own[name]()

    def back_instead(self) -> None:
        """The second of two quick presses of next: one back from where the first one began."""
        if self._moves:
            self.session.undo()
            self.action_act("back")
        else:
            self.action_act("next")

    def held_down(self, wrongly: int) -> None:
        """Say that a held key counts once; take back so many presses that counted."""
        for _ in range(min(wrongly, self._moves)):
            self.session.undo()
        self._held = True
        self.show()

    def untold(self, why: str) -> None:
        """Say for a while why something was not told."""
        self._untold, self._untold_for = why, A_WHILE
        self.show()

    @property
    def seen(self) -> Glance:
        """The last glance taken."""
        return self._seen

    @property
    def why_untold(self) -> str:
        """Why something was not told, "" where all was."""
        return self._untold

    def look_aside(self) -> None:
        """Work out anew what is told in passing."""
        self._aside.look(now=True)
        self.show()

    def learn(self, keys: Keys) -> None:
        """Go on with other keys."""
        self.keys = keys
        self.show()

    def action_drop(self) -> None:
        """Drop the number being typed."""
        if self._entry is not None and not self._guard.on:
            self.ask(None)

    def action_digit(self, digit: str) -> None:
        """Take a digit where a number is asked for."""
        entry = self._entry or (Entry(Asked.COUNT) if self._seen.asking else None)
        if entry is not None and not self._guard.on:
            self.ask(entry.typed(digit))

    def _shape(self) -> Shape:
        return shape_for(*self.app.size)

    def ask(self, entry: Entry | None) -> None:
        """Ask for a number, or drop the one that is typed."""
        self._entry = entry
        self.show()

    def _own_actions(self) -> Mapping[str, Callable[[], object]]:
        """What is done by the screen itself, by the action's name."""
        doors = self._doors
        return {
            "go-round": lambda: self.ask(Entry(Asked.ROUND)),
            "go-stitch": lambda: self.ask(Entry(Asked.STITCH)),
            "count": doors.count,
            "wrong": doors.wrong,
            "note": doors.note,
            "measure": doors.measure,
            "improvise": doors.improvise,
            "weigh": doors.weigh,
            "ahead": doors.ahead,
            "rest": self._turn_rest,
            "ask": self._turn_asking,
            "loops": self._turn_loops,
            "how": self._turn_how,
            "before": doors.before,
            "parts": doors.parts,
            "help": doors.help,
            "find": doors.find,
            "learn": doors.learn,
            "guard": self.show,
            "suspend": self.app.action_suspend_process,
            "quit": self.app.exit,
        }

    def _turn_asking(self) -> None:
        self.session.set_asking(self._seen.count_asking.after)
        self.show()

    def _turn_loops(self) -> None:
        self.session.show_loops(not self._seen.loops_shown)
        self.show()

    def _turn_how(self) -> None:
        self._how = not self._how
        self.show()

    def _turn_rest(self) -> None:
        self._aside.turn_rest()
        self.show()

    def _sentences(self) -> tuple[str, ...]:
        part = self.session.plan.parts[self._seen.place.part]
        return tuple(planned.text for planned in part.rounds)

    def _at_rest(self) -> None:
        """A moment after the last press: keep the place for who asks for it elsewhere."""
        self._rest.pause()
        self.session.keep_told()

    def _retry(self) -> None:
        """Save what could not be saved; notice a take-over; tidy the file while idle."""
        self.session.retry()
        news = self._aside.look() or self._doors.news
        if news or self.session.glance() != self._seen:
            self.show()
