"""Brackets that only tell what was made, or what a round begins with."""

from __future__ import annotations

import re

_NTH = (
    r"(?:\d?(?:1st|2nd|3rd|\dth)|first|second|third|fourth|next|last|beg|beginning|starting|begin"
    r"|(?:first |1st )?half(?: of)?(?: an?| the)?)"
)
#: What was made, in a bracket behind it: "(first corner made)", "(corner)".
_TOLD = re.compile(
    rf"[(\[{{] *(?:= ?|this (?:forms|makes|is) )?(?:the |a )?{_NTH}? ?"
    r"(?:corner|petal|loop|point|side|leaf|arch|scallop|group|space|sp|cluster)s?"
    r"(?: (?:is |now )*(?:made|formed|completed?|done))? *[)\]}]"
)
#: "(the first dc is replaced by 3 ch)": what the round begins with.
_FIRST = r"(?:first|1st|beginning) [a-z]+(?: [a-z]+)?"
_CHAINS = r"(?:the |a )?(?:\d+ ?-?ch(?:ains?)?|ch(?:ain)? ?-?\d+|\d+ chain stitch(?:es)?)"
_REPLACED = re.compile(
    rf"[(\[{{] *(?:replac(?:e|ing) (?:the |each )?{_FIRST} (?:with|by) "
    rf"|(?:the )?{_FIRST}(?: (?:of|in) (?:each|every|the) (?:round|rnd|row))? (?:(?:is|always) )*"
    rf"(?:replaced|made|worked|substituted|formed) (?:with|by|as|from) ){_CHAINS}[ .]*[)\]}}]"
)
#: "(base of next shell)": what stands on the chain that is worked into.
_BASE = re.compile(r"[(\[{] *(?:(?:this|which) is |at |in )?(?:the )?base of [^()\[\]{}]*[)\]}]")


def only_tells(low: str) -> bool:
    """Whether a bracket, in lower case, asks for nothing: it tells what the words before made."""
    return bool(_TOLD.fullmatch(low) or _BASE.fullmatch(low) or _REPLACED.fullmatch(low))
