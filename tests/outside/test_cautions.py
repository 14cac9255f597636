"""Every caution comes with its sentence, its source and the page it was read on."""

from __future__ import annotations

import tomllib
from importlib.resources import files

import pytest

from tracker.pattern.cautions import DEFER, Caution, caution, cautions


def test_ids_are_unique() -> None:
    text = files("tracker.pattern").joinpath("cautions.toml").read_text(encoding="utf-8")
    assert [row["id"] for row in tomllib.loads(text)["caution"]] == list(cautions())


@pytest.mark.parametrize("found", cautions().values(), ids=cautions())
def test_has_sentence_source_and_address(found: Caution) -> None:
    assert found.sentence.endswith(".")
    assert found.topic
    assert found.source
    assert found.address.startswith("http")
    assert caution(found.id) is found


def test_an_unknown_id_is_no_caution() -> None:
    assert caution("no-such-thing") is None


def test_the_cautions_defer_to_law_and_professionals() -> None:
    assert "local law" in DEFER
    assert "licensed professionals" in DEFER
