"""How much work goes into a pattern before it is given up: nothing in a text makes that grow."""

from __future__ import annotations

from dataclasses import dataclass

#: Instructions worked for all of a pattern or text; a pattern of two hundred rounds that
#: prints its counts takes 15,000.
MOST_IN_PATTERN = 500_000
#: For one round in all its readings, with one more for each stitch below, up to the most there
#: may be. A round of 100,000 stitches in repeats of three takes some 67,000.
MOST_IN_ROUND = 20_000
MOST_IN_LONG_ROUND = 150_000
#: As many are tried for the likeliest cause of a count that does not work.
MOST_FOR_CAUSE = 8_000
#: Beginning to work a round takes as long as so many instructions.
TO_BEGIN = 30
#: Letters of the texts that are read for rounds that are not understood as they are written.
MOST_MENDED = 60_000
#: So many changes are tried for all rounds of a part: behind hundreds of faults a hint is
#: no help any more.
MOST_TRIES_IN_PART = 2_000


class TooMuchError(Exception):
    """The round asks for more than any piece has, or more than can be worked out."""


@dataclass(slots=True)
class Effort:
    """What may still be spent on the ``whole``, and what is ``left`` for the round judged.

    ``given``: what that round was given. ``tries``: changes of words that may still be tried
    for the causes of its faults; ``mended``: letters of texts that may still be read for words
    that are not understood.
    """

    whole: int = MOST_IN_PATTERN
    left: int = MOST_IN_ROUND
    given: int = MOST_IN_ROUND
    tries: int = MOST_TRIES_IN_PART
    mended: int = MOST_MENDED

    def begin(self, most: int = MOST_IN_ROUND, below: int = 0) -> None:
        """A round begins, on ``below`` stitches, or the search for what is wrong with it."""
        self.given = self.left = min(most + below, MOST_IN_LONG_ROUND, self.whole)

    def enough(self) -> bool:
        """Whether so much was spent on this round that no other reading is worth it."""
        return self.left < self.given // 2

    def for_another(self) -> bool:
        """Whether enough is left to work a part once more, as what was learnt of it asks."""
        return self.whole > MOST_IN_PATTERN // 2

    def may_mend(self, letters: int) -> bool:
        """Whether texts of so many letters may be read for a round; these are then spent."""
        self.mended -= letters
        return self.mended >= 0

    def why(self) -> str:
        """Why a round was given up."""
        if self.whole < 0:
            return "is not worked out, as too many rounds before it do not fit"
        if self.left < 0:
            return "is not worked out, as too much of it does not fit"
        return "asks for more stitches than any piece has"

    def spend(self, instructions: int = 1) -> None:
        """So many more instructions are worked.

        Raises:
            TooMuchError: nothing is left.
        """
        self.left -= instructions
        self.whole -= instructions
        if self.left < 0:
            raise TooMuchError
