"""A piece being worked: every press goes through here, and is saved before it is shown."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING
from tracker.notation.problems import visible
from tracker.session import going, presses, worksheet
from tracker.session.access import StoreError
from tracker.session.looking import glance_at
from tracker.session.place import Asking, Pace
from tracker.session.reconciled import Reconciled

if TYPE_CHECKING:
    from tracker.session.improvise import Choice, Improvising
    from tracker.session.wrong import Wrong

__all__ = ["Session", "StoreError", "glance_at"]

PACES = tuple(Pace)


class Session(Reconciled):
    """One open work in progress.

    Every action changes the state, appends it to the piece's file, and returns; none
    raises for a full or broken disk (see ``Glance.trouble``). Actions that cannot apply
    (back at the very first step) change nothing and say so in ``Glance.last_press``.
    """

    def next(self) -> None:
        """One press: a loop, stitch, repeat or round on; confirms a count that is asked."""
        self._do(presses.next_press(self.plan, self.state))

    def back(self) -> None:
        """One press back, by the pace."""
        self._do(presses.back_press(self.plan, self.state))

    def next_round(self) -> None:
        """To the start of the next round."""
        self._do(going.next_round(self.plan, self.state))

    def previous_round(self) -> None:
        """To the start of this round, or of the one before when already there."""
        self._do(going.previous_round(self.plan, self.state))

    def go_to_round(self, number: int) -> None:
        """To the start of round ``number`` (from 1) of this part and copy."""
        self._do(going.go_to_round(self.plan, self.state, number))

    def go_to_stitch(self, made: int) -> None:
        """To where ``made`` stitches of this round are made."""
        self._do(going.go_to_stitch(self.plan, self.state, made))

    def go_to_part(self, part: int, copy: int) -> None:
        """To where that part and copy (from 0) was left (its beginning if never begun).

        A part that was set aside for another of its choice is chosen thereby.
        """
        self._do(going.go_to_part(self.plan, self.state, part, copy))

    def choose(self, part: int) -> None:
        """Choose this part (from 0) among the parts of its ``choose`` group.

        A maker who stands in one of the others is taken to it.
        """
        self._do(going.choose(self.plan, self.state, part))

    def turn_pace(self) -> None:
        """stitch, repeat, round, stitch …; the exact place stays."""
        after = (PACES.index(self.state.pace) + 1) % len(PACES)
        self.set_pace(PACES[after])

    def set_pace(self, pace: Pace) -> None:
        """Set the pace."""
        self._do(presses.set_pace(self.state, pace))

    def set_asking(self, asking: Asking) -> None:
        """After which rounds the count is asked for."""
        self._do(presses.set_asking(self.state, asking))

    def show_loops(self, shown: bool) -> None:
        """Whether special stitches go loop by loop."""
        self._do(presses.show_loops(self.state, shown=shown))

    def mark(self) -> None:
        """Mark this place (one mark a piece)."""
        self._do(going.mark(self.plan, self.state))

    def return_to_mark(self) -> None:
        """Go to the marked place."""
        self._do(going.return_to_mark(self.plan, self.state))

    def enter_count(self, count: int) -> None:
        """The maker counted ``count`` at the round's end; kept with the round."""
        self._do(presses.enter_count(self.plan, self.state, count))

    def may_count(self) -> bool:
        """Whether a count can be entered here; where not, the last press says so."""
        may = presses.may_count(self.plan, self.state)
        if not may:
            self._do(presses.Press(None, presses.NOT_COUNTED))
        return may

    def wrong(self) -> Wrong | None:
        """What can be done about a wrong count of the last round counted; None without one."""
        from tracker.session import wrong  # few counts are

        return wrong.wrong(self.plan, self.state)

    def back_to(self, step: int) -> None:
        """Back to a step (from 0) of the round whose count is wrong."""
        from tracker.session import wrong  # few counts are

        self._do(wrong.back_to(self.plan, self.state, step))

    def rip_back(self, rounds: int) -> None:
        """Back by so many rounds; the one just worked, or in work, is the first."""
        from tracker.session import wrong  # few counts are

        self._do(wrong.rip_back(self.plan, self.state, rounds))

    def come_right(self) -> None:
        """Go on after a wrong count, the next round worked so that it comes right."""
        from tracker.session import wrong  # few counts are

        self._do(wrong.come_right(self.plan, self.state))

    def improvising(self) -> Improvising:
        """What can be worked otherwise from here, and what comes of it."""
        from tracker.session.improvise import Improvising

        return Improvising(self.printed, self.plan, self.state)

    def improvise(self, choice: Choice, words: str) -> None:
        """Work a round otherwise, one more, or one less; see `Improvising`."""
        self._do(self.improvising().press(choice, words))

    def note(self, words: str) -> None:
        """Keep a note with this place; no words drop the one that is here."""
        from tracker.session import memos  # few places have one

        self._do(memos.note(self.plan, self.state, words))

    def note_here(self) -> str:
        """The note kept with this place, or ""."""
        return self.state.notes.get(worksheet.here(self.plan, self.state), "")

    def measure(self, words: str) -> None:
        """Keep how long the piece measures at this place; no words drop the measure here."""
        # Imported here, since few pieces are ever measured.
        from tracker.session.lengths import measure

        self._do(measure(self.plan, self.state, words))

    def measured_mm(self, millimetres: int) -> None:
        """The same for a length typed in whole millimetres; 0 drops the measure here."""
        self.measure(f"{millimetres} mm" if millimetres else "")

    def measured_here(self) -> str:
        """The measure kept with this place, or ""; a file written by hand may say anything."""
        return visible(self.state.measured.get(worksheet.here(self.plan, self.state), ""))

    def weigh(self, typed: str, letter: str = "") -> None:
        """Keep what is left of a yarn, such as "43 g"; of the one in hand unless said."""
        from tracker.session.weighing import weigh  # not for every piece

        self._do(weigh(self.plan, self.state, typed, letter))

    def weigh_grams(self, grams: int) -> None:
        """The same for whole grams of the yarn in hand."""
        self.weigh(f"{grams} g")

    def length_reached(self) -> None:
        """A round of open length is long enough: go on with what follows."""
        self._do(presses.length_reached(self.plan, self.state))
