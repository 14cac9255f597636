"""Words of written instructions, by what they do in a sentence."""

from __future__ import annotations


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


#: Words of advice and finishing: a clause with one of them, and no stitch and no shaping
#: word in it, asks for nothing that is counted.
CRAFT = _words(
    """marker markers marking tail sew sewing sewn weave stuff stuffing tie tied tighten needle
    spiral strand strands knuckle wrap picture photo photos video method flat gently petals arms
    legs leg head back center centre facing holding hold hook size gauge desired larger smaller
    attach pin remove replace begin ensure draw drawing insert pull note notes see you your yoh
    yo loop through multiple multiples slip knot"""
)

#: Words that say how the stitches below are used.
SHAPING = _words(
    """sk skip miss omit omitting except unworked increase decrease increasing decreasing inc dec
    incs decs repeat rep repeating evenly straight unchanged even tog"""
)

#: Words that could change a count: a clause with one of them is never passed over.
WORKING = SHAPING | _words(
    """leave leaving same next until stitch stitches sts st sp space ch chain work corner first
    last times half between twice remaining around across together each every"""
)

#: Colours that yarn is named by.
COLOURS = _words(
    """white black red orange yellow green blue purple pink brown grey gray cream mc cc beige
    ivory gold silver teal navy tan natural moss clay"""
)

#: Words in a count's bracket that show it to be an aside or a measure.
NOT_COUNTED = _words(
    """cm mm inch inches in m yd size sizes rows row rnds rnd rounds round times more time hook
    made counts count measures next each repeat rep around from to approx approximately side"""
)

#: Words behind the figure of a count that only say that it is a total.
TOTAL = _words(
    "total in all altogether stiches stitchs s . rem remaining now remain left on of the"
)
