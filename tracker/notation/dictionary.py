"""The stitch dictionary: every stitch the reader knows, under its US name.

Takes, makes and the US/UK pairs are those of trade glossaries and yarn company leaflets
(the takes of "sc2tog over 3 sts" and the like are the pattern's own words' business):

- abbreviations: https://danceswithwools.net/2022/09/16/understanding-crochet-abbreviations/
  and https://trantor.is/content/rINLxlqbfRSKxBh1/Glossary.html
- UK pairs: https://cdn.shopify.com/s/files/1/1218/2756/files/Crochet_hook_yarn_and_stitch_conversions_metres_PDF_2.pdf
  and http://funcrochetdesigns.com/crochet/tuesday-crochet-tip-crochet-terms-by-country/
- chains a beginning chain needs: http://dummies.com/how-to/content/how-to-crochet-a-turning-chain.html
- extended, reverse and triple treble stitches, picot: common practice, no source
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from types import MappingProxyType

from tracker.notation.stitches import Stitch

#: US abbreviation, name, UK abbreviation, UK name, beginning chains.
_PLAIN = (
    ("sc", "single crochet", "dc", "double crochet", 1),
    ("hdc", "half double crochet", "htr", "half treble", 2),
    ("dc", "double crochet", "tr", "treble", 3),
    ("tr", "treble crochet", "dtr", "double treble", 4),
    ("dtr", "double treble crochet", "trtr", "triple treble", 5),
    ("trtr", "triple treble crochet", "qtr", "quadruple treble", 6),
)

#: Other spellings that writers use, by US abbreviation: (US spellings, UK spellings).
_SPELLINGS: Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    # A waistcoat stitch goes between the two legs of one: common practice, no source.
    "sc": (
        ("s c", "spike st", "spike stitch", "waistcoat st", "waistcoat stitch"),
        ("d c", "spike st", "spike stitch", "waistcoat st", "waistcoat stitch"),
    ),
    "hdc": (("h dc", "half double"), ("half treble crochet", "htc", "half tr")),
    "dc": (("d c", "double"), ("treble crochet", "t c")),
    "tr": (("trc", "treble", "triple", "triple crochet"), ("double treble crochet",)),
    "dtr": (("double treble", "dtrc"), ("ttr", "triple treble crochet")),
    "trtr": (("ttr", "triple treble"), ()),
}

_OTHERS = (
    Stitch("ch", "chain", 0, 0),
    Stitch("sl st", "slip stitch"),
    Stitch("esc", "extended single crochet"),
    Stitch("ehdc", "extended half double crochet"),
    Stitch("edc", "extended double crochet", height=3),
    Stitch("etr", "extended treble crochet", height=4),
    Stitch("hhdc", "herringbone half double crochet"),
    Stitch("wsc", "waistcoat stitch"),
    Stitch("fsc", "foundation single crochet", 0, 1),
    Stitch("rev sc", "reverse single crochet"),
    Stitch("inc", "increase", 1, 2),
    Stitch("dec", "decrease", 2, 1),
    Stitch("invdec", "invisible decrease", 2, 1),
    Stitch("cl", "cluster"),
    Stitch("bobble", "bobble"),
    Stitch("puff", "puff stitch"),
    Stitch("popcorn", "popcorn"),
    Stitch("shell", "shell", 1, 5),
    Stitch("v-st", "V stitch", 1, 2, spaces=(1,)),
    Stitch("crossed dc", "crossed double crochet", 2, 2),
    Stitch("picot", "picot", 0, 0),
)

_OTHER_SPELLINGS: Mapping[str, tuple[str, ...]] = {
    "sl st": (
        "slst",
        "ss",
        "slip stitch",
        "slipstitch",
        "sl stitch",
        "sl - st",
        "slip st",
        "sl",
        "sl . st",
    ),
    "esc": ("ext sc", "extended sc"),
    "hhdc": ("herringbone hdc", "hbhdc", "hb hdc", "herringbone half treble", "hhtr"),
    "wsc": ("waistcoat st", "center sc", "centre sc", "split sc"),
    "rev sc": ("reverse sc", "rsc", "crab st", "crab stitch"),
    "inc": ("increase", "incr"),
    "dec": ("decrease", "decr", "2 tog", "2 together", "2 sts tog", "2 sts together"),
    "invdec": (
        *("inv dec", "invisible decrease", "invisible dec", "inv decrease", "inv - dec"),
        *("idec", "invd", "i dec", "invis dec", "inv . dec"),
    ),
    "cl": ("cluster", "cluster st"),
    "bobble": (
        *("mb", "make bobble", "bo", "bob", "bbl"),
        *("bobble st", "bobble stitch", "bob st", "bob stitch"),
    ),
    "puff": ("puff st", "puff stitch", "ps"),
    "popcorn": ("pc", "pop", "po", "popcorn st", "popcorn stitch"),
    "shell": ("sh",),
    "v-st": ("v - st", "v st", "vst", "v stitch", "v - stitch"),
    "crossed dc": ("x dc", "cross dc", "crossed double crochet"),
    "picot": ("pic", "p"),
}

#: The stitches that can be worked round a post or closed together.
_POST_AND_TOGETHER = ("sc", "hdc", "dc", "tr", "dtr")
_MOST_TOGETHER = 9
_MOST_POSTS = 4
_MOST_INC = 5

UK_BY_US: Mapping[str, str] = MappingProxyType({us: uk for us, _, uk, _, _ in _PLAIN})

_UK_NAMES: Mapping[str, str] = MappingProxyType({us: name for us, _, _, name, _ in _PLAIN})


def _post(us: str, name: str, side: str) -> Stitch:
    word = {"fp": "front post", "bp": "back post"}[side]
    return Stitch(side + us, f"{word} {name}")


def _posts_together(us: str, name: str) -> Iterator[Stitch]:
    for side in ("fp", "bp"):
        post = _post(us, name, side)
        for n in range(2, _MOST_POSTS + 1):
            yield Stitch(f"{post.abbr}{n}tog", f"{post.name} {n} together", n, 1)


def _all() -> Iterator[Stitch]:
    for us, name, _, _, height in _PLAIN:
        yield Stitch(us, name, height=height)
        if us in _POST_AND_TOGETHER:
            yield _post(us, name, "fp")
            yield _post(us, name, "bp")
            yield from _posts_together(us, name)
            for n in range(2, _MOST_INC + 1):
                yield Stitch(f"{us}{n}inc", f"{n} {name} in one", 1, n)
            for n in range(2, _MOST_TOGETHER + 1):
                yield Stitch(f"{us}{n}tog", f"{name} {n} together", n, 1)
    yield from _OTHERS


#: Every stitch under its US name, with `Stitch.us` filled in.
STITCHES: Mapping[str, Stitch] = MappingProxyType(
    {stitch.abbr: stitch._replace(us=stitch.abbr) for stitch in _all()}
)


def base_of(us: str) -> str:
    """The plain stitch that a post, loop-only or together stitch is a kind of."""
    head = us.removesuffix("tog").removesuffix("inc").rstrip("0123456789")
    if head[:2] in ("fp", "bp"):
        head = head[2:]
    return head if head in UK_BY_US else us


def in_terms(us: str, terms: str) -> str:
    """The abbreviation of a US-named stitch in ``terms`` ("US" or "UK")."""
    if terms != "UK":
        return us
    plain = base_of(us)
    if plain not in UK_BY_US:
        return us
    at = us.find(plain) if us != plain else 0
    return us[:at] + UK_BY_US[plain] + us[at + len(plain) :]


@cache
def phrases(terms: str) -> Mapping[tuple[str, ...], str]:
    """Every way of writing a stitch (as words) and the US name of the stitch it means.

    In UK terms the words that occur only in US terms ("sc", "hdc") keep their meaning.
    """
    found: dict[tuple[str, ...], str] = {}
    if terms == "UK":
        for us in ("sc", "hdc"):
            _add_plain(found, us, us, (STITCHES[us].name,))
    for us, name, uk, uk_name, _ in _PLAIN:
        short, long = (uk, uk_name) if terms == "UK" else (us, name)
        more = _SPELLINGS.get(us, ((), ()))[terms == "UK"]
        _add_plain(found, us, short, (long, *more))
    for stitch in _OTHERS:
        for spelling in (stitch.abbr, *_OTHER_SPELLINGS.get(stitch.abbr, ())):
            _add(found, spelling, stitch.abbr)
    return MappingProxyType(found)


def _add(found: dict[tuple[str, ...], str], spelling: str, us: str) -> None:
    """One spelling and its plural."""
    words = tuple(spelling.split())
    found[words] = us
    last = words[-1]
    if last.isalpha() and not last.endswith("s"):
        found[(*words[:-1], last + "s")] = us
        if last.endswith("st"):
            found[(*words[:-1], last + "es")] = us


def _add_plain(
    found: dict[tuple[str, ...], str], us: str, short: str, longer: tuple[str, ...]
) -> None:
    """Every spelling of a plain stitch, round the post and closed together too."""
    spellings = (short, *longer)
    for spelling in spellings:
        _add(found, spelling, us)
        if spelling.endswith(" crochet"):
            _add(found, spelling + " stitch", us)
    if us not in _POST_AND_TOGETHER:
        return
    for side, word in (("fp", "front post"), ("bp", "back post")):
        for spelling in (
            side + short,
            short + side,
            f"{side} {short}",
            f"{word} {short}",
            *(f"{word} {name}" for name in longer),
            f"{side[0]} {side[1]} {short}",
            f"r{short}{side[0]}",
            *((f"rt{side[0]}",) if (us, short) == ("dc", "tr") else ()),
        ):
            _add(found, spelling, side + us)
        for n in range(2, _MOST_POSTS + 1):
            _add(found, f"{side}{short}{n}tog", f"{side}{us}{n}tog")
    found[(f"{short}inc",)], found[(f"{short}dec",)] = f"{us}2inc", f"{us}2tog"
    for n in range(2, _MOST_INC + 1):
        found[(f"{short}{n}inc",)] = f"{us}{n}inc"
    for n in range(2, _MOST_TOGETHER + 1):
        for spelling in (
            f"{short}{n}tog",
            *((f"{short}tog",) if n == 2 else ()),
            *(f"{name} {n} {word}" for name in spellings for word in ("tog", "together")),
        ):
            found[tuple(spelling.split())] = f"{us}{n}tog"


def find(abbr: str, terms: str = "US") -> Stitch | None:
    """The dictionary's stitch written ``abbr`` in ``terms``, named in the same terms.

    None where there is none. ``us`` and ``how`` of the stitch stay in US terms.
    """
    us = phrases(terms).get(tuple(abbr.lower().split()))
    if us is None:
        return None
    stitch = STITCHES[us]
    return stitch._replace(abbr=in_terms(us, terms), name=name_in(us, terms), how=_how(us))


def name_in(us: str, terms: str) -> str:
    """The name of a US-named stitch, spelt out in ``terms`` ("US" or "UK")."""
    base, name = base_of(us), STITCHES[us].name
    if terms != "UK" or base not in UK_BY_US:
        return name
    return name.replace(STITCHES[base].name, _UK_NAMES[base])


def _how(us: str) -> str:
    from tracker.notation.howto import how_to  # read only when somebody asks

    return how_to(us)
