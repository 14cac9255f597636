"""What makers say in sentences, put into the words of a pattern: "keep doing this until …"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tracker.notation.tokens import Token, Type, plain

_THIS = r"(?:this|that|so|these (?:steps|stitches)|the same(?: thing)?)"
#: What stands behind "do this" where it asks for a repeat.
_HOW_OFTEN = (
    r"(?=,? (?:another |a total of |for |until |till |all |around|round|across|in |into |to "
    r"|\d+ (?:more )?times|(?:once|twice|two|three|four|five|six|seven|eight|nine|ten)\b))"
)
_YOU = r"(?:(?:you(?:'re|'ve|'ll)?|we(?:'re|'ve)?|the) )?(?:(?:are|have|will be) )?"
_START = (
    r"(?:the )?(?:very )?(?:start|beginning|starting (?:point|place|stitch)"
    r"|(?:place |point |spot |stitch )?where (?:you|we|it|the round) (?:started|began|begun)"
    r"|first (?:st|stitch|petal|one))(?! ?-?(?:ch|chain|chains)\b)"
)
_UNTIL_BACK = (
    rf"(?:until|till|'til) {_YOU}(?:(?:get|got|come|came|arrive|reach|meet|be|been|work|worked"
    rf"|make it|end up) )?(?:all the way )?(?:(?:back|around|round) )*(?:again )?"
    rf"(?:(?:to|at) )?{_START}(?: again| of (?:the|this) (?:round|rnd|row|circle))?"
)
_BACK = rf"(?:all the way )?back (?:around |round )?to {_START}(?= again|[ .,;)*]|$)"
_PIECE = (
    r"(?: the (?:(?:entire|whole|outer|outside) )?"
    r"(?:circle|centre|center|flower|edge|outside|square|motif|work|piece|disc|disk|oval|blanket"
    r"|rug|coaster|towel|shawl|cloth|hat|bag|brim|mat))?"
)
_UNTIL_ROUND = (
    rf"until {_YOU}(?:gone|worked|been|made it|go|get|work) (?:all |right )?(?:the way )?"
    rf"(?:around|round){_PIECE}"
)
_ALL_ROUND = (
    rf"(?:all|the whole|right) (?:the )?way (?:around|round){_PIECE}(?! (?:of )?(?:the|each|ea)\b)"
)
_ALL_ALONG = (
    r"all the way (?:down|along|across|back|up)(?: (?:to|till|until) the (?:very |other )?"
    r"(?:end|beginning|start|slip knot))?(?: of the (?:chain|row))?"
    r"(?! (?:in|on|the|of)\b| to (?!(?:the )?last\b))"
)
_ALL_STITCHES = (
    r"(?P<how>around|across|along) all (?:of )?(?:the |your |these )?\d+ (?:sts|stitches|sc|dc)\b"
)
_YOUR_WAY = (
    r"work(?:ing)? your way (?:all the way )?(?:around|round|along|across)"
    rf"(?: the (?:row|round|rnd)|{_PIECE}),? (?:with|by|making|working|doing)(?: making| working)?"
)
_CLOSE_BY = (
    r"close (?:up )?(?:off )?(?:the )?(?:top|hole|opening|end|bottom|piece|gap|ball|head|body)"
    r" (?:up )?(?:by|with) (?=(?:decreas|dec\b|sc2tog|inv))"
)
_STITCH = (
    r"(?:sc|hdc|dc|tr|sts?|stitch(?:es)?|single crochets?|double crochets?|half double crochets?)"
)
_MAKING = r"(?:working|crocheting|making|doing|putting|placing|inserting)"
_WHERE = (
    r"(?: (?:sts?|stitch|place|loop|sc|hdc|dc|of|from|on|the|and|last|first|both|each|end|ends|side"
    r"|sides|below|previous|next|(?:row|rnd|round)(?: \d+)?))*"
)
_OVER = r"(?=\s*(?:[.;,()\[\]=:-]|$)| (?:for|to make|so|making|giving)\b)"
#: An increase or a decrease whose place is told, and then how it is made.
_HOW_INC = (
    rf"inc(?:s|rease|reases|reasing)? [^.;,(\[]{{1,60}}?(?P<drop> by (?:{_MAKING} )?(?:{_STITCH} )?"
    rf"(?:2|two) (?:{_STITCH} )?(?:together )?(?:in|into|in to) (?:the |a )?"
    rf"(?:same|one|1|each|single|that|first|it)\b{_WHERE}){_OVER}"
)
_HOW_DEC = (
    rf"dec(?:s|rease|reases|reasing)? [^.;,(\[]{{1,60}}?(?P<drop> by (?:{_MAKING} )?(?:{_STITCH} )?"
    rf"(?:the )?(?:next |first |last )?(?:2|two) (?:{_STITCH} )?(?:together|tog|as one|at once)\b"
    rf"{_WHERE}| by (?:skipping|missing|omitting) (?:one|1|a) {_STITCH}){_OVER}"
)
_ENDS = r"(?=\s*(?:[.,;(\[=]|$))"
_BEHIND = r"(?:behind|for|by|in|into|through)"
_WALL = r"(?:half-?\s?loops?|walls?)(?: only)?(?: of (?:the |each )?(?:loops?|stitch(?:es)?|sts?))?"
#: "make a buttonhole by chaining 2": what is made so is told behind it.
_THING_BY = (
    r"(?:make|create|leave|form|work|making|creating|leaving|forming) (?:a|an|the|your) "
    r"(?!dec|inc)(?:[a-z]+ ){1,5}?by (?=(?:chain|mak|work|skip|miss|crochet|ch\b|sc\b))"
)
#: "for the toes work *1 sc, bobble*"
_FOR_THING = (
    r"for (?:the|your|each of the) (?!next|last|first|following|rest|remain|entire|whole|round|row)"
    r"[a-z]+(?: [a-z]+)?[,:]? (?=(?:now )?(?:work|make|do|crochet) (?:[*(\[\d]|an? |one |two ))"
)
#: "in this round we'll increase six times: 2 sc, inc": how is told behind the colon.
_ANNOUNCED = (
    r"(?:(?:in|on|for) )?(?:this|the next) (?:round|row|rnd),? (?:you|we)(?:'ll| will| are going to"
    r"|'re going to|'re)? (?:be )?(?:increas|decreas|mak|add)\w*[^.:;,()*\[\]]*:"
    r"(?=.*\b(?:2|two|3|three|inc|dec|increases?|decreases?|tog|[a-z]+2tog)\b.*[a-z])"
)
#: "and again, this time with 2 sc between: (2 sc, dec) x 6"
_AS_BEFORE = (
    r"(?:(?:and )?(?:again|once more|the same again),? (?:but )?this time with"
    r"|(?:decrease|increase) (?:in )?the same way (?:as )?(?:you|we) (?:increased|decreased))"
    r"[^.:;()*\[\]]*:(?=.*\b(?:inc|dec|increase|decrease|tog|[a-z]+2tog)\b)"
)
_SLIP_INTO = (
    r"slip (?=(?:in|into|to) (?:(?:the|any|each|next|first|same|last|a) )*"
    r"(?:st|sc|dc|hdc|tr|ch|sp|loop))"
)
_LAST_TWO = r"last (?:two|2)(?: sts| stitches)?,? (?P<drop>which you (?:work|crochet|sc) together)"
_SO_MANY_NOW = (
    r"(?:so|and|then)(?: that)? (?:the|your|our) (?:total|stitch count|count|number of stitches)"
    r"(?: now)? (?:becomes|is|will be|should be|comes to|goes up to) (?=\d)"
)
_IN_THE_END = (
    r"(?:(?:at|in|by) the end|when (?:you're |you are )?(?:done|finished)|after this (?:round|row)"
    r"),? (?=you(?:'ll|'ve| will| should| now| have)\b)"
)
_ONE_AFTER = (
    r"the (?:one|stitch|st) (?:right |directly )?after(?: (?:that|it|this)(?: one)?)?"
    r"(?=\s*(?:[.,;:)]|$)|\s+and\b)"
)
_DONE = (
    r"(?:and )?(?:then )?(?:you're|you are|we're|we are|you'll be) (?:all )?"
    r"(?:done|finished|ready)(?: with [a-z ]{1,30})?(?=\s*(?:[.;(\[]|$))"
)
#: What is said -> how a pattern says it; "" for words that ask for nothing.
_SAYINGS: tuple[tuple[str, str], ...] = (
    (r"when (?:this|the) (?:row|round|rnd) is (?:completed?|done|finished)", ""),
    (r"and so on|keep going", "repeat"),
    (
        r"keep repeating(?: (?:this|that|these|it)(?! (?:[a-z0-9]+ )?r(?:ows?|nds?|ounds?)\b))?",
        "repeat",
    ),
    (r"(?:continue|carry on|go on|resume)(?: working)? from r(?:ow|nd|ound) \d+(?=[.:;]|$)", ""),
    (rf"(?:keep(?: on)?|continue|carry on|go on) doing {_THIS}", "repeat"),
    (r"(?:keep on|keep going|carry on|go on|continue on) (?:like (?:this|that|so)|so)", "repeat"),
    (r"(?:carry|go) on (?:in )?(?:this|that|the same) (?:way|manner|fashion)", "repeat"),
    (rf"(?:now )?do {_THIS}{_HOW_OFTEN}", "repeat"),
    (r"repeat this process|repeat (?:all of )?(?:this|that) (?:all )?over again", "repeat"),
    (r"carry on", "continue"),
    (_UNTIL_BACK, "around"),
    (_BACK, "around"),
    (_UNTIL_ROUND, "around"),
    (_ALL_ROUND, "around"),
    (_ALL_ALONG, "across"),
    (r"work(?:ing)? (?=from \*)", "repeat"),
    (_THING_BY, ""),
    (_FOR_THING, ""),
    (_ANNOUNCED, ""),
    (_SO_MANY_NOW, "making"),
    (_DONE, ""),
    (r"so (?=(?:work|make|do|crochet|put|sc|hdc|dc)\b)", ""),
    (r"(?:,? )?(?:too|as well|likewise)(?=\s*(?:[.;,(\[]|$))", ""),
    (r"(?:sts?|stitch) (?P<drop>back) (?=(?:into|in|to) )", ""),
    (r"that'?s (?=\d+\b)", "total"),
    (_SLIP_INTO, "ss"),
    (r"but (?=(?:change|switch|swap) )", "."),
    (_LAST_TWO, "dec"),
    (r"start with (?=(?:an? )?(?:inc|dec))", ""),
    (_AS_BEFORE, ""),
    (r"times (?P<drop>over)(?=\s*(?:[.,;(\[]|$))", ""),
    (r"\d+(?: sts| stitches)?(?P<drop>,? (?:right|okay|ok|correct)\s*\?)", "."),
    (_IN_THE_END, ""),
    (_ONE_AFTER, "next"),
    (r"(?:have|had|has|are) \d+\b[^.]* each (?P<drop>of (?:them|these|those))\b", "stitch"),
    (_ALL_STITCHES, ""),
    (_YOUR_WAY, "work"),
    (_CLOSE_BY, ""),
    (rf"(?:inc|increase|dec|decrease) by (?={_MAKING} (?:1|one|2|two)\b)", ""),
    (_HOW_INC, ""),
    (_HOW_DEC, ""),
    (r"(?:form|fro|fom|frm)(?= (?:the )?(?:hook|hk)\b|\s*\*)", "from"),
    # as translations say it (common practice, no source)
    (r"in a circle", "around"),
    (rf"(?:sc|hdc|dc) (?P<drop>(?:over|on|upon) (?:the )?(?:sc|hdc|dc)){_ENDS}", "around"),
    (r"(?:each and every|each of every|every single)(?= )", "each"),
    (rf"{_BEHIND} the back {_WALL}", "blo"),
    (rf"{_BEHIND} the front {_WALL}", "flo"),
    (r"ring of amigurumi", "ring"),
    (r"this we repeat", "repeat"),
    (r"dial(?= \d)", "make"),
)
_IN_WORD = re.compile(r"[\w'-]")
_PATTERNS = tuple(
    (re.compile(rf"(?:{saying})(?:\b|(?<=[\s:?]))".replace(" ", r"\s+")), meant)
    for saying, meant in _SAYINGS
)


def plainly(text: str, tokens: list[Token]) -> list[Token]:
    """The tokens with what is said in a sentence put as a pattern puts it; offsets are kept."""
    for start, end, meant in _said(plain(text)):
        inside = [i for i, t in enumerate(tokens) if start <= t.start and t.end <= end and t.text]
        if inside:
            first, last = inside[0], inside[-1]
            type_ = Type.SIGN if meant == "." else Type.WORD
            word = Token(type_, meant, tokens[first].start, tokens[last].end)
            tokens = [*tokens[:first], *([word] if meant else ()), *tokens[last + 1 :]]
    return tokens


def _whole(pattern: re.Pattern[str], low: str) -> Iterator[re.Match[str]]:
    """The matches that begin with a word.

    Looked at here, as a pattern that begins with a letter is searched for much faster.
    """
    at = 0
    while (match := pattern.search(low, at)) is not None:
        start = match.start()
        if start and _IN_WORD.match(low, start - 1):
            at = start + 1
        else:
            yield match
            at = max(match.end(), start + 1)


def _said(low: str) -> Iterator[tuple[int, int, str]]:
    """Where a saying stands, and what it means; "" for what only fills."""
    taken: list[tuple[int, int]] = []
    for pattern, meant in _PATTERNS:
        for match in _whole(pattern, low):
            begin, end = match.span("drop" if "drop" in match.groupdict() else 0)
            if not any(begin < b and a < end for a, b in taken):
                taken.append((begin, end))
                yield begin, end, match.groupdict().get("how") or meant
