"""How likely one word came of another by a slip: of the keys, of a scanner, of a machine.

Nothing here is measured: which slips are common is common practice, no source. What is
taken for a slip is only tried, and stands or falls by the count of its round.
"""

from __future__ import annotations

from functools import cache

from tracker.notation.wordlists import MENDED

#: A slip as they happen, one that may be, and one that only shows that a word is in doubt.
LIKELY, POSSIBLE, FAR = 1, 2, 3
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_SPOTS = {letter: (x, y) for y, row in enumerate(_ROWS) for x, letter in enumerate(row)}
#: Letters that scanned print takes for one another, and pairs that look like one letter.
_ALIKE = frozenset(
    map(frozenset, ("il", "lt", "it", "lj", "ce", "co", "eo", "ao", "uv", "un", "nh", "bh", "vy"))
)
_PAIRS = (("rn", "m"), ("cl", "d"), ("vv", "w"), ("nn", "m"), ("in", "m"), ("ni", "m"), ("li", "h"))
#: A shorter word is too easily another word.
_SHORT = 3
#: A word so long is hardly another word with any one letter changed.
_LONG = 6
#: Words that are likely to be meant, and likely parts of those that are run together.
COMMON = frozenset(MENDED).union(
    ("sc", "hdc", "dc", "tr", "htr", "inc", "dec", "invdec", "sl", "slst", "incs", "decs"),
    ("sc2tog", "hdc2tog", "dc2tog"),
)
_VOWELS = frozenset("aeiouy")


@cache
def slip(word: str, meant: str) -> int:
    """How far ``word`` is from ``meant``: 0 where no single slip leads there."""
    longer = len(word) - len(meant)
    if word == meant or longer < -1:
        return 0
    if longer == 0:
        return _changed(word, meant)
    if longer == -1:
        return _lost(word, meant) or _looks_like(word, meant)
    found = _added(word, meant) or _looks_like(word, meant) if longer == 1 else 0
    return found or _filled(word, meant)


def _changed(word: str, meant: str) -> int:
    """Two letters exchanged, or one changed."""
    at = _first_apart(word, meant)
    if word[at : at + 2] == meant[at : at + 2][::-1] and word[at + 2 :] == meant[at + 2 :]:
        return LIKELY
    if word[at + 1 :] != meant[at + 1 :] or (word[at].isdigit() and meant[at].isdigit()):
        return 0  # another figure is no slip of a letter
    if _near(word[at], meant[at]) or frozenset((word[at], meant[at])) in _ALIKE:
        return LIKELY
    return POSSIBLE if len(meant) >= _LONG else FAR


def _lost(word: str, meant: str) -> int:
    """A letter left out."""
    at = _first_apart(word, meant)
    if word[at:] != meant[at + 1 :] or len(word) < 2:
        return 0
    return LIKELY if len(meant) >= _SHORT else FAR


def _added(word: str, meant: str) -> int:
    """A letter typed twice, or one that lies beside those next to it."""
    at = _first_apart(word, meant)
    if word[at + 1 :] != meant[at:]:
        return 0
    beside = meant[max(0, at - 1) : at + 1]
    if any(word[at] == letter or _near(word[at], letter) for letter in beside):
        return LIKELY
    return POSSIBLE if len(meant) >= _SHORT else FAR


def _looks_like(word: str, meant: str) -> int:
    """Two letters printed so close that they look like one, or the other way round."""
    both = (*_PAIRS, *((b, a) for a, b in _PAIRS))
    return LIKELY if any(a in word and word.replace(a, b, 1) == meant for a, b in both) else 0


def _filled(word: str, meant: str) -> int:
    """A shortening that was made a word by adding vowels: "seek" for "sk"."""
    return POSSIBLE if vowelless(meant) and _bare(word) in (meant, meant[0] + meant) else 0


def vowelless(word: str) -> bool:
    """Whether a word is a shortening that has no vowels."""
    return len(word) > 1 and _VOWELS.isdisjoint(word)


@cache
def _bare(word: str) -> str:
    """A word without its vowels."""
    return "".join(letter for letter in word if letter not in _VOWELS)


def _first_apart(word: str, other: str) -> int:
    """Index of the first letter in which they differ."""
    pairs = enumerate(zip(word, other, strict=False))
    return next((i for i, (a, b) in pairs if a != b), min(len(word), len(other)))


def _near(one: str, other: str) -> bool:
    """Whether two letters lie side by side on the keys."""
    if one not in _SPOTS or other not in _SPOTS:
        return False
    (x, y), (u, v) = _SPOTS[one], _SPOTS[other]
    # Each row of keys stands half a key to the right of the one above it.
    return one != other and abs(2 * (x - u) + (y - v)) <= 2 and abs(y - v) <= 1


@cache
def parts_of(word: str, most: int = 4) -> tuple[str, ...]:
    """The fewest common words of which a word is made up; () where it is not."""
    if most == 0 or len(word) > 30:
        return ()
    if word in COMMON:
        return (word,)
    found: tuple[str, ...] = ()
    for at in range(len(word) - 2, 1, -1):
        if word[:at] in COMMON:
            rest = parts_of(word[at:], most - 1)
            if rest and (not found or len(rest) + 1 < len(found)):
                found = (word[:at], *rest)
    return found
