"""What is to be heard at a press: a bell for the eyes' sake, and words."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tracker.screens.cues import Cue, Cues
from tracker.screens.step import whole

if TYPE_CHECKING:
    from tracker.screens.caption import Caption
    from tracker.screens.speech import Speaker
    from tracker.session.glance import Glance
    from tracker.session.place import Place


class Sounds:
    """Rings and speaks when the place has moved; hands each place on to a caption."""

    def __init__(
        self,
        occasions: frozenset[Cue],
        ring: Callable[[], None],
        speaker: Speaker | None,
        caption: Caption | None = None,
    ) -> None:
        self._occasions = occasions
        self._ring = ring
        self._speaker = speaker
        self._caption = caption
        self._place: Place | None = None

    def moved(self, seen: Glance, cues: Cues, hint: str) -> None:
        """Tell of a place, if it is another than before; rings only on the way forward."""
        if self._caption is not None:
            self._caption.show(seen)
        before, self._place = self._place, seen.place
        if before is None or before == seen.place:
            return
        ends = set() if before._replace(step=seen.place.step) == seen.place else {Cue.ROUND}
        if seen.place > before and (ends | cues.keys()) & self._occasions:
            self._ring()
        if self._speaker is not None:
            self._speaker.say(spoken(seen, cues, hint))


def spoken(seen: Glance, cues: Cues, hint: str) -> str:
    """What is said of a place: the count, what to know, the step.

    It begins with a figure or a word, so that no program takes it for an option.
    """
    words = (f"{seen.made} made", *cues.values(), hint, whole(seen))
    return ". ".join(word for word in words if word)
