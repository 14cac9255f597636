"""How much work goes into a part before it is given up: nothing in a text makes that grow."""

from __future__ import annotations

from dataclasses import dataclass

#: Instructions worked for all of a part, and for one of its rounds in all its readings. A
#: round of 100,000 stitches in repeats of three takes some 67,000.
MOST_IN_PART = 1_000_000
MOST_IN_ROUND = 150_000
#: After so many, no other reading of a round is begun.
ENOUGH = 50_000
#: As many are tried for the likeliest cause of a count that does not work.
MOST_FOR_CAUSE = 30_000
#: So many changes are tried for all rounds of a part: behind hundreds of faults a hint is
#: no help any more.
MOST_TRIES_IN_PART = 2_000


class TooMuchError(Exception):
    """The round asks for more than any piece has, or more than can be worked out."""


@dataclass(slots=True)
class Effort:
    """What may still be spent on a part; ``left`` on the round that is judged.

    ``tries``: changes of words that may still be tried for the causes of its faults.
    """

    part: int = MOST_IN_PART
    left: int = MOST_IN_ROUND
    tries: int = MOST_TRIES_IN_PART

    def begin(self, most: int = MOST_IN_ROUND) -> None:
        """A round begins, or the search for what is wrong with it."""
        self.left = min(most, self.part)

    def enough(self) -> bool:
        """Whether so much was spent on this round that no other reading is worth it."""
        return self.left < MOST_IN_ROUND - ENOUGH

    def spend(self) -> None:
        """One more instruction is worked.

        Raises:
            TooMuchError: nothing is left.
        """
        self.left -= 1
        self.part -= 1
        if self.left < 0:
            raise TooMuchError
