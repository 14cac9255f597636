"""How each stitch is made, in a sentence or two that can be read at arm's length.

Stitches are named by their US abbreviations, so that a change of terms can be made word
by word. How a stitch is made: common practice, no source. How many places it takes, and
the loops on the hook before it is closed (bobble 6, sc2tog 3):
https://squishyandco.com/bobble-puff-popcorn-crochet (bobble, popcorn),
https://daisyfarmcrafts.com/puff-stitch/ (puff),
https://trantor.is/content/rINLxlqbfRSKxBh1/Glossary.html (sc2tog, sc3tog),
https://nessiesnotions.com/blogs/stitch-guide/crossed-double-crochet-stitch (crossed dc),
https://ravenscrochet.com/star-stitch/ (star).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

_WRITTEN = {
    "ch": "Yarn over and draw it through the loop on the hook.",
    "sl st": "Hook into the st, yarn over, draw it through the st and the loop on the hook.",
    "sc": "Hook into the st, draw up a loop. Yarn over, draw through both loops.",
    "hdc": "Yarn over, hook into the st, draw up a loop. Yarn over, draw through all 3 loops.",
    "dc": "Yarn over, hook into the st, draw up a loop. Draw through 2 loops, twice.",
    "tr": "Yarn over twice, hook into the st, draw up a loop. Draw through 2 loops, 3 times.",
    "dtr": "Yarn over 3 times, hook into the st, draw up a loop. Draw through 2 loops, 4 times.",
    "trtr": "Yarn over 4 times, hook into the st, draw up a loop. Draw through 2 loops, 5 times.",
    "esc": "Hook into the st, draw up a loop. Draw through 1 loop, then through both.",
    "ehdc": "Yarn over, draw up a loop in the st. Draw through 1 loop, then through all 3.",
    "edc": "Yarn over, draw up a loop in the st. Draw through 1 loop, then through 2 loops twice.",
    "etr": "Yarn over twice, draw up a loop. Draw through 1 loop, then through 2 loops 3 times.",
    "hhdc": "Yarn over, hook into the st, draw a loop through it and through the first loop on the "
    "hook. Yarn over, draw through both.",
    "wsc": "Hook into the middle of the st, between its two legs. Then as a single crochet.",
    "fsc": "Draw up a loop in the foot of the last st. Draw through 1 loop (the new chain), "
    "then through both.",
    "rev sc": "Do not turn. Work sc back the way you came, each into the st behind the last one.",
    "inc": "Work 2 sts into the same st.",
    "dec": "Draw up a loop in each of the next 2 sts, then close them as one: 2 sts become 1.",
    "invdec": "Hook through the front loops of the next 2 sts, draw up one loop through both. "
    "Yarn over, draw through both loops.",
    "cl": "Work as many sts as the pattern says, each up to its last loop. Close all as one.",
    "bobble": "5 dc in one st, each up to its last loop. Draw through all 6 loops.",
    "puff": "Yarn over and draw up a tall loop in the st, 4 times. Draw through all the loops.",
    "popcorn": "5 dc in one st. Drop the loop, hook into the first of them, pull the loop through.",
    "shell": "5 dc in one st, or as many as the pattern says.",
    "v-st": "In one st: dc, ch 1, dc (or as many chains as the pattern says).",
    "crossed dc": "Skip 1 st, dc in the next st, then dc back in the skipped st.",
    "star": "Draw up loops until 6 are on the hook, the last 2 in the next 2 sts. Draw through "
    "all, ch 1 to lock: the eye.",
    "picot": "Ch 3, then sl st in the first of these chains: a small loop on the edge.",
    "ring": "Lay the yarn in a loose loop, work the sts over loop and tail, pull the tail shut.",
    "blo": "Hook under the back loop only: the one farther from you.",
    "flo": "Hook under the front loop only: the one nearer to you.",
    "ch-sp": "Hook into the gap under the chains, not into a chain.",
    "sk": "Pass over the st. The next st you work goes into the one after it.",
    "join": "Sl st in the first st of the round, or in the top of a ch that counts as one.",
    "turn": "Turn the work to go back along the sts just made.",
    "marker": "Hang an open marker in the st just made.",
    "fasten off": "Cut the yarn, draw the tail through the last loop and pull it tight.",
}

_TALL = ("dc", "tr", "dtr")
_MOST_TOGETHER = 9
_MOST_POSTS = 4


def _closed() -> Iterator[tuple[str, str]]:
    for n in range(2, _MOST_TOGETHER + 1):
        yield f"sc{n}tog", f"Draw up a loop in each of the next {n} sts. {_close(n + 1)}"
        loops = f"Yarn over and draw up a loop in each of the next {n} sts."
        yield f"hdc{n}tog", f"{loops} {_close(2 * n + 1)}"
        for tall in _TALL:
            legs = f"{tall} in each of the next {n} sts, each up to its last loop."
            yield f"{tall}{n}tog", f"{legs} {_close(n + 1)}"


def _close(loops: int) -> str:
    return f"Draw through all {loops} loops."


def _round_posts() -> Iterator[tuple[str, str]]:
    for us in ("sc", "hdc", *_TALL):
        yield f"fp{us}", f"Hook in from the front, behind the post and out again. {us} round it."
        yield f"bp{us}", f"Hook in from the back, before the post and out again. {us} round it."
        for n in range(2, _MOST_POSTS + 1):
            legs = f"{us} round each of the next {n} posts from the"
            yield f"fp{us}{n}tog", f"{legs} front, each up to its last loop. {_close(n + 1)}"
            yield f"bp{us}{n}tog", f"{legs} back, each up to its last loop. {_close(n + 1)}"


#: A short how-to by US abbreviation, in lower case.
HOW_TO: Mapping[str, str] = MappingProxyType(_WRITTEN | dict(_closed()) | dict(_round_posts()))


def how_to(us: str) -> str:
    """How the stitch with this US abbreviation is made; "" where nothing is written."""
    return HOW_TO.get(us.lower(), "")
