"""What is told in passing: time and yarn ahead, a rest for the hands, what to take care of.

None of it is needed for the next stitch, so none of it is worked out by a press: the work
screen asks for it now and then, while nothing is pressed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tracker.screens.actions import Keys
from tracker.screens.keys import shown

if TYPE_CHECKING:
    from tracker.pattern.care import Care
    from tracker.pattern.cautions import Caution
    from tracker.session.glance import Glance
    from tracker.session.outlook import Outlook
    from tracker.session.session import Session
    from tracker.session.state import State

PATIENCE = 10
"""Asked so often while presses come and go, it is worked out all the same."""


STEP = 5
"""Minutes; a reminder that changes more often would draw the eye."""


def matters(care: Care, seen: Glance) -> tuple[Caution, ...]:
    """The cautions that matter at a place: by its words, a part's name as it begins, the end."""
    if seen.piece_done:
        return care.at_the_end
    return care.at("\n".join(("" if seen.place.round else seen.part, seen.instruction)))


class Aside:
    """What is to be told of one session; ``rest``: minutes at a stretch, 0 for never."""

    def __init__(self, session: Session, rest: int) -> None:
        self.lines: tuple[str, ...] = ()
        self.times: tuple[str, ...] = ()
        self._session = session
        self._rest = rest
        self._resting = True
        self._turned: tuple[State | None, str] = (None, "")
        self._tired = 0
        self._short: tuple[str, ...] = ()
        self._care: Care | None = None
        self._cared: tuple[object, str] = (None, "")
        self._looked_at: State | None = None
        self._seen: State | None = None
        self._waited = 0

    def look(self, *, now: bool = False) -> bool:
        """Work out anew what has changed, once no press comes (or now); whether it differs."""
        before = (self.lines, self._tired, self._care is None)
        self._tired = self._session.at_a_stretch() // (60 * STEP) * STEP
        state = self._session.state
        calm = now or state is self._seen or self._waited >= PATIENCE
        self._seen, self._waited = state, self._waited + 1
        if calm and state is not self._looked_at:
            self._looked_at, self._waited = state, 0
            self._tell(self._session.outlook())
        if self._care is None:
            from tracker.pattern.care import Care  # reads a file, so not before the first picture

            self._care = Care(self._session.plan.pattern, self._session.plan.size)
        return before != (self.lines, self._tired, self._care is None)

    def turn_rest(self) -> str:
        """The reminder to rest off for now, or on again; says which, until the next press."""
        self._resting = not self._resting
        said = f"reminder to rest {'on' if self._resting else 'off for now'}"
        said = said if self._rest else "the settings leave the reminder to rest off"
        self._turned = self._session.state, said
        return said

    def words(self, keys: Keys) -> tuple[str, ...]:
        """What to tell in passing, the most pressing first."""
        turned = (self._turned[1],) if self._turned[0] is self._session.state else ()
        return (*turned, *self._to_rest(keys), *self._short)

    def _tell(self, ahead: Outlook) -> None:
        from tracker.session.ahead_words import head_words, lines, warning

        self.lines = tuple(lines(ahead, each=False))
        self.times = head_words(ahead)
        self._short = tuple(words for yarn in ahead.yarns if (words := warning(yarn)))

    def care(self, seen: Glance, keys: Keys) -> str:
        """What to take care of here: the topics; the sentences are on the page before the work."""
        if self._care is None or not self._care.cautions:
            return ""
        at = (seen.place[:3], seen.instruction, seen.piece_done)
        if at != self._cared[0]:
            found = matters(self._care, seen)
            self._cared = at, "; ".join(dict.fromkeys(one.topic for one in found))
        topics = self._cared[1]
        return f"take care: {topics} ({shown(keys['before'][0])})" if topics else ""

    def _to_rest(self, keys: Keys) -> tuple[str, ...]:
        if not (self._rest and self._resting and self._tired >= self._rest):
            return ()
        return (f"rest your hands: {self._tired} min ({shown(keys['rest'][0])}: off)",)
