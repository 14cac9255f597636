"""Lines that shape on and on until so many are left: "Dec evenly until 12 sts remain"."""

from __future__ import annotations

import re

from tracker.notation.extent import COME_TO
from tracker.notation.tokens import plain

_ON = (
    r"(?:then |now |next )?"
    r"(?:(?:continue|cont|keep(?: on)?|carry on|go on|work)\W+(?:to |with )?)?"
)
_DOWN = (
    r"(?:(?:inv(?:isible)? )?dec(?:reas(?:e|es|ing))?s?|(?:inv )?(?:sc|hdc|dc)2tog"
    r"|(?:sc|hdc|dc) (?:next )?(?:2|two) (?:sts )?tog(?:ether)?)"
)
_UP = r"inc(?:reas(?:e|es|ing))?s?"
_WHERE = (
    r"(?:,? (?:evenly|around|across|all around|all the way around|as before|in this way|steadily"
    r"|in the same (?:way|manner)|in (?:each|every) (?:st|stitch|rnd|round|row)"
    r"|(?:each|every) (?:rnd|round|row)|spaced evenly))*"
)
_AFTER = (
    r"(?:\W+(?:and |then )*(?:fasten off|f\.?o|finish off|close|break|cut|leav(?:e|ing)|sew|join"
    r"|sl st|slip stitch|weave|stuff)\b.*)?"
)
_LINE = re.compile(
    rf"\W*{_ON}(?:(?P<down>{_DOWN})|(?P<up>{_UP})){_WHERE},? (?!to\b){COME_TO}{_AFTER}\W*"
)


def down_to(text: str) -> tuple[int, int]:
    """The count a whole line shapes to, and which way (-1, 1); zeros for other lines.

    How many rounds that takes, and where in them it is shaped, is left to the maker.
    """
    found = _LINE.fullmatch(" ".join(plain(text).split()))
    if found is None:
        return 0, 0
    return int(found["n"]), -1 if found["down"] else 1
