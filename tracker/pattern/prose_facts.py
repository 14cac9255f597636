"""What a text says beside its rounds: terms, gauge, yarns, hook, sizes, copies, stitches."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from fractions import Fraction

from tracker.measure.gauge import read_ease
from tracker.notation.kit import NUMBER_WORDS
from tracker.notation.lexicon import Lexicon
from tracker.notation.tokens import plain
from tracker.pattern.load import (
    MOST_YARNS,
)
from tracker.pattern.model import Fit, Gauge, Yarn
from tracker.pattern.tables import LINE

_US = r"(?:u\.?s\.?a?\.?|american)"
_UK = r"(?:u\.?k\.?|british)"
_TERMS = r"(?:crochet\s+|stitch\s+)?(?:terms?|terminology|notation|abbreviations?|names?)"
_DECLARED = {
    "US": re.compile(
        rf"\b{_US}\s+{_TERMS}\b|\b{_TERMS}\s*(?:used|are|is|in|[:=(-])*\s*{_US}(?!\w)"
    ),
    "UK": re.compile(
        rf"\b{_UK}\s+{_TERMS}\b|\b{_TERMS}\s*(?:used|are|is|in|[:=(-])*\s*{_UK}(?!\w)"
    ),
}
#: Words that only one of the two systems has:
#: http://funcrochetdesigns.com/crochet/tuesday-crochet-tip-crochet-terms-by-country/
_ONLY = {
    "US": re.compile(r"\b(?:\d*sc\d*(?:tog)?|hdc\d*(?:tog)?|single crochets?|half double)\b"),
    "UK": re.compile(r"\b(?:\d*htr\d*(?:tog)?|half trebles?)\b"),
}
#: Words that stand for another stitch in the other system.
_BOTH = re.compile(r"\b(?:dc|tr|dtr|trtr|ttr)(?:\d+tog)?\b|\b(?:double|treble)\b")
_OTHER = {"US": "UK", "UK": "US"}


def terms_of(text: str, rounds: str) -> tuple[str, str]:
    """``("US" or "UK", warning)``; the warning is "" where the text leaves no doubt.

    What the text declares goes first, then the words of its rounds.
    """
    low, words = plain(text), plain(rounds)
    declared = [terms for terms, pattern in _DECLARED.items() if pattern.search(low)]
    used = [terms for terms, pattern in _ONLY.items() if pattern.search(words)]
    if len(declared) == 1:
        terms = declared[0]
        if used == [_OTHER[terms]]:
            return terms, f"it says {terms} terms, but its rounds have words of {used[0]} terms"
        return terms, ""
    if len(used) == 1:
        return used[0], ""
    if used:
        return "US", "its rounds have words of US and of UK terms: taken as US"
    if _BOTH.search(words):
        return (
            "US",
            "nothing says whether its terms are US or UK, and the words fit both: taken as US",
        )
    return "US", ""


_FIGURE = r"\d+(?:\.\d+|\s+\d/\d|/\d)?"
_GAUGE = re.compile(
    rf"(?P<stitches>{_FIGURE})\s*(?P<kind>[a-z][a-z -]{{0,24}}?)\s*(?:,|and|&|x|by|/|\+)\s*"
    rf"(?P<rounds>{_FIGURE})\s*(?:rows?|rounds?|rnds?|r)\b(?P<middle>[^.;]{{0,60}}?)"
    rf"(?:=|\bto\b|\bover\b|\bper\b|\bmeasures?\b|\bmake\b|\bin\b(?=\s*(?:a\s+)?\d)|\bis\b)\s*(?:a\s+)?"
    rf"(?P<over>{_FIGURE}\s*(?:cm|mm|in\b|inch(?:es)?|\"))"
)
_STITCH_IN = re.compile(r"\b(?:in|of|over)\s+(?P<kind>[a-z][a-z -]{1,24}?)\b(?=[\s.,;)]|$)")
_HOOK = re.compile(r"(\d{1,2}(?:\.\d{1,2})?)\s*mm\b")


def gauge_of(lines: Sequence[str], hook: str, lexicon: Lexicon) -> Gauge | None:
    """The gauge, where one sentence gives stitches, rounds and a length."""
    for line in lines:
        low = plain(line)
        match = _GAUGE.search(low)
        if match is not None:
            rest = match["middle"] + low[match.end() :]
            kinds = (match["kind"], *(m["kind"] for m in _STITCH_IN.finditer(rest)))
            named = next((kind for kind in kinds if _is_stitch(kind, lexicon)), "st")
            own = _HOOK.search(rest)
            return Gauge(
                stitch=named,
                stitches=_fraction(match["stitches"]),
                rounds=_fraction(match["rounds"]),
                over=" ".join(match["over"].split()),
                hook=f"{own[1]} mm" if own else hook,
            )
    return None


_FIT = re.compile(
    r"^Fit: the (?P<around>stitches|rows) of (?P<part>.+?) go round (?:it|the (?P<on>.+?)) with "
    r"(?:no ease|(?P<ease>.+?) of ease)\.$"
)


def fit_of(lines: Iterable[str], parts: Sequence[str]) -> Fit | None:
    """What goes round what, where a line says it as this program writes it."""
    for line in lines:
        match = _FIT.match(line.strip())
        if match is None or match["part"] not in parts:
            continue
        fit = Fit(match["part"], match["on"] or "", match["ease"] or "", match["around"])
        with suppress(ValueError):
            read_ease(fit.ease or "0 cm")
            return fit
    return None


def _is_stitch(kind: str, lexicon: Lexicon) -> bool:
    return tuple(kind.split()) in lexicon.phrases


def _fraction(figure: str) -> Fraction:
    """A figure such as "14", "14.5", "14 1/2" or "1/2", exactly."""
    parts = [p for p in figure.split() if not p.endswith("/0")]
    return sum((Fraction(p) for p in parts), Fraction(0)) or Fraction(1)


def hook_of(lines: Iterable[str]) -> str:
    """The hook's size ("4 mm") from the first line that speaks of a hook; "" for none."""
    for line in lines:
        low = plain(line)
        match = _HOOK.search(low)
        if match is not None and "hook" in low:
            return f"{match[1]} mm"
    return ""


_LETTER_FIRST = re.compile(
    r"^(?:(?:yarn|(?:main |contrast(?:ing)? )?colou?r)\s+)?"
    r"\(?(?P<letter>[A-Z]|MC|CC\d?)\)?\s*[:=–—-]\s*(?P<name>.+)$",
    re.IGNORECASE,
)
_LETTER_LAST = re.compile(
    r"^(?P<name>.+?)\s*\((?:(?:yarn|colou?r)\s+)?(?P<letter>[A-Z]|MC|CC\d?)\)"
)
_YARN = re.compile(
    r"\b(?:yarn|cotton|wool|acrylic|dk|worsted|aran|chunky|bulky|fingering|sport|4[ -]ply|linen"
    r"|alpaca|thread)\b",
    re.IGNORECASE,
)
_COLOUR = re.compile(r"\bin\s+([a-z][a-z -]{2,20}?)(?=[,.;(]|$)", re.IGNORECASE)
_LEAD_WORD = re.compile(
    r"^(?:yarns?|materials?|you will need)(?: used)?\s*[:–—-]\s*", re.IGNORECASE
)


def yarns_of(lines: Iterable[str]) -> tuple[Yarn, ...]:
    """The yarns a list of materials names; one without a letter gets the next free one."""
    found: list[Yarn] = []
    for line in lines:
        words = _LEAD_WORD.sub("", line.strip(" *•")).rstrip(". ")
        match = _LETTER_FIRST.match(words) or _LETTER_LAST.match(words)
        if match is None and not (_YARN.search(words) and "needle" not in words.lower()):
            continue
        name = match["name"] if match else words
        used = {yarn.letter for yarn in found}
        letter = match["letter"].upper() if match else _free(used)
        if letter and letter not in used and name.strip():
            colour = _COLOUR.search(name)
            told = colour[1].strip() if colour else ""
            found.append(Yarn(letter, name.strip().removesuffix(f" in {told}")[:LINE], told))
    return tuple(found[:MOST_YARNS])


def _free(used: set[str]) -> str:
    return next((c for c in "ABCDEFGHIJKLMNOPQRSTUVWXYZ" if c not in used), "")


#: Letters of a size's name: "Newborn to 3 months", "Women's medium".
_LONGEST_SIZE = 24
_SIZES_LEAD = re.compile(r"^.*?\b(?:sizes?|to fit)\b[^:–—-]*[:–—-]\s*", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*[(\[,;/)\]]+\s*|\s+(?:and|or)\s+|\s+-\s+")


#: "Women's S/M (L)" names two.
_IN_BRACKETS = re.compile(r"\s*[(\[,;)\]]+\s*")


def _said_of_sizes(lines: Iterable[str]) -> Iterator[str]:
    """What may name the sizes: each line, and the first sentence of one that leads to them."""
    for line in lines:
        words, led = _SIZES_LEAD.subn("", line, count=1)
        yield words.rstrip(" .")
        # "S (M, L) – to fit 50 (54, 58) cm": what stands behind is how large they are
        large = _HOW_LARGE.split(words, maxsplit=1)
        if led or len(large) > 1:
            yield large[0].rstrip(" .,")


_HOW_LARGE = re.compile(r"\.\s|\s[–—-]\s|[,;:]?\s+to fit\b|;|\s+(?=[({\[]?\d+ ?(?:cm|in|mo))")


def sizes_of(lines: Iterable[str], count: int) -> tuple[str, ...]:
    """Names of ``count`` sizes: "S (M, L)"; empty where no line names just so many."""
    for words in _said_of_sizes(lines):
        for between in (_BETWEEN, _IN_BRACKETS):
            names = [name.strip(" .") for name in between.split(words)]
            names = [name for name in names if name]
            short = all(len(name) <= _LONGEST_SIZE for name in names)
            if short and len(names) == count and len(set(names)) == count:
                return tuple(names)
    return ()


_MAKE = re.compile(
    r"\b(?:make|work|crochet|need)\s+(?:a\s+total\s+of\s+)?(?P<n>\d{1,4}|[a-z]+)\b"
    r"(?!\s*(?:more\s+)?(?:sts?|stitch|rounds?|rnds?|rows?|ch|sc|dc|tr|hdc|htr|cm|inch|size))",
    re.IGNORECASE,
)
_TIMES = re.compile(
    r"[(\[]?\s*(?:[x×]\s*(?P<after>\d{1,3})|(?P<before>\d{1,3})\s*[x×])\s*[)\]]?\s*:?$"
)


def copies_of(words: str, *, heading: bool) -> int:
    """How many copies words such as "Ear (make 2)" ask for; 0 where they do not say.

    "x 3" stands at the end of a heading; elsewhere it may be of stitches, but for alone.
    """
    match = _MAKE.search(words)
    figure = match["n"].lower() if match else ""
    times = _TIMES.search(words) if heading else _TIMES.fullmatch(words.strip())
    if not figure and times is not None:
        figure = times["after"] or times["before"]
    number = int(figure) if figure.isdigit() else NUMBER_WORDS.get(figure, 0)
    return number if number <= 1_000 else 0


_BRACKET = re.compile(
    r"\s*[(\[]([^()\[\]]*\b(?:make|work|crochet)\b[^()\[\]]*)[)\]]", re.IGNORECASE
)
_COPIES = re.compile(
    r"\b(?:make|work|crochet)\s+(?:a total of\s+)?(?:\d+|[a-z]+)\b"
    r"(?:\s+(?:alike|of these|the same))?",
    re.IGNORECASE,
)


def _beside_copies(match: re.Match[str]) -> str:
    """What a bracket in a heading says beside the copies: "in white" of "(make 2, in white)"."""
    rest = _COPIES.sub("", match[1], count=1).strip(" ,;:-")
    return f" ({rest})" if any(c.isalpha() for c in rest) else ""


def name_of(heading: str) -> str:
    """A part's name without what it says of copies: "Ear" of "EAR (make 2):".

    Nor how it is worked, which is `aside_of` the heading.
    """
    name = _BRACKET.sub(_beside_copies, heading.strip(" *:_–—-"))
    name = _ASIDE.sub("", name)
    for pattern in (
        r"\s*[:,–—-]?\s*\b(?:make|work)\s+(?:\d+|[a-z]+)(?:\s+(?:alike|the same))?\s*$",
        rf"\s*[:,–—-]?\s*\b(?:make|work)\s+(?:\d+|{'|'.join(NUMBER_WORDS)})(?=\s*[(–—,-])",
        r"\s*[(\[]?\s*(?:[x×]\s*\d{1,3}|\d{1,3}\s*[x×])\s*[)\]]?\s*$",
        r"\s*[(\[]\s*\d{1,3}\s*[)\]]\s*$",
    ):
        name = re.sub(pattern, "", name, flags=re.IGNORECASE)
    name = " ".join(name.strip(" :,–—-").split())[:LINE]
    return name.capitalize() if name.isupper() and len(name) > 3 else name


#: A bracket behind a name that tells how the part is worked: too long for a name.
_ASIDE = re.compile(r"\s+\((?P<aside>[^()]{13,}|[^()]*\bhook\b[^()]*)\)$", re.IGNORECASE)


def aside_of(heading: str) -> str:
    """What a heading tells in a bracket behind the name: "worked sideways in rows"; or ""."""
    name = _BRACKET.sub(_beside_copies, heading.strip(" *:_–—-"))
    aside = _ASIDE.search(name)
    return "" if aside is None else aside["aside"].strip()


#: What a part may say of itself before its first round, a sentence each.
_OF_PART = (
    ("worked", re.compile(r"worked in (?:a )?(joined rounds|spiral|rows)\.\s*", re.IGNORECASE)),
    ("hook", re.compile(rf"hook: ({_FIGURE} mm)\.\s*", re.IGNORECASE)),
    ("below", re.compile(r"worked into (\d+(?: \(\d+(?:, \d+)*\))?) sts\.\s*", re.IGNORECASE)),
    ("choose", re.compile(r"choose one ([a-z][a-z -]{0,30}):[^.:]+\.\s*", re.IGNORECASE)),
)


def facts_of_part(words: str) -> tuple[dict[str, str], str]:
    """``(facts, the other words)``: the sentences at the start that the keys of a part hold."""
    found: dict[str, str] = {}
    while True:
        for key, pattern in _OF_PART:
            match = pattern.match(words)
            if match is not None and key not in found:
                found[key] = match[1]
                words = words[match.end() :]
                break
        else:
            return found, words
