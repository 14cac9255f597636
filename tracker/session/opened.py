"""An open piece: its file, its plan and history, its time; but for the presses themselves."""

from __future__ import annotations

from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session import shelf, worksheet
from tracker.session.access import StoreError
from tracker.session.entries import Entry, Redo, Undo
from tracker.session.events import Event
from tracker.session.glance import Glance, glance, line
from tracker.session.head import Head
from tracker.session.items import Did, item_of
from tracker.session.looking import plan_found
from tracker.session.naming import spot_words
from tracker.session.own import OwnPlan
from tracker.session.place import Pace
from tracker.session.presses import Press
from tracker.session.reading import Reading, read_plan
from tracker.session.returning import Card, card, lay_a_while, parting
from tracker.session.state import State
from tracker.session.store import Store
from tracker.session.surroundings import Surroundings
from tracker.session.timing import Timing, Took
from tracker.session.told import keep_told
from tracker.session.worked import WORTH, worked

if TYPE_CHECKING:
    from typing import Self

    from tracker.pattern.model import Pattern
    from tracker.pattern.plan import Plan
    from tracker.session.log import LoggedPart
    from tracker.session.outlook import Looker, Outlook

ONLY_LOOKS = "not done: the piece was taken over in another window, this one only looks on"


class Opened:
    """What holds a work in progress together; see `Session`, which adds what can be done.

    Raises nothing for a full or broken disk (see ``Glance.trouble``).
    """

    def __init__(
        self, plan: Plan, store: Store, last_press: str, reading: Reading | None = None
    ) -> None:
        self._own = OwnPlan(plan)
        self._store = store
        self._last_press = last_press
        self._reading = reading
        self._started = False
        self._told = (0, 0)
        self._taken_up = store.when
        self._timing = Timing(store.around.clock, self.state.spot)
        self._worked_before = worked(store.history)
        self._looker: Looker | None = None

    @classmethod
    def start(
        cls,
        pattern: Pattern,
        size: str,
        folder: Path,
        name: str = "",
        *,
        file: Path | None = None,
        around: Surroundings | None = None,
        reading: Reading | None = None,
    ) -> Self:
        """Begin a new piece of ``pattern``; ``name`` defaults to the pattern's title.

        ``file``: where the pattern stands, so that its changes are noticed.
        """
        around = around or Surroundings()
        plan = (reading or read_plan)(pattern.source, size)
        title = name or pattern.title
        started = around.clock().replace(microsecond=0)
        where = str(file.absolute()) if file else ""
        head = Head(title, plan.size, started, pattern.source, where)
        store = Store.create(shelf.new_path(folder, title), head, around)
        session = cls(plan, store, "begun", reading)
        session._started = True
        return session

    @classmethod
    def open(
        cls,
        path: Path,
        *,
        take_over: bool = False,
        around: Surroundings | None = None,
        reading: Reading | None = None,
    ) -> Self:
        """Open an existing piece. Raises `StoreError` with one clear sentence.

        `InUse`, a kind of `StoreError`, says that it is open elsewhere. With ``take_over``
        it is taken from there: that window notices before its next press is saved, only
        looks on from then, and keeps beside what was not saved.
        """
        store = Store.open(path, around or Surroundings(), take_over=take_over)
        plan = plan_of(store, reading)
        when = f", last worked {_spoken(store.when)}" if store.when else ""
        session = cls(plan, store, f"taken up again{when}", reading)
        session._say_if_astray()
        return session

    @property
    def path(self) -> Path:
        """The piece's file."""
        return self._store.path

    @property
    def notices(self) -> tuple[str, ...]:
        """What the maker should know of the file, one sentence each, the latest last."""
        return self._store.notices

    @property
    def plan(self) -> Plan:
        """The pattern in the size that is worked, with what the maker changed."""
        return self._own.at(self.state)

    @property
    def printed(self) -> Plan:
        """The pattern in the size that is worked, as it is printed."""
        return self._own.printed

    @property
    def state(self) -> State:
        """All that is true of the piece besides its pattern."""
        return self._store.history.state

    @property
    def can_undo(self) -> int:
        """How many actions can be taken back."""
        return self._store.history.done

    def glance(self) -> Glance:
        """All that the screen shows now."""
        return glance(
            self.plan, self.state, last_press=self._last_press, trouble=self._store.trouble
        )

    @property
    def begun(self) -> bool:
        """Whether the piece was begun just now, and nothing is pressed yet."""
        return self._started and not self.can_undo

    @property
    def came_back(self) -> bool:
        """Whether the piece was put down more than a while ago, and is not done."""
        lay = lay_a_while(self._taken_up, self._store.around.clock())
        return lay and not worksheet.piece_done(self.plan, self.state)

    def card(self) -> Card:
        """What to look at before going on with a piece that was put down."""
        return card(self.plan, self.state, self._taken_up, self._store.around.clock())

    def parting(self) -> tuple[str, ...]:
        """What is said when the piece is put down."""
        return parting(self.plan, self.state)

    def undo(self) -> None:
        """Take back the last action of any kind."""
        if self._store.taken:
            self._last_press = ONLY_LOOKS
        elif self._store.history.undo():
            words = f"undone: {self._here()}"
            self._save(Undo(1), words, self._timing.pressed(self.plan))
        else:
            self._last_press = "nothing to undo"

    def redo(self) -> None:
        """Do again what was taken back."""
        if self._store.taken:
            self._last_press = ONLY_LOOKS
        elif self._store.history.redo():
            words = f"done again: {self._here()}"
            self._save(Redo(1), words, self._timing.pressed(self.plan))
        else:
            self._last_press = "nothing to do again"

    def outlook(self) -> Outlook:
        """What lies ahead of the piece. It takes some milliseconds: not for every press."""
        plan = self.plan
        if self._looker is None or self._looker.plan is not plan:
            from tracker.session.outlook import Looker

            self._looker = Looker(plan)
        return self._looker.outlook(self.state, self._store.history)

    def log(self) -> tuple[LoggedPart, ...]:
        """What became of every round."""
        from tracker.session.log import log

        return log(self.plan, self.state, self._store.history.items)

    def at_a_stretch(self) -> int:
        """Seconds since the hands last rested; 0 while they do."""
        return self._timing.at_a_stretch(by_stitch=self.state.pace is Pace.STITCH)

    def retry(self) -> None:
        """Try again to save, notice that the piece was taken over, tidy a file that has grown.

        To be called every few seconds, always; cheap where there is nothing to do.
        """
        self._store.retry()
        self.keep_told()

    def close(self) -> None:
        """Make all durable and let go of the file."""
        self._record_time()
        self._store.close()
        self.keep_told()

    def keep_told(self) -> None:
        """Keep the line of the place for who asks for it, where the file has changed."""
        store = self._store
        store.keep_midway()
        if store.sign != self._told and not store.trouble and not store.taken:
            self._told = store.sign
            keep_told(store.path, *store.sign, line(self.glance()))

    def _do(self, press: Press) -> None:
        if press.event is None or self._store.taken:
            self._last_press = ONLY_LOOKS if self._store.taken else press.words
            return
        took = self._timing.pressed(self.plan, press.event.spot)
        item = item_of(press.event, took.when, took.seconds)
        self._store.history.add(item)
        self._save(item, press.words, took)

    def _save(self, entry: Entry, words: str, took: Took) -> None:
        self._store.append(entry, took.seconds if took.untold else None)
        self._last_press = words

    def _record_time(self) -> None:
        """Record how long was worked, if anything was done since the piece was opened.

        Not where presses are undone: a new entry would be the end of them, and what each
        press took is in the file in any case.
        """
        worth = self._timing.worked >= WORTH and not self._store.history.undone
        if worth and not self._store.taken:
            done = Event(worked=self._worked_before + self._timing.worked)
            item = Did(done, presses=0, when=self._timing.last)
            self._store.history.add(item)
            self._store.append(item)

    def _here(self) -> str:
        return spot_words(self.plan, self.state, self.state.spot)

    def _say_if_astray(self) -> None:
        """Say where the place in the file may not be where the maker stopped."""
        if self._store.later is not None:
            later = spot_words(self.plan, self.state, self._store.later)
            self._store.notices += (f"A later entry that can still be read says: {later}.",)
        if worksheet.here(self.plan, self.state) != self.state.spot:
            self._store.notices += (
                f"The place in the file is not in the pattern; you stand at {self._here()}.",
            )


def plan_of(store: Store, reading: Reading | None) -> Plan:
    """The plan of a piece just opened, its file made whole. Raises `StoreError`."""
    try:
        plan = plan_found(store.path, store.head, reading)
    except StoreError:
        store.abandon()
        raise
    store.make_good()
    return plan


def _spoken(when: str) -> str:
    """A time of the file without seconds and offset: "2026-03-02 10:15"."""
    return when[:16].replace("T", " ")
