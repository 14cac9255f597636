"""Cautions that a piece of crochet can need: one plain sentence each, with its source.

A pattern names the ones that apply by id. The sentences and their sources are data, in
``cautions.toml`` beside this module, read when the first caution is asked for.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType

#: Shown with every caution.
DEFER = "General information only: local law and the advice of licensed professionals come first."


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution.

    Attributes:
        id: the word a pattern names it by ("small-parts").
        topic: what it is about, in a few words.
        sentence: what is shown to the maker, word for word.
        source: who says so, and what they say.
        address: the page it was read on (or pages, joined by "and").
    """

    id: str
    topic: str
    sentence: str
    source: str
    address: str


@cache
def cautions() -> Mapping[str, Caution]:
    """Every caution by its id, in the order of the data file."""
    data = files("tracker.pattern").joinpath("cautions.toml").read_text(encoding="utf-8")
    rows = tomllib.loads(data)["caution"]
    return MappingProxyType({row["id"]: Caution(**row) for row in rows})


def cautions_in(text: str) -> tuple[str, ...]:
    """Ids of the cautions whose sentences stand in a text, in their order there."""
    words = " ".join(text.split())
    found = [(words.find(known.sentence), known.id) for known in cautions().values()]
    return tuple(name for at, name in sorted(found) if at >= 0)


def caution(name: str) -> Caution | None:
    """The caution with this id; None where there is none."""
    return cautions().get(name)
