"""Words behind "As Rnd 3" that change what is worked: "…, but 2 sc in each st"."""

from __future__ import annotations

import re

from tracker.notation.grammar import Reader
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import Type, tokenize
from tracker.notation.tree import Act, Chain, Loops, Make, Node, Note, Unread
from tracker.notation.wordlists import ALTERING, STITCH_WORDS

_LED = re.compile(r"\b(?:but|only|however|with)\b", re.IGNORECASE)
#: The printed count, which changes nothing.
_COUNT = re.compile(
    r"[(\[{<]\s*=?\s*\d+\s*(?:sts?|stitches|sc|dc|hdc|tr|htr|dtr)?\s*[)\]}>]", re.IGNORECASE
)
#: What is worked at the end of a round for the next one.
_LONGEST_TURNING = 4


def alters(body: str, begin: int, lexicon: Lexicon, sizes: int) -> tuple[int, int]:
    """The first words behind ``begin`` that change the rounds asked for again; (0, 0) if none.

    Offsets are those of ``body``. Changing colour, joining, turning and the like change no
    stitch.
    """
    if not body[begin:].strip(" .,;:!()[]"):
        return 0, 0
    behind = body[begin:]
    for said in (_LED, _COUNT):
        behind = said.sub(lambda found: " " * len(found[0]), behind)
    if not behind.strip(" .,;:!"):
        return 0, 0
    nodes = Reader(" " * begin + behind, lexicon, sizes).round()
    found = next((node for node in nodes if _is_altering(node, body)), None)
    return (0, 0) if found is None else (found.start, found.end)


def _is_altering(node: Node, body: str) -> bool:
    if isinstance(node, Act | Loops):
        return False
    if isinstance(node, Chain):
        return node.count[0] > _LONGEST_TURNING
    if isinstance(node, Make):
        return node.stitch.us != "sl st"
    if isinstance(node, Note | Unread):
        tokens = tokenize(body[node.start : node.end])
        words = {t.text for t in tokens if t.type is Type.WORD}
        bounded = not words.isdisjoint(("until", "till")) and not words.isdisjoint(STITCH_WORDS)
        return bounded or not words.isdisjoint(ALTERING)
    return True
