"""One round, told in every manner: the same tree, and the counts that follow by arithmetic."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tracker import check_text
from tracker.notation.reader import read_round
from tracker.notation.tree import Make, Node, Repeat

#: Stitch -> (takes, makes).
STITCHES = {"sc": (1, 1), "hdc": (1, 1), "dc": (1, 1), "inc": (1, 2), "dec": (2, 1)}

Item = tuple[str, int]
item = st.tuples(st.sampled_from(sorted(STITCHES)), st.integers(1, 12))
items = st.lists(item, min_size=1, max_size=4)
#: What stands before, what is repeated, how often, what stands behind.
rounds = st.tuples(st.lists(item, max_size=2), items, st.integers(2, 9), st.lists(item, max_size=2))

MANNERS = (
    lambda stitch, n: f"{n} {stitch}",
    lambda stitch, n: f"{n}{stitch}",
    lambda stitch, n: f"{stitch} {n}",
    lambda stitch, n: f"{stitch} x {n}",
    lambda stitch, n: f"{stitch.upper()} {n}",
)
REPEATS = (
    lambda body, n: f"({body}) x {n}",
    lambda body, n: f"[{body}] {n} times",
    lambda body, n: f"({body})*{n}",
    lambda body, n: f"*{body}* repeat {n} times",
    lambda body, n: f"*{body}; rep from * {n - 1} more times",
    lambda body, n: f"{n}x [{body}]",
)


def counts(body: list[Item]) -> tuple[int, int]:
    takes = sum(STITCHES[stitch][0] * n for stitch, n in body)
    return takes, sum(STITCHES[stitch][1] * n for stitch, n in body)


def tree(nodes: tuple[Node, ...]) -> list[object]:
    """The nodes without their offsets and without the manner they are written in."""
    found: list[object] = []
    for node in nodes:
        if isinstance(node, Make):
            found.append((node.stitch.us, node.count, node.target))
        elif isinstance(node, Repeat):
            assert node.times is not None
            more = int(node.more.value == "more")
            found.append((tree(node.body), node.times[0] + more))
    return found


@given(rounds, st.sampled_from(MANNERS), st.sampled_from(REPEATS))
def test_every_manner_of_telling_a_round_gives_the_same_counts(told, manner, repeat) -> None:
    before, body, times, behind = told
    words = [
        *(manner(*one) for one in before),
        repeat(", ".join(manner(*one) for one in body), times),
        *(manner(*one) for one in behind),
    ]
    outer, inner = counts([*before, *behind]), counts(body)
    takes, makes = (outer[i] + times * inner[i] for i in (0, 1))
    text = f"Rnd 2: {', '.join(words)} ({makes})"
    (found,) = check_text(text, below=takes).parts[0].rounds
    assert (found.verdict.value, found.makes) == ("agrees", (makes,)), text


@given(items, st.integers(2, 9), st.sampled_from(MANNERS[:2]), st.sampled_from(REPEATS[:3]))
def test_two_manners_of_one_round_are_one_tree(body, times, manner, repeat) -> None:
    first = repeat(", ".join(manner(*one) for one in body), times)
    plain = f"({', '.join(f'{n} {stitch}' for stitch, n in body)}) x {times}"
    assert tree(read_round(first).nodes) == tree(read_round(plain).nodes)
