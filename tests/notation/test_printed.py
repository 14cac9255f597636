"""A round's tree, printed as a pattern would print it and read again, is the same tree."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace

from hypothesis import given
from hypothesis import strategies as st

from tracker.notation.dictionary import STITCHES
from tracker.notation.reader import read_round
from tracker.notation.tree import Act, At, Chain, Deed, Group, Make, More, Repeat, Skip, Target

NAMES = ("sc", "hdc", "dc", "tr", "inc", "dec", "fpdc", "dc3tog", "bobble")
KINDS = ("st", "dc", "ch-2 sp", "ch-1 sp")
many = st.integers(2, 20)
kind = st.sampled_from(KINDS)
stitch = st.sampled_from(NAMES).map(STITCHES.__getitem__)

places = st.one_of(
    st.builds(Target, st.just(At.NEXT), kind),
    st.builds(lambda k, n: Target(At.NEXT, k, (n,)), st.sampled_from(("st", "dc")), many),
    st.builds(Target, st.just(At.SAME), st.sampled_from(("st", "sp"))),
)
#: One of a stitch in a place, or several without one, each in the next.
placed = st.builds(
    lambda s, t: Make(s, (1,), t, 0, 0, "", numbered=False, behind=True), stitch, places
)
plain = st.builds(lambda s, n: Make(s, (n,), None, 0, 0, "", numbered=True), stitch, many)
chain = st.builds(lambda n: Chain((n,), 0, 0), st.integers(1, 9))
skip = st.builds(lambda n: Skip((n,), "st", 0, 0), st.integers(1, 9))
group = st.builds(
    lambda a, b, n, k: Group((a, Chain((n,), 0, 0), b), Target(At.NEXT, k), 0, 0),
    plain,
    plain,
    st.integers(1, 5),
    kind,
)
element = st.one_of(placed, plain, skip, group)
body = st.lists(element, min_size=2, max_size=4).map(tuple)
around = st.builds(lambda b: Repeat(b, 0, 0, more=More.UNSAID, starred=True), body)
more = st.builds(lambda b, n: Repeat(b, 0, 0, (n,), More.MORE, starred=True), body, many)
left = st.builds(lambda b, n: Repeat(b, 0, 0, leave=(n,), starred=True), body, many)
bracket = st.builds(lambda b, n: Repeat(b, 0, 0, (n,)), body, many)
each = st.builds(
    lambda s, k: Make(s, (1,), Target(At.EACH, k), 0, 0, "", numbered=False, behind=True),
    stitch,
    st.sampled_from(("st", "dc")),
)
rounds = st.tuples(
    st.lists(chain, max_size=1),
    st.lists(st.one_of(element, bracket, more), max_size=3),
    st.lists(st.one_of(around, left, each), min_size=1, max_size=1),
    st.lists(st.just(Act(Deed.TURN, 0, 0)), max_size=1),
).map(lambda parts: tuple(node for part in parts for node in part))


def place(target):
    if target is None:
        return ""
    noun = target.kind if target.count is None else f"{target.kind}s"
    if target.at is At.EACH:
        return f" in each {noun} around"
    if target.at is At.SAME:
        return f" in same {noun}"
    return f" in next {noun}" if target.count is None else f" in next {target.count[0]} {noun}"


def printed(node):
    """A node in the words of a pattern."""
    match node:
        case Make():
            count = f"{node.count[0]} " if node.numbered else ""
            return f"{count}{node.stitch.abbr}{place(node.target)}"
        case Chain():
            return f"ch {node.count[0]}"
        case Skip():
            return f"sk next {node.count[0]} sts"
        case Group():
            return f"({', '.join(map(printed, node.body))}){place(node.target)}"
        case Repeat() if not node.starred:
            return f"[{', '.join(map(printed, node.body))}] {node.times[0]} times"
        case Repeat():
            end = "around"
            if node.leave is not None:
                end = f"to last {node.leave[0]} sts"
            elif node.times is not None:
                end = f"{node.times[0]} more times"
            return f"*{', '.join(map(printed, node.body))}; rep from * {end}"
        case Act():
            return node.deed.value
    raise AssertionError(node)


def placeless(value):
    """A tree without the offsets of its words."""
    if isinstance(value, tuple) and type(value) is tuple:
        return tuple(map(placeless, value))
    names = [f.name for f in fields(value)] if is_dataclass(value) else []
    return (
        replace(
            value,
            **{n: 0 if n in ("start", "end") else placeless(getattr(value, n)) for n in names},
        )
        if names
        else value
    )


@given(rounds)
def test_a_printed_round_is_read_as_the_same_tree(nodes):
    text = ", ".join(map(printed, nodes)) + "."
    once = placeless(read_round(text).nodes)
    again = placeless(read_round(", ".join(map(printed, once)) + ".").nodes)
    assert again == once, text


@given(rounds)
def test_a_tree_is_what_its_print_is_read_as(nodes):
    text = ", ".join(map(printed, nodes)) + "."
    assert placeless(read_round(text).nodes) == nodes, text
