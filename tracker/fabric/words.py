"""What a step says: the stitch and where it goes, in the pattern's own terms."""

from __future__ import annotations

from tracker.notation.dictionary import STITCHES, in_terms, name_in
from tracker.notation.stitches import Stitch
from tracker.notation.tree import At, Make, Target

_FIXED = {
    At.RING: "in the ring",
    At.SKIPPED: "in the stitch passed over",
    At.BELOW: "in the round further down",
    At.EDGE: "along the edge",
}
_NTH = {1: "1st", 2: "2nd", 3: "3rd"}


def step_text(stitch: Stitch, terms: str) -> str:
    """The stitch as a maker would say it: "hdc", "sc2tog", a special stitch's own name."""
    return (
        in_terms(stitch.us, terms)
        if stitch.us in STITCHES and stitch.abbr == stitch.us
        else stitch.abbr
    )


def step_name(stitch: Stitch, terms: str) -> str:
    """The stitch spelt out, in the pattern's own terms."""
    dictionary = stitch.us in STITCHES and stitch.name == STITCHES[stitch.us].name
    return name_in(stitch.us, terms) if dictionary else stitch.name


def where_words(node: Make, loop: str, terms: str, ringed: bool, in_place: bool) -> str:
    """Where one of the node's stitches goes: "in the next st", "in the ring"."""
    target = node.target
    if in_place:
        return "in the same place"
    if target is None or (ringed and target.at is not At.HOOK):
        if ringed:
            return "in the ring"
        takes = node.stitch.takes
        where = "the next st" if takes <= 1 else f"the next {takes} sts"
        return _led(node, where, loop, over=takes > 1)
    if target.at is At.HOOK:
        return target_words(target, terms)
    if target.at in _FIXED or target.at is At.SAME:
        return target_words(target, terms)
    if target.kind == "tch":
        return "in the top of the turning chain"
    takes = node.stitch.takes
    which = _which(target)
    if takes > 1:
        return _led(node, f"the {which} {takes} {kind_words(target.kind, terms)}s", loop, over=True)
    article = "" if which == "any" else "the "
    return _led(node, f"{article}{which} {kind_words(target.kind, terms)}", loop, over=False)


def target_words(target: Target, terms: str) -> str:
    """Where a group goes, or a stitch of no loop: "in the next ch-2 sp", "in the ring"."""
    if target.at is At.HOOK:
        return f"in the {_NTH.get(target.nth, f'{target.nth}th')} ch from the hook"
    if target.at is At.SAME:
        return f"in the same {kind_words(target.kind, terms)}"
    if target.at in _FIXED:
        return _FIXED[target.at]
    article = "" if target.at is At.ANY else "the "
    return f"in {article}{_which(target)} {kind_words(target.kind, terms)}"


def _which(target: Target) -> str:
    """Whether a single place is the first, the last or any; of several each is the next."""
    if target.count is not None and target.count != (1,):
        return "next"
    return {At.FIRST: "first", At.LAST: "last", At.ANY: "any"}.get(target.at, "next")


def kind_words(kind: str, terms: str) -> str:
    """A kind of place in words: "st", "ch-2 sp", "corner"."""
    if kind in ("sp", "ch", "corner") or kind.endswith("sp"):
        return {"sp": "space"}.get(kind, kind)
    plain = {"st": "st", "st+ch": "st", "st+sp": "st", "lone": "single st", "middle": "middle st"}
    return plain.get(kind) or in_terms(kind, terms)


def _led(node: Make, where: str, loop: str, over: bool) -> str:
    if node.stitch.us[:2] in ("fp", "bp") and node.stitch.us in STITCHES:
        return f"round {where}"
    if loop:
        return f"in the {loop} of {where}"
    return f"over {where}" if over else f"in {where}"
