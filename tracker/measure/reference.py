"""The data files of this package: read when first asked for, every number exact."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def reference(name: str) -> dict[str, Any]:
    """What a data file holds; its decimals are fractions."""
    text = files("tracker.measure").joinpath(f"{name}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text, parse_float=Fraction)
