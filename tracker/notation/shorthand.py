"""Reading shorthands of single crochet: "MR 6", "(2, inc) x 6"."""

from __future__ import annotations

from tracker.notation.dictionary import STITCHES
from tracker.notation.objects import Objects
from tracker.notation.tokens import Type
from tracker.notation.tree import Make
from tracker.notation.wordlists import STITCH_WORDS


class Shorthand(Objects):
    """Rules for single crochets that are not named."""

    def bare_number(self) -> Make | None:
        """``ring figure | figure "," increase | increase "," figure ")"``

        Single crochets without a name: "MR 6" and "(2, inc) x 6", the shorthand of round
        after round of single crochet (common practice, no source).
        """
        mark, start = self.at, self.here.start
        ring = self._ring()
        figure = self.accept_figure()
        if figure is not None and ring is not None and self._clause_is_over():
            return Make(STITCHES["sc"], figure, ring, start, self.last_end)
        if ring is None and self.accept_any(*STITCH_WORDS):
            figure = figure or (1,)  # "(2 sts, dec) x 6", "(st, inc) x 6"
        end, behind = self.last_end, self.accept_any(",", ";")
        shaped = figure is not None and ring is None and bool(behind) and self._shapes()
        self.at = mark
        before = [t.text for t in self.tokens[max(0, mark - 2) : mark]]
        closed = self.ahead(1 + (self.ahead().text in STITCH_WORDS)).type is Type.CLOSE
        if before in (["inc", ","], ["dec", ","]) and closed:
            shaped = True
        if figure is None or not shaped:
            return None
        self.accept_figure()
        self.accept_any(*STITCH_WORDS)
        return Make(STITCHES["sc"], figure, None, start, end)

    def _shapes(self) -> bool:
        """Whether an increase or decrease without a number stands here and ends its clause."""
        key = self.accept_phrase(self.lexicon.phrases)
        return key in ("inc", "dec", "invdec") and self._clause_is_over()
