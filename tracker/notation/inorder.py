"""Words of a round put in the order in which they are read: a count in their midst, a lead."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from itertools import pairwise

from tracker.notation.tokens import Token, Type
from tracker.notation.wordlists import AGAIN, CHAIN_WORDS, STITCH_WORDS

_EACH = ("each", "every", "all")
_SHAPES = ("inc", "dec", "increase", "decrease")
_SIGNS = ("=", "-", ":")
_ENDS = (".", ";", ",")


def in_order(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """The tokens with the count last, and with how often and how far behind what is made."""
    signs = {token.text for token in tokens if token.type is Type.SIGN}
    tokens = _unquoted(tokens) if '"' in signs else tokens
    tokens = _enclosed(tokens) if not signs.isdisjoint(("/", "'")) else tokens
    tokens = _counting(_ordinals(tokens) if "." in signs else tokens)
    tokens = _each_first(_unhyphened(tokens, phrases), phrases)
    tokens = _again_first(_count_last(tokens, phrases))
    return _often_last(_around_last(tokens, phrases), phrases)


def _unquoted(tokens: list[Token]) -> list[Token]:
    """The tokens without quotation marks that touch the words between them."""
    marks = [i for i, token in enumerate(tokens) if token.text == '"']
    left: set[int] = set()
    for one, other in pairwise(marks):
        opens = tokens[one].end == tokens[one + 1].start
        closes = tokens[other - 1].end == tokens[other].start
        measures = one > 0 and tokens[one - 1].end == tokens[one].start
        if one not in left and opens and closes and not measures and other > one + 1:
            left |= {one, other}
    return [token for i, token in enumerate(tokens) if i not in left]


def _enclosed(tokens: list[Token]) -> list[Token]:
    """The tokens with signs for brackets: "/sc, inc/ x 8"."""
    for sign in ("/", "'"):
        marks = [i for i, token in enumerate(tokens) if token.text == sign]
        if len(marks) == 2 and tokens[marks[1] + 1].text in ("x", "*") and marks[1] > marks[0] + 1:
            one, two = (tokens[i] for i in marks)
            opening = replace(one, type=Type.OPEN, text="(")
            closing = replace(two, type=Type.CLOSE, text=")")
            inside = tokens[marks[0] + 1 : marks[1]]
            return [*tokens[: marks[0]], opening, *inside, closing, *tokens[marks[1] + 1 :]]
    return tokens


def _ordinals(tokens: list[Token]) -> list[Token]:
    """The tokens with "every 2. st" as "every 2nd st", as some languages number."""
    found: list[Token] = []
    for i, token in enumerate(tokens):
        before, behind = tokens[max(0, i - 2)], tokens[min(i + 1, len(tokens) - 1)]
        dotted = token.text == "." and len(found) > 1 and found[-1].type is Type.NUMBER
        led = before.text in ("every", "each", "and", "the")
        if dotted and led and (behind.text in STITCH_WORDS or behind.text == "and"):
            found[-1] = replace(found[-1], type=Type.ORDINAL, end=token.end)
        else:
            found.append(token)
    return found


def _unhyphened(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """The tokens without a sign between a stitch and its number: "sc-2", "sc.2"."""
    left: set[int] = set()
    for i in range(1, len(tokens) - 2):
        name, sign, number, then = tokens[i - 1 : i + 3]
        glued = name.end == sign.start and sign.end == number.start
        named = (name.text,) in phrases and name.text not in CHAIN_WORDS
        over = then.type in (Type.END, Type.CLOSE) or then.text in _ENDS
        if glued and named and over and sign.text in ("-", ".") and number.type is Type.NUMBER:
            left.add(i)
    return [token for i, token in enumerate(tokens) if i not in left]


def _each_first(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """The tokens with "in" before a place that stands first: "each st 1 sc".

    "Every 3rd st inc" is told as "inc every 3rd st".
    """
    if tokens[0].text == "every" and len(tokens) > 4 and tokens[1].type is Type.ORDINAL:
        made = 3 + (tokens[3].text in _ENDS)
        if tokens[2].text in STITCH_WORDS and tokens[made].text in _SHAPES:
            return [tokens[made], *tokens[:3], *tokens[made + 1 :]]
    led = tokens[0].text in ("each", "every") and len(tokens) > 3
    if led and tokens[1].text in STITCH_WORDS and _is_made(tokens[2], phrases):
        return [Token(Type.WORD, "in", tokens[0].start, tokens[0].start), *tokens]
    return tokens


def _counting(tokens: list[Token]) -> list[Token]:
    """The tokens with "= 21st" at the end taken for a number of stitches, "= (21)" for a count."""
    at = _closing_count(tokens)
    if at > 1 and tokens[at].type is Type.OPEN and tokens[at - 1].text == "=":
        tokens = [*tokens[: at - 1], *tokens[at:]]
    end = len(tokens) - 1
    while end and tokens[end - 1].text in (*_ENDS, ")", "]"):
        end -= 1
    last, before = tokens[end - 1], tokens[max(0, end - 2)]
    if last.type is not Type.ORDINAL or not last.text.endswith("st"):
        return tokens
    if before.text != "=" and before.type is not Type.OPEN:
        return tokens
    middle = last.end - 2
    number = Token(Type.NUMBER, last.text[:-2], last.start, middle, last.value)
    return [*tokens[: end - 1], number, Token(Type.WORD, "sts", middle, last.end), *tokens[end:]]


def _again_first(tokens: list[Token]) -> list[Token]:
    """``number "times" "repeat"`` or ``"this" number "times"`` as ``"repeat" number "times"``."""
    found = list(tokens)
    for i in range(1, len(tokens) - 3):
        one, two, three, then = tokens[i : i + 4]
        over = then.type in (Type.END, Type.OPEN) or then.text in ("=", ".", ",", "-")
        if not over or tokens[i - 1].text not in (",", "-", ";", "."):
            continue
        if one.type is Type.NUMBER and two.text == "times" and three.text in AGAIN:
            found[i : i + 3] = [three, one, two]
        elif one.text == "this" and two.type is Type.NUMBER and three.text == "times":
            found[i] = replace(one, text="repeat")
    return found


def _count_last(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """``made count place`` as ``made place count``: "inc = 12 sc in each st".

    Only where that is all the round says, and more is counted than is made at once.
    """
    made = 0
    while made < len(tokens) and _is_made(tokens[made], phrases):
        made += 1
    end = _count_end(tokens, made, phrases)
    if not made or not end or end >= len(tokens) - 1:
        return tokens
    place, last = tokens[end:-1], tokens[-1]
    while place and place[-1].text in _ENDS:
        place = place[:-1]
    words = {t.text for t in place}
    around = words <= {"around", "all"}
    each = place[:1] and place[0].text in ("in", "into", "to") and not words.isdisjoint(_EACH)
    plain = all(t.type is Type.WORD for t in place)
    count = tokens[made:end]
    more = max(t.value for t in count) > max(t.value for t in tokens[:made])
    if not (place and plain and more and (around or each)):
        return tokens
    return [*tokens[:made], *place, *_as_count(count), last]


def _is_made(token: Token, phrases: Collection[tuple[str, ...]]) -> bool:
    """Whether a token is the name of a stitch, or how many of it."""
    return token.type is Type.NUMBER or (token.text,) in phrases


def _count_end(tokens: list[Token], at: int, phrases: Collection[tuple[str, ...]]) -> int:
    """Index behind a count that stands at ``at``, between signs or in a bracket; or 0."""
    if tokens[at].type is not Type.OPEN and tokens[at].text not in _SIGNS:
        return 0
    bracketed = tokens[at].type is Type.OPEN
    at += 1
    if tokens[at].type is not Type.NUMBER:
        return 0
    at += 1
    if tokens[at].text in STITCH_WORDS or (tokens[at].text,) in phrases:
        at += 1
    if bracketed:
        return at + 1 if tokens[at].type is Type.CLOSE else 0
    return at + (tokens[at].text in _SIGNS)


def _as_count(count: list[Token]) -> list[Token]:
    """A count without the sign behind it."""
    return count[:-1] if count[-1].text in _SIGNS else count


def _around_last(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """``"around" stitch`` as ``stitch "around"``: "around sc (24)"."""
    if tokens[0].text != "around":
        return tokens
    made = 1
    while _is_made(tokens[made], phrases):
        made += 1
    over = tokens[made].type in (Type.END, Type.OPEN) or tokens[made].text in ("=", ".", ",", "-")
    return [*tokens[1:made], tokens[0], *tokens[made:]] if made > 1 and over else tokens


def _often_last(tokens: list[Token], phrases: Collection[tuple[str, ...]]) -> list[Token]:
    """``times body count`` as ``"(" body ")" times count``: "6x 2 sc, inc (24)"."""
    often, begin = _leading_times(tokens)
    close = _closing_count(tokens)
    if not often or close <= begin:
        return tokens
    body = tokens[begin:close]
    named = body[int(body[0].type is Type.NUMBER) :][:1]
    makes = bool(named) and (named[0].text,) in phrases
    if not makes and body[0].type is not Type.OPEN:
        return tokens  # "4X, 3V": crosses that stand for stitches
    while body and body[-1].text in _ENDS:
        body = body[:-1]
    if not body or any(t.text in ("rep", "repeat") for t in body):
        return tokens
    whole = body[0].type is Type.OPEN and _matching(body) == len(body) - 1
    if not whole:
        start, end = body[0].start, body[-1].end
        body = [Token(Type.OPEN, "(", start, start), *body, Token(Type.CLOSE, ")", end, end)]
    return [*body, *often, *tokens[close:]]


def _leading_times(tokens: list[Token]) -> tuple[list[Token], int]:
    """``"x" number | number "x"``, in a bracket or not: as "x 6", and where the rest begins.

    "6x (2 sc, inc)" is read as it stands.
    """
    inside = tokens[0].type is Type.OPEN
    one, two = (tokens[i + inside] if i + inside < len(tokens) else tokens[-1] for i in (0, 1))
    begin = 2 + 2 * inside
    if begin >= len(tokens) or (inside and tokens[3].type is not Type.CLOSE):
        return [], 0
    if one.text == "x" and two.type is Type.NUMBER:
        often = [one, two]
    elif one.type is Type.NUMBER and two.text == "x" and tokens[begin].type is not Type.OPEN:
        often = [two, one]
    else:
        return [], 0
    return often, begin + (tokens[begin].text == ":")


def _closing_count(tokens: list[Token]) -> int:
    """Index of the count that ends the round, in a bracket or behind a sign; 0 without one."""
    end = len(tokens) - 1
    while end and tokens[end - 1].text in _ENDS:
        end -= 1
    back = end - 1
    bracketed = tokens[back].type is Type.CLOSE
    back -= bracketed
    if tokens[back].type is Type.WORD:
        back -= 1
    if back < 1 or tokens[back].type is not Type.NUMBER:
        return 0
    before = tokens[back - 1]
    opened = bracketed and before.type is Type.OPEN
    return back - 1 if opened or (not bracketed and before.text in ("=", "-", ".", ":")) else 0


def _matching(tokens: list[Token]) -> int:
    """Index of the bracket that closes the first one; -1 without one."""
    depth = 0
    for index, token in enumerate(tokens):
        depth += (token.type is Type.OPEN) - (token.type is Type.CLOSE)
        if not depth:
            return index
    return -1
