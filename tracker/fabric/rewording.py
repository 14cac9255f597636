"""Readings that take the words of a round apart otherwise than the reader did."""

from __future__ import annotations

from dataclasses import replace

from tracker.fabric.begins import worked_into
from tracker.fabric.reading import Reading
from tracker.fabric.trees import every
from tracker.notation.dictionary import STITCHES, base_of
from tracker.notation.round_text import Stated
from tracker.notation.stitches import Stitch
from tracker.notation.tree import (
    Act,
    At,
    Chain,
    Evenly,
    Group,
    Loops,
    Make,
    Node,
    Note,
    OtherSide,
    Repeat,
    Skip,
    Target,
)

#: How many stitches a double increase or decrease is of.
_OF_THREE = 3
#: Stitches that shape a round by their name alone.
_SHAPES = ("inc", "dec", "invdec")
#: What stands before or behind the stitches of a round.
_BESIDE = Act | Chain | Note | Loops


def rewordings(nodes: tuple[Node, ...], stated: Stated | None) -> list[str]:
    """Fields of `Reading` that hold for a round whose words may be divided otherwise."""
    found = [way for way, told in _AS_PRINTED.items() if stated is not None and told(nodes)]
    if stated is None and _printed_last(nodes) is not None:
        found.append("last_is_count")
    if may_slip(nodes):
        found.append("slips")
    if _to_what_remains(nodes) is not None:
        found.append("remaining")
    if _heaped(nodes) != nodes:
        found.append("heaped")
    if any(isinstance(node, Make) and node.apart for node in every(nodes)):
        found += ["listed", "many"]
    if _of_so_many(nodes) != nodes:
        found.append("of_so_many")
    if "many" not in found and _many(nodes) != nodes:
        found.append("many")
    if any(isinstance(node, Repeat) and node.paced for node in nodes):
        found.append("closer")
    return found


def reworded(
    nodes: tuple[Node, ...], stated: Stated | None, reading: Reading
) -> tuple[tuple[Node, ...], Stated | None]:
    """The tree and the printed count as ``reading`` divides the words."""
    if reading.closer:
        nodes = tuple(_closer(node) for node in nodes)
    if reading.listed:
        nodes = _listed(nodes)
    if reading.many:
        nodes = _many(nodes)
    if reading.of_so_many:
        nodes = _of_so_many(nodes)
    if reading.remaining:
        return _to_what_remains(nodes) or (nodes, stated)
    if reading.implied:
        nodes = _unclosed(nodes) or nodes
    if reading.last_is_count:
        last = len(_without_deeds(nodes)) - 1
        return (*nodes[:last], *nodes[last + 1 :]), _printed_last(nodes)
    whole = (
        (reading.heaped, _heaped),
        (reading.spread, _spread),
        (reading.whole, _all_so_often),
        (reading.alone, _alone),
        (reading.slips, slipping),
    )
    otherwise = next((how for taken, how in whole if taken), None)
    return (nodes if otherwise is None else otherwise(nodes)), stated


def _closer(node: Node) -> Node:
    """A decrease "every 4th st" with one plain stitch less before it."""
    if not isinstance(node, Repeat) or not node.paced:
        return node
    plain, shape = node.body
    if not isinstance(plain, Make) or plain.count[0] < 2:
        return replace(node, body=(shape,))
    return replace(node, body=(replace(plain, count=(plain.count[0] - 1,)), shape))


def _of_so_many(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with "dec 3" taken for one decrease of three, "inc 3" for three in one place."""
    return tuple(_of_three(node) for node in nodes)


def _of_three(node: Node) -> Node:
    if isinstance(node, Group | Repeat):
        return replace(node, body=_of_so_many(node.body))
    if not isinstance(node, Make) or node.target or not node.behind or node.count != (_OF_THREE,):
        return node
    stitch = {"inc": STITCHES["sc3inc"], "dec": STITCHES["sc3tog"]}.get(node.stitch.us)
    return node if stitch is None else replace(node, stitch=stitch, count=(1,))


def _many(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with "4 hdc dec" taken for four such decreases."""
    found: list[Node] = []
    for node in nodes:
        last = found[-1] if found else None
        if isinstance(node, Group | Repeat):
            found.append(replace(node, body=_many(node.body)))
        elif isinstance(node, Make) and node.apart:
            found.append(replace(node, count=node.apart, apart=None))
        elif isinstance(node, Make) and isinstance(last, Make) and _shape_of(last, node):
            found[-1] = replace(last, stitch=_shape_of(last, node) or last.stitch, end=node.end)
        else:
            found.append(node)
    return tuple(found)


def _shape_of(plain: Make, shape: Make) -> Stitch | None:
    """The increase or decrease that "hdc dec" names, where nothing parts its two words."""
    apart = plain.end + 1 < shape.start or plain.behind or shape.numbered
    if apart or plain.target or shape.target or plain.count[0] < 2:
        return None
    return {
        "inc": STITCHES.get(f"{plain.stitch.us}2inc"),
        "dec": STITCHES.get(f"{plain.stitch.us}2tog"),
    }.get(shape.stitch.us)


def _listed(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with each "2 sc dec" taken for two stitches and a decrease."""
    found: list[Node] = []
    for node in nodes:
        if isinstance(node, Group | Repeat):
            found.append(replace(node, body=_listed(node.body)))
        elif isinstance(node, Make) and node.apart:
            base = STITCHES.get(base_of(node.stitch.us))
            plain, shape = base or STITCHES["sc"], "inc" if node.stitch.makes > 1 else "dec"
            both = (
                Make(plain, node.apart, None, node.start, node.end, node.loop),
                replace(node, stitch=STITCHES[shape], apart=None, target=None),
            )
            around = node.target == Target(At.EACH)
            found += [Repeat(both, node.start, node.end, starred=True)] if around else both
        else:
            found.append(node)
    return tuple(found)


def _to_what_remains(nodes: tuple[Node, ...]) -> tuple[tuple[Node, ...], Stated] | None:
    """One round for "dec around until 6 sts remain", and the count that it then has."""
    node = next((n for n in nodes if not isinstance(n, _BESIDE)), None)
    if not isinstance(node, Repeat) or node.leave is None:
        return None
    narrows = all(isinstance(n, Make) and n.stitch.takes > n.stitch.makes for n in node.body)
    if not narrows or not all(isinstance(n, _BESIDE) for n in nodes if n is not node):
        return None
    stated = Stated(node.leave, (("", node.leave),), node.start, node.end)
    return tuple(replace(node, leave=None) if n is node else n for n in nodes), stated


def _without_deeds(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The nodes up to the last that is worked."""
    end = len(nodes)
    while end and isinstance(nodes[end - 1], Act | Note):
        end -= 1
    return nodes[:end]


def _printed_last(nodes: tuple[Node, ...]) -> Stated | None:
    """The count that the last words may be: "(sc, inc) x 6, 18 sc"."""
    nodes = _without_deeds(nodes)
    last = nodes[-1] if len(nodes) > 1 else None
    if not isinstance(last, Make) or last.target or last.behind or not last.numbered:
        return None
    if last.loop or last.stitch.takes != 1 or last.stitch.makes != 1:
        return None
    return Stated(last.count, (("", last.count),), last.start, last.end)


def _alone(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The repeat that "sc (18)" stands for, where no more is said of the round; or ()."""
    worked = [node for node in nodes if not isinstance(node, _BESIDE)]
    only = worked[0] if len(worked) == 1 else None
    if not isinstance(only, Make) or only.target is not None or only.numbered:
        return ()
    repeat = Repeat((only,), only.start, only.end, starred=True)
    return tuple(repeat if node is only else node for node in nodes)


def _unclosed(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The repeat that "2 sc, inc (24)" stands for, which is told once and has no end; or ()."""
    worked = [i for i, node in enumerate(nodes) if not isinstance(node, _BESIDE)]
    begin, end = (worked[0], worked[-1] + 1) if worked else (0, 0)
    told = nodes[begin:end]
    if len(told) < 2 or not all(isinstance(n, Make) and _in_next(n) for n in told):
        return ()
    repeat = Repeat(told, told[0].start, told[-1].end, starred=True)
    shaped = any(isinstance(n, Make) and _is_shape(n) for n in told)
    return (*nodes[:begin], repeat, *nodes[end:]) if shaped else ()


def _in_next(node: Make) -> bool:
    return node.target is None or node.target.at is At.NEXT


def _is_shape(node: Make) -> bool:
    """Whether stitches become more or fewer: "inc", "2 sc in next"."""
    bunched = node.target is not None and node.target.count is None and node.count[0] > 1
    return node.stitch.takes != node.stitch.makes or bunched


def _spread(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The even round that "inc 3 sts (15)" stands for, where no more is said of it; or ()."""
    worked = [node for node in nodes if not isinstance(node, _BESIDE)]
    only = worked[0] if len(worked) == 1 else None
    if not isinstance(only, Make) or only.target is not None or not only.numbered:
        return ()
    change = {"inc": 1, "dec": -1, "invdec": -1}.get(only.stitch.us, 0)
    even = Evenly(only.count, change, only.start, only.end)
    return tuple(even if node is only else node for node in nodes) if change else ()


def _heaped(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with "sc, hdc, dc in next st" taken for three stitches in one place.

    Only different stitches without numbers: "sc, sc in next st" is two places.
    """
    found: list[Node] = []
    for node in nodes:
        if isinstance(node, Group | Repeat):
            found.append(replace(node, body=_heaped(node.body)))
            continue
        begin = len(found)
        while begin and _is_bare(found[begin - 1]):
            begin -= 1
        heap = [n for n in found[begin:] if isinstance(n, Make)]
        target = node.target if isinstance(node, Make) else None
        single = target is not None and target.at in (At.NEXT, At.FIRST) and target.count is None
        if isinstance(node, Make) and target and single and node.count == (1,) and heap:
            kinds = [n.stitch.us for n in (*heap, node)]
            if len(set(kinds)) == len(kinds) and node.stitch.takes == 1:
                body = (*heap, replace(node, target=None))
                found[begin:] = [Group(body, target, heap[0].start, node.end)]
                continue
        found.append(node)
    return tuple(found)


def _is_bare(node: Node) -> bool:
    """Whether a node is a single plain stitch without a number or a place."""
    if not isinstance(node, Make) or node.target is not None:
        return False
    return node.count == (1,) and node.stitch.takes == node.stitch.makes == 1


def slipping(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The tree with a bare slip stitch at the end, which may join, taken for a stitch; or ()."""
    join = next((node for node in reversed(nodes) if isinstance(node, Act) and node.bare), None)
    if join is None:
        return ()
    slip = Make(STITCHES["sl st"], (1,), None, join.start, join.end, numbered=False)
    return tuple(slip if node is join else node for node in nodes)


def may_slip(nodes: tuple[Node, ...]) -> bool:
    """Whether a last slip stitch may be one of the stitches.

    So it is where a row goes along a chain, or begins with a slip stitch.
    """
    if not slipping(nodes):
        return False
    first = next((node for node in nodes if not isinstance(node, _BESIDE)), None)
    if isinstance(first, OtherSide):
        return True
    if isinstance(first, Skip):
        return first.kind == "ch" and first.at is At.FIRST
    return worked_into(nodes) or (isinstance(first, Make) and first.stitch.us == "sl st")


def _all_so_often(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """The repeat that "sc, inc x 6 (18)" stands for where it is written in haste; or ().

    Deeds and a chain before and behind it stay as they are.
    """
    worked = [i for i, node in enumerate(nodes) if not isinstance(node, _BESIDE)]
    begin, end = (worked[0], worked[-1] + 1) if worked else (0, 0)
    repeat = _repeated(nodes[begin:end])
    return () if repeat is None else (*nodes[:begin], repeat, *nodes[end:])


def _repeated(nodes: tuple[Node, ...]) -> Repeat | None:
    last = nodes[-1] if len(nodes) > 1 else None
    if not all(isinstance(n, Make) and n.target is None for n in nodes[:-1]):
        return None
    if isinstance(last, Repeat) and last.times and not (last.starred or last.implied):
        return replace(last, body=(*nodes[:-1], *last.body))
    if isinstance(last, Make) and last.target == Target(At.EACH) and last.stitch.us in _SHAPES:
        # "3 sc then dec all around"
        body = (*nodes[:-1], replace(last, target=None))
        return Repeat(body, nodes[0].start, last.end, starred=True)
    if not isinstance(last, Make) or last.count[0] < 2 or not last.numbered:
        return None
    if last.target == Target(At.EACH):
        # "dc, 2 dc in next around"
        body = (*nodes[:-1], replace(last, target=Target(At.NEXT)))
        return Repeat(body, nodes[0].start, last.end, starred=True)
    if last.target:
        return None
    body = (*nodes[:-1], replace(last, count=(1,)))
    return Repeat(body, nodes[0].start, last.end, last.count)


#: Ways that only a printed count makes open.
_AS_PRINTED = {
    "whole": lambda nodes: _all_so_often(nodes) or _all_so_often(_listed(nodes)),
    "alone": _alone,
    "implied": _unclosed,
    "spread": _spread,
}
