"""A round whose words are not understood, taken in others where it then works out exactly."""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import replace

from tracker.fabric.effort import TooMuchError
from tracker.fabric.judge import Judged
from tracker.fabric.trees import unread_in
from tracker.notation.mending import Offer, mended_rounds
from tracker.notation.round_text import RoundText
from tracker.pattern.findings import made_of
from tracker.pattern.seeing import Seeing
from tracker.pattern.tasks import Task


class Mending(Seeing):
    """Tries the words that slips may have made a round's words of.

    Attributes:
        offers: what each round that was not understood may say instead.
    """

    offers: dict[tuple[RoundText, int], Sequence[Offer]]

    def _mended(self, task: Task) -> Task | None:
        """The round in other words: those with which it comes out as no others do.

        With a printed count it must come out at that. Without one all words that fit at all
        must make the same count.
        """
        if task.fault or task.body.read.apart or not unread_in(task.body.read.nodes):
            return None
        tried = [
            (offer, other, judged)
            for offer in self._offered(task.body.read)
            for other in (in_words(task, offer.read),)
            for judged in (copy(self).comes_out(other),)
            if judged is not None
        ]
        agreed = [one for one in tried if one[2].agrees]
        found = agreed or [one for one in tried if not one[0].bold]
        if not found or (not agreed and len({counts(one[2]) for one in found}) > 1):
            return None
        nearest = min(offer.far for offer, _, _ in found)
        best = [one for one in found if one[0].far == nearest]
        doubtful = any(made_of(one[2].outcomes) != made_of(best[0][2].outcomes) for one in best)
        return None if doubtful or best[0][0].too_far else best[0][1]

    def _offered(self, read: RoundText) -> Sequence[Offer]:
        """What a round may say instead, looked for once only, and not without end."""
        key = read, self.sizes
        if key not in self.offers:
            used = self.source.words
            may_read = self.effort.may_mend
            self.offers[key] = mended_rounds(read, self.lexicon, self.sizes, used, may_read)
        return self.offers[key]

    def comes_out(self, task: Task) -> Judged | None:
        """A round as judged; None where it does not come out. It changes what is below."""
        try:
            nodes = self._placed(task)
            judged = self._judged(nodes, task.stated if task.last else None)
        except TooMuchError:
            return None
        if judged is None or not judged.fits or judged.agrees is False or not counts(judged)[0]:
            return None
        known = not (self.guessed or self.supposed or (self.doubt and not judged.agrees))
        return judged if known and not self._unsure(task, nodes, judged) else None


def in_words(task: Task, read: RoundText) -> Task:
    """The same round worked in other words."""
    body = replace(task.body, read=read)
    if task.body is task.item:
        return replace(task, item=body, body=body, stated=read.stated)
    return replace(task, body=body)


def counts(judged: Judged) -> tuple[int, ...]:
    """What a round makes in each size."""
    return tuple(outcome.makes for outcome in judged.outcomes)
